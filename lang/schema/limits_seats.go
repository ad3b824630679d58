package schema

var limitsOfSeats = []Attr{
	{Name: "counter_height", Type: Object, Doc: "heights of a counter that are usual", Fields: []Attr{
		{Name: "from", Type: Reach, Default: "34in", Metric: "850mm"},
		{Name: "to", Type: Reach, Default: "38in", Metric: "970mm"},
	}},
	{Name: "bar_height", Type: Object, Doc: "heights of a bar top that are usual", Fields: []Attr{
		{Name: "from", Type: Reach, Default: "40in", Metric: "1000mm"},
		{Name: "to", Type: Reach, Default: "44in", Metric: "1150mm"},
	}},
}
