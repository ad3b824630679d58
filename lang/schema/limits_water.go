package schema

var limitsOfWater = []Attr{
	{Name: "drain_slope", Type: Number, Doc: "least fall of a drain in its length; where it is left out, 0.0208 up to 2 1/2 in and 0.0104 over: 1/4 and 1/8 in to the foot"},
	{Name: "trap_arm", Type: Length, Doc: "longest way from a trap to its vent in the wall; that of the code for the trap's size where it is left out"},
	{Name: "tailpiece", Type: Length, Default: "24in", Metric: "610mm", Doc: "most from under the bowl down to where water leaves the trap"},
	{Name: "drain_support", Type: Length, Default: "4ft", Metric: "500mm", Doc: "between the hangers of a level pipe, at most"},
	{Name: "tap_reach", Type: Length, Default: "12in", Metric: "300mm", Doc: "from the middle of a tap to the cut-out of a sink, at most: what a spout reaches"},
	{Name: "trap_size", Type: Length, Default: "1 1/2in", Metric: "38mm", Doc: "least size of a sink's trap"},
}
