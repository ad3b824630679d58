package finding

// aboutSeats holds the rules of SPEC.md 11.5.
var aboutSeats = []Section{
	{"11.5", "Heights and seats", []Rule{
		{
			Slug: "counter-off-height", Severity: Note, Says: "a counter is higher or lower than is usual",
			Source: "common practice: 36 in, or 890 to 920 mm, with some inches either way",
			Explains: `
Most people work well at a counter of the usual height. Nothing forbids another: for a tall cook, or one who sits, it is
better. But a height off the range is often a slip: the slab counted twice, or a toe kick left out.

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
	}},
}
