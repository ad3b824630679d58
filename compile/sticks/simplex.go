package sticks

import (
	"math"
	"slices"
)

// shake is what is added to what is asked for, a little different for each row, so that no two columns of a basis
// come to nothing at once: where many do, the program would hardly move (Charnes, "Optimality and
// degeneracy in linear programming", Econometrica 20, 1952).
const shake = 1e-4

// column is a pattern in the linear program, or, with stock -1, what stands in for one: pieces
// that nothing gives yet or that are given and not asked for, or a stick that is left in stock.
type column struct {
	pattern
	cost float64
}

// program is a linear program: the least cost of columns, in any parts, that give each row what it asks
// for. It is the revised simplex method with the inverse of the basis kept whole. Columns in
// the pool come into the basis as they gain.
type program struct {
	live    []int     // rows asked for, by their place here
	at      []int     // of a row: its place, or -1
	asked   []float64 // by place, not shaken
	basis   []column
	inverse []float64 // square, by rows
	x       []float64 // of the basis
	y       []float64 // the worth of a place
	pool    []column
	d       []float64 // of enter
	full    []int     // of enter
	work    int       // in steps
}

// newProgram asks for what is left. Its basis is empty, until first has begun each place.
func newProgram(left []int) *program {
	p := &program{at: make([]int, len(left))}
	for row, n := range left {
		p.at[row] = -1
		if n > 0 {
			p.at[row] = len(p.live)
			p.live = append(p.live, row)
			p.asked = append(p.asked, float64(n))
		}
	}
	n := len(p.live)
	p.inverse = make([]float64, n*n)
	p.x, p.y, p.d = make([]float64, n), make([]float64, n), make([]float64, n)
	return p
}

// begin puts columns into the basis, for each place one that takes of its row alone.
func (p *program) begin(first []column) {
	p.basis = first
	for i, c := range first {
		p.inverse[i*len(first)+i] = 1 / float64(c.takes[0].n)
	}
	p.shaken()
	p.prices()
}

// again is the program where less is left, from the same basis on. For a column that would come to less
// than nothing its opposite stands in, at a cost that drives it out.
func (p *program) again(left []int, dear float64) *program {
	o := *p
	o.basis, o.inverse = slices.Clone(p.basis), slices.Clone(p.inverse)
	o.x, o.y, o.asked = slices.Clone(p.x), slices.Clone(p.y), slices.Clone(p.asked)
	o.pool = slices.Clone(p.pool)
	for i, row := range o.live {
		o.asked[i] = float64(left[row])
	}
	o.shaken()
	n := len(o.live)
	for r, x := range o.x {
		if x >= 0 {
			continue
		}
		takes := slices.Clone(o.basis[r].takes)
		for i := range takes {
			takes[i].n *= -1
		}
		o.basis[r], o.x[r] = column{pattern{-1, takes}, dear}, -x
		for i := range n {
			o.inverse[r*n+i] *= -1
		}
	}
	o.prices()
	o.work = n * n / 4
	return &o
}

// shaken works out the basis, with the shaking.
func (p *program) shaken() {
	n := len(p.live)
	jolt := chance(n)
	clear(p.x)
	for i, asked := range p.asked {
		asked += float64(shake * (1 + jolt.unit()))
		for r := range p.x {
			p.x[r] += float64(p.inverse[r*n+i] * asked)
		}
	}
}

// prices works out the worths anew from the basis.
func (p *program) prices() {
	n := len(p.live)
	clear(p.y)
	for r, c := range p.basis {
		for i, v := range p.inverse[r*n : (r+1)*n] {
			p.y[i] += float64(c.cost * v)
		}
	}
	p.work += n * n / 8
}

// gain is what a unit of a column saves.
func (p *program) gain(c *column) float64 {
	sum := -c.cost
	for _, t := range c.takes {
		sum += float64(float64(t.n) * p.y[p.at[t.row]])
	}
	return sum
}

// gains tells whether a column saves more than what figures may be wrong by.
func (p *program) gains(c *column) bool { return p.gain(c) > 1e-7*math.Max(c.cost, 1) }

// improve brings in columns of the pool, each time the one that gains most for its cost, until none gains.
func (p *program) improve() {
	for range 20 * len(p.live) {
		var best *column
		most := 0.0
		for i := range p.pool {
			c := &p.pool[i]
			p.work += 1
			if g := p.gain(c); g > most && p.gains(c) {
				best, most = c, g
			}
		}
		if best == nil || !p.enter(best) {
			break
		}
	}
	p.prices()
}

// enter puts a column into the basis for the one that gives way first, and tells whether one does.
func (p *program) enter(c *column) bool {
	n := len(p.live)
	g := p.gain(c)
	for r := range p.d {
		sum := 0.0
		for _, t := range c.takes {
			sum += float64(float64(t.n) * p.inverse[r*n+p.at[t.row]])
		}
		p.d[r] = sum
	}
	out := p.leaves()
	if out < 0 {
		return false
	}
	step := p.x[out] / p.d[out]
	row := p.inverse[out*n : (out+1)*n]
	p.full = p.full[:0]
	for i := range row {
		if row[i] != 0 {
			row[i] /= p.d[out]
			p.full = append(p.full, i)
		}
	}
	for r, d := range p.d {
		if r == out || d == 0 {
			continue
		}
		p.x[r] = max(0, p.x[r]-float64(step*d))
		other := p.inverse[r*n : (r+1)*n]
		for _, i := range p.full {
			other[i] -= float64(d * row[i])
		}
		p.work += len(p.full) / 8
	}
	p.x[out], p.basis[out] = step, *c
	for _, i := range p.full {
		p.y[i] -= float64(g * row[i])
	}
	p.work += n
	return true
}

// leaves is the place of the basis that a column drives out: of those that come to nothing first, within a
// hair, the one that changes most, for a small change would be divided by (Harris, "Pivot selection
// methods of the Devex LP code", Mathematical Programming 5, 1973). It is -1 where there is none.
func (p *program) leaves() int {
	const small, hair = 1e-7, 1e-9
	most := math.Inf(1)
	for r, v := range p.d {
		if v > small {
			most = math.Min(most, (p.x[r]+hair)/v)
		}
	}
	out := -1
	for r, v := range p.d {
		if v > small && p.x[r]/v <= most && (out < 0 || v > p.d[out]) {
			out = r
		}
	}
	return out
}

// sum is the value of the program: that of what is asked for at the worths of the basis.
func (p *program) sum() (v float64) {
	for i, n := range p.asked {
		v += float64(p.y[i] * n)
	}
	return v
}

// still works out the basis anew without the shaking.
func (p *program) still() {
	n := len(p.live)
	for r := range p.x {
		p.x[r] = 0
		for i, asked := range p.asked {
			p.x[r] += float64(p.inverse[r*n+i] * asked)
		}
		p.x[r] = max(0, p.x[r])
	}
}
