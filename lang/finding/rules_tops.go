package finding

// aboutTops holds what can be wrong with what is cut out of slabs, and how they are pieced.
var aboutTops = []Section{
	{"6.18", "Sinks, taps and seams", []Rule{
		{
			Slug: "slab-too-large", Severity: Error, Says: "nothing on sale is large enough for a counter or bar top in one piece",
			Source:  "plain arithmetic: a piece is no larger than what it is cut from",
			Caution: loadDecides,
			Explains: `
The slab, or a piece of it between two seams, is longer or wider than the largest piece that is stated as sold. Solid
wood lies with its grain along the slab, so it cannot be turned; stone and boards can.

Divide it with seams. The answer gives places that do, where boxes meet if such a joint is in reach, and clear of sinks.
A slab that is too wide is not helped by seams: state a wider one if it can be had, or take off overhang.`,
		},
		{
			Slug: "seam-outside", Severity: Error, Says: "a seam lies outside its slab",
			Explains: `
A seam divides a slab, so it lies between the slab's ends. Seams of a counter count from the left end of its run, those
of a bar top from the left end of the framing; the overhang on that side lies at places under 0. Often a seam is left
over from before the run was made shorter, or was measured from the other end.`,
		},
		{
			Slug: "seam-at-cut-out", Severity: Error, Says: "a seam goes through a cut-out, or too near to one",
			Source:  "common practice, from memory: 3 in or 75 mm at least",
			Caution: loadDecides,
			Explains: `
The strips of slab before and behind a cut-out are its weakest place, and a seam beside a sink stands in water. A seam
keeps 3 in, in metric builds 75 mm, from what is cut out for a sink or a tap; who makes the slab may ask for more.

Move the seam to a joint of the boxes on either side of the one that the sink hangs in. The answer says how far it must
go.`,
		},
		{
			Slug: "cut-out-elsewhere", Severity: Error, Says: "a sink or tap belongs to another counter",
			Caution: passingDecides,
			Explains: `
A sink hangs in a cabinet of the run that its counter lies on, and a tap stands behind a sink of the same counter. Here
the cabinet stands in another run, or the sink is cut out of another counter. Write the sink or the tap into the
counter that lies over its cabinet, or name another cabinet.`,
		},
		{
			Slug: "cut-out-too-round", Severity: Error, Says: "a side of a cut-out is shorter than its rounded corners",
			Explains: `
Two corners of the cut-out are rounded by more than the side between them is long. A radius of half the shorter side
makes a half circle; more cannot be. The radius is on the maker's template; what looks like one may be a diameter.`,
			Wrong: "counter \"back\" {\n  over = run.back\n  slab = slab.maple\n  sink \"round\" {\n    in  = cabinet.cups\n    cut = { width = 14, depth = 14, radius = 14 }\n  }\n}",
			Right: "counter \"back\" {\n  over = run.back\n  slab = slab.maple\n  sink \"round\" {\n    in  = cabinet.cups\n    cut = { width = 14, depth = 14, radius = 7 }\n  }\n}",
		},
		{
			Slug: "rail-too-narrow", Severity: Error, Says: "a cut-out leaves too little of the slab beside it",
			Source:  "common practice, from memory: 2 in or 50 mm at least, 2 1/2 to 3 in are better",
			Caution: loadDecides,
			Explains: `
What is left of the slab before, behind or beside the cut-out is narrower than the rail that the sink asks for. These
strips break when the slab is carried and when somebody leans on them, stone above all.

Move the cut-out with from_front, take a smaller sink, or a deeper counter. Whoever makes the slab says how narrow a
rail may be in that material, and whether it is backed.`,
			Wrong: "counter \"back\" {\n  over = run.back\n  slab = slab.maple\n  sink \"deep\" {\n    in  = cabinet.cups\n    cut = { width = 15, depth = 22 }\n  }\n}",
			Right: "counter \"back\" {\n  over = run.back\n  slab = slab.maple\n  sink \"deep\" {\n    in  = cabinet.cups\n    cut = { width = 15, depth = 15 }\n  }\n}",
		},
		{
			Slug: "cut-out-over-board", Severity: Warning, Says: "a sink or tap hangs where a board or an appliance is",
			Source:  "common practice, from memory: the bowl of a small sink is about 5 in or 125 mm deep",
			Caution: passingDecides,
			Explains: `
Under the cut-out, within the depth of a small bowl, there is a side, a stretcher, the back, a divider, a drawer or an
appliance. The bowl hangs there, or the nut of the tap is turned there. The answer says by how much each is covered.

Move the cut-out with from_front where that helps, take a smaller sink or a wider box. A drawer gives way to a front that
does not open: false_front. Many cut the stretcher away for a
sink: then the box must be held square in another way, by the counter or by strips beside the bowl.`,
		},
		{
			Slug: "tap-too-near", Severity: Error, Says: "a tap's hole comes too near to an edge, a wall or another cut-out",
			Source:  "common practice, from memory: 3/4 in or 20 mm of slab round the hole, 1 in or 25 mm to a wall",
			Caution: passingDecides,
			Explains: `
Round the hole of a tap some slab must be left, 3/4 in or 20 mm, so that it does not break out and the plate of the tap
lies on it. To a wall, or a knee wall behind, there are 1 in or 25 mm from the edge of the hole: the plate, and often a
lever that turns back, need them. The sheet of the maker may ask for more.

Move the tap with from_rear or from_left, or the sink further to the front.`,
		},
	}},
}
