package finding

var aboutFiles = []Section{
	{"13.1", "Cut files", []Rule{
		{
			Slug: "relief-without-bit", Severity: Error, Says: "corners are to be cleared for a bit of unknown width",
			Caution: machineDecides,
			Explains: `
A round bit leaves every inside corner as round as it is itself. relief of the table has it cut a little beyond the
corner, so that something square goes in; how far depends on the bit. State its diameter as bit.`,
		},
		{
			Slug: "no-room-for-relief", Severity: Error, Says: "a corner cannot be cleared for the table's bit",
			Source:  "plain arithmetic on where the bit stands",
			Caution: machineDecides,
			Explains: `
relief of the table has the bit cut a little beyond each sharp inside corner. Here it would break out of the part, cut
into something beside it, or the sides of the corner are too short for it.

Take a smaller bit, give the opening round corners by corner, which are left alone, or clear the other way: on the
longer side the bit goes further along one side and not beyond the other. Or leave relief out and square the corners by
hand.`,
		},
	}},
}
