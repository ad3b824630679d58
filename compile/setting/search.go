package setting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// found is what a search comes to.
type found struct {
	path   []leg
	ok     bool
	hits   []int // in vain: what has been in the way; never nil
	gaveUp bool
}

// search looks for a way out for body b, past what stands. A slide ends at faces, so the fewer
// faces a search knows, the fewer places it looks at. One in vain is made again with more of what
// it ran into: the faces of hulls; when it knows these, the solids in them; then their
// faces. What it never ran into might as well not be there. Lines of faces that are all but
// parallel meet miles away: where a way leads to such a place, one among those that the room has
// room for is looked for, and taken if there is one.
func (s *scene) search(b int, standing []int) found {
	out := s.flood(b, standing).search()
	if out.ok && s.strays(out.path) {
		f := s.flood(b, standing)
		f.wide = s.wide
		if nearer := f.search(); nearer.ok {
			return nearer
		}
	}
	return out
}

// strays reports whether slides of a way end further off than the room is wide.
func (s *scene) strays(path []leg) bool {
	var at [3]float64
	for _, l := range path {
		if at = s.moved(at, l.way, l.by); !l.endless && math.Hypot(at[0], at[1]) > s.wide {
			return true
		}
	}
	return false
}

func (f *flood) search() found {
	for {
		out := f.run()
		if out.ok || out.gaveUp || !f.learn() {
			return out
		}
	}
}

// engaged reports whether the hulls are in one another.
func (s *scene) engaged(b, o int) bool {
	for _, side := range meeting(nil, s.groups[b].hull, s.groups[o].hull) {
		if side.lo+tolerance >= 0 || side.hi-tolerance <= 0 {
			return false
		}
	}
	return true
}

// obstacle is where the searched body cannot be, because of a group.
type obstacle struct {
	at    reach
	group int
	turns [2]int // of the two that meet: what its faces are parallel to
	hull  bool   // there is more to know: solids
	faces bool   // slides end at its faces
	hit   bool   // the search ran into it
}

// flood is a search among given obstacles. Places are displacements of the body.
type flood struct {
	*scene
	body      int
	standing  []int
	obstacles []obstacle
	goal      reach             // nil where it is out, and there is no door
	lines     [][]float64       // along each axis, where faces of obstacles are
	seen      map[[3]int64]bool // places to the nanometre; lookup only
	places    []place
	wide      float64 // places no further than that are looked at
}

// place is where a slide has ended, and the slide: from which place, along which way.
type place struct {
	at   [3]float64
	from int
	leg  leg
}

// hair is what floats are taken to be off by, in nanometres.
const hair = 0.25

// near is how far apart places may be that count as one.
const near = 2.0

func (s *scene) flood(b int, standing []int) *flood {
	f := &flood{scene: s, body: b, standing: standing, wide: math.Inf(1)}
	for _, o := range standing {
		if s.engaged(b, o) {
			f.obstacles = append(f.obstacles, s.obstacles(b, o)...)
			continue
		}
		one, other := &s.groups[b], &s.groups[o]
		f.obstacles = append(f.obstacles, obstacle{
			at: meeting(nil, one.hull, other.hull), group: o, turns: [2]int{one.turn, other.turn},
			hull: len(one.solids) > 1 || len(other.solids) > 1,
		})
	}
	if s.door != nil {
		f.goal = s.landing(b)
	}
	return f
}

// learn makes more known of what a search in vain ran into; it reports whether there is more.
func (f *flood) learn() (more bool) {
	for i := range f.obstacles {
		if o := &f.obstacles[i]; o.hit && !o.faces {
			o.faces, more = true, true
		}
	}
	if more {
		return true
	}
	var out []obstacle
	for _, o := range f.obstacles {
		if o.hit && o.hull {
			out = append(out, f.scene.obstacles(f.body, o.group)...)
			more = true
		} else {
			out = append(out, o)
		}
	}
	f.obstacles = out
	return more
}

// obstacles are those of each solid against each; one that lies in another is none.
func (s *scene) obstacles(b, o int) []obstacle {
	var all []obstacle
	one, other := &s.groups[b], &s.groups[o]
	buffer := make(reach, 0, len(one.solids)*len(other.solids)*len(s.axes))
	for i, a := range one.solids {
		for j, b := range other.solids {
			from := len(buffer)
			buffer = buffer[:from+len(s.axes)]
			all = append(all, obstacle{at: meeting(buffer[from:from:len(buffer)], a, b), group: o, turns: [2]int{one.turned[i], other.turned[j]}})
		}
	}
	return uncovered(all)
}

// across reports whether an obstacle has faces across an axis, the last of which is z.
func (o *obstacle) across(axis, z int) bool {
	turn := axis / 2
	return axis == z || o.turns[0] == turn || o.turns[1] == turn || o.turns[0] == anyhow || o.turns[1] == anyhow
}

func (r reach) holds(o reach) bool {
	for j := range r {
		if o[j].lo < r[j].lo || o[j].hi > r[j].hi {
			return false
		}
	}
	return true
}

// facesAlong are the places along an axis of the start and all faces that are known, rising.
func (f *flood) facesAlong(axis int) []float64 {
	out := []float64{0}
	for _, o := range f.obstacles {
		if o.faces && o.across(axis, len(f.axes)-1) {
			out = append(out, o.at[axis].lo, o.at[axis].hi)
		}
	}
	if f.goal != nil {
		out = append(out, f.goal[axis].lo, f.goal[axis].hi)
	}
	slices.Sort(out)
	out = slices.CompactFunc(out, func(b, a float64) bool { return b-a < hair })
	return slices.DeleteFunc(out, func(x float64) bool { return math.Abs(x) > f.far })
}

// run looks at places in the order of how many slides they take.
func (f *flood) run() found {
	f.lines = f.lines[:0]
	for j := range f.axes {
		f.lines = append(f.lines, f.facesAlong(j))
	}
	f.seen, f.places = make(map[[3]int64]bool), nil
	f.add(place{from: -1, leg: leg{way: way{axis: -1}}})
	free := make([]float64, len(f.groups[f.body].ways))
	var at []float64
	for i := 0; i < len(f.places); i++ {
		if i == Most {
			return found{hits: f.hits(), gaveUp: true}
		}
		p := f.places[i]
		at = f.project(p.at, at)
		ways := f.edges(p, at)
		for k, w := range ways {
			free[k] = f.free(at, w)
			if last, ok := f.arrives(at, w, free[k]); ok {
				return found{path: f.path(i, last), ok: true}
			}
		}
		for k, w := range ways {
			for _, by := range f.stops(at, w, free[k]) {
				f.add(place{f.moved(p.at, w, by), i, leg{w, by, false}})
			}
		}
	}
	return found{hits: f.hits()}
}

// edges are the ways on from a place, at along each axis: those along faces, but for the line that
// it was come along, of which all has been reached.
func (f *flood) edges(p place, at []float64) []way {
	var out []way
	for _, w := range f.groups[f.body].ways {
		if w.axis != p.leg.way.axis && f.onLine(at, w) {
			out = append(out, w)
		}
	}
	return out
}

// hits are the groups that have been run into, each once.
func (f *flood) hits() []int {
	out := []int{}
	for _, o := range f.obstacles {
		if o.hit && (len(out) == 0 || out[len(out)-1] != o.group) {
			out = append(out, o.group)
		}
	}
	return out
}

func (f *flood) add(p place) {
	key := [3]int64{int64(rounded(p.at[0])), int64(rounded(p.at[1])), int64(rounded(p.at[2]))}
	if !f.seen[key] && math.Hypot(p.at[0], p.at[1]) <= f.wide {
		f.seen[key] = true
		f.places = append(f.places, p)
	}
}

// free is how far the body can slide from a place. It marks what stops it.
func (f *flood) free(at []float64, w way) float64 {
	by, hit := math.Inf(1), -1
	for i := range f.obstacles {
		if on := f.within(f.obstacles[i].at, at, w, tolerance, span{0, by}); !on.empty() {
			by, hit = on.lo, i
		}
	}
	if z := len(at) - 1; f.bounded(w) && f.lift-at[z] < by {
		return f.lift - at[z]
	}
	if hit >= 0 {
		f.obstacles[hit].hit = true
	}
	return by
}

// onLine reports whether a slide from a place goes along a face.
func (f *flood) onLine(at []float64, w way) bool {
	if w.dir.Axis == geom.Z {
		return true
	}
	across := w.axis ^ 1
	i, _ := slices.BinarySearch(f.lines[across], at[across]-near)
	return i < len(f.lines[across]) && f.lines[across][i] <= at[across]+near
}

// arrives returns the last leg, where a slide from a place leads out or to the door.
func (f *flood) arrives(at []float64, w way, free float64) (leg, bool) {
	if f.goal == nil {
		if !math.IsInf(free, 1) {
			return leg{}, false
		}
		return leg{w, f.clear(f.body, f.standing, at, w), true}, true
	}
	on := f.within(f.goal, at, w, -hair, span{-hair, min(free, f.far) + hair})
	if on.empty() {
		return leg{}, false
	}
	return leg{w, max(0, on.lo+hair), false}, true
}

// stops are the places where a slide passes a face, nearest first; those at the goal come
// before all others.
func (f *flood) stops(at []float64, w way, free float64) []float64 {
	var first, out []float64
	for j, line := range f.lines {
		v := float64(w.sign * f.dots[w.axis][j])
		if v == 0 {
			continue
		}
		for _, x := range line {
			by := (x - at[j]) / v
			if by <= hair || by > min(free, f.far)+hair {
				continue
			}
			if f.goal != nil && (x == f.goal[j].lo || x == f.goal[j].hi) {
				first = append(first, by)
			}
			out = append(out, by)
		}
	}
	slices.Sort(out)
	return append(first, out...)
}

// path is the way by a place and on along the last leg.
func (f *flood) path(i int, last leg) []leg {
	out := []leg{last}
	for ; f.places[i].from >= 0; i = f.places[i].from {
		out = append(out, f.places[i].leg)
	}
	slices.Reverse(out)
	return out
}

// landing is where a body, displaced, is in by the door.
func (s *scene) landing(b int) reach {
	out := s.unbounded()
	door, hull := s.reach(Solid{Frame: s.door.Frame, Box: s.door.box()}), s.groups[b].hull
	u, v := s.direction(s.door.Frame.Turn, along), s.direction(s.door.Frame.Turn, inward)
	own, opening := hull[u.axis], door[u.axis]
	mid := (own.lo + own.hi) / 2
	out[u.axis] = span{opening.lo - mid, opening.hi - mid}
	if own.hi-own.lo > opening.hi-opening.lo {
		out[u.axis] = span{min(opening.lo-mid, opening.hi-own.hi), max(opening.hi-mid, opening.lo-own.lo)}
	}
	near := hull[v.axis].lo
	if v.sign < 0 {
		near = hull[v.axis].hi
	}
	out[v.axis] = span{door[v.axis].lo - near, door[v.axis].hi - near}
	return out
}

// unbounded reaches anywhere.
func (s *scene) unbounded() reach {
	out := make(reach, len(s.axes))
	for j := range out {
		out[j] = anywhere
	}
	return out
}
