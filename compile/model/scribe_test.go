package model

import (
	"testing"

	"barwright/compile/geom"
)

// Of a panel 500 x 800 a toe kick is cut out, 50 x 150 at the lower right, and a notch, 100 x 20 from 200 along
// its upper edge: a tape from either line stops at these.
func TestLeft(t *testing.T) {
	p := &Part{
		Placement: geom.Placement{Box: geom.Box{U: geom.Span{Hi: 500}, Z: geom.Span{Hi: 800}, V: geom.Span{Hi: 18}}, X: geom.Dir{Axis: geom.U}, Y: geom.Dir{Axis: geom.Z}},
	}
	for _, at := range [...]geom.Point{{}, {X: 450}, {X: 450, Y: 150}, {X: 500, Y: 150}, {X: 500, Y: 800}, {X: 300, Y: 800}, {X: 300, Y: 780}, {X: 200, Y: 780}, {X: 200, Y: 800}, {Y: 800}} {
		p.Outline = append(p.Outline, geom.Vertex{Point: at})
	}
	for _, c := range [...]struct {
		edge Edge
		at   geom.Point
		want Length
	}{
		{Bottom, geom.Point{X: 100, Y: 7}, 793},
		{Bottom, geom.Point{X: 250, Y: 7}, 773},
		{Bottom, geom.Point{X: 450, Y: 7}, 793},
		{LeftEdge, geom.Point{X: 9, Y: 100}, 441},
		{LeftEdge, geom.Point{X: 9, Y: 400}, 491},
		{RightEdge, geom.Point{X: 490, Y: 400}, 490},
		{Top, geom.Point{X: 400, Y: 795}, 795},
	} {
		if got := (&Scribe{Edge: c.edge}).Left(p, c.at); got != c.want {
			t.Errorf("%s at %v: %d is left, want %d", c.edge, c.at, got, c.want)
		}
	}
}
