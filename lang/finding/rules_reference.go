package finding

// aboutReference holds what can be wrong with blocks, attributes and what they
// take.
var aboutReference = []Section{
	{"5", "Reference", []Rule{
		{
			Slug: "unknown-block", Severity: Error, Says: "there is no such block here",
			Explains: `
The word before the brace names no block that may stand at this place: it is misspelt, it stands inside the wrong
block, or it is an attribute and wants an = instead of a brace. SPEC.md says for each block which blocks stand in it.`,
			Wrong: `slap "oak" { thickness = 1.5 }`,
			Right: `slab "oak" { thickness = 1.5 }`,
		},
		{
			Slug: "unknown-attribute", Severity: Error, Says: "there is no such attribute or field here",
			Explains: `
The block or object has no attribute of that name. A misspelt name would otherwise be passed over without a word, and
the default would be built in the place of what was meant.

Look for the near name that the answer gives, for an attribute that belongs to another block, or for a block that wants
a brace instead of an =.`,
			Wrong: `slab "oak" { thicknes = 1.5 }`,
			Right: `slab "oak" { thickness = 1.5 }`,
		},
		{
			Slug: "attribute-missing", Severity: Error, Says: "a block or an object lacks what it needs",
			Explains: `
Some figures cannot be guessed: the thickness of a board is measured, the height of a box is decided. Where one is
missing, nothing that hangs on it can be worked out. The answer shows how it is written.`,
			Wrong: `slab "oak" { density = 700 }`,
			Right: "slab \"oak\" {\n  thickness = 1.5\n  density   = 700\n}",
		},
		{
			Slug: "unknown-word", Severity: Error, Says: "a word is not among those that may stand here",
			Explains: `
The attribute takes one of a few words, and this is none of them. Words are written as SPEC.md has them: units as "in"
or "mm" and not in full, sides as "left" and "right" as seen facing.`,
			Wrong: "unit = \"inches\"\nslab \"oak\" { thickness = 1.5 }",
			Right: "unit = \"in\"\nslab \"oak\" { thickness = 1.5 }",
		},
		{
			Slug: "negative", Severity: Error, Says: "a figure cannot be under 0",
			Explains: `
A size, a gap or a count came out under 0. Where it is an expression, more was taken away than there was: the answer
gives what came out.`,
			Wrong: `slab "oak" { thickness = 1 - 2 }`,
			Right: `slab "oak" { thickness = 3 - 2 }`,
		},
		{
			Slug: "zero", Severity: Error, Says: "a length must have a size",
			Explains: `
A thing that is 0 wide or 0 thick is not there. Where nothing is wanted, leave out the block or the attribute; where
the figure is an expression, look at what it was made from.`,
			Wrong: `slab "oak" { thickness = 0 }`,
			Right: `slab "oak" { thickness = 1.5 }`,
		},
		{
			Slug: "too-large", Severity: Error, Says: "a figure is beyond anything in a room",
			Explains: `
No length in a room is over 1000 m, and no figure of a recess over 10 m. Most often the unit is another than was meant,
a decimal point is missing, or an expression multiplied where it should have added. A text that is put together from
pieces has a limit too.`,
			Wrong: `slab "oak" { thickness = 2000 * m }`,
			Right: `slab "oak" { thickness = "1.5in" }`,
		},
		{
			Slug: "too-small", Severity: Error, Says: "a figure is below anything that can be measured",
			Explains: `
An expression came out so near to 0 that no tape and no machine could tell. Look at what was divided by what.`,
		},
		{
			Slug: "not-a-count", Severity: Error, Says: "a count is not whole, or out of range",
			Explains: `
So many pieces are a whole number from 1 to 1 000 000. Half a support cannot be cut; for none, leave out the block or
the attribute. In a cut list they are from 0 to 20 000.`,
			Wrong: "router \"small\" {\n  bit    = \"1/8in\"\n  feed   = 60\n  flutes = 1.5\n}",
			Right: "router \"small\" {\n  bit    = \"1/8in\"\n  feed   = 60\n  flutes = 2\n}",
		},
		{
			Slug: "not-an-angle", Severity: Error, Says: "an angle is out of range",
			Explains: `
Angles are in degrees, over 0 and under 360. The corner between two walls is the angle inside the room: 90 where it is
square, under 90 where the next wall leans in, over 180 at an outside corner.`,
		},
		{
			Slug: "empty-list", Severity: Error, Says: "a list has no values",
			Explains: `
A pair of square brackets with nothing between them says neither that there is something nor that there is nothing.
Write the values, or leave the attribute out.`,
			Wrong: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = []\n}",
			Right: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = [\"8ft\"]\n}",
		},
		{
			Slug: "not-rising", Severity: Error, Says: "a list, or a range, must rise from value to value",
			Explains: `
Places along a wall and lengths on sale are written from the smallest to the largest, so that a slip of the pen shows:
the value that the answer points at is not larger than the one before it. Look for a figure typed twice, or two that
changed places. So it is with from and to of a range; the one that is left out stands at its default.`,
			Wrong: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = [\"12ft\", \"8ft\"]\n}",
			Right: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = [\"8ft\", \"12ft\"]\n}",
		},
		{
			Slug: "unlikely-size", Severity: Warning, Says: "what is bought is thicker or thinner than anybody sells",
			Source: "common practice",
			Explains: `
A sheet, a stick, a flat bar, a slab or banding has a thickness that is not sold. Nearly always the number was meant in another
unit: a stock file in inches was taken in by a build of millimetres, or unit = stands at the top of the wrong file.

Write the unit beside the number, as in "18mm" or "23/32in", or state the file's own unit at its top.`,
		},
		{
			Slug: "prices-unmatched", Severity: Error, Says: "there is not one price for each length",
			Explains: `
Where a stick or a bar is sold in several lengths, prices stand in the same order, one for each length. With one too
few or too many nobody could tell which belongs to which.`,
			Wrong: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = [\"8ft\", \"12ft\"]\n  prices    = [6.5]\n}",
			Right: "stick \"rail\" {\n  thickness = 0.75\n  width     = 1.5\n  lengths   = [\"8ft\", \"12ft\"]\n  prices    = [6.5, 9.8]\n}",
		},
	}},
}
