package finding

// aboutEnds holds what can be wrong with end panels.
var aboutEnds = []Section{
	{"6.14", "End panels", []Rule{
		{
			Slug: "end-meets-wall", Severity: Error, Says: "an end panel stands where the run meets a wall, or has no room there",
			Explains: `
An end panel is a board outside the boxes, over an end of the run that is seen. The end that it names stands against a
wall, or so near to one that the board does not go between.

Most often left and right are mixed up: both count as one faces the fronts. Where the run ends a little before the wall,
close the gap with a filler instead, or let the run stand further off.`,
			Wrong: "run \"third\" {\n  out_from = wall.east\n  at       = 84\n  carcass  = carcass.base\n  cabinet \"x\" { width = 24 }\n  end_panel \"cheek\" {\n    end   = \"left\"\n    board = sheet.ply\n  }\n}",
			Right: "run \"third\" {\n  out_from = wall.east\n  at       = 84\n  carcass  = carcass.base\n  cabinet \"x\" { width = 24 }\n  end_panel \"cheek\" {\n    end   = \"right\"\n    board = sheet.ply\n  }\n}",
		},
	}},
}
