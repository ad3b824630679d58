package bill

import (
	"barwright/compile/model"
	"barwright/lang/finding"
)

// cables adds what the cables of the build take: each as long as its way, with what is left
// over, and the staples that hold it. Which cable it is depends on its circuit.
func (b *builder) cables() {
	var long model.Length
	count, staples := 0, 0
	var names list
	for _, w := range b.Ways {
		if w.Kind == "cable" {
			count, long, staples = count+1, long+w.Need, staples+w.Supports
			names.add(w.Name)
		}
	}
	if count == 0 {
		return
	}
	quantity, unit := b.begun(long)
	b.add(model.BillLine{
		Section: "consumables", Item: "cable", Text: "cable, as whoever is licensed to lay it chooses for its circuit",
		Use: names.String(), Quantity: quantity, Unit: unit, Needed: b.long(long) + " in " + finding.Counted(count, "cable"),
	})
	b.add(model.BillLine{
		Section: "consumables", Item: "cable staples", Text: "staples for that cable", Use: names.String(),
		Quantity: float64(withSpare(staples)), Unit: "staple", Needed: finding.Counted(staples, "staple"),
	})
}

// plates counts the nail plates before the holes of cables in studs, and these holes.
func (b *builder) plates() (count, holes int) {
	for _, w := range b.Ways {
		for _, h := range w.Holes {
			if w.Kind == "cable" && b.parts[h.Part].Kind == model.Lumber {
				count, holes = count+h.Plates, holes+1
			}
		}
	}
	return count, holes
}
