package finding

// aboutWiring holds the rules of SPEC.md 11.9.
var aboutWiring = []Section{
	{"11.9", "Wiring", []Rule{
		{
			Slug: "ground-fault-missing", Severity: Warning, Says: "an outlet near a sink is not said to be protected",
			Source:  "NEC 210.8(A): within 6 ft (1.8 m) of the top inside edge of a sink's bowl, along the shortest path that a cord would take without piercing a floor, wall, ceiling or fixed barrier; in 2023 every outlet in an area with a sink and permanent provisions for food or beverage preparation",
			Caution: wiringDecides,
			Explains: `
A cord that is plugged in here can lie in the sink, or be held by somebody with a hand in it. A ground-fault device cuts
the current before that kills. It may be in the outlet itself, in one before it on the same circuit, or in the panel.

The way is measured as a cord would lie: over the edges of slabs, over a knee wall or round its end, into a box by its
open front or its doors, but through no board. It begins at the cut-out of the sink, which is a little larger than its
bowl, and ends at the nearest point of the outlet's box. What the text does not tell of, as a pane of glass between, is
not counted.

ground_fault = true says that the outlet is protected, or of a wall that all in it are. limits { ground_fault_within = … } states another reach, and
limits { ground_fault_area = true } asks it of every outlet, as newer codes do where food or drink is made.`,
		},
		{
			Slug: "ground-fault-area", Severity: Note, Says: "an outlet far from the sink, which newer codes ask to be protected too",
			Source:  "NEC 210.8(A) of 2023: every outlet in an area with a sink and permanent provisions for food or beverage preparation",
			Caution: wiringDecides,
			Explains: `
Until 2020 the code asked for ground-fault protection within 6 ft of a sink. Since 2023 it asks it of every outlet in an
area with a sink and a place where food or drink is made, which a bar is. Which of them holds is for the place to say: many
have not taken up the newer one.

ground_fault = true of the wall says that its outlets are protected. limits { ground_fault_area = true } has all outlets
judged as the newer codes do, limits { ground_fault_area = false } none beyond the reach.`,
		},
		{
			Slug: "wiring-not-judged", Severity: Note, Says: "outlets and a sink, but nobody's rules of wiring are meant",
			Source:  "common practice: each country has rules of its own for outlets near water",
			Caution: wiringDecides,
			Explains: `
Rules of wiring differ from country to country. A build in inches is held to those of North America; one in millimetres
to none, unless it says so. That is no mistake, but who reads no warning might think that the outlets had been judged.

limits { wiring = "none" } says that it is known. limits { ground_fault_within = … } holds the outlets to a distance
that the place demands, and limits { wiring = "nec" } to the rules of North America.`,
		},
		{
			Slug: "box-overfilled", Severity: Warning, Says: "the wires in a box take more room than it has",
			Source:  "NEC 314.16(B) and Table 314.16(B); volumes of metal boxes by Table 314.16(A); grounds as in 2020",
			Caution: wiringDecides,
			Explains: `
Wires that are pressed into a box grow warm and break at their ends. Each conductor takes a volume by its gauge: 1.5, 1.75,
2, 2.25, 2.5, 3 and 5 cubic inches for 18, 16, 14, 12, 10, 8 and 6 AWG. Of the thickest in the box, a device takes two,
clamps inside one together, each kind of fitting one, up to four grounds one and each more a quarter.

wires says what the box holds, and volume of its box what is marked on it. A metal box of 2 x 3 or 4 x 4 in with a depth
of the published table needs no mark. A conductor that neither comes from outside nor leaves counts for nothing.`,
		},
		{
			Slug: "box-volume-unknown", Severity: Note, Says: "the wires in a box are told, but not how much it holds",
			Source:  "NEC 314.16(A): a plastic box holds the volume that is marked on it",
			Caution: wiringDecides,
			Explains: `
What the wires of this box take is known, but boxes of one outside size differ in what they hold. The volume is marked
inside the box: box = { volume = … } in cubic inches. Then it can be judged.`,
		},
		{
			Slug: "box-too-deep", Severity: Warning, Says: "a box is deeper than its wall has room for",
			Source:  "common practice: a common stud is 3 1/2 in deep (PS 20: 2x4)",
			Caution: wiringDecides,
			Explains: `
The box reaches further into the wall than there is room between its face and what closes it behind. It would stand out
of the wall, and boards and cover plates would not lie flat; or the wall is deeper than is taken here.

cavity of the wall says how deep it is, its lining counted; where it is left out, a wall of studs is taken to have the
depth of common ones, and other walls are not judged. A box that stands out of the wall reaches that much less into it.`,
		},
		{
			Slug: "box-behind-panel", Severity: Warning, Says: "a box lies behind the face of the board that it is used through",
			Source:  "NEC 314.20: in wood or other surfaces that burn a box is flush with the surface or stands out of it",
			Caution: wiringDecides,
			Explains: `
The box is flush with the wall, and a cabinet's back now stands before it. Between the box and the face of the back wood
lies open to the sparks of a bad connection, and the screws of the outlet may no longer reach.

extender = true says that a ring brings the box out to that face, extenders = true of its wall that all have one. Nothing is said where the opening is as large as the
cover plate, which then lies on the wall, nor where stands_out brings the box as far.`,
		},
		{
			Slug: "plug-out-of-reach", Severity: Warning, Says: "an appliance is to be plugged in where nobody gets to, or no cord does",
			Source:  "common practice, from memory: the outlet of an appliance can be reached without moving it",
			Caution: wiringDecides,
			Explains: `
Behind an appliance a plug takes the room that the appliance needs to go back, and nobody can pull it when something burns.
An outlet inside the box beside the bay is reached by its door, and the cord passes one side.

An outlet in a box of another run, or on the far side of a knee wall, is out of the cord's way. One out before the boxes
of the run, on the work side of another's knee wall or on a wall beyond, is reached only across the floor, where a cord
trips people and is stepped on.`,
		},
		{
			Slug: "cord-too-short", Severity: Warning, Says: "a cord does not reach its outlet",
			Source:  "common practice, from memory: along the boards, with something left over, and no extension cord",
			Caution: wiringDecides,
			Explains: `
The cord is taken to leave the appliance at its rear, in the middle of its foot, and to follow the boards: along the run,
across it, and up or down, to the middle of the outlet as it is used, and through the holes for its plug. Some slack is left, so that nothing pulls at the
plug. The maker's sheet may say where the cord leaves; where it is nearer, slack = 0 or less of it may be right.

No extension cord mends it: the outlet is moved nearer, which is for somebody licensed to do, or the appliance.`,
		},
		{
			Slug: "no-air-path", Severity: Warning, Says: "an appliance that breathes at its rear has too little air round it",
			Source:  "common practice: 1 to 2 in behind, 1 in over, 1/8 to 1/2 in on each side of a free-standing refrigerator",
			Caution: "The maker's sheet decides what an appliance needs; no clearance that is taken here counts as its approval.",
			Explains: `
A cooler warms the air that it draws in. Where that finds no way behind the appliance and out over it, the cooler runs
all day and dies early. The gap on each side and the room under it let air in from the front, the gap over it lets it out.

air = "rear" says that it breathes there. One that breathes at its front, through a grille at its foot, needs no gap
where its maker says so: nothing that is built here closes the foot of a bay. limits { air_gap = { … } } states other gaps.`,
		},
		{
			Slug: "cable-near-water", Severity: Note, Says: "a cable comes through the box under a sink",
			Source:  "common practice: nothing electrical where a trap is opened over it",
			Caution: wiringDecides,
			Explains: `
Under a sink water drips sooner or later: from a trap that is cleaned, from a tap that is changed. A cable that lies there gets
wet, and who works there lies on it. The way that is proposed is the shortest; it is not always the best.

through names boxes that it is to come by instead; inside the knee wall it lies dry. Where it stays, who wires decides how it is
protected.`,
		},
	}},
}
