package finding

// airDecides is what a rule of vents defers to.
const airDecides = "How much air an appliance, a flue or a room needs, its maker, local code and licensed practice decide."

// aboutFinish holds the rules of SPEC.md 11.4.
var aboutFinish = []Section{
	{"11.4", "Slabs, skins and finish", []Rule{
		{
			Slug: "slab-stuck", Severity: Warning, Says: "a counter finds too little room under what it slides in below",
			Source:  "common practice, from memory: 1/16 in or 1.5 mm at least, 1/8 in or 3 mm is better",
			Caution: loadDecides,
			Explains: `
Where the framing stands against the backs of the boxes, the skin on the work side hangs over the rear edge of the
counter, so the counter is slid in from the front below it, once boxes and skin stand. Counters are seldom flat, and
boxes seldom all of one height: with less than the gap that is stated it jams, or scrapes the finish.

Give the skin more above_counter. Who puts the skin on last needs no gap, and says so with limits { slide_gap = 0 }.`,
		},
		{
			Slug: "slab-in-corner", Severity: Warning, Says: "the front corner of a counter runs into a wall that leans in",
			Source: "plain geometry; that a slab is trimmed by some 1/32 in or 0.5 mm as it is fitted is common practice",
			Explains: `
At a corner under 90 degrees a run stops short of the corner, so that the fronts of its boxes clear the wall. The
counter is a rectangle as long as the run and overhangs to the front: its front corner reaches to where the wall has
come in further still. It would neither lie there nor pass between two walls that both lean in.

Let the run begin as far from the corner as the wall leans in at the counter's front edge, take off overhang, or have
the end of the slab cut to the wall on site.`,
		},
		{
			Slug: "slab-over-cover", Severity: Warning, Says: "the edge of a slab lies over a cover plate or a vent in the wall",
			Source:  "common practice: a cover plate stays free all round",
			Caution: wiringDecides,
			Explains: `
A counter or a bar top lies against a wall, and at that height there is an outlet, a switch or a vent in the wall. The
slab's edge would cover part of it: the plate could not be taken off, nor put on.

Have the box moved up; under a counter it would come among the stretchers of its boxes. What stands out of its wall there
is refused (thing-in-the-way).`,
		},
		{
			Slug: "seam-shows", Severity: Note, Says: "a skin on the room's side has a seam that nothing covers",
			Source:  "common practice",
			Caution: loadDecides,
			Explains: `
A skin longer than its sheet is made of pieces that meet on a stud. On the side where people sit the joint shows as a
line from the floor to the top, and it opens and closes with the seasons. Battens cover it: one lies over each seam. A
cap alone does not.

With veneer that is matched over the joint, or paint over a filled one, it may be meant. On the work side, where a
strip of the skin shows between counter and bar top, nothing is said.`,
		},
		{
			Slug: "seam-unsupported", Severity: Warning, Says: "a seam of a counter lies far from what carries it",
			Source:  "common practice, from memory: over a side or a divider, or within 4 in or 100 mm of one",
			Caution: loadDecides,
			Explains: `
Two pieces of a slab that meet are only as level as what lies under the joint. Over a bay there is nothing; inside a
cabinet there are only the stretchers, along the front and the rear. A hand that leans there moves one piece against
the other, and the joint opens.

Put the seam over a side, a divider or a full top. What counts is what reaches up to the slab over half its depth or
more. Seams of a bar top are held to its supports: seam-between-plates.`,
		},
		{
			Slug: "sliver", Severity: Warning, Says: "seams leave a piece of a slab or a skin that is very short",
			Source:  "common practice, from memory: 3 in or 75 mm at least",
			Caution: loadDecides,
			Explains: `
A piece of a slab or of a skin that is only a few inches long is hard to hold at the saw, breaks when it is carried,
finds one stud or none to be fixed to, and looks like a mistake.

Move the seam, so that the pieces are more alike. Strips that are narrow on purpose, as battens and fillers are, are
not looked at.`,
			Wrong: "counter \"back\" {\n  over  = run.back\n  slab  = slab.maple\n  seams = [34, 36]\n}",
			Right: "counter \"back\" {\n  over  = run.back\n  slab  = slab.maple\n  seams = [36]\n}",
		},
		{
			Slug: "finish-not-flush", Severity: Warning, Says: "a skin or an end panel does not end where it should",
			Source:  "common practice: faces in one plane to 1/32 in or 0.5 mm, from memory",
			Caution: loadDecides,
			Explains: `
Left out, the inset of the framing is such that the skin on its end lies in one plane with the end of the run, or with
its end panel. Here the inset is written, and the skin stands out or back. Often the board was changed, and the inset
was not.

The same is said of an end panel that reaches beyond the carcass to cover the edges of doors, but not as far as the
doors do. Without to_front it ends with the carcass, which may be meant: then nothing is said.`,
		},
		{
			Slug: "skin-past-top", Severity: Warning, Says: "a skin or a strip on it comes out from under the bar top",
			Source:  "common practice",
			Caution: loadDecides,
			Explains: `
The overhang of a bar top counts from the bare framing. Skins, battens, caps and corners take some of it, on the
room's side, on the work side and at the ends. Where they are thicker than the overhang, their upper edge shows, and
what is spilt runs into the gap behind.

Make the overhang on that side as wide as they are thick, or wider.`,
		},
		{
			Slug: "front-past-counter", Severity: Note, Says: "doors or drawer fronts come out further than the counter",
			Source: "common practice: a counter overhangs its doors",
			Explains: `
The overhang of a counter counts from the carcass, and fronts that lie before it are as thick as their board. Where
the counter ends behind them, what is spilt runs down onto their upper edges and swells them, and crumbs fall into the
drawers.

An overhang of 1 to 1 1/2 in, or 25 to 40 mm, clears most doors. Handles are not looked at.`,
		},
		{
			Slug: "no-scribe", Severity: Warning, Says: "boxes without a filler are caught between two walls",
			Source: "common practice, from memory: scribes of 1/4 to 1/2 in (6 to 12 mm), fillers of 1 to 3 in",
			Explains: `
The run reaches from wall to wall, and box stands against either. Walls bow, and lean in somewhere: boxes that just
fit by the tape at one height do not go in at another. A filler takes up what the walls are off; it is cut to the wall
when the boxes stand.

Put a filler at one end, or one at either end where doors open beside the walls.`,
		},
		{
			Slug: "hinge-meets-shelf", Severity: Warning, Milder: []Severity{Note}, Says: "a shelf lies where a hinge of a door is",
			Source:  "common practice, from memory: 1 in or 25 mm over and under the hinge's centre, 3 in or 75 mm behind the door",
			Caution: "The sheet of the hinge's maker decides.",
			Explains: `
The mounting plate of a concealed hinge is screwed to the side of the box, and its arm lies behind the door. A shelf
at that height meets them: the plate cannot be screwed on, or the door does not close.

Fixed shelves must be moved, or the hinges, with from_end of the hinge; so this is a warning. Shelves on pins are laid
on other pins, and a note tells it. Shelves that stay as far behind the door as a hinge is deep are in nobody's way.`,
		},
		{
			Slug: "hinged-unused", Severity: Note, Says: "the side of one door is said, where there is no such door",
			Source: "the language's own: one door hangs where hinged says, two hang on either side",
			Explains: `
A cabinet says on which side its door hangs, but has two doors, which hang on either side, or none. The word changes
nothing. Perhaps doors was changed, or left out.`,
		},
		{
			Slug: "vent-covered", Severity: Warning, Says: "a vent opens into a box that is closed",
			Source:  "common practice, from memory: as much free area as the vent has",
			Caution: airDecides,
			Explains: `
A vent in the wall is let through the back of the cabinet before it, so that air comes into the cabinet; doors and
drawers close it there. What is open of the front, the gaps between fronts counted, and other vents into the same
cabinet come to less than the vent itself.

Leave the box open, put a bay there, lead the vent through with a duct, or cut openings into a door or the toe kick.
If other openings let the air out, limits { vent_free = 0 } says so.`,
		},
	}},
}
