package length

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The inches are exact (NIST SP 811, appendix B.8): 0.008 in is 203 200 nm.
func TestPlain(t *testing.T) {
	const in, mm, milli = Inch, Millimetre, Inch / 1000
	tests := []struct {
		l            Length
		u            Unit
		step         Length
		want, number string
	}{
		{0, Inches, 0, "0 in", "0"},
		{39*in + 5*in/8, Inches, 0, "39 5/8 in", "39 5/8"},
		{-in / 4, Inches, 0, "-1/4 in", "-1/4"},
		{5*in/2 + 16*milli, Inches, in / 32, "2.516 in", "2.516"}, // 2 17/32 in - 0.015
		{8 * milli, Inches, in / 32, "0.008 in", "0.008"},
		{-8 * milli, Inches, in / 32, "-0.008 in", "-0.008"},
		{in/8 - 8*milli, Inches, in / 32, "0.117 in", "0.117"},
		{23 * in / 32, Inches, in / 16, "23/32 in", "23/32"}, // finer than the mark, but a rule shows it
		{23*in/32 + 1, Inches, in / 16, "0.719 in", "0.719"},
		{in + 1, Inches, 0, "1 in", "1"}, // a nanometre
		{in/16 + milli/2 - 1, Inches, 0, "1/16 in", "1/16"},
		{in/16 + milli/2, Inches, 0, "0.063 in", "0.063"},
		{1, Inches, 0, "0.00000004 in", "0.00000004"}, // never 0
		{-milli / 4, Inches, 0, "-0.0003 in", "-0.0003"},

		{7*Foot + 23*in/2, Feet, 0, "7 ft 11 1/2 in", "7 ft 11 1/2 in"},
		{7*Foot + 5*in/2 + 16*milli, Feet, 0, "7 ft 2.516 in", "7 ft 2.516 in"},
		{-7*Foot - 5*in/2 - 16*milli, Feet, 0, "-7 ft 2.516 in", "-7 ft 2.516 in"},
		{8*Foot - milli/2 - 1, Feet, in, "7 ft 11.999 in", "7 ft 11.999 in"},
		{8*Foot - milli/2, Feet, in, "8 ft 0 in", "8 ft 0 in"},
		{Foot - milli, Feet, in, "11.999 in", "11.999 in"},

		{490*mm + mm/2, Millimetres, 0, "490.5 mm", "490.5"},
		{4_049_230, Millimetres, mm / 2, "4.05 mm", "4.05"},
		{17_800_000, Centimetres, 0, "17.8 mm", "17.8"},
		{4_000, Millimetres, 0, "0.004 mm", "0.004"},
		{-1, Millimetres, 0, "-0.000001 mm", "-0.000001"},
	}
	for _, test := range tests {
		if got := Plain(test.l, test.u, test.step); got != test.want {
			t.Errorf("Plain(%d, %s, %d) = %q, want %q", test.l, test.u, test.step, got, test.want)
		}
		if got := PlainNumber(test.l, test.u, test.step); got != test.number {
			t.Errorf("PlainNumber(%d, %s, %d) = %q, want %q", test.l, test.u, test.step, got, test.number)
		}
	}
}

// Whatever is printed is read back to within half of its last decimal, has no
// sum in it, and is 0 for nothing but 0.
func TestPlainIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-int64(20*Metre), int64(20*Metre)).Draw(t, "l"))
		if rapid.Bool().Draw(t, "small") {
			l %= Millimetre
		}
		u := rapid.SampledFrom([]Unit{Millimetres, Inches, Feet}).Draw(t, "unit")
		step := rapid.SampledFrom([]Length{0, Inch, Inch / 2, Inch / 16, Inch / 32, Inch / 64}).Draw(t, "step")
		text := Plain(l, u, step)
		back, err := Parse(text, u)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		most := big.NewRat(int64(Inch), 2000)
		if !u.Imperial() {
			most = big.NewRat(int64(Millimetre), 200)
		}
		if off := big.NewRat(int64(max(back-l, l-back)), 1); off.Cmp(most) > 0 {
			t.Fatalf("%d is printed as %q", l, text)
		}
		if (back == 0) != (l == 0) || strings.ContainsAny(text, "+") || strings.Contains(text, " - ") {
			t.Fatalf("%d is printed as %q", l, text)
		}
	})
}
