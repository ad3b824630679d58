package ways

import (
	"cmp"
	"container/heap"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// window is what of a scene lies within a stretch along u.
type window struct {
	u      geom.Span
	solids []*Solid
	boards []*Board
	nth    []int // of each board, in the scene
	lanes  []geom.Box
}

func (s *Scene) within(u geom.Span) *window {
	w := &window{u: u, lanes: s.Lanes}
	for i := range s.Solids {
		if s.Solids[i].Box.U.Overlaps(u) {
			w.solids = append(w.solids, &s.Solids[i])
		}
	}
	for i := range s.Boards {
		if s.Boards[i].Box.U.Overlaps(u) {
			w.boards, w.nth = append(w.boards, &s.Boards[i]), append(w.nth, i)
		}
	}
	return w
}

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

// state is a crossing of the grid's lines, the axis along which it was reached, and how
// many boxes a way has come through.
type state struct{ at, axis, through int }

// search is Dijkstra's, led on by what is left to go at least, over the lines of a grid: those through the ends, and along all
// that a way may have to pass. A shortest way along the axes needs no others.
type search struct {
	*window
	*Ask
	lines   [3][]Length
	loose   bool // it may go through what it may not
	reached []cost
	from    []int // the state before each; -1 at a beginning
	known   []bool
	done    []bool
	queue   queue
}

func (w *window) shortest(a *Ask, loose bool) (Way, bool) {
	s := &search{window: w, Ask: a, lines: w.grid(a), loose: loose}
	n := len(s.lines[0]) * len(s.lines[1]) * len(s.lines[2]) * 3 * (len(a.Through) + 1)
	if n > Most {
		return Way{}, false
	}
	s.reached, s.from, s.known, s.done = make([]cost, n), make([]int, n), make([]bool, n), make([]bool, n)
	for _, p := range a.From {
		for axis := range 3 {
			s.reach(s.number(state{s.crossing(p), axis, s.comeThrough(p, 0)}), -1, cost{})
		}
	}
	for s.queue.Len() > 0 {
		next := heap.Pop(&s.queue).(entry)
		if s.done[next.state] {
			continue
		}
		s.done[next.state] = true
		if here := s.state(next.state); here.through == len(a.Through) && slices.Contains(a.To, s.spot(here.at)) {
			return s.way(next.state), true
		}
		s.onward(next.state)
	}
	return Way{}, false
}

// grid lists the lines along each axis, rising.
func (w *window) grid(a *Ask) (lines [3][]Length) {
	add := func(b geom.Box) {
		for axis := geom.U; axis <= geom.Z; axis++ {
			lines[axis] = append(lines[axis], b.Along(axis).Lo, b.Along(axis).Hi)
		}
	}
	for _, p := range slices.Concat(a.From, a.To) {
		add(geom.Box{U: geom.Span{Lo: p[0], Hi: p[0]}, V: geom.Span{Lo: p[1], Hi: p[1]}, Z: geom.Span{Lo: p[2], Hi: p[2]}})
	}
	for _, b := range a.Through {
		add(b)
	}
	for _, s := range w.solids {
		add(s.Box)
	}
	for _, b := range w.boards {
		add(b.Box)
		add(b.Rim)
		for _, shut := range b.Shut {
			add(shut)
		}
	}
	// Along v a way turns in lanes and at its ends only.
	lines[geom.V] = nil
	for _, l := range w.lanes {
		add(l)
	}
	for _, p := range slices.Concat(a.From, a.To) {
		lines[geom.V] = append(lines[geom.V], p[geom.V])
	}
	for axis := range lines {
		slices.Sort(lines[axis])
		lines[axis] = slices.Compact(lines[axis])
	}
	lines[geom.U] = slices.DeleteFunc(lines[geom.U], func(u Length) bool { return !w.u.Holds(u) })
	return lines
}

func (s *search) number(t state) int {
	return (t.through*3+t.axis)*len(s.lines[0])*len(s.lines[1])*len(s.lines[2]) + t.at
}

func (s *search) state(number int) state {
	n := len(s.lines[0]) * len(s.lines[1]) * len(s.lines[2])
	return state{number % n, number / n % 3, number / n / 3}
}

// steps is how far apart neighbours along each axis are in the numbers of crossings.
func (s *search) steps() [3]int {
	return [3]int{1, len(s.lines[0]), len(s.lines[0]) * len(s.lines[1])}
}

func (s *search) crossing(p Spot) (at int) {
	for axis, step := range s.steps() {
		i, _ := slices.BinarySearch(s.lines[axis], p[axis])
		at += i * step
	}
	return at
}

func (s *search) spot(at int) (p Spot) {
	for axis, step := range s.steps() {
		p[axis] = s.lines[axis][at/step%len(s.lines[axis])]
	}
	return p
}

// comeThrough is how many boxes a way has come through at a spot, after so many.
func (s *search) comeThrough(p Spot, already int) int {
	for already < len(s.Through) && p.In(s.Through[already]) {
		already++
	}
	return already
}

func (s *search) reach(number, from int, c cost) {
	if s.done[number] || s.known[number] && s.reached[number].compare(c) <= 0 {
		return
	}
	s.known[number], s.reached[number], s.from[number] = true, c, from
	c.length += s.ahead(s.spot(s.state(number).at))
	heap.Push(&s.queue, entry{c, number})
}

// ahead is how long the way on is at least.
func (s *search) ahead(p Spot) Length {
	least := length.Max
	for _, q := range s.To {
		least = min(least, p.To(q))
	}
	return least
}

// onward goes from a state to the crossings beside it.
func (s *search) onward(number int) {
	here, steps := s.state(number), s.steps()
	p := s.spot(here.at)
	for axis := range 3 {
		i := here.at / steps[axis] % len(s.lines[axis])
		for _, by := range [2]int{-1, 1} {
			if i+by < 0 || i+by >= len(s.lines[axis]) {
				continue
			}
			q := p
			q[axis] = s.lines[axis][i+by]
			holes, shut, ok := s.line(p, q, geom.Axis(axis))
			if !ok || len(shut) > 0 && !s.loose {
				continue
			}
			c := s.reached[number]
			c.shut, c.length, c.holes = c.shut+len(shut), c.length+p.To(q), c.holes+len(holes)
			if axis != here.axis {
				c.turns++
			}
			s.reach(s.number(state{here.at + by*steps[axis], axis, s.comeThrough(q, here.through)}), number, c)
		}
	}
}

// line tells of a piece of a way what holes it needs and by what it is shut; ok is false
// where it lies in no lane.
func (s *search) line(p, q Spot, axis geom.Axis) (holes []Hole, shut []string, ok bool) {
	if axis != geom.V && !slices.ContainsFunc(s.lanes, func(l geom.Box) bool { return p.In(l) && q.In(l) }) {
		return nil, nil, false
	}
	for _, solid := range s.solids {
		if inside(solid.Box, p, q) {
			shut = append(shut, solid.What)
		}
	}
	for i, b := range s.boards {
		if !inside(b.Box, p, q) {
			continue
		}
		if b.Normal != axis || !b.lets(p) {
			shut = append(shut, b.What)
			continue
		}
		at := p
		at[axis] = b.Box.Along(axis).Mid()
		if lo, hi := min(p[axis], q[axis]), max(p[axis], q[axis]); lo < at[axis] && at[axis] <= hi {
			holes = append(holes, Hole{s.nth[i], at})
		}
	}
	return holes, shut, true
}

// way goes back from its last state to its beginning.
func (s *search) way(last int) Way {
	w := Way{Length: s.reached[last].length}
	var all []Spot
	for n := last; n >= 0; n = s.from[n] {
		all = append(all, s.spot(s.state(n).at))
	}
	slices.Reverse(all)
	for i, p := range all {
		if i > 0 {
			holes, shut, _ := s.line(all[i-1], p, along(all[i-1], p))
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
	return along(p, q) != along(q, r) || p.To(r) < p.To(q)+q.To(r)
}

// along is the axis of a line.
func along(p, q Spot) geom.Axis {
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
