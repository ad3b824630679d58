package dxf

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// notch is a cut into a side: from along to along + width, deep, its end
// straight or a half circle.
type notch struct {
	along, width, depth length.Length
	round               bool
}

// area is what the notch takes away, in mm².
func (n notch) area() float64 {
	w, d := n.width.MM(), n.depth.MM()
	if n.round {
		return w*d + math.Pi*w*w/8
	}
	return w * d
}

// notchedRect returns a rectangle with notches in its sides, and its area by
// the formulas of the plain shapes.
func notchedRect(t *rapid.T) (geom.Contour, float64) {
	side := rapid.Int64Range(int64(300*mm), int64(2400*mm))
	w, h := length.Length(side.Draw(t, "w")), length.Length(side.Draw(t, "h"))
	at := func(i int, along, in length.Length) geom.Point { // sides from the bottom, counter-clockwise
		return [...]geom.Point{{X: along, Y: in}, {X: w - in, Y: along}, {X: w - along, Y: h - in}, {X: in, Y: h - along}}[i]
	}
	area := w.MM() * h.MM()
	var c geom.Contour
	for i, long := range []length.Length{w, h, w, h} {
		c = append(c, geom.Vertex{Point: at(i, 0, 0)})
		for _, n := range notches(t, long) {
			bulge := 0.0
			if n.round {
				bulge = -1
			}
			c = append(c,
				geom.Vertex{Point: at(i, n.along, 0)},
				geom.Vertex{Point: at(i, n.along, n.depth), Bulge: bulge},
				geom.Vertex{Point: at(i, n.along+n.width, n.depth)},
				geom.Vertex{Point: at(i, n.along+n.width, 0)})
			area -= n.area()
		}
	}
	return c, area
}

// notches draws some for a side, clear of each other and of the corners.
func notches(t *rapid.T, side length.Length) []notch {
	const corner = 110 * mm
	var out []notch
	for along := corner; along < side-2*corner && rapid.Bool().Draw(t, "more"); {
		n := notch{
			along: along + length.Length(rapid.Int64Range(int64(mm), int64(50*mm)).Draw(t, "gap")),
			width: length.Length(rapid.Int64Range(int64(mm), int64(60*mm)).Draw(t, "width")),
			depth: length.Length(rapid.Int64Range(int64(mm), int64(70*mm)).Draw(t, "depth")),
			round: rapid.Bool().Draw(t, "round"),
		}
		out = append(out, n)
		along = n.along + n.width
	}
	return out
}

// turned returns a rectangle at an angle, its corners to the nanometre.
func turned(t *rapid.T) geom.Contour {
	f := geom.Frame{Turn: geom.Angle(rapid.Int64Range(0, 360_000_000).Draw(t, "turn"))}
	c := rect(0, 0, 300, 200)
	for i := range c {
		c[i].Point = f.At(c[i].X, c[i].Y)
	}
	return c
}

func contours(t *rapid.T) geom.Contour {
	var c geom.Contour
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		var want float64
		if c, want = notchedRect(t); math.Abs(c.Area()-want) > 1e-6*want {
			t.Errorf("area %f, by the plain shapes %f", c.Area(), want)
		}
	case 1:
		radius := length.Length(rapid.Int64Range(int64(mm), int64(99*mm)).Draw(t, "radius"))
		c = geom.RoundedContour(geom.R(0, 0, 400*mm, 200*mm), radius)
	case 2:
		c = geom.CircleContour(geom.Point{}, length.Length(rapid.Int64Range(int64(mm), int64(900*mm)).Draw(t, "radius")))
	case 3:
		c = turned(t)
	}
	if rapid.Bool().Draw(t, "reversed") {
		c = c.Reversed()
	}
	shift := rapid.Int64Range(-int64(5000*mm), int64(5000*mm))
	return c.Shifted(geom.Point{X: length.Length(shift.Draw(t, "dx")), Y: length.Length(shift.Draw(t, "dy"))})
}

// drawPart draws a part with openings and recesses that keep clear of one another.
func drawPart(t *rapid.T) *model.Part {
	p := &model.Part{ID: "p", Label: "P", Outline: contours(t)}
	const cell = 3 * length.Metre // more than any contour takes
	inner := 0
	next := func() geom.Contour {
		c := contours(t)
		b := c.Bounds()
		inner++
		return c.Shifted(geom.Point{X: length.Length(inner)*cell - b.X.Lo, Y: cell/8 - b.Y.Lo})
	}
	for range rapid.IntRange(0, 3).Draw(t, "openings") {
		p.Openings = append(p.Openings, model.Opening{Shape: next(), Notch: rapid.Bool().Draw(t, "notch")})
	}
	for range rapid.IntRange(0, 2).Draw(t, "recesses") {
		p.Recesses = append(p.Recesses, model.Recess{Shape: next()})
	}
	if inner > 0 {
		p.Outline = geom.RectContour(geom.R(cell/2, -7*mm, length.Length(inner+1)*cell, cell))
	}
	return p
}

// What is written reads back as the same contours, vertex for vertex, in either
// version.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPart(t)
		want := dxftest.Of(p)
		for _, version := range []Version{R12, R2000} {
			f := readBack(t, written(t, p, Options{Version: version, Text: true}))
			if len(f.Contours) != len(want) {
				t.Fatalf("%d contours, want %d", len(f.Contours), len(want))
			}
			for i, got := range f.Contours {
				sameContour(t, got, want[i])
			}
			if b := f.Contours[len(want)-1].Shape.Bounds(); b.X.Lo != 0 || b.Y.Lo != 0 {
				t.Errorf("the lower left is at %v", b)
			}
		}
	})
}

func sameContour(t *rapid.T, got, want dxftest.Contour) {
	if got.Layer != want.Layer {
		t.Errorf("on layer %s, want %s", got.Layer, want.Layer)
	}
	if centre, radius, ok := want.Shape.Circle(); ok {
		want.Shape = geom.CircleContour(centre, radius)
	}
	if !slices.Equal(got.Shape, want.Shape) {
		t.Errorf("reads back as %v, want %v", got.Shape, want.Shape)
	}
	if d := math.Abs(got.Shape.Area() - want.Shape.Area()); d > 1e-6*math.Abs(want.Shape.Area()) {
		t.Errorf("the area is off by %f mm²", d)
	}
}
