package finding

// aboutOrder holds the findings of SPEC.md 14.3.
var aboutOrder = []Section{
	{"14.3", "Order of setting", []Rule{
		{
			Slug: "cannot-be-set", Severity: Error, Milder: []Severity{Warning}, Says: "there is no order and no slides by which a thing comes to its place",
			Source:  "plain geometry, with straight slides: boxes are not turned or tipped on the way",
			Caution: passingDecides,
			Explains: `
A cabinet can fit to a hair where it goes and still not get there: a pipe goes through a hole in its side, so that it must
come along the wall, and there its neighbour stands, or a wall. The finished room is taken apart to find out: what cannot
leave by any slides cannot have come in by them either.

What is told is how far the thing can be drawn out of its place each way, and what it meets then; and of what goes into it from
a wall, how far off that wall it is clear of it. Where a slot instead of a hole lets it in, or two boxes instead of one do,
that has been tried before it is suggested: the description is solved with it, and judged by all rules. It is
a warning where the thing comes out of its place and then meets something, as one might turn it there, and where the search
was given up, as a longer way may be left.`,
		},
		{
			Slug: "stands-in-the-way", Severity: Warning, Says: "what stands already has to make way for something, and goes back after it",
			Source:  "plain geometry, as for cannot-be-set",
			Caution: passingDecides,
			Explains: `
The description says of a neighbour that it stands. Something else cannot come to its place past it, but can where the
neighbour makes way first. It is told how far and which way, the shortest that does; what then comes in; and that the
neighbour slides back. If it is screwed down, or its pipes are joined, somebody has work: a slot that does as well is
suggested where one has been tried and found to do.`,
		},
		{
			Slug: "stands-before-doorway", Severity: Warning, Says: "what is built leaves no way in through the doorway",
			Source: "plain geometry; how wide a way in has to be is `way_in` of `limits`",
			Explains: `
All comes in through the doorway that the room tells. What stands before it, nearer than the least way in, leaves so much of
its width; nobody carries a box through less than that, nor goes in afterwards. Either the doorway is measured from the wrong
end of its wall, or the build goes elsewhere, or there is another way in: then that is the doorway to be told.`,
		},
		{
			Slug: "too-large-for-doorway", Severity: Warning, Says: "a thing does not come through the doorway whole, whichever side goes first",
			Source: "plain geometry: upright or laid on a side, not tipped on an edge",
			Explains: `
Each side of the thing is held against the clear opening of the doorway: two of its three sizes must go through, one way
or the other. What does not is put together in the room, or made of two; what can be tipped on an edge may get through
all the same. Stairs, lobbies and the turn behind the door are not looked at.`,
		},
		{
			Slug: "setting-not-judged", Severity: Note, Says: "there are too many things to look for an order",
			Explains: `
The search for an order takes the longer the more there is to be set. Beyond a number that no bar comes near it is left out,
and nothing is said of doorway and order.`,
		},
	}},
}
