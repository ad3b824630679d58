package finding

// aboutBoxes holds what can be wrong with boxes and how they stand in a run.
var aboutBoxes = []Section{
	{"6.1", "Boxes", []Rule{
		{
			Slug: "box-too-small", Severity: Error, Says: "boards alone need more room than a box or a framing has",
			Explains: `
A box is narrower than its two sides, lower than toe kick, bottom, stretcher and a full top, or less deep than its back,
toe kick and setback, or than the boards of its base; or the framing of a knee wall is shorter than two studs or lower than its two plates. There is no inside
left, and some part would come out with no size or less.

Often a figure is in another unit than was meant, or what is left for width = rest is nearly nothing. The answer gives
what is there and what the boards take.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 1 }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 12 }\n}",
		},
		{
			Slug: "groove-too-deep", Severity: Error, Says: "the groove or rabbet for a back goes through its board",
			Explains: `
The groove or rabbet that holds the back is as deep as the board is thick, or deeper: it would cut the side in two. Half
the board is plenty. Measure the board; what is sold as 3/4 is often a little less.`,
			Source: "common practice: a groove takes half the board at most",
		},
		{
			Slug: "groove-too-loose", Severity: Error, Says: "a back would not reach into its groove or rabbet",
			Explains: `
The play that is taken off the back is as much as its two grooves or rabbets are deep together, so the back would fall
out between the sides. Play is for paint and for boards that are thicker than they say: a sixty-fourth of an inch, or half a
millimetre. Take less play, or a deeper groove.`,
		},
		{
			Slug: "groove-meets-edge", Severity: Error, Says: "the groove for a back runs off the rear edge",
			Explains: `
A captured back stands in from the rear edges by its inset, with wood behind it that holds it. Here the inset is so
small that the groove breaks out at the edge. Take a larger inset, or apply the back onto the edges.`,
		},
		{
			Slug: "legs-find-no-room", Severity: Error, Says: "legs stand in one another, in the toe kick or beside their box",
			Caution: loadDecides,
			Explains: `
Legs stand in two rows under a box, their centres in from its ends, from its rear and from the line of the toe kick. Here
they would run into the board of the toe kick or into one another: the answer says which.

Measure the leg over its widest, which is the flange that is screwed to the bottom, or the foot. Take a larger inset in a
large box, a smaller one in a small box, and fewer legs where they crowd.`,
		},
		{
			Slug: "crosspieces-meet", Severity: Error, Says: "the crosspieces of a base stand in one another",
			Caution: loadDecides,
			Explains: `
The distance between the crosspieces of a base is less than the board is thick. It counts from centre to centre. Two feet
or 600 mm are usual; often the figure was meant in another unit.`,
			Source: "common practice: a crosspiece every two feet or so",
		},
		{
			Slug: "banding-too-thick", Severity: Error, Says: "banding is thicker than what it is put on",
			Explains: `
Banding is taken off the size that a board is cut to, so that the board is right once it is banded. Banding as thick as
the board, as the toe kick's setback or as a stretcher is wide leaves nothing to cut. What comes on a roll is under an
eighth of an inch or 3 mm; solid lipping is a part of its own. Often the figure was meant in another unit.`,
			Source: "common practice: banding on rolls is 0.4 to 3 mm thick",
		},
	}},
	{"6.2", "Runs", []Rule{
		{
			Slug: "attribute-unused", Severity: Error, Says: "an attribute belongs to another kind of run",
			Explains: `
A run stands along a wall, and then has start and from; or it stands out from one, and then has at and faces. The
attribute here belongs to the other kind, so it would do nothing. Often the run was changed from one to the other.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  faces   = \"left\"\n  carcass = carcass.base\n  cabinet \"x\" { width = 24 }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 24 }\n}",
		},
		{
			Slug: "run-empty", Severity: Error, Says: "a run has no boxes",
			Explains: `
A run is the boxes that stand in it, in the order written. Give it at least one cabinet, bay or filler, or take the run
out.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 24 }\n}",
		},
		{
			Slug: "run-too-long", Severity: Error, Says: "the boxes are longer than the run or its wall",
			Source: "plain arithmetic",
			Explains: `
The widths of the boxes, bays with their gaps, and fillers add up to more than the run has: its own length, or what the
wall leaves from where the run starts. The answer says by how much. Boxes that are a little too wide do not go in, and
are found out when they stand in the room.

Let one box take what is left with width = rest, or take the excess off the widest. Check that the wall was measured
between the surfaces that count: drywall to drywall, at the height of the boxes.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 40 }\n  cabinet \"y\" { width = 40 }\n  cabinet \"z\" { width = 40 }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  cabinet \"x\" { width = 40 }\n  cabinet \"y\" { width = 40 }\n  cabinet \"z\" { width = rest }\n}",
		},
		{
			Slug: "run-too-short", Severity: Error, Says: "the boxes are shorter than the length that is stated",
			Explains: `
The run says how long it is, and its boxes do not fill that: a gap would be left that nobody described. Let one box take
what is left with width = rest, add a filler, or let the length follow from the boxes by leaving it out.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  length  = 40\n  carcass = carcass.base\n  cabinet \"x\" { width = 36 }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  length  = 40\n  carcass = carcass.base\n  cabinet \"x\" { width = rest }\n}",
		},
		{
			Slug: "rest-without-end", Severity: Error, Says: "a box takes the rest of a run that has no far end",
			Explains: `
width = rest means what is left up to the end of the run. A run that stands out into the room has no wall at its far
end, so it must say where it ends: give the run a length, or the box a width.`,
			Wrong: "run \"third\" {\n  out_from = wall.east\n  at       = 84\n  carcass  = carcass.base\n  cabinet \"x\" { width = rest }\n}",
			Right: "run \"third\" {\n  out_from = wall.east\n  at       = 84\n  length   = 40\n  carcass  = carcass.base\n  cabinet \"x\" { width = rest }\n}",
		},
	}},
	{"6.3", "Corners under 90 degrees", []Rule{
		{
			Slug: "corner-leans-in", Severity: Note, Says: "a run starts further in, to clear a wall that leans in",
			Explains: `
The next wall leans in, so a box with its back in the corner would meet that wall with its front edge. The run keeps as
far away from the corner as its depth asks for, and a wedge stays open behind.

Cover the wedge with a filler that is scribed to the wall. Doors, handles and counters that stand out further than the
boxes need more room still: that is not looked at.`,
		},
	}},
	{"6.4", "Bays and blocks", []Rule{
		{
			Slug: "appliance-too-tall", Severity: Error, Says: "an appliance does not fit under the line",
			Source: "plain arithmetic",
			Explains: `
The appliance and the gap over it are higher than the boxes beside it, so the counter would not lie flat, or the
appliance would not go in. Take the height from the maker's sheet with its feet turned in, and with the top that it is
used with.

Raise the carcass, lower the gap, or take another appliance. The air that it needs is in the maker's sheet too.`,
			Wrong: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  bay \"cold\" {\n    gap       = \"1/4in\"\n    appliance = { width = 24, height = 36, depth = 22 }\n  }\n}",
			Right: "run \"third\" {\n  along   = wall.east\n  carcass = carcass.base\n  bay \"cold\" {\n    gap       = \"1/4in\"\n    appliance = { width = 24, height = 34, depth = 22 }\n  }\n}",
		},
		{
			Slug: "appliance-low", Severity: Note, Says: "an appliance stands below the line, without blocks",
			Explains: `
The top of the appliance is under the line of the boxes, and nothing is said to stand under it. That may be just what
is wanted: many have feet that are wound out. Otherwise blocks = stick.NAME lays lumber under both its sides.`,
		},
		{
			Slug: "blocks-too-large", Severity: Error, Says: "blocks find no room under their appliance",
			Explains: `
Two pieces of this lumber do not lie side by side under the appliance, or there is nothing between its back and the
line of the toe kicks for them to lie on. Take a narrower stick, or leave the blocks out and use the feet.`,
		},
		{
			Slug: "blocks-to-pack", Severity: Note, Says: "whole layers of blocks leave a gap",
			Explains: `
As many layers of lumber as fit lie under the appliance, and this much is left to the line. Thin packing under the
blocks takes it up, or the feet of the appliance do. It must not rock.`,
		},
	}},
	{"6.5", "Fillers", []Rule{
		{
			Slug: "filler-bevelled", Severity: Note, Says: "a filler's edge is bevelled to a wall that leans away",
			Source: "common practice: a filler strip is scribed and bevelled to the wall",
			Explains: `
The corner is over 90 degrees, so the gap between the run and the wall opens towards the front: at the front face of the
strip it is wider than at the rear. The strip is cut as wide as the front of the gap and its scribe, and the line marked
on it is where the wall is to be expected.

Set the saw to the angle that the corner is over 90 degrees, so that the front of the edge touches the wall first. Scribe
it to the wall as it is: no wall is as straight as its angle.`,
		},
	}},
	{"6.6", "Anchors", []Rule{
		{
			Slug: "anchor-elsewhere", Severity: Error, Says: "an anchor's cabinet stands in another run",
			Caution: loadDecides,
			Explains: `
An anchor is a block on the floor that holds a cabinet of its own run from inside the toe kick. The cabinet that it
names stands in another run. Write the anchor into the run of its cabinet, or name a cabinet of this one.`,
		},
		{
			Slug: "anchor-on-legs", Severity: Error, Says: "an anchor's cabinet stands on legs",
			Caution: loadDecides,
			Explains: `
An anchor is a block on the floor that the toe kick is screwed to, so that the cabinet cannot move. The toe kick of a
cabinet on legs is only clipped to them and holds nothing. Let the cabinet stand on its sides or on a base, or fix it to
the wall and its neighbours instead.`,
		},
		{
			Slug: "anchor-too-large", Severity: Error, Says: "an anchor's block finds no room behind the toe kick",
			Source:  "arithmetic: the block and the boards about it are not in one place",
			Caution: loadDecides,
			Explains: `
The block must lie under the cabinet's bottom, behind its toe kick and between its sides. It is thicker or wider than
that space; the answer gives both. Take a smaller stick, or a higher toe kick.`,
		},
	}},
}
