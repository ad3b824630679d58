package paint

import "slices"

// split cuts one solid of each ring along a face of its neighbour in it. It reports whether any
// could be; a solid is cut once in a round.
func split(solids *[]Solid, rings [][]int) bool {
	all := slices.Clone(*solids)
	cut := make([]bool, len(all))
	done := false
	for _, ring := range rings {
		for k, i := range ring {
			next := ring[(k+1)%len(ring)]
			if cut[i] || cut[next] {
				break
			}
			if cutBy(&all, i, next) || cutBy(&all, next, i) {
				cut[i], cut[next], done = true, true, true
				break
			}
		}
	}
	*solids = all
	return done
}

// cutBy cuts a solid where the plane of a face of another goes through it.
func cutBy(all *[]Solid, i, by int) bool {
	a, b := &(*all)[i], &(*all)[by]
	for _, n := range append([]Vec{up}, b.axes...) {
		lo, hi := a.extent(n)
		first, last := b.extent(n)
		for _, at := range [...]float64{first, last} {
			if lo+touch < at && at < hi-touch {
				far, near := a.divided(n, at)
				(*all)[i] = far
				*all = append(*all, near)
				return true
			}
		}
	}
	return false
}

// divided parts a solid by a plane, level or upright.
func (s *Solid) divided(n Vec, at float64) (below, beyond Solid) {
	below, beyond = *s, *s
	back := n.Scale(-1)
	below.Faces, beyond.Faces = nil, nil
	for _, f := range s.Faces {
		for _, side := range [...]struct {
			of *Solid
			n  Vec
			at float64
		}{{&below, back, -at}, {&beyond, n, at}} {
			if ring := clip(f.Ring, side.n, side.at); len(ring) > 2 {
				side.of.Faces = append(side.of.Faces, Face{ring, f.Shade, f.Cut})
			}
		}
	}
	if n.Z != 0 {
		below.hi, beyond.lo = at, at
		return below, beyond
	}
	below.plan, beyond.plan = clip(s.plan, back, -at), clip(s.plan, n, at)
	below.axes = append(slices.Clone(s.axes), n)
	beyond.axes = below.axes
	return below, beyond
}

// clip is what of a ring lies beyond a plane.
func clip(ring []Vec, n Vec, at float64) (left []Vec) {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		from, to := p.dot(n)-at, q.dot(n)-at
		if from >= 0 {
			left = append(left, p)
		}
		if from > 0 && to < 0 || from < 0 && to > 0 {
			left = append(left, p.Add(q.Sub(p).Scale(from/(from-to))))
		}
	}
	return left
}
