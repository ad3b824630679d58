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
	{"13.8", "Other work of the router", []Rule{
		{
			Slug: "not-routed", Severity: Warning, Says: "work that a router is asked for is left out of its programs",
			Caution: machineDecides,
			Explains: `
A router is asked by also for work in panels that it cannot do: its bit is too wide for an opening, a groove or a notch,
the machine does not move so far, a piece has no room for the tabs that are to hold it, or the bore that relieves a corner
would cut into something else. The rest of the panel is cut all the same. What is left out has to be cut by other means,
or with another bit: a second router can be described for it.

Where the outline is left out, the panel has to be cut to size before its program is run.`,
		},
		{
			Slug: "left-to-drill", Severity: Note, Says: "a hole is narrower than the router's bit",
			Caution: machineDecides,
			Explains: `
A router is asked for hinge cups or for holes of shelf pins, and its bit is wider than they are. They are left to the
drill. A bit of their width, which has to cut at its centre, makes them straight down; a narrower one round a helix.`,
		},
	}},
}
