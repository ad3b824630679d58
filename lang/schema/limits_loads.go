package schema

var limitsOfLoads = []Attr{
	{Name: "bar_load", Type: Object, Doc: "what a bar top bears beyond its own weight", Fields: []Attr{
		{Name: "edge", Type: Number, Default: "890", Doc: "somebody who leans or sits on its edge, in newtons; 890 is 200 lbf"},
		{Name: "area", Type: Number, Default: "2394", Doc: "spread over it, in newtons on a square metre; 2394 is 50 psf"},
		{Name: "share", Type: Number, Default: "0.5", Doc: "how much of edge one steel plate takes where it lies between two of them"},
		{Name: "end_share", Type: Number, Doc: "how much of edge the last plate at either end takes; by the lever past it where it is left out"},
		{Name: "duration", Type: Number, Default: "1.6", Doc: "how much more a screw in wood holds while edge lasts, which is minutes"},
	}},
	{Name: "steel_stress", Type: Number, Default: "0.6", Doc: "how much of its yield steel that carries a bar top may bear"},
	{Name: "bar_sag", Type: Object, Doc: "how far the edge of a bar top may go down: twice its overhang, divided by these", Fields: []Attr{
		{Name: "live", Type: Number, Default: "360", Doc: "under what it bears"},
		{Name: "total", Type: Number, Default: "240", Doc: "with its own weight"},
	}},
	{Name: "floor_wood", Type: Length, Default: "3/4in", Metric: "18mm", Doc: "wood of the floor that screws of a knee wall hold in"},
	{Name: "bar_span", Type: Object, Doc: "a bar top's overhang between steel plates, clear, half as much past the last one; and stone of counters over bays", Fields: []Attr{
		{Name: "thin", Type: Length, Default: "24in", Metric: "610mm", Doc: "of stone of 2 cm: 11/16 in to under 1 1/8 in"},
		{Name: "thick", Type: Length, Default: "36in", Metric: "914mm", Doc: "of stone of 3 cm: 1 1/8 in or more"},
		{Name: "wood", Type: Length, Default: "36in", Metric: "914mm"},
	}},
	{Name: "bare_overhang", Type: Object, Doc: "how far a slab may stand out with nothing under it", Fields: []Attr{
		{Name: "thin", Type: Length, Default: "6in", Metric: "152mm", Doc: "stone of 2 cm: 11/16 in to under 1 1/8 in"},
		{Name: "thick", Type: Length, Default: "10in", Metric: "254mm", Doc: "stone of 3 cm: 1 1/8 in or more"},
		{Name: "wood", Type: Length, Default: "10in", Metric: "254mm"},
	}},
	{Name: "seam_off_plate", Type: Reach, Default: "6in", Metric: "150mm", Doc: "from a seam of a bar top to the nearest steel plate under it, at most"},
	{Name: "recess_share", Type: Number, Default: "0.5", Doc: "how much of an upper plate's thickness a recess for steel may take"},
	{Name: "moisture", Type: Number, Default: "4", Doc: "by how many per cent the moisture of solid wood changes in a year"},
}
