package length

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The fractions are those of a common tape (common practice); the inches are
// exact (NIST SP 811, appendix B.8).
func TestShow(t *testing.T) {
	const in, mm = Inch, Millimetre
	tests := []struct {
		l            Length
		u            Unit
		step         Length
		want, number string
	}{
		{0, Inches, 0, "0 in", "0"},
		{39*in + 5*in/8, Inches, 0, "39 5/8 in", "39 5/8"},
		{5 * in / 8, Inches, 0, "5/8 in", "5/8"},
		{-in / 4, Inches, 0, "-1/4 in", "-1/4"},
		{-39*in - 5*in/8, Inches, 0, "-39 5/8 in", "-39 5/8"},
		{12 * in, Inches, 0, "12 in", "12"},
		{23 * in / 32, Inches, in / 32, "23/32 in", "23/32"},
		{23 * in / 32, Inches, in / 64, "23/32 in", "23/32"},
		{23 * in / 32, Inches, 0, "3/4 in - 0.031", "3/4 - 0.031"},
		{39*in + 5*in/8 + 304_800, Inches, 0, "39 5/8 in + 0.012", "39 5/8 + 0.012"},
		{-39*in - 5*in/8 - 304_800, Inches, 0, "-39 5/8 in - 0.012", "-39 5/8 - 0.012"},
		{254_000, Inches, 0, "0 in + 0.010", "0 + 0.010"},
		{-254_000, Inches, 0, "0 in - 0.010", "0 - 0.010"},
		{12_700, Inches, 0, "0 in + 0.001", "0 + 0.001"},
		{12_699, Inches, 0, "0 in + 0.0005", "0 + 0.0005"},
		{in + 1, Inches, 0, "1 in + 0.00000004", "1 + 0.00000004"},
		{in / 32, Inches, 0, "1/16 in - 0.031", "1/16 - 0.031"},
		{-in / 32, Inches, 0, "-1/16 in + 0.031", "-1/16 + 0.031"},
		{5 * in / 2, Inches, in, "3 in - 0.500", "3 - 0.500"},
		{5 * in / 2, Inches, 12 * in, "3 in - 0.500", "3 - 0.500"},
		{3 * in / 32, Inches, mm, "3/32 in", "3/32"}, // 1 mm counts as 1/32 in
		{3 * in / 64, Inches, 1, "3/64 in", "3/64"},

		{7*Foot + 23*in/2, Feet, 0, "7 ft 11 1/2 in", "7 ft 11 1/2 in"},
		{7 * Foot, Feet, 0, "7 ft 0 in", "7 ft 0 in"},
		{-7*Foot - in/2, Feet, 0, "-7 ft 1/2 in", "-7 ft 1/2 in"},
		{23 * in / 2, Feet, 0, "11 1/2 in", "11 1/2 in"},
		{Foot - in/64, Feet, 0, "1 ft 0 in - 0.016", "1 ft 0 in - 0.016"},
		{0, Feet, 0, "0 in", "0 in"},

		{490 * mm, Millimetres, 0, "490 mm", "490"},
		{490*mm + mm/2, Centimetres, 0, "490.5 mm", "490.5"},
		{1200 * mm, Metres, mm, "1200 mm", "1200"},
		{in / 64, Millimetres, mm, "0.396875 mm", "0.396875"},
		{-1, Millimetres, 0, "-0.000001 mm", "-0.000001"},
		{Max, Metres, 0, "1000000 mm", "1000000"},
	}
	for _, test := range tests {
		if got := Show(test.l, test.u, test.step); got != test.want {
			t.Errorf("Show(%d, %s, %d) = %q, want %q", test.l, test.u, test.step, got, test.want)
		}
		if got := Number(test.l, test.u, test.step); got != test.number {
			t.Errorf("Number(%d, %s, %d) = %q, want %q", test.l, test.u, test.step, got, test.number)
		}
	}
}

func TestRound(t *testing.T) {
	tests := []struct{ l, step, want Length }{
		{7, 0, 7}, {7, -5, 7}, {7, 1, 7},
		{7, 5, 5}, {8, 5, 10}, {-7, 5, -5}, {-8, 5, -10},
		{5, 10, 10}, {-5, 10, -10}, {4, 10, 0}, {-4, 10, 0},
		{15, 10, 20}, {-15, 10, -20}, {20, 10, 20}, {0, 10, 0},
	}
	for _, test := range tests {
		if got := Round(test.l, test.step); got != test.want {
			t.Errorf("Round(%d, %d) = %d, want %d", test.l, test.step, got, test.want)
		}
	}
}

func TestRoundIsNearestAndKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyLength().Draw(t, "a"), anyLength().Draw(t, "b")
		step := Length(rapid.Int64Range(1, int64(Foot)).Draw(t, "step"))
		ra, rb := Round(a, step), Round(b, step)
		if off := max(ra-a, a-ra); ra%step != 0 || 2*off > step {
			t.Fatalf("Round(%d, %d) = %d", a, step, ra)
		}
		if Round(-a, step) != -ra {
			t.Fatalf("Round(%d, %d) = %d, but %d for its negative", a, step, ra, Round(-a, step))
		}
		if a <= b && ra > rb {
			t.Fatalf("%d <= %d, but rounded %d > %d", a, b, ra, rb)
		}
	})
}

var shownInches = regexp.MustCompile(`^-?(?:(\d+) ft )?(?:(\d+)|(?:(\d+) )?(\d+)/(\d+)) in(?: [+-] (0\.\d{3,8}))?$`)

// What Show prints has its own law: lowest terms, inches under a foot after
// feet, a remainder only where there is one and never one that reads zero.
func TestShowsForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		u := rapid.SampledFrom([]Unit{Inches, Feet}).Draw(t, "u")
		step := anyStep().Draw(t, "step")
		text := Show(l, u, step)
		m := shownInches.FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("Show(%d) = %q", l, text)
		}
		if above := m[4]; above != "" && strings.ContainsAny(above[len(above)-1:], "02468") {
			t.Fatalf("%q is not in lowest terms", text)
		}
		if m[1] != "" && (len(m[2]) > 2 || len(m[2]) == 2 && m[2] > "11" || len(m[3]) == 2 && m[3] > "11") {
			t.Fatalf("%q has a foot or more in inches", text)
		}
		if rest := m[6]; (rest == "") != (l%inchFraction(step) == 0) || rest != "" && strings.Trim(rest, "0.") == "" {
			t.Fatalf("Show(%d, %s, %d) = %q", l, u, step, text)
		}
	})
}

func TestShowIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		u, step := anyUnit().Draw(t, "u"), anyStep().Draw(t, "step")
		checkReadBack(t, l, u, step)
	})
}

// checkReadBack checks that Parse reads what Show and Number print of l, to
// the last digit shown.
func checkReadBack(t rapid.TB, l Length, u Unit, step Length) {
	t.Helper()
	bare := u
	if !u.Imperial() {
		bare = Millimetres
	}
	for _, text := range []string{Show(l, u, step), Number(l, u, step)} {
		got, err := Parse(text, bare)
		if err != nil {
			// A remainder that is rounded up may pass the limit.
			if max(l, -l) > Max-Inch/1000 {
				continue
			}
			t.Fatalf("%d nm is shown as %q, which is refused: %s", l, text, err.Reason)
		}
		if off := max(got-l, l-got); off > shownPrecision(text) {
			t.Fatalf("%d nm is shown as %q and read back as %d", l, text, got)
		}
	}
}

// shownPrecision returns half of the last digit of the remainder in text.
func shownPrecision(text string) Length {
	_, decimals, found := strings.Cut(text, ".")
	if !found || !strings.ContainsAny(text[1:], "+-") {
		return 0
	}
	half := Inch / 2
	for range decimals {
		half /= 10
	}
	return half + 1
}

func anyStep() *rapid.Generator[Length] {
	return rapid.SampledFrom([]Length{-1, 0, 1, Inch / 64, Inch / 32, Inch / 16, Inch / 8, Inch / 4, Inch / 2, Inch, Foot, Millimetre})
}
