package finding

import "slices"

// aboutFloor holds what can be wrong with readings of the floor.
var aboutFloor = []Section{
	{"14.1", "Floor and shims", []Rule{
		{
			Slug: "reading-twice", Severity: Error, Says: "the floor or a wall is read twice at one place",
			Explains: `
Two readings stand at the same place. If they agree, one is enough; if they do not, one of them is wrong, and nobody but
the person with the laser can tell which.`,
		},
		{
			Slug: "line-unknown", Severity: Error, Says: "heights on a wall count from a level line that nothing places",
			Caution: passingDecides,
			Explains: `
The heights of outlets and pipes on this wall count down from the laser's line. Where the line is follows from the readings
of the floor, which count from the same line, and there are none.

Read the floor at a few points from the line that the wall was measured from, or measure the heights up from the floor.`,
		},
	}},
}

// aboutSetting holds the rules of SPEC.md 11.13.
var aboutSetting = []Section{
	{"11.13", "Setting it in the room", slices.Concat([]Rule{
		{
			Slug: "shims-too-thick", Severity: Warning, Says: "the floor is so low in places that shims there are too thick",
			Source: "1/2 in, 12 mm: common practice",
			Explains: `
All boxes stand with their tops in one plane: level, from the highest point of the floor that anything bears on. Everywhere
else they stand on shims. A tall pile of shims walks, and leaves a box that stands on points.

Level the floor, or lay a board under the whole box and shim that. Look at the highest point too: where it is a hump under one
corner, planing it off lowers every other shim. limits { shim = { most = … } } states another figure.`,
		},
		{
			Slug: "tops-not-flat", Severity: Warning, Says: "the tops of boxes may lie further out of one plane than is allowed",
			Source: "1/8 in in 96 in, 3 mm in 2.4 m: cabinets level, plumb and in line, in a standard for architectural woodwork; from memory",
			Explains: `
What shims leave, as they come in steps, and what readings of the floor may be wrong by, lies between the tops and one plane. A
counter lies hollow on such tops, or rocks; one of stone breaks.

Thinner shims leave less, and so does a level that is read more closely: floor { read_to = … } says how closely.
limits { tops_flat = … } states another figure; for stone half of it is common.`,
		},
		{
			Slug: "floor-not-flat", Severity: Note, Says: "the floor is less flat than is common",
			Source: "1/4 in in 32 in along joists, 1/2 in in 20 ft between any points: NAHB performance standard for wood floors, looked up",
			Explains: `
The readings differ by more than floors of houses are commonly held to. The build can be set on it all the same, on the
shims that are listed; it may also be a wrong reading. Read the two points again before anything else.

limits { floor_flat = { … } } states other figures. A steep fall between neighbouring readings that are farther apart than the
short distance is judged by its share of it.`,
		},
		{
			Slug: "floor-not-read", Severity: Note, Says: "something stands where the floor was not read",
			Source: "within 12 in, 300 mm: from memory",
			Explains: `
Between readings the floor is taken to be straight; beyond the outermost ones nothing is known of it, and it is taken to go on
flat from the nearest point. A shim that is worked out there is a guess, and so is the datum if it lies there.

Read the floor at the ends of each run, at its rear and at its front. limits { floor_beyond = … } states another distance.`,
		},
		{
			Slug: "readings-few", Severity: Note, Says: "the floor is read at too few points",
			Source: "plain geometry: it takes three points to lay a plane",
			Explains: `
One reading tells a height and no fall; two, or any number along one line, tell the fall along that line, and nothing of what
the floor does to its side. Read it along the rear and along the front of each run.`,
		},
	}, ofWalls)},
}
