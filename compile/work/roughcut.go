package work

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// halves are what a cut leaves on its near and its far side.
func (c *carrier) halves(of geom.Rect, cut model.RoughCut) (near, far geom.Rect) {
	near, far = of, of
	if cut.Along {
		near.Y.Hi, far.Y.Lo = cut.At, cut.At+c.kerf
	} else {
		near.X.Hi, far.X.Lo = cut.At, cut.At+c.kerf
	}
	return near, far
}

// parted tells which parts lie in the near half.
func parted(near geom.Rect, parts []geom.Rect) (here, there []geom.Rect) {
	for _, p := range parts {
		if near.Contains(p) {
			here = append(here, p)
		} else {
			there = append(there, p)
		}
	}
	return here, there
}

// best is the cut after which the fewest parts lie in pieces that do not pass; then the
// one after which none is too large by so much; then the one whose largest such piece is
// smallest; then the first. There is none, and ok is false,
// only where a layout cannot be cut from edge to edge.
func (c *carrier) best(of geom.Rect, parts []geom.Rect) (best model.RoughCut, ok bool) {
	least := leftOver{parts: len(parts) + 1}
	for _, along := range []bool{false, true} {
		for _, cut := range c.cuts(of, parts, along) {
			left := c.left(of, cut, parts)
			if cmp.Or(cmp.Compare(left.parts, least.parts), cmp.Compare(left.over, least.over), cmp.Compare(left.area, least.area)) < 0 {
				best, ok, least = cut, true, left
			}
		}
	}
	return best, ok
}

// leftOver is what a cut leaves to be done: how many parts are in pieces that do not pass, by
// how much one of these is too large at most, and the area of the largest.
type leftOver struct {
	parts int
	over  length.Length
	area  float64
}

func (c *carrier) left(of geom.Rect, cut model.RoughCut, parts []geom.Rect) (left leftOver) {
	near, far := c.halves(of, cut)
	here, there := parted(near, parts)
	for _, half := range []struct {
		at    geom.Rect
		parts int
	}{{near, len(here)}, {far, len(there)}} {
		over := c.over(half.at)
		if half.parts == 0 || over == 0 {
			continue
		}
		left.parts += half.parts
		left.over = max(left.over, over)
		left.area = max(left.area, half.at.X.Size().MM()*max(1, half.at.Y.Size().MM())) // a stick has no width here
	}
	return left
}

// cuts lists where a piece may be cut in one direction without meeting a part: in strips
// between parts as wide as the saw's cut at least, in the middle first, then at either
// side; and beside the first and the last part.
func (c *carrier) cuts(of geom.Rect, parts []geom.Rect, along bool) (out []model.RoughCut) {
	span := func(r geom.Rect) geom.Span {
		if along {
			return r.Y
		}
		return r.X
	}
	spans := make([]geom.Span, len(parts))
	for i, p := range parts {
		spans[i] = span(p)
	}
	slices.SortFunc(spans, func(a, b geom.Span) int { return cmp.Compare(a.Lo, b.Lo) })
	cut := func(free geom.Span, at ...length.Length) {
		for _, a := range at {
			out = append(out, model.RoughCut{Along: along, At: a, Free: free.Size(), Of: of})
		}
	}
	end := span(of).Lo
	for i, s := range spans {
		switch free := (geom.Span{Lo: end, Hi: s.Lo}); {
		case i == 0 && free.Size() > 0:
			cut(free, s.Lo-c.kerf)
		case i > 0 && free.Size() >= c.kerf:
			cut(free, free.Lo+(free.Size()-c.kerf)/2, free.Lo, free.Hi-c.kerf)
		}
		end = max(end, s.Hi)
	}
	if free := (geom.Span{Lo: end, Hi: span(of).Hi}); free.Size() > 0 {
		cut(free, end)
	}
	return out
}
