package finding

var aboutLists = []Section{
	{"15.1", "The list", []Rule{
		{
			Slug: "no-pieces", Severity: Error, Says: "a cut list has no pieces",
			Explains: `
The first line of a cut list names its columns, and each further line is so many equal pieces. Here nothing is in it, or
nothing but the first line, or every line says 0. A spreadsheet may have saved another of its pages than was meant.`,
		},
		{
			Slug: "column-missing", Severity: Error, Says: "a cut list lacks a column",
			Explains: `
The columns are found by their names in the first line: piece, pieces, along_grain and across_grain, in any order, with
may_turn where it is wanted. Sticks need no across_grain. A list that begins with its first piece has no names: write
them above it.`,
		},
		{
			Slug: "unknown-column", Severity: Error, Says: "a column is called almost as one that is missing",
			Explains: `
Further columns are taken as they are, and what they hold is kept with the piece. Where one is called almost as a column
that the list lacks, it is most likely that one, misspelt: what it says would be passed over. Correct the name, or call
it something else.`,
		},
		{
			Slug: "column-twice", Severity: Error, Says: "two columns of a cut list have one name",
			Explains: `
Nobody could say which of the two counts. Leave one out, or give it a name of its own; then it is kept with the piece as
any further column is. Names are compared without capitals, and a blank or a hyphen in them is as good as an
underscore.`,
		},
		{
			Slug: "list-unreadable", Severity: Error, Says: "a line of a cut list does not come apart into its cells",
			Explains: `
A cell that begins with a quotation mark ends with one on the same line, and has marks within it doubled. One that holds
commas, or semicolons where these part the cells, stands in quotes. A line that has more cells than the first one has
names most often holds such a comma: in a name, or as the point of a decimal.

Inches are written with a bare mark behind the figure, 23 1/2", or with none where bare numbers are inches.`,
		},
	}},
	{"15.2", "What it is cut from", []Rule{
		{
			Slug: "piece-too-large", Severity: Error, Says: "a piece comes out of no sheet or stick that is on sale",
			Source: "plain arithmetic",
			Explains: `
Each piece has to come out of one of the sizes on sale, what is trimmed off the edges taken away. Its first size runs
along the grain, as the first size of a sheet does, and it lies across only where it may turn. An offcut that is large
enough will do too, where there are enough of them for all such pieces.

Name a larger size, trim less, let the piece turn where its grain is of no matter, or make it of two.`,
		},
	}},
}
