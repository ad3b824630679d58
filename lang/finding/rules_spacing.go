package finding

// aboutSpacing holds what can be wrong with things that are to stand evenly.
var aboutSpacing = []Section{
	{"6.17", "Even spacing", []Rule{
		{
			Slug: "supports-moved", Severity: Note, Says: "supports do not stand evenly, and what forced that",
			Caution: loadDecides,
			Explains: `
Supports are spread evenly along the framing. The place of one would lie over an end stud, or over the box of an outlet
in the knee wall, so it stands beside that, and the others a little closer to it or further from it.

Nothing needs to be done. If the gaps look wrong, move the outlet, take another number of supports, or give their centres
with at.`,
		},
		{
			Slug: "studs-moved", Severity: Note, Says: "studs do not stand on their centres, and what forced that",
			Caution: loadDecides,
			Explains: `
A stud on its centre would stand under the recess of a support, where its screws come up, or in the box of an outlet. It
stands in the nearest free place instead, and where a gap would then be wider than the spacing, another stands on the
other side. All other studs stay on their centres.

Mark these studs by the list, not by the tape's own marks. Or move the supports or the outlet.`,
			Source: "common practice: a stud that is in the way gets a neighbour on its other side, the layout stays",
		},
		{
			Slug: "no-place-for-stud", Severity: Error, Says: "what is in the way of studs leaves no place within the spacing",
			Source:  "arithmetic, from the spacing that is stated; common practice: 16 in or 400 mm on centre",
			Caution: loadDecides,
			Explains: `
Outlets and supports stand so close to one another that over a stretch as long as the spacing of the studs none can
stand: wherever one stood, its screws would come up under steel, or it would stand in a box.

Set what is in the way further apart, or let the spacing be wider if what the studs carry allows it.`,
		},
		{
			Slug: "no-place-for-supports", Severity: Error, Says: "what is in the way of supports leaves no places for as many",
			Source:  "arithmetic; common practice: steel keeps clear of boxes and of the screws in the end studs",
			Caution: loadDecides,
			Explains: `
Supports keep clear of the two end studs, whose screws come up through the plate, and of outlets in the knee wall. What
is left of the framing has no places for as many as are asked for.

Take fewer if the load allows it, move an outlet, or give the centres with at: then they stand where you say, and what
they meet is told.`,
		},
	}},
}
