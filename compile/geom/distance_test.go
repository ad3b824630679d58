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
