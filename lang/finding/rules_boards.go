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
	}},
}
