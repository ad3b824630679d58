package finding

// aboutWays holds the rules of SPEC.md 14.4.
var aboutWays = []Section{
	{"14.4", "Ways of cables, cords and drains", []Rule{
		{
			Slug: "cable-finds-no-way", Severity: Warning, Says: "a cable finds no way along the boxes",
			Source:  "plain solids; common practice: a cable runs on the backs of boxes and through the middle of studs",
			Caution: wiringDecides,
			Explains: `
A cable goes from box to box along the backs of cabinets and inside the knee wall, through holes in sides, dividers, backs and
studs. It keeps off edges, joints, screws, shelf pins, slides and openings, and an inch from the pipe and trap of a drain, and
goes through no appliance, shelf, drawer, sink or stub. Here all such ways are shut, or the two boxes are not at one run.

The finding names what comes nearest to a way would have to go through, and why a board is not bored there. Move that, leave
out height or through where they are stated, or leave the cable to who lays it in the walls of the room.`,
		},
		{
			Slug: "cord-finds-no-way", Severity: Warning, Says: "the plug of a cord finds no place in a side",
			Source:  "plain solids; common practice: half an inch of wood about a hole",
			Caution: wiringDecides,
			Explains: `
The plug of an appliance goes to its outlet through the sides of the boxes between. Its hole keeps off the edges of each side,
its joints, the holes for shelf pins, slides and screws, and what stands on the far side. There is no such place here.

Shelves or drawers that leave more room, an outlet at another height, or one in another box mend it.`,
		},
	}},
}
