package setting

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// What lies in none is the same as where each is compared with each; some are the same, some have no end.
func TestUncovered(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 2))
	for round := range 200 {
		all := make([]obstacle, 1+chance.IntN(300))
		for i := range all {
			all[i].group = i
			for axis := range 3 {
				lo := float64(chance.IntN(12))
				on := span{lo, lo + float64(chance.IntN(6))}
				if round%3 == 0 && axis == 2 && chance.IntN(20) == 0 {
					on = span{math.Inf(-1), math.Inf(1)}
				}
				all[i].at = append(all[i].at, on)
			}
		}
		var want []int
		for i := range all {
			hidden := false
			for j := range all {
				hidden = hidden || i != j && all[j].at.holds(all[i].at) && (i > j || !all[i].at.holds(all[j].at))
			}
			if !hidden {
				want = append(want, i)
			}
		}
		var got []int
		for _, o := range uncovered(all) {
			got = append(got, o.group)
		}
		if !slices.Equal(got, want) || len(want) == 0 {
			t.Fatalf("of %d obstacles %v lie in none, not %v", len(all), got, want)
		}
	}
}
