package geom

import "testing"

// Of a line from 0, 0 to 300, 400 the points below are beside its middle, before its start,
// beyond its end and on it; a line that is a point has one distance.
func TestFromLine(t *testing.T) {
	end := Point{X: 300, Y: 400}
	for _, c := range []struct {
		x, y, want float64
		to         Point
	}{
		{150 - 40, 200 + 30, 50, end},
		{-30, -40, 50, end},
		{300 + 5, 400 + 12, 13, end},
		{75, 100, 0, end},
		{3, 4, 5, Point{}},
	} {
		if got := FromLine(c.x, c.y, Point{}, c.to); got != c.want {
			t.Errorf("%g, %g is %g from the line to %v, want %g", c.x, c.y, got, c.to, c.want)
		}
	}
}

// The L is 100 x 100 without its upper right quarter; a disc of radius 10 stands in that corner,
// as near to both edges as it is told.
func TestApart(t *testing.T) {
	box := func(x0, y0, x1, y1 Length) Contour { return RectContour(R(x0*1e6, y0*1e6, x1*1e6, y1*1e6)) }
	p := func(x, y Length) Point { return Point{X: x * 1e6, Y: y * 1e6} }
	l := Contour{{Point: p(0, 0)}, {Point: p(100, 0)}, {Point: p(100, 50)}, {Point: p(50, 50)}, {Point: p(50, 100)}, {Point: p(0, 100)}}
	for name, c := range map[string]struct {
		a, b Contour
		want float64
	}{
		"side by side":     {box(0, 0, 10, 10), box(13, 2, 20, 8), 3e6},
		"cornerwise":       {box(0, 0, 10, 10), box(13, 14, 20, 20), 5e6},
		"edges touch":      {box(0, 0, 10, 10), box(10, 5, 20, 8), 0},
		"one in the other": {box(0, 0, 10, 10), box(3, 3, 4, 4), 0},
		"they cross":       {box(0, 4, 10, 6), box(4, 0, 6, 10), 0},
		"in the notch":     {l, box(54, 57, 100, 100), 4e6},
		"a disc there":     {l, CircleContour(p(65, 68), 10e6), 5e6},
	} {
		for _, got := range []float64{Apart(c.a, c.b), Apart(c.b, c.a)} {
			if got != c.want {
				t.Errorf("%s: %g nm apart, want %g", name, got, c.want)
			}
		}
	}
}
