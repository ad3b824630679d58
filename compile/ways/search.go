package ways

import (
	"cmp"
	"container/heap"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// cost is what a way is chosen by: what it goes through that it may not, its length, its
// holes and its turns, in this order.
type cost struct {
	shut         int
	length       Length
	holes, turns int
}

func (c cost) compare(o cost) int {
	return cmp.Or(cmp.Compare(c.shut, o.shut), cmp.Compare(c.length, o.length), cmp.Compare(c.holes, o.holes), cmp.Compare(c.turns, o.turns))
}

// crossed is a crossing of the grid's lines, the axis along which it was reached, and how
// many boxes a way has come through.
type crossed struct{ at, axis, through int }

// search is Dijkstra's over the pieces of a grid, led on by what is left to go at least.
type search struct {
	*grid
	*Ask
	toGo    [][]int32
	reached []cost
	from    []int // the state before each; -1 at a beginning
	known   []bool
	done    []bool
	queue   queue
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
	s.reached, s.from, s.known, s.done = make([]cost, n), make([]int, n), make([]bool, n), make([]bool, n)
	for _, p := range a.From {
		for axis := range 3 {
			s.reach(s.state(crossed{g.number(p), axis, a.comeThrough(p, 0)}), -1, cost{})
		}
	}
	for s.queue.Len() > 0 {
		next := heap.Pop(&s.queue).(entry)
		if s.done[next.state] {
			continue
		}
		s.done[next.state] = true
		if here := s.crossed(next.state); here.through == len(a.Through) && slices.Contains(a.To, s.spot(here.at)) {
			return s.way(next.state), true
		}
		s.onward(next.state)
	}
	return Way{}, false
}

// state is the number of what was crossed.
func (s *search) state(c crossed) int { return (c.through*3+c.axis)*s.size + c.at }

func (s *search) crossed(state int) crossed {
	return crossed{state % s.size, state / s.size % 3, state / s.size / 3}
}

// comeThrough is how many boxes a way has come through at a spot, after so many.
func (a *Ask) comeThrough(p Spot, already int) int {
	for already < len(a.Through) && p.In(a.Through[already]) {
		already++
	}
	return already
}

func (s *search) reach(state, from int, c cost) {
	if s.done[state] || s.known[state] && s.reached[state].compare(c) <= 0 {
		return
	}
	here := s.crossed(state)
	toGo := s.toGo[here.through][here.at]
	if toGo == never {
		return
	}
	s.known[state], s.reached[state], s.from[state] = true, c, from
	ahead := s.ahead(s.spot(here.at), here.axis)
	c.shut, c.length, c.turns = c.shut+int(toGo), c.length+ahead.length, c.turns+ahead.turns
	heap.Push(&s.queue, entry{c, state})
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
		if c.compare(least) < 0 {
			least = c
		}
	}
	return least
}

// onward goes from a state to the crossings beside it.
func (s *search) onward(state int) {
	here, so := s.crossed(state), s.reached[state]
	p := s.spot(here.at)
	for axis := range s.steps {
		for _, by := range [2]int{-1, 1} {
			to, begins, ok := s.beside(here.at, axis, by)
			if !ok || !s.pieces[axis][begins].lane {
				continue
			}
			piece, q := s.pieces[axis][begins], s.spot(to)
			c := cost{so.shut + int(piece.shut), so.length + p.To(q), so.holes + int(piece.holes), so.turns}
			if axis != here.axis {
				c.turns++
			}
			s.reach(s.state(crossed{to, axis, s.comeThrough(q, here.through)}), state, c)
		}
	}
}

// way goes back from its last state to its beginning.
func (s *search) way(last int) Way {
	w := Way{Length: s.reached[last].length}
	var all []Spot
	for n := last; n >= 0; n = s.from[n] {
		all = append(all, s.spot(n%s.size))
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
	state int
}

type queue []entry

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	return cmp.Or(q[i].compare(q[j].cost), cmp.Compare(q[i].state, q[j].state)) < 0
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(e any)   { *q = append(*q, e.(entry)) }
func (q *queue) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}
