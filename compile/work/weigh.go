package work

import (
	"math"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// lifting has the heaviest of what is lifted in a step told in it, and for how many.
func (o *order) lifting(t *model.Task, of func(*rule.Lift)) {
	l := rule.Lift{What: t.Lifted, Kg: t.WeightKg, People: t.People}
	of(&l)
	t.Lifted, t.WeightKg, t.People = l.What, l.Kg, l.People
}

func (o *order) lift(t *model.Task, kg float64, what string) {
	o.lifting(t, func(l *rule.Lift) { o.LiftWhole(l, kg, 0, what) })
}

func (o *order) pieces(t *model.Task, parts []*model.Part) {
	o.lifting(t, func(l *rule.Lift) { o.LiftPieces(l, parts) })
}

// weight is what a board of a size weighs, in kg; not a number where nothing says.
func (o *order) weight(stock string, long, wide, thick length.Length) float64 {
	density := o.Number(o.Block(stock), "density")
	if density == 0 {
		return math.NaN()
	}
	return long.MM() * wide.MM() * thick.MM() / 1e9 * density
}
