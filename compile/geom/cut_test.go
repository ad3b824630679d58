package geom

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"
)

func TestCut(t *testing.T) {
	blank := R(0, 0, 100, 60)
	points := func(xy ...Length) Contour {
		var c Contour
		for i := 0; i < len(xy); i += 2 {
			c = append(c, Vertex{Point: Point{xy[i], xy[i+1]}})
		}
		return c
	}
	for _, c := range []struct {
		name string
		cuts []Rect
		want []Contour
	}{
		{"nothing", nil, []Contour{RectContour(blank)}},
		{"one that misses", []Rect{R(100, 0, 120, 60)}, []Contour{RectContour(blank)}},
		{"the toe kick of a side", []Rect{R(80, 0, 100, 10)}, []Contour{points(0, 0, 80, 0, 80, 10, 100, 10, 100, 60, 0, 60)}},
		{"a corner, reaching beyond", []Rect{R(-5, -5, 10, 20)}, []Contour{points(10, 0, 100, 0, 100, 60, 0, 60, 0, 20, 10, 20)}},
		{"an edge", []Rect{R(40, 50, 60, 61)}, []Contour{points(0, 0, 100, 0, 100, 60, 60, 60, 60, 50, 40, 50, 40, 60, 0, 60)}},
		{"two that join", []Rect{R(40, 50, 60, 60), R(60, 40, 70, 60)}, []Contour{points(0, 0, 100, 0, 100, 60, 70, 60, 70, 40, 60, 40, 60, 50, 40, 50, 40, 60, 0, 60)}},
		{"all across", []Rect{R(40, 0, 60, 60)}, []Contour{points(0, 0, 40, 0, 40, 60, 0, 60), points(60, 0, 100, 0, 100, 60, 60, 60)}},
		{"all of it", []Rect{R(-1, -1, 101, 61)}, nil},
		{"pieces that touch at a corner", []Rect{R(0, 30, 50, 60), R(50, 0, 100, 30)}, []Contour{points(0, 0, 50, 0, 50, 30, 0, 30), points(50, 30, 100, 30, 100, 60, 50, 60)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, Cut(blank, c.cuts)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestCutAgainstOverlay compares Cut with a general overlay of polygons: the
// same area, and the same corners.
func TestCutAgainstOverlay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Int64Range(0, 30)
		rect := rapid.Custom(func(t *rapid.T) Rect {
			x, y := at.Draw(t, "x"), at.Draw(t, "y")
			return R(Length(x), Length(y), Length(x+rapid.Int64Range(1, 12).Draw(t, "width")), Length(y+rapid.Int64Range(1, 12).Draw(t, "height")))
		})
		blank := R(5, 5, 25, 20)
		cuts := rapid.SliceOfN(rect, 0, 6).Draw(t, "cuts")
		left := polygonOf(RectContour(blank)).AsGeometry()
		for _, c := range cuts {
			var err error
			if left, err = sf.Difference(left, polygonOf(RectContour(c)).AsGeometry()); err != nil {
				t.Skip("the overlay gave up:", err)
			}
		}
		area := 0.0
		var corners []Point
		for _, c := range Cut(blank, cuts) {
			area += c.Area() * 1e12
			corners = append(corners, turns(c)...)
		}
		if math.Abs(area-left.Area()) > 1e-6 {
			t.Fatalf("area %v, the overlay has %v", area, left.Area())
		}
		if diff := cmp.Diff(sorted(cornersOf(left)), sorted(corners)); diff != "" {
			t.Fatalf("corners (-overlay +cut):\n%s", diff)
		}
	})
}

func polygonOf(c Contour) sf.Polygon {
	var xy []float64
	for _, v := range append(slices.Clone(c), c[0]) {
		xy = append(xy, float64(v.X), float64(v.Y))
	}
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))})
}

// cornersOf lists the points where the rings of a shape turn. The overlay puts
// some points along straight edges, at fractions.
func cornersOf(g sf.Geometry) []Point {
	var out []Point
	for _, part := range g.Dump() {
		if part.Type() != sf.TypePolygon {
			continue
		}
		for _, ring := range part.MustAsPolygon().DumpRings() {
			var c Contour
			seq := ring.Coordinates()
			for i := range seq.Length() - 1 {
				xy := seq.GetXY(i)
				c = append(c, Vertex{Point: Point{Length(math.Round(xy.X * 1e6)), Length(math.Round(xy.Y * 1e6))}})
			}
			out = append(out, turns(c)...)
		}
	}
	for i, p := range out {
		out[i] = Point{p.X / 1e6, p.Y / 1e6}
	}
	return out
}

// turns drops the corners where a contour runs straight on.
func turns(c Contour) []Point {
	var out []Point
	for i, v := range c {
		a, b := c[(i+len(c)-1)%len(c)], c[(i+1)%len(c)]
		if (v.X-a.X)*(b.Y-v.Y) != (v.Y-a.Y)*(b.X-v.X) {
			out = append(out, v.Point)
		}
	}
	return out
}

// sorted orders points; one where two pieces touch counts once.
func sorted(points []Point) []Point {
	slices.SortFunc(points, func(a, b Point) int {
		if a.Y != b.Y {
			return int(a.Y - b.Y)
		}
		return int(a.X - b.X)
	})
	return slices.Compact(points)
}

// TestCutHasNoStraightCorner demands that every corner of a result turns, and
// that outer contours run counter-clockwise.
func TestCutHasNoStraightCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Rect {
			x := rapid.Int64Range(0, 18).Draw(t, "x")
			h := rapid.Int64Range(1, 9).Draw(t, "h")
			return R(Length(x), 0, Length(x+2), Length(h)) // notches into the lower edge
		}), 0, 5).Draw(t, "cuts")
		for _, c := range Cut(R(0, 0, 20, 10), cuts) {
			if len(turns(c)) != len(c) {
				t.Fatalf("%v has a corner that does not turn", c)
			}
			if c.Area() <= 0 {
				t.Fatalf("%v does not run counter-clockwise", c)
			}
		}
	})
}
