package spacing_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/spacing"
)

// TestSplitAgainstAllChoices looks at every choice of places.
func TestSplitAgainstAllChoices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stretch := geom.Span{Lo: geom.Length(rapid.IntRange(-5, 5).Draw(t, "lo"))}
		stretch.Hi = stretch.Lo + geom.Length(rapid.IntRange(1, 60).Draw(t, "size"))
		most := geom.Length(rapid.IntRange(1, 40).Draw(t, "most"))
		var at []geom.Length
		for range rapid.IntRange(0, 8).Draw(t, "places") {
			at = append(at, geom.Length(rapid.IntRange(-6, 66).Draw(t, "at")))
		}
		slices.Sort(at)
		at = slices.Compact(at)
		got, ok := spacing.Split(stretch, most, at)
		var want []geom.Length
		found, wantCost := false, geom.Length(0)
		for choice := range 1 << len(at) {
			var cuts []geom.Length
			for i, x := range at {
				if choice>>i&1 == 1 && x > stretch.Lo && x < stretch.Hi {
					cuts = append(cuts, x)
				}
			}
			cost, fits, last := geom.Length(0), true, stretch.Lo
			for _, x := range append(slices.Clone(cuts), stretch.Hi) {
				cost += (x - last) * (x - last)
				fits, last = fits && x-last <= most, x
			}
			better := !found || len(cuts) < len(want) || len(cuts) == len(want) && (cost < wantCost || cost == wantCost && slices.Compare(cuts, want) < 0)
			if fits && better {
				want, wantCost, found = cuts, cost, true
			}
		}
		if ok != found || !slices.Equal(got, want) {
			t.Fatalf("%v in pieces of %d at %v: %v, %v; want %v, %v", stretch, most, at, got, ok, want, found)
		}
	})
}
