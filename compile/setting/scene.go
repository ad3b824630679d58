package setting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// scene is a room as the search sees it: whatever has an extent has one along each axis,
// those of its own frame and all others.
type scene struct {
	turns []geom.Angle // each less than a quarter; two axes each
	axes  [][3]float64 // unit vectors: u and v of each turn, then z
	dots  [][]float64  // of each two axes
	// groups are what is fixed, each a group of its own, then the bodies.
	groups []group
	lone   []*found // for each group: its search among what stands fast; nil before
	door   *Door
	lift   float64
	wide   float64 // eight times what all bodies and the door extend over, along x and y together
	far    float64 // how long a slide with an end may be
}

// group is what moves, or stays, as one.
type group struct {
	name   string
	parts  []string
	solids []reach
	turned []int // of each solid, the index of its turn
	hull   reach // a box, if all are turned alike
	turn   int   // of the hull: anyhow, if they are not
	stands bool
	body   bool
	ways   []way
	on     []int
}

// anyhow is the turn of what is not a box.
const anyhow = -1

// span is an open interval in nanometres, empty unless lo < hi.
type span struct{ lo, hi float64 }

func (s span) empty() bool { return s.lo >= s.hi }

func (s span) and(lo, hi float64) span { return span{max(s.lo, lo), min(s.hi, hi)} }

func (s span) plus(o span) span { return span{s.lo + o.lo, s.hi + o.hi} }

func (s span) times(k float64) span {
	a, b := float64(k*s.lo), float64(k*s.hi)
	return span{min(a, b), max(a, b)}
}

// reach is an extent along each axis. What it holds lies within it along all of them.
type reach []span

// way is a direction to slide in: an axis of the scene, as dir of a frame of a turn.
type way struct {
	axis int
	sign float64
	turn geom.Angle
	dir  geom.Dir
}

// tolerance is Tolerance as the scene counts.
const tolerance = float64(Tolerance)

func rounded(x float64) Length { return Length(math.Round(x)) }

func newScene(r Room) *scene {
	s := &scene{door: r.Door, lift: math.Inf(1)}
	if r.Lift > 0 {
		s.lift = float64(r.Lift)
	}
	s.findAxes(r)
	for _, f := range r.Fixed {
		s.groups = append(s.groups, s.group(Body{Name: f.Name, Solids: []Solid{f}, Stands: true}))
	}
	fixed := len(s.groups)
	index := make(map[string]int, len(r.Bodies)) // of a body's name; lookup only
	for i, b := range r.Bodies {
		g := s.group(b)
		g.body, g.ways = true, s.ways(b)
		s.groups = append(s.groups, g)
		index[b.Name] = fixed + i
	}
	sum := s.extent()
	s.wide, s.far = 8*sum, max(float64(Far), sum)
	s.lone = make([]*found, len(s.groups))
	for i, b := range r.Bodies {
		for _, name := range b.On {
			if on, ok := index[name]; ok {
				s.groups[fixed+i].on = append(s.groups[fixed+i].on, on)
			}
		}
	}
	return s
}

// extent is what all bodies and the door extend over, along x and y together.
func (s *scene) extent() (sum float64) {
	var all []reach
	for _, g := range s.groups {
		if g.body {
			all = append(all, g.hull)
		}
	}
	if s.door != nil {
		all = append(all, s.reach(Solid{Frame: s.door.Frame, Box: s.door.box()}))
	}
	if len(all) == 0 {
		return 0
	}
	for j := range 2 {
		on := all[0][j]
		for _, r := range all {
			on = span{min(on.lo, r[j].lo), max(on.hi, r[j].hi)}
		}
		sum += on.hi - on.lo
	}
	return sum
}

// quarter is a right angle.
const quarter = 90 * geom.Degree

// split divides a turn into right angles, none to three, and what is left over.
func split(a geom.Angle) (quarters int, rest geom.Angle) {
	a = (a%(4*quarter) + 4*quarter) % (4 * quarter)
	return int(a / quarter), a % quarter
}

func (s *scene) findAxes(r Room) {
	add := func(f geom.Frame) {
		if _, rest := split(f.Turn); !slices.Contains(s.turns, rest) {
			s.turns = append(s.turns, rest)
		}
	}
	for _, b := range r.Bodies {
		for _, solid := range b.Solids {
			add(solid.Frame)
		}
	}
	for _, solid := range r.Fixed {
		add(solid.Frame)
	}
	if r.Door != nil {
		add(r.Door.Frame)
	}
	for _, turn := range s.turns {
		sin, cos := turn.SinCos()
		s.axes = append(s.axes, [3]float64{cos, sin}, [3]float64{-sin, cos})
	}
	s.axes = append(s.axes, [3]float64{2: 1})
	for i := range s.axes {
		s.dots = append(s.dots, s.project(s.axes[i], nil))
		s.dots[i][i] = 1
	}
}

// project returns a place along each axis, in a buffer if it is given one.
func (s *scene) project(p [3]float64, buffer []float64) []float64 {
	buffer = buffer[:0]
	for _, a := range s.axes {
		buffer = append(buffer, float64(p[0]*a[0])+float64(p[1]*a[1])+float64(p[2]*a[2]))
	}
	return buffer
}

// direction returns the way of an axis of a frame of a turn.
func (s *scene) direction(turn geom.Angle, d geom.Dir) way {
	w := way{len(s.axes) - 1, 1, turn, d}
	if d.Axis != geom.Z {
		along := turn
		if d.Axis == geom.V {
			along += quarter
		}
		quarters, rest := split(along)
		w.axis = 2*slices.Index(s.turns, rest) + quarters%2
		if quarters > 1 {
			w.sign = -1
		}
	}
	if d.Neg {
		w.sign = -w.sign
	}
	return w
}

// ways are the directions that a body is tried in, in order of preference: off the wall,
// along the run and up, along the edges of all else, then back and down.
func (s *scene) ways(b Body) []way {
	var own []geom.Angle
	var out, back []way
	level := func(turn geom.Angle) {
		out = append(out, s.direction(turn, geom.Dir{Axis: geom.V}),
			s.direction(turn, geom.Dir{Axis: geom.U}), s.direction(turn, geom.Dir{Axis: geom.U, Neg: true}))
		back = append(back, s.direction(turn, geom.Dir{Axis: geom.V, Neg: true}))
	}
	var first geom.Angle
	for i, solid := range b.Solids {
		if i == 0 {
			first = solid.Frame.Turn
		}
		if _, rest := split(solid.Frame.Turn); !slices.Contains(own, rest) {
			own = append(own, rest)
			level(solid.Frame.Turn)
		}
	}
	out = append(out, s.direction(first, geom.Dir{Axis: geom.Z}))
	for _, turn := range s.turns {
		if !slices.Contains(own, turn) {
			level(turn)
		}
	}
	return append(append(out, back...), s.direction(first, geom.Dir{Axis: geom.Z, Neg: true}))
}

func (s *scene) group(b Body) group {
	g := group{name: b.Name, stands: b.Stands, turn: anyhow}
	for range s.axes {
		g.hull = append(g.hull, span{math.Inf(1), math.Inf(-1)})
	}
	for _, solid := range b.Solids {
		r := s.reach(solid)
		for j := range r {
			g.hull[j] = span{min(g.hull[j].lo, r[j].lo), max(g.hull[j].hi, r[j].hi)}
		}
		g.solids = append(g.solids, r)
		g.parts = append(g.parts, solid.Name)
		g.turned = append(g.turned, s.direction(solid.Frame.Turn, along).axis/2)
	}
	if turns := slices.Compact(slices.Sorted(slices.Values(g.turned))); len(turns) == 1 {
		g.turn = turns[0]
		s.square(g.hull, g.turn)
	}
	return g
}

// square makes a reach that of the box of a turn that holds it.
func (s *scene) square(r reach, turn int) {
	u, v := r[2*turn], r[2*turn+1]
	for j := range len(r) - 1 {
		if j/2 != turn {
			r[j] = u.times(s.dots[2*turn][j]).plus(v.times(s.dots[2*turn+1][j]))
		}
	}
}

// reach is how far a solid extends along each axis.
func (s *scene) reach(solid Solid) reach {
	origin := s.project([3]float64{float64(solid.Frame.Origin.X), float64(solid.Frame.Origin.Y)}, nil)
	out := make(reach, len(s.axes))
	for j := range out {
		out[j] = span{origin[j], origin[j]}
	}
	for axis := geom.U; axis <= geom.Z; axis++ {
		w, extent := s.direction(solid.Frame.Turn, geom.Dir{Axis: axis}), solid.Box.Along(axis)
		for j := range out {
			out[j] = out[j].plus(span{float64(extent.Lo), float64(extent.Hi)}.times(float64(w.sign * s.dots[w.axis][j])))
		}
	}
	return out
}

// meeting returns, in a buffer if it is given one, the displacements of a at which it is in
// b.
func meeting(buffer, a, b reach) reach {
	buffer = buffer[:0]
	for j := range a {
		buffer = append(buffer, span{b[j].lo - a[j].hi, b[j].hi - a[j].lo})
	}
	return buffer
}

// ahead is all of a slide that has no end, anywhere also what lies behind it.
var ahead, anywhere = span{0, math.Inf(1)}, span{math.Inf(-1), math.Inf(1)}

// within is the part of a stretch of a slide from at, a place along each axis, on which it
// lies in r drawn in by inset.
func (s *scene) within(r reach, at []float64, w way, inset float64, in span) span {
	dots := s.dots[w.axis]
	for j, side := range r {
		lo, hi := side.lo+inset-at[j], side.hi-inset-at[j]
		switch v := float64(w.sign * dots[j]); {
		case v > 0:
			in = in.and(lo/v, hi/v)
		case v < 0:
			in = in.and(hi/v, lo/v)
		case lo >= 0 || hi <= 0:
			return span{}
		}
		if in.empty() {
			return span{}
		}
	}
	return in
}

// hit is what stops a slide: a solid of the one that slides, one of the other, and how far it
// gets, to within the tolerance.
type hit struct {
	solid, other int
	by           float64
}

// slides returns where group b, displaced to at and sliding along w, first goes into group
// o; ok is false where it never does.
func (s *scene) slides(b, o int, at []float64, w way) (first hit, ok bool) {
	var buffer [16]span
	one, other := &s.groups[b], &s.groups[o]
	before := ahead
	in := func(a, b reach) span { return s.within(meeting(buffer[:0], a, b), at, w, tolerance, before) }
	if s.misses(one.hull, other.hull, at, w) || in(one.hull, other.hull).empty() {
		return first, false
	}
	for i, a := range one.solids {
		if s.misses(a, other.hull, at, w) {
			continue
		}
		for j, b := range other.solids {
			if s.misses(a, b, at, w) {
				continue
			}
			if on := in(a, b); !on.empty() {
				first, ok, before.hi = hit{i, j, on.lo}, true, on.lo
			}
		}
	}
	return first, ok
}

// misses reports whether a, displaced to at and sliding along w, stays beside b along an axis that
// it does not move along. It is the first that is looked at of most bodies.
func (s *scene) misses(a, b reach, at []float64, w way) bool {
	for j, dot := range s.dots[w.axis] {
		if dot == 0 && (b[j].lo-a[j].hi+tolerance-at[j] >= 0 || b[j].hi-a[j].lo-tolerance-at[j] <= 0) {
			return true
		}
	}
	return false
}
