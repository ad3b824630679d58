package finding

// aboutRoom holds what can be wrong with the room as measured.
var aboutRoom = []Section{
	{"4.1", "Walls", []Rule{
		{
			Slug: "outside-wall", Severity: Error, Says: "something on a wall, or a run that meets it, is not within the wall",
			Caution: passingDecides,
			Explains: `
An outlet, a pipe or a stud is said to be where its wall is not: before its left end, past its right end, or under the
floor; or a run that stands out from a wall would meet it beyond its end.

Distances along a wall count from its left end as one faces it, to the centre of the thing. Measured from the right end,
or to an edge, they come out wrong by just so much. Look at the wall's own length too.`,
			Wrong: "run \"third\" {\n  out_from = wall.east\n  at       = 100\n  carcass  = carcass.base\n  cabinet \"x\" { width = 24 }\n}",
			Right: "run \"third\" {\n  out_from = wall.east\n  at       = 84\n  carcass  = carcass.base\n  cabinet \"x\" { width = 24 }\n}",
		},
		{
			Slug: "baseboard-without-length", Severity: Error, Says: "a baseboard ends before it begins",
			Explains: `
from and to of a baseboard are where it begins and ends along its wall. Both count from the wall's left end as one faces
it, so from is the smaller one. Measured from the right end, they come out the wrong way round.`,
		},
		{
			Slug: "room-open", Severity: Note, Says: "four walls or more do not close, and by how much",
			Source: "common practice: a traverse is closed before it is trusted",
			Explains: `
Walking along the measured walls and turning at each corner by its angle, one does not come back to where one began.
The gap is what all the measurements together are off by; nothing is stretched to hide it.

Small gaps are the tape and the angle. A large one is one wrong figure: most often a wall measured to a trim, or a
corner given from outside. Two diagonals across the room find it.`,
		},
	}},
}
