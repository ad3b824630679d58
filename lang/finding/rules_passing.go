package finding

// aboutPassing holds the rules of SPEC.md 11.11.
var aboutPassing = []Section{
	{"11.11", "Past what stands out", []Rule{
		{
			Slug: "box-cannot-go-in", Severity: Error, Says: "a cabinet fits in its place, but no straight slide takes it there",
			Source:  "common practice: a box goes straight onto a pipe, or comes over it with an open slot",
			Caution: passingDecides,
			Explains: `
What stands out of a wall and goes through a hole in a board lets the board come from one side only: straight at that
wall. Where pipes of two walls go through one cabinet, it would have to come from two sides at once. Or it must start
further off than the room before it is deep.

A slot that is open to the side from which the cabinet comes lets one of them in: cut = "slot" in the stub, and open_to
says the edge. Or the pipe is cut shorter and made longer once the cabinet stands, which is for somebody licensed to do.`,
		},
	}},
}
