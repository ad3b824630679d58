package router_test

import (
	"math"
	"testing"

	"barwright/compile/router"
	"barwright/compile/router/routertest"
)

// TestEconomy bounds the way that the bit goes, for 300 drawn recesses, the same every
// time: what it cuts when roughing is at most 1.05 x area / step-over, level by
// level, up to a step-over of half the bit. Moves through air are at most a
// tenth of all, beside what coming down beside the wood, and running out at the
// ends of walls, takes however long the recess is: 8 bits a level, and once
// across the mouths for the walls.
func TestEconomy(t *testing.T) {
	var measured, thrifty int
	for i := range 300 {
		r := routertest.Requests().Example(i)
		p, refusal := router.Plan(r)
		if refusal != nil {
			t.Fatalf("%d: %+v", i, refusal)
		}
		s := rasterOf(&p, max(0.15, math.Sqrt(r.Shape.X.Size().MM()*r.Shape.Y.Size().MM()/15_000))).run()
		levels := len(p.Levels)
		if r.Tool.Floor > 0 {
			levels--
		}
		bit, x, y := r.Tool.Diameter.MM(), r.Shape.X.Size().MM(), r.Shape.Y.Size().MM()
		if most := 1.05 * x * y / r.Tool.Stepover.MM() * float64(levels); 2*r.Tool.Stepover <= r.Tool.Diameter {
			measured++
			if s.rough > most {
				t.Errorf("%d: roughing cuts %.0f mm, more than %.0f: %+v", i, s.rough, most, r)
			}
		}
		if s.air <= s.all/10 {
			thrifty++
		}
		if most := s.all/10 + 8*bit*float64(len(p.Levels)) + 2*(x+y); s.air > most {
			t.Errorf("%d: %.0f mm of %.0f in the air, more than %.0f: %+v", i, s.air, s.all, most, r)
		}
		if s.deepest > r.Tool.Stepdown.MM()+0.001 {
			t.Errorf("%d: takes %.3f mm at once: %+v", i, s.deepest, r)
		}
	}
	t.Logf("%d with a step-over of at most half the bit; %d with at most a tenth in the air", measured, thrifty)
}
