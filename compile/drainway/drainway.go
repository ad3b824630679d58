// Package drainway lays a drain's pipe from under a sink to its stub, in the frame of the
// sink's run: level legs along the run and across it, at the fall that is asked for, and
// where it may drop one leg straight down behind the trap. It tells which boards want a
// hole and where, and what stops it. It knows shapes and nothing of the model.
//
// The pipe goes across to where the stub ends, and along to it. Where something stops it
// there, ways with three level legs at most are looked for, whose middle leg lies within
// the run, and the one is taken that fewest things stop; of these the shortest, then that
// with fewest bends, then the first of the order: across and along, along and across, and
// those that go round what stops others.
package drainway

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// mostPlans bounds how many ways are tried.
const mostPlans = 128

// touching is what two things may share and still be taken to touch.
const touching = length.Millimetre / 10

// Ask is what a pipe has to join, and what is about it.
type Ask struct {
	From      geom.Point  // the middle of the bowl, u and v
	To        geom.Point  // the end of the stub
	Beyond    geom.Length // from there to the face of the stub's wall
	Height    geom.Length // of the stub's middle at that face
	Slope     float64     // fall in the pipe's length
	Bend      geom.Length // what the trap's own bend takes of the way
	Hang      geom.Length // the pipe leaves the trap at this height or over it, and drops; 0 where it only falls
	Diameter  geom.Length // outside
	Clearance geom.Length // all round it in a hole
	Edge      geom.Length // wood beside a hole that is wanted
	Mark      geom.Length // that holes are rounded up to
	Line      geom.Length // v of the leg along the run, where Lined
	Lined     bool
	Within    geom.Rect // where the middle leg of a way round something may lie
	Trap      geom.Box  // what stands in it is not looked at
	Solids    []Solid
}

// Solid is what stands about the pipe. A board is bored along its Axis where Bores allows
// the box of a hole; of all else Bores is nil.
type Solid struct {
	Box   geom.Box
	Axis  geom.Axis
	Bores func(hole geom.Box) bool
}

// Way is a pipe as it is laid. Points are of its middle, from the trap to the end of the
// stub; a drop has two above one another.
type Way struct {
	Points  []geom.Spot
	Arm     geom.Length // from the trap to the wall's face
	Fall    geom.Length // over the arm
	Holes   []Hole      // in the order of the way
	Stopped []int       // solids that no hole leads it through, in the order of the way
	long    geom.Length // in plan
}

// Hole is round, about the middle of the pipe in the middle of a board.
type Hole struct {
	Solid    int
	At       geom.Spot
	Diameter geom.Length
}

// Lay finds the pipe's way.
func Lay(a *Ask) Way {
	if a.Lined {
		return a.laid(a.overV(a.Line))
	}
	corner := geom.Point{X: a.From.X, Y: a.To.Y}
	plans := [][]geom.Point{straight(a.From, corner, a.To), straight(a.From, geom.Point{X: a.To.X, Y: a.From.Y}, a.To)}
	var best Way
	for i := 0; i < len(plans); i++ {
		w := a.laid(plans[i])
		if i == 0 || better(&w, &best) {
			best = w
		}
		if i == 0 && len(w.Stopped) == 0 {
			break // none is shorter
		}
		for _, at := range w.Stopped {
			for _, p := range a.round(&a.Solids[at]) {
				if len(plans) < mostPlans && !slices.ContainsFunc(plans, func(q []geom.Point) bool { return slices.Equal(p, q) }) {
					plans = append(plans, p)
				}
			}
		}
	}
	return best
}

func better(w, than *Way) bool {
	return cmp.Or(cmp.Compare(len(w.Stopped), len(than.Stopped)), cmp.Compare(w.long, than.long), cmp.Compare(len(w.Points), len(than.Points))) < 0
}

// round lists the ways that pass a solid on either side, or through the wood of a board
// further from its edges.
func (a *Ask) round(s *Solid) (plans [][]geom.Point) {
	clear := a.Diameter/2 + a.Clearance
	for _, axis := range []geom.Axis{geom.V, geom.U} {
		in := s.Box.Along(axis)
		lines := []geom.Length{in.Lo - clear, in.Hi + clear}
		if s.Bores != nil {
			lines = append(lines, in.Lo+clear+a.Edge, in.Hi-clear-a.Edge)
		}
		for _, at := range lines {
			switch {
			case axis == geom.V && a.Within.Y.Grow(-clear).Holds(at):
				plans = append(plans, a.overV(at))
			case axis == geom.U && a.Within.X.Grow(-clear).Holds(at):
				plans = append(plans, straight(a.From, geom.Point{X: at, Y: a.From.Y}, geom.Point{X: at, Y: a.To.Y}, a.To))
			}
		}
	}
	return plans
}

// overV is the way whose leg along the run lies at v.
func (a *Ask) overV(v geom.Length) []geom.Point {
	return straight(a.From, geom.Point{X: a.From.X, Y: v}, geom.Point{X: a.To.X, Y: v}, a.To)
}

// straight leaves out the points of a way between which there is nothing, or that lie
// on a straight piece of it.
func straight(points ...geom.Point) []geom.Point {
	out := slices.Compact(points)
	for i := 1; i+1 < len(out); {
		a, b, c := out[i-1], out[i], out[i+1]
		if a.X == b.X && b.X == c.X && geom.Between(a.Y, c.Y).Holds(b.Y) || a.Y == b.Y && b.Y == c.Y && geom.Between(a.X, c.X).Holds(b.X) {
			out = slices.Delete(out, i, i+1)
			continue
		}
		i++
	}
	return out
}

// leg is a straight piece of pipe.
type leg struct {
	axis     geom.Axis
	from, to geom.Spot
	far      geom.Length // along the pipe from its start to the wall's face; of a drop not used
	bends    [2]bool     // it goes round a bend at its start, at its end
}

// along is where a spot lies on an axis.
func along(s geom.Spot, a geom.Axis) geom.Length { return [...]geom.Length{s.U, s.V, s.Z}[a] }

// laid lays the pipe along a plan.
func (a *Ask) laid(plan []geom.Point) Way {
	w := Way{long: a.Beyond}
	for i := 1; i < len(plan); i++ {
		w.long += step(plan[i-1], plan[i])
	}
	w.Arm = max(0, w.long-a.Bend)
	w.Fall = a.rise(w.Arm)
	for i, l := range a.legs(&w, plan) {
		if i == 0 {
			w.Points = append(w.Points, l.from)
		}
		w.Points = append(w.Points, l.to)
		a.pass(&w, &l)
	}
	if len(w.Points) == 0 {
		w.Points = []geom.Spot{{U: a.From.X, V: a.From.Y, Z: a.Height + w.Fall}}
	}
	return w
}

// step is how far two points of a leg are from one another.
func step(p, q geom.Point) geom.Length { return length.Apart(p.X, q.X) + length.Apart(p.Y, q.Y) }

// rise is how much higher than the stub the pipe is, so far from the wall along it.
func (a *Ask) rise(far geom.Length) geom.Length {
	return geom.Length(math.Round(a.Slope * float64(far)))
}

// legs are the straight pieces of a plan, with their heights. Within the bend of the
// trap the pipe is level.
func (a *Ask) legs(w *Way, plan []geom.Point) (legs []leg) {
	far := w.long
	at := func(p geom.Point) geom.Spot {
		return geom.Spot{U: p.X, V: p.Y, Z: a.Height + a.rise(min(far, w.Arm))}
	}
	from := at(plan[0])
	if top := from; a.Hang > from.Z {
		top.Z = a.Hang
		legs = append(legs, leg{axis: geom.Z, from: top, to: from, bends: [2]bool{false, len(plan) > 1}})
	}
	for i := 1; i < len(plan); i++ {
		l := leg{axis: geom.U, from: from, far: far, bends: [2]bool{i > 1, i+1 < len(plan)}}
		if plan[i].X == plan[i-1].X {
			l.axis = geom.V
		}
		far -= step(plan[i-1], plan[i])
		from = at(plan[i])
		l.to = from
		legs = append(legs, l)
	}
	return legs
}

// pass notes what holes a leg wants and what stops it.
func (a *Ask) pass(w *Way, l *leg) {
	type met struct {
		at   geom.Length // along the leg
		hole *Hole
		of   int
	}
	var all []met
	start := along(l.from, l.axis)
	for i := range a.Solids {
		s := &a.Solids[i]
		if s.Box.Overlaps(a.Trap) || !a.meets(w, l, s.Box) {
			continue
		}
		mid := s.Box.Along(l.axis).Mid()
		m := met{at: length.Apart(mid, start), of: i}
		if hole := a.hole(w, l, i); s.Bores != nil && s.Axis == l.axis && geom.Between(start, along(l.to, l.axis)).Contains(s.Box.Along(l.axis)) && s.Bores(a.about(&hole, s)) {
			m.hole = &hole
		}
		all = append(all, m)
	}
	slices.SortStableFunc(all, func(a, b met) int { return cmp.Compare(a.at, b.at) })
	for _, m := range all {
		switch {
		case m.hole != nil:
			w.Holes = append(w.Holes, *m.hole)
		case !slices.Contains(w.Stopped, m.of):
			w.Stopped = append(w.Stopped, m.of)
		}
	}
}

// meets reports whether a leg and a box share more than rounding.
func (a *Ask) meets(w *Way, l *leg, box geom.Box) bool {
	r := a.Diameter / 2
	span := geom.Between(along(l.from, l.axis), along(l.to, l.axis))
	reach := span
	for i, end := range [2]geom.Spot{l.from, l.to} {
		if l.bends[i] {
			reach = reach.Union(geom.About(along(end, l.axis), 2*r))
		}
	}
	shared := reach.Intersect(box.Along(l.axis))
	if shared.Size() <= touching {
		return false
	}
	pipe := geom.Box{U: geom.About(l.from.U, a.Diameter), V: geom.About(l.from.V, a.Diameter)}
	one, other := a.height(w, l, shared.Lo), a.height(w, l, shared.Hi)
	pipe.Z = geom.Between(one, other).Grow(r)
	pipe = pipe.With(l.axis, shared)
	for _, axis := range []geom.Axis{geom.U, geom.V, geom.Z} {
		if pipe.Along(axis).Intersect(box.Along(axis)).Size() <= touching {
			return false
		}
	}
	return true
}

// height is how high the middle of a level leg is at a place along it.
func (a *Ask) height(w *Way, l *leg, at geom.Length) geom.Length {
	far := l.far - length.Apart(at, along(l.from, l.axis))
	return a.Height + a.rise(min(max(far, 0), w.Arm))
}

// hole is what a leg wants in a board that it passes: as wide as the pipe comes anywhere in
// its thickness, and its clearance.
func (a *Ask) hole(w *Way, l *leg, of int) Hole {
	in := a.Solids[of].Box.Along(l.axis)
	h := Hole{Solid: of, At: l.from}
	slope := a.Slope
	switch l.axis {
	case geom.U:
		h.At.U, h.At.Z = in.Mid(), a.height(w, l, in.Mid())
	case geom.V:
		h.At.V, h.At.Z = in.Mid(), a.height(w, l, in.Mid())
	case geom.Z:
		h.At.Z, slope = in.Mid(), 0
	}
	wide := float64(float64(a.Diameter)*math.Sqrt(1+float64(slope*slope))) + float64(slope*float64(in.Size()))
	h.Diameter = length.Up(geom.Length(math.Ceil(wide))+2*a.Clearance, a.Mark)
	return h
}

// about is the box of a hole, through its board.
func (a *Ask) about(h *Hole, s *Solid) geom.Box {
	box := geom.Box{U: geom.About(h.At.U, h.Diameter), V: geom.About(h.At.V, h.Diameter), Z: geom.About(h.At.Z, h.Diameter)}
	return box.With(s.Axis, s.Box.Along(s.Axis))
}
