package reuse

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// lays lists the ways to lay a piece in a part's place, the plainest first. A move is
// found for each.
var lays = [...]model.Lay{
	{}, {Quarters: 2}, {Over: true}, {Over: true, Quarters: 2},
	{Quarters: 1}, {Quarters: 3}, {Over: true, Quarters: 1}, {Over: true, Quarters: 3},
}

// grain is that of a piece in a lay.
func grain(g model.Grain, l model.Lay) model.Grain {
	if g != model.GrainNone && l.Quarters%2 == 1 {
		return model.GrainX + model.GrainY - g
	}
	return g
}

// edge is where an edge of a piece comes to lie.
func edge(e model.Edge, l model.Lay) model.Edge {
	if l.Over && (e == model.LeftEdge || e == model.RightEdge) {
		e = e.Opposite()
	}
	return (e + model.Edge(l.Quarters)) % 4
}

// good is which faces are the better ones once a piece is laid.
func good(g model.Good, l model.Lay) model.Good {
	if l.Over && (g == model.GoodDrawn || g == model.GoodFar) {
		return model.GoodDrawn + model.GoodFar - g
	}
	return g
}

// rect maps a rectangle as a lay maps points.
func rect(r geom.Rect, l model.Lay) geom.Rect {
	p, q := l.Point(geom.Point{X: r.X.Lo, Y: r.Y.Lo}), l.Point(geom.Point{X: r.X.Hi, Y: r.Y.Hi})
	return geom.Rect{X: geom.Between(p.X, q.X), Y: geom.Between(p.Y, q.Y)}
}

// laid is the solid as a lay puts it. Its part stays as it was drawn.
func (s *solid) laid(l model.Lay) *solid {
	out := &solid{part: s.part, body: rect(s.body, l), thick: s.thick, cuts: make([]cut, len(s.cuts))}
	for e := range s.bands {
		out.bands[edge(model.Edge(e), l)] = s.bands[e]
	}
	for i := range s.cuts {
		c := &out.cuts[i]
		*c = s.cuts[i]
		c.core = clamped(rect(c.core, l))
		if l.Over {
			c.depth = clampedSpan(geom.Span{Lo: s.thick - c.depth.Hi, Hi: s.thick - c.depth.Lo})
		}
		switch c.kind {
		case outside:
			c.index = int(edge(model.Edge(c.index), l))
		case rounded:
			tip := l.Point(s.cuts[i].tip())
			c.index = corner{at: tip, centre: geom.Point{X: c.core.X.Mid(), Y: c.core.Y.Mid()}}.way()
		}
	}
	return out
}

// moved shifts a solid that nobody else holds.
func (s *solid) moved(by geom.Point) {
	s.body = s.body.Shift(by)
	for i := range s.cuts {
		s.cuts[i].core = clamped(s.cuts[i].core.Shift(by))
	}
}

// clamped puts what lies beyond any part as far away as all such.
func clamped(r geom.Rect) geom.Rect { return geom.Rect{X: clampedSpan(r.X), Y: clampedSpan(r.Y)} }

func clampedSpan(s geom.Span) geom.Span {
	if s.Lo < -far/2 {
		s.Lo = -far
	}
	if s.Hi > far/2 {
		s.Hi = far
	}
	return s
}
