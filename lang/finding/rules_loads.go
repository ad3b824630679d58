package finding

// aboutLoads holds the rules of SPEC.md 11.7.
var aboutLoads = []Section{
	{"11.7", "What a bar top bears", []Rule{
		{
			Slug: "steel-too-weak", Severity: Warning, Says: "steel under a bar top is bent beyond what it may bear",
			Source: "load: 200 lbf, IRC R301.5, by analogy with a guard, and 50 psf and half of the load for a plate between others, working assumptions from memory; past the last plate statics; " +
				"steel: 36 ksi (248.2 MPa), ASTM A36, or 235 MPa, EN 10025-2, from memory; 0.6 of the yield, older AISC ASD",
			Caution: loadDecides,
			Explains: `
Each support is a flat bar that is held at the face of the wall and carries what of the top stands out over the room.
Who sits down on the edge loads it there, at the end of the longest lever. The bar bears most where it leaves the
wall, or at a row of holes further out, and steel that is bent beyond its yield stays bent. Between two
plates they share such a load. On a corner of the top nothing shares it: past the last plate the slab is a lever, and
that plate bears more than the whole. Set it near to the end.

Take wider or thicker flat bar: twice the width bears twice as much, twice the thickness four times. Less overhang
helps as much as it is less. The flat_bar block takes the yield of better steel; limits { bar_load = { … } } takes
other loads. No code states a load for the edge of a bar top.`,
		},
		{
			Slug: "steel-bends-too-far", Severity: Warning, Says: "the edge of a bar top goes down too far when somebody leans on it",
			Source: "IBC Table 1604.3: span/360 under live load, span/240 in all, for floor members; its footnote i: twice the length of a cantilever, from memory; " +
				"E 200 GPa (29000 ksi), AISC 360; loads as for steel-too-weak",
			Caution: loadDecides,
			Explains: `
Steel that is strong enough may still give. Its tip goes down and slopes, and the slab, which reaches beyond it,
follows that slope to its edge. The most is twice the overhang divided by 360 under what the top bears, and by 240
with its own weight. Stone cracks when it must follow, and glasses walk.

Thickness helps most: half as thick again is more than three times as stiff. Steel that reaches nearer to the edge
helps a little, less overhang a lot. That the tail turns in its recess, and that the slab stiffens the steel, is left
out of the reckoning. So is what the slab bends by itself.`,
		},
		{
			Slug: "screws-pulled", Severity: Warning, Says: "the screws at the tail of a support are pulled harder than wood holds them",
			Source:  "2850 G^2 D for each inch of thread, NDS 12.2.2; G 0.42 for spruce, pine and fir, NDS Table 12.3.3A, and 1.6 for a load of minutes, NDS, both from memory",
			Caution: loadDecides,
			Explains: `
What presses the edge down lifts the tail: the steel turns about the edge of the wall, and the screws behind that hold
it down. Those furthest behind are pulled most. A screw holds by the thread in the wood that is left under the recess,
which is little: a recess takes a third of a plate, and no screw may come out below.

More screws, a longer tail, thicker screws and denser lumber help; gravity of the stick says what lumber it is. If
that is not enough, a second upper plate gives long screws wood to hold in, or bolts go through with a washer under
them: then reckon these, leave screws out, and say bolted = true.`,
		},
		{
			Slug: "knee-wall-tips", Severity: Warning, Says: "a knee wall is not fixed well enough for what its bar top bears",
			Source:  "statics; loads as for steel-too-weak, screws as for screws-pulled; that a half wall needs more than nails in its lower plate: common practice, from memory",
			Caution: loadDecides,
			Explains: `
Load on the overhang tips the wall about the edge of its lower plate on the room's side. What holds it is the weight
of framing and top, and the better of its two fixings: screws into the floor, along the middle of the lower plate,
which hold with a short lever in as much wood as a floor has, or screws from the boxes into the studs. Boxes hold no
more than they weigh with their counter; where a density is not stated that is not looked at.

Longer screws help only while they are what gives way: where it is the boxes that are too light, take off overhang.
Fix the wall to the boxes, and the boxes to the room; an end that is screwed to a wall, or a post that is anchored,
does more than all of this, and is not reckoned. Skins, goods on the shelves and what lies on the counter are not
either.`,
		},
		{
			Slug: "floor-screws-missing", Severity: Note, Says: "nothing fixes the lower plate of a knee wall",
			Source:  "common practice, from memory: a wall's lower plate is screwed or bolted to the floor",
			Caution: loadDecides,
			Explains: `
Screws from the boxes hold the wall's middle and keep it from tipping. Its lower plate is then held by friction only,
and knees, feet and a mop push there for years.

Put screws or anchors through the lower plate into the floor.`,
		},
		{
			Slug: "bar-top-loose", Severity: Warning, Milder: []Severity{Note}, Says: "nothing is said to hold a bar top down where it stands out",
			Source:  "statics; the load on the edge as for steel-too-weak",
			Caution: loadDecides,
			Explains: `
A slab lies where its middle is over what carries it. Without steel that is the framing: a top that stands out
further over the room than lies on the framing and beyond it falls off as soon as it is let go, and one that stands
out less is tipped by who leans on its edge. With steel under it a top does not tip so easily, but slides and lifts;
a piece of it past a seam that lies on no steel is as if there were none.

Set supports, and screws up through them. Where adhesive, inserts or screws from below hold the top, say
held = true: what these bear is then for who sets it to judge.`,
		},
		{
			Slug: "bar-top-spans-too-far", Severity: Warning, Says: "a bar top spans too far between steel plates, or beyond the last",
			Source: "stone: natural stone trade manual, 24 in at 2 cm, 36 in at 3 cm, for what is sold as these; wood: one shop's rule, brackets 36 in apart at most; " +
				"half of that past the last plate: a cantilever counts twice, IBC Table 1604.3 footnote i, from memory",
			Caution: loadDecides,
			Explains: `
Between two plates the overhanging edge of the top carries itself and who leans on it. Stone of 2 cm does so for 24
in, of 3 cm for 36 in; a wooden top is held to 36 in. Past the last plate only one end is held, so half of that is the
most. Weak stone, or stone with a cut-out, spans less.

Set more supports, or move the last ones nearer to the ends with end.`,
		},
		{
			Slug: "counter-spans-too-far", Severity: Warning, Says: "a stone counter spans too far over bays",
			Source:  "natural stone trade manual, 24 in at 2 cm, 36 in at 3 cm, for what is sold as these; composites: makers differ, held to the same",
			Caution: loadDecides,
			Explains: `
Over a bay nothing lies under the counter: it carries itself, and who kneels on it, from box to box. Stone of 2 cm
does so for 24 in, of 3 cm for 36 in. Inside a box it lies on the top or on stretchers along both edges, so that is
not looked at.

Narrow the bay, part two bays by a cabinet, or take thicker stone. A cut-out over the bay makes it weaker still.`,
		},
		{
			Slug: "seam-between-plates", Severity: Warning, Says: "a seam of a bar top lies far from any steel plate",
			Source:  "common practice, from memory: a support within 6 in (150 mm)",
			Caution: loadDecides,
			Explains: `
A seam is glue and a few bolts: it holds two pieces level, and carries nothing. On the overhang nothing else is under
it where the next steel plate is far. Who leans on one piece opens the joint.

Lay the seam over a plate, or set the plates so that one lies under it.`,
		},
		{
			Slug: "stone-overhang", Severity: Warning, Says: "stone stands out further than it carries itself",
			Source:  "natural stone trade manual: 6 in at 2 cm, 10 in at 3 cm, and a third of the top's depth at most; composites: makers differ, held to the same",
			Caution: loadDecides,
			Explains: `
Stone has no give: an edge with nothing under it carries what the slab's thickness lets it, then breaks without a
sign. A counter counts from its boxes, a bar top from its framing, or from the tips of the steel. Beyond a third of
the depth of the top it is not the stone that fails: the whole top tips.

Take off overhang, or set supports that reach nearer to the edge. Weak stone may stand out less, and who makes the
slab decides.`,
		},
		{
			Slug: "wood-overhang", Severity: Warning, Says: "a wooden top stands out far with nothing under it",
			Source:  "common practice, from memory: 10 in (254 mm) at the usual 1 1/2 in (38 mm)",
			Caution: loadDecides,
			Explains: `
Wood of the usual thickness carries itself some way beyond boxes, framing or the tips of steel. Further out it sags,
and who leans on it pries off what holds it behind.

Set supports under it, let those that are there reach further, or take off overhang. A thicker top may do with none:
limits { bare_overhang = { wood = … } } says so.`,
		},
		{
			Slug: "stone-thin", Severity: Note, Says: "what stone under 2 cm carries is not published",
			Source:  "natural stone trade manual: figures for 2 cm and 3 cm only; sold as 2 cm from about 11/16 in on: common practice, from memory",
			Caution: loadDecides,
			Explains: `
Overhangs and spans of stone are published for 2 cm and 3 cm. Thinner sheets, 12 mm or 6 mm, are laid on a board that
carries them over their whole face; what they carry by themselves their makers say, if anybody.

Lay a board or steel under all of it, or ask who makes it.`,
		},
		{
			Slug: "stone-screwed", Severity: Warning, Says: "wood screws are to hold in stone",
			Source:  "common practice, from memory: adhesive, or inserts that are set where the slab is made",
			Caution: loadDecides,
			Explains: `
A wood screw finds no hold in stone: it spins, or bursts a piece off. Tops of stone lie on steel in adhesive, which
also fills what is not flat, or are screwed to inserts that their maker sets.

Leave top_screws out, and say held = true of the bar top.`,
		},
		{
			Slug: "solid-top-held", Severity: Warning, Says: "screws hold a top of solid wood so that it cannot move",
			Source:  "Wood Handbook, dimensional change coefficients, and 4 % change of moisture in a heated room, both from memory",
			Caution: loadDecides,
			Explains: `
Solid wood swells across its grain when the air is moist and shrinks when it is heated, year for year. Each screw
through the steel has a slot to move in. The first and the last of them are so far apart that the wood between moves
further than the slots let it: it splits, or lifts the screws.

Give the slots more movement, set the screws nearer together by a shorter reach, or take wood that moves less: swell
of the slab says how much. How a counter is fixed to its boxes the description does not say: use slotted cleats.`,
		},
		{
			Slug: "recess-takes-half", Severity: Warning, Says: "a recess for steel takes much of its plate's thickness",
			Source:  "common practice: half of it at most",
			Caution: loadDecides + " " + machineDecides,
			Explains: `
What is left of the upper plate under the steel holds its screws, and ties the studs on either side together. When
more than half of it is routed away, the plate breaks there as soon as somebody lifts the wall, and the screws find
little to hold in.

Take wider and thinner flat bar if it carries the load, or thicker lumber.`,
		},
	}},
}
