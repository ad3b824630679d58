package finding

// aboutWater holds the rules of SPEC.md 11.10.
var aboutWater = []Section{
	{"11.10", "Water", []Rule{
		{
			Slug: "water-not-judged", Severity: Note, Says: "no code is named that drains are held to",
			Source:  "common practice: codes of plumbing differ from place to place",
			Caution: waterDecides,
			Explains: `
A build in inches is held to the IRC where it names no other code. One in millimetres is held to none, since no one code
holds where people measure so. Slope, length and size of its drains are then not judged, only whether water can
run down at all and whether trap and bowl have room.

limits { plumbing = "irc" } or "upc" has them judged; "none" says that it is meant, and ends this note. Where a place has
figures of its own, drain_slope, trap_arm, tailpiece and trap_size of the limits hold with "none" too.`,
		},
		{
			Slug: "bowl-in-slab", Severity: Error, Says: "a sink's bowl is no deeper than the slab is thick",
			Source:  "plain solids",
			Caution: waterDecides,
			Explains: `
bowl is how deep the inside of a sink is, counted from the upper face of the slab that it hangs in. A bowl that is no deeper
than the slab is thick ends within the slab, and there is nothing that a drain could be fixed to.

Measure from the counter's face down into the bowl, and not from under the slab.`,
		},
		{
			Slug: "drain-into-water", Severity: Error, Says: "a drain leads into a stub that carries water",
			Source:  "common practice",
			Caution: waterDecides,
			Explains: `
Water under pressure comes up in this stub; nothing can run away through it. Often two stubs beside one another were taken
for each other.

Let the drain lead to the other one, or mend what the stub carries if that was written wrongly.`,
		},
		{
			Slug: "drain-too-flat", Severity: Warning, Says: "a drain falls too little",
			Source:  "IRC P3005.3, IPC 704.1: 1/4 in to the foot up to 2 1/2 in, 1/8 in from 3 in on; held under the UPC too, from memory",
			Caution: waterDecides,
			Explains: `
Water in a pipe that lies too flat is too slow to carry grease and grounds with it, and the pipe fills up with them. The
usual fall is 1/4 in to the foot, 0.0208 of the length, or 21 mm to the metre.

Give the drain its slope back, and lower the stub if the height does not allow it. drain_slope in the limits states
what a place asks for.`,
		},
		{
			Slug: "trap-arm-falls-too-far", Severity: Warning, Says: "a trap arm falls by more than its own size",
			Source:  "IRC P3105.2; held under the UPC too, from memory",
			Caution: waterDecides,
			Explains: `
The trap arm is the pipe from the trap to its vent. Where it falls by more than it is wide, the far end of its bore lies
wholly under the weir of the trap: a full pipe then pulls the water out of the trap like a siphon, and the air of the
drain comes into the room.

Lay it flatter, as far as the least slope allows, or shorter.`,
		},
		{
			Slug: "trap-arm-too-long", Severity: Warning, Says: "a trap is too far from its vent",
			Source:  "IRC table P3105.1: 5, 6, 8 and 12 ft for traps of 1 1/4, 1 1/2, 2 and 3 in; UPC table 1002.2: 30, 42, 60 and 72 in",
			Caution: waterDecides,
			Explains: `
The vent lets air in behind the water. Where it is too far away, the water in the pipe sucks the trap empty before air
comes. The way is counted at right angles from the middle of the bowl to the stub's end and on to the wall's face, less
three sizes of the trap for its own bend.

Move the sink or the stub, take a wider trap and pipe, or vent it nearer by: a loop under the counter, or an air
admittance valve where the place allows one. trap_arm in the limits states what a place asks for.`,
		},
		{
			Slug: "trap-arm-too-short", Severity: Warning, Says: "a trap is too near to its vent",
			Source:  "IRC and UPC: two diameters of the pipe",
			Caution: waterDecides,
			Explains: `
Between the trap and the vent there are two diameters of pipe at least. Nearer, water that leaves the trap shoots past
the vent or into it, and the trap is emptied.

Move the sink along the counter, or have the stub set further to one side.`,
		},
		{
			Slug: "sink-without-vent", Severity: Warning, Says: "nothing tells how the drain of a sink off the wall is vented",
			Source:  "IRC P3105.1 and UPC 1002.2, for the way to a vent; that each trap has one, from memory",
			Caution: waterDecides,
			Explains: `
A sink in a run along a wall has its vent in the wall behind. A run that stands out from a wall has none there: a knee
wall is too low for one. If the wall that the drain goes to holds a vent near enough, say vent = "wall". Otherwise the
sink needs a loop under the counter, "island", or an air admittance valve, "valve"; many places allow only some of these.

The answer tells how far it is from the trap to the wall, and what is allowed.`,
		},
		{
			Slug: "drain-narrows", Severity: Warning, Says: "a drain becomes narrower on its way down",
			Source:  "IRC P3201.7 for the trap; for the stub common practice, from memory",
			Caution: waterDecides,
			Explains: `
What passes a wide pipe stops where it becomes narrow. A trap is no wider than the pipe behind it, nor that pipe than the
stub that it goes into.

A stub states the diameter over its widest fitting: its pipe is narrower than that, so a drain that is wider than the
fitting is too wide for sure. Where size is stated of the stub, the sizes are compared. Take one size from trap to stub,
or a wider one further down.`,
		},
		{
			Slug: "trap-too-small", Severity: Warning, Says: "a trap is smaller than that of a sink at a bar",
			Source:  "IRC table P3201.7, IPC 1002.1: 1 1/2 in; held under the UPC too, from memory",
			Caution: waterDecides,
			Explains: `
A basin for hands makes do with a trap of 1 1/4 in. What is washed and poured away at a bar or in a kitchen needs 1 1/2
in, or it stands in the bowl.

Take the wider trap; the pipe behind it is no narrower.`,
		},
		{
			Slug: "stub-too-high", Severity: Warning, Says: "a drain's stub is too high for its sink",
			Source:  "plain levels; that strainer, tailpiece and trap take 4 in or 100 mm, common practice, from memory",
			Caution: waterDecides,
			Explains: `
Water runs down: from under the bowl through strainer, tailpiece and trap, then along the pipe with its fall into the
stub. All heights are counted to the middle of the pipe. If the stub lies above what these leave, the bowl never
drains, whatever is connected.

Have the stub lowered, or take a shallower bowl. The trap's drop is what its maker's sheet says for a short tailpiece;
4 in or 100 mm, its default, is the bare least (from memory), so state what is to be built.`,
		},
		{
			Slug: "stub-too-low", Severity: Warning, Says: "a drain's stub is too low for its sink",
			Source:  "IRC P3201.6, IPC 1002.1: 24 in from the outlet down to the trap's weir; held under the UPC too, from memory",
			Caution: waterDecides,
			Explains: `
The pipe between a trap and its vent in the wall only falls gently, so that the height of the stub sets that of the trap.
Where it is far under the bowl, water comes down the tailpiece so fast that it takes that of the trap with it. Lower
still, the trap stands in the bottom of the cabinet.

Have the stub raised. The trap's lowest point is its weir less the seal and the diameter of the pipe.`,
		},
		{
			Slug: "trap-meets", Severity: Warning, Says: "a bowl or a trap is where a board or a stub is",
			Source:  "plain solids; that the bowl of a small sink is 7 in or 180 mm deep, common practice, from memory",
			Caution: waterDecides,
			Explains: `
The bowl hangs into the cabinet as deep as stated, as wide as its cut-out. Under its middle tailpiece and trap go down,
as wide as the pipe. A shelf, a divider, a drawer or a stub there is in the way. What lies within 5 in or 125 mm under
the slab is another finding, cut-out-over-board.

Leave the shelf or the drawer out, set it lower than the answer's height, or move the sink. A shelf may also be cut out
for the trap by hand.`,
		},
		{
			Slug: "drain-through-boards", Severity: Warning, Says: "something is in a drain's way that no hole leads it through",
			Source:  "plain solids; that a pipe is led out to where its stub ends and then along, common practice",
			Caution: waterDecides,
			Explains: `
The pipe goes at right angles from under the bowl to the end of its stub, and is bored through the boards that it passes square.
What it meets and cannot pass is named: a drawer, an appliance, a leg, a front, a stud or a plate along its length, a box of
another run, or a board in which the hole would reach an edge, a notch or another opening. Ways round it were
tried, and all of them meet something. Where the stub would do higher or lower, the mend says how high; it has been tried.

A pipe behind drawers wants them shorter; a stub in the sink's own cabinet wants no way at all. Where the pipe has to go through the
floor or round an end, that is for whoever lays it.`,
		},
		{
			Slug: "drain-in-the-open", Severity: Warning, Says: "a drain leaves its run and lies where people walk",
			Source:  "common practice: waste pipes lie behind boards or in the floor",
			Caution: waterDecides,
			Explains: `
The pipe goes at right angles from the bowl to its stub. Part of that way lies in no run and no knee wall: across the aisle, in
front of the guests, or past the end of the bar. There somebody falls over it or kicks it off. A way no longer than the
pipe is thick, as between a run and its wall, is let pass.

Let it lead to a stub behind the sink's own run. Where the pipe is to go through the floor, a stub has to be set there
first; such a way is not described here.`,
		},
		{
			Slug: "stubs-meet", Severity: Warning, Says: "two stubs are in one place",
			Source:  "plain solids: two circles over the widest fittings",
			Caution: waterDecides,
			Explains: `
Each stub states its diameter over the widest fitting. Two that are nearer than half of both cannot both have their
fitting. Often one of the two was measured from the other end of the wall.

Measure again, or have one of them moved; a hand and a wrench need more than this.`,
		},
		{
			Slug: "sink-without-water", Severity: Note, Says: "no water comes up near a sink",
			Source:  "common practice: a hose from a shut-off to a tap reaches about as far as the next box, from memory",
			Caution: waterDecides,
			Explains: `
Some stubs of the build carry water, and none of them ends in the cabinet under this sink or in the box beside it. The
hoses of a tap are short, and its shut-off should be at hand under the sink.

Say carries = "water" of the stub that it is for, or have one set there.`,
		},
		{
			Slug: "sink-without-drain", Severity: Note, Says: "no drain leads from a sink",
			Source:  "common practice",
			Caution: waterDecides,
			Explains: `
The build tells of drains, by a drain or a stub that carries one, but not of this sink's. So nobody has looked whether
water can run down from it.

Add a drain that leads from the sink to a stub.`,
		},
		{
			Slug: "tap-without-sink", Severity: Note, Says: "a tap stands where no sink is in reach of its spout",
			Source:  "common practice: the spout of a tap at a bar reaches 12 in or 300 mm at most, from memory",
			Caution: waterDecides,
			Explains: `
What drips from the tap has nowhere to go. It may be meant, for a machine with a tray of its own; often the sink was taken
out and its tap was forgotten. Or there is a sink, and the spout does not come over its bowl: limits { tap_reach = … } states
how far it reaches.

Write the tap into the counter that has the sink, set it behind that, or leave it out. tap_reach in the limits says how far
a spout may reach.`,
		},
	}},
}
