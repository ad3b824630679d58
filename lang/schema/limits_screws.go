package schema

var limitsOfScrews = []Attr{
	{Name: "stand_off", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "from the tip of a screw to the far face of what holds it, at least"},
	{Name: "bite", Type: Object, Doc: "how deep a screw goes into what holds it, at least", Fields: []Attr{
		{Name: "structure", Type: Number, Default: "6", Doc: "into studs, plates, the floor and the blocks of anchors, in diameters of the screw"},
		{Name: "box", Type: Number, Default: "3", Doc: "into boards of boxes, a bar top, and a plate under steel, in diameters"},
		{Name: "plug", Type: Reach, Default: "1 1/2in", Metric: "40mm", Doc: "into a plug in masonry"},
	}},
	{Name: "stud_depth", Type: Reach, Default: "1 1/4in", Metric: "32mm", Doc: "how far a screw goes into a stud of the room, at most: so far behind its face cables may run without a plate"},
	{Name: "under_head", Type: Object, Doc: "how thick boards are that a screw's head alone holds, at least; a wide one holds any", Fields: []Attr{
		{Name: "flat", Type: Reach, Default: "3/16in", Metric: "4mm"},
		{Name: "trim", Type: Reach, Default: "3/8in", Metric: "9mm"},
	}},
}
