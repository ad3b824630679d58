package schema

var limitsOfFinish = []Attr{
	{Name: "slide_gap", Type: Reach, Default: "1/16in", Metric: "1.5mm", Doc: "over a counter, under what it slides in below"},
	{Name: "flush", Type: Reach, Default: "1/32in", Metric: "0.5mm", Doc: "how far faces that are to lie in one plane may be off, and how far a slab may reach into a wall that leans in"},
	{Name: "seam_support", Type: Reach, Default: "4in", Metric: "100mm", Doc: "from a seam of a counter to the nearest board that carries it"},
	{Name: "piece_least", Type: Reach, Default: "3in", Metric: "75mm", Doc: "length of a piece of a slab or a skin"},
	{Name: "wall_play", Type: Reach, Default: "1/4in", Metric: "6mm", Doc: "how much shorter boxes without a filler are than the place between two walls"},
	{Name: "hinge_room", Type: Object, Doc: "what a hinge takes inside a box", Fields: []Attr{
		{Name: "half", Type: Reach, Default: "1in", Metric: "25mm", Doc: "over and under its centre"},
		{Name: "back", Type: Reach, Default: "3in", Metric: "75mm", Doc: "behind its door"},
	}},
	{Name: "vent_free", Type: Number, Default: "1", Doc: "how much of a box's front must be open before a vent that opens into it, as a share of the vent"},
}
