package spacing

import (
	"math/big"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

const inch = length.Inch

func inches(values ...float64) []geom.Length {
	var out []geom.Length
	for _, v := range values {
		out = append(out, geom.Length(v*float64(inch)))
	}
	return out
}

func TestOnCentres(t *testing.T) {
	for _, c := range []struct {
		name                       string
		length, spacing, thickness float64
		want                       []geom.Length
	}{
		{"two studs alone", 3, 16, 1.5, inches(0.75, 2.25)},
		{"nothing between", 16, 16, 1.5, inches(0.75, 15.25)},
		{"16 in on centres", 96, 16, 1.5, inches(0.75, 16, 32, 48, 64, 80, 95.25)},
		{"the example bar", 78, 13, 1.5, inches(0.75, 13, 26, 39, 52, 65, 77.25)},
		// 48 stands 0.25 clear of the last.
		{"just clear of the last", 50.5, 16, 1.5, inches(0.75, 16, 32, 48, 49.75)},
		// The one at 48 would stand in the last, at 48.25; 32 and that are 16 1/4 apart.
		{"one that would stand in the last", 49, 16, 1.5, inches(0.75, 16, 32, 46.75, 48.25)},
		// The one at 48 would stand in the last, at 47.9; 32 and that are near enough.
		{"one that is not needed", 48.65, 16, 1.5, inches(0.75, 16, 32, 47.9)},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := OnCentres(geom.Span{Hi: inches(c.length)[0]}, inches(c.spacing)[0], inches(c.thickness)[0])
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestOnCentresAgainstRule reads the rule word by word: a stud flush with
// either end; the marks of a tape laid from the low end, as long as a stud on
// one stands clear of the last; one against the last where the gap that is
// left is too wide.
func TestOnCentresAgainstRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thickness := geom.Length(rapid.Int64Range(1, int64(2*inch)).Draw(t, "thickness"))
		spacing := geom.Length(rapid.Int64Range(int64(2*thickness), int64(40*inch)).Draw(t, "spacing"))
		lo := geom.Length(rapid.Int64Range(-int64(100*inch), int64(100*inch)).Draw(t, "lo"))
		size := 2*thickness + geom.Length(rapid.Int64Range(0, int64(300*inch)).Draw(t, "over two studs"))
		if size/spacing > 1000 {
			t.Skip("too many")
		}
		stretch := geom.Span{Lo: lo, Hi: lo + size}
		half := thickness / 2
		stud := func(centre geom.Length) geom.Span { return geom.Span{Lo: centre - half, Hi: centre - half + thickness} }
		first, last := lo+half, stretch.Hi-thickness+half
		if stud(first).Lo != stretch.Lo || stud(last).Hi != stretch.Hi {
			t.Fatal("the ends are not flush")
		}
		want := []geom.Length{first}
		for k := geom.Length(1); ; k++ {
			if mark := lo + k*spacing; stud(mark).Hi <= stud(last).Lo {
				want = append(want, mark)
				continue
			}
			break
		}
		if last-want[len(want)-1] > spacing {
			want = append(want, last-thickness)
		}
		want = append(want, last)
		got := OnCentres(stretch, spacing, thickness)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatal(diff)
		}
		for i := range got[1:] {
			if gap := got[i+1] - got[i]; gap > spacing || gap < thickness {
				t.Fatalf("studs %d and %d are %d apart, with a spacing of %d", i, i+1, gap, spacing)
			}
		}
	})
}

func TestEven(t *testing.T) {
	for _, c := range []struct {
		name      string
		length    float64
		n         int
		end, mark float64
		want      []geom.Length
	}{
		{"one, in the middle", 78, 1, 0, 1, inches(39)},
		{"one, whatever the end", 78, 1, 5, 1, inches(39)},
		{"four in 78: 9 3/4 from the ends, 19 1/2 between", 78, 4, 0, 1. / 32, inches(9.75, 29.25, 48.75, 68.25)},
		{"three, with the ends given", 78, 3, 6, 1. / 32, inches(6, 39, 72)},
		{"two, with the ends given", 78, 2, 6, 1. / 32, inches(6, 72)},
		{"three in 70: 11 2/3 from the ends, on the next 1/32", 70, 3, 0, 1. / 32, inches(11.65625, 35, 58.34375)},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Even(geom.Span{Hi: inches(c.length)[0]}, c.n, inches(c.end)[0], inches(c.mark)[0])
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestEvenAgainstRule compares each centre with its place as an exact fraction.
func TestEvenAgainstRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "n")
		size := geom.Length(rapid.Int64Range(1, int64(length.Max)).Draw(t, "size"))
		mark := geom.Length(rapid.Int64Range(1, int64(inch)).Draw(t, "mark"))
		end := geom.Length(rapid.Int64Range(0, int64(size/2)).Draw(t, "end"))
		lo := geom.Length(rapid.Int64Range(-int64(length.Metre), int64(length.Metre)).Draw(t, "lo"))
		stretch := geom.Span{Lo: lo, Hi: lo + size}
		got := Even(stretch, n, end, mark)
		if len(got) != n {
			t.Fatalf("%d centres for %d", len(got), n)
		}
		for i, c := range got {
			if middle := 2*i+1 == n; middle {
				if off := 2*c - stretch.Lo - stretch.Hi; off != 0 && off != -1 {
					t.Fatalf("the middle one is at %d of %v", c, stretch)
				}
				continue
			}
			if c-stretch.Lo != stretch.Hi-got[n-1-i] {
				t.Fatalf("centres %d and %d are not mirrored", i, n-1-i)
			}
			near := min(i, n-1-i)
			from := got[near] - stretch.Lo
			ideal := new(big.Rat).SetFrac64(int64(size)*int64(2*near+1), int64(2*n))
			if end > 0 {
				ideal.SetFrac64(int64(size-2*end)*int64(near), int64(n-1))
				ideal.Add(ideal, new(big.Rat).SetInt64(int64(end)))
			}
			miss, _ := ideal.Sub(ideal, new(big.Rat).SetInt64(int64(from))).Float64()
			if from%mark != 0 || miss > float64(mark)/2+1 || miss < -float64(mark)/2-1 {
				t.Fatalf("centre %d is at %d: %v from its place, with marks of %d", i, from, miss, mark)
			}
		}
	})
}
