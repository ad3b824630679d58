package template

import (
	"math"
	"slices"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	mm     = length.Millimetre
	pieces = 40 // of a quarter circle
	within = 0.01
)

// A bush or bearing that runs everywhere within the opening takes the bit over the recess,
// to 0.01 mm, as far as there is wood.
func TestSweepIsRecess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi length.Length) length.Length {
			return length.Length(rapid.Int64Range(int64(lo), int64(hi)).Draw(t, name))
		}
		g := model.Guide{Bit: draw("bit", 3*mm, 12*mm)}
		if rapid.Bool().Draw(t, "bearing") {
			g.Bearing = g.Bit + draw("wider", 0, 8*mm)
		} else {
			g.Bush = g.Bit + draw("wider", 1, 12*mm)
		}
		var open []model.Edge
		for e := range model.Edge(4) {
			if rapid.Bool().Draw(t, "open") {
				open = append(open, e)
			}
		}
		round := draw("rounder", 0, 6*mm) + (g.Bit+1)/2
		low := geom.Point{X: draw("x", -90*mm, 90*mm), Y: draw("y", -90*mm, 90*mm)}
		recess := geom.R(low.X, low.Y, low.X+2*round+draw("width", mm/10, 90*mm), low.Y+2*round+draw("depth", mm/10, 90*mm))

		opening := job{guide: g}.opening(recess, open, round)
		swept := grown(shrunk(polygon(opening), g.Round().MM()/2), g.Bit.MM()/2)
		cut := must(sf.Intersection(swept, polygon(geom.RectContour(wood(recess, open)))))
		want := asked(recess, open, round)

		off := must(sf.SymmetricDifference(cut, want))
		if most := within * want.Boundary().Length(); off.Area() > most {
			t.Fatalf("what is cut differs from the recess by %.4f mm2 of %.1f", off.Area(), want.Area())
		}
		if far := max(farthest(cut, want), farthest(want, cut)); far > within {
			t.Fatalf("what is cut leaves the recess's outline by %.4f mm", far)
		}
	})
}

// wood is a blank that ends at the open sides of a recess.
func wood(r geom.Rect, open []model.Edge) geom.Rect {
	const rest = 200 * mm
	for e := range model.Edge(4) {
		if slices.Contains(open, e) {
			continue
		}
		switch e {
		case model.Bottom:
			r.Y.Lo -= rest
		case model.RightEdge:
			r.X.Hi += rest
		case model.Top:
			r.Y.Hi += rest
		case model.LeftEdge:
			r.X.Lo -= rest
		}
	}
	return r
}

// asked is the recess: corners between closed sides round, the others square.
func asked(r geom.Rect, open []model.Edge, round length.Length) sf.Geometry {
	closed := func(a, b model.Edge) bool { return !slices.Contains(open, a) && !slices.Contains(open, b) }
	var at []sf.XY
	corner := func(x, y length.Length, inX, inY float64, isRound bool) {
		if !isRound {
			at = append(at, sf.XY{X: x.MM(), Y: y.MM()})
			return
		}
		q := round.MM()
		at = append(at, circle(sf.XY{X: x.MM() + float64(inX*q), Y: y.MM() + float64(inY*q)}, q)...)
	}
	corner(r.X.Lo, r.Y.Lo, 1, 1, closed(model.Bottom, model.LeftEdge))
	corner(r.X.Hi, r.Y.Lo, -1, 1, closed(model.Bottom, model.RightEdge))
	corner(r.X.Hi, r.Y.Hi, -1, -1, closed(model.Top, model.RightEdge))
	corner(r.X.Lo, r.Y.Hi, 1, -1, closed(model.Top, model.LeftEdge))
	return hull(at)
}

func circle(c sf.XY, r float64) (on []sf.XY) {
	for i := range 4 * pieces {
		sin, cos := math.Sincos(float64(i) * math.Pi / (2 * pieces))
		on = append(on, sf.XY{X: c.X + float64(r*cos), Y: c.Y + float64(r*sin)})
	}
	return on
}

// grown is a convex shape with a disc led all over it.
func grown(g sf.Geometry, r float64) sf.Geometry {
	var on []sf.XY
	for _, p := range points(g) {
		on = append(on, circle(p, r)...)
	}
	return hull(on)
}

// shrunk is where the centre of a disc may be within a convex polygon: as far on the inner
// side of each of its edges.
func shrunk(g sf.Geometry, r float64) sf.Geometry {
	p := points(g)
	left := p
	for i := 1; i < len(p); i++ {
		a, b := p[i-1], p[i]
		way := b.Sub(a).Scale(1 / b.Sub(a).Length())
		in := sf.XY{X: -way.Y, Y: way.X} // the outline runs counter-clockwise
		left = beyond(left, a.Add(in.Scale(r)), in)
	}
	return hull(left)
}

// beyond is what of a closed convex line of points lies on the side of a line that a normal
// of it looks to.
func beyond(p []sf.XY, on, normal sf.XY) (left []sf.XY) {
	off := func(q sf.XY) float64 { return q.Sub(on).Dot(normal) }
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		if off(a) >= 0 {
			left = append(left, a)
		}
		if off(a)*off(b) < 0 {
			left = append(left, a.Add(b.Sub(a).Scale(off(a)/(off(a)-off(b)))))
		}
	}
	return left
}

// farthest is how far a vertex of one outline lies from the other outline.
func farthest(from, to sf.Geometry) (most float64) {
	for _, p := range points(from) {
		if d, ok := sf.Distance(p.AsPoint().AsGeometry(), to.Boundary()); ok {
			most = max(most, d)
		}
	}
	return most
}

func polygon(c geom.Contour) sf.Geometry {
	var on []sf.XY
	for i, v := range c {
		on = append(on, sf.XY{X: v.X.MM(), Y: v.Y.MM()})
		if v.Bulge == 0 {
			continue
		}
		arc := geom.ArcOf(v, c[(i+1)%len(c)].Point)
		for k := 1; k < pieces; k++ {
			sin, cos := math.Sincos(arc.Start + float64(arc.Turn*float64(k)/pieces))
			on = append(on, sf.XY{X: (arc.CX + float64(arc.R*cos)) / float64(mm), Y: (arc.CY + float64(arc.R*sin)) / float64(mm)})
		}
	}
	return ring(on...)
}

func ring(on ...sf.XY) sf.Geometry {
	var flat []float64
	for _, p := range append(on, on[0]) {
		flat = append(flat, p.X, p.Y)
	}
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(flat, sf.DimXY))}).AsGeometry()
}

func hull(on []sf.XY) sf.Geometry {
	all := make([]sf.Point, len(on))
	for i, p := range on {
		all[i] = p.AsPoint()
	}
	return sf.NewMultiPoint(all).AsGeometry().ConvexHull()
}

func points(g sf.Geometry) (on []sf.XY) {
	seq := g.DumpCoordinates()
	for i := range seq.Length() {
		on = append(on, seq.GetXY(i))
	}
	return on
}

func must(g sf.Geometry, err error) sf.Geometry {
	if err != nil {
		panic(err)
	}
	return g
}
