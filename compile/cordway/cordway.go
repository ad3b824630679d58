// Package cordway finds the shortest way that a cord could take between two rims
// without piercing what stands between.
package cordway

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// spot is a point of the room, in nanometres.
type spot struct{ x, y, z float64 }

func (p spot) plus(q spot, k float64) spot {
	return spot{p.x + float64(k*q.x), p.y + float64(k*q.y), p.z + float64(k*q.z)}
}

func (p spot) dot(q spot) float64 { return float64(p.x*q.x) + float64(p.y*q.y) + float64(p.z*q.z) }

func (p spot) to(q spot) float64 {
	d := q.plus(p, -1)
	return math.Sqrt(d.dot(d))
}

// Edge is a straight line between two points, on which a way may bend, begin or end.
type Edge [2]spot

func (e Edge) at(t float64) spot { return e[0].plus(e[1].plus(e[0], -1), t) }

// Sealed is how much larger than it is a barrier counts, so that no way slips
// between two that touch; ways bend twice as far off it.
const Sealed geom.Length = 1000

const bendOff = float64(2 * Sealed)

// Barrier is a solid that no cord pierces: a box of a frame.
type Barrier struct {
	origin   spot
	sin, cos float64
	lo, hi   [3]float64 // u, v, z
}

// BarrierOf is a box of a frame as a barrier.
func BarrierOf(f geom.Frame, b geom.Box) Barrier {
	sin, cos := f.Turn.SinCos()
	out := Barrier{origin: spot{float64(f.Origin.X), float64(f.Origin.Y), 0}, sin: sin, cos: cos}
	for axis := geom.U; axis <= geom.Z; axis++ {
		out.lo[axis], out.hi[axis] = float64(b.Along(axis).Lo), float64(b.Along(axis).Hi)
	}
	return out
}

// local turns a point of the room into the barrier's u, v, z.
func (b *Barrier) local(p spot) [3]float64 {
	x, y := p.x-b.origin.x, p.y-b.origin.y
	return [3]float64{float64(x*b.cos) + float64(y*b.sin), float64(y*b.cos) - float64(x*b.sin), p.z}
}

func (b *Barrier) room(p [3]float64) spot {
	return spot{b.origin.x + float64(p[0]*b.cos) - float64(p[1]*b.sin), b.origin.y + float64(p[0]*b.sin) + float64(p[1]*b.cos), p[2]}
}

// pierced reports whether the line from p to q goes through the barrier.
func (b *Barrier) pierced(p, q spot) bool {
	from, to := b.local(p), b.local(q)
	enter, leave := 0.0, 1.0
	for i := range from {
		lo, hi, step := b.lo[i]-float64(Sealed), b.hi[i]+float64(Sealed), to[i]-from[i]
		if step == 0 {
			if from[i] <= lo || from[i] >= hi {
				return false
			}
			continue
		}
		s, t := (lo-from[i])/step, (hi-from[i])/step
		enter, leave = max(enter, min(s, t)), min(leave, max(s, t))
	}
	return enter < leave
}

// edges are the twelve of the barrier, as far as they lie over the floor and within
// a reach of a point.
func (b *Barrier) edges(about spot, reach float64) []Edge {
	centre := b.local(about)
	var out []Edge
	for axis := range 3 {
		i, j := (axis+1)%3, (axis+2)%3
		for corner := range 4 {
			var p [3]float64
			p[i], p[j] = b.lo[i]-bendOff, b.lo[j]-bendOff
			if corner&1 != 0 {
				p[i] = b.hi[i] + bendOff
			}
			if corner&2 != 0 {
				p[j] = b.hi[j] + bendOff
			}
			q := p
			p[axis] = max(b.lo[axis]-bendOff, centre[axis]-reach)
			q[axis] = min(b.hi[axis]+bendOff, centre[axis]+reach)
			if axis == 2 {
				p[2] = max(p[2], 0)
			}
			if p[axis] < q[axis] && p[2] >= 0 {
				out = append(out, Edge{b.room(p), b.room(q)})
			}
		}
	}
	return out
}

// Rim are the four sides of a rectangle in a plane of a frame: two axes with their
// extents, and the place on the third.
func Rim(f geom.Frame, box geom.Box) []Edge {
	b := BarrierOf(f, box)
	var out []Edge
	flat := slices.IndexFunc([]geom.Axis{geom.U, geom.V, geom.Z}, func(a geom.Axis) bool { return box.Along(a).Size() == 0 })
	i, j := (flat+1)%3, (flat+2)%3
	corner := func(onI, onJ float64) spot {
		p := b.lo
		p[i], p[j] = onI, onJ
		return b.room(p)
	}
	a, c, d, e := corner(b.lo[i], b.lo[j]), corner(b.hi[i], b.lo[j]), corner(b.hi[i], b.hi[j]), corner(b.lo[i], b.hi[j])
	return append(out, Edge{a, c}, Edge{c, d}, Edge{d, e}, Edge{e, a})
}

// Way is a line of straight pieces: where it begins, where it bends and where it
// ends, each on an edge.
type Way struct {
	edges  []Edge
	points []spot
}

// Length is that of all its pieces, in nanometres.
func (w *Way) Length() float64 {
	sum := 0.0
	for i := range w.points[1:] {
		sum += w.points[i].to(w.points[i+1])
	}
	return sum
}

// Shortest is the shortest of the ways from one rim to another that pierce no
// barrier; ok is false where none is as short as most. Barriers are heeded as the
// way meets them: while it still pierces others, it is shorter than the one looked
// for, so that one too long already ends the search, and so does one past many.
func Shortest(from, to []Edge, barriers []Barrier, most float64) (w Way, ok bool) {
	var heeded []Barrier
	taken := make([]bool, len(barriers))
	for {
		w, ok = wayPast(from, to, heeded, most)
		if !ok || w.Length() > most {
			return Way{}, false
		}
		free := true
		for i := range barriers {
			if !taken[i] && w.pierces(&barriers[i]) {
				heeded, taken[i], free = append(heeded, barriers[i]), true, false
			}
		}
		if free || len(heeded) >= mostHeeded {
			return w, true
		}
	}
}

// Bends is how often it bends.
func (w *Way) Bends() int { return len(w.points) - 2 }

func (w *Way) pierces(b *Barrier) bool {
	for i := range w.points[1:] {
		if b.pierced(w.points[i], w.points[i+1]) {
			return true
		}
	}
	return false
}

func seen(barriers []Barrier, p, q spot) bool {
	return !slices.ContainsFunc(barriers, func(b Barrier) bool { return b.pierced(p, q) })
}

// mostHeeded bounds the barriers of one way; within six feet a dozen are many.
const mostHeeded = 24

// stops is how many points of an edge a way is first tried through; the best then
// slides along its edges.
const stops = 9

// node is a point that a way may bend in.
type node struct {
	on    Edge
	at    spot
	ahead float64 // to the end at least
	sofar float64 // the shortest way to it
	back  int     // the node before it; -1 at a beginning
	done  bool
	end   bool
}

// wayPast is the shortest way past a few barriers: of all that bend in one of the
// points of their edges (the method of A*, each line looked at only when it would
// shorten a way), slid along these edges to its least length.
func wayPast(from, to []Edge, barriers []Barrier, most float64) (Way, bool) {
	most += most / 50 // the way is not slid yet
	nodes := nodesOf(from, to, barriers, most)
	for {
		next := -1
		for i := range nodes {
			if n := &nodes[i]; !n.done && n.sofar+n.ahead <= most && (next < 0 || n.sofar+n.ahead < nodes[next].sofar+nodes[next].ahead) {
				next = i
			}
		}
		if next < 0 {
			return Way{}, false
		}
		n := &nodes[next]
		n.done = true
		if n.end {
			w := traced(nodes, next)
			w.tighten(barriers)
			return w, true
		}
		for i := range nodes {
			m := &nodes[i]
			far := n.sofar + n.at.to(m.at)
			if !m.done && far < m.sofar && far+m.ahead <= most && seen(barriers, n.at, m.at) {
				m.sofar, m.back = far, next
			}
		}
	}
}

func nodesOf(from, to []Edge, barriers []Barrier, most float64) []node {
	goal := to[0][0].plus(to[2][0], 1)
	goal = spot{goal.x / 2, goal.y / 2, goal.z / 2}
	round := goal.to(to[0][0])
	var nodes []node
	add := func(e Edge, n node) {
		for i := range stops {
			n.on, n.at = e, e.at(float64(i)/(stops-1))
			n.ahead = max(0, n.at.to(goal)-round)
			if seen(barriers, n.at, n.at.plus(spot{z: 1}, 1)) {
				nodes = append(nodes, n)
			}
		}
	}
	for _, e := range from {
		add(e, node{back: -1})
	}
	for _, e := range to {
		add(e, node{back: -1, sofar: math.Inf(1), end: true})
	}
	for i := range barriers {
		for _, e := range barriers[i].edges(from[0][0], most+from[0][0].to(from[2][0])) {
			add(e, node{back: -1, sofar: math.Inf(1)})
		}
	}
	return nodes
}

func traced(nodes []node, last int) Way {
	var w Way
	for i := last; i >= 0; i = nodes[i].back {
		w.edges, w.points = append(w.edges, nodes[i].on), append(w.points, nodes[i].at)
	}
	slices.Reverse(w.edges)
	slices.Reverse(w.points)
	return w
}

// tighten slides the points of a way along their edges, one after the other, until
// it gets no shorter; no point goes where its neighbours are not seen.
func (w *Way) tighten(barriers []Barrier) {
	for range 1000 {
		before := w.Length()
		for i := range w.points {
			w.slide(i, barriers)
		}
		if before-w.Length() < float64(Sealed)/100 {
			return
		}
	}
}

func (w *Way) slide(i int, barriers []Barrier) {
	e, at := w.edges[i], w.points[i]
	along := e[1].plus(e[0], -1)
	long := along.dot(along)
	if long == 0 {
		return
	}
	var beside []spot
	if i > 0 {
		beside = append(beside, w.points[i-1])
	}
	if i+1 < len(w.points) {
		beside = append(beside, w.points[i+1])
	}
	best := e.at(min(1, max(0, bend(e, along, long, beside))))
	for range 20 {
		if !slices.ContainsFunc(beside, func(p spot) bool { return !seen(barriers, p, best) }) {
			w.points[i] = best
			return
		}
		best = spot{(best.x + at.x) / 2, (best.y + at.y) / 2, (best.z + at.z) / 2}
	}
}

// bend is where on an edge the way between its neighbours is shortest: where the
// straight line would cross it, were one of them turned about the edge into the
// other's plane.
func bend(e Edge, along spot, long float64, beside []spot) float64 {
	var t, off [2]float64
	for k, p := range beside {
		t[k] = p.plus(e[0], -1).dot(along) / long
		off[k] = p.to(e.at(t[k]))
	}
	switch {
	case len(beside) == 1:
		return t[0]
	case off[0]+off[1] == 0:
		return t[0]
	}
	return (float64(t[0]*off[1]) + float64(t[1]*off[0])) / (off[0] + off[1])
}

// Near are the barriers that a way so long from a rim could meet.
func Near(barriers []Barrier, from []Edge, most float64) []Barrier {
	var out []Barrier
	round := from[0][0].to(from[2][0])
	for i := range barriers {
		at, far := barriers[i].local(from[0][0]), 0.0
		for j := range at {
			off := max(barriers[i].lo[j]-at[j], at[j]-barriers[i].hi[j], 0)
			far += float64(off * off)
		}
		if reach := most + round; far <= float64(reach*reach) {
			out = append(out, barriers[i])
		}
	}
	return out
}

// Least is less than any way between two rims.
func Least(from, to []Edge) float64 {
	round := from[0][0].to(from[2][0]) + to[0][0].to(to[2][0])
	return from[0][0].to(to[0][0]) - round
}
