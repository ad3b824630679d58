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

// TestLimit takes no more of the cheaper of two than there is: 5 of 12, and then 5 of 8.
func TestLimit(t *testing.T) {
	cheap := simplex.Column{Terms: []simplex.Term{{Row: 0, By: 1}, {Row: 1, By: -1}}, Cost: 2, Tag: 0}
	first := []simplex.Column{{Terms: []simplex.Term{{Row: 0, By: 1}}, Cost: 3, Tag: 1}, simplex.Spare(1)}
	p := simplex.New([]float64{12, -5}, first)
	solve(p, []simplex.Column{cheap})
	if math.Abs(p.Value()-31) > 1e-9 {
		t.Errorf("cost %v, want 5 at 2 and 7 at 3", p.Value())
	}
	p = p.Again([]float64{8, -5}, 100)
	solve(p, append(first, cheap))
	if math.Abs(p.Value()-19) > 1e-9 {
		t.Errorf("cost %v, want 5 at 2 and 3 at 3", p.Value())
	}
}

// TestDuality finds that what is taken gives what is needed and costs what the worths say, and
// that no column gains at these, which proves that nothing costs less; and again of a smaller need.
func TestDuality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.IntRange(1, 12).Draw(t, "rows")
		var need, less []float64
		var first, all []simplex.Column
		for i := range rows {
			n := rapid.IntRange(-9, 40).Draw(t, "need")
			need = append(need, float64(n))
			less = append(less, float64(n*rapid.IntRange(0, 4).Draw(t, "left")/4))
			if n < 0 {
				first = append(first, simplex.Spare(i))
			} else {
				first = append(first, simplex.Column{Terms: []simplex.Term{{Row: i, By: 1}}, Cost: 1000})
			}
		}
		for range rapid.IntRange(0, 30).Draw(t, "columns") {
			c := simplex.Column{Cost: float64(rapid.IntRange(1, 20).Draw(t, "cost"))}
			for i := range rows {
				switch n := float64(rapid.IntRange(-3, 5).Draw(t, "by")); {
				case n > 0 && need[i] < 0:
					c.Terms = append(c.Terms, simplex.Term{Row: i, By: -1})
				case n > 0:
					c.Terms = append(c.Terms, simplex.Term{Row: i, By: n})
				}
			}
			all = append(all, c)
		}
		all = append(all, first...)
		p := simplex.New(need, first)
		solve(p, all)
		least(t, p, need, all)
		p = p.Again(less, 1e6)
		solve(p, all)
		least(t, p, less, all)
	})
}

// least proves that a program costs the least.
func least(t *rapid.T, p *simplex.Program, need []float64, all []simplex.Column) {
	gives, cost := make([]float64, len(need)), 0.0
	p.Parts(func(c simplex.Column, x float64) {
		if c.Tag == simplex.Excess {
			c.Cost = 0 // what stands in is driven out
		}
		cost += c.Cost * x
		for _, t := range c.Terms {
			gives[t.Row] += t.By * x
		}
	})
	for i := range need {
		if math.Abs(gives[i]-need[i]) > 1e-3 {
			t.Errorf("%v of row %d, %v needed", gives[i], i, need[i])
		}
	}
	if math.Abs(cost-p.Value()) > 1e-3 {
		t.Errorf("cost %v, worth %v", cost, p.Value())
	}
	for _, c := range all {
		if p.Gain(c) > 1e-6*c.Cost {
			t.Errorf("%v gains %v", c, p.Gain(c))
		}
	}
}
