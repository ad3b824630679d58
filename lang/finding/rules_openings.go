package finding

// aboutOpenings holds what can be wrong with what panels let through, and with
// what would stand in one another.
var aboutOpenings = []Section{
	{"7.3", "What is refused", []Rule{
		{
			Slug: "opening-meets-joint", Severity: Warning, Says: "an outlet is partly covered by a board of a box",
			Source:  "common practice",
			Caution: passingDecides,
			Explains: `
The box of an outlet comes partly behind a side, the bottom or a stretcher of the cabinet that it is used from. The
opening cuts into that joint, its cover plate does not lie flat, and a plug may not go in. Or a divider or a fixed shelf
stands before it.

Move the outlet, which is for somebody licensed to do, or make the boxes of other widths so that it lies within one.
The answer says how far it runs past the clear inside, or behind which board it lies.`,
		},
		{
			Slug: "openings-meet", Severity: Error, Says: "two openings of a panel run into one another",
			Caution: passingDecides,
			Explains: `
What stands in the wall asks for two openings in one panel, and their outlines overlap. The shop would cut across what
is cut already, and the strip between them falls out.

Where two things stand so close, describe them as one, with one box around both. Or one of them was measured to its
edge instead of its centre.`,
		},
		{
			Slug: "opening-parts-panel", Severity: Error, Says: "openings leave a panel in pieces",
			Caution: passingDecides,
			Explains: `
An opening runs from one edge of the panel to another, alone or together with others, so that the panel falls apart.
Nothing could be built from that. Move the box or what stands in the wall, or check its size: an opening as high as a
panel is usually a slip of the pen.`,
		},
	}},
	{"7.4", "What may not meet", []Rule{
		{
			Slug: "runs-meet", Severity: Error, Says: "two runs stand in one another",
			Explains: `
Seen from above, the boxes of two runs cover the same piece of floor. Most often a run along a wall goes into the corner
and the run on the next wall starts there too, or a run that stands out was measured to the wrong side: at is where its
carcass front meets the wall.

Let one of them start further along, by the depth of the other at least, or make one shorter. Doors and handles that
stand out of the boxes need room of their own.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 30 }\n}\n" +
				"run \"fourth\" {\n  out_from = wall.east\n  at       = 20\n  carcass  = carcass.base\n  cabinet \"y\" { width = 30 }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 20 }\n}\n" +
				"run \"fourth\" {\n  out_from = wall.east\n  at       = 20\n  carcass  = carcass.base\n  cabinet \"y\" { width = 30 }\n}",
		},
		{
			Slug: "slab-in-wall", Severity: Error, Says: "a counter or bar top runs into a wall",
			Caution: loadDecides,
			Explains: `
The slab overhangs an end of its run that stands against a wall of the room, so it would have to go into that wall.
Overhang belongs to ends that are free. Set it to 0 on that side; a slab is cut a little short there and the gap closed
with caulk or a strip.`,
		},
		{
			Slug: "slabs-meet", Severity: Error, Says: "a bar top lies in what stands under it",
			Caution: loadDecides,
			Explains: `
The bar top reaches over the run, and its underside is lower than the counter or the boxes below. Raise the knee wall,
or let the bar top overhang less on the work side. Whoever wipes the counter needs some inches between.`,
		},
		{
			Slug: "thing-in-the-way", Severity: Error, Says: "a pipe or box stands out of its wall into what cannot be cut",
			Caution: passingDecides,
			Explains: `
What stands out of the wall reaches into an appliance, a block, framing or steel. Panels get an opening, these do not:
the appliance would not go back to where it is drawn, or the framing would have to be cut.

Move the box, the bay or the framing along the run. The pipe or outlet itself is for somebody licensed to move. Measure
again how far it stands out, and from which end of the wall.`,
		},
	}},
}
