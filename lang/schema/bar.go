package schema

var kneeWall = &Block{
	Kind: "knee_wall", Named: true,
	Doc: "the framed wall behind a run that carries a raised bar top",
	Attrs: []Attr{
		{Name: "behind", Type: Ref, Refs: []string{"run"}, Required: true},
		{Name: "top", Type: Length, Doc: "top of the upper plate above the floor; follows from the bar top's height where it is left out"},
		{Name: "lumber", Type: Ref, Refs: []string{"stick"}, Required: true, Doc: "plates and studs; its width is the wall's thickness"},
		{Name: "spacing", Type: Length, Default: "16in", Metric: "400mm", Doc: "between centres of studs, at most"},
		{Name: "gap", Type: Reach, Default: "0in", Metric: "0mm", Doc: "between the backs of the boxes and the framing"},
		{Name: "left_inset", Type: Place, Doc: "from the run's left end to the framing, as one faces the run; where it is left out, so that a skin on that end ends flush with the run or its end panel, else 0"},
		{Name: "right_inset", Type: Place, Doc: "from the run's right end to the framing, likewise"},
		{Name: "screws", Type: Ref, Refs: []string{"screw"}, Doc: "that join plates and studs"},
		{Name: "floor_screws", Type: Ref, Refs: []string{"screw"}, Doc: "through the lower plates into the floor"},
		{Name: "run_screws", Type: Ref, Refs: []string{"screw"}, Doc: "from inside the boxes through their backs into the studs"},
		{Name: "router", Type: Ref, Refs: []string{"router"}, Doc: "that cuts the recesses; needed where there are supports"},
		{Name: "top_plates", Type: Count, Default: "1", Doc: "upper plates, one on another"},
		{Name: "bottom_plates", Type: Count, Default: "1", Doc: "lower plates, one on another"},
		{Name: "ground_fault", Type: Flag, Default: "false", Doc: "all its outlets are protected against ground faults"},
		{Name: "studs_from", Type: Choice, Choices: []string{"left", "right"}, Default: "left", Doc: "the end that the spacing of the studs is counted from"},
		{Name: "bored", Type: Object, Doc: "holes that are bored through its studs on site, for cables and pipes: judged, not drawn", Fields: []Attr{
			{Name: "diameter", Type: Length, Required: true},
			{Name: "from_work", Type: Length, Doc: "of their centres, from the face on the work side; the middle of the studs where it is left out"},
			{Name: "plates", Type: Flag, Default: "false", Doc: "steel plates on the studs before them keep nails and screws off what runs through"},
		}},
		{Name: "notched", Type: Length, Doc: "depth of notches that are cut into its studs on site: judged, not drawn"},
	},
	Blocks: []*Block{supports, kneeOutlet, skin, corner},
}

var supports = &Block{
	Kind: "supports", Once: true,
	Doc: "steel plates let in flush into the upper plate, spaced evenly",
	Attrs: []Attr{
		{Name: "count", Type: Count, Required: true},
		{Name: "at", Type: Places, Doc: "centres from the left end of the framing, as many as count, where they are not to be spaced by rule"},
		{Name: "plate", Type: Ref, Refs: []string{"flat_bar"}, Required: true},
		{Name: "reach", Type: Length, Required: true, Doc: "from the bare framing, on the room's side"},
		{Name: "tail", Type: Length, Doc: "how far the steel lies on the wood; the whole width of the plate where it is left out"},
		{Name: "corner", Type: Reach, Doc: "radius of the steel's corners at the tail; the bit's radius less the fit where it is left out"},
		{Name: "end", Type: Length, Doc: "from either end of the framing to the first centre; half the spacing between them where it is left out"},
		{Name: "screws", Type: Ref, Refs: []string{"screw"}, Doc: "down through each steel plate into the wood"},
		{Name: "screws_each", Type: Count, Default: "4"},
		{Name: "bolted", Type: Flag, Default: "false", Doc: "bolts hold the tails, and somebody else has reckoned them"},
		{Name: "top_screws", Type: Ref, Refs: []string{"screw"}, Doc: "up through each steel plate into the bar top"},
		{Name: "top_screws_each", Type: Count, Default: "4"},
		{Name: "hole", Type: Reach, Default: "1/32in", Metric: "0.8mm", Doc: "how much wider than the screw a hole is"},
		{Name: "movement", Type: Length, Default: "1/4in", Metric: "6mm", Doc: "how far a bar top of solid wood may move either way along a slot"},
	},
}

var counterTap = &Block{
	Kind: "tap", Named: true,
	Doc: "a hole for a tap",
	Attrs: []Attr{
		{Name: "diameter", Type: Length, Default: "35mm", Doc: "of the hole"},
		{Name: "behind", Type: Ref, Refs: []string{"sink"}, Doc: "the sink that it stands behind, in the middle; from_left instead where it is left out"},
		{Name: "from_left", Type: Place, Doc: "its centre from the run's left end"},
		{Name: "from_rear", Type: Length, Default: "2 1/2in", Metric: "60mm", Doc: "its centre from the slab's rear edge"},
	},
}

var counter = &Block{
	Kind: "counter", Named: true,
	Doc: "the slab on a run",
	Attrs: []Attr{
		{Name: "over", Type: Ref, Refs: []string{"run"}, Required: true},
		{Name: "slab", Type: Ref, Refs: []string{"slab"}, Required: true},
		{Name: "overhang", Type: Object, Doc: "beyond the boxes", Fields: []Attr{
			{Name: "front", Type: Reach, Default: "0in", Metric: "0mm"},
			{Name: "left", Type: Reach, Default: "0in", Metric: "0mm"},
			{Name: "right", Type: Reach, Default: "0in", Metric: "0mm"},
		}},
		{Name: "seams", Type: Places, Doc: "where its pieces meet, from the run's left end; one piece where it is left out"},
	},
	Blocks: []*Block{sink, counterTap},
}

var sink = &Block{
	Kind: "sink", Named: true,
	Doc: "a cut-out for a sink",
	Attrs: []Attr{
		{Name: "in", Type: Ref, Refs: []string{"cabinet"}, Required: true, Doc: "the box that it hangs in"},
		{Name: "cut", Type: Object, Required: true, Doc: "the cut-out, from the maker's template", Fields: []Attr{
			{Name: "width", Type: Length, Required: true},
			{Name: "depth", Type: Length, Required: true},
			{Name: "radius", Type: Reach, Default: "1/2in", Metric: "12mm", Doc: "of its corners"},
		}},
		{Name: "from_front", Type: Reach, Doc: "from the slab's front edge to the cut-out; it lies in the middle of the box where this is left out"},
		{Name: "bowl", Type: Length, Default: "7in", Metric: "180mm", Doc: "how deep it hangs, from the slab's upper face to its underside"},
		{Name: "rail", Type: Reach, Default: "2in", Metric: "50mm", Doc: "least width of slab that must stay round the cut-out"},
	},
}

var barTop = &Block{
	Kind: "bar_top", Named: true,
	Doc: "the slab on a knee wall",
	Attrs: []Attr{
		{Name: "over", Type: Ref, Refs: []string{"knee_wall"}, Required: true},
		{Name: "slab", Type: Ref, Refs: []string{"slab"}, Required: true},
		{Name: "height", Type: Length, Doc: "of its upper face above the floor; follows from the knee wall's top where it is left out"},
		{Name: "overhang", Type: Object, Doc: "beyond the bare framing", Fields: []Attr{
			{Name: "room", Type: Reach, Default: "0in", Metric: "0mm", Doc: "on the side of the guests"},
			{Name: "work", Type: Reach, Default: "0in", Metric: "0mm", Doc: "on the side of the run"},
			{Name: "left", Type: Reach, Default: "0in", Metric: "0mm", Doc: "as one faces the run"},
			{Name: "right", Type: Reach, Default: "0in", Metric: "0mm"},
		}},
		{Name: "held", Type: Flag, Default: "false", Doc: "held down where it lies by more than its weight and what is described: adhesive, inserts, screws from below"},
		{Name: "seats", Type: Whole, Default: "0", Doc: "how many are to sit at it on the room's side; nothing is judged of seats where it is 0"},
		{Name: "seams", Type: Places, Doc: "where its pieces meet, from the left end of the framing; one piece where it is left out"},
	},
}
