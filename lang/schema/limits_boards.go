package schema

var limitsOfBoards = []Attr{
	{Name: "shelf_load", Type: Number, Default: "718.2", Doc: "on shelves, in Pa, that is newtons on a square metre: 15 psf, or 73 kg on a square metre"},
	{Name: "shelf_sag", Type: Object, Doc: "how far a shelf may sag under it", Fields: []Attr{
		{Name: "span_over", Type: Number, Default: "192", Doc: "its span divided by this; 192 is 1/16 in to the foot"},
		{Name: "most", Type: Length, Default: "1/4in", Doc: "and no more than this"},
		{Name: "in_time", Type: Number, Default: "1.5", Doc: "sag in the end, of sag at first"},
	}},
	{Name: "studs_each", Type: Count, Default: "2", Doc: "studs that each box along a wall of studs is to be screwed to"},
}
