package nesting

import (
	"testing"

	"pgregory.net/rapid"
)

// TestScales holds every scale to what bounds rest on: lengths in a row are worth no more than
// the length that they make, and the whole is worth one.
func TestScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := Length(rapid.Int64Range(1, 4_000_000_000).Draw(t, "whole"))
		if rapid.Bool().Draw(t, "small") {
			whole = whole%60 + 1
		}
		length := func(most Length, name string) Length {
			return Length(rapid.Int64Range(0, int64(most)).Draw(t, name))
		}
		var all []Length
		for range 5 {
			all = append(all, 1+length(whole-1, "length"))
		}
		a := length(whole, "a")
		b := length(whole-a, "b")
		for _, f := range scales(all, whole) {
			if f.of(whole) != 1 {
				t.Fatalf("%v gives the whole %v", f, f.of(whole))
			}
			if f.of(a)+f.of(b) > f.of(a+b)+1e-12 {
				t.Fatalf("%v gives %v to %d, %v to %d, together %v", f, f.of(a), a, f.of(b), b, f.of(a+b))
			}
		}
	})
}

// TestCover compares the least price of sheets that cover a need with that of every set.
func TestCover(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var kinds []kind
		var area []float64
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			kinds = append(kinds, kind{price: int64(rapid.IntRange(0, 20).Draw(t, "price")), most: rapid.IntRange(1, 5).Draw(t, "most")})
			area = append(area, float64(rapid.IntRange(0, 10).Draw(t, "area"))/10)
		}
		need := float64(rapid.IntRange(0, 60).Draw(t, "need")) / 10
		var least func(i int, need float64) int64
		least = func(i int, need float64) int64 {
			if need <= 1e-9 {
				return 0
			}
			if i == len(kinds) {
				return 1000
			}
			best := int64(1000)
			for n := range kinds[i].most + 1 {
				best = min(best, int64(n)*kinds[i].price+least(i+1, need-float64(n)*area[i]))
			}
			return best
		}
		want := least(0, need)
		if want >= 1000 {
			want = 0
		}
		if got := newCover(kinds, area).whole(need); got != want {
			t.Fatalf("got %d, want %d", got, want)
		}
	})
}
