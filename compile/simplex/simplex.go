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
	need    []float64
	basis   []Column
	inverse []float64 // square, by rows
	x       []float64 // of the basis
	worth   []float64 // of a unit of a row
	Work    int       // numbers looked at
}

// shake is what is added to what is needed, a little different for each row, so that no two
// columns of a basis come to nothing at once: where many do, the program would hardly move
// (Charnes, "Optimality and degeneracy in linear programming", Econometrica 20, 1952).
const shake = 1e-4

// Excess is the tag of what is given and not needed.
const Excess = -1

// New starts a program. First has a column for each row, in their order, with a term above 0 in
// that row alone; what is needed is 0 or more.
func New(need []float64, first []Column) *Program {
	n := len(need)
	p := &Program{need: need, basis: slices.Clone(first), inverse: make([]float64, n*n), x: make([]float64, n), worth: make([]float64, n)}
	for i, c := range first {
		by := c.Terms[0].By
		jolt := float64(uint16(i*40503)) / (1 << 16)
		p.inverse[i*n+i] = 1 / by
		p.x[i] = (need[i] + float64(shake*(1+jolt))) / by
		p.worth[i] = c.Cost / by
	}
	return p
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

// Gain is what a unit of a column saves.
func (p *Program) Gain(c Column) float64 {
	sum := -c.Cost
	for _, t := range c.Terms {
		sum += float64(t.By * p.worth[t.Row])
	}
	return sum
}

// Enter puts a column into the basis for the one that gives way first, if it gains enough to tell
// and one gives way; it reports whether it did.
func (p *Program) Enter(c Column) bool {
	g := p.Gain(c)
	if g <= 1e-7*math.Max(c.Cost, 1e-3) {
		return false
	}
	n := len(p.need)
	d := make([]float64, n)
	for r := range d {
		for _, t := range c.Terms {
			d[r] += float64(t.By * p.inverse[r*n+t.Row])
		}
	}
	p.Work += n * (n + len(c.Terms))
	out := p.leaves(d)
	if out < 0 {
		return false
	}
	t := p.x[out] / d[out]
	row := p.inverse[out*n : (out+1)*n]
	for i := range row {
		row[i] /= d[out]
	}
	for r := range d {
		if r == out || d[r] == 0 {
			continue
		}
		p.x[r] = max(0, p.x[r]-float64(t*d[r]))
		other := p.inverse[r*n : (r+1)*n]
		for i, v := range row {
			other[i] -= float64(d[r] * v)
		}
	}
	p.x[out], p.basis[out] = t, c
	for i, v := range row {
		p.worth[i] -= float64(g * v)
	}
	return true
}

// leaves is the row of the basis that a column drives out: of those that come to nothing first,
// within a hair, the one that changes most, for a small change would be divided by (Harris, "Pivot
// selection methods of the Devex LP code", Mathematical Programming 5, 1973). It is -1 where there
// is none.
func (p *Program) leaves(d []float64) int {
	const small, hair = 1e-7, 1e-9
	most := math.Inf(1)
	for r, v := range d {
		if v > small {
			most = math.Min(most, (p.x[r]+hair)/v)
		}
	}
	out := -1
	for r, v := range d {
		if v > small && p.x[r]/v <= most && (out < 0 || v > d[out]) {
			out = r
		}
	}
	return out
}

// Trim works the worths out anew from the basis, for they drift, and lets in the excess of rows
// whose worths are below 0. It reports whether it let any in.
func (p *Program) Trim() (any bool) {
	n := len(p.need)
	clear(p.worth)
	for r, c := range p.basis {
		for i, v := range p.inverse[r*n : (r+1)*n] {
			p.worth[i] += float64(c.Cost * v)
		}
	}
	p.Work += n * n
	for range 2 * n {
		least := 0
		for i, y := range p.worth {
			if y < p.worth[least] {
				least = i
			}
		}
		if !p.Enter(Column{Terms: []Term{{least, -1}}, Tag: Excess}) {
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
