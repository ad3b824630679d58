package schema

var cable = &Block{
	Kind: "cable", Named: true,
	Doc: "a cable between two boxes, through the boxes of a run and the knee wall behind it; a way is proposed, and who is licensed to wire decides",
	Attrs: []Attr{
		{Name: "from", Type: Ref, Refs: []string{"outlet", "switch"}, Required: true},
		{Name: "to", Type: Ref, Refs: []string{"outlet", "switch"}, Required: true},
		{Name: "through", Type: RefList, Refs: []string{"cabinet", "knee_wall"}, Doc: "what it passes, in order; the shortest legal way where it is left out"},
		{Name: "height", Type: Length, Doc: "of its holes above the floor; wherever its way is shortest where it is left out"},
		{Name: "diameter", Type: Length, Default: "3/4in", Metric: "20mm", Doc: "of its holes"},
		{Name: "slack", Type: Reach, Default: "12in", Metric: "300mm", Doc: "left over at both ends together, beside what hangs free in the boxes"},
	},
}

var cord = &Block{
	Kind: "cord", Named: true,
	Doc: "the cord of an appliance, judged by its length and its outlet; its plug goes through the sides between them, where the maker's manual and the code of the place allow it",
	Attrs: []Attr{
		{Name: "of", Type: Ref, Refs: []string{"bay"}, Required: true},
		{Name: "to", Type: Ref, Refs: []string{"outlet"}, Required: true},
		{Name: "length", Type: Length, Required: true, Doc: "as delivered"},
		{Name: "slack", Type: Reach, Default: "6in", Metric: "150mm", Doc: "left over, so that nothing pulls at the plug"},
		{Name: "plug", Type: Object, Doc: "what a hole for it must let through", Fields: []Attr{
			{Name: "width", Type: Length, Default: "1 1/2in", Metric: "40mm"},
			{Name: "height", Type: Length, Default: "1 1/2in", Metric: "40mm"},
		}},
	},
}

var drain = &Block{
	Kind: "drain", Named: true,
	Doc: "the pipe from a sink to its stub; the boards that it passes are bored for it; its way is proposed, and who is licensed to plumb decides",
	Attrs: []Attr{
		{Name: "from", Type: Ref, Refs: []string{"sink"}, Required: true},
		{Name: "to", Type: Ref, Refs: []string{"stub"}, Required: true},
		{Name: "diameter", Type: Length, Required: true, Doc: "outside"},
		{Name: "size", Type: Length, Doc: "that it is sold as; where it is left out, 1 1/4, 1 1/2, 2, 3 or 4 in of a pipe 1.66, 1.9, 2.375, 3.5 or 4.5 in across, of another its diameter"},
		{Name: "slope", Type: Number, Default: "0.0208", Doc: "fall in its length; 0.0208 is 1/4 in to the foot"},
		{Name: "trap", Type: Object, Doc: "what keeps the air of the drain out, under the middle of the sink", Fields: []Attr{
			{Name: "size", Type: Length, Doc: "that it is sold as; that of the pipe where it is left out"},
			{Name: "seal", Type: Length, Default: "2in", Metric: "50mm", Doc: "depth of the water that stands in it"},
			{Name: "drop", Type: Length, Default: "4in", Metric: "100mm", Doc: "at least, from under the bowl to the middle of the pipe that leaves it: strainer, tailpiece and trap; the default is the bare least, a tailpiece as sold is longer"},
		}},
		{Name: "clearance", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "all round the pipe in a board; the hub of a fitting needs more"},
		{Name: "from_back", Type: Reach, Doc: "where its leg along the run lies, out from the rear of the boxes; found where it is left out"},
		{Name: "vent", Type: Choice, Choices: []string{"wall", "island", "valve"}, Doc: "what lets air in behind the trap: a pipe in the wall at the stub, a loop under the counter, or an air admittance valve; in the wall where it is left out and the run stands along one"},
	},
}
