package paint

import (
	"testing"

	"barwright/compile/geom"
)

// A metre along the first wall, seen from its right end's side (the eye is at +x, +y), goes
// cos 30° = 866.025404 mm to the right and sin 30° = 500 mm down, for it comes nearer; a metre out
// from the wall goes as far to the left, and as far down; a metre up is a metre up.
func TestProject(t *testing.T) {
	right := Eyes()[1]
	left := Eyes()[0]
	const metre = 1e9
	for _, c := range []struct {
		eye  Eye
		at   Vec
		want geom.Point
	}{
		{right, Vec{X: metre}, geom.Point{X: 866025404, Y: -500000000}},
		{right, Vec{Y: metre}, geom.Point{X: -866025404, Y: -500000000}},
		{right, Vec{Z: metre}, geom.Point{Y: metre}},
		{left, Vec{X: metre}, geom.Point{X: 866025404, Y: 500000000}},
		{left, Vec{Y: metre}, geom.Point{X: 866025404, Y: -500000000}},
		// 2 m along, 0.6 m out, 0.9 m up: 1732.050808 + 519.615242 to the right, 1000 - 300 + 900 up.
		{left, Vec{2 * metre, 0.6 * metre, 0.9 * metre}, geom.Point{X: 2251666050, Y: 1600000000}},
	} {
		if got := c.eye.Project(c.at); got != c.want {
			t.Errorf("eye %v, point %v: got %v, want %v", c.eye.toward, c.at, got, c.want)
		}
	}
}

// From the upper left in front of the wall one sees a box's top, its left end and its front.
func TestFacesSeen(t *testing.T) {
	box := geom.Box{U: geom.Span{Hi: 3 * mm}, V: geom.Span{Hi: 2 * mm}, Z: geom.Span{Hi: 100 * mm}}
	seen := Eyes()[0].Seen([]Solid{Eyes()[0].Block(7, geom.Frame{}, box, Vec{X: 5 * mm})})
	var shades []Shade
	for _, f := range seen {
		shades = append(shades, f.Shade)
		if f.Of != 7 || len(f.Outline) != 4 {
			t.Errorf("face %v", f)
		}
	}
	if len(shades) != 3 || shades[0]+shades[1]+shades[2] != Top+Left+Right || shades[2] != Top {
		t.Errorf("shades %v", shades)
	}
	// The top's nearest corner is left and in front: 5 mm along and 2 mm out, at 100 mm.
	low := seen[2].Outline[0]
	for _, p := range seen[2].Outline {
		if p.Y < low.Y {
			low = p
		}
	}
	if want := (geom.Point{X: 6062178, Y: 101500000}); low != want {
		t.Errorf("nearest corner at %v, want %v", low, want)
	}
}

// A board with a step out of a corner, seen square to the step: its faces are its own six sides
// that look at the eye, and what stands behind it in the step is seen, what stands behind the rest
// is not.
func TestSteppedBoard(t *testing.T) {
	e := Eyes()[0]
	board := geom.Place(geom.Frame{}, geom.Box{U: geom.Span{Hi: 10 * mm}, V: geom.Span{Hi: 500 * mm}, Z: geom.Span{Hi: 800 * mm}}, geom.Dir{Axis: geom.U, Neg: true})
	face := geom.Contour{{Point: geom.Point{}}, {Point: geom.Point{X: 400 * mm}}, {Point: geom.Point{X: 400 * mm, Y: 100 * mm}},
		{Point: geom.Point{X: 500 * mm, Y: 100 * mm}}, {Point: geom.Point{X: 500 * mm, Y: 800 * mm}}, {Point: geom.Point{Y: 800 * mm}}}
	cube := func(of int, v, z geom.Length) Solid {
		return e.Block(of, geom.Frame{}, geom.Box{U: geom.Span{Lo: 11 * mm, Hi: 21 * mm}, V: geom.Span{Lo: v, Hi: v + 10*mm}, Z: geom.Span{Lo: z, Hi: z + 10*mm}}, Vec{})
	}
	seen := e.Seen(e.Order([]Solid{e.Prism(0, board, face, nil, Vec{}), cube(1, 460*mm, 20*mm), cube(2, 200*mm, 300*mm)}))
	count := map[int]int{}
	for _, f := range seen {
		count[f.Of]++
	}
	if count[0] != 4 || count[1] != 3 || count[2] != 0 {
		t.Errorf("faces seen of the board, in the step, behind: %v, want 4, 3, 0", count)
	}
}

func TestGaps(t *testing.T) {
	p := func(x, y geom.Length) geom.Point { return geom.Point{X: x * mm, Y: y * mm} }
	faces := []Seen{{Outline: []geom.Point{p(10, 0), p(20, 0), p(20, 10), p(10, 10)}}, {Outline: []geom.Point{p(30, 0), p(40, 0), p(40, 10), p(30, 10)}}}
	got := Gaps(faces, [][2]geom.Point{{p(0, 5), p(50, 5)}, {p(12, 2), p(18, 8)}, {p(0, 20), p(1, 20)}})
	want := [][][2]geom.Point{{{p(0, 5), p(10, 5)}, {p(20, 5), p(30, 5)}, {p(40, 5), p(50, 5)}}, nil, {{p(0, 20), p(1, 20)}}}
	for i := range want {
		if len(got[i]) != len(want[i]) {
			t.Fatalf("line %d: %v, want %v", i, got[i], want[i])
		}
		for k := range want[i] {
			if got[i][k] != want[i][k] {
				t.Errorf("line %d: %v, want %v", i, got[i], want[i])
			}
		}
	}
}
