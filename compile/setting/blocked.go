package setting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// Blocked tells why there is no order.
type Blocked struct {
	// Bodies are the fewest found of which none can leave while the others and all that stands
	// are there: one that is shut in by what stands; a pair if some pair does; else a set of
	// which each is needed for it.
	Bodies []string
	// Hits are what each of them meets first in each direction, one slide from its place.
	Hits []Hit
	// Out is set where the first of them, past the others, comes out of its place along its own frame, clear of
	// all that it fills there, but no further: turned there, it might.
	Out bool
	// GaveUp is set where a search looked at as many places as it may: then there may be a way.
	GaveUp bool
}

// Hit is what stops a slide out. What lies in something from the start gets nowhere: there
// is no order, whichever way it slides.
type Hit struct {
	Body, Solid string // what slides, and its solid
	Slide       Slide  // By is how far it gets
	By, Other   string // what stops it, and its solid; By is the name of what is fixed, too
	Overlap     Length // how far Solid would have to lie aside, across the slide, to pass Other
}

// blocked explains why the stuck bodies are.
func (s *scene) blocked(stuck, standing []int) *Blocked {
	out := &Blocked{}
	set := s.least(stuck, standing)
	t := s.taking(set, standing)
	t.run()
	out.GaveUp = t.gaveUp
	out.Out = s.comesOut(set[0], t.standing(set[0]))
	for _, b := range set {
		out.Bodies = append(out.Bodies, s.groups[b].name)
		for _, w := range s.groups[b].ways {
			if h, ok := s.firstHit(b, t.standing(b), w); ok {
				out.Hits = append(out.Hits, h)
			}
		}
	}
	return out
}

// comesOut reports whether a body comes level by as much as it is long or deep.
func (s *scene) comesOut(b int, standing []int) bool {
	g := &s.groups[b]
	for _, w := range g.ways {
		if w.dir.Axis == geom.Z || w.turn != g.ways[0].turn {
			continue
		}
		f := s.flood(b, standing)
		f.goal = s.unbounded()
		own := g.hull[w.axis]
		f.goal[w.axis] = span{own.hi - own.lo, math.Inf(1)}.times(w.sign)
		if f.search().ok {
			return true
		}
	}
	return false
}

// least returns a small part of the stuck bodies that is stuck by itself.
func (s *scene) least(stuck, standing []int) []int {
	part := func(bodies ...int) []int { return s.taking(bodies, standing).run() }
	for _, b := range stuck {
		if set := part(b); len(set) > 0 {
			return set
		}
	}
	for i, a := range stuck {
		for _, b := range stuck[:i] {
			if set := part(b, a); len(set) > 0 {
				return set
			}
		}
	}
	for i := 0; i < len(stuck); {
		if set := part(slices.Delete(slices.Clone(stuck), i, i+1)...); len(set) > 0 {
			stuck, i = set, 0
		} else {
			i++
		}
	}
	return stuck
}

// first returns which group stops b first on its way from its place, and how.
func (s *scene) first(b int, standing []int, w way) (by int, first hit, ok bool) {
	at := make([]float64, len(s.axes))
	for _, o := range standing {
		if h, hits := s.slides(b, o, at, w); hits && (!ok || h.by < first.by) {
			by, first, ok = o, h, true
		}
	}
	return by, first, ok
}

func (s *scene) firstHit(b int, standing []int, w way) (out Hit, ok bool) {
	by, first, ok := s.first(b, standing, w)
	if !ok {
		return out, false
	}
	one, other := &s.groups[b], &s.groups[by]
	met := meeting(nil, one.solids[first.solid], other.solids[first.other])
	across := math.Inf(1)
	for j, side := range met {
		if s.dots[w.axis][j] == 0 {
			across = min(across, -side.lo, side.hi)
		}
	}
	till := s.within(met, make([]float64, len(met)), w, 0, anywhere).lo
	return Hit{
		Body: one.name, Solid: one.parts[first.solid],
		Slide: Slide{w.turn, w.dir, max(0, rounded(till))},
		By:    other.name, Other: other.parts[first.other],
		Overlap: rounded(across),
	}, true
}
