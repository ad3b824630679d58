package revision

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
)

// ruler holds the lines of a drawing, to a tenth of a millimetre, so that those of
// another can be compared: of level and upright ones all stretches, of others and of
// arcs each as a whole.
type ruler struct {
	stretches map[line][]geom.Span // rising, apart; lookup only
	whole     map[string]bool      // lookup only
}

// line is a level or an upright one.
type line struct {
	upright bool
	at      geom.Length
}

// edge is a part of a shape's outline: from a vertex to the next point.
type edge struct {
	from geom.Vertex
	to   geom.Point
}

// edges are those of an outline.
func edges(c geom.Contour, closed bool) []edge {
	var out []edge
	for i, v := range c {
		if i+1 == len(c) && !closed {
			break
		}
		if to := c[(i+1)%len(c)].Point; to != v.Point {
			out = append(out, edge{v, to})
		}
	}
	return out
}

// along returns the line that an edge lies on, and its stretch there, in coordinates of
// a page; ok is false of arcs and slanting edges.
func (e edge) along() (on line, s geom.Span, ok bool) {
	x0, y0, x1, y1 := grid(e.from.X), grid(e.from.Y), grid(e.to.X), grid(e.to.Y)
	switch {
	case e.from.Bulge != 0:
		return line{}, geom.Span{}, false
	case x0 == x1:
		return line{true, x0}, geom.Between(y0, y1), true
	case y0 == y1:
		return line{false, y0}, geom.Between(x0, x1), true
	}
	return line{}, geom.Span{}, false
}

func grid(l geom.Length) geom.Length { return geom.Length(markup.Units(l)) }

// key is the same for two edges that lie on each other, whichever way they run.
func (e edge) key() string {
	a := [2]geom.Length{grid(e.from.X), grid(e.from.Y)}
	b := [2]geom.Length{grid(e.to.X), grid(e.to.Y)}
	bulge := e.from.Bulge
	if cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) > 0 {
		a, b, bulge = b, a, -bulge
	}
	return fmt.Sprintf("%d %d %.4f", a, b, bulge)
}

func newRuler(shapes []model.Shape) *ruler {
	r := &ruler{map[line][]geom.Span{}, map[string]bool{}}
	for i := range shapes {
		for _, e := range edges(shapes[i].Lines, shapes[i].Closed) {
			if on, s, ok := e.along(); ok {
				r.stretches[on] = append(r.stretches[on], s)
			} else {
				r.whole[e.key()] = true
			}
		}
	}
	for on, spans := range r.stretches {
		slices.SortFunc(spans, func(a, b geom.Span) int { return cmp.Compare(a.Lo, b.Lo) })
		merged := spans[:1]
		for _, s := range spans[1:] {
			if last := &merged[len(merged)-1]; s.Lo <= last.Hi {
				last.Hi = max(last.Hi, s.Hi)
			} else {
				merged = append(merged, s)
			}
		}
		r.stretches[on] = merged
	}
	return r
}

// leastStretch is the shortest that is drawn on its own, in tenths of a millimetre.
const leastStretch = 3

// split parts an outline into what the ruler has too and what it has not.
func (r *ruler) split(c geom.Contour, closed bool) (same, other []geom.Contour) {
	for _, e := range edges(c, closed) {
		on, s, ok := e.along()
		whole := geom.Contour{e.from, {Point: e.to}}
		switch {
		case !ok && r.whole[e.key()]:
			same = append(same, whole)
		case !ok:
			other = append(other, whole)
		default:
			alike, rest := parted(s, r.stretches[on])
			for _, s := range alike {
				same = append(same, on.contour(s))
			}
			for _, s := range rest {
				other = append(other, on.contour(s))
			}
		}
	}
	return same, other
}

// parted splits a stretch into what others, which rise and lie apart, cover and what they
// leave.
func parted(s geom.Span, others []geom.Span) (covered, left []geom.Span) {
	at := s.Lo
	from, _ := slices.BinarySearchFunc(others, at, func(o geom.Span, at geom.Length) int { return cmp.Compare(o.Hi, at+1) })
	for _, o := range others[from:] {
		if o.Lo >= s.Hi {
			break
		}
		if o.Lo-at >= leastStretch {
			left = append(left, geom.Span{Lo: at, Hi: o.Lo})
		}
		covered = append(covered, s.Intersect(o))
		at = max(at, o.Hi)
	}
	if s.Hi-at >= leastStretch {
		left = append(left, geom.Span{Lo: at, Hi: s.Hi})
	}
	return covered, left
}

// contour is a stretch of a line in real size.
func (l line) contour(s geom.Span) geom.Contour {
	point := func(along geom.Length) geom.Vertex {
		p := geom.Point{X: along, Y: l.at}
		if l.upright {
			p = geom.Point{X: l.at, Y: along}
		}
		p.X, p.Y = p.X*markup.Grid, p.Y*markup.Grid
		return geom.Vertex{Point: p}
	}
	return geom.Contour{point(s.Lo), point(s.Hi)}
}
