package finding

import "slices"

// aboutFraming holds what can be wrong with knee walls, what they carry, and
// the boards and lumber that all is cut from.
var aboutFraming = []Section{
	{"6.7", "Knee walls", []Rule{
		{
			Slug: "heights-disagree", Severity: Error, Says: "knee wall and bar top give different heights",
			Caution: loadDecides,
			Explains: `
The top of the framing and the slab that lies on it make up the height of the bar top. Both heights are stated, and they
do not differ by the thickness of the slab. One of them would be built, and nobody could say which.

State one height, the one that you decide on; the other follows. Or write the one from the other: top = given.bar_top -
bar_top.oak.thickness.`,
		},
		{
			Slug: "studs-too-close", Severity: Error, Says: "studs would leave no space between them",
			Caution: loadDecides,
			Explains: `
The spacing of the studs is from centre to centre. At less than twice their thickness hardly a gap is left between
them: nothing could be screwed or run there. Usually the spacing was meant in another unit, or measured from face to
face.`,
			Source: "common practice: 16 in or 400 mm on centre",
		},
		{
			Slug: "no-room-behind", Severity: Error, Says: "a knee wall behind a run that stands against a wall",
			Caution: loadDecides,
			Explains: `
A knee wall is framed behind the boxes of its run, where the guests stand. This run has its back on a wall of the room,
so there is no behind. Let the run stand out from a wall with out_from, or put the knee wall behind another run.`,
		},
		{
			Slug: "framing-in-wall", Severity: Error, Says: "a knee wall's framing would run into a wall of the room",
			Caution: loadDecides,
			Explains: `
An inset under 0 lets the framing stand out beyond the end of its run. Where that end meets a wall of the room, there
is wall, not space. Set the inset of that end to 0 or more.`,
		},
		{
			Slug: "place-taken", Severity: Error, Says: "two slabs on one thing, or two knee walls behind one run",
			Caution: loadDecides,
			Explains: `
Two knee walls are said to stand behind the same run, or two slabs to lie on the same boxes or framing. They would be
in the same place. Most often a block was copied and what it stands on was left as it was.`,
			Wrong: "counter \"second\" {\n  over = run.front\n  slab = slab.maple\n}",
			Right: "counter \"second\" {\n  over = run.back\n  slab = slab.maple\n}",
		},
		{
			Slug: "no-place-for-splice", Severity: Error, Says: "plates are longer than a stick, and no studs will do for the splices",
			Caution: loadDecides,
			Explains: `
A plate that is longer than the longest stick is made of pieces that meet over a stud, so that both are screwed to it. An
upper plate is not parted near a support, which would pry it open there; and where two plates lie on one another their
splices are staggered, so that one holds the other together.

State longer sticks if they can be had, or let the studs stand closer: every stud is a place for a splice.`,
			Source: "from memory: residential codes stagger the splices of double top plates by 24 in",
		},
	}},
	{"6.8", "Supports", slices.Concat(supportRules, routerRules)},
	{"6.10", "Cutting", []Rule{
		{
			Slug: "part-too-large", Severity: Error, Says: "nothing on sale is large enough for a part",
			Source: "plain arithmetic: the stated size, less what the saw trims off its edges",
			Explains: `
A panel is longer or wider than the largest sheet that is stated, or a piece of lumber longer than the longest stick;
what the saw trims off the factory edges counts, and so does the grain, which does not let a panel be turned. An offcut
that is large enough will do too, where there are enough of them for all such panels.

State a larger size if it can be had, divide the box or the run, or let the grain lie the other way.`,
		},
	}},
}

var supportRules = []Rule{
	{
		Slug: "recess-too-deep", Severity: Error, Says: "a recess leaves no wood under the steel",
		Source:  "plain arithmetic: a recess as deep as its plate cuts it through",
		Caution: loadDecides + " " + machineDecides,
		Explains: `
The steel is let into the upper plate by its own thickness and a little more, and that is as much as the plate is
thick. Nothing would be left for it to lie on, and the plate would be cut through. Take thinner steel, if it carries
the load, or thicker lumber.`,
	},
	{
		Slug: "tail-too-long", Severity: Error, Says: "steel lies on more than the plate is wide",
		Caution: loadDecides,
		Explains: `
The tail is the part of a support that lies on the knee wall. It is longer than the plate is wide, so it would stand
out on the work side. Leave it out: the steel then lies on the whole width.`,
	},
	{
		Slug: "tail-too-short", Severity: Error, Says: "steel lies on less than its recess's corners are round",
		Source:  "plain arithmetic: a round bit leaves its own radius in a corner",
		Caution: loadDecides,
		Explains: `
A round bit leaves the inner corners of the recess round. The steel would lie on the wood by less than that rounding, so
it would hardly lie on anything. Give it a longer tail, or leave the tail out: what it carries tips over this edge.`,
	},
	{
		Slug: "corner-too-tight", Severity: Error, Says: "the bit leaves more in the corners than the steel is rounded",
		Caution: machineDecides,
		Explains: `
The bit cannot cut a square inner corner: it leaves its own radius. The corners of the steel are rounded by less than
that, so they would meet the wood and the plate would not go down.

Round the corners of the steel by as much as the answer says, take a smaller bit, or leave corner out: it then follows
from the bit. Somebody with a chisel can also square the recess, but then the drawing is no longer what was cut.`,
	},
	{
		Slug: "corner-too-round", Severity: Error, Says: "a side of a recess is shorter than its rounded corners",
		Caution: machineDecides,
		Explains: `
Two corners of the steel, or of its recess, are rounded by more than the side between them is long. A radius of half
the width makes a half circle; more cannot be.`,
	},
	{
		Slug: "supports-meet", Severity: Error, Says: "recesses run into one another",
		Source:  "plain arithmetic: two solids in one place",
		Caution: loadDecides,
		Explains: `
So many supports stand on the framing that their recesses overlap, or what a skin leaves open for them: the plate or
the skin would be cut away between them. Take fewer, or narrower steel. How many a bar top needs is for its load and its maker to say.`,
	},
	{
		Slug: "support-past-end", Severity: Error, Says: "a recess runs past the end of the plate",
		Caution: loadDecides,
		Explains: `
The first and the last support stand so near to the ends of the framing that their recesses break out there, and the
steel is held on one side only. Take a larger end, which is measured to the centre of the steel, or fewer supports.`,
	},
	{
		Slug: "supports-miscounted", Severity: Error, Says: "the centres that are given are not as many as the supports",
		Caution: loadDecides,
		Explains: `
The supports are counted, and their centres are listed, and the two numbers differ. One of them was changed and the other
was not. Set count to the number of the centres.`,
	},
	{
		Slug: "no-room-for-holes", Severity: Error, Says: "steel is too small for the holes that its screws need",
		Source:  "common practice: a hole's centre at least one and a half diameters from an edge, three from the next hole",
		Caution: loadDecides + " " + machineDecides,
		Explains: `
Screws go down through the tail of each support into the plate, and up through the reach into the bar top. So many holes
of that size would lie too near to an edge of the steel, or to one another; those that go up also need room for a driver
beside the wall, and under a top of solid wood they are slots.

Take fewer or thinner screws, wider steel, or a longer tail or reach.`,
	},
	{
		Slug: "support-over-stud", Severity: Warning, Says: "screws of a stud come up under the steel",
		Source:  "common practice: plates are screwed into the ends of studs",
		Caution: loadDecides + " " + machineDecides,
		Explains: `
A support lies over a stud, and the screws that hold that stud come down through the plate there. A bit that meets a
screw breaks, and steel on a screw head does not lie flush.

By the rule supports keep clear of the end studs and the other studs of the supports; this one stands where at or end puts
it. Move it, or leave at or end out. Otherwise drive these screws deeper than the recess, or beside it, before the router
comes.`,
	},
	{
		Slug: "support-shows", Severity: Error, Says: "steel reaches to the bar top's edge, or beyond",
		Source:  "plain arithmetic: steel that is to lie under the top is shorter than its overhang",
		Caution: loadDecides,
		Explains: `
The supports reach as far from the framing as the bar top overhangs, or further: guests would see the ends and meet
them with their knees. Reach and overhang both count from the bare framing. Shorten the reach, which the slab must
allow, or let the bar top overhang more.`,
	},
}
