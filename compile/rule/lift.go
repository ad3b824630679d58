package rule

import (
	"math"

	"barwright/compile/model"
	"barwright/lang/length"
)

// long is a piece that one person does not steer alone (common practice): 6 ft.
const long = 72 * length.Inch

// Lift is the heaviest thing that is lifted in a piece of work, and how many do it.
type Lift struct {
	What   string
	Kg     float64 // to the gram; 0 where it is not known, or nothing is lifted
	People int     // 0 where nothing asks for any
}

// LiftWhole has something of a length lifted as one: `lift` of the limits is what two carry, so
// half of it is for one. Nothing is said of a weight that is not known.
func (b *Build) LiftWhole(l *Lift, kg float64, size length.Length, what string) {
	if size > long {
		what += ", over 6 ft (1.8 m) long"
		l.People = max(l.People, 2)
	}
	if math.IsNaN(kg) || kg <= l.Kg {
		return
	}
	l.Kg, l.What = math.Round(kg*1000)/1000, what
	l.People = max(l.People, int(math.Ceil(2*kg/b.Number(b.Limits, "lift"))))
}

// LiftPieces has some parts lifted one by one.
func (b *Build) LiftPieces(l *Lift, parts []*model.Part) {
	for _, p := range parts {
		x, y := p.Size()
		b.LiftWhole(l, b.uncut(p), max(x, y), p.Label)
	}
}

// uncut is what a part weighs before anything is cut out of it, in kg; not a number where
// nothing says.
func (b *Build) uncut(p *model.Part) float64 {
	kg := b.Mass(p)
	density := b.density(p.Stock)
	for i := range p.Openings {
		if q := &p.Openings[i]; !q.Notch {
			kg += float64(math.Abs(q.Shape.Area()) * p.Thickness.MM() / 1e9 * density)
		}
	}
	return kg
}

// Together is what some parts weigh, in kg; not a number where nothing says.
func (b *Build) Together(parts []*model.Part) (kg float64) {
	for _, p := range parts {
		kg += b.Mass(p)
	}
	return kg
}
