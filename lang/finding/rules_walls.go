package finding

// ofWalls are the rules of SPEC.md 11.13 about walls as surveyed.
var ofWalls = []Rule{
	{
		Slug: "wall-bows", Severity: Warning, Says: "a wall stands so far back in places that shims behind a box are too thick",
		Source:  "1/2 in, 12 mm of shims at one place: common practice",
		Caution: loadDecides,
		Explains: `
The rear of a run stands in one plane, on the point of the wall that stands out most. Elsewhere there is a gap behind the boxes,
and each screw draws the box to the wall across it: without a shim behind it the back bows, and the box goes out of square. A
thick pile of shims lets the screw bend, and less of it is left for the stud.

Take the wall back where it stands out most, as a lump of plaster, or pack it out flat where it stands back, and read it
again. limits { shim = { most = … } } states another figure.`,
	},
	{
		Slug: "wall-out-of-plumb", Severity: Note, Says: "a wall leans more than is common",
		Source: "3/8 in in any 32 in of height: NAHB performance standard for walls, from memory",
		Explains: `
The readings say that the wall leans, or bulges, by more than walls of houses are commonly held to. The build can be set against it
all the same, with the shims and scribes that are listed; it may also be a wrong reading. Read the two places again before
anything else.

limits { wall_plumb = { … } } states other figures. Between readings that are farther apart than the height there it is judged
by its share of it.`,
	},
	{
		Slug: "wall-meets-box", Severity: Error, Says: "a wall at the end of a run stands out into the box there",
		Source: "plain geometry: two things cannot be in one place",
		Explains: `
The run ends on the straight plane of the next wall, and readings of that wall say that its face stands out of it. The box
cannot be pushed home.

A filler at that end takes up what the wall is off, and is cut to it. Or let the run stand further from the corner.`,
	},
	{
		Slug: "scribe-wide", Severity: Note, Says: "the wall beside a filler moves by more than its scribe",
		Source: "common practice: the scribe of a filler is what a wall is expected to be off",
		Explains: `
A filler is made wider by its scribe, so that it can be cut to the wall. Beside this one the wall's face moves by more than
that: cut without the readings the strip would have left a gap. The blank is made wide enough here. But the eye sees a
strip that tapers, next to fronts that are square.

A wider filler hides the taper better; a wall that is packed out has none. A larger scribe says that it is known.`,
	},
}

// aboutScribes holds what can be wrong with what is cut to a floor or a wall.
var aboutScribes = []Section{
	{"14.2", "Walls and scribes", []Rule{
		{
			Slug: "scribe-takes-all", Severity: Error, Says: "the floor or a wall comes where a part would be",
			Explains: `
A part is cut on site to the floor or to a wall that was read, and somewhere the line goes past its other edge: the wall
stands out by more than a filler is wide, or the floor rises by more than a strip is high.

Make the part wider, or move what it closes off the wall there. A reading of the wrong sign does the same: off is how far a
wall stands out of its plane, and is negative where it stands back.`,
		},
	}},
}
