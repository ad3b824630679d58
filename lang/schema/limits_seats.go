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
	{Name: "toe_room", Type: Object, Doc: "the recess for the feet of who stands at a cabinet", Fields: []Attr{
		{Name: "deep", Type: Reach, Default: "2in", Metric: "50mm", Doc: "behind the foremost front, or behind the box where it has none"},
		{Name: "high", Type: Reach, Default: "3in", Metric: "75mm"},
	}},
	{Name: "seat_width", Type: Reach, Default: "24in", Metric: "610mm", Doc: "of a bar top, for each who sits at it"},
	{Name: "knee_depth", Type: Object, Doc: "clear depth for knees under a bar top, by its height", Fields: []Attr{
		{Name: "table", Type: Reach, Default: "18in", Metric: "457mm", Doc: "at 30 in and lower"},
		{Name: "counter", Type: Reach, Default: "15in", Metric: "381mm", Doc: "at 36 in"},
		{Name: "bar", Type: Reach, Default: "12in", Metric: "305mm", Doc: "at 42 in and higher"},
	}},
	{Name: "behind_seats", Type: Reach, Default: "32in", Metric: "813mm", Doc: "from the edge of a bar top with seats to what stands behind them"},
}
