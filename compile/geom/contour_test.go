package geom

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"barwright/lang/length"
)

const mm = length.Millimetre

func polygonOf(c Contour) sf.Polygon {
	var xy []float64
	for _, v := range append(slices.Clone(c), c[0]) {
		xy = append(xy, float64(v.X), float64(v.Y))
	}
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))})
}

// drawStar draws a simple contour of straight edges: corners at rising angles
// about the origin.
func drawStar(t *rapid.T) Contour {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	var c Contour
	for i := range n {
		far := rapid.Float64Range(50, 2000).Draw(t, "far")
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		c = append(c, Vertex{Point: Point{Length(far * cos * 1e6), Length(far * sin * 1e6)}})
	}
	return c
}

func TestAreaAndBoundsAgainstPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawStar(t)
		g := polygonOf(c).AsGeometry()
		if want := g.Area() / 1e12; math.Abs(c.Area()-want) > 1e-9*want {
			t.Fatalf("area %v mm², the polygon has %v", c.Area(), want)
		}
		if got := c.Reversed().Area(); got != -c.Area() {
			t.Fatalf("area %v, reversed %v", c.Area(), got)
		}
		low, high := corners(g.Envelope())
		b := c.Bounds()
		if want := R(low.X, low.Y, high.X, high.Y); b != want {
			t.Fatalf("bounds %v, the polygon has %v", b, want)
		}
	})
}

func corners(e sf.Envelope) (low, high Point) {
	a, _ := e.Min().XY()
	b, _ := e.Max().XY()
	return Point{Length(a.X), Length(a.Y)}, Point{Length(b.X), Length(b.Y)}
}

func TestAreaOfLargest(t *testing.T) {
	// The product of two sides is beyond 63 bits.
	c := RectContour(R(0, 0, length.Max, length.Max))
	if got := c.Area(); got != 1e12 {
		t.Errorf("1 km by 1 km is %v mm², not 1e12", got)
	}
}

// TestArcsAgainstFormulas has shapes whose area is known in closed form.
func TestArcsAgainstFormulas(t *testing.T) {
	for _, c := range []struct {
		name   string
		shape  Contour
		area   float64 // mm²
		bounds Rect
	}{
		{"circle", CircleContour(Point{30 * mm, 40 * mm}, 20*mm), math.Pi * 400, R(10*mm, 20*mm, 50*mm, 60*mm)},
		{"circle the other way", CircleContour(Point{}, 20*mm).Reversed(), -math.Pi * 400, R(-20*mm, -20*mm, 20*mm, 20*mm)},
		{"rounded rectangle", RoundedContour(R(0, 0, 100*mm, 60*mm), 10*mm), 6000 - (4-math.Pi)*100, R(0, 0, 100*mm, 60*mm)},
		{"rounded to a circle", RoundedContour(R(0, 0, 20*mm, 20*mm), 10*mm), math.Pi * 100, R(0, 0, 20*mm, 20*mm)},
		{"a radius of 0", RoundedContour(R(0, 0, 20*mm, 10*mm), 0), 200, R(0, 0, 20*mm, 10*mm)},
		{"slot with a round end", Contour{{Point{0, 0}, 0}, {Point{20 * mm, 0}, 0}, {Point{20 * mm, 30 * mm}, 1}, {Point{0, 30 * mm}, 0}},
			600 + math.Pi*50, R(0, 0, 20*mm, 40*mm)},
		{"notch that bulges in", Contour{{Point{0, 0}, 0}, {Point{40 * mm, 0}, 0}, {Point{40 * mm, 30 * mm}, -1}, {Point{0, 30 * mm}, 0}},
			1200 - math.Pi*200, R(0, 0, 40*mm, 30*mm)},
		// A segment of a circle: r²/2 (angle - sin angle), with 90 degrees and r = 10.
		{"segment", Contour{{Point{10 * mm, 0}, QuarterBulge}, {Point{0, 10 * mm}, 0}}, 50 * (math.Pi/2 - 1), R(0, 0, 10*mm, 10*mm)},
		{"three quarters of a circle", Contour{{Point{0, 10 * mm}, math.Tan(3 * math.Pi / 8)}, {Point{10 * mm, 0}, 0}},
			50 * (3*math.Pi/2 + 1), R(-10*mm, -10*mm, 10*mm, 10*mm)},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.shape.Area(); math.Abs(got-c.area) > 1e-9*math.Abs(c.area) {
				t.Errorf("area %.12g, want %.12g", got, c.area)
			}
			if got := c.shape.Bounds(); got != c.bounds {
				t.Errorf("bounds %v, want %v", got, c.bounds)
			}
		})
	}
	if got := (Contour{}).Bounds(); got != (Rect{}) {
		t.Errorf("bounds of nothing: %v", got)
	}
}

// TestArcsAgainstSamples replaces arcs by a thousand chords each.
func TestArcsAgainstSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawStar(t)
		var fine Contour
		for i := range c {
			c[i].Bulge = float64(rapid.IntRange(-20, 20).Draw(t, "bulge")) / 100
		}
		// A chord over an angle d leaves out r² (d - sin d) / 2, about r² d³ / 12.
		const steps = 1000
		left := 0.0
		for i, v := range c {
			to := c[(i+1)%len(c)].Point
			fine = append(fine, Vertex{Point: v.Point})
			if v.Bulge == 0 {
				continue
			}
			arc := ArcOf(v, to)
			r, d := arc.R/1e6, math.Abs(arc.Turn)/steps
			left += steps * r * r * d * d * d / 12
			for k := 1; k < steps; k++ {
				sin, cos := math.Sincos(arc.Start + arc.Turn*float64(k)/steps)
				fine = append(fine, Vertex{Point: Point{Length(math.Round(arc.CX + arc.R*cos)), Length(math.Round(arc.CY + arc.R*sin))}})
			}
			sin, cos := math.Sincos(arc.Start + arc.Turn)
			if miss := math.Hypot(arc.CX+arc.R*cos-float64(to.X), arc.CY+arc.R*sin-float64(to.Y)); miss > 100 {
				t.Fatalf("the arc misses its end by %v nm", miss)
			}
		}
		if got, want := c.Area(), fine.Area(); math.Abs(got-want) > 1.01*left+1e-8*math.Abs(want) {
			t.Fatalf("area %v, by samples %v, which leave out up to %v", got, want, left)
		}
		got, want := c.Bounds(), fine.Bounds()
		if !got.Grow(2).Contains(want) || !want.Grow(mm/100).Contains(got) {
			t.Fatalf("bounds %v, by samples %v", got, want)
		}
	})
}

func TestCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		centre := Point{drawLength(t, "x"), drawLength(t, "y")}
		radius := Length(rapid.Int64Range(1, int64(length.Metre)).Draw(t, "radius"))
		for _, c := range []Contour{CircleContour(centre, radius), CircleContour(centre, radius).Reversed()} {
			gotCentre, gotRadius, ok := c.Circle()
			if !ok || gotCentre != centre || gotRadius != radius {
				t.Fatalf("%v gives back %v, %v, %v", c, gotCentre, gotRadius, ok)
			}
			if b := c.Bounds(); b != R(centre.X, centre.Y, centre.X, centre.Y).Grow(radius) {
				t.Fatalf("bounds %v", b)
			}
		}
	})
	for _, c := range []Contour{nil, RectContour(R(0, 0, 1, 1)), RoundedContour(R(0, 0, 4, 4), 1),
		{{Point{0, 0}, 1}, {Point{2, 0}, -1}}, {{Point{0, 0}, 0.5}, {Point{2, 0}, 0.5}}} {
		if _, _, ok := c.Circle(); ok {
			t.Errorf("%v is taken for a circle", c)
		}
	}
}

func TestReversedTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawStar(t)
		for i := range c {
			c[i].Bulge = float64(rapid.IntRange(-100, 100).Draw(t, "bulge")) / 100
		}
		back := c.Reversed().Reversed()
		if diff := cmp.Diff(c, back); diff != "" {
			t.Fatal(diff)
		}
		if got, want := c.Reversed().Bounds(), c.Bounds(); !got.Grow(2).Contains(want) || !want.Grow(2).Contains(got) {
			t.Fatalf("bounds %v, reversed %v", want, got)
		}
		step := Point{drawLength(t, "x"), drawLength(t, "y")}
		if got, want := c.Shifted(step).Bounds(), c.Bounds().Shift(step); !got.Grow(1).Contains(want) || !want.Grow(1).Contains(got) {
			t.Fatalf("bounds %v, shifted %v", want, got)
		}
	})
}

func drawLength(t *rapid.T, name string) Length {
	return Length(rapid.Int64Range(-int64(10*length.Metre), int64(10*length.Metre)).Draw(t, name))
}

func TestRounding(t *testing.T) {
	lopsided := RoundedContour(R(0, 0, 40*length.Millimetre, 40*length.Millimetre), 5*length.Millimetre)
	lopsided[1].Bulge /= 2
	for _, test := range []struct {
		c      Contour
		radius Length
		ok     bool
	}{
		{RectContour(R(0, 0, 4, 4)), 0, true},
		{RoundedContour(R(0, 0, 40*length.Millimetre, 20*length.Millimetre), 2_971_800), 2_971_800, true},
		{CircleContour(Point{7, 7}, length.Inch), length.Inch, true},
		{lopsided, 0, false},
		{nil, 0, true},
	} {
		got, ok := test.c.Rounding()
		if ok != test.ok || max(got-test.radius, test.radius-got) > 1 {
			t.Errorf("%v: %d, %v", test.c, got, ok)
		}
	}
}

// Chords keep within the sagitta of a piece: r(1-cos(turn/2)).
func TestChords(t *testing.T) {
	c := CircleContour(Point{X: 3 * mm, Y: 4 * mm}, 100*mm)
	points := c.Chords()
	if len(points) != 72 {
		t.Errorf("%d points, want one every 5 degrees", len(points))
	}
	for _, p := range points {
		if r := math.Hypot(float64(p.X-3*mm), float64(p.Y-4*mm)); math.Abs(r-100e6) > 1 {
			t.Errorf("%v is %f nm from the centre", p, r)
		}
	}
}
