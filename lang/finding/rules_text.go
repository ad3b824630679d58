package finding

// aboutText holds what can be wrong with a text before anything is worked out.
var aboutText = []Section{
	{"1.1", "Files", []Rule{
		{
			Slug: "not-utf8", Severity: Error, Says: "a byte is not UTF-8 text",
			Source: "RFC 3629, UTF-8",
			Explains: `
A description is plain text in UTF-8. Here is a byte that cannot be part of such a text: most often a letter with an
accent or a fraction sign that an older editor saved in its own way, or a file that is no text at all.

Open the file in an editor that can choose the encoding, and save it as UTF-8.`,
		},
		{
			Slug: "syntax", Severity: Error, Says: "the text is not HCL",
			Source: "HCL native syntax",
			Explains: `
The text cannot be read at this place: a quote or a bracket is not closed, a comma or an = is missing, or two things
stand on one line that need a line each. While a file cannot be read, nothing else is said of it.

The usual causes: a length with its unit or a fraction that stands without quotes; a block on one line with more than
one attribute; curly quotes from a word processor; a closing brace too many or too few, which may be some lines up.`,
			Wrong: `slab "oak" { thickness = 1 1/2in }`,
			Right: `slab "oak" { thickness = "1 1/2in" }`,
		},
		{
			Slug: "said-twice", Severity: Error, Says: "one thing is said in two places",
			Explains: `
An attribute stands twice in one block, a field twice in one object, or a block twice that may stand once only. Or a
run says both that it stands along a wall and that it stands out from one.

Two figures for one thing cannot both hold, and the one that is forgotten is the one that gets cut. Leave one of them
out; the answer shows both places.`,
			Wrong: "slab \"oak\" {\n  thickness = 1.5\n  thickness = 2\n}",
			Right: `slab "oak" { thickness = 2 }`,
		},
	}},
	{"1.2", "Names", []Rule{
		{
			Slug: "name-missing", Severity: Error, Says: "a block lacks its name",
			Explains: `
Blocks of this kind are told apart by a name, in quotes after the word: cabinet "sink". The name is what expressions,
part labels and drawings call it by.`,
			Wrong: `slab { thickness = 1.5 }`,
			Right: `slab "oak" { thickness = 1.5 }`,
		},
		{
			Slug: "name-unwanted", Severity: Error, Says: "a block that has no name carries one",
			Explains: `
A block of this kind stands once, or is told apart by where it stands, and has no name; or a block has two names where
it can have one. Leave the name out.`,
			Wrong: `saw "table" { kerf = "1/8in" }`,
			Right: `saw { kerf = "1/8in" }`,
		},
		{
			Slug: "unusable-name", Severity: Error, Says: "an expression could not use this name",
			Explains: `
Names are used in expressions, as in cabinet.sink.width, so they are made of letters, digits and _, start with a
letter, and are not longer than 40 bytes. A hyphen would read as a minus, a space as the end of the name.

Write an _ for it. Only the build's own name is any text.`,
			Wrong: `slab "live edge" { thickness = 1.5 }`,
			Right: `slab "live_edge" { thickness = 1.5 }`,
		},
		{
			Slug: "name-taken", Severity: Error, Says: "two blocks of one kind, or two givens, have one name",
			Explains: `
Blocks are named by kind and name alone, wherever they stand: cabinet.sink could not tell which of two it means. This
holds across runs and across the files of a build. A cabinet and an outlet may share a name. Names that differ in
capitals only are refused too: they would give parts the same label, which is all in capitals.

Often a block was copied and its name left as it was. Give one of them another name; what speaks of it must follow.`,
			Wrong: "slab \"oak\" { thickness = 1.5 }\nslab \"oak\" { thickness = 2 }",
			Right: "slab \"oak\" { thickness = 1.5 }\nslab \"thick_oak\" { thickness = 2 }",
		},
	}},
	{"1.3", "Unit", []Rule{
		{
			Slug: "build-missing", Severity: Error, Says: "there is no build block",
			Explains: `
One block in the description names the build and says in which unit bare numbers are: build "my bar" { unit = "in" }.
Without it 36 could be inches or millimetres.

It is missing where the wrong folder was named on the command line, or where only some files of a build were given.`,
		},
	}},
	{"1.4", "Files taken in", []Rule{
		{
			Slug: "include-outside", Severity: Error, Says: "a file that is taken in lies outside the tree",
			Explains: `
A build takes in files of its own repository, or of the folder that the command runs in, and no others: somebody who
gets the folder gets all of the build, and nobody's description can read what is elsewhere on the machine. The path is
relative, with forward slashes; a link that leads out of the tree does not help.

Move or copy the file into the tree.`,
		},
		{
			Slug: "include-unreadable", Severity: Error, Says: "a file that is taken in is not there or cannot be read",
			Explains: `
The path counts from the folder of the file in which it is written, not from where the command runs. Look at the
spelling, at capitals, and at how many folders up it goes.`,
		},
	}},
}
