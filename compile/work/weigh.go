package work

import (
	"math"

	"barwright/compile/model"
	"barwright/lang/length"
)

// long is a piece that one person does not steer alone (common practice): 6 ft.
const long = 72 * length.Inch

// lift says what the heaviest thing that is lifted in a step weighs, in kg, and for how
// many: `lift` of the limits is what two carry, so half of it is for one. Nothing is said
// of what is not known.
func (o *order) lift(t *model.Task, kg float64, what string) {
	if math.IsNaN(kg) || kg <= t.WeightKg {
		return
	}
	t.WeightKg, t.Lifted = math.Round(kg*1000)/1000, what
	t.People = max(t.People, int(math.Ceil(2*kg/o.Number(o.Limits, "lift"))))
}

// pieces has the heaviest of some parts lifted, and two people where one is long.
func (o *order) pieces(t *model.Task, parts []*model.Part) {
	for _, p := range parts {
		what := p.Label
		if x, y := p.Size(); max(x, y) > long {
			what += ", over 6 ft (1.8 m) long"
			t.People = max(t.People, 2)
		}
		o.lift(t, o.whole(p), what)
	}
}

// whole is what a part weighs before anything is cut out of it, in kg; not a number where
// nothing says.
func (o *order) whole(p *model.Part) float64 {
	kg := o.Mass(p)
	density := o.Number(o.Block(p.Stock), "density")
	for i := range p.Openings {
		if q := &p.Openings[i]; !q.Notch {
			kg += math.Abs(q.Shape.Area()) * p.Thickness.MM() / 1e9 * density
		}
	}
	return kg
}

// together is what some parts weigh, in kg.
func (o *order) together(parts []*model.Part) (kg float64) {
	for _, p := range parts {
		kg += o.Mass(p)
	}
	return kg
}

// weight is what a board of a size weighs, in kg; not a number where nothing says.
func (o *order) weight(stock string, long, wide, thick length.Length) float64 {
	density := o.Number(o.Block(stock), "density")
	if density == 0 {
		return math.NaN()
	}
	return float64(long.MM()*wide.MM()) * thick.MM() / 1e9 * density
}
