package finding

// aboutBoards holds the rules of SPEC.md 11.8.
var aboutBoards = []Section{
	{"11.8", "Shelves, studs and free ends", []Rule{
		{
			Slug: "shelf-sags", Severity: Warning, Says: "a shelf sags more than is accepted",
			Source:  "ANSI/KCMA A161.1: 15 psf, 1/16 in to the foot and 1/4 in at most; stiffness of boards: Wood Handbook, FPL-GTR-190, Table 12-1; half as much again in time: shop notes",
			Caution: loadDecides,
			Explains: `
A shelf is taken to lie on its two ends and to carry an even load. It bends by 5 w L^4 / (384 E I), so twice the span bends
sixteen times as much, twice the thickness an eighth. Wood goes on bending under a load: half as much again is added for
that. What is measured against is the limit of the cabinet makers' test. The eye is stricter: from 0.02 in to the foot,
or 1.7 mm to the metre, one sees that a shelf hangs.

A back that is screwed to the rear edge, and an edge glued on in front, help; neither is counted. Nor is a point load.

Put a divider in, make the box narrower, or take a thicker or stiffer board. Say what kind it is: sheet { stiffness = … }.
Full bottles stand heavier than cups: limits { shelf_load = … }.`,
		},
		{
			Slug: "studs-caught", Severity: Warning, Milder: []Severity{Note}, Says: "few studs stand behind a box, or none",
			Source:  "common practice, from memory: two studs and four screws for each box, one stud and an anchor beside it for a narrow one",
			Caution: loadDecides,
			Explains: `
A box is held by screws through its rear stretcher into the studs of the wall. Behind this one, between its sides, stand
fewer studs than are wanted; it is a warning where there is none. A box that is narrower than the gap between two studs
has one at best, and is not asked for more. Plasterboard alone holds no box with a counter on it.

Shift the boxes, make this one wider, or screw a rail across the studs first. Anchors for hollow walls help beside a
stud; if they are to do, limits { studs_each = 1 } says so.`,
		},
		{
			Slug: "studs-unknown", Severity: Note, Says: "boxes are screwed to studs, and nothing says where these are",
			Source:  "common practice: studs are found and marked before boxes are set",
			Caution: loadDecides,
			Explains: `
The run names screws for the wall, and the wall is backed by studs, but they are not listed. So the screws are counted
by rule of thumb, and nobody can say which box catches none.

Find the studs with a finder or a fine drill, and write their centres from the wall's left end. A wall that holds a screw
anywhere says so: backing = "masonry" or "planks".`,
		},
	}},
}
