package finding

// aboutCutting holds the rules of SPEC.md 11.12.
var aboutCutting = []Section{
	{"11.12", "How the router is told to cut", []Rule{
		{
			Slug: "chip-too-thin", Severity: Warning, Says: "each tooth of the router's bit takes too little",
			Source: "feed = turns x flutes x chip load, looked up in two general articles on feeds in wood: 1/4 in bits on rigid machines 0.010-0.020 in for a tooth in softwood, 0.010-0.018 in plywood, " +
				"0.005-0.010 in hardwood, 0.015-0.025 in MDF, 1/8 in about half; light machines 0.003-0.005 with 1/8 in, 0.004-0.008 with 1/4 in, 0.008-0.012 with 1/2 in: from memory",
			Caution: machineDecides,
			Explains: `
A tooth that takes next to nothing rubs instead of cutting. The bit gets hot, goes blunt and burns the wood. What each
takes is the feed divided by the turns and by the number of flutes. A light machine takes less than a rigid one,
whatever the wood; between the bits that are listed the range is taken evenly. Of bits under 1/8 in nothing is known.

Feed faster, turn slower, or take a bit with one flute. Where the maker of the bit states a range, that one holds:
limits { chip_load = { least = …, most = … } }. A general range for wood over all bits is 0.05 to 0.3 mm for a tooth,
and many cuts are made at its lower end; the warning says that it is less than is common, not that it cannot be done.`,
		},
		{
			Slug: "chip-too-thick", Severity: Warning, Says: "each tooth of the router's bit takes too much",
			Source:  "as for chip-too-thin; that wider bits take more: looked up, but not how much",
			Caution: machineDecides,
			Explains: `
A tooth that takes too much bends the bit, pulls the work out of its clamps and tears the wood; the bit breaks in the end.
Feed slower, or turn faster. Of bits wider than the widest that is listed, 1/4 in on a rigid machine and 1/2 in on a
light one, only the least is judged: they take more, and how much more nobody says.`,
		},
		{
			Slug: "spindle-speed", Severity: Warning, Says: "the router turns slower or faster than is common",
			Source:  "12 000 to 24 000 turns in a minute, 18 000 usual: looked up in two general articles on feeds in wood",
			Caution: machineDecides,
			Explains: `
Slower than that a small bit cuts badly at any feed that a machine goes well at; faster, it burns, and may turn faster than
its maker allows. The most that a bit may turn is marked on its shank and goes before everything here: wide bits turn
slower than small ones. limits { rpm_least = …, rpm_most = … } state another range.`,
		},
		{
			Slug: "bite-too-deep", Severity: Warning, Says: "the router goes down too far for each level",
			Source:  "at most the bit's diameter to start with: looked up, in a list of chip loads",
			Caution: machineDecides,
			Explains: `
The deeper a level, the harder the bit is pushed aside: it bends, the walls lean, and it breaks. A level as deep as the
bit is wide is the most to begin with, and half of that is what holds where stepdown is left out. A rigid machine with a
short bit may take more: limits { bite_deep = … } says how many times the diameter.`,
		},
		{
			Slug: "bite-too-wide", Severity: Warning, Says: "the passes of the router lie too far apart",
			Source:  "half the bit's diameter: looked up, in a maker's note on cutting; two fifths: from memory",
			Caution: machineDecides,
			Explains: `
Where a pass takes more than half the bit's width, the chips are as thick as they get and the load on the bit is that
of a full slot all the time. Two fifths of the bit hold where stepover is left out. limits { bite_wide = … } states
another share.`,
		},
		{
			Slug: "plunge-too-fast", Severity: Warning, Says: "the router comes down too fast for its feed",
			Source:  "a third to a half of the feed: from memory",
			Caution: machineDecides,
			Explains: `
On its way down a flat bit cuts with its end, where it cuts worst, and on its whole width. A third of the feed is what holds where
plunge is left out, and half the most that is common. That it comes down slower is not judged: it costs time
and does no harm on so short a way. limits { plunge_share = … } states another share.`,
		},
		{
			Slug: "ramp-steep", Severity: Warning, Says: "the router comes down steeper than is common",
			Source:  "2 to 5 degrees: from memory",
			Caution: machineDecides,
			Explains: `
The way down is a slope: it is as long as the depth divided by the tangent of this angle. Steeper than five degrees the
middle of a flat bit, which does not cut, is pressed into the wood. A flatter slope only takes longer. Bits that are
ground to the middle go down steeper: limits { ramp_most = … }.`,
		},
		{
			Slug: "steel-lies-low", Severity: Warning, Says: "the recesses are so deep that the steel lies low",
			Source:  "flush to 0.2 mm low, and half a millimetre or 0.02 in at most: common practice",
			Caution: loadDecides,
			Explains: `
A bar top rests on the wood and on the steel at once only if both are level. Steel that lies low bears nothing until the top
has sagged onto it, and the screws through it pull the wood down. It must not stand proud either: a tenth of
a millimetre, or 0.004 in, is what low is where it is left out. limits { low_most = … } states another figure.`,
		},
		{
			Slug: "steel-loose", Severity: Warning, Says: "the recesses are so wide that the steel has play",
			Source:  "a millimetre or 1/32 in at most: common practice",
			Caution: loadDecides,
			Explains: `
Steel that fits its recess closely cannot turn in it, and its screws only hold it down. With play on both sides they have to
hold it in place too, and a push along the bar goes into them. 0.2 mm, or 0.008 in, on each side is what fit is
where it is left out. limits { fit_most = … } states another figure.`,
		},
	}},
}
