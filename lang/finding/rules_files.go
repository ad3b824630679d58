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
		{
			Slug: "flatten-out-of-range", Severity: Error, Says: "straight pieces for arcs cannot be so coarse or so fine",
			Source: "common practice",
			Explains: `
flatten of the table says how far straight pieces may leave an arc, for a table that reads none. The closer they keep to
it, the shorter they are and the more of them: below 0.001 mm, the shortest edge that a cut file holds, no table cuts
better by them, and a file can have millions. Above 0.5 mm one sees and feels corners. A hundredth of a millimetre is
far below what a table keeps.`,
		},
	}},
	{"13.2", "Files of a build", []Rule{
		{
			Slug: "cuts-touch", Severity: Error, Says: "parts that lie on a sheet share a cut, which takes no width",
			Caution: machineDecides,
			Explains: `
With files = "sheets" a table cuts each part's outline where the layout has it. kerf of saw is what it leaves between
two of them. Without any their outlines run over one another: the table goes along the same line twice, and its bit
takes half of its width off both parts.

Say the width of the bit as kerf. Sheets are laid out with it, and the parts come out as large as they are drawn.`,
		},
	}},
}
