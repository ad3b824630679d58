package schema

import "slices"

var room = &Block{
	Kind: "room", Once: true,
	Doc: "the room as measured",
	Attrs: []Attr{
		{Name: "ceiling", Type: Length, Doc: "its height above the floor; nothing stops what is lifted where it is left out"},
	},
	Blocks: []*Block{wall, floor, doorway},
}

var doorway = &Block{
	Kind: "doorway", Once: true,
	Doc: "where everything comes in",
	Attrs: []Attr{
		{Name: "wall", Type: Ref, Refs: []string{"wall"}, Required: true},
		{Name: "from", Type: Place, Required: true, Doc: "its clear opening, along the wall from its left end"},
		{Name: "to", Type: Place, Required: true, Doc: "where that ends"},
		{Name: "height", Type: Length, Required: true, Doc: "of the clear opening"},
		{Name: "landing", Type: Length, Default: "36in", Metric: "900mm", Doc: "how far into the room one may stand what has come in, turned as it will be set"},
	},
}

var floor = &Block{
	Kind: "floor", Once: true,
	Doc: "the floor as surveyed from one level line",
	Attrs: []Attr{
		{Name: "laid", Type: Reach, Default: "0in", Metric: "0mm", Doc: "thickness of what is laid on the floor after the readings and before the boxes are set"},
		{Name: "read_to", Type: Reach, Doc: "how well the readings are known, up or down; half the build's mark where it is left out"},
	},
	Blocks: []*Block{reading},
}

var reading = &Block{
	Kind: "reading",
	Doc:  "one point of the floor",
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
		{Name: "heights_from", Type: Choice, Choices: []string{"floor", "line"}, Default: "floor", Doc: "what the heights of its outlets, switches, stubs and vents count from: up from the floor below each, or down from the line that the floor is read from"},
		{Name: "backing", Type: Choice, Choices: []string{"studs", "masonry", "planks"}, Default: "studs", Doc: "what holds a screw"},
		{Name: "lining", Type: Reach, Default: "1/2in", Metric: "12.5mm", Doc: "gypsum board, or boards that hold nothing, which a screw passes before it finds a stud; of a wall of studs"},
		{Name: "studs", Type: Series, Doc: "centres of the studs, along the wall from its left end", Fields: []Attr{
			{Name: "first", Type: Place, Required: true, Doc: "centre of the first"},
			{Name: "spacing", Type: Length, Default: "16in", Metric: "400mm", Doc: "from centre to centre"},
			{Name: "last", Type: Place, Doc: "none beyond it; the wall's end where it is left out"},
		}},
		{Name: "cavity", Type: Length, Default: "3 1/2in", Metric: "89mm", Doc: "depth that a box may take behind its face; that of common studs where it is left out, and not judged in other walls"},
		{Name: "extenders", Type: Flag, Default: "false", Doc: "all its boxes have an extender"},
		{Name: "ground_fault", Type: Flag, Default: "false", Doc: "all its outlets are protected against ground faults"},
		{Name: "baseboard", Type: Object, Doc: "along its foot; what stands against the wall is cut for it", Fields: []Attr{
			{Name: "height", Type: Length, Required: true},
			{Name: "thickness", Type: Length, Required: true},
			{Name: "from", Type: Place, Default: "0in", Metric: "0mm", Doc: "where it begins, along the wall"},
			{Name: "to", Type: Place, Doc: "where it ends; the wall's end where it is left out"},
		}},
	},
	Blocks: []*Block{wallOutlet, wallSwitch, stub, vent, wallReading},
}

var wallReading = &Block{
	Kind: "reading",
	Doc:  "how far the wall's face stands off a straight plumb plane at one point",
	Attrs: []Attr{
		{Name: "at", Type: Pair, Required: true, Doc: "along the wall from its left end, and above the datum"},
		{Name: "off", Type: Place, Required: true, Doc: "how far the face stands out of the plane; negative where it stands back"},
	},
}

var wallSwitch = &Block{
	Kind: "switch", Named: true,
	Doc:   "a switch in the wall",
	Attrs: wallBox,
}

var vent = &Block{
	Kind: "vent", Named: true,
	Doc: "an opening in the wall that air must reach",
	Attrs: []Attr{
		onWall,
		{Name: "width", Type: Length, Required: true},
		{Name: "height", Type: Length, Required: true},
		{Name: "clearance", Type: Reach, Default: "0in", Metric: "0mm", Doc: "all round in an opening"},
		{Name: "stands_out", Type: Reach, Default: "0in", Metric: "0mm", Doc: "from the wall's face"},
		cut,
		openTo,
		openingCorner,
	},
}

var wallOutlet = &Block{
	Kind: "outlet", Named: true,
	Doc:   "an electrical box in the wall",
	Attrs: slices.Concat(wallBox, groundFault),
}

var wallBox = []Attr{
	onWall,
	{Name: "box", Type: Object, Doc: "the box in the wall", Fields: boxFields},
	{Name: "cover", Type: Object, Doc: "its cover plate", Fields: coverFields},
	{Name: "clearance", Type: Reach, Default: "1/16in", Metric: "2mm", Doc: "between box and opening, all round"},
	{Name: "stands_out", Type: Reach, Default: "0in", Metric: "0mm", Doc: "from the wall's face"},
	cut,
	openTo,
	openingCorner,
	{Name: "extender", Type: Flag, Default: "false", Doc: "a ring brings its front out to the face of the board that it is used through"},
	wires,
}

// What all that stands in a wall says of its place and of its openings.
var (
	onWall        = Attr{Name: "at", Type: Pair, Required: true, Doc: "its centre: along the wall from its left end, and above the floor; or below the line, see `heights_from`"}
	cut           = Attr{Name: "cut", Type: Choice, Choices: []string{"hole", "slot", "notch"}, Default: "hole", Doc: "how panels let it through: with wood all round it, or open to an edge, where a pipe keeps a round end (slot) or not (notch)"}
	openTo        = Attr{Name: "open_to", Type: Choice, Choices: []string{"bottom", "top", "rear", "front", "left", "right"}, Default: "bottom", Doc: "the edge of the panel that a slot or notch is open to"}
	openingCorner = Attr{Name: "corner", Type: Reach, Default: "0in", Metric: "0mm", Doc: "radius of the corners of its openings"}
)

// wires are what a box holds, for the count of its fill.
var wires = Attr{Name: "wires", Type: Object, Doc: "what the box holds, each conductor that ends or is spliced in it or passes through", Fields: []Attr{
	{Name: "awg14", Type: Whole, Default: "0", Doc: "conductors of 14 AWG, without grounds"},
	{Name: "awg12", Type: Whole, Default: "0", Doc: "of 12 AWG, and so on"},
	{Name: "awg10", Type: Whole, Default: "0"},
	{Name: "awg8", Type: Whole, Default: "0"},
	{Name: "awg6", Type: Whole, Default: "0"},
	{Name: "awg16", Type: Whole, Default: "0"},
	{Name: "awg18", Type: Whole, Default: "0"},
	{Name: "grounds", Type: Whole, Default: "0", Doc: "equipment grounds"},
	{Name: "devices", Type: Whole, Default: "1", Doc: "yokes with an outlet or a switch"},
	{Name: "fittings", Type: Whole, Default: "0", Doc: "kinds of fittings inside that support a fixture"},
	{Name: "clamps", Type: Flag, Default: "true", Doc: "cable clamps inside the box"},
}}

var groundFault = []Attr{
	{Name: "ground_fault", Type: Flag, Default: "false", Doc: "it is protected against ground faults, by itself or by a device before it"},
}

var boxFields = []Attr{
	{Name: "width", Type: Length, Default: "2 1/4in", Metric: "76mm", Doc: "of the part that an opening must let through"},
	{Name: "height", Type: Length, Default: "3 3/4in", Metric: "76mm"},
	{Name: "depth", Type: Length, Default: "2 3/4in", Metric: "35mm", Doc: "into the wall"},
	{Name: "volume", Type: Number, Doc: "cubic inches, as marked on it"},
}

var coverFields = []Attr{
	{Name: "width", Type: Length, Default: "2 3/4in", Metric: "86mm"},
	{Name: "height", Type: Length, Default: "4 1/2in", Metric: "86mm"},
}

var stub = &Block{
	Kind: "stub", Named: true,
	Doc: "a pipe end that stands out of the wall",
	Attrs: []Attr{
		onWall,
		{Name: "diameter", Type: Length, Required: true, Doc: "outside, over the largest fitting that must pass"},
		{Name: "size", Type: Length, Doc: "that the pipe is sold as, of a drain"},
		{Name: "carries", Type: Choice, Choices: []string{"water", "drain"}, Doc: "what runs in it"},
		{Name: "stands_out", Type: Length, Required: true, Doc: "from the wall's face"},
		{Name: "clearance", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "between pipe and opening, all round"},
		cut,
		openTo,
	},
}
