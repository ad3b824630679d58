package boards

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Notches and holes of IRC R602.6 in a stud 3 1/2 in wide, and pipes through studs:
// trade facts, 18, rows 7 to 10.
func TestStudOfWorkedExamples(t *testing.T) {
	inches := func(n float64) length.Length { return length.Length(math.Round(n * float64(length.Inch))) }
	for _, test := range []struct {
		wide, hole            float64
		percent               string
		edge                  float64
		bearing, other, clear bool // within 40 %, within 60 %, and 5/8 in at the edges
	}{
		{3.5, 1.400, "40.0 %", 1.05, true, true, true},
		{3.5, 2.100, "60.0 %", 0.7, false, true, true},
		{3.5, 2.250, "64.3 %", 0.625, false, false, true},
		{3.5, 1.900, "54.3 %", 0.8, false, true, true},
		{3.5, 2.375, "67.9 %", 0.5625, false, false, false},
		{5.5, 2.375, "43.2 %", 1.5625, false, true, true},
		{5.5, 4.250, "77.3 %", 0.625, false, false, true},
	} {
		wide, hole := inches(test.wide), inches(test.hole)
		if got := percent(hole, wide); got != test.percent {
			t.Errorf("%v of %v: %s, want %s", test.hole, test.wide, got, test.percent)
		}
		edge := woodAt(wide, hole, wide/2)
		if edge != inches(test.edge) || (edge >= inches(0.625)) != test.clear {
			t.Errorf("%v of %v: %v at the edge, want %v in", test.hole, test.wide, edge, test.edge)
		}
		if bearing, other := hole <= share(0.4, wide), hole <= share(0.6, wide); bearing != test.bearing || other != test.other {
			t.Errorf("%v of %v: within 40 %%: %v, within 60 %%: %v", test.hole, test.wide, bearing, other)
		}
	}
	for of, want := range map[float64]float64{0.25: 0.875, 0.4: 1.4} { // notches
		if got := share(of, inches(3.5)); got != inches(want) {
			t.Errorf("%v of 3.5 in: %v, want %v in", of, got, want)
		}
	}
}

// The deepest section, against a count of the cells of a grid.
func TestDeepestAgainstGrid(t *testing.T) {
	const long, wide = 30, 12
	rapid.Check(t, func(t *rapid.T) {
		var cuts []cutOut
		var gone [long][wide]bool
		for range rapid.IntRange(0, 5).Draw(t, "cuts") {
			x, y := rapid.IntRange(0, long-1).Draw(t, "x"), rapid.IntRange(0, wide-1).Draw(t, "y")
			w, h := rapid.IntRange(1, long-x).Draw(t, "w"), rapid.IntRange(1, wide-y).Draw(t, "h")
			cuts = append(cuts, cutOut{at: geom.R(length.Length(x), length.Length(y), length.Length(x+w), length.Length(y+h))})
			for i := x; i < x+w; i++ {
				for j := y; j < y+h; j++ {
					gone[i][j] = true
				}
			}
		}
		most := 0
		for _, column := range gone {
			n := 0
			for _, cell := range column {
				if cell {
					n++
				}
			}
			most = max(most, n)
		}
		if got, at := deepest(cuts); int(got) != most || (len(at) > 0) != (most > 0) {
			t.Fatalf("%d of %d cuts, want %d", got, len(at), most)
		}
	})
}

// The nearest stud, against all of them.
func TestNearestAgainstAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var studs []length.Length
		at := length.Length(rapid.IntRange(0, 500).Draw(t, "at"))
		last, want := length.Length(0), length.Max
		for range rapid.IntRange(1, 8).Draw(t, "studs") {
			last += length.Length(rapid.IntRange(1, 100).Draw(t, "gap"))
			studs = append(studs, last)
			want = min(want, max(last-at, at-last))
		}
		if got := toNearest(studs, at); got != want {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}
