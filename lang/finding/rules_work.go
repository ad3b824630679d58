package finding

var aboutWork = []Section{
	{"14.5", "Order of work", []Rule{
		{
			Slug: "will-not-pass", Severity: Warning, Says: "a part or a sheet is too large for the car, the doorway or the stair",
			Source:  "plain arithmetic: the stated sizes; that a sheet goes through a doorway on edge is common practice",
			Caution: "Who lifts decides what can be lifted: stairs, corners and a wet floor take half of it away.",
			Explains: `
Sheets and sticks that are too large to be brought in are cut where they are bought, from edge to edge and through no part;
the order of work says where. A part that is larger itself cannot be helped so: it would be cut in two. Nor can a sheet
whose parts lie for a table so that no straight cut passes between them.

Give it a seam, or make its box narrower. Or measure the way in again: a window, a longer car or a straight stair may
let it through, and carry says what does.`,
		},
	}},
}
