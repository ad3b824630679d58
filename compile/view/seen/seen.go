// Package seen leaves out of a drawing what is covered, for those who draw it without
// tints.
package seen

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Of returns a view without the lines that shapes before them cover. A shape that is
// covered in part becomes the open lines that are left of it; lines along the edge of
// what covers them stay.
func Of(v *model.View) model.View {
	seen := *v
	seen.Shapes = make([]model.Shape, 0, len(v.Shapes))
	covers := coversOf(v)
	for i := range v.Shapes {
		s := &v.Shapes[i]
		before := covers.over(s.Lines.Bounds(), i)
		lines, whole := left(s, before)
		if whole {
			seen.Shapes = append(seen.Shapes, *s)
			continue
		}
		for _, c := range lines {
			part := *s
			part.Lines, part.Closed = c, false
			seen.Shapes = append(seen.Shapes, part)
		}
	}
	return seen
}

// left returns what covers leave of a shape: all of it, or open lines.
func left(s *model.Shape, covers []*cover) (lines []geom.Contour, whole bool) {
	edges := edgesOf(s.Lines, s.Closed)
	whole, joined := true, false // joined: the last line goes on
	for _, e := range edges {
		free := e.free(covers)
		whole = whole && len(free) == 1 && free[0] == all
		joined = joined && len(free) > 0 && free[0].from == 0
		for _, f := range free {
			vertex := geom.Vertex{Point: e.at(f.from), Bulge: e.bulge(f)}
			if joined {
				last := &lines[len(lines)-1]
				(*last)[len(*last)-1].Bulge = vertex.Bulge
				*last = append(*last, geom.Vertex{Point: e.at(f.to)})
			} else {
				lines = append(lines, geom.Contour{vertex, {Point: e.at(f.to)}})
			}
			joined = f.to == 1
		}
	}
	if n := len(lines); s.Closed && joined && n > 1 && lines[0][0].Point == s.Lines[0].Point {
		round := lines[n-1]
		lines[0] = append(round[:len(round)-1], lines[0]...)
		lines = lines[:n-1]
	}
	return lines, whole
}

// edge is one of a contour's, in chords where it is an arc.
type edge struct {
	from   geom.Vertex
	to     geom.Point
	points []spot
}

// spot is a point in nanometres.
type spot struct{ x, y float64 }

// share is a stretch of an edge; its ends count from 0 to 1.
type share struct{ from, to float64 }

var all = share{0, 1}

// chordTurn is the most that a chord stands for. On a radius of 100 mm chords are
// within 4 micrometres of the arc.
const chordTurn = math.Pi / 180

// near is the distance, in nanometres, below which a point lies on a line: more than
// corners of turned shapes are rounded by.
const near = 10_000

func edgesOf(c geom.Contour, closed bool) (edges []edge) {
	for i, v := range c {
		if i+1 == len(c) && !closed {
			break
		}
		e := edge{from: v, to: c[(i+1)%len(c)].Point}
		n := 1.0
		if v.Bulge != 0 {
			n = math.Ceil(math.Abs(4*math.Atan(v.Bulge)) / chordTurn)
		}
		for k := 0.0; k <= n; k++ {
			p := e.at(k / n)
			e.points = append(e.points, spot{float64(p.X), float64(p.Y)})
		}
		edges = append(edges, e)
	}
	return edges
}

// at returns the point at a share of the edge.
func (e *edge) at(t float64) geom.Point {
	if t == 0 {
		return e.from.Point
	}
	if t == 1 {
		return e.to
	}
	if e.from.Bulge == 0 {
		d := e.to.Sub(e.from.Point)
		return e.from.Add(geom.Point{X: geom.Length(math.Round(float64(d.X) * t)), Y: geom.Length(math.Round(float64(d.Y) * t))})
	}
	a := geom.ArcOf(e.from, e.to)
	sin, cos := math.Sincos(a.Start + float64(a.Turn*t))
	return geom.Point{X: geom.Length(math.Round(a.CX + float64(a.R*cos))), Y: geom.Length(math.Round(a.CY + float64(a.R*sin)))}
}

// bulge is that of a stretch of the edge.
func (e *edge) bulge(s share) float64 {
	if s == all || e.from.Bulge == 0 {
		return e.from.Bulge
	}
	return math.Tan(math.Atan(e.from.Bulge) * (s.to - s.from))
}

// free returns the stretches that no cover hides, from first to last.
func (e *edge) free(covers []*cover) []share {
	free := []share{all}
	long := 0.0
	for i := 1; i < len(e.points); i++ {
		long += e.points[i-1].to(e.points[i])
	}
	bounds := geom.Contour{e.from, {Point: e.to}}.Bounds().Grow(1) // a straight line has no size across
	for _, c := range covers {
		if !c.bounds.Overlaps(bounds) {
			continue
		}
		for _, hidden := range c.hidden(e) {
			free = without(free, hidden, near/max(long, near))
		}
	}
	return free
}

// without takes a stretch out of others, and what is then shorter than least.
func without(free []share, hidden share, least float64) (out []share) {
	for _, f := range free {
		for _, part := range [...]share{{f.from, min(f.to, hidden.from)}, {max(f.from, hidden.to), f.to}} {
			if part == f { // clear of what is hidden
				out = append(out, f)
				break
			}
			if part.to-part.from > least {
				out = append(out, part)
			}
		}
	}
	return out
}

func (p spot) to(q spot) float64 { return math.Hypot(q.x-p.x, q.y-p.y) }
