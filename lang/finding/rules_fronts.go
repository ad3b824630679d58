package finding

// aboutFronts holds what can be wrong with doors, drawers and false fronts.
var aboutFronts = []Section{
	{"6.12", "Fronts", []Rule{
		{
			Slug: "too-many-doors", Severity: Error, Says: "a cabinet has more than two doors side by side",
			Explains: `
Doors hang on the two sides of their cabinet: one door on either of them, two doors on both. A third would have nothing
to hang on. Divide the cabinet into two beside one another.`,
		},
		{
			Slug: "fronts-too-high", Severity: Error, Says: "the fronts of a cabinet are higher than the place for them",
			Explains: `
Fronts stand under one another with a gap between: a false front, drawers, and doors that take what is left. Their
heights and the gaps come to more than there is from the lower edge of all fronts to the upper, or nothing is left for
a front that takes the rest.

Give one of them height = rest, which takes what is left. An overlay has the height of the box over its toe kick, less
what top and bottom of the carcass's door say; an inset one has what lies between bottom and top with a gap at either.`,
			Source: "plain arithmetic",
		},
		{
			Slug: "front-too-small", Severity: Error, Says: "a front is too small for what is bored into it, or for its banding",
			Explains: `
The bore for a hinge's cup or for a handle would run off the edge of the front or into another bore; or the door is so
low that two hinges, each as far from its end as hinge says, would stand in one another; or gaps and banding leave
nothing of the front at all. The answer gives the size of what is there.

A larger front mends it, or smaller figures in hinge and handle: from_end, from_edge, pitch. Keep the figures that the
hinge's own sheet gives.`,
			Source: "common practice",
		},
		{
			Slug: "hinge-too-deep", Severity: Error, Says: "a bore for a hinge goes through its board",
			Caution: "The maker's sheet of the hinge decides what it needs, and what door it carries.",
			Explains: `
The bore for a hinge's cup is as deep as the door is thick, or that for its mounting plate as the cabinet's side: it
would come out on the good face. A cup is some 12 mm deep and wants a door of 16 mm or more; for thinner ones there are
hinges with shallower cups.`,
			Source: "common practice",
		},
		{
			Slug: "front-meets", Severity: Error, Says: "a drawer's box would stand in a part of its cabinet",
			Explains: `
The box of a drawer needs the whole width between the sides, from its slides to the back, and touches nothing else.
Here a shelf, a divider, a stretcher or the bottom stands in that place.

A cabinet with drawers has no dividers, and shelves only under its drawers. Under a drawer's box up = … in the
carcass's drawer gives more room, over it lower = ….`,
			Source: "plain arithmetic",
		},
		{
			Slug: "no-slide-fits", Severity: Error, Says: "no slides on sale are short enough for a drawer's cabinet",
			Explains: `
Slides reach from the drawer's front towards the back, and behind the box some room stays free. The shortest slides that
drawer says are on sale are longer than that. Write the lengths that your shop has, or make the carcass deeper.`,
		},
		{
			Slug: "drawer-too-small", Severity: Error, Says: "a drawer's box has no inside",
			Explains: `
The box of a drawer is lower than its front, narrower than the cabinet by two slides, and as long as its slides. Its
own boards then leave nothing between them, or its bottom has no room under its upper edge. Give the front more height
or the cabinet more width; lower and up in the carcass's drawer say how much lower than its front the box is.`,
		},
		{
			Slug: "drawer-groove", Severity: Error, Says: "the grooves for a drawer's bottom are too deep or too loose",
			Explains: `
The bottom of a drawer lies in grooves in all four boards round it. They are as deep as those boards are thick, and
would cut them through; or their play is as much as two of them are deep, so that the bottom falls out. Half the board
is deep enough, and a sixty-fourth of an inch or half a millimetre is play enough.`,
			Source: "common practice: a groove takes half the board at most",
		},
	}},
}
