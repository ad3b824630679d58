package finding

// aboutAccess holds the rules of SPEC.md 11.3.
var aboutAccess = []Section{
	{"11.3", "Openings and what must be reached", []Rule{
		{
			Slug: "cover-meets-board", Severity: Warning, Says: "a cover plate in a wall of the room meets a board",
			Source:  "common practice: a plate lies flat on what its box comes through",
			Caution: wiringDecides,
			Explains: `
A cover plate is larger than the opening that it covers. The box goes through, but beside or above it a side, a divider, a
shelf, the bottom or a strip stands where the plate should lie, so it stays off the wood and does not screw down. Or the
plate is on the wall beside the boxes and a counter, a side or an end panel should stand against the wall there.

It is often the slip of one board: a distance measured from the inner face of a side, or from the top of a counter, and
counted from the wall or the floor. Move it, which is for somebody licensed to do, or make the boxes of other widths.`,
		},
		{
			Slug: "opening-near-joint", Severity: Warning, Says: "an opening is close to a board that stands on its panel, or runs into it",
			Source:  "common practice: a saw, a drill and a hand need room beside a joint, and a joint needs its wood",
			Caution: passingDecides,
			Explains: `
The opening lies in one panel, but so near to where a side, a divider, a fixed shelf, the bottom or a strip stands against
it that a measurement a little off cuts into that board or its screws. For a pipe it is said too where it would take the
edge off that board.

Measure again, from the wall and not from the inside of the cabinet. Then move it, or give the boxes other widths. For a
pipe that is to pass the edge of a board, cut = "notch" or cut = "slot" says that this is meant.`,
		},
		{
			Slug: "opening-near-edge", Severity: Warning, Says: "little wood is left beside an opening, to an edge or to another opening",
			Source:  "common practice: narrow strips of plywood split or break out under the saw",
			Caution: passingDecides,
			Explains: `
Between the opening and the panel's edge, the recess for the feet or another opening only a narrow strip of wood would
stay. It breaks when it is cut, or when the panel is carried. A slot or a notch that leaves a tongue beside it is the same.

Move one of them, or open the strip on purpose: cut = "notch" takes it away, and one description with one box around both
makes one opening of two.`,
		},
		{
			Slug: "opening-near-bore", Severity: Warning, Says: "an opening cuts a hole for a shelf pin or a hinge plate, or nearly does",
			Source:  "common practice",
			Caution: passingDecides,
			Explains: `
Holes for shelf pins and for the plates of hinges carry load, and the opening for a pipe or a box takes their wood. Other
heights of the rows (pins), or other shelves, make room; so does another place for the pipe.`,
		},
		{
			Slug: "cover-laps-little", Severity: Warning, Says: "a cover plate covers little of the wood beside its opening",
			Source: "common practice; sizes of plates are those of ANSI/NEMA WD 6: 2 3/4 in wide and about 4 1/2 in high for one gang, " +
				"and of BS 4662 (from memory): 86 mm by 86 mm",
			Caution: wiringDecides,
			Explains: `
The opening is the box and its clearance all round, wider still where it passes a panel at a slant. What the plate covers
beyond that is what one may be off by when one cuts: with a single plate and the usual clearance, an opening that comes out
1/8 in too low is still covered.

Take a larger plate, or a smaller clearance.`,
		},
		{
			Slug: "box-gap-wide", Severity: Note, Says: "the gap between an electrical box and the wood about it is wide",
			Source:  "NEC 314.21, which speaks of plaster and board: at most 1/8 in (3 mm); for a wooden panel by analogy",
			Caution: wiringDecides,
			Explains: `
Round a box with a flush cover no gap wider than 1/8 in is let pass in plaster or board. A cabinet's back is neither, but
who inspects the box sees the same gap. A smaller clearance is cut just as well; the ears of a box may need a place of their own.

limits { wiring = "none" } has a build judged by none of these rules.`,
		},
		{
			Slug: "box-in-stud", Severity: Warning, Says: "an electrical box lies in a stud of its wall, as both were measured",
			Source:  "common practice: a box is fixed to the side of a stud; PS 20: a dry 2 x 4 is 1 1/2 in (38 mm) thick",
			Caution: wiringDecides,
			Explains: `
A box in a framed wall stands beside a stud, mostly against it. Here the figures put it into one. The box is there and the
stud is there, so a figure is wrong: an edge measured for a centre, a distance from the inner face of a cabinet's side
counted from the wall, which is off by just the board's thickness, or a stud knocked for and missed.

The opening would be cut just as much off. Measure both again from the same end of the wall.`,
		},
		{
			Slug: "plug-without-room", Severity: Warning, Says: "an outlet is behind an appliance or a drawer, and no plug goes in",
			Source:  "from memory: a plug and the bend of its cord stand about 1 1/2 in off the plate",
			Caution: wiringDecides,
			Explains: `
The appliance stands nearer to the wall than a plug is deep. It would be pushed against the plug, or stand out of the
line of the fronts by as much. The usual place is in the cabinet beside the bay, with a hole for the cord: there one
also gets at it without pulling the appliance out.

A drawer that is shut reaches back by its slides, and the longest that fit leave little behind it: its box would strike
the plug each time. Shorter slides leave room, and a cabinet with a door does.

A flat plug needs less: limits { plug_room = "1in" }.`,
		},
		{
			Slug: "buried-behind-boards", Severity: Warning, Says: "what is in a wall lies behind boards, and nothing opens to it",
			Source:  "common practice; from memory: NEC 314.29 wants every box to stay within reach",
			Caution: passingDecides,
			Explains: `
What is in the wall ends up behind a toe kick, a filler, an end panel, the framing of a knee wall, or in a corner that two
runs close off. Once the boards are screwed on, nobody gets at it, and nobody knows that it is there.

Let a cabinet stand before it, so that an opening is cut, or keep the boards clear of it. Or have it taken out or moved, by
somebody licensed to do so, before the boards are up.`,
		},
		{
			Slug: "out-of-reach", Severity: Warning, Says: "a trap, a pipe end or an outlet lies behind a front that does not open",
			Source:  "common practice: a valve is shut and a trap is emptied by hand, with a wrench",
			Caution: passingDecides,
			Explains: `
False fronts, dividers and fixed shelves leave too little open before it. A door opens all that it covers, and a drawer
counts as open: it lifts out. Shelves on pins are taken out. In a corner the next run may stand before the front.

Doors under a low false front are the usual face of a sink's cabinet. A shelf that is fixed belongs into another one.`,
		},
	}},
}
