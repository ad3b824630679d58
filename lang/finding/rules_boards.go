package finding

// aboutBoards holds the rules of SPEC.md 11.8.
var aboutBoards = []Section{
	{"11.8", "Shelves, studs and free ends", []Rule{
		{
			Slug: "shelf-sags", Severity: Warning, Says: "a shelf sags more than is accepted",
			Source:  "ANSI/KCMA A161.1: 15 psf, 1/16 in to the foot and 1/4 in at most; stiffness of boards: Wood Handbook, FPL-GTR-190, Table 12-1; half as much again in time: shop notes; bottles: an estimate from memory, 15 to 20 lb to the foot of a row, and a row every 3 1/2 in, which is 51 to 69 psf",
			Caution: loadDecides,
			Explains: `
A shelf is taken to lie on its two ends and to carry an even load. It bends by 5 w L^4 / (384 E I), so twice the span bends
sixteen times as much, twice the thickness an eighth. Wood goes on bending under a load: half as much again is added for
that. What is measured against is the limit of the cabinet makers' test. The eye is stricter: from 0.02 in to the foot,
or 1.7 mm to the metre, one sees that a shelf hangs.

A back that is screwed to the rear edge, and an edge glued on in front, help; neither is counted. Nor is a point load.

Put a divider in, make the box narrower, or take a thicker or stiffer board. Say what kind it is: sheet { stiffness = … }.
15 psf is what cupboards are tested with. Full bottles come to some 60 psf: a cabinet that has them says holds = "bottles". For
what is heavier still there are limits { shelf_load = … } and bottle_load.`,
		},
		{
			Slug: "studs-caught", Severity: Warning, Milder: []Severity{Note}, Says: "few studs stand behind a box, or none",
			Source:  "common practice, from memory: two studs and four screws for each box, one stud and an anchor beside it for a narrow one",
			Caution: loadDecides,
			Explains: `
A box is held by screws through its rear stretcher into the studs of the wall. Behind this one, between its sides, stand
fewer studs than are wanted; it is a warning where there is none. Most boxes that are narrower than two gaps between studs
catch one, and are not asked for more. Plasterboard alone holds no box with a counter on it.

Shift the run, with a filler in the place that this leaves, or screw a rail across the studs first. Anchors for hollow
walls help beside a stud; if they are to do, limits { studs_each = 1 } says so.`,
		},
		{
			Slug: "studs-unknown", Severity: Note, Says: "boxes are screwed to studs, and nothing says where these are",
			Source:  "common practice: studs are found and marked before boxes are set",
			Caution: loadDecides,
			Explains: `
The run names screws for the wall, and the wall is backed by studs, but they are not listed. So the screws are counted
by rule of thumb, and nobody can say which box catches none.

Find the studs with a finder or a fine drill, and write their centres from the wall's left end. A wall that holds a screw
anywhere says so: backing = "masonry" or "planks".`,
		},
		{
			Slug: "box-held-by-nothing", Severity: Warning, Says: "nothing holds a box, nor any box that it is joined to",
			Source:  "from memory, common practice: a base box that has a heavy front or an overhanging top is screwed to wall or floor before the top goes on",
			Caution: loadDecides,
			Explains: `
Screws hold boxes to a wall, blocks on the floor or a knee wall behind hold them where none is, and boxes that are joined
to one another hold together. Here are boxes that have none of these, nor a neighbour that has. With a slab that overhangs,
with drawers pulled out or a door leant on, such a box tips.

Name the screws, and it is also in the bill. A bay parts the boxes on either side of it: each side wants a hold of its
own. Where a description names no screws for any of this, nothing is said.`,
		},
		{
			Slug: "free-end-loose", Severity: Warning, Says: "nothing fixes the free end of a run to the floor",
			Source:  "common practice, from memory: an island is screwed to blocks that are fixed to the floor; the free end of a half wall wants an anchored post or a return",
			Caution: loadDecides,
			Explains: `
A run that stands out into the room is fixed at the wall, and people lean on its other end. The last box there is to be
held itself: by an anchor, a block that is glued or screwed to the floor and screwed to through the toe kick, or by a knee
wall behind it that is screwed to the floor and to the box.

The answer says what there is and why it does not hold: most often it names no screws. A box on legs has nothing that an
anchor could take.`,
		},
		{
			Slug: "studs-too-far", Severity: Warning, Says: "studs of a knee wall stand further apart than a wall's may",
			Source:  "IRC R602.5: studs of interior walls that bear nothing, 24 in on centre",
			Caution: loadDecides,
			Explains: `
The gap between two studs of the knee wall is wider than studs of the lightest wall may stand. Plates bend between them
under a bar top, and skins drum. A knee wall is more than a partition: people lean on it. 16 in or 400 mm are usual.`,
		},
		{
			Slug: "support-off-stud", Severity: Note, Says: "a support stands far from any stud",
			Source:  "from memory, common practice: no support further from a stud than half the usual spacing",
			Caution: loadDecides,
			Explains: `
The steel is let into the upper plate, and what leans on the bar top twists that plate and bends it down. Both end at the
next stud, so the nearer it is, the stiffer the support. Here none is within half of the usual spacing.

Set the studs closer; by the rule they keep clear of the supports, and so stand right beside them where they can.`,
		},
		{
			Slug: "stud-bored", Severity: Warning, Says: "holes in studs are too large, or too near to an edge",
			Source:  "IRC R602.6: 60 % of the width of a stud that bears nothing, 40 % of any other, and 5/8 in of wood to each edge",
			Caution: loadDecides,
			Explains: `
A hole weakens a stud by more than it looks: the wood at its edges does most of the work. So a hole is limited in its
width, and both edges keep 5/8 in of wood. Nor may there be a notch at the same height, which is not looked at.

What runs through it may ask for more: cables and pipes that lie near to an edge want a steel plate before them. Bore
smaller holes, one over the other with wood between, or take wider lumber.`,
		},
		{
			Slug: "nail-plate-needed", Severity: Note, Says: "holes in studs want steel plates before cables and pipes",
			Source:  "NEC 300.4(A)(1): under 1 1/4 in (32 mm) from the nearest edge a steel plate of 1/16 in (1.6 mm); for pipes IRC P2603.2.1, from memory: 0.0575 in",
			Caution: passingDecides,
			Explains: `
A nail or a screw through the skin goes an inch into the stud, and into the cable or the pipe that runs there. Less than 1 1/4 in
of wood between the hole and an edge asks for a plate of steel on that edge, as wide as the hole and a little more. In a
stud of 3 1/2 in a hole of 1 in, in the middle, is the largest without one.

Conduit of steel or plastic needs none, nor pipes of cast iron or galvanised steel: plates = true in bored then says that
it is looked after. limits { nail_plate = … } states another distance.`,
		},
		{
			Slug: "stud-notched", Severity: Warning, Says: "notches in studs are too deep",
			Source:  "IRC R602.6: 40 % of the width of a stud that bears nothing, 25 % of any other",
			Caution: loadDecides,
			Explains: `
A notch takes the edge, where a stud works hardest. It may take two fifths of a stud that bears nothing but a bar top, and a
quarter of one in a wall that bears a floor or a roof. A hole in the middle costs less than a notch, and what runs
through it is protected better.`,
		},
		{
			Slug: "plate-cut", Severity: Warning, Says: "more is cut out of a plate than may be without a tie",
			Source:  "IRC R602.6.1 for top plates of exterior and bearing walls: over half the width a galvanised tie of 0.054 by 1 1/2 in, eight 10d nails each side, 6 in past the cut; taken for all plates",
			Caution: loadDecides,
			Explains: `
A pipe or a box in the room's wall reaches into a plate of the knee wall, and more than half of the plate's width is cut
away for it. A plate ties the studs together and takes the supports; with less than half left it breaks there.

Move the pipe, or end the framing before it. Where neither can be, a steel strap is nailed across the cut: the code for
bearing walls asks for 0.054 by 1 1/2 in, 6 in past the cut on both sides, with eight nails in each.`,
		},
		{
			Slug: "heavy-piece", Severity: Note, Says: "a slab or a box is heavier than two people carry",
			Source:  "from memory: 23 kg for one person is the load constant of the NIOSH lifting equation; 50 kg for two is common practice",
			Caution: "Who lifts decides what can be lifted: stairs, corners and a wet floor take half of it away.",
			Explains: `
The piece is carried in and lowered onto its place in one, and it weighs more than two people lift without harm. The
weight follows from what the stock is said to weigh, without what is cut out of it; a box is taken without its fronts,
drawers and loose shelves. Where nothing says what the stock weighs, nothing is judged.

Part the slab with a seam, or have more hands or a trolley there. Measure doors, stairs and corners on the way in too.`,
		},
	}},
}
