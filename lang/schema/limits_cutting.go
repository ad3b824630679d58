package schema

var limitsOfCutting = []Attr{
	{Name: "chip_load", Type: Object, Doc: "what each tooth of a router's bit takes; where a field is left out, the common range of the bit, the machine and the wood", Fields: []Attr{
		{Name: "least", Type: Length},
		{Name: "most", Type: Length},
	}},
	{Name: "rpm_least", Type: Count, Default: "12000", Doc: "turns of a router per minute, in wood"},
	{Name: "rpm_most", Type: Count, Default: "24000"},
	{Name: "bite_deep", Type: Number, Default: "1", Doc: "depth of a level, of the bit's diameter"},
	{Name: "bite_wide", Type: Number, Default: "0.5", Doc: "from pass to pass, of the bit's diameter"},
	{Name: "plunge_share", Type: Number, Default: "0.5", Doc: "plunge, of the feed"},
	{Name: "ramp_most", Type: Number, Default: "5", Doc: "slope of a ramp, in degrees"},
	{Name: "low_most", Type: Reach, Default: "0.02in", Metric: "0.5mm", Doc: "how much deeper than the steel a recess is"},
	{Name: "fit_most", Type: Reach, Default: "1/32in", Metric: "1mm", Doc: "how much wider than the steel a recess is, each side"},
}
