package finding

// aboutSkins holds what can be wrong with what covers a knee wall's framing.
var aboutSkins = []Section{
	{"6.16", "Skins and battens", []Rule{
		{
			Slug: "face-taken", Severity: Error, Says: "two skins on one face of a knee wall, or two corners on one end",
			Caution: loadDecides,
			Explains: `
Each face of a knee wall has one skin, each end one corner. Two are said to be in the same place. Most often a block was
copied and its face was left as it was.`,
		},
		{
			Slug: "skin-at-wall", Severity: Error, Says: "a skin on an end that meets a wall of the room",
			Explains: `
A skin covers an end of the framing that people see. This end stands against a wall of the room. Leave the skin out
there; left and right are as one faces the run, so perhaps the other end was meant.`,
		},
		{
			Slug: "skin-off-framing", Severity: Error, Says: "an end skin that reaches over the run does not lie on the framing",
			Caution: loadDecides,
			Explains: `
A skin over the end of the run lies on the side of its last box, and in one plane with that on the end of the framing. The
framing is inset, or stands out, so the skin would lie hollow or not lie on at all. Leave the inset out: it is then 0.`,
		},
		{
			Slug: "skin-over-end-panel", Severity: Error, Says: "a skin and an end panel on the same end of a run",
			Explains: `
A skin that reaches over the end of the run covers what an end panel covers. Both are asked for, in the same place. Leave
out the panel, or let the skin end with the framing.`,
		},
		{
			Slug: "skin-without-height", Severity: Error, Says: "a skin has no height left",
			Explains: `
A skin goes from the counter, or from the floor, up to the bar top, with a gap at either edge. Here the gaps are all there
is: the framing is hardly higher than what the skin begins at.`,
		},
		{
			Slug: "no-stud-for-seam", Severity: Error, Says: "a skin or cap is longer than its sheet, and no stud is in reach",
			Source:  "common practice: sheets meet on the middle of a stud",
			Caution: loadDecides,
			Explains: `
A skin longer than its sheet is made of pieces that meet on a stud, where both can be fixed. A piece must end on the last
stud that the sheet reaches, and there is none. Usually the grain was to lie along instead of up, or a sheet's size is
wrong.`,
		},
		{
			Slug: "seam-off-stud", Severity: Error, Says: "a seam of a skin lies on no stud",
			Source:  "common practice: sheets meet on the middle of a stud",
			Caution: loadDecides,
			Explains: `
Two pieces of a skin meet where there is no stud, so neither edge could be fixed. Put the seam on the middle of a stud, but
not of one at an end; the answer names the nearest. Seams count from the left end of the framing, as one looks at the face:
from the room's side that is the other end of the run.`,
		},
		{
			Slug: "piece-too-long", Severity: Error, Says: "seams leave a piece of a skin longer than its sheet",
			Source: "plain arithmetic: the stated size, less what the saw trims off its edges",
			Explains: `
The seams are stated, and between two of them, or between one and an end, lies more than a sheet gives once its factory
edges are trimmed. Add a seam, move one, or leave them to the rule.`,
		},
		{
			Slug: "battens-meet", Severity: Error, Says: "battens do not find room beside one another",
			Source:  "common practice",
			Caution: loadDecides,
			Explains: `
Some battens are fixed: over seams, mirrored to these, at the ends. Two of them run into one another, or more are to stand
between two than find room there, beside what is in the way.

A seam near the middle is mirrored to a place near itself: put it into the middle, if a stud is there, or say mirrored =
false.`,
		},
		{
			Slug: "strip-meets-cover", Severity: Error, Says: "a batten, cap or corner lies over an outlet's cover plate",
			Source:  "common practice",
			Caution: wiringDecides,
			Explains: `
Battens between fixed ones give way to the cover plates of outlets. Those over seams, at the ends, and caps and corners
do not: here one would cover a plate. Move the outlet along the wall, or up or down.`,
		},
		{
			Slug: "cap-too-wide", Severity: Error, Says: "a cap is wider than the skin under it is high",
			Explains: `
A cap lies along the upper edge of a skin, or under what leaves the wall there. It would be as wide as the skin is high
below that, or wider. Take a narrower one.`,
		},
		{
			Slug: "corner-without-skin", Severity: Error, Says: "a corner where there are no two skins to meet",
			Explains: `
A corner covers the edge where the skin on the room's side meets that on an end. One of the two is not there. Add the
skin, or leave the corner out.`,
		},
		{
			Slug: "corner-width", Severity: Error, Says: "a corner is wider than what it covers, or as narrow as it is thick",
			Explains: `
A corner is made of two strips, and its width is that of the strip on the room's side, and over both on the end. On the
end there must be as much skin to lie on, and the width must be more than the thickness, or nothing is left of the
second strip.`,
		},
	}},
}
