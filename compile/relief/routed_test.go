package relief_test

import (
	"math"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/lang/length"
)

// A bore passes through each closed corner: half a round stands on the line between the
// points where it leaves the sides, less the triangle that is recessed anyway.
func TestRouted(t *testing.T) {
	for _, test := range []struct {
		way    string
		open   []model.Edge
		corner float64 // mm² more at each, in squares of the bit's radius
		n      int
	}{
		{relief.Diagonal, []model.Edge{model.Bottom}, math.Pi/2 - 1, 2},
		{relief.LongSide, []model.Edge{model.Bottom}, math.Pi / 2, 2},
		{relief.Diagonal, nil, math.Pi/2 - 1, 4},
		{relief.LongSide, nil, math.Pi / 2, 4},
		{"none", nil, 0, 0},
	} {
		r := routertest.Support()
		r.Tool.Relief, r.Corner, r.Open = test.way, 0, test.open
		if test.open == nil {
			r.Shape.Y.Lo += 20 * length.Millimetre
		}
		g, refusal := router.Plan(r)
		if refusal != nil {
			t.Fatal(refusal)
		}
		shape := r.Shape
		shape.X.Lo, shape.X.Hi = shape.X.Lo+r.Mark, shape.X.Hi+r.Mark // as the part is drawn
		area := shape.X.Size().MM() * shape.Y.Size().MM()
		p := &model.Part{Recesses: []model.Recess{{ID: "another"}, {ID: r.RecessID, Routed: true, Shape: geom.RectContour(shape)}}}
		other := g
		other.RecessID, other.Reliefs = "another", nil
		got := relief.Routed(p, []model.Program{other, g})
		if same := got == p; same != (test.n == 0) {
			t.Errorf("%s: the part itself: %t", test.way, same)
		}
		if len(p.Recesses[1].Shape) != 4 {
			t.Error("the part was written to")
		}
		radius := r.Tool.Diameter.MM() / 2
		want := area + float64(test.n)*test.corner*radius*radius
		if a := got.Recesses[1].Shape.Area(); math.Abs(a-want) > 1e-3 || len(got.Recesses[1].Shape) != 4+test.n {
			t.Errorf("%s, %d: %f mm² with %d corners, want %f with %d", test.way, test.n, a, len(got.Recesses[1].Shape), want, 4+test.n)
		}
	}
}
