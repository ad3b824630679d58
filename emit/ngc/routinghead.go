package ngc

import (
	"fmt"

	"barwright/compile/model"
)

// routingHead is head for other work than recesses.
func routingHead(r *model.Routing, u units) []string {
	plan, z := r.Reach()
	t := r.Tool
	out := []string{
		"Cuts: part " + r.PartLabel + "; " + r.Part,
		"Unit: " + u.short,
	}
	for _, g := range gathered(r) {
		out = append(out, "Work: "+g.text(u.exact))
	}
	out = append(out,
		fmt.Sprintf("Bit: T%d, flat end, diameter %s, %d flutes; spindle %d per minute",
			t.Number, u.number(t.Diameter), t.Flutes, t.RPM),
		fmt.Sprintf("Wood: X %s, Y %s, %s thick, lying flat", u.span(r.Stock.X), u.span(r.Stock.Y), u.number(r.Thick)),
		fmt.Sprintf("Zero: %s; Z0 is the top of the wood", r.Zero),
		fmt.Sprintf("Box of the moves of the bit's centre: X %s, Y %s, Z %s; at the end to X0 Y0",
			u.span(plan.X), u.span(plan.Y), u.span(z)),
	)
	if r.Far {
		out = append(out, "The part is turned over from left to right: the face behind the drawn one is up.")
	}
	if r.GoesThrough() {
		out = append(out, fmt.Sprintf("CAUTION: it cuts through the board and %s below it. Lay a board under it that may be cut, and no metal there.", u.number(r.Under)))
	}
	return append(out, saidOfAll(r.Moves, t, u)...)
}
