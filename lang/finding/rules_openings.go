package finding

// aboutOpenings holds what can be wrong with what panels let through, and with
// what would stand in one another.
var aboutOpenings = []Section{
	{"7.3", "What is refused", []Rule{
		{
			Slug: "opening-meets-joint", Severity: Warning, Says: "an outlet, a switch or a vent is partly covered by a board of a box",
			Source:  "common practice",
			Caution: passingDecides,
			Explains: `
The box of an outlet or a switch, or a vent, comes partly behind a side, the bottom or a stretcher of the cabinet that it
is used from. The opening cuts into that joint, its cover plate does not lie flat, and a plug may not go in. Or a divider
or a fixed shelf stands before it.

Move it, which is for somebody licensed to do, or make the boxes of other widths so that it lies within one.
The answer says how far it runs past the clear inside, or behind which board it lies.`,
		},
		{
			Slug: "openings-meet", Severity: Error, Says: "two openings of a panel run into one another",
			Source:  "common practice: what is cut once is not cut again",
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
		{
			Slug: "opening-too-round", Severity: Error, Says: "the corners of an opening are rounder than it is large",
			Caution: passingDecides,
			Explains: `
Every corner of an opening takes its radius from both sides that meet there, so two of them need twice the radius on one
side. Where the opening only reaches a little into a panel, as a notch in its edge, that little is all there is.

The answer says what would fit. A radius of a quarter of the smaller side looks round and always fits.`,
		},
		{
			Slug: "corner-bit-too-wide", Severity: Warning, Says: "the bit for the corners is wider than an opening",
			Source:  "common practice: a hole in each corner, then saw from hole to hole",
			Caution: passingDecides,
			Explains: `
corner_bit of the saw is the bit for the holes that are bored in the corners of an opening before it is sawn out. A hole
of that size does not stay inside this opening, so none are shown for it.

Take a smaller bit, or give this opening more clearance.`,
		},
		{
			Slug: "baseboard-behind-panel", Severity: Error, Says: "a baseboard is where a board should stand flat against the wall",
			Caution: passingDecides,
			Explains: `
Most boards meet a baseboard with an edge, and a notch in their lower corner lets it pass. A side or an end panel that
stands against the wall with its whole face meets it with that face: cut away as high as the baseboard is, it would have
nothing left to stand on.

Take the baseboard off behind the run: from and to say where what is left of it begins and ends. Or let the run stand
off the wall by the baseboard's thickness, and close the gap with a filler.`,
		},
	}},
	{"7.4", "What may not meet", []Rule{
		{
			Slug: "runs-meet", Severity: Error, Says: "two runs stand in one another",
			Source: "plain arithmetic: two things cannot be in one place",
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
			Source:  "plain arithmetic; overhang belongs to free ends by common practice",
			Caution: loadDecides,
			Explains: `
The slab overhangs an end of its run that stands against a wall of the room, so it would have to go into that wall.
Overhang belongs to ends that are free. Set it to 0 on that side; a slab is cut a little short there and the gap closed
with caulk or a strip.`,
		},
		{
			Slug: "slabs-meet", Severity: Error, Says: "a bar top lies in what stands under it",
			Source:  "plain arithmetic: two things cannot be in one place",
			Caution: loadDecides,
			Explains: `
The bar top reaches over the run, and its underside is lower than the counter or the boxes below. Raise the knee wall,
or let the bar top overhang less on the work side. Whoever wipes the counter needs some inches between.`,
		},
		{
			Slug: "thing-in-the-way", Severity: Error, Says: "a pipe, a box or a baseboard stands out of its wall into what cannot be cut",
			Source:  "plain arithmetic: two things cannot be in one place",
			Caution: passingDecides,
			Explains: `
What stands out of the wall reaches into an appliance, a block, a stud, steel or a slab. Panels and the plates of a knee
wall get an opening, these do not: the appliance would not go back to where it is drawn, or the stud would have to be cut.

Move the box, the bay or the framing along the run. The pipe or outlet itself is for somebody licensed to move. Measure
again how far it stands out, and from which end of the wall.`,
		},
	}},
}
