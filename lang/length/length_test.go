package length

import (
	"math/big"
	"os"
	"strings"
	"testing"
)

// The factors are those of NIST SP 811, appendix B.8: inch to metre 2.54 E-02
// and foot to metre 3.048 E-01, both exact.
func TestUnitsAreExact(t *testing.T) {
	want := map[Unit]Length{
		Millimetres: 1_000_000, Centimetres: 10_000_000, Metres: 1_000_000_000,
		Inches: 25_400_000, Feet: 304_800_000,
	}
	for u, size := range want {
		if u.Size() != size {
			t.Errorf("1 %s = %d nm, want %d", u, u.Size(), size)
		}
		if named, ok := UnitNamed(u.String()); !ok || named != u {
			t.Errorf("UnitNamed(%q) = %v, %v", u.String(), named, ok)
		}
	}
	if Inch%64 != 0 || Inch/64 != 396_875 {
		t.Errorf("1/64 in is not 396 875 nm")
	}
	if _, ok := UnitNamed("yd"); ok {
		t.Errorf("yd is a unit")
	}
}

func TestFromFloat(t *testing.T) {
	tests := []struct {
		text string
		want Length
		ok   bool
	}{
		{"0", 0, true},
		{"0.5", 1, true},
		{"-0.5", -1, true},
		{"0.4999999999999999999999999", 0, true},
		{"8466666.6666666666666667", 8_466_667, true},
		{"1e12", Max, true},
		{"-1e12", -Max, true},
		{"1000000000000.5", Max + 1, false},
		{"1e300", 0, false},
		{"-Inf", 0, false},
	}
	for _, test := range tests {
		// 512 bits are what the description's numbers carry.
		f, _, err := big.ParseFloat(test.text, 10, 512, big.ToNearestEven)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := FromFloat(f); got != test.want || ok != test.ok {
			t.Errorf("FromFloat(%s) = %d, %v, want %d, %v", test.text, got, ok, test.want, test.ok)
		}
	}
}

// The table is the lumber standard's own pairing of inches and millimetres; it
// has a half, 2 1/2 in = 63.5 mm, which the standard rounds up.
func TestDressedLumber(t *testing.T) {
	table, err := os.ReadFile("testdata/ps20.txt")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(string(table)) {
		columns := strings.Split(strings.TrimSpace(line), "|")
		if strings.HasPrefix(line, "#") {
			continue
		}
		rows++
		imperial, metric := strings.Split(columns[1], " x "), strings.Split(columns[2], " x ")
		for i := range 2 {
			in, mm := mustParse(t, imperial[i], Inches), mustParse(t, metric[i], Millimetres)
			if got := Round(in, Millimetre); got != mm {
				t.Errorf("%s: %s in is %s, want %s", columns[0], imperial[i], Show(got, Millimetres, 0), Show(mm, Millimetres, 0))
			}
			if got, want := Number(in, Inches, Inch/64), strings.TrimSpace(imperial[i]); got != want {
				t.Errorf("%s: Number = %q, want %q", columns[0], got, want)
			}
		}
	}
	if rows != 15 {
		t.Errorf("%d rows, want 15", rows)
	}
}

func mustParse(t testing.TB, text string, bare Unit) Length {
	t.Helper()
	l, err := Parse(text, bare)
	if err != nil {
		t.Fatalf("Parse(%q, %s): at %d: %s", text, bare, err.Offset, err.Reason)
	}
	return l
}
