package view

import (
	"testing"

	"barwright/compile/geom"

	"pgregory.net/rapid"
)

func TestSpread(t *testing.T) {
	tests := []struct {
		name        string
		want, sizes []Length
		ends        geom.Span
		places      []Length
	}{
		{"room enough", []Length{0, 100}, []Length{20, 20}, geom.Span{}, []Length{0, 100}},
		{"two share the push", []Length{50, 54}, []Length{20, 20}, geom.Span{}, []Length{42, 62}},
		{"pushed off an end", []Length{5, 100}, []Length{20, 20}, geom.Span{Hi: 200}, []Length{10, 100}},
		{"just fits", []Length{0, 0}, []Length{20, 30}, geom.Span{Hi: 50}, []Length{10, 35}},
		{"too much for the ends", []Length{25, 25}, []Length{40, 40}, geom.Span{Hi: 50}, []Length{5, 45}},
	}
	for _, test := range tests {
		got := spread(test.want, test.sizes, test.ends)
		for i := range got {
			if got[i] != test.places[i] {
				t.Errorf("%s: got %v, want %v", test.name, got, test.places)
				break
			}
		}
	}
}

// Nothing overlaps, the order is kept, and no other arrangement within a step
// of each place is nearer to what was wanted.
func TestSpreadIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "n")
		var want, sizes []Length
		at := Length(0)
		for range n {
			at += Length(rapid.IntRange(0, 60).Draw(t, "step"))
			want = append(want, at)
			sizes = append(sizes, 2*Length(rapid.IntRange(1, 20).Draw(t, "size")))
		}
		got := spread(want, sizes, geom.Span{})
		far := func(places []Length) (sum Length) {
			for i := range places {
				sum += (places[i] - want[i]) * (places[i] - want[i])
			}
			return sum
		}
		clear := func(places []Length) bool {
			for i := 1; i < n; i++ {
				if places[i]-places[i-1] < (sizes[i]+sizes[i-1])/2 {
					return false
				}
			}
			return true
		}
		if !clear(got) {
			t.Fatalf("%v of sizes %v overlap", got, sizes)
		}
		// Rounding may cost each place one unit.
		slack := Length(0)
		for i := range got {
			d := got[i] - want[i]
			slack += 2*max(d, -d) + 1
		}
		trial := make([]Length, n)
		for code := range 243 {
			for i, c := 0, code; i < n; i, c = i+1, c/3 {
				trial[i] = got[i] + Length(c%3-1)
			}
			if clear(trial) && far(trial) < far(got)-slack {
				t.Fatalf("%v is nearer to %v than %v", trial, want, got)
			}
		}
	})
}
