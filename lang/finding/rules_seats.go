package finding

// aboutSeats holds the rules of SPEC.md 11.5.
var aboutSeats = []Section{
	{"11.5", "Heights and seats", []Rule{
		{
			Slug: "counter-off-height", Severity: Note, Says: "a counter is higher or lower than is usual",
			Source: "common practice: 36 in, or 890 to 920 mm, with some inches either way",
			Explains: `
Most people work well at a counter of the usual height. Nothing forbids another: for a tall cook, or one who sits, it
is better. But a height off the range is often a slip: the slab counted twice, or a toe kick left out.

limits { counter_height = { from = 30 } } says that it is meant.`,
		},
		{
			Slug: "bar-off-height", Severity: Note, Says: "a bar top is higher or lower than is usual",
			Source: "common practice: 42 in, or 1050 to 1100 mm, with some inches either way",
			Explains: `
Bar stools are sold for a top of the usual height. A top off the range leaves their seats too far below it, or no room
for knees. It may be meant, for people who stand.

limits { bar_height = { to = 48 } } says that it is meant.`,
		},
		{
			Slug: "toes-without-room", Severity: Warning, Says: "the recess for the feet under a cabinet is too shallow or too low",
			Source: "common practice, from memory: 3 in deep and 3 to 4 in high; EN 1116, from memory: 50 mm deep at least",
			Explains: `
Who works at a counter stands with the toes under it. Where the recess is shallow or low, shoes hit the toe kick or
the underside of the doors, and people stand back and bend. Its depth counts from the foremost door or drawer front,
for toes go under that too; where a cabinet has none, from its front edges. Handles and counters are not looked at,
nor is what lies on the floor.

The kick may be low on purpose, before a platform for instance: limits { toe_room = { high = 2 } } says so.`,
		},
		{
			Slug: "seats-too-narrow", Severity: Warning, Says: "more seats are asked for than a bar top is long enough for",
			Source: "planning guideline 9 of the kitchen and bath trade: 24 in or 610 mm for each seat; one source names 28 to 30 in as more comfortable",
			Explains: `
Who sits at a bar takes some of its length, elbows and stool. Where it is less than 24 in, or 610 mm, people sit
shoulder to shoulder, and stools with arms do not go in. The whole length of the bar top is shared out among the
seats; what stands at its ends is not looked at.

seats = 4 in a bar_top says how many are to sit there; without it nothing is judged of seats.`,
		},
		{
			Slug: "knees-too-shallow", Severity: Warning, Says: "a bar top with seats stands out too little for knees",
			Source:  "planning guideline 9 of the kitchen and bath trade: 18, 15 and 12 in (457, 381 and 305 mm) at 30, 36 and 42 in high",
			Caution: loadDecides,
			Explains: `
The lower a top is, the further knees go under it. From the edge of the bar top to the finished face on the room's
side, the battens or the cap on the skin counted, there must be 18 in at 30 in high, 15 in at 36 in and 12 in at 42
in. The three lie on one line, half an inch less for each inch of height, so between them that line is taken; under 30
in it stays 18 in, over 42 in 12 in.

More overhang asks more of what carries it. That wheelchairs come under is another matter, and not looked at.`,
		},
		{
			Slug: "no-room-behind-seats", Severity: Warning, Says: "what stands behind seats is too near to the bar top",
			Source: "planning guideline 8 of the kitchen and bath trade: 32 in or 813 mm where nobody passes",
			Explains: `
Who sits at a bar, and who gets up from it, takes room behind the edge of the top: 32 in, or 813 mm, where nobody
passes behind. To edge past takes 36 in (914 mm), to walk past 44 in (1118 mm), a wheelchair 60 in (1524 mm). Local
code may ask for more where this is the way out.

The distance is measured square to the edge, to the nearest wall, run or slab behind any of the seats. Nothing is said
where none is described there, as furniture is not.`,
		},
	}},
}
