package nesting

import (
	"cmp"
	"slices"
)

// patterns puts what is bought by patterns in the place of a solution that costs more, then lays
// some of its sheets out anew for less, until work is done. It returns the least that all pieces
// can cost if they are sawn, as far as it knows.
func (s sawer) patterns(x *solution[*tree], atLeast int64, work int) int64 {
	if x.price <= atLeast {
		return atLeast
	}
	m := s.newMix(len(x.sheets), work/2)
	if m == nil {
		return atLeast
	}
	work += s.work
	m.root = m.program(m.demand())
	m.solve(m.root, s.work+(m.until-s.work)/2)
	atLeast = max(atLeast, m.atLeast)
	y := m.dive()
	if s.better(y, x) {
		*x, *y = *y, *x
	}
	s.release(y)
	s.again(x, atLeast, work)
	return atLeast
}

// again lays sheets out anew: few, of which one might be saved, and more of them where none is.
func (s sawer) again(x *solution[*tree], atLeast int64, work int) {
	spare := 1.1
	for try := 0; s.work < work && x.price > atLeast && spare < float64(len(x.sheets)); try++ {
		switch {
		case s.save(x, s.few(x, spare, try%2 == 1), min(work, s.work+(work-s.work)/4)):
			spare = 1.1
		case try%2 == 1:
			spare *= 1.25
		}
	}
}

// few are sheets that have so many sheets' area left together: those that hold the least, or, from
// a half on, any.
func (s sawer) few(x *solution[*tree], spare float64, any bool) []int {
	order := make([]int, len(x.sheets))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(x.sheets[b].free, x.sheets[a].free) })
	n := 0
	for sum := 0.0; n < len(order) && sum < spare*s.size; n++ {
		if any && sum > spare*s.size/2 {
			i := n + s.below(len(order)-n)
			order[n], order[i] = order[i], order[n]
		}
		sum += x.sheets[order[n]].free
	}
	return order[:n]
}

// save lays some sheets out anew by a search of their own, and reports whether it saves money.
func (s sawer) save(x *solution[*tree], some []int, work int) bool {
	of := *s.search
	o := sawing(&of)
	o.shapes, o.kinds = nil, slices.Clone(s.kinds)
	y := &solution[*tree]{bought: make([]int, len(s.kinds))}
	var pieces []int32
	for _, i := range some {
		t := &tree{}
		x.sheets[i].on.copyTo(t)
		t.rename(func(p int32) int32 {
			pieces, o.shapes = append(pieces, p), append(o.shapes, s.shapes[p])
			return int32(len(pieces) - 1)
		})
		o.add(y, t)
	}
	if y.price == 0 {
		return false
	}
	for k := range o.kinds {
		o.kinds[k].most -= x.bought[k] - y.bought[k]
	}
	o.key, o.stuck = make([]float64, len(pieces)), make([]bool, len(pieces))
	o.most = y.price - 1
	found := o.within(y, work)
	s.work, s.rng = o.work, o.rng
	if !found {
		return false
	}
	out := len(x.out)
	for _, i := range slices.Backward(slices.Sorted(slices.Values(some))) {
		s.remove(x, i)
	}
	x.out = x.out[:out]
	for _, l := range y.sheets {
		l.on.rename(func(p int32) int32 { return pieces[p] })
		s.add(x, l.on)
	}
	return true
}

// rename gives all pieces of a tree other numbers.
func (t *tree) rename(to func(int32) int32) {
	for i := range t.nodes {
		if n := &t.nodes[i]; n.piece >= 0 {
			n.piece = to(n.piece)
		}
	}
}
