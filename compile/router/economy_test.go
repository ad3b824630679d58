package router_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/programtest"
	"barwright/compile/router/routertest"
)

// economy is what a program takes beside what it might.
type economy struct {
	spent
	ideal  float64 // length of roughing: area / step-over, level by level
	passes float64 // likewise, of so many whole passes as are needed, as long as the recess
	area   float64 // in square bits
	long   float64 // in bits
	levels int     // with that of the floor
}

func economyOf(p *model.Program) economy {
	t, size := p.Tool, p.Shape.Bounds()
	bit, over, x, y := t.Diameter.MM(), t.Stepover.MM(), size.X.Size().MM(), size.Y.Size().MM()
	cell := bit / 16
	if min(x, y) < 1.5*bit {
		cell = bit / 48
	}
	e := economy{spent: rasterOf(p, cell).run(), area: x * y / bit / bit, long: max(x, y) / bit, levels: len(p.Levels)}
	rough := float64(len(p.Levels))
	if t.Floor > 0 {
		rough--
	}
	passes := 1 + math.Ceil((min(x, y)-allowances(p)-bit)/over)
	e.ideal, e.passes = rough*x*y/over, rough*passes*max(x, y)
	return e
}

// allowances is what stays on the longer sides for the last pass.
func allowances(p *model.Program) float64 {
	size := p.Shape.Bounds()
	sides := [2]model.Edge{model.Bottom, model.Top}
	if size.Y.Size() > size.X.Size() {
		sides = [2]model.Edge{model.LeftEdge, model.RightEdge}
	}
	sum := 0.0
	for _, e := range sides {
		if !slices.Contains(p.Open, e) {
			sum += p.Tool.Finish.MM()
		}
	}
	return sum
}

// TestEconomy: over 300 drawn recesses, the same every time, of which a third at least
// are open-ended, relieved, narrower than 1.2 bits or indexed, roughing cuts at
// most 1.05 x area / step-over, level by level, and a tenth of what is moved at feed
// is air at most, both summed.
//
// Each of them keeps to the first bound too, or to 1.05 x the length of the whole
// passes that it needs: no path takes a recess of 1.1 bits in less than two. Where it
// is open, and no longer than 3 bits, the way in counts for more: 1.15 x.
//
// Each of them that is closed all round, or larger than 32 square bits, keeps to the
// second. At an open side each level costs the way out of the wood, clear of it, and
// back in to it, 1.7 radii and 4 mm, however small the recess is, and so do the ends of
// walls, and the way across the mouth from one wall to the other. Half a bit apart,
// 32 square bits are cut in 64 bits, of which that is a tenth. From 8 square
// bits on a fifth is kept to, and 26 % below.
func TestEconomy(t *testing.T) {
	programs := programtest.Programs(t)
	took := make([]economy, len(programs))
	t.Run("each", func(t *testing.T) {
		for i, p := range programs {
			t.Run(fmt.Sprint(i), func(t *testing.T) {
				t.Parallel()
				took[i] = economyOf(p)
				took[i].judge(t, p)
			})
		}
	})
	var sum economy
	special, thrifty := 0, 0
	for i, e := range took {
		sum.rough, sum.ramp, sum.ideal = sum.rough+e.rough, sum.ramp+e.ramp, sum.ideal+e.ideal
		sum.air, sum.all = sum.air+e.air, sum.all+e.all
		if programtest.Special(programs[i]) {
			special++
		}
		if e.air <= e.all/10 {
			thrifty++
		}
	}
	t.Logf("%d special; roughing %.3f x area / step-over, ramps %.3f; air %.3f of all, at most a tenth in %d",
		special, sum.rough/sum.ideal, sum.ramp/sum.ideal, sum.air/sum.all, thrifty)
	if thrifty < len(programs)-23 {
		t.Errorf("more than a tenth is air in %d", len(programs)-thrifty)
	}
	if 3*special < len(programs) || sum.rough+sum.ramp > 1.05*sum.ideal || sum.air > sum.all/10 {
		t.Error("the sums are beyond their bounds")
	}
}

func (e economy) judge(t *testing.T, p *model.Program) {
	open := len(p.Open) > 0
	rough, air := 1.05, 0.10
	if open && e.long <= 3 {
		rough = 1.15
	}
	switch {
	case open && e.area <= 8:
		air = 0.26
	case open && e.area <= 32:
		air = 0.20
	}
	if most := rough * max(e.ideal, e.passes); e.rough > most {
		t.Errorf("roughing cuts %.0f mm, more than %.0f", e.rough, most)
	}
	if e.air > air*e.all {
		t.Errorf("%.0f mm of %.0f in the air, more than %.0f %%", e.air, e.all, 100*air)
	}
	if e.deepest > p.Tool.Stepdown.MM()+0.001 {
		t.Errorf("takes %.3f mm at once", e.deepest)
	}
}

// BenchmarkEconomy reports the same of a plate of 5 x 3.5 in in the middle of a board
// and at its edge, 0.5 in deep, and of the examples' programs, for a bit of 0.25 in or
// theirs.
func BenchmarkEconomy(b *testing.B) {
	for _, open := range [][]model.Edge{nil, {model.Bottom}} {
		r := routertest.Support()
		r.Open, r.Depth, r.Shape = open, inch/2, geom.R(0, 0, 5*inch, 3*inch+inch/2)
		r.Stock = r.Shape.Grow(inch)
		if open != nil {
			r.Stock.Y.Lo = r.Shape.Y.Lo
		}
		p, refusal := router.Plan(r)
		if refusal != nil {
			b.Fatalf("%+v", refusal)
		}
		b.Run(fmt.Sprintf("plate with %d open sides", len(open)), func(b *testing.B) { report(b, []model.Program{p}) })
	}
	for _, name := range []string{"boatshed", "servery"} {
		programs := programtest.Example(b, name)
		b.Run(name, func(b *testing.B) { report(b, programs) })
	}
}

func report(b *testing.B, programs []model.Program) {
	var rough, ideal, air, all float64
	for b.Loop() {
		rough, ideal, air, all = 0, 0, 0, 0
		for i := range programs {
			e := economyOf(&programs[i])
			rough, ideal, air, all = rough+e.rough, ideal+e.ideal, air+e.air, all+e.all
		}
	}
	b.ReportMetric(rough/ideal, "roughing/(area/step-over)")
	b.ReportMetric(100*air/all, "%air")
}
