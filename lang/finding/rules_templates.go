package finding

// aboutTemplates holds what no template can do.
var aboutTemplates = []Section{
	{"13.7", "Feeds, and the router led by hand", []Rule{
		{
			Slug: "guide-unclear", Severity: Error, Says: "a router led by hand has no guide, or two",
			Caution: machineDecides,
			Explains: `
A template leads the router by a bush in its base or by a bearing on the bit. How much larger its opening is than the
recess follows from the width of that one: bush or bearing is to be given, and not both.`,
		},
		{
			Slug: "guide-too-narrow", Severity: Error, Says: "a guide is no wider than the bit",
			Caution: machineDecides,
			Explains: `
The bit goes through the bush, so the bush is wider than the bit. A bearing is as wide as the bit, or wider. With a
narrower guide the bit would cut the template that it runs along.`,
		},
		{
			Slug: "guide-bit-too-wide", Severity: Error, Says: "the bit of a router led by hand does not fit a recess",
			Caution: machineDecides,
			Explains: `
The bit is wider than the recess, or it rounds the corners more than the steel is shaped for, so that the steel would meet
the wood. Take a smaller bit, or state the wider one for the router as a whole: then the steel's corners follow it.`,
		},
		{
			Slug: "collar-too-long", Severity: Error, Says: "a guide bush would reach through its template",
			Caution: machineDecides,
			Explains: `
The bush stands out of the router's base by more than the template is thick, or as much. It would rub on the wood, and the base would
not lie on the board. Take a thicker board, or file the bush shorter.`,
		},
	}},
}
