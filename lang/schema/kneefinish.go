package schema

import "slices"

var kneeOutlet = &Block{
	Kind: "outlet", Named: true,
	Doc: "an electrical box in the knee wall",
	Attrs: slices.Concat([]Attr{
		{Name: "face", Type: Choice, Choices: []string{"work", "room"}, Required: true, Doc: "the side that it is used from"},
		{Name: "from_left", Type: Place, Doc: "its centre from the left end of the framing as one looks at that face; from_right instead where it is left out"},
		{Name: "from_right", Type: Place, Doc: "its centre from the right end of that face"},
		{Name: "mirrors", Type: Ref, Refs: []string{"outlet"}, Doc: "an outlet of the same knee wall: it is as far from one end of the framing as that from the other"},
		{Name: "height", Type: Length, Doc: "of its centre above the floor; where it is left out, the middle of what is free between counter and upper plate, or on the room's side between the plates"},
		{Name: "lying", Type: Flag, Default: "false", Doc: "turned by a quarter"},
		{Name: "box", Type: Object, Doc: "the box", Fields: boxFields},
		{Name: "cover", Type: Object, Doc: "its cover plate", Fields: coverFields},
		{Name: "clearance", Type: Reach, Default: "1/16in", Metric: "2mm", Doc: "between box and opening, all round"},
		wires,
	}, groundFault),
}

var skin = &Block{
	Kind: "skin", Named: true,
	Doc: "a finish panel on the framing",
	Attrs: []Attr{
		{Name: "face", Type: Choice, Choices: []string{"work", "room", "left", "right"}, Required: true, Doc: "work and room as one stands there, left and right as one faces the run"},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
		{Name: "above_counter", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "of one on the work side: gap under it, so that the counter slides in"},
		{Name: "above_floor", Type: Reach, Default: "1/4in", Metric: "6mm", Doc: "of the others: gap under it"},
		{Name: "below_top", Type: Reach, Default: "1/16in", Metric: "1.5mm", Doc: "gap between it and the bar top"},
		{Name: "clearance", Type: Reach, Default: "1/16in", Metric: "1.5mm", Doc: "round the steel that passes it"},
		{Name: "scribe", Type: Reach, Default: "1/4in", Metric: "6mm", Doc: "what its pieces have beyond the furthest that they are cut at, to a floor or a wall that is surveyed"},
		{Name: "grain", Type: Choice, Choices: []string{"along", "up"}, Default: "along"},
		{Name: "over_run", Type: Flag, Default: "false", Doc: "of one on an end: reaches over the end of the run too, as one L-shaped panel; the framing is then not inset there"},
		{Name: "seams", Type: Places, Doc: "of one on the work side or the room's: from the left end of the framing as one looks at that face; on studs by rule where they are left out"},
		{Name: "battens", Type: Object, Doc: "of a skin on the work side or the room's: strips over the seams and evenly between", Fields: []Attr{
			{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
			{Name: "width", Type: Length, Required: true},
			{Name: "about", Type: Length, Default: "16in", Metric: "400mm", Doc: "gap between centres to aim at"},
			{Name: "between", Type: Whole, Doc: "how many in each stretch between fixed ones; from about where it is left out"},
			{Name: "mirrored", Type: Flag, Default: "true", Doc: "alike from both ends"},
			{Name: "ends", Type: Flag, Default: "true", Doc: "one flush with either end"},
		}},
		{Name: "cap", Type: Object, Doc: "of the same: a strip along its upper edge, under which the battens end", Fields: []Attr{
			{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
			{Name: "width", Type: Length, Required: true},
		}},
	},
}

var corner = &Block{
	Kind: "corner", Named: true,
	Doc: "an L-shaped cover of two strips where the skin on the room's side meets that on an end",
	Attrs: []Attr{
		{Name: "end", Type: Choice, Choices: []string{"left", "right"}, Required: true, Doc: "as one faces the run"},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
		{Name: "width", Type: Length, Required: true, Doc: "of the strip on the room's side, and over all on the end"},
	},
}
