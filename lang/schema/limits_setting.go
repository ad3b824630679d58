package schema

var limitsOfSetting = []Attr{
	{Name: "shim", Type: Object, Doc: "what shims under boxes and knee walls do", Fields: []Attr{
		{Name: "step", Type: Length, Default: "1/32in", Metric: "0.5mm", Doc: "that their thickness comes in"},
		{Name: "most", Type: Length, Default: "1/2in", Metric: "12mm", Doc: "thickness at one place"},
	}},
	{Name: "tops_flat", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "how far the tops of boxes may lie out of one plane"},
	{Name: "floor_beyond", Type: Reach, Default: "12in", Metric: "300mm", Doc: "how far what stands on the floor may lie outside its readings"},
	{Name: "floor_flat", Type: Object, Doc: "how much readings of a floor may differ", Fields: []Attr{
		{Name: "near", Type: Length, Default: "1/4in", Metric: "6.4mm", Doc: "within a stretch of near_over, or by so much for each such stretch between neighbours"},
		{Name: "near_over", Type: Length, Default: "32in", Metric: "813mm"},
		{Name: "far", Type: Length, Default: "1/2in", Metric: "12.7mm", Doc: "within far_over"},
		{Name: "far_over", Type: Length, Default: "20ft", Metric: "6096mm"},
	}},
}
