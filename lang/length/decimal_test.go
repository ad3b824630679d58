package length

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestDecimal(t *testing.T) {
	tests := []struct {
		l      Length
		u      Unit
		places int
		want   string
	}{
		{0, Millimetres, 3, "0"},
		{490 * Millimetre, Millimetres, 6, "490"},
		{490_500_000, Millimetres, 6, "490.5"},
		{Inch / 64, Millimetres, 6, "0.396875"},
		{Inch / 64, Inches, 6, "0.015625"},
		{Inch / 64, Millimetres, 3, "0.397"},
		{Foot, Metres, 9, "0.3048"},     // NIST SP 811, appendix B.8
		{Inch, Centimetres, 9, "2.54"},  // the same
		{8 * Foot, Metres, 9, "2.4384"}, // the common sheet's length
		{1, Millimetres, 6, "0.000001"},
		{1, Metres, 9, "0.000000001"},
		{1, Inches, 9, "0.000000039"},
		{1, Millimetres, 3, "0"},
		{-1, Millimetres, 3, "0"},
		{500, Millimetres, 3, "0.001"},
		{-500, Millimetres, 3, "-0.001"},
		{499, Millimetres, 3, "0"},
		{-499, Millimetres, 3, "0"},
		{999_999_999, Millimetres, 2, "1000"},
		{-999_999_999, Millimetres, 2, "-1000"},
		{63_500_000, Millimetres, 0, "64"},
		{63_499_999, Millimetres, 0, "63"},
		{63_500_000, Millimetres, -1, "64"},
		{1, Metres, 12, "0.000000001"},
		{1<<63 - 1, Millimetres, 6, "9223372036854.775807"},
		{-1 << 63, Millimetres, 6, "-9223372036854.775808"},
	}
	for _, test := range tests {
		if got := test.l.Decimal(test.u, test.places); got != test.want {
			t.Errorf("%d nm in %s to %d places is %q, want %q", test.l, test.u, test.places, got, test.want)
		}
	}
}

// The oracle is the standard library's exact fraction, whose FloatString
// rounds halves away from zero too.
func TestDecimalAgainstExactFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		u := anyUnit().Draw(t, "u")
		places := rapid.IntRange(0, MaxPlaces).Draw(t, "places")
		want := big.NewRat(int64(l), int64(u.Size())).FloatString(places)
		if strings.Contains(want, ".") {
			want = strings.TrimRight(strings.TrimRight(want, "0"), ".")
		}
		if want == "-0" {
			want = "0"
		}
		if got := l.Decimal(u, places); got != want {
			t.Fatalf("%d nm in %s to %d places is %q, want %q", l, u, places, got, want)
		}
	})
}

func TestDecimalIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		u := anyUnit().Draw(t, "u")
		text := l.Decimal(u, MaxPlaces)
		if got, err := Parse(text, u); err != nil || got != l {
			t.Fatalf("%s %s is read back as %d nm, %v, want %d", text, u, got, err, l)
		}
	})
}

func TestDecimalKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := anyUnit().Draw(t, "u")
		places := rapid.IntRange(0, MaxPlaces).Draw(t, "places")
		a := anyLength().Draw(t, "a")
		b := min(a+Length(rapid.Int64Range(0, int64(Inch)).Draw(t, "more")), Max)
		pa, ea := Parse(a.Decimal(u, places), u)
		pb, eb := Parse(b.Decimal(u, places), u)
		if ea == nil && eb == nil && pa > pb {
			t.Fatalf("%d <= %d, but %s > %s", a, b, a.Decimal(u, places), b.Decimal(u, places))
		}
	})
}

func TestAppendDecimalDoesNotAllocate(t *testing.T) {
	buffer := make([]byte, 0, 64)
	allocations := testing.AllocsPerRun(100, func() {
		buffer = AppendDecimal(buffer[:0], 1_234_567_890, Millimetres, 6)
	})
	if allocations != 0 || string(buffer) != "1234.56789" {
		t.Errorf("%q with %v allocations", buffer, allocations)
	}
}

func BenchmarkAppendDecimal(b *testing.B) {
	buffer := make([]byte, 0, 64)
	for b.Loop() {
		buffer = AppendDecimal(buffer[:0], 1_234_567_890, Millimetres, 6)
	}
}

// anyLength draws what a description may state, and often what a tape shows.
func anyLength() *rapid.Generator[Length] {
	free := rapid.Map(rapid.Int64Range(-int64(Max), int64(Max)), func(n int64) Length { return Length(n) })
	tape := rapid.Map(rapid.Int64Range(-64*12*300, 64*12*300), func(n int64) Length { return Length(n) * Inch / 64 })
	return rapid.OneOf(free, tape)
}

func anyUnit() *rapid.Generator[Unit] {
	return rapid.SampledFrom([]Unit{Millimetres, Inches, Centimetres, Metres, Feet})
}
