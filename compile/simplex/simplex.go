// Package simplex solves linear programs whose columns are not known at first: the least cost of
// columns, in any parts, that together give what is needed of each row at least. Columns come in
// as they gain. It is the revised simplex method with the inverse of the basis kept whole, so it
// is for some hundred rows. Equal programs give equal results on every machine.
package simplex

import (
	"math"
	"slices"
)

// Column gives By of each of its rows for a cost. Tag is the caller's.
type Column struct {
	Terms []Term
	Cost  float64
	Tag   int
}

// Term is what a column gives of a row.
type Term struct {
	Row int
	By  float64
}

// Program has a basis of as many columns as rows.
type Program struct {
	need    []float64 // not shaken
	basis   []Column
	inverse []float64 // square, by rows
	x       []float64 // of the basis
	worth   []float64 // of a unit of a row
	change  []float64 // of the basis, by a unit of the column that enters
	full    []int     // places in the row that leaves that are not 0
	Work    int       // numbers looked at, at most
}

// shake is what is added to what is needed, a little different for each row, so that no two
// columns of a basis come to nothing at once: where many do, the program would hardly move
// (Charnes, "Optimality and degeneracy in linear programming", Econometrica 20, 1952).
const shake = 1e-4

// Excess is the tag of columns that are none of the caller's.
const Excess = -1

// Spare is what is given of a row and not needed.
func Spare(row int) Column { return Column{Terms: []Term{{row, -1}}, Tag: Excess} }

// New starts a program. What may be taken of a row at most is needed below 0. First has a column
// for each row, in their order, with a term in that row alone, which has the sign of what is needed.
func New(need []float64, first []Column) *Program {
	n := len(need)
	p := &Program{need: need, basis: slices.Clone(first), inverse: make([]float64, n*n), x: make([]float64, n),
		worth: make([]float64, n), change: make([]float64, n)}
	for i, c := range first {
		p.inverse[i*n+i] = 1 / c.Terms[0].By
	}
	p.shaken()
	p.Price()
	return p
}

// Again is the program of another need, from the same basis on. For a column that would come to
// less than nothing its opposite stands in, at a cost that drives it out.
func (p *Program) Again(need []float64, dear float64) *Program {
	n := len(need)
	q := &Program{need: need, basis: slices.Clone(p.basis), inverse: slices.Clone(p.inverse), x: make([]float64, n),
		worth: make([]float64, n), change: make([]float64, n), Work: 2 * n * n}
	q.shaken()
	for r, x := range q.x {
		if x >= 0 {
			continue
		}
		opposite := Column{Terms: slices.Clone(q.basis[r].Terms), Cost: dear, Tag: Excess}
		for i := range opposite.Terms {
			opposite.Terms[i].By *= -1
		}
		q.basis[r], q.x[r] = opposite, -x
		for i := range n {
			q.inverse[r*n+i] *= -1
		}
	}
	q.Price()
	return q
}

// shaken works out how much is taken of the basis for what is needed and a little more.
func (p *Program) shaken() {
	n := len(p.need)
	for i, need := range p.need {
		need += float64(shake * (1 + float64(uint16(i*40503))/(1<<16)))
		for r := range p.x {
			p.x[r] += float64(p.inverse[r*n+i] * need)
		}
	}
}

// Price works the worths out anew from the basis, for they drift.
func (p *Program) Price() {
	n := len(p.need)
	clear(p.worth)
	for r, c := range p.basis {
		for i, v := range p.inverse[r*n : (r+1)*n] {
			p.worth[i] += float64(c.Cost * v)
		}
	}
	p.Work += n * n
}

// Worths are those of a unit of each row, at which no column of the basis gains or loses. They
// may be below 0 until the excess of their rows was let in. They change when a column enters.
func (p *Program) Worths() []float64 { return p.worth }

// Value is the cost of what is needed at its worths.
func (p *Program) Value() (sum float64) {
	for i, y := range p.worth {
		sum += float64(y * p.need[i])
	}
	return sum
}

// Gain is what a unit of a column saves, or 0 where that is too little to tell.
func (p *Program) Gain(c Column) float64 {
	sum := -c.Cost
	for _, t := range c.Terms {
		sum += float64(t.By * p.worth[t.Row])
	}
	if sum <= 1e-7*math.Max(c.Cost, 1e-3) {
		return 0
	}
	return sum
}

// Enter puts a column into the basis for the one that gives way first, if it gains and one gives
// way; it reports whether it did.
func (p *Program) Enter(c Column) bool {
	g := p.Gain(c)
	if g == 0 {
		return false
	}
	n := len(p.need)
	for r := range p.change {
		p.change[r] = 0
		for _, t := range c.Terms {
			p.change[r] += float64(t.By * p.inverse[r*n+t.Row])
		}
	}
	p.Work += n * (n + len(c.Terms))
	out := p.leaves()
	if out < 0 {
		return false
	}
	p.turn(out)
	p.basis[out] = c
	row := p.inverse[out*n : (out+1)*n]
	for _, i := range p.full {
		p.worth[i] -= float64(g * row[i])
	}
	return true
}

// turn puts the column that changes the basis in the place of another.
func (p *Program) turn(out int) {
	n := len(p.need)
	row, by := p.inverse[out*n:(out+1)*n], p.change[out]
	p.full = p.full[:0]
	for i := range row {
		if row[i] != 0 {
			row[i] /= by
			p.full = append(p.full, i)
		}
	}
	x := p.x[out] / by
	for r, d := range p.change {
		if r == out || d == 0 {
			continue
		}
		p.x[r] = max(0, p.x[r]-float64(x*d))
		other := p.inverse[r*n : (r+1)*n]
		for _, i := range p.full {
			other[i] -= float64(d * row[i])
		}
	}
	p.x[out] = x
}

// leaves is the row of the basis that a column drives out: of those that come to nothing first,
// within a hair, the one that changes most, for a small change would be divided by (Harris, "Pivot
// selection methods of the Devex LP code", Mathematical Programming 5, 1973). It is -1 where there
// is none.
func (p *Program) leaves() int {
	const small, hair = 1e-7, 1e-9
	most := math.Inf(1)
	for r, v := range p.change {
		if v > small {
			most = math.Min(most, (p.x[r]+hair)/v)
		}
	}
	out := -1
	for r, v := range p.change {
		if v > small && p.x[r]/v <= most && (out < 0 || v > p.change[out]) {
			out = r
		}
	}
	return out
}

// Trim prices the rows, and lets in the spare of those whose worths are below 0. It reports whether
// it let any in.
func (p *Program) Trim() (any bool) {
	p.Price()
	for range 2 * len(p.need) {
		least := 0
		for i, y := range p.worth {
			if y < p.worth[least] {
				least = i
			}
		}
		if !p.Enter(Spare(least)) {
			break
		}
		any = true
	}
	return any
}

// Parts tells the columns of the basis, and how much of each is taken.
func (p *Program) Parts(f func(c Column, x float64)) {
	n := len(p.need)
	for r, c := range p.basis {
		x := 0.0
		for i, v := range p.need {
			x += float64(p.inverse[r*n+i] * v)
		}
		f(c, max(0, x))
	}
}
