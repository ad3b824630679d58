package schema

var limitsOfAccess = []Attr{
	{Name: "opening_edge", Type: Reach, Default: "1/2in", Metric: "12mm", Doc: "wood between an opening and the panel's edge, a bore or another opening, at least"},
	{Name: "opening_joint", Type: Reach, Default: "1/4in", Metric: "6mm", Doc: "between an opening and a board that stands on its panel, at least"},
	{Name: "cover_lap", Type: Reach, Default: "1/8in", Metric: "2mm", Doc: "of a cover plate over the wood beside the opening, on each side, at least"},
	{Name: "box_gap", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "between an electrical box and the wood about it, at most"},
	{Name: "stud_thickness", Type: Length, Default: "1 1/2in", Metric: "38mm", Doc: "of the studs of the room's walls, along the wall"},
	{Name: "box_stud", Type: Reach, Default: "1/4in", Metric: "6mm", Doc: "how far a box may seem to lie in a stud, as both were measured"},
	{Name: "plug_room", Type: Reach, Default: "1 1/2in", Metric: "40mm", Doc: "between an outlet and the rear of an appliance, at least, for a plug and the bend of its cord"},
	{Name: "hand_room", Type: Length, Default: "4in", Metric: "100mm", Doc: "width and height of what is open before a valve, a trap or an outlet in a cabinet, at least"},
}
