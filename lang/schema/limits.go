package schema

import "slices"

// limits is what a locality may change of the rules of SPEC.md 11: the published
// value is the default of each. A file for each section of the rules holds its own.
var limits = &Block{
	Kind: "limits", Once: true,
	Doc: "what the build is held to, where a place has its own; local code and licensed practice decide",
	Attrs: slices.Concat(limitsOfCodes, limitsOfStanding, limitsOfAccess, limitsOfFinish, limitsOfSeats,
		limitsOfScrews, limitsOfLoads, limitsOfBoards, limitsOfWiring, limitsOfWater, limitsOfCutting, limitsOfSetting, limitsOfWalls),
}

var limitsOfCodes = []Attr{
	{Name: "wiring", Type: Choice, Choices: []string{"nec", "none"}, Default: "nec", Metric: "none", Doc: "the published rules of wiring that it is judged by; none of them in a build of millimetres, where it is left out"},
	{Name: "plumbing", Type: Choice, Choices: []string{"irc", "upc", "none"}, Default: "irc", Metric: "none", Doc: "likewise those of drains"},
}
