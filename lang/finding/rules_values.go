package finding

// aboutValues holds what can be wrong with lengths, expressions and names.
var aboutValues = []Section{
	{"2.1", "A length in quotes", []Rule{
		{
			Slug: "unreadable-length", Severity: Error, Says: "a text is no length",
			Explains: `
A length in quotes is read as a tape is read: "7ft 11 1/2in", "23/32 in", "490mm". What two people could read in two
ways is refused rather than guessed at: 71/2in could be 7 1/2 or 71 halves, 1,500 could be one and a half or fifteen
hundred, 19 - 1/2in could join or take away.

Write a space between the whole and the fraction, a point for decimals, and one unit. To add and take away, write
expressions: tape("19in") - "1/2in".`,
			Wrong: `slab "oak" { thickness = "11/2in" }`,
			Right: `slab "oak" { thickness = "1 1/2in" }`,
		},
	}},
	{"2.2", "Kinds of value", []Rule{
		{
			Slug: "wrong-type", Severity: Error, Says: "a value is of the wrong kind",
			Explains: `
A text stands where a number is needed, a name in quotes where a block is meant, a list where one value belongs; or an
expression puts together what does not go together, as a length times a length.

The usual cause is a pair of quotes too many or too few. A block is named without quotes: wall.north. A length with its
unit or a fraction has them: "1 1/2in". The answer says which kind is there and which is needed.`,
			Wrong: "counter \"second\" {\n  over = \"run.back\"\n  slab = slab.maple\n}",
			Right: "counter \"second\" {\n  over = run.back\n  slab = slab.maple\n}",
		},
	}},
	{"2.3", "Bare numbers", []Rule{
		{
			Slug: "unit-unclear", Severity: Error, Says: "bare numbers of files with different units met",
			Explains: `
A bare number takes the unit of the file in which it was written. Here numbers from a file of inches and from a file of
millimetres were added or compared, so the result has no unit that everybody would agree on, and a mistake of 25 times
would go unseen.

Give one of them its unit where it is used, as in given.bar_top * in - 1040, or where it is written, as in "42in".`,
			Wrong: "unit = \"mm\"\nslab \"oak\" { thickness = given.bar_top - 1040 }",
			Right: "unit = \"mm\"\nslab \"oak\" { thickness = given.bar_top * in - 1040 }",
		},
	}},
	{"2.4", "Arithmetic", []Rule{
		{
			Slug: "division-by-zero", Severity: Error, Says: "nothing can be divided by 0",
			Explains: `
What stands below the line comes out as 0. Often it is a difference that has become nothing since another number was
changed, or a given that was set to 0 on the command line.`,
			Wrong: `given { share = 100 / (4 - 4) }`,
			Right: `given { share = 100 / (4 - 3) }`,
		},
		{
			Slug: "not-in-language", Severity: Error, Says: "HCL has this form, the language has not",
			Explains: `
HCL can write more than a description needs: null, remainders with %, brackets after a value, loops with for. The
language leaves these out, so that whoever reads a description can work it out with a pencil.

An attribute that is not wanted is left out rather than set to null; for a step write floor, ceil or round; for several
alike write the count or the spacing that the block offers.`,
			Wrong: "slab \"oak\" {\n  thickness = 1.5\n  density   = null\n}",
			Right: `slab "oak" { thickness = 1.5 }`,
		},
	}},
	{"2.5", "Functions", []Rule{
		{
			Slug: "unknown-function", Severity: Error, Says: "there is no such function",
			Explains: `
The functions are tape, min, max, abs, floor, ceil and round. There are no others, and none can be defined.`,
			Wrong: `slab "oak" { thickness = maximum(1, 1.5) }`,
			Right: `slab "oak" { thickness = max(1, 1.5) }`,
		},
		{
			Slug: "wrong-arguments", Severity: Error, Says: "a function cannot work with these arguments",
			Explains: `
A function has too few values or too many between its brackets, or a step that is not over 0. floor, ceil and round
take the value and then the step: round("10 3/16in", "1/8in").`,
			Wrong: `slab "oak" { thickness = round(1.3) }`,
			Right: `slab "oak" { thickness = round(1.3, 0.25) }`,
		},
	}},
	{"3.1", "What a name stands for", []Rule{
		{
			Slug: "unknown-name", Severity: Error, Says: "an expression names what is not there",
			Explains: `
An expression, or --set on the command line, uses a name that nothing in the build has. It is misspelt, the block was
renamed or taken out, or the value is one that this block neither states nor has worked out for it.

Blocks are named by kind and name, cabinet.sink, and their values after one more dot, cabinet.sink.width; inputs as
given.NAME. Where a known name is near, the answer says it.`,
			Wrong: `slab "oak" { thickness = slab.mapel.thickness }`,
			Right: `slab "oak" { thickness = slab.maple.thickness }`,
		},
		{
			Slug: "given-refused", Severity: Error, Says: "a given is not what it says that it may be",
			Explains: `
A given can say its least and its greatest value, or the few that it can have, so that whoever plays with it stays
within what was thought through. The value here, in the text or from the command line, is none of them. Take another,
or change the range if you have thought it through again.`,
		},
	}},
	{"3.3", "Order of evaluation", []Rule{
		{
			Slug: "circle", Severity: Error, Says: "a value needs itself",
			Explains: `
Each value is worked out from others, and here the way leads back to where it began: the width of one cabinet follows
from another's, and that one's from the first. Nobody could work it out with a pencil either.

The answer shows the way round, step by step. Give one of its values a figure of its own, the one that you would
measure or decide first.`,
			Wrong: "given {\n  bar  = given.work + 6\n  work = given.bar - 6\n}",
			Right: "given {\n  bar  = given.work + 6\n  work = 36\n}",
		},
	}},
}
