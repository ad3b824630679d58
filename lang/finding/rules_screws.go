package finding

// aboutScrews holds the rules of SPEC.md 11.6.
var aboutScrews = []Section{
	{"11.6", "Screws", []Rule{
		{
			Slug: "screw-comes-through", Severity: Warning, Says: "a screw is longer than all that it goes into",
			Source:  "common practice: a screw is no longer than what it joins",
			Caution: loadDecides,
			Explains: `
The boards that the screw passes and the one that holds it are together no thicker than the screw is long. Its tip comes
out of the far face: it shows, and whoever reaches into the box is hurt by it.

The thickness of all boards counts, as measured, and not only of the one that holds. Take a shorter screw: the mend
names one of the stock that serves, or says how long one would have to be, in steps of 1/4 in or 5 mm. Where none of that
thickness is sold so long, a thinner one holds with less.`,
		},
		{
			Slug: "screw-near-face", Severity: Warning, Says: "the tip of a screw stops too near the far face",
			Source:  "common practice: 1/8 in or 3 mm at least before the far face (from memory); a wood screw is its nominal length, or up to 1/16 in shorter",
			Caution: loadDecides,
			Explains: `
A screw that is driven a little deeper than flush, or a board that is a little thinner than measured, and the tip comes
out. Before it does, the face swells over the tip.

limits { stand_off = … } says how much wood has to stay before the tip.`,
		},
		{
			Slug: "screw-too-short", Severity: Warning, Says: "too little of a screw is in what must hold it",
			Source: "NDS 12.1.5 and tables, from memory: a wood screw that holds a load across it goes in 6 diameters at least; " +
				"common practice, from memory: 3 diameters between boards of boxes, 1 1/2 in or 40 mm into a plug in masonry",
			Caution: loadDecides,
			Explains: `
A screw holds by the part of it that is in the last piece: in the stud, not in the stretcher, the back or the gypsum board
before it. What it passes on its way, each layer as thick as it is, is taken off its length. What is left is too little.

Take a longer screw: the mend names one of the stock that serves, or says how long one would have to be. lining of a wall
says how thick the board on its studs is; limits { bite = { … } } what a screw has to go in. A gap that a screw crosses is
packed solid round it: in the air it bends, and pulls what it holds out of square.`,
		},
		{
			Slug: "screw-deep-in-stud", Severity: Note, Says: "a screw goes deeper into a stud of the room than cables keep from its face",
			Source:  "NEC 300.4(A)(1): a cable's hole keeps 1 1/4 in from the nearest edge of the wood, or a steel plate of 1/16 in is before it; that screws stay within that is common practice",
			Caution: wiringDecides,
			Explains: `
What is in a wall nobody sees. A cable that is bored through studs nearer than 1 1/4 in to their face has a steel plate
before it; further in it may lie bare, and a screw that goes so deep can meet it. So can it a pipe.

A thinner screw holds with less of its length in the stud: six diameters of a #8 are 1 in. lining of the wall says how thick
the board on its studs is. Who knows what runs in the wall says so with limits { stud_depth = … }.`,
		},
		{
			Slug: "wide-head-shows", Severity: Note, Says: "a screw with a wide head is where it is seen",
			Source:  "common practice: washer heads inside boxes with doors, trim heads where they are seen",
			Caution: loadDecides,
			Explains: `
A wide head holds more than a small one and looks like it. Behind doors nobody minds; in an open box, in a toe kick or on
the outside it shows for as long as the bar stands.

seen_screws of a run is the screw that goes to the wall, or into the knee wall, where no front hides it.`,
		},
		{
			Slug: "wide-head-in-the-way", Severity: Warning, Says: "a wide head stands out of a face that something lies against",
			Source:  "common practice",
			Caution: loadDecides,
			Explains: `
A wide head is not sunk: it stays on the surface, as thick as it is. On the side of a box it keeps the next box off, on a
plate of a knee wall the bar top or the floor, in steel it does not go into a hole that is sunk for a flat head, and a
hinge plate that is to hide it does not lie flat.

Take a flat head there. Where wide ones are for the back alone, back = { screws = … } of a carcass names them.`,
		},
		{
			Slug: "head-pulls-through", Severity: Warning, Says: "the head of a screw is too small for the thin board that it holds",
			Source:  "common practice, from memory: trim heads in boards of 3/8 in or 9 mm and more, flat ones of 3/16 in or 4 mm",
			Caution: loadDecides,
			Explains: `
A flat head is sunk into the board, and a trim head is hardly wider than its screw. In a thin board little is left under
such a head, and it pulls through when somebody leans on what it holds. Boards that lie on one another right under the
head count together.

Take screws with wide heads, and for a back let back = { screws = … } of the carcass name them. limits { under_head = { … } }
says how thick a board has to be.`,
		},
		{
			Slug: "joint-screw-shows", Severity: Note, Says: "screws that join two boxes are seen in both",
			Source:  "common practice: joint screws behind hinge plates where they can be, trim heads where they are seen",
			Caution: loadDecides,
			Explains: `
Screws between two boxes are driven from the one that has a door hanging there, whose hinges cover the ones
near the front, or at least from one that has fronts before it. Here neither has: the heads are seen by whoever
stands before the bar.

Trim heads are hardly seen. What placed.joint.1 of a run answers tells where the screws of its first joint go.`,
		},
		{
			Slug: "joint-screw-in-bore", Severity: Note, Says: "a screw between two boxes runs into a hole for a shelf pin or a hinge",
			Source:  "common practice",
			Caution: loadDecides,
			Explains: `
Joint screws go where hinges hide them, on the line that rows of holes for shelf pins stand on too. Here one meets a hole
that is bored from inside into one of the two sides: it finds no wood there, and its tip shows in the hole.

Let the hinges stand elsewhere, hinge = { from_end = … }, or the first row of holes, pins = { from_front = … }. Or set that
screw a little higher when you come to it.`,
		},
	}},
}
