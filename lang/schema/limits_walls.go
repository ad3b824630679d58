package schema

var limitsOfWalls = []Attr{
	{Name: "wall_plumb", Type: Object, Doc: "how far the face of a wall may lean", Fields: []Attr{
		{Name: "most", Type: Length, Default: "3/8in", Metric: "9.5mm", Doc: "within a height of over, or by so much for each such height"},
		{Name: "over", Type: Length, Default: "32in", Metric: "813mm"},
	}},
}
