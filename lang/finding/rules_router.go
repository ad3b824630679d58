package finding

// routerRules holds what the router cannot cut.
var routerRules = []Rule{
	{
		Slug: "bit-too-wide", Severity: Error, Says: "the bit does not fit into a recess",
		Caution: machineDecides,
		Explains: `
The bit is wider than the recess between its closed sides, the allowance for the last pass counted on both. It would cut
the recess too wide, and the steel would have play. Take a smaller bit, or wider steel.`,
	},
	{
		Slug: "bit-cuts-through", Severity: Error, Says: "the bit would come out below",
		Caution: machineDecides,
		Explains: `
The recess is as deep as the wood is thick, or deeper: the bit would come through into the table. Look at the thickness
of the lumber as measured, and at the depth that the steel asks for.`,
	},
	{
		Slug: "no-wall-left", Severity: Error, Says: "a closed side of a recess leaves no wood",
		Caution: machineDecides,
		Explains: `
A side of the recess is meant to have a wall, but it lies on the very edge of the wood, so that nothing is left of it.
Either the recess leaves the wood there and is open, or it ends further in.`,
	},
	{
		Slug: "open-side-off-edge", Severity: Error, Says: "an open side of a recess does not reach the edge",
		Caution: machineDecides,
		Explains: `
The steel leaves the wood on this side, so the bit runs out over the edge; but the recess ends before that edge, and a
rim would be left or cut away by chance.`,
	},
	{
		Slug: "recess-off-stock", Severity: Error, Says: "a recess lies beyond the wood",
		Caution: machineDecides,
		Explains: `
A part of the recess lies where there is no wood. The bit would run into whatever holds the work. Look at where the
support stands on its plate.`,
	},
	{
		Slug: "no-room-to-ramp", Severity: Error, Says: "the bit cannot come down in a recess",
		Caution: machineDecides,
		Source:  "common practice: a flat bit comes down on a slope, not straight",
		Explains: `
A flat bit does not drill: it comes down on a slope while it moves along. The recess is so small that the bit can hardly
move in it. Take a smaller bit.`,
	},
	{
		Slug: "ramp-too-steep", Severity: Error, Says: "the ramp is out of range",
		Caution: machineDecides,
		Source:  "common practice",
		Explains: `
The angle at which the bit comes down into the wood is over 0 and at most 30 degrees. At 0 it never gets down, and
steeper it drills, which a flat bit is not made for. Three degrees hold where none is stated.`,
	},
	{
		Slug: "step-over-too-wide", Severity: Error, Says: "the bit would leave ridges",
		Caution: machineDecides,
		Explains: `
The step-over is how far two neighbouring passes of the bit lie apart. It is more than the bit is wide, so ridges would
stand between the passes and the steel would lie on them. Four tenths of the bit is what holds where none is stated.`,
	},
	{
		Slug: "finish-too-thick", Severity: Error, Says: "more is left for the last pass than the bit can take",
		Caution: machineDecides,
		Explains: `
The allowance that is left on the walls for the last pass is more than half the bit is wide, so that pass would cut
wood on its whole width. A finishing pass takes a hair: a hundredth of an inch, or 0.3 mm.

What floor leaves at the bottom is taken by a last level of its own. It is less than the recess is deep, or nothing would be
left for the levels before, and no more than stepdown, the deepest bite.`,
	},
	{
		Slug: "clearance-too-low", Severity: Error, Says: "moves through air would be too near the wood",
		Caution: machineDecides,
		Explains: `
Between cuts the bit travels fast at this height above the wood. It slows down a little above the wood before it cuts,
and the clearance is not higher than that: a chip or a warped board would be hit at full speed. Clamps stand higher
still.`,
	},
	{
		Slug: "decimals-out-of-range", Severity: Error, Says: "the programs need other decimal places",
		Caution: machineDecides,
		Source:  "NISTIR 6556, the RS274/NGC interpreter: arcs in centre format",
		Explains: `
The controller checks that both ends of an arc are equally far from its centre, to 0.002 mm or 0.0002 in. With too few
decimals the rounded figures fail that check and the program stops in the middle of the wood; more than six decimals
mean nothing. Three at least in millimetres, four in inches.`,
	},
	{
		Slug: "not-positive", Severity: Error, Says: "a figure for the router must be above 0",
		Caution: machineDecides,
		Explains: `
A feed, a depth, a bit or a step of 0 cuts nothing, or never ends, and what never speeds up never arrives. The answer names the figure. Where it was left out,
it follows from another that is 0.`,
	},
	{
		Slug: "feed-too-slow", Severity: Error, Says: "the router would hardly move",
		Caution: machineDecides,
		Explains: `
Feed and plunge are lengths in a minute, and plunge is a third of the feed where it is left out. Under half an inch in
a minute a program cannot state them exactly, and a bit that hardly moves burns the wood: most often a figure is in
another unit than was meant.`,
	},
	{
		Slug: "feed-too-fast", Severity: Error, Says: "the router would go faster than any does",
		Caution: machineDecides,
		Explains: `
Feed and plunge are lengths in a minute. More than 60 m, or 2362 in, is faster than any router goes through wood: most
often a figure is in another unit than was meant.`,
	},
	{
		Slug: "path-too-long", Severity: Error, Says: "a path would have absurdly many moves",
		Caution: machineDecides,
		Explains: `
The program would have more than 50 000 moves. Step-over or step-down is very small for this recess, or the ramp very
flat: most often a figure is in another unit than was meant.`,
	},
	{
		Slug: "beyond-travel", Severity: Error, Says: "the machine cannot reach a path's ends",
		Caution: machineDecides,
		Explains: `
The path is longer than the machine moves in one of its directions, the run-out over open edges counted. The zero of a
program is on the plate at its support, so the whole plate need not lie on the machine, only the recess.`,
	},
}
