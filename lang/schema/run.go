package schema

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
		{Name: "seen_screws", Type: Ref, Refs: []string{"screw"}, Doc: "in place of wall_screws, and of run_screws of a knee wall behind, where no front hides them"},
	},
	Blocks: []*Block{cabinet, bay, filler, endPanel, anchor},
}

var cabinet = &Block{
	Kind: "cabinet", Named: true,
	Doc: "one box",
	Attrs: []Attr{
		{Name: "width", Type: Width, Required: true, Doc: "over all; rest shares what the run has left"},
		{Name: "carcass", Type: Ref, Refs: []string{"carcass"}, Doc: "where it differs from the run's; height and depth stay the run's"},
		{Name: "false_front", Type: Width, Doc: "height of a front that does not open, at the top, as before a sink; rest shares what the fronts have left"},
		{Name: "drawers", Type: Widths, Doc: "heights of their fronts, from the top down; rest shares what is left"},
		{Name: "doors", Type: Whole, Default: "0", Doc: "side by side, 1 or 2, under the drawers"},
		{Name: "hinged", Type: Choice, Choices: []string{"left", "right"}, Default: "left", Doc: "the side that one door hangs on"},
		{Name: "shelves", Type: Whole, Default: "0", Doc: "on pins, in each space between dividers"},
		{Name: "fixed_shelves", Type: Places, Doc: "heights of their upper faces above the floor"},
		{Name: "dividers", Type: Places, Doc: "centres, from the cabinet's left end"},
		{Name: "holds", Type: Choice, Choices: []string{"bottles"}, Doc: "what its shelves carry, where that is heavier than cups"},
		{Name: "stands", Type: Flag, Default: "false", Doc: "it is set already, and not to be moved unless it must"},
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
		{Name: "door", Type: Choice, Choices: []string{"none", "left", "right", "drawer", "down"}, Default: "none", Doc: "how its front opens: a door that hangs on the left or the right, a drawer, a door that lets down; nothing is judged of it where it is none"},
		{Name: "plug", Type: Ref, Refs: []string{"outlet"}, Doc: "the outlet that it is plugged into"},
		{Name: "air", Type: Choice, Choices: []string{"rear", "front"}, Doc: "where it breathes, from the maker's sheet; not judged where it is left out"},
		{Name: "stands", Type: Flag, Default: "false", Doc: "it is set already, and not to be moved unless it must"},
	},
}

var endPanel = &Block{
	Kind: "end_panel", Named: true,
	Doc: "a board that covers a free end of the run",
	Attrs: []Attr{
		{Name: "end", Type: Choice, Choices: []string{"left", "right"}, Required: true},
		{Name: "board", Type: Ref, Refs: []string{"sheet"}, Required: true},
		{Name: "to_front", Type: Reach, Default: "0in", Metric: "0mm", Doc: "how far it reaches beyond the carcass fronts, to cover the edges of doors"},
		{Name: "toe_kick", Type: Flag, Default: "true", Doc: "cut out for the feet, as the sides are"},
		{Name: "scribe", Type: Reach, Default: "1/2in", Metric: "12mm", Doc: "added at the rear where the run stands along a wall, to be cut to it"},
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
		{Name: "cure", Type: Number, Default: "24", Doc: "hours that adhesive takes until the block may be loaded, as on its tube; a day is common practice"},
		{Name: "play", Type: Reach, Default: "1/8in", Metric: "3mm", Doc: "how much shorter the block is than the space between the sides"},
		{Name: "screws", Type: Ref, Refs: []string{"screw"}, Doc: "through the toe kick into the block"},
		{Name: "floor_screws", Type: Ref, Refs: []string{"screw"}, Doc: "through the block into the floor, where it is fixed so"},
	},
}
