package reuse

import (
	"slices"
	"sort"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// lacks reports whether all of a cut that lies in a part of the solid's body is lacking
// there too; what is no wider than tol does not count, and off is how wide it is. The cut at
// guess is looked at first.
func (s *solid) lacks(c *cut, in geom.Rect, guess int, tol Length) (off Length, ok bool) {
	a := *c
	if a.r == 0 {
		a.core = a.core.Intersect(in)
	}
	a.depth = a.depth.Intersect(geom.Span{Hi: s.thick})
	if thin := min(a.bounds().X.Size(), a.bounds().Y.Size(), a.depth.Size()); thin <= tol {
		return max(thin, 0), true
	}
	best := tol + 1
	if guess < len(s.cuts) && a.beyond(&s.cuts[guess], best) <= 0 {
		return 0, true
	}
	for i := range s.cuts {
		if best = a.beyond(&s.cuts[i], best); best <= 0 {
			return 0, true
		}
	}
	if best <= tol {
		return best, true
	}
	if !s.lacksInParts(&a, in, tol) {
		return 0, false
	}
	return Length(sort.Search(int(tol), func(off int) bool { return s.lacksInParts(&a, in, Length(off)) })), true
}

// harmless is how much deeper than wanted a blind bore may be.
const harmless = 16 * length.Millimetre / 10

// takes reports whether a bore is one of the solid's, only a little deeper: it comes
// through neither to the other face nor into another cut.
func (s *solid) takes(c *cut, tol Length) bool {
	if c.kind != bore || c.depth.Contains(geom.Span{Hi: s.thick}) {
		return false
	}
	for i := range s.cuts {
		v := &s.cuts[i]
		if v.kind != bore || c.beyond(v, harmless+1) > harmless || c.out(v, tol+1) > tol {
			continue
		}
		deeper := geom.Span{Lo: v.depth.Hi, Hi: c.depth.Hi}
		if c.depth.Hi == far {
			deeper = geom.Span{Lo: c.depth.Lo, Hi: v.depth.Lo}
		}
		return !slices.ContainsFunc(s.cuts, func(o cut) bool {
			return o.kind != outside && o.depth.Overlaps(deeper) && c.overlaps(o.shape, 0)
		})
	}
	return false
}

// beyond is how far a cut reaches out of another, in plan or in depth, or most where that
// is less.
func (c *cut) beyond(of *cut, most Length) Length {
	deep := max(of.depth.Lo-c.depth.Lo, c.depth.Hi-of.depth.Hi)
	if deep >= most {
		return most
	}
	return max(deep, c.out(of, most))
}

// out is how far a cut reaches out of another in plan, or most where that is less. Into what a round corner takes
// off fits only what an equal corner takes off that is no rounder.
func (c *cut) out(of *cut, most Length) Length {
	if of.kind == sink && c.kind != sink {
		return most // a cone is less than its cylinder
	}
	if of.kind != rounded {
		return c.shape.beyond(of.shape, most)
	}
	if c.kind != rounded || c.index != of.index {
		return most
	}
	p, q := c.tip(), of.tip()
	return min(most, max(length.Apart(p.X, q.X), length.Apart(p.Y, q.Y), c.core.X.Size()-of.core.X.Size()))
}

// tip is the corner that a round corner takes off.
func (c *cut) tip() geom.Point {
	p := geom.Point{X: c.core.X.Lo, Y: c.core.Y.Lo}
	if c.index&1 != 0 {
		p.X = c.core.X.Hi
	}
	if c.index&2 != 0 {
		p.Y = c.core.Y.Hi
	}
	return p
}

// lacksInParts is lacks for what only several cuts together take up. Of a round one only
// rectangles inside it count, and bores do not: the answer may be no where it is yes.
func (s *solid) lacksInParts(a *cut, in geom.Rect, tol Length) bool {
	// What is wider than tol is what is left of the cut made smaller by half of it, less
	// all cuts made larger by as much.
	half := tol / 2
	small := *a
	if a.r > 0 {
		small.r -= half
	} else {
		small.core.X, small.core.Y = narrowed(a.core.X, tol), narrowed(a.core.Y, tol)
	}
	small.depth = narrowed(a.depth, tol)
	var met []cut
	depths := []Length{small.depth.Lo, small.depth.Hi}
	for i := range s.cuts {
		v := &s.cuts[i]
		if v.kind == rounded || v.kind == bore || v.kind == sink || !a.overlaps(v.shape, tol) {
			continue
		}
		depth := v.depth.Grow(half)
		if !depth.Overlaps(small.depth) {
			continue
		}
		depths = append(depths, min(max(depth.Lo, small.depth.Lo), small.depth.Hi), min(depth.Hi, small.depth.Hi))
		for _, r := range v.inside() {
			met = append(met, cut{shape: shape{core: r.Grow(half)}, depth: depth})
		}
	}
	if len(met) == 0 {
		return false
	}
	depths = distinct(depths)
	for i := range len(depths) - 1 {
		layer := geom.Span{Lo: depths[i], Hi: depths[i+1]}
		var here []geom.Rect
		for _, v := range met {
			if v.depth.Contains(layer) {
				here = append(here, v.core)
			}
		}
		if !covered(small.shape, in, here) {
			return false
		}
	}
	return true
}

// narrowed is a span made smaller by so much in all.
func narrowed(s geom.Span, by Length) geom.Span {
	return geom.Span{Lo: s.Lo + by/2, Hi: s.Hi - (by - by/2)}
}

// inside lists rectangles within a shape.
func (s shape) inside() []geom.Rect {
	if s.r == 0 {
		return []geom.Rect{s.core}
	}
	const diagonal = 0.7071
	return []geom.Rect{
		{X: s.core.X.Grow(s.r), Y: s.core.Y}, {X: s.core.X, Y: s.core.Y.Grow(s.r)},
		s.core.Grow(Length(float64(s.r) * diagonal)),
	}
}

// covered reports whether rectangles cover all of a shape that lies in another.
func covered(a shape, in geom.Rect, rects []geom.Rect) bool {
	b := a.bounds().Intersect(in)
	xs, ys := []Length{b.X.Lo, b.X.Hi}, []Length{b.Y.Lo, b.Y.Hi}
	for _, r := range rects {
		r = r.Intersect(b)
		xs, ys = append(xs, r.X.Lo, r.X.Hi), append(ys, r.Y.Lo, r.Y.Hi)
	}
	xs, ys = distinct(xs), distinct(ys)
	for i := range len(xs) - 1 {
		for j := range len(ys) - 1 {
			cell := geom.R(xs[i], ys[j], xs[i+1], ys[j+1])
			if !a.overlaps(shape{core: cell}, 0) {
				continue
			}
			if !slices.ContainsFunc(rects, func(r geom.Rect) bool { return r.Contains(cell) }) {
				return false
			}
		}
	}
	return true
}
