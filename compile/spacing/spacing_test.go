package spacing_test

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang/length"
)

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
			got, refusal := spacing.Place(spacing.Ask{Stretch: geom.Span{Hi: inches(c.length)[0]}, Count: c.n, End: inches(c.end)[0], HalfEnds: c.end == 0, Mark: inches(c.mark)[0], Mirrored: true})
			if diff := cmp.Diff(c.want, got.Centres); diff != "" || refusal != nil {
				t.Error(diff)
			}
		})
	}
}

// TestPlaceWhereNothingIsClosed compares each centre with its place as an exact
// fraction: the best marks lie beside it, whatever the size.
func TestPlaceWhereNothingIsClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 40).Draw(t, "n")
		size := geom.Length(rapid.Int64Range(int64(length.Metre), int64(length.Max)).Draw(t, "size"))
		mark := geom.Length(rapid.Int64Range(1, int64(inch)/8).Draw(t, "mark"))
		a := spacing.Ask{Count: n, Mark: mark, Mirrored: rapid.Bool().Draw(t, "mirrored"), HalfEnds: rapid.Bool().Draw(t, "half")}
		a.Stretch.Lo = geom.Length(rapid.Int64Range(-int64(length.Metre), int64(length.Metre)).Draw(t, "lo"))
		a.Stretch.Hi = a.Stretch.Lo + size
		if !a.HalfEnds {
			a.End = geom.Length(rapid.Int64Range(0, int64(size/3)).Draw(t, "end"))
		}
		got, refusal := spacing.Place(a)
		if refusal != nil || len(got.Centres) != n || len(got.Forced) > 0 {
			t.Fatalf("%+v, %+v", got, refusal)
		}
		for i, c := range got.Centres {
			if a.Mirrored && 2*i+1 == n {
				if c != a.Stretch.Mid() {
					t.Fatalf("the middle one is at %d of %v", c, a.Stretch)
				}
				continue
			}
			if a.Mirrored && c-a.Stretch.Lo != a.Stretch.Hi-got.Centres[n-1-i] {
				t.Fatalf("centres %d and %d are not mirrored", i, n-1-i)
			}
			if near := min(c-a.Stretch.Lo, a.Stretch.Hi-c); near%mark != 0 {
				t.Fatalf("centre %d is at %d, %d past a mark", i, c, near%mark)
			}
			ideal := new(big.Rat).SetFrac64(int64(size)*int64(2*i+1), int64(2*n))
			if !a.HalfEnds {
				ideal.SetFrac64(int64(size-2*a.End)*int64(i), int64(n-1))
				ideal.Add(ideal, new(big.Rat).SetInt64(int64(a.End)))
			}
			miss, _ := ideal.Sub(ideal, new(big.Rat).SetInt64(int64(c-a.Stretch.Lo))).Float64()
			room := float64(mark)/2 + 1
			if off := c - a.Stretch.Mid(); max(off, -off) <= mark { // where the marks from both ends meet
				room = float64(mark) + 1
			}
			if miss > room || miss < -room {
				t.Fatalf("centre %d is at %d: %v from its place, with marks of %d", i, c, miss, mark)
			}
		}
	})
}

// drawAsk draws a small stretch, of a few coarse marks or of none.
func drawAsk(t *rapid.T, mark int) spacing.Ask {
	whole := func(name string, lo, hi int) geom.Length { return geom.Length(rapid.IntRange(lo, hi).Draw(t, name)) }
	a := spacing.Ask{
		Mark: geom.Length(mark), Least: whole("least", 0, 4*mark), Most: whole("most", 0, 12*mark), Count: rapid.IntRange(0, 5).Draw(t, "count"),
		Mirrored: rapid.Bool().Draw(t, "mirrored"), HalfEnds: rapid.Bool().Draw(t, "half ends"),
	}
	a.Stretch.Lo = whole("lo", -20, 20)
	a.Stretch.Hi = a.Stretch.Lo + whole("size", 1, 22*mark)
	if !a.HalfEnds {
		a.End = whole("end", 0, 5*mark)
	}
	if a.Count == 0 { // rows of nine are the longest that all can be looked at
		a.Most = max(a.Most, (a.Stretch.Size()+4)/5)
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "closed") {
		lo := a.Stretch.Lo + whole("from", -3, 22*mark)
		a.Closed = append(a.Closed, spacing.Closed{Span: geom.Span{Lo: lo, Hi: lo + whole("over", 1, 6*mark)}, By: fmt.Sprint("thing ", i)})
	}
	for range rapid.IntRange(0, 2).Draw(t, "fixed") {
		a.Fixed = append(a.Fixed, a.Stretch.Lo+whole("at", 0, int(a.Stretch.Size())))
	}
	slices.Sort(a.Fixed)
	a.Fixed = slices.Compact(a.Fixed)
	return a
}

// TestPlaceAgainstAllRows looks at every row and takes the best. Where rows are
// as even without anything in the way, it leaves which of them is taken open.
func TestPlaceAgainstAllRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAsk(t, 1)
		got, refusal := spacing.Place(a)
		want := best(a)
		if (want == nil) != (refusal != nil) || len(want) != len(got.Centres) {
			t.Fatalf("%+v\n%v for %v\n%+v", a, got.Centres, want, refusal)
		}
		if again, _ := spacing.Place(a); !cmp.Equal(got, again) {
			t.Fatalf("%+v, and then %+v", got, again)
		}
		if refusal != nil {
			return
		}
		checkForced(t, a, got)
		if isEven(a, got.Centres) {
			return
		}
		if diff := cmp.Diff(want, got.Centres); diff != "" {
			t.Fatalf("%+v\n%v for %v", a, got.Centres, want)
		}
	})
}

// isEven reports whether a row is the even one, rounded down from its left end.
func isEven(a spacing.Ask, row []geom.Length) bool {
	n, size := geom.Length(len(row)), a.Stretch.Size()
	for i, x := range row {
		k := geom.Length(i)
		if a.Mirrored && 2*k+1 > n {
			return true
		}
		at := size * (2*k + 1) / (2 * n)
		if !a.HalfEnds && n > 1 {
			at = row[0] - a.Stretch.Lo + (row[n-1]-row[0])*k/(n-1)
		}
		if x != a.Stretch.Lo+at {
			return false
		}
	}
	return true
}

// TestPlaceOnMarks takes the row without marks and moves it to them; where that
// cannot be, it looks at every row of marks.
func TestPlaceOnMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAsk(t, rapid.IntRange(2, 5).Draw(t, "mark"))
		a.Count = max(a.Count, 1)
		got, refusal := spacing.Place(a)
		want := best(a)
		if refusal != nil {
			if want != nil {
				t.Fatalf("%+v\n%+v for %v", a, refusal, want)
			}
			return
		}
		bare := a
		bare.Mark = 0
		fine, _ := spacing.Place(bare)
		near := len(fine.Centres) == len(got.Centres)
		for i, x := range got.Centres {
			if !near {
				break
			}
			room := a.Mark / 2
			if off := x - a.Stretch.Mid(); max(off, -off) <= a.Mark { // where the marks from both ends meet
				room = 2 * a.Mark
			}
			near = max(x-fine.Centres[i], fine.Centres[i]-x) <= room || beside(a, x)
		}
		if diff := cmp.Diff(want, got.Centres); diff != "" && !near {
			t.Fatalf("%+v\n%v for %v, and without marks %v", a, got.Centres, want, fine.Centres)
		}
		if !keeps(a, got.Centres) {
			t.Fatalf("%+v\n%v", a, got.Centres)
		}
	})
}

// beside reports whether the mark next to a place on either side is closed, or
// beyond the stretch.
func beside(a spacing.Ask, x geom.Length) bool {
	for _, next := range []geom.Length{x - a.Mark, x + a.Mark} {
		for y := min(x, next); y <= max(x, next); y++ {
			if y < a.Stretch.Lo || y > a.Stretch.Hi || !open(a, y) {
				return true
			}
		}
	}
	return false
}

func open(a spacing.Ask, x geom.Length) bool {
	return !slices.ContainsFunc(a.Closed, func(c spacing.Closed) bool {
		return holds(c, x) || a.Mirrored && holds(c, a.Stretch.Lo+a.Stretch.Hi-x)
	})
}

// keeps reports whether a row keeps all that was asked but evenness.
func keeps(a spacing.Ask, row []geom.Length) bool {
	ok := a.Count == 0 || a.Count == len(row)
	fixed := map[geom.Length]bool{}
	for _, x := range a.Fixed {
		fixed[x] = true
		if a.Mirrored {
			fixed[a.Stretch.Lo+a.Stretch.Hi-x] = true
		}
	}
	for x := range fixed {
		ok = ok && slices.Contains(row, x)
	}
	for i, x := range row {
		fromEnd, middle := min(x-a.Stretch.Lo, a.Stretch.Hi-x), 2*i+1 == len(row) && x == a.Stretch.Mid()
		ok = ok && fromEnd >= 0 && (fromEnd%a.Mark == 0 || fixed[x] || middle) && open(a, x)
		if i > 0 {
			gap := x - row[i-1]
			ok = ok && gap >= max(a.Least, 1) && (a.Most == 0 || gap <= a.Most)
		}
		if a.Mirrored && !middle {
			ok = ok && row[len(row)-1-i] == a.Stretch.Lo+a.Stretch.Hi-x
		}
	}
	ends := max(row[0]-a.Stretch.Lo, a.Stretch.Hi-row[len(row)-1])
	return ok && (a.Most == 0 || ends <= a.Most)
}

// checkForced compares with the best row where nothing is closed: what differs
// is told, and each that would stand in a closed place names it.
func checkForced(t *rapid.T, a spacing.Ask, got spacing.Answer) {
	free := a
	free.Closed, free.Count = nil, len(got.Centres)
	even, refusal := spacing.Place(free)
	if refusal != nil {
		free.Most, free.Least = 0, 0
		even, refusal = spacing.Place(free)
	}
	if refusal != nil { // the ends fall together, or on more than are asked for, if nothing moves them
		if a.HalfEnds || len(got.Forced) > 0 {
			t.Fatalf("%+v: %+v", free, refusal)
		}
		return
	}
	would := even.Centres
	told := map[int]spacing.Forced{}
	for _, f := range got.Forced {
		told[f.Index] = f
	}
	for i, c := range got.Centres {
		f, ok := told[i]
		if off := c - would[i]; off != f.Off || ok != (off != 0) {
			t.Fatalf("centre %d is at %d, and would be at %d: %+v", i, c, would[i], got.Forced)
		}
		var by []string
		for _, c := range a.Closed {
			if holds(c, would[i]) || a.Mirrored && holds(c, a.Stretch.Lo+a.Stretch.Hi-would[i]) {
				by = append(by, c.By)
			}
		}
		if ok && (f.By == "" || len(by) > 0 && !slices.Contains(by, f.By)) {
			t.Fatalf("centre %d was moved by %q; its place is closed by %q", i, f.By, by)
		}
	}
}

func holds(c spacing.Closed, x geom.Length) bool { return c.Span.Lo < x && x < c.Span.Hi }
