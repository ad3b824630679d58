package finding

// aboutScrews holds the rules of SPEC.md 11.6.
var aboutScrews = []Section{
	{"11.6", "Screws", []Rule{
		{
			Slug: "screw-comes-through", Severity: Warning, Says: "a screw is longer than all that it goes into",
			Source: "common practice: a screw is no longer than what it joins",
			Explains: `
The boards that the screw passes and the one that holds it are together no thicker than the screw is long. Its tip comes
out of the far face: it shows, and whoever reaches into the box is hurt by it.

The thickness of all boards counts, as measured, and not only of the one that holds. Take a shorter screw: the mend
names one of the stock that serves, or says how long one would have to be.`,
		},
		{
			Slug: "screw-near-face", Severity: Warning, Says: "the tip of a screw stops too near the far face",
			Source: "common practice: 1/8 in or 3 mm at least before the far face (from memory); a wood screw is its nominal length, or up to 1/16 in shorter",
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
says how thick the board on its studs is; limits { bite = { … } } what a screw has to go in.`,
		},
	}},
}
