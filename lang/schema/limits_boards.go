package schema

var limitsOfBoards = []Attr{
	{Name: "shelf_load", Type: Number, Default: "718.2", Doc: "on shelves, in Pa, that is newtons on a square metre: 15 psf, or 73 kg on a square metre"},
	{Name: "bottle_load", Type: Number, Default: "2873", Doc: "on shelves of a cabinet that holds bottles, in Pa: 60 psf, or 293 kg on a square metre"},
	{Name: "shelf_sag", Type: Object, Doc: "how far a shelf may sag under it", Fields: []Attr{
		{Name: "span_over", Type: Number, Default: "192", Doc: "its span divided by this; 192 is 1/16 in to the foot"},
		{Name: "most", Type: Length, Default: "1/4in", Doc: "and no more than this"},
		{Name: "in_time", Type: Number, Default: "1.5", Doc: "sag in the end, of sag at first"},
	}},
	{Name: "stud_spacing", Type: Length, Default: "24in", Metric: "610mm", Doc: "between centres of studs of a knee wall, at most"},
	{Name: "stud_bore", Type: Number, Default: "0.6", Doc: "hole in a stud, of its width; 0.4 where it bears a floor or a roof"},
	{Name: "stud_notch", Type: Number, Default: "0.4", Doc: "notch in a stud, of its width; 0.25 where it bears a floor or a roof"},
	{Name: "stud_edge", Type: Length, Default: "5/8in", Doc: "wood between a hole and an edge of a stud, at least"},
	{Name: "nail_plate", Type: Length, Default: "1 1/4in", Metric: "32mm", Doc: "wood between a hole for a cable or a pipe and an edge of a stud, under which a steel plate goes before it"},
	{Name: "plate_cut", Type: Number, Default: "0.5", Doc: "what may be cut out of a plate without a tie across, of its width"},
	{Name: "support_to_stud", Type: Length, Default: "8in", Metric: "200mm", Doc: "from the centre of a support to that of the nearest stud, at most"},
	{Name: "lift", Type: Number, Default: "50", Doc: "what two people carry, in kg; 110 lb"},
	{Name: "studs_each", Type: Count, Default: "2", Doc: "studs that each box along a wall of studs is to be screwed to"},
}
