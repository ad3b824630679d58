package schema

var limitsOfStanding = []Attr{
	{Name: "aisle", Type: Reach, Default: "36in", Metric: "915mm", Doc: "least way between two fronts, or a front and a wall opposite"},
	{Name: "past_open", Type: Reach, Default: "12in", Metric: "300mm", Doc: "least way that a door, a drawer or an appliance leaves when it stands open"},
	{Name: "way_in", Type: Reach, Default: "24in", Metric: "610mm", Doc: "least way past the free end of a run that stands out from a wall; 0 where there is another way in behind it"},
	{Name: "appliance_out", Type: Reach, Default: "2in", Metric: "50mm", Doc: "how far an appliance may stand out of the fronts of its run"},
	{Name: "door_beside", Type: Reach, Default: "1in", Metric: "25mm", Doc: "room beside the open door of an appliance, to a wall or another run, for its hinge and handle"},
}
