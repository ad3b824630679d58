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

Take a smaller bit, give the opening round corners by corner, which are left alone, or clear the other way: along the
long side the bit goes on into the shorter side, and not into the longer. Or leave relief out and square the corners by
hand. The end of a groove that is too narrow is no error: its corners stay as the bit leaves them.`,
		},
		{
			Slug: "bit-too-wide-for-groove", Severity: Warning, Says: "a groove is narrower than the table's bit",
			Source:  "plain arithmetic on the groove's width",
			Caution: machineDecides,
			Explains: `
The table cuts a recess with its bit inside the outline. Between two closed sides that are nearer than the bit is wide
it does not go in: software for the table leaves the groove out, or cuts it too wide. Give the table a bit that is no
wider than its narrowest groove, or cut such grooves on a saw. A groove takes its width from the board that stands in
it and the play round that.`,
		},
		{
			Slug: "layers-alike", Severity: Error, Says: "two kinds of work would be on one layer of the cut files",
			Caution: machineDecides,
			Explains: `
Software for a table tells by its layer what to do with a contour: to cut it through, to clear it to a depth, or to
leave it alone. Where two kinds share a layer, an outline may be cut as deep as a recess, and a note as deep as an
outline.

Names are compared as they are written: in capitals, transliterated, cut to 31 characters; with depths = true as much of
them as the depth leaves.`,
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
			Slug: "cuts-touch", Severity: Error, Says: "parts lie nearer on a sheet than the table's bit is wide",
			Source:  "plain arithmetic on where the parts lie",
			Caution: machineDecides,
			Explains: `
With files = "sheets" a table cuts each part's outline where the layout has it, with its bit outside of the line. kerf of
saw is what the layout leaves between two of them. Where the bit is wider, it takes what it is wider off the neighbour;
without any kerf the table goes along one line twice. What overrun has recesses run on by must find room there too.

Say the width of the bit as kerf. Sheets are laid out with it, and the parts come out as large as they are drawn. With
files = "each" the shop's software lays them out by its own bit.`,
		},
	}},
}
