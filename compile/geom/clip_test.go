package geom

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// An L of 100 x 100 without its upper right quarter.
func TestClip(t *testing.T) {
	p := func(x, y Length) Point { return Point{X: x * 1e6, Y: y * 1e6} }
	l := Contour{{Point: p(0, 0)}, {Point: p(100, 0)}, {Point: p(100, 50)}, {Point: p(50, 50)}, {Point: p(50, 100)}, {Point: p(0, 100)}}
	for _, test := range []struct {
		name     string
		from, to Point
		want     [][2]Point
	}{
		{"inside", p(10, 10), p(90, 10), [][2]Point{{p(10, 10), p(90, 10)}}},
		{"beyond both edges", p(-1, 20), p(120, 20), [][2]Point{{p(0, 20), p(100, 20)}}},
		{"the other way", p(120, 20), p(-1, 20), [][2]Point{{p(100, 20), p(0, 20)}}},
		{"a point", p(10, 10), p(10, 10), [][2]Point{{p(10, 10), p(10, 10)}}},
		{"outside", p(60, 60), p(90, 90), nil},
		{"beside", p(-5, 0), p(-5, 100), nil},
		{"along an edge", p(0, -10), p(0, 110), [][2]Point{{p(0, 0), p(0, 100)}}},
		{"along the notch", p(50, 0), p(50, 100), [][2]Point{{p(50, 0), p(50, 100)}}},
		{"across the notch", p(0, 120), p(120, 0), [][2]Point{{p(20, 100), p(50, 70)}, {p(70, 50), p(100, 20)}}},
	} {
		if diff := cmp.Diff(test.want, l.Clip(test.from, test.to)); diff != "" {
			t.Errorf("%s: %s", test.name, diff)
		}
		if diff := cmp.Diff(test.want, l.Reversed().Clip(test.from, test.to)); diff != "" {
			t.Errorf("%s, reversed: %s", test.name, diff)
		}
	}
}
