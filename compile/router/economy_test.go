package router_test

import (
	"fmt"
	"os"
	"testing"

	"barwright/compile/router"
	"barwright/compile/router/routertest"
)

func TestMeasure(t *testing.T) {
	for i := range 300 {
		r := routertest.Requests().Example(i)
		p, refusal := router.Plan(r)
		if refusal != nil {
			t.Fatalf("%d %+v", i, refusal)
		}
		w := rasterOf(&p, 0.4)
		s := w.run()
		roughLevels := len(p.Levels)
		if r.Tool.Floor > 0 {
			roughLevels--
		}
		area := r.Shape.X.Size().MM() * r.Shape.Y.Size().MM() / r.Tool.Stepover.MM() * float64(roughLevels)
		fmt.Fprintf(os.Stdout, "%d open%d %s %s %s w/D %.2f x %.2f s/D %.2f levels %d: rough %.3f air %.3f ramp %.3f deep %.2f/%.2f\n", i, len(r.Open), r.Tool.Passes, r.Tool.Entry, r.Tool.Relief,
			r.Shape.X.Size().MM()/r.Tool.Diameter.MM(), r.Shape.Y.Size().MM()/r.Tool.Diameter.MM(), r.Tool.Stepover.MM()/r.Tool.Diameter.MM(), roughLevels,
			s.rough/area, s.air/s.all, s.ramp/s.all, s.deepest, r.Tool.Stepdown.MM())
	}
}
