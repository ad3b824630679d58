package finding

// aboutKneeOutlets holds what can be wrong with electrical boxes in a knee wall.
var aboutKneeOutlets = []Section{
	{"6.15", "Outlets in a knee wall", []Rule{
		{
			Slug: "mirrored-elsewhere", Severity: Error, Says: "an outlet mirrors one that is not placed in its knee wall",
			Caution: wiringDecides,
			Explains: `
An outlet that mirrors another one stands as far from one end of the framing as that from the other. So that one must be in the
same knee wall, and must say from_left or from_right: two that mirror one another are nowhere, and one in a wall of the
room is not in this framing.`,
		},
		{
			Slug: "cover-too-small", Severity: Error, Says: "the opening for an outlet shows beside its cover plate",
			Source:  "common practice: the plate covers the cut all round",
			Caution: wiringDecides,
			Explains: `
The opening in the skin is the box and its clearance all round. The cover plate is smaller than that, so the cut would
show, and dust and spills would find it. Take a larger plate, or a smaller clearance.`,
		},
		{
			Slug: "box-meets-end", Severity: Error, Says: "a box runs into the stud at the end of the framing",
			Source:  "common practice: a box stands beside a stud, not in it",
			Caution: wiringDecides,
			Explains: `
The studs at the two ends of the framing stay where they are; others move out of the way of a box. This box would be in
an end stud, or past the framing. Its place is that of its centre, so at least half its width and the stud lie between it
and the end.`,
		},
		{
			Slug: "box-meets-plate", Severity: Error, Says: "a box runs into a plate of the framing",
			Source:  "common practice: the plate that carries the bar top stays whole",
			Caution: wiringDecides,
			Explains: `
Between what lies on the run and the upper plate there is little height, often no more than a hand. The box stands higher
than that, or sits too high, and would have to be cut into the plate that carries the bar top.

Lay the box on its side, leave its height to the rule, which takes the middle of what is free, or raise the bar top.`,
		},
		{
			Slug: "cover-in-the-way", Severity: Error, Says: "a cover plate meets the counter, the bar top or steel",
			Source:  "common practice: a plate lies flat on the skin",
			Caution: wiringDecides,
			Explains: `
A cover plate is larger than its box. The box has room, but its plate would lie behind the counter, over the edge of the
bar top, or where steel leaves the wall, so it does not go on. Move the outlet by what the answer says, or lay it on its side.`,
		},
		{
			Slug: "box-depth", Severity: Error, Says: "a box is deeper than the framing, or no deeper than the skin",
			Source:  "common practice: a box is within its wall, its front flush with the finished face (NEC 314.20)",
			Caution: wiringDecides,
			Explains: `
The front of a box is flush with the skin that it is used from, and what the skin does not take of its depth is in the
framing. This box would come out of the framing on the other face, or would not reach into it at all. Take a box of
another depth, or wider lumber. What a box must hold decides how deep it has to be.`,
		},
		{
			Slug: "outlets-meet", Severity: Error, Says: "two outlets of a knee wall are in one another's place",
			Caution: wiringDecides,
			Explains: `
Two cover plates overlap, or two boxes, one from either face, are so deep that they meet inside the framing. Move one of them along
the wall; back to back, shallower boxes do too.`,
		},
	}},
}
