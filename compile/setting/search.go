package setting

import (
	"math"
	"slices"
)

// found is what a search comes to.
type found struct {
	path   []leg
	ok     bool
	hits   []int // in vain: what has been in the way; never nil
	gaveUp bool
}

// detail is how much of a group a search knows.
type detail int

const (
	hull  detail = iota // what it may not go into
	faces               // where its hull's faces are, too
	solid               // each solid, with its faces
)

// search looks for a way out for body b, past what stands. A slide ends at faces, so the fewer
// a search knows the faster it is; but one in vain has known all that it ran
// into, or is made again with more of that. What it never ran into might as well not
// be there.
func (s *scene) search(b int, standing []int) found {
	known := make([]detail, len(s.groups))
	for _, o := range standing {
		if s.engaged(b, o) {
			known[o] = s.all(b, o)
		}
	}
	for {
		out, more := s.flood(b, standing, known).run(), false
		for _, o := range out.hits {
			if known[o] < s.all(b, o) {
				known[o]++
				more = true
			}
		}
		if out.ok || !more {
			return out
		}
	}
}

// all is the most that there is to know of a group: solids only if there is more than one.
func (s *scene) all(b, o int) detail {
	if len(s.groups[b].solids) > 1 || len(s.groups[o].solids) > 1 {
		return solid
	}
	return faces
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
	faces bool
}

// flood is a search among given obstacles. Places are displacements of the body.
type flood struct {
	*scene
	body      int
	standing  []int
	obstacles []obstacle
	goal      reach             // nil where there is no door
	lines     [][]float64       // along each axis, where faces of obstacles are
	seen      map[[3]int64]bool // places to the nanometre; lookup only
	places    []place
}

// place is where a slide has ended, and the slide: from which place, along which way.
type place struct {
	at   [3]float64
	from int
	leg  leg
}

// hair is what floats are taken to be off by, in nanometres.
const hair = 0.25

func (s *scene) flood(b int, standing []int, known []detail) *flood {
	f := &flood{scene: s, body: b, standing: standing, seen: make(map[[3]int64]bool)}
	for _, o := range standing {
		if known[o] == solid {
			f.obstacles = append(f.obstacles, s.obstacles(b, o)...)
		} else {
			f.obstacles = append(f.obstacles, obstacle{meeting(nil, s.groups[b].hull, s.groups[o].hull), o, known[o] == faces})
		}
	}
	if s.door != nil {
		f.goal = s.landing(b)
	}
	f.lines = make([][]float64, len(s.axes))
	for j := range f.lines {
		f.lines[j] = f.faces(j)
	}
	return f
}

// obstacles are those of each solid against each; one that lies in another is none.
func (s *scene) obstacles(b, o int) []obstacle {
	var all []reach
	for _, one := range s.groups[b].solids {
		for _, other := range s.groups[o].solids {
			all = append(all, meeting(nil, one, other))
		}
	}
	var out []obstacle
	for i, r := range all {
		hidden := false
		for j, by := range all {
			hidden = hidden || i != j && by.holds(r) && (i > j || !r.holds(by))
		}
		if !hidden {
			out = append(out, obstacle{r, o, true})
		}
	}
	return out
}

func (r reach) holds(o reach) bool {
	for j := range r {
		if o[j].lo < r[j].lo || o[j].hi > r[j].hi {
			return false
		}
	}
	return true
}

// faces are the places along an axis of the start and all faces that are known, rising.
func (f *flood) faces(axis int) []float64 {
	out := []float64{0}
	for _, o := range f.obstacles {
		if o.faces {
			out = append(out, o.at[axis].lo, o.at[axis].hi)
		}
	}
	if f.goal != nil {
		out = append(out, f.goal[axis].lo, f.goal[axis].hi)
	}
	if axis == len(f.axes)-1 {
		out = append(out, f.lift)
	}
	slices.Sort(out)
	out = slices.CompactFunc(out, func(b, a float64) bool { return b-a < hair })
	return slices.DeleteFunc(out, func(x float64) bool { return math.IsInf(x, 0) })
}

// run looks at places in the order of how many slides they take.
func (f *flood) run() found {
	ways := f.groups[f.body].ways
	free := make([]float64, len(ways))
	hits := make([]bool, len(f.groups))
	var at []float64
	f.add(place{from: -1, leg: leg{way: way{axis: -1}}})
	for i := 0; i < len(f.places); i++ {
		if i == Most {
			return found{hits: f.hits(hits), gaveUp: true}
		}
		p := f.places[i]
		at = f.project(p.at, at)
		for k, w := range ways {
			var hit int
			if free[k], hit = f.free(at, w); hit >= 0 {
				hits[hit] = true
			}
			if last, ok := f.arrives(at, w, free[k]); ok {
				return found{path: f.path(i, last), ok: true}
			}
		}
		for k, w := range ways {
			if w.axis == p.leg.way.axis {
				continue // all along this line has been reached with p
			}
			for _, by := range f.stops(at, w, free[k]) {
				f.add(place{f.moved(p.at, w, by), i, leg{w, by, false}})
			}
		}
	}
	return found{hits: f.hits(hits)}
}

func (f *flood) hits(hit []bool) []int {
	out := []int{}
	for _, o := range f.standing {
		if hit[o] {
			out = append(out, o)
		}
	}
	return out
}

func (f *flood) add(p place) {
	key := [3]int64{int64(rounded(p.at[0])), int64(rounded(p.at[1])), int64(rounded(p.at[2]))}
	if !f.seen[key] {
		f.seen[key] = true
		f.places = append(f.places, p)
	}
}

// free is how far the body can slide from a place, and which group stops it, -1 for none.
func (f *flood) free(at []float64, w way) (by float64, hit int) {
	by, hit = math.Inf(1), -1
	for _, o := range f.obstacles {
		on := f.within(o.at, at, w, tolerance)
		if !on.empty() && on.hi > 0 && on.lo < by {
			by, hit = max(0, on.lo), o.group
		}
	}
	if z := len(at) - 1; f.bounded(w) && f.lift-at[z] < by {
		by, hit = f.lift-at[z], -1
	}
	return by, hit
}

// arrives returns the last leg, where a slide from a place leads out or to the door.
func (f *flood) arrives(at []float64, w way, free float64) (leg, bool) {
	if f.goal == nil {
		if !math.IsInf(free, 1) {
			return leg{}, false
		}
		return leg{w, f.clear(f.body, f.standing, at, w), true}, true
	}
	on := f.within(f.goal, at, w, -hair)
	if on.empty() || on.hi < 0 || on.lo > free {
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
			if by <= hair || by > free+hair {
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
	out := make(reach, len(s.axes))
	for j := range out {
		out[j] = span{math.Inf(-1), math.Inf(1)}
	}
	door, hull := s.reach(Solid{Frame: s.door.Frame, Box: s.door.box()}), s.groups[b].hull
	u, v := s.direction(s.door.Frame.Turn, along), s.direction(s.door.Frame.Turn, inward)
	mid := (hull[u.axis].lo + hull[u.axis].hi) / 2
	out[u.axis] = span{door[u.axis].lo - mid, door[u.axis].hi - mid}
	if v.sign > 0 {
		out[v.axis].hi = door[v.axis].hi - hull[v.axis].lo
	} else {
		out[v.axis].lo = door[v.axis].lo - hull[v.axis].hi
	}
	return out
}
