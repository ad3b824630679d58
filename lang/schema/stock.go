package schema

var sheet = &Block{
	Kind: "sheet", Named: true,
	Doc: "a board sold by the sheet, with its sizes as measured",
	Attrs: []Attr{
		{Name: "size", Type: SheetSize, Required: true, Doc: "length and width of one sheet"},
		{Name: "thickness", Type: Length, Required: true, Doc: "as measured, not as sold"},
		{Name: "batch", Type: Text, Doc: "that the thickness was measured on"},
		{Name: "grain", Type: Choice, Choices: []string{"length", "none"}, Default: "length", Doc: "which way the face grain runs"},
		{Name: "density", Type: Number, Doc: "kg per cubic metre, for weights"},
		{Name: "stiffness", Type: Number, Default: "6.96", Doc: "modulus of elasticity in GPa, for shelves; that of softwood plywood, 1.01 million psi, where it is left out; of MDF it is about 3.59, of particleboard 2.76 to 4.14; 0 leaves its shelves unjudged"},
		{Name: "price", Type: Number, Doc: "of one sheet, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
	Blocks: []*Block{alsoSold, offcut},
}

var alsoSold = &Block{
	Kind: "also",
	Doc:  "a further size in which the board is sold",
	Attrs: []Attr{
		{Name: "size", Type: SheetSize, Required: true, Doc: "length and width of one sheet"},
		{Name: "price", Type: Number, Doc: "of one sheet, in the build's currency"},
	},
}

var offcut = &Block{
	Kind: "offcut",
	Doc:  "a piece of the board that is there already: it costs nothing, and its edges are not trimmed",
	Attrs: []Attr{
		{Name: "size", Type: SheetSize, Required: true, Doc: "along the grain and across it, as it can be used"},
		{Name: "count", Type: Count, Default: "1", Doc: "how many there are"},
	},
}

var stick = &Block{
	Kind: "stick", Named: true,
	Doc: "lumber sold in lengths, with its sizes as dressed",
	Attrs: []Attr{
		{Name: "thickness", Type: Length, Required: true, Doc: "the smaller side"},
		{Name: "width", Type: Length, Required: true, Doc: "the larger side"},
		{Name: "lengths", Type: Lengths, Required: true, Doc: "lengths on sale, rising"},
		{Name: "prices", Type: Numbers, Doc: "of one stick of each length, in the same order"},
		{Name: "ends", Type: Reach, Doc: "taken off each end, where a stick may be split or out of square, the cut included"},
		{Name: "density", Type: Number, Doc: "kg per cubic metre, for weights"},
		{Name: "gravity", Type: Number, Default: "0.42", Doc: "specific gravity, for what screws hold in it: spruce, pine and fir 0.42, Douglas fir 0.50"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var flatBar = &Block{
	Kind: "flat_bar", Named: true,
	Doc: "flat steel bar sold in lengths",
	Attrs: []Attr{
		{Name: "thickness", Type: Length, Required: true, Doc: "as measured"},
		{Name: "width", Type: Length, Required: true},
		{Name: "lengths", Type: Lengths, Required: true, Doc: "lengths on sale, rising"},
		{Name: "prices", Type: Numbers, Doc: "of one bar of each length, in the same order"},
		{Name: "density", Type: Number, Default: "7850", Doc: "kg per cubic metre; mild steel where it is left out"},
		{Name: "yield", Type: Number, Default: "248.2113", Metric: "235", Doc: "yield stress in MPa; 248.2113 is 36 ksi"},
		{Name: "stiffness", Type: Number, Default: "200", Doc: "modulus of elasticity in GPa; 200 is 29000 ksi"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var slab = &Block{
	Kind: "slab", Named: true,
	Doc: "what a counter or a bar top is made of",
	Attrs: []Attr{
		{Name: "thickness", Type: Length, Required: true},
		{Name: "size", Type: SheetSize, Doc: "the longest and widest piece on sale; any where it is left out"},
		{Name: "solid", Type: Flag, Default: "false", Doc: "solid wood, grain along its length: it swells and shrinks across, and what holds it must let it"},
		{Name: "swell", Type: Number, Default: "0.0037", Doc: "of solid wood: the share of its width that it swells for each per cent of moisture; sawn plain, oak is about 0.0037, beech 0.0043"},
		{Name: "material", Type: Choice, Choices: []string{"wood", "stone", "composite"}, Default: "wood", Doc: "what it is, for how far it carries itself; composite is crushed stone in resin and is held to what stone is"},
		{Name: "density", Type: Number, Doc: "kg per cubic metre, for weights"},
		{Name: "price", Type: Number, Doc: "of one square metre, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var screw = &Block{
	Kind: "screw", Named: true,
	Doc: "a screw sold by the box",
	Attrs: []Attr{
		{Name: "diameter", Type: Length, Required: true, Doc: "over the thread; #8 is 0.164 in, #10 is 0.190 in"},
		{Name: "length", Type: Length, Required: true, Doc: "from the tip to the surface it is driven flush with"},
		{Name: "head", Type: Choice, Choices: []string{"flat", "trim", "wide"}, Default: "flat", Doc: "flat is sunk flush; trim is small, hardly seen and holds little; wide has a washer or is like one, and stays on the surface"},
		{Name: "per_box", Type: Count, Required: true},
		{Name: "price", Type: Number, Doc: "of one box, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var fitting = &Block{
	Kind: "fitting", Named: true,
	Doc: "a hinge, a pair of slides, a shelf pin, a leg, a handle: what is bought by the piece and counted by the build",
	Attrs: []Attr{
		{Name: "per_pack", Type: Count, Default: "1", Doc: "pieces in a pack"},
		{Name: "price", Type: Number, Doc: "of one pack, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var banding = &Block{
	Kind: "banding", Named: true,
	Doc: "edge banding, bought by the roll",
	Attrs: []Attr{
		{Name: "thickness", Type: Length, Required: true, Doc: "as it stands on the edge"},
		{Name: "width", Type: Length, Doc: "as sold"},
		{Name: "roll", Type: Length, Required: true, Doc: "length of a roll"},
		{Name: "spare", Type: Reach, Default: "1in", Metric: "25mm", Doc: "cut longer than each edge, to be trimmed"},
		{Name: "price", Type: Number, Doc: "of one roll, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}

var finish = &Block{
	Kind: "finish", Named: true, Later: true,
	Doc: "paint, varnish or oil",
	Attrs: []Attr{
		{Name: "coverage", Type: Number, Required: true, Doc: "square metres that a litre covers, one coat"},
		{Name: "coats", Type: Count, Default: "2"},
		{Name: "can", Type: Number, Required: true, Doc: "litres in a can"},
		{Name: "price", Type: Number, Doc: "of one can, in the build's currency"},
		{Name: "label", Type: Text, Doc: "what one asks for at the counter"},
	},
}
