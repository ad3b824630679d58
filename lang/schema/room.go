package schema

var room = &Block{
	Kind: "room", Once: true,
	Doc:    "the room as measured",
	Blocks: []*Block{wall, floor},
}

var floor = &Block{
	Kind: "floor", Once: true, Later: true,
	Doc:    "the floor as surveyed from one level line",
	Blocks: []*Block{reading},
}

var reading = &Block{
	Kind: "reading", Later: true,
	Doc: "one point of the floor",
	Attrs: []Attr{
		{Name: "point", Type: Spot, Required: true, Doc: "x along the first wall, y out from it, and how far the floor lies below the line"},
	},
}

var wall = &Block{
	Kind: "wall", Named: true,
	Doc: "one wall; walls follow one another left to right as one turns round facing them",
	Attrs: []Attr{
		{Name: "length", Type: Length, Required: true},
		{Name: "corner", Type: Angle, Default: "90", Doc: "interior angle to the next wall, in degrees; over 180 for an outside corner"},
		{Name: "backing", Type: Choice, Choices: []string{"studs", "masonry", "planks"}, Default: "studs", Doc: "what holds a screw"},
		{Name: "lining", Type: Reach, Default: "1/2in", Metric: "12.5mm", Doc: "gypsum board, or boards that hold nothing, which a screw passes before it finds a stud; of a wall of studs"},
		{Name: "studs", Type: Series, Doc: "centres of the studs, along the wall from its left end", Fields: []Attr{
			{Name: "first", Type: Place, Required: true, Doc: "centre of the first"},
			{Name: "spacing", Type: Length, Default: "16in", Metric: "400mm", Doc: "from centre to centre"},
			{Name: "last", Type: Place, Doc: "none beyond it; the wall's end where it is left out"},
		}},
		{Name: "baseboard", Type: Object, Doc: "along its foot; what stands against the wall is cut for it", Fields: []Attr{
			{Name: "height", Type: Length, Required: true},
			{Name: "thickness", Type: Length, Required: true},
			{Name: "from", Type: Place, Default: "0in", Metric: "0mm", Doc: "where it begins, along the wall"},
			{Name: "to", Type: Place, Doc: "where it ends; the wall's end where it is left out"},
		}},
	},
	Blocks: []*Block{wallOutlet, wallSwitch, stub, vent},
}

var wallSwitch = &Block{
	Kind: "switch", Named: true,
	Doc:   "a switch in the wall",
	Attrs: wallOutlet.Attrs,
}

var vent = &Block{
	Kind: "vent", Named: true,
	Doc: "an opening in the wall that air must reach",
	Attrs: []Attr{
		{Name: "at", Type: Pair, Required: true, Doc: "its centre: along the wall from its left end, and above the floor"},
		{Name: "width", Type: Length, Required: true},
		{Name: "height", Type: Length, Required: true},
		{Name: "clearance", Type: Reach, Default: "0in", Metric: "0mm", Doc: "all round in an opening"},
		{Name: "stands_out", Type: Reach, Default: "0in", Metric: "0mm", Doc: "from the wall's face"},
		{Name: "cut", Type: Choice, Choices: []string{"hole", "slot", "notch"}, Default: "hole", Doc: "how panels let it through: with wood all round it, or open to an edge, where a pipe keeps a round end (slot) or not (notch)"},
		{Name: "open_to", Type: Choice, Choices: []string{"bottom", "top", "rear", "front", "left", "right"}, Default: "bottom", Doc: "the edge of the panel that a slot or notch is open to"},
		{Name: "corner", Type: Reach, Default: "0in", Metric: "0mm", Doc: "radius of the corners of its openings"},
	},
}

var wallOutlet = &Block{
	Kind: "outlet", Named: true,
	Doc: "an electrical box in the wall",
	Attrs: []Attr{
		{Name: "at", Type: Pair, Required: true, Doc: "its centre: along the wall from its left end, and above the floor"},
		{Name: "box", Type: Object, Doc: "the box in the wall", Fields: boxFields},
		{Name: "cover", Type: Object, Doc: "its cover plate", Fields: coverFields},
		{Name: "clearance", Type: Reach, Default: "1/16in", Metric: "2mm", Doc: "between box and opening, all round"},
		{Name: "stands_out", Type: Reach, Default: "0in", Metric: "0mm", Doc: "from the wall's face"},
		{Name: "cut", Type: Choice, Choices: []string{"hole", "slot", "notch"}, Default: "hole", Doc: "how panels let it through: with wood all round it, or open to an edge, where a pipe keeps a round end (slot) or not (notch)"},
		{Name: "open_to", Type: Choice, Choices: []string{"bottom", "top", "rear", "front", "left", "right"}, Default: "bottom", Doc: "the edge of the panel that a slot or notch is open to"},
		{Name: "corner", Type: Reach, Default: "0in", Metric: "0mm", Doc: "radius of the corners of its openings"},
	},
}

var boxFields = []Attr{
	{Name: "width", Type: Length, Default: "2 1/4in", Metric: "76mm", Doc: "of the part that an opening must let through"},
	{Name: "height", Type: Length, Default: "3 3/4in", Metric: "76mm"},
	{Name: "depth", Type: Length, Default: "2 3/4in", Metric: "35mm", Doc: "into the wall"},
}

var coverFields = []Attr{
	{Name: "width", Type: Length, Default: "2 3/4in", Metric: "86mm"},
	{Name: "height", Type: Length, Default: "4 1/2in", Metric: "86mm"},
}

var stub = &Block{
	Kind: "stub", Named: true,
	Doc: "a pipe end that stands out of the wall",
	Attrs: []Attr{
		{Name: "at", Type: Pair, Required: true, Doc: "its centre: along the wall from its left end, and above the floor"},
		{Name: "diameter", Type: Length, Required: true, Doc: "outside, over the largest fitting that must pass"},
		{Name: "size", Type: Length, Doc: "that the pipe is sold as, of a drain"},
		{Name: "carries", Type: Choice, Choices: []string{"water", "drain"}, Doc: "what runs in it"},
		{Name: "stands_out", Type: Length, Required: true, Doc: "from the wall's face"},
		{Name: "clearance", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "between pipe and opening, all round"},
		{Name: "cut", Type: Choice, Choices: []string{"hole", "slot", "notch"}, Default: "hole", Doc: "how panels let it through: with wood all round it, or open to an edge, where a pipe keeps a round end (slot) or not (notch)"},
		{Name: "open_to", Type: Choice, Choices: []string{"bottom", "top", "rear", "front", "left", "right"}, Default: "bottom", Doc: "the edge of the panel that a slot or notch is open to"},
	},
}
