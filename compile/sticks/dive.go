package sticks

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/chance"
	"barwright/compile/simplex"
)

// root solves the program of the whole job and proves its bound.
func (s *solver) root() *master {
	m := s.newMaster(s.demand, s.known)
	m.solve()
	s.bound = max(s.bound, s.least(s.demand, m.prove()))
	return m
}

// dive dives once, and takes each time the largest part where the seed is 0.
func (s *solver) dive(m *master, seed uint64) {
	d := diver{solver: s, chance: chance.Source(seed), steady: seed == 0, long: seed%2 == 1}
	d.dive(m, slices.Clone(s.demand), &purchase{}, mostOthers)
}

// met tells whether the best purchase is proved to be that.
func (s *solver) met() bool { return s.best != nil && s.best.cost <= s.bound }

// mostOthers is how many other patterns a dive may take.
const mostOthers = 2

// diver fixes sticks of the linear program, solves what is left of it, and so on until nothing is
// left. Where what is left can no longer beat the best it goes back, and takes the next pattern
// instead, a few times (Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa, "Primal heuristics for
// branch and price", INFORMS Journal on Computing 31, 2019).
type diver struct {
	*solver
	chance chance.Source
	steady bool // takes the largest part always
	long   bool // takes patterns of long pieces first, for short ones fit in the end
}

type part struct {
	pattern
	x float64
}

// dive goes on with a solved program; others is how often another pattern may be taken below.
func (d *diver) dive(m *master, left []int, bought *purchase, others int) {
	parts := d.whole(m, left, bought)
	rest := d.greedy(left)
	if rest != nil {
		d.offer(bought.and(rest))
	}
	if d.done(left) {
		return
	}
	taken := 0
	for _, p := range parts {
		if taken > others || d.met() || d.spent() {
			return
		}
		if p.pattern = d.of(p.pattern, left); len(p.takes) == 0 {
			continue
		}
		taken++
		l, b := slices.Clone(left), &purchase{slices.Clone(bought.cuts), bought.cost}
		b.add(d.solver, p.pattern, 1, l)
		next := m.rest(l)
		if d.done(l) {
			d.offer(b)
			continue
		}
		if d.best != nil {
			next.cut = float64(d.best.cost-b.cost) * (1 + 1e-9)
		}
		next.solve()
		if d.best != nil && b.cost+d.least(l, int64(math.Ceil(next.value*(1-1e-9)-1e-6))) >= d.best.cost {
			continue
		}
		d.dive(next, l, b, others-taken+1)
	}
}

// whole buys what the program has as whole sticks, and tells the parts of sticks, the largest first.
func (d *diver) whole(m *master, left []int, bought *purchase) (parts []part) {
	m.Parts(func(c simplex.Column, x float64) {
		if c.Tag < 0 {
			return
		}
		n := math.Floor(x + 1e-6)
		p := d.of(m.patterns[c.Tag], left)
		if whole := min(int(n), p.times(left)); whole > 0 {
			bought.add(d.solver, p, whole, left)
		}
		if x -= n; x > 1e-6 {
			if !d.steady {
				x *= 1 - float64(0.5*d.chance.Unit())
			}
			if d.long {
				x *= d.squares(p)
			}
			parts = append(parts, part{p, x})
		}
	})
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(b.x, a.x) })
	return parts
}

// squares is the sum of the squares of a pattern's lengths, each a part of the stick.
func (d *diver) squares(p pattern) (sum float64) {
	for _, t := range p.takes {
		if t.row < d.kinds() {
			part := float64(d.lengths[t.row]) / float64(d.rooms[p.stock])
			sum += float64(float64(t.n) * part * part)
		}
	}
	return sum
}
