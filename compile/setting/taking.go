package setting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// leg is a slide on the way out; it has no end where nothing is in its way.
type leg struct {
	way     way
	by      float64
	endless bool
}

// removal is a body with its way out.
type removal struct {
	body int
	path []leg
}

// taking is a room being taken apart.
type taking struct {
	*scene
	left  []int // bodies that have not left, in the order of the description
	there []int // all that stood when it began
	gone  []bool
	// passed counts, for each body and way, those of there that are out of its way: what
	// is does not come back, so none is looked at twice.
	passed  [][]int
	clearOf []int   // for each body: how many of there are out of its way alone, likewise
	waiting []int   // for each body: how many that are left must be set after it
	stopped [][]int // for each body: what its last search in vain ran into; nil before
	gaveUp  bool
	shut    bool // one is shut in by what stands fast: there is no order
	out     []removal
}

func (s *scene) taking(bodies, standing []int) *taking {
	n := len(s.groups)
	t := &taking{
		scene: s, left: slices.Clone(bodies), there: slices.Concat(standing, bodies),
		gone: make([]bool, n), passed: make([][]int, n), clearOf: make([]int, n), waiting: make([]int, n), stopped: make([][]int, n),
	}
	for _, b := range bodies {
		for _, under := range s.groups[b].on {
			t.waiting[under]++
		}
	}
	return t
}

// run takes out whatever can leave, and returns what cannot or, where one is shut in, has not.
func (t *taking) run() (stuck []int) {
	for len(t.left) > 0 && (t.next(t.straight) || t.next(t.uncrossed) || t.next(t.searched)) {
	}
	return t.left
}

// runStrictly does so in the order of the description, as far as any way is left.
func (t *taking) runStrictly() (stuck []int) {
	for len(t.left) > 0 && t.next(t.anyway) {
	}
	return t.left
}

// anyway returns a way in which b leaves, the plainer the better.
func (t *taking) anyway(b int) ([]leg, bool) {
	for _, leave := range []func(int) ([]leg, bool){t.straight, t.uncrossed, t.searched} {
		if path, ok := leave(b); ok {
			return path, true
		}
	}
	return nil, false
}

// next takes out the last body of the description that has a way.
func (t *taking) next(leave func(b int) ([]leg, bool)) bool {
	for i, b := range slices.Backward(t.left) {
		if t.waiting[b] > 0 {
			continue
		}
		if path, ok := leave(b); ok {
			t.left = slices.Delete(t.left, i, i+1)
			t.gone[b] = true
			for _, under := range t.groups[b].on {
				t.waiting[under]--
			}
			t.out = append(t.out, removal{b, path})
			return true
		}
	}
	return false
}

// straight returns the first way in which b leaves by one slide.
func (t *taking) straight(b int) ([]leg, bool) {
	if t.door != nil {
		return nil, false
	}
	ways := t.groups[b].ways
	if t.passed[b] == nil {
		t.passed[b] = make([]int, len(ways))
	}
	start := make([]float64, len(t.axes))
	for i, w := range ways {
		if t.bounded(w) {
			continue
		}
		n := t.passed[b][i]
		for n < len(t.there) && !t.stops(t.there[n], b, start, w) {
			n++
		}
		t.passed[b][i] = n
		if n == len(t.there) {
			return []leg{{w, t.clear(b, t.standing(b), start, w), true}}, true
		}
	}
	return nil, false
}

func (t *taking) stops(o, b int, at []float64, w way) bool {
	if o == b || t.gone[o] {
		return false
	}
	_, hit := t.slides(b, o, at, w)
	return hit
}

// standing is all that b has to get past.
func (t *taking) standing(b int) []int {
	var out []int
	for _, o := range t.there {
		if o != b && !t.gone[o] {
			out = append(out, o)
		}
	}
	return out
}

// uncrossed returns the way in which b leaves what stands fast, if nothing else is in it.
func (t *taking) uncrossed(b int) ([]leg, bool) {
	if t.shut {
		return nil, false
	}
	alone := t.alone(b)
	if !alone.ok {
		t.shut, t.gaveUp = true, alone.gaveUp
		return nil, false
	}
	n := t.clearOf[b]
	for n < len(t.there) && !t.inTheWay(t.there[n], removal{b, alone.path}) {
		n++
	}
	t.clearOf[b] = n
	return alone.path, n == len(t.there)
}

func (t *taking) inTheWay(o int, r removal) bool {
	return o != r.body && !t.gone[o] && t.crosses(r, o)
}

// searched returns a way in which b leaves past all that is left. It does not look again while
// all that has stopped it is still there.
func (t *taking) searched(b int) ([]leg, bool) {
	if t.shut || t.stopped[b] != nil && !slices.ContainsFunc(t.stopped[b], func(o int) bool { return t.gone[o] }) {
		return nil, false
	}
	found := t.search(b, t.standing(b))
	t.stopped[b] = found.hits
	t.gaveUp = t.gaveUp || found.gaveUp
	return found.path, found.ok
}

// alone is the search for b among what stands and does not leave, made once.
func (s *scene) alone(b int) *found {
	if s.lone[b] == nil {
		_, standing := s.bodies()
		found := s.search(b, slices.DeleteFunc(standing, func(o int) bool { return o == b }))
		s.lone[b] = &found
	}
	return s.lone[b]
}

// bounded reports whether no slide along w leads out, however free it is.
func (s *scene) bounded(w way) bool {
	return w.dir.Axis == geom.Z && !w.dir.Neg && !math.IsInf(s.lift, 1)
}

// clear is how far b, displaced to at, must slide along w, where nothing stops it, until
// it has gone its own length, passed all bodies that it touches and left all that reaches
// into its hull.
func (s *scene) clear(b int, standing []int, at []float64, w way) float64 {
	own := s.groups[b].hull[w.axis]
	by := max(0, own.hi-own.lo)
	var buffer [16]span
	for _, o := range standing {
		inset := tolerance
		if s.groups[o].body {
			inset = -tolerance
		}
		on := s.within(meeting(buffer[:0], s.groups[b].hull, s.groups[o].hull), at, w, inset, ahead)
		if !on.empty() {
			by = max(by, on.hi+inset)
		}
	}
	return by
}

// crosses reports whether o, in its place, is in the way of a body that leaves.
func (s *scene) crosses(r removal, o int) bool {
	var place [3]float64
	at := make([]float64, len(s.axes))
	for _, l := range r.path {
		at = s.project(place, at)
		if first, hit := s.slides(r.body, o, at, l.way); hit && (l.endless || first.by < l.by-hair) {
			return true
		}
		place = s.moved(place, l.way, l.by)
	}
	return false
}

// moved is a place further along a way.
func (s *scene) moved(p [3]float64, w way, by float64) [3]float64 {
	k := float64(w.sign * by)
	for i, a := range s.axes[w.axis] {
		p[i] += float64(k * a)
	}
	return p
}
