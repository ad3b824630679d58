package spacing_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang/length"
)

const inch = length.Inch

// failer is a test, or a property's draw.
type failer interface{ Fatalf(string, ...any) }

func centred(t failer, s spacing.Studs) []geom.Length {
	got, refusal := spacing.OnCentres(s)
	if refusal != nil || len(got.Forced) > 0 && len(s.Closed) == 0 {
		t.Fatalf("%+v: %+v, %+v", s, got, refusal)
	}
	return got.Centres
}

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
			got := centred(t, spacing.Studs{Stretch: geom.Span{Hi: inches(c.length)[0]}, Spacing: inches(c.spacing)[0], Thickness: inches(c.thickness)[0]})
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
		apart := geom.Length(rapid.Int64Range(int64(2*thickness), int64(40*inch)).Draw(t, "spacing"))
		lo := geom.Length(rapid.Int64Range(-int64(100*inch), int64(100*inch)).Draw(t, "lo"))
		size := 2*thickness + geom.Length(rapid.Int64Range(0, int64(300*inch)).Draw(t, "over two studs"))
		if size/apart > 1000 {
			t.Skip("too many")
		}
		stretch := geom.Span{Lo: lo, Hi: lo + size}
		half := thickness / 2
		stud := func(centre geom.Length) geom.Span { return geom.Span{Lo: centre - half, Hi: centre - half + thickness} }
		first, last := lo+half, stretch.Hi-thickness+half
		if stud(first).Lo != stretch.Lo || stud(last).Hi != stretch.Hi {
			t.Fatal("the ends are not flush")
		}
		turned := centred(t, spacing.Studs{Stretch: stretch, Spacing: apart, Thickness: thickness, FromRight: true})
		if stud(turned[0]).Lo != stretch.Lo || stud(turned[len(turned)-1]).Hi != stretch.Hi {
			t.Fatal("counted from the right the ends are not flush")
		}
		for i, c := range centred(t, spacing.Studs{Stretch: stretch, Spacing: apart, Thickness: thickness}) {
			if image := stud(turned[len(turned)-1-i]); stud(c).Lo-stretch.Lo != stretch.Hi-image.Hi {
				t.Fatalf("stud %d from the left is at %v, and from the right at %v", i, stud(c), image)
			}
		}
		want := []geom.Length{first}
		for k := geom.Length(1); ; k++ {
			if mark := lo + k*apart; stud(mark).Hi <= stud(last).Lo {
				want = append(want, mark)
				continue
			}
			break
		}
		if last-want[len(want)-1] > apart {
			want = append(want, last-thickness)
		}
		want = append(want, last)
		got := centred(t, spacing.Studs{Stretch: stretch, Spacing: apart, Thickness: thickness})
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatal(diff)
		}
		for i := range got[1:] {
			if gap := got[i+1] - got[i]; gap > apart || gap < thickness {
				t.Fatalf("studs %d and %d are %d apart, with a spacing of %d", i, i+1, gap, apart)
			}
		}
	})
}

// TestStudsBesideWhatIsClosed has figures worked out by hand: 48 is closed from
// 46 to 50 1/2, where a stud on one side alone would leave 18 or 16 1/2.
func TestStudsBesideWhatIsClosed(t *testing.T) {
	ask := spacing.Studs{
		Stretch: geom.Span{Hi: 78 * inch}, Spacing: 16 * inch, Thickness: inch * 3 / 2, Mark: inch / 32,
		Closed: []spacing.Closed{{Span: geom.Span{Lo: 46 * inch, Hi: 50*inch + inch/2}, By: "support 3"}},
	}
	got, refusal := spacing.OnCentres(ask)
	want := spacing.Answer{
		Centres: inches(0.75, 16, 32, 46, 50.5, 64, 77.25),
		Forced:  []spacing.Forced{{Index: 3, Off: -2 * inch, By: "support 3"}, {Index: 4, Off: 2*inch + inch/2, By: "support 3"}},
	}
	if diff := cmp.Diff(want, got); diff != "" || refusal != nil {
		t.Error(diff, refusal)
	}
	// From the right: 62, 46, 30 and 14. 46 is not in it, only on its edge.
	ask.FromRight = true
	if diff := cmp.Diff(inches(0.75, 14, 30, 46, 62, 77.25), centred(t, ask)); diff != "" {
		t.Error(diff)
	}
	// The last gap has room: 64 is closed up to 65, and 77 1/4 is near enough to 62.
	ask.FromRight, ask.Closed[0].Span = false, geom.Span{Lo: 62 * inch, Hi: 67 * inch}
	got, _ = spacing.OnCentres(ask)
	if diff := cmp.Diff(inches(0.75, 16, 32, 48, 62, 77.25), got.Centres); diff != "" {
		t.Error(diff)
	}
}

// TestOnCentresAgainstAllRows looks at every wall that keeps the studs whose
// places are free: the fewest, then the nearest to the closed places.
func TestOnCentresAgainstAllRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := spacing.Studs{
			Thickness: geom.Length(rapid.IntRange(1, 3).Draw(t, "thickness")), Mark: geom.Length(rapid.IntRange(1, 3).Draw(t, "mark")),
			FromRight: rapid.Bool().Draw(t, "from right"),
		}
		if s.FromRight { // from the right an odd thickness would put marks half way between
			s.Thickness += s.Thickness % 2
		}
		s.Spacing = 2*s.Thickness + geom.Length(rapid.IntRange(0, 8).Draw(t, "spacing"))
		s.Stretch.Hi = 2*s.Thickness + geom.Length(rapid.IntRange(0, 30).Draw(t, "size"))
		for i := range rapid.IntRange(1, 3).Draw(t, "closed") {
			lo := geom.Length(rapid.IntRange(-3, 34).Draw(t, "from"))
			s.Closed = append(s.Closed, spacing.Closed{Span: geom.Span{Lo: lo, Hi: lo + geom.Length(rapid.IntRange(1, 9).Draw(t, "over"))}, By: fmt.Sprint(i)})
		}
		got, refusal := spacing.OnCentres(s)
		want := bestStuds(s)
		if diff := cmp.Diff(want, got.Centres); diff != "" || (refusal == nil) != (want != nil) {
			t.Fatalf("%+v: %v for %v, %+v", s, got.Centres, want, refusal)
		}
		bare := s
		bare.Closed = nil
		would := centred(t, bare)
		for _, f := range got.Forced {
			at := got.Centres[f.Index] - f.Off
			i := slices.IndexFunc(s.Closed, func(c spacing.Closed) bool { return c.By == f.By })
			if !slices.Contains(would, at) || i < 0 || !holds(s.Closed[i], at) || f.Off == 0 {
				t.Fatalf("%+v: %+v of %v", s, f, got.Centres)
			}
		}
	})
}

// bestStuds reads the rule word by word, between each two studs that stay.
func bestStuds(s spacing.Studs) []geom.Length {
	bare := s
	bare.Closed = nil
	answer, _ := spacing.OnCentres(bare)
	would := answer.Centres
	closed := func(x geom.Length) bool {
		return slices.ContainsFunc(s.Closed, func(c spacing.Closed) bool { return holds(c, x) })
	}
	var out, marks []geom.Length
	for i, x := range would {
		if i > 0 && i < len(would)-1 && closed(x) {
			marks = append(marks, x)
			continue
		}
		if len(marks) > 0 {
			row := bestBetween(s, out[len(out)-1], x, marks, closed)
			if row == nil {
				return nil
			}
			out = append(out, row...)
		}
		out, marks = append(out, x), nil
	}
	return out
}

func bestBetween(s spacing.Studs, left, right geom.Length, marks []geom.Length, closed func(geom.Length) bool) []geom.Length {
	var best []geom.Length
	var bestCost geom.Length
	var try func(row []geom.Length, cost geom.Length)
	try = func(row []geom.Length, cost geom.Length) {
		last := left
		if len(row) > 0 {
			last = row[len(row)-1]
		}
		if gap := right - last; gap <= s.Spacing && gap >= s.Thickness {
			further := func(a, b []geom.Length) bool { // to the end that is counted from
				if s.FromRight {
					return slices.Compare(a, b) > 0
				}
				return slices.Compare(a, b) < 0
			}
			if best == nil || len(row) < len(best) || len(row) == len(best) && (cost < bestCost || cost == bestCost && further(row, best)) {
				best, bestCost = slices.Clone(row), cost
				if best == nil {
					best = []geom.Length{}
				}
			}
		}
		for x := last + s.Thickness; x <= min(last+s.Spacing, right-s.Thickness); x++ {
			if min(x-s.Stretch.Lo, s.Stretch.Hi-x)%s.Mark != 0 || closed(x) {
				continue
			}
			near := geom.Length(1 << 40)
			for _, m := range marks {
				near = min(near, (m-x)*(m-x))
			}
			try(append(slices.Clone(row), x), cost+near)
		}
	}
	try(nil, 0)
	return best
}
