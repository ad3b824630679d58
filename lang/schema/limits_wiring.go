package schema

var limitsOfWiring = []Attr{
	{Name: "ground_fault_within", Type: Reach, Default: "6ft", Metric: "1.8m", Doc: "reach of a sink's rim, along the shortest way of a cord, within which an outlet is protected against ground faults"},
	{Name: "ground_fault_area", Type: Flag, Default: "false", Doc: "every outlet of a build with a sink is to be protected, at any distance, as codes from 2023 on ask where food or drink is made"},
	{Name: "pipe_room", Type: Reach, Default: "1in", Metric: "25mm", Doc: "between a cable or a cord and the pipe or the trap of a drain, at least"},
	{Name: "air_gap", Type: Object, Doc: "least gaps round an appliance that breathes at its rear, where its maker says nothing else", Fields: []Attr{
		{Name: "back", Type: Reach, Default: "1in", Metric: "25mm"},
		{Name: "top", Type: Reach, Default: "1in", Metric: "25mm"},
		{Name: "sides", Type: Reach, Default: "1/8in", Metric: "3mm"},
	}},
}
