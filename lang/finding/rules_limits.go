package finding

// aboutLimits holds what is beyond what is built yet, or beyond what is read at
// all.
var aboutLimits = []Section{
	{"9.3", "What is not looked at", []Rule{
		{
			Slug: "not-made-yet", Severity: Note, Says: "it is read and checked, but nothing is made of it yet",
			Explains: `
The language has this word, but barwright does not build from it yet. What stands here is read and its figures are
checked; the parts, drawings and bill are as if it were not there, so it must be made and bought by hand.
Of a cord the length is judged, but no hole is cut for its plug: where it passes the side of a box, cut one.`,
		},
	}},
	{"10.2", "Limits", []Rule{
		{
			Slug: "file-too-large", Severity: Error, Says: "a file is larger than what is read",
			Explains: `
A file of a description has a megabyte at most, which is twenty thousand lines. More is no description, but some other
file that happens to lie in the folder. If it is one, divide it: all files of a folder are one build.`,
		},
		{
			Slug: "too-deep", Severity: Error, Says: "too many brackets, signs or conditions stand inside one another",
			Explains: `
More than a hundred brackets are open at once, or more than a thousand signs follow one another. Nobody could read that,
and it would cost time and memory without end. Give parts of it a name in a given block.`,
		},
		{
			Slug: "too-many", Severity: Error, Says: "more than 1000 like pieces are asked for, or more than 200 files taken in",
			Explains: `
A count or a spacing asks for more than a thousand studs, supports or layers. Most often the spacing is in another unit
than was meant: 16 mm in the place of 16 in. A build has at most 200 files, those that it takes in counted.`,
		},
	}},
}
