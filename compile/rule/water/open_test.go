package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// TestWithinARectangle walks a straight way in short steps and counts those that are in
// the rectangle.
func TestWithinARectangle(t *testing.T) {
	const steps = 2000
	rapid.Check(t, func(t *rapid.T) {
		place := func(name string) geom.Length {
			return geom.Length(rapid.IntRange(-50, 50).Draw(t, name)) * length.Inch
		}
		from, to := geom.Point{X: place("x0"), Y: place("y0")}, geom.Point{X: place("x1"), Y: place("y1")}
		r := geom.Rect{X: geom.Between(place("left"), place("right")), Y: geom.Between(place("rear"), place("front"))}
		inside := 0
		for i := range steps {
			on := (float64(i) + 0.5) / steps
			x, y := float64(from.X)+on*float64(to.X-from.X), float64(from.Y)+on*float64(to.Y-from.Y)
			if float64(r.X.Lo) <= x && x <= float64(r.X.Hi) && float64(r.Y.Lo) <= y && y <= float64(r.Y.Hi) {
				inside++
			}
		}
		lo, hi := within(from, to, r)
		const rounding = 1e-6 // of a step: both ends of what is inside may lie just on one, which makes one more
		if have := max(0, hi-lo); math.Abs(have*steps-float64(inside)) > 1+rounding {
			t.Fatalf("%v to %v is in %v for %g of it, of %d steps %d are", from, to, r, have, steps, inside)
		}
	})
}
