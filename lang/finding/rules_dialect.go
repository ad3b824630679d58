package finding

var aboutDialects = []Section{{"13.5", "Dialects and sheets", dialectRules}}

// dialectRules holds what no program is written with.
var dialectRules = []Rule{
	{
		Slug: "line-not-safe", Severity: Error, Says: "a line of the control's own could move the machine unseen",
		Caution: machineDecides,
		Source:  "NISTIR 6556, the RS274/NGC interpreter: what G and M codes do",
		Explains: `
Lines of the control's own are written as they are, and nothing here knows what they do. So those are refused that move
the machine by themselves, change what the figures of the program mean, turn the spindle, change the bit, end the
program or call another one: all G codes but G61, G61.1 and G64, all axis words, and M2 to M6, M30, M60 and M97 to M99.
A line holds one code with its P, Q and L, or a comment, in printable ASCII, in capitals and with one blank between
words. Other M codes are the control's own: its manual tells whether one of them moves something.`,
		Wrong: `router "second" {
  bit   = "1/4in"
  feed  = 100
  start = "G28 Z0"
}`,
		Right: `router "second" {
  bit   = "1/4in"
  feed  = 100
  start = "M64 P1"
}`,
	},
	{
		Slug: "wait-too-long", Severity: Error, Says: "the program would wait too long for the spindle",
		Caution: machineDecides,
		Explains: `
The figure is in seconds. A program that stands still for more than a minute with the spindle turning is most often
meant in another unit.`,
	},
	{
		Slug: "chord-out-of-range", Severity: Error, Says: "straight pieces for arcs cannot be so coarse or so fine",
		Caution: machineDecides,
		Explains: `
The ends of straight pieces are rounded to the last decimal of the program, so they cannot stay closer to their arc than
two steps of it. Pieces that leave an arc by more than 0.05 mm would leave wood in the corners of a recess where the
steel comes to lie.`,
	},
}
