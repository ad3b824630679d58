package simplex_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/simplex"
)

// TestBlend mixes feeds as worked by hand: 3 of a and 2 of b are least of 4a + 3b with 2a + b >= 8
// and a + 2b >= 7.
func TestBlend(t *testing.T) {
	p := simplex.New([]float64{8, 7}, []simplex.Column{
		{Terms: []simplex.Term{{Row: 0, By: 1}}, Cost: 100, Tag: 7},
		{Terms: []simplex.Term{{Row: 1, By: 1}}, Cost: 100, Tag: 8},
	})
	all := []simplex.Column{
		{Terms: []simplex.Term{{Row: 0, By: 2}, {Row: 1, By: 1}}, Cost: 4, Tag: 0},
		{Terms: []simplex.Term{{Row: 0, By: 1}, {Row: 1, By: 2}}, Cost: 3, Tag: 1},
	}
	solve(p, all)
	got := map[int]float64{}
	p.Parts(func(c simplex.Column, x float64) { got[c.Tag] = x })
	if math.Abs(p.Value()-18) > 1e-9 || math.Abs(got[0]-3) > 1e-9 || math.Abs(got[1]-2) > 1e-9 {
		t.Errorf("%v cost %v, want 3 and 2 for 18", got, p.Value())
	}
}

// solve lets columns in until none gains.
func solve(p *simplex.Program, all []simplex.Column) {
	for any := true; any; {
		any = p.Trim()
		for _, c := range all {
			any = p.Enter(c) || any
		}
	}
}

// TestDuality finds that what is taken gives what is needed and costs what the worths say, and
// that no column gains at these, which proves that nothing costs less.
func TestDuality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(1, 12).Draw(t, "rows")
		var need []float64
		var first, all []simplex.Column
		for i := range rows {
			need = append(need, float64(rapid.IntRange(0, 40).Draw(t, "need")))
			first = append(first, simplex.Column{Terms: []simplex.Term{{Row: i, By: 1}}, Cost: 1000})
		}
		for range rapid.IntRange(0, 30).Draw(t, "columns") {
			c := simplex.Column{Cost: float64(rapid.IntRange(1, 20).Draw(t, "cost"))}
			for i := range rows {
				if n := rapid.IntRange(-3, 5).Draw(t, "by"); n > 0 {
					c.Terms = append(c.Terms, simplex.Term{Row: i, By: float64(n)})
				}
			}
			all = append(all, c)
		}
		p := simplex.New(need, first)
		solve(p, all)
		gives, cost := make([]float64, rows), 0.0
		p.Parts(func(c simplex.Column, x float64) {
			cost += c.Cost * x
			for _, t := range c.Terms {
				gives[t.Row] += t.By * x
			}
		})
		for i := range rows {
			if math.Abs(gives[i]-need[i]) > 1e-3 {
				t.Errorf("%v of row %d, %v needed", gives[i], i, need[i])
			}
		}
		if math.Abs(cost-p.Value()) > 1e-3 {
			t.Errorf("cost %v, worth %v", cost, p.Value())
		}
		for _, c := range append(all, first...) {
			if p.Gain(c) > 1e-6*c.Cost {
				t.Errorf("%v gains %v", c, p.Gain(c))
			}
		}
	})
}
