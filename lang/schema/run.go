package schema

var carcass = &Block{
	Kind: "carcass", Named: true,
	Doc: "how boxes are made",
	Attrs: []Attr{
		{Name: "height", Type: Length, Required: true, Doc: "from the floor to the top edge, without a counter"},
		{Name: "depth", Type: Length, Required: true, Doc: "over the back, without a door"},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true, Doc: "sides, bottom, stretchers and toe kick"},
		{Name: "back", Type: Object, Required: true, Doc: "the back and how it is held", Fields: []Attr{
			{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
			{Name: "fixed", Type: Choice, Choices: []string{"applied", "captured", "rabbeted"}, LaterChoices: []string{"rabbeted"}, Default: "applied", Doc: "onto the rear edges, in grooves, or in rabbets"},
			{Name: "inset", Type: Length, Doc: "of a captured back: from the rear edges to its rear face; the carcass board's thickness where it is left out"},
			{Name: "groove", Type: Length, Default: "1/4in", Metric: "6mm", Doc: "of a captured back: depth of its grooves"},
			{Name: "play", Type: Reach, Default: "1/64in", Metric: "0.4mm", Doc: "of a captured back: how much wider the groove is than the back, in all"},
		}},
		{Name: "toe_kick", Type: Object, Doc: "the recess for the feet", Fields: []Attr{
			{Name: "height", Type: Length, Default: "4in", Metric: "100mm"},
			{Name: "setback", Type: Length, Default: "3in", Metric: "75mm", Doc: "from the front edges of the sides"},
		}},
		{Name: "stretcher", Type: Length, Default: "4in", Metric: "100mm", Doc: "width of the strips that tie the sides at the top: the front one laid flat, the rear one on edge"},
		{Name: "screws", Type: Ref, Refs: []string{"screw"}, Doc: "that hold the box together"},
		{Name: "top", Type: Choice, Choices: []string{"stretchers", "full"}, LaterChoices: []string{"full"}, Default: "stretchers", Doc: "what ties the sides at the top"},
		{Name: "stands_on", Type: Choice, Choices: []string{"sides", "base", "legs"}, LaterChoices: []string{"base", "legs"}, Default: "sides", Doc: "what reaches the floor"},
		{Name: "banding", Type: Object, Later: true, Doc: "on front edges, taken off the cut size", Fields: []Attr{
			{Name: "thickness", Type: Length, Default: "0.02in", Metric: "0.5mm"},
		}},
		{Name: "door", Type: Object, Later: true, Doc: "how doors hang", Fields: []Attr{
			{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
			{Name: "fit", Type: Choice, Choices: []string{"overlay", "inset"}, Default: "overlay"},
			{Name: "gap", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "between two fronts"},
		}},
		{Name: "hinge", Type: Object, Later: true, Doc: "boring for concealed hinges", Fields: []Attr{
			{Name: "cup", Type: Length, Default: "35mm", Doc: "diameter of the bore"},
			{Name: "depth", Type: Length, Default: "12.5mm", Doc: "of the bore"},
			{Name: "from_edge", Type: Length, Default: "5mm", Doc: "from the door's edge to the bore's edge"},
			{Name: "from_end", Type: Length, Default: "3in", Metric: "80mm", Doc: "from the door's ends to the first centres"},
		}},
		{Name: "pins", Type: Object, Later: true, Doc: "rows of holes for shelf pins", Fields: []Attr{
			{Name: "pitch", Type: Length, Default: "32mm", Doc: "from hole to hole"},
			{Name: "diameter", Type: Length, Default: "5mm"},
			{Name: "depth", Type: Length, Default: "12mm"},
			{Name: "from_front", Type: Length, Default: "37mm", Doc: "from the front edge to the first row"},
			{Name: "from_back", Type: Length, Default: "37mm", Doc: "from the back to the second row"},
		}},
	},
}

var run = &Block{
	Kind: "run", Named: true,
	Doc: "boxes in a row, in the order written, left to right as one faces their fronts",
	Attrs: []Attr{
		{Name: "along", Type: Ref, Refs: []string{"wall"}, Doc: "the wall that it stands against"},
		{Name: "from", Type: Choice, Choices: []string{"left", "right"}, Default: "left", Doc: "the end of the wall that it starts from"},
		{Name: "start", Type: Reach, Default: "0in", Metric: "0mm", Doc: "distance of that end of the run from that end of the wall"},
		{Name: "out_from", Type: Ref, Refs: []string{"wall"}, Doc: "the wall that it stands out from, with its far end free"},
		{Name: "at", Type: Place, Doc: "of a run that stands out: where its carcass front meets the wall, from the wall's left end"},
		{Name: "faces", Type: Choice, Choices: []string{"left", "right"}, Default: "left", Doc: "of a run that stands out: the end of the wall that its front looks to"},
		{Name: "length", Type: Length, Doc: "of the whole run; needed where a run that stands out has a rest"},
		{Name: "carcass", Type: Ref, Refs: []string{"carcass"}, Required: true},
		{Name: "joint_screws", Type: Ref, Refs: []string{"screw"}, Doc: "that join neighbours"},
		{Name: "wall_screws", Type: Ref, Refs: []string{"screw"}, Doc: "that hold the boxes to the wall"},
	},
	Blocks: []*Block{cabinet, bay, filler, endPanel, anchor},
}

var cabinet = &Block{
	Kind: "cabinet", Named: true,
	Doc: "one box",
	Attrs: []Attr{
		{Name: "width", Type: Width, Required: true, Doc: "over all; rest shares what the run has left"},
		{Name: "carcass", Type: Ref, Refs: []string{"carcass"}, Doc: "where it differs from the run's; height and depth stay the run's"},
		{Name: "front", Type: Choice, Choices: []string{"open", "doors", "drawers", "false"}, Later: true, Doc: "what closes it; a false front before a sink"},
		{Name: "doors", Type: Whole, Later: true},
		{Name: "drawers", Type: Lengths, Later: true, Doc: "heights of the fronts, rising"},
		{Name: "shelves", Type: Whole, Later: true, Doc: "on pins"},
		{Name: "fixed_shelves", Type: Places, Later: true, Doc: "heights of their upper faces above the floor"},
		{Name: "dividers", Type: Places, Later: true, Doc: "centres, from the cabinet's left end"},
	},
}

var bay = &Block{
	Kind: "bay", Named: true,
	Doc: "an open place for an appliance between two boxes",
	Attrs: []Attr{
		{Name: "appliance", Type: Object, Required: true, Doc: "its outside, feet wound in", Fields: []Attr{
			{Name: "width", Type: Length, Required: true},
			{Name: "height", Type: Length, Required: true},
			{Name: "depth", Type: Length, Required: true, Doc: "with its door and handle"},
		}},
		{Name: "gap", Type: Reach, Required: true, Doc: "on each side, from the maker's sheet"},
		{Name: "top_gap", Type: Reach, Default: "0in", Metric: "0mm", Doc: "between its top and the line of the boxes"},
		{Name: "back_gap", Type: Reach, Default: "1in", Metric: "25mm", Doc: "between it and the wall, from the maker's sheet"},
		{Name: "blocks", Type: Ref, Refs: []string{"stick"}, Doc: "lumber laid flat under it, to bring its top to the line"},
		{Name: "plug", Type: Ref, Refs: []string{"outlet"}, Later: true, Doc: "the outlet that it is plugged into"},
	},
}

var endPanel = &Block{
	Kind: "end_panel", Named: true, Later: true,
	Doc: "a board that covers a free end of the run",
	Attrs: []Attr{
		{Name: "end", Type: Choice, Choices: []string{"left", "right"}, Required: true},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
		{Name: "scribe", Type: Reach, Default: "1/2in", Metric: "12mm", Doc: "added to it, to be cut to the wall or floor"},
	},
}

var filler = &Block{
	Kind: "filler", Named: true,
	Doc: "a strip that closes the run against a wall",
	Attrs: []Attr{
		{Name: "width", Type: Width, Required: true, Doc: "as it shows, at the middle of its height"},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Doc: "the carcass board where it is left out"},
		{Name: "scribe", Type: Reach, Default: "1/2in", Metric: "12mm", Doc: "added to its width, to be cut to the wall"},
	},
}

var anchor = &Block{
	Kind: "anchor", Named: true,
	Doc: "a block fixed to the floor inside the toe kick, that the box is screwed to",
	Attrs: []Attr{
		{Name: "under", Type: Ref, Refs: []string{"cabinet"}, Required: true},
		{Name: "block", Type: Ref, Refs: []string{"stick"}, Required: true},
		{Name: "fixed", Type: Choice, Choices: []string{"adhesive", "screws"}, Default: "screws", Doc: "how the block holds to the floor"},
		{Name: "play", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "how much shorter the block is than the space between the sides"},
		{Name: "screws", Type: Ref, Refs: []string{"screw"}, Doc: "through the toe kick into the block"},
		{Name: "floor_screws", Type: Ref, Refs: []string{"screw"}, Doc: "through the block into the floor, where it is fixed so"},
	},
}
