package finding

// aboutInterior holds what can be wrong with dividers, shelves and the rows of pins that carry them.
var aboutInterior = []Section{
	{"6.11", "Dividers, shelves and pins", []Rule{
		{
			Slug: "divider-finds-no-room", Severity: Error, Says: "a divider stands in a side, in another divider or outside",
			Explains: `
A divider is said by its centre, from the left end of the cabinet. Half the board lies on either side of that, and some
clear space must be left between it and the next board. The answer gives where the board would be and where there is
room. Often the place was measured from the inside of the side, or along the whole run.`,
		},
		{
			Slug: "shelf-finds-no-room", Severity: Error, Says: "a fixed shelf lies in a board, in another shelf or outside",
			Explains: `
A fixed shelf is said by the height of its upper face above the floor; the board lies under that. It must be clear of the
bottom, of what hangs lowest at the top, and of the next shelf, and it must have some depth left before the back. Often
the height was measured from the bottom of the cabinet.`,
		},
		{
			Slug: "shelves-find-no-room", Severity: Error, Says: "more shelves on pins are asked for than find holes",
			Explains: `
Shelves on pins are spread evenly over the largest clear height, each on the holes nearest to its even place. Over and
under each at least one pitch must stay clear, or nothing could be put there, nor a shelf lifted off its pins. Take fewer,
or let the rows begin nearer to bottom and top.`,
		},
		{
			Slug: "pins-too-deep", Severity: Error, Says: "holes for pins come through a board, or meet inside a divider",
			Explains: `
The holes for shelf pins are bored into the sides, and into both faces of a divider at the same heights. They are as deep
as the board is thick, or from both faces together as deep as the divider: the pins would meet, and nothing would hold
them.

Take the depth from the pin. With dividers of 3/4 in or 18 mm, that is pins with a stem of 8 mm or less.`,
			Source: "common practice: holes 5 mm across, 12 to 13 mm deep in a board of 18 or 19 mm",
		},
		{
			Slug: "pins-find-no-room", Severity: Error, Says: "rows of holes for pins find no room, or carry no shelf",
			Explains: `
Two rows of holes stand on either side of each space, one to the front and one to the rear. They must lie under the shelf
that they carry, one before the other, with a hole at least between bottom and top, and the holes must not run into one
another. The answer says which of these is not so.

From the front edge to the front row are usual 37 mm, from hole to hole 32 mm.`,
			Source: "common practice of 32 mm boring: rows 37 mm from the edge, 32 mm from hole to hole",
		},
	}},
}
