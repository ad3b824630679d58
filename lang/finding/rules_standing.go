package finding

// aboutStanding holds the rules of SPEC.md 11.2.
var aboutStanding = []Section{
	{"11.2", "What stands in the way", []Rule{
		{
			Slug: "solids-meet", Severity: Error, Says: "two things of different runs stand in one another",
			Source:  "plain arithmetic: two things cannot be in one place",
			Caution: passingDecides,
			Explains: `
The boxes of two runs keep clear of one another, but something that belongs to them does not: a door or its handle before
the side of the other run, the overhang of a counter where the next counter begins, the skin of a knee wall in a corner.

Let one of the two runs start further along, by what the answer says, and close the gap with a filler. Or let a slab
overhang less. A blind corner wants its door away from the run that covers it.`,
		},
		{
			Slug: "through-wall", Severity: Error, Milder: []Severity{Warning}, Says: "a thing reaches behind the face of a wall",
			Source:  "plain arithmetic; slabs are cut to a wall by common practice",
			Caution: passingDecides,
			Explains: `
A run that stands out from one wall is longer than the room is wide, or a front, a counter or the back of a knee wall
comes to stand where a wall of the room is. A wall that leans in meets first what stands out furthest: the boxes of a run
keep clear of it, the overhang of its counter need not.

A counter or a bar top that meets a wall with its end is cut to that wall, and only warned of. Everything else has to
move. What is less than a mark of the tape is let pass.`,
		},
		{
			Slug: "door-meets", Severity: Warning, Says: "a door cannot open to 90 degrees",
			Source: "common practice; how far handles stand out, from memory",
			Explains: `
A door that hangs beside a wall stops at it with its handle, long before it is open: what is behind it, a drawer or a
pull-out, does not come out. The same happens before the handles of another run in a corner, or in an aisle that is
narrower than the door.

A filler beside the box takes it off the wall. One door may hang on the other side. Or take a handle that stands out
less and say so: handle = { stands_out = … } in the carcass.`,
		},
		{
			Slug: "drawer-meets", Severity: Warning, Says: "a drawer cannot come out by the length of its slides",
			Source: "common practice; how far handles stand out, from memory",
			Explains: `
Pulled out, the front of the drawer with its handle meets what stands before it or beside its way: a handle of the run
across the corner, a wall that leans in, the front opposite.

A filler in the corner, as wide as handles stand out and a little more, lets drawers pass. In a narrow aisle shorter
slides help, or doors.`,
		},
		{
			Slug: "appliance-door-meets", Severity: Warning, Says: "the door of an appliance does not find room to open",
			Source: "common practice; the room beside a wall, 1/2 to 2 in, from memory",
			Explains: `
An appliance wants its door open to 90 degrees, or its shelves and baskets do not come out. Beside a wall it needs some
room more, for its handle and the hinge. The maker's sheet says how much: limits { door_beside = … } takes it.

Move the bay along the run, put a filler or a box between it and the wall, or have the door hung on the other side where
the maker allows it. door = "none" in the bay says nothing of its door, and nothing is judged.`,
		},
		{
			Slug: "fronts-cross", Severity: Note, Says: "two fronts in a corner cannot be open at once",
			Source: "common practice",
			Explains: `
In a corner two doors or drawers, of two runs, can want the same piece of floor. Each opens while the other is shut,
but the two are never open at once. Often nobody minds. It is worth another thought where two people work there, or
where something falls into the open drawer.

A blind box or a wide filler in the corner parts them; so do doors that hang on the far side.`,
		},
		{
			Slug: "appliance-stands-out", Severity: Note, Says: "an appliance stands out of the fronts of its run",
			Source: "common practice, from memory: an inch or two",
			Explains: `
With its door and what it needs behind it, the appliance is deeper than the run: it stands in the aisle, its side is
seen, and doors beside it open against it.

Take a deeper carcass or a shallower appliance, or measure back_gap again: the maker's sheet says what it must be. A run
may stand off the wall. limits { appliance_out = … } says that it is meant.`,
		},
		{
			Slug: "aisle-narrow", Severity: Warning, Says: "the way between two fronts, or a front and a wall, is narrow",
			Source: "planning guideline for a walkway, 36 in, from memory",
			Explains: `
Between what stands out furthest on either side, the edges of counters or the faces of fronts, is less room than one
needs to walk and to bend down at an open door. Handles are not counted. Where two people work back to back, planners
want a foot more.

Move a run, or make one shallower. limits { aisle = … } takes what holds where you build: a place open to the public
has stricter rules of its own, which local code decides.`,
		},
		{
			Slug: "past-open", Severity: Note, Says: "what stands open leaves no way past it",
			Source: "common practice, from memory",
			Explains: `
While the drawer or the door stands open, somebody who comes along the aisle must wait until it is shut. Behind a bar
with two people that happens all day.

A wider aisle helps, or two narrow doors instead of a wide one, or shorter slides. limits { past_open = 0 } says that one
person works there.`,
		},
		{
			Slug: "way-in-narrow", Severity: Note, Says: "the way in behind a run, past its free end, is narrow",
			Source:  "common practice, from memory: a person with a tray or a crate takes about 24 in",
			Caution: passingDecides,
			Explains: `
A bar that stands out from one wall is gone round at its free end. Here that end, with its counter and bar top, comes close
to a wall or to another run: nobody gets in behind, and no keg does. Whether the room has another door there is not known.

Make the run shorter, or close a gap of an inch or two with a filler or a panel if there is another way in, and say
limits { way_in = 0 }. A way out in case of fire is wider: local code says how much.`,
		},
	}},
}
