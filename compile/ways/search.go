package ways

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// cost is what a way is chosen by: its length, its holes and its turns, in this order.
type cost struct {
	length       Length
	holes, turns int32
}

func (c cost) less(o cost) bool {
	switch {
	case c.length != o.length:
		return c.length < o.length
	case c.holes != o.holes:
		return c.holes < o.holes
	}
	return c.turns < o.turns
}

// crossed is a crossing of the grid's lines, the axis along which it was reached, and how
// many boxes a way has come through.
type crossed struct{ at, axis, through int }

// search is A* over the pieces of a grid. It goes on to crossings only from which no more is
// in the way than has to be, and is led by what is left to go at least.
type search struct {
	*grid
	*Ask
	toGo    [][]int32
	reached []reached // by state
	queue   queue
}

// reached is how a state was come to.
type reached struct {
	cost
	from        int32 // the state before; -1 at a beginning
	known, done bool
}

// shortest finds a way that goes through nothing that it may not, or as little as can be if
// it is loose.
func (g *grid) shortest(a *Ask, loose bool) (Way, bool) {
	n := g.size * 3 * (len(a.Through) + 1)
	if n > Most {
		return Way{}, false
	}
	if g.pieces[0] == nil {
		g.fill()
	}
	s := &search{grid: g, Ask: a, toGo: g.toGo(a)}
	least := int32(never)
	for _, p := range a.From {
		at := g.number(p)
		least = min(least, s.toGo[a.comeThrough(p, 0)][at])
	}
	if least == never || least > 0 && !loose {
		return Way{}, false
	}
	s.reached = make([]reached, n)
	for _, p := range a.From {
		from := crossed{at: g.number(p), through: a.comeThrough(p, 0)}
		for from.axis = range 3 {
			if s.toGo[from.through][from.at] == least {
				s.reach(from, -1, cost{})
			}
		}
	}
	for len(s.queue) > 0 {
		state := s.queue.pop().state
		if s.reached[state].done {
			continue
		}
		s.reached[state].done = true
		if here := s.crossed(state); here.through == len(a.Through) && slices.Contains(a.To, s.spot(here.at)) {
			return s.way(state), true
		}
		s.onward(state)
	}
	return Way{}, false
}

// state is the number of what was crossed.
func (s *search) state(c crossed) int32 { return int32((c.through*3+c.axis)*s.size + c.at) }

func (s *search) crossed(state int32) crossed {
	layer, at := int(state)/s.size, int(state)%s.size
	return crossed{at, layer % 3, layer / 3}
}

// comeThrough is how many boxes a way has come through at a spot, after so many.
func (a *Ask) comeThrough(p Spot, already int) int {
	for already < len(a.Through) && p.In(a.Through[already]) {
		already++
	}
	return already
}

func (s *search) reach(here crossed, from int32, c cost) {
	state := s.state(here)
	r := &s.reached[state]
	if r.done || r.known && !c.less(r.cost) {
		return
	}
	*r = reached{cost: c, from: from, known: true}
	ahead := s.ahead(s.spot(here.at), here.axis)
	s.queue.push(entry{cost{c.length + ahead.length, c.holes, c.turns + ahead.turns}, state})
}

// ahead is what the way on costs at least, coming along an axis.
func (s *search) ahead(p Spot, came int) cost {
	least := cost{length: length.Max}
	for _, q := range s.To {
		c := cost{length: p.To(q)}
		for axis := range p {
			if axis != came && p[axis] != q[axis] {
				c.turns++
			}
		}
		if c.less(least) {
			least = c
		}
	}
	return least
}

// onward goes from a state to the crossings beside it.
func (s *search) onward(state int32) {
	here, so := s.crossed(state), s.reached[state].cost
	p, toGo := s.spot(here.at), s.toGo[here.through][here.at]
	for axis := range s.steps {
		for _, by := range [2]int{-1, 1} {
			to, begins, ok := s.beside(here.at, axis, by)
			if !ok || !s.pieces[axis][begins].lane {
				continue
			}
			piece, q := s.pieces[axis][begins], s.spot(to)
			next := crossed{to, axis, s.comeThrough(q, here.through)}
			if s.toGo[next.through][to] != toGo-piece.shut {
				continue
			}
			c := cost{so.length + p.To(q), so.holes + piece.holes, so.turns}
			if axis != here.axis {
				c.turns++
			}
			s.reach(next, state, c)
		}
	}
}

// way goes back from its last state to its beginning.
func (s *search) way(last int32) Way {
	w := Way{Length: s.reached[last].length}
	var all []Spot
	for n := last; n >= 0; n = s.reached[n].from {
		all = append(all, s.spot(int(n)%s.size))
	}
	slices.Reverse(all)
	for i, p := range all {
		if i > 0 {
			holes, shut := s.line(all[i-1], p, axisOf(all[i-1], p))
			slices.SortFunc(holes, func(a, b Hole) int { return cmp.Compare(a.At.To(all[i-1]), b.At.To(all[i-1])) })
			w.Holes = append(w.Holes, holes...)
			for _, what := range shut {
				if !slices.Contains(w.Shut, what) {
					w.Shut = append(w.Shut, what)
				}
			}
		}
		if i == 0 || i == len(all)-1 || turned(all[i-1], p, all[i+1]) {
			w.Spots = append(w.Spots, p)
		}
	}
	return w
}

// turned reports whether a way goes on from q otherwise than it came, or back.
func turned(p, q, r Spot) bool {
	return axisOf(p, q) != axisOf(q, r) || p.To(r) < p.To(q)+q.To(r)
}

// axisOf is the axis of a line.
func axisOf(p, q Spot) geom.Axis {
	for axis := geom.U; axis < geom.Z; axis++ {
		if p[axis] != q[axis] {
			return axis
		}
	}
	return geom.Z
}

// entry is a state in the queue: the cheapest comes first, of like ones the lowest number.
type entry struct {
	cost
	state int32
}

func (e entry) before(o entry) bool {
	return e.less(o.cost) || e.cost == o.cost && e.state < o.state
}

// queue is a heap with four below each: container/heap would make an allocation of each entry.
type queue []entry

func (q *queue) push(e entry) {
	*q = append(*q, e)
	h, i := *q, len(*q)-1
	for i > 0 && e.before(h[(i-1)/4]) {
		h[i] = h[(i-1)/4]
		i = (i - 1) / 4
	}
	h[i] = e
}

func (q *queue) pop() entry {
	h := *q
	first, last := h[0], h[len(h)-1]
	h = h[:len(h)-1]
	*q = h
	for i := 0; len(h) > 0; {
		least := 4*i + 1
		for k := least + 1; k < min(4*i+5, len(h)); k++ {
			if h[k].before(h[least]) {
				least = k
			}
		}
		if least >= len(h) || last.before(h[least]) {
			h[i] = last
			break
		}
		h[i] = h[least]
		i = least
	}
	return first
}
