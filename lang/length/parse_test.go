package length

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// Values follow from the exact inch and foot (NIST SP 811, appendix B.8); the
// ways of writing are common practice on tapes, drawings and lumber lists.
var accepted = []struct {
	text string
	bare Unit
	want Length
}{
	{"7ft 11 1/2in", Inches, 2_425_700_000},
	{`7' 11 1/2"`, Inches, 2_425_700_000},
	{`7' 11-1/2"`, Inches, 2_425_700_000},
	{`7'-11 1/2"`, Millimetres, 2_425_700_000},
	{`7'11-1/2"`, Millimetres, 2_425_700_000},
	{"7' 11 1/2", Millimetres, 2_425_700_000},
	{"7ft11.5in", Millimetres, 2_425_700_000},
	{"7′ 11 1/2″", Inches, 2_425_700_000},
	{"7’ 11 1/2”", Inches, 2_425_700_000},
	{"11 1/2“", Inches, 292_100_000},
	{"7 feet 11 1/2 inches", Inches, 2_425_700_000},
	{"1 foot 1 inch", Inches, 330_200_000},
	{"-7ft 2in", Inches, -2_184_400_000},
	{"2 ft", Inches, 609_600_000},
	{"7 1/2 ft", Inches, 2_286_000_000},
	{"0ft 5in", Inches, 127_000_000},

	{"19-1/2in", Inches, 495_300_000},
	{"19 1/2 in", Millimetres, 495_300_000},
	{"19\u00a01/2\u2009in", Millimetres, 495_300_000},
	{"  19   1/2   in  ", Millimetres, 495_300_000},
	{"23/32 in", Inches, 18_256_250},
	{"-1/4in", Inches, -6_350_000},
	{"- 1/4in", Inches, -6_350_000},
	{"3/4", Inches, 19_050_000},
	{"1/64in", Inches, 396_875},
	{"5/4", Inches, 31_750_000}, // five-quarter: a trade word for a board's thickness
	{"7 0/2in", Inches, 177_800_000},
	{"10/20in", Inches, 12_700_000},
	{".5in", Inches, 12_700_000},
	{"08", Inches, 203_200_000},

	{"490mm", Inches, 490_000_000},
	{"12.5cm", Inches, 125_000_000},
	{"1.2m", Inches, 1_200_000_000},
	{"1/2 mm", Inches, 500_000},
	{"1.2 metres", Inches, 1_200_000_000},

	{"36", Inches, 914_400_000},
	{"36", Millimetres, 36_000_000},
	{"36", Centimetres, 360_000_000},
	{"36", Metres, 36_000_000_000},
	{"36", Feet, 10_972_800_000},
	{"35.25", Inches, 895_350_000},
	{"-0", Inches, 0},

	// Between two nanometres: the nearest, halves away from zero.
	{"1/3in", Inches, 8_466_667},
	{"2/3in", Inches, 16_933_333},
	{"1/128in", Inches, 198_438},
	{"-1/128in", Inches, -198_438},
	{"0.0000005mm", Inches, 1},
	{"-0.0000005mm", Inches, -1},
	{"0.00000049999999999999999999999999999999999999999999999999999mm", Inches, 0},
	{"71/3in", Inches, 601_133_333},

	// What Show prints where a length is not on its step.
	{"39 5/8 in + 0.012", Millimetres, 1_006_779_800},
	{"39 5/8 in - 0.012", Millimetres, 1_006_170_200},
	{"-39 5/8 in - 0.012", Inches, -1_006_779_800},
	{"39 5/8 + 0.012", Inches, 1_006_779_800},
	{"3 ft 3 5/8 in + 0.012", Millimetres, 1_006_779_800},
	{"0 in - 0.00000004", Inches, -1},
	{"490mm + 0.5", Inches, 490_500_000},

	{"1000m", Inches, Max},
	{"-1000m", Inches, -Max},
	{"1000.0000000004m", Inches, Max},
}

func TestParse(t *testing.T) {
	for _, test := range accepted {
		got, err := Parse(test.text, test.bare)
		if err != nil {
			t.Errorf("Parse(%q, %s): at %d: %s", test.text, test.bare, err.Offset, err.Reason)
		} else if got != test.want {
			t.Errorf("Parse(%q, %s) = %d, want %d", test.text, test.bare, got, test.want)
		}
	}
}

var refused = []struct {
	text         string
	offset       int
	reason, mend string
}{
	{"", 0, "no length is written here", ""},
	{"   ", 3, "no length is written here", ""},
	{"-", 1, "a number is missing at the end", ""},
	{"wide", 0, `a length starts with a number, not with "wide"`, ""},
	{"--1", 1, `a length starts with a number, not with "-"`, ""},
	{"+3", 0, `a length starts with a number, not with "+"`, "3"},
	{".", 0, `a length starts with a number, not with "."`, ""},
	{"/2", 0, `a length starts with a number, not with "/"`, ""},
	{"\xff", 0, `a length starts with a number, not with "\xff"`, ""},

	// Fractions.
	{"71/2in", 0, "the fraction 71/2 is more than one; was 7 1/2 meant?", "7 1/2in"},
	{"-111/16", 1, "the fraction 111/16 is more than one; was 1 11/16 or 11 1/16 meant?", ""},
	{"120/64in", 0, "the fraction 120/64 is more than one; was 1 20/64 meant?", "1 20/64in"},
	{"16/16", 0, "16/16 is one: write 1", ""},
	{"20/2", 0, "the fraction 20/2 is more than one: write a whole number, a space and a fraction under one", ""},
	{"7' 71/2", 3, "the fraction 71/2 is more than one; was 7 1/2 meant?", "7' 7 1/2"},
	{"7 5/4", 2, "a fraction after a whole number stays under one, and 5/4 does not", ""},
	{"7 2/2in", 2, "a fraction after a whole number stays under one, and 2/2 does not", ""},
	{"7 1/2 1/4", 6, "two fractions do not go together", ""},
	{"1/2 1/4in", 4, "two fractions do not go together", ""},
	{"1/0", 2, "a fraction cannot have 0 below the line", ""},
	{"7 1/00in", 4, "a fraction cannot have 0 below the line", ""},
	{"3/in", 2, "a whole number is missing below the line of the fraction", ""},
	{"1/2/3", 3, "a fraction is one whole number over another, as in 23/32", ""},
	{"1/2.5", 3, "a fraction is one whole number over another, as in 23/32", ""},
	{"1 / 2in", 2, "a fraction has no spaces around its line: was 1/2in meant?", "1/2in"},
	{"1.5 1/2", 4, "a point and a fraction do not go together", ""},
	{"19.1/2in", 2, "a point and a fraction do not go together: was 19 1/2in meant?", "19 1/2in"},
	{".5/2", 0, "a point and a fraction do not go together", ""},
	{"7½in", 1, "write 1/2 for ½", "7 1/2in"},
	{"⅞in", 0, "write 7/8 for ⅞", "7/8in"},
	{"1⁄2in", 1, "write / for ⁄", "1/2in"},
	{"19in 1/2", 5, "the fraction comes before the unit", "19 1/2in"},
	{`19" 1/2"`, 4, "the fraction comes before the unit", `19 1/2"`},
	{`7' 11" 1/2`, 7, "the fraction comes before the unit", `7' 11 1/2"`},

	// Points, commas, gaps.
	{"1,2m", 1, "a comma is not a decimal point: was 1.2m meant?", "1.2m"},
	{"1,200mm", 1, "a comma can stand for the point or for thousands: write the number without it", ""},
	{"1,2,3", 1, "a comma is not a decimal point", ""},
	{"7.in", 2, "a digit is missing after the point", ""},
	{"1.2.3", 3, "a number has one point", ""},
	{"1 200mm", 2, "a number has no space inside: was 1200mm meant?", "1200mm"},
	{"7 8in", 2, "two numbers in a row: give the first one its unit, as in 7ft 8in", ""},
	{"7.5 8in", 4, "two numbers in a row: give the first one its unit, as in 7ft 8in", ""},

	// Feet and inches, and other company.
	{"7ft 13in", 4, "inches after feet stay under 12", ""},
	{"7' 12", 3, "inches after feet stay under 12", ""},
	{"7.5ft 3in", 0, "feet in front of inches are a whole number", ""},
	{"-7 1/2ft 3in", 1, "feet in front of inches are a whole number", ""},
	{"7in 3ft", 4, "feet come before inches", "3ft 7in"},
	{"7in 3in", 4, "in is given twice", ""},
	{"7ft 3ft", 4, "ft is given twice", ""},
	{"7ft 3mm", 4, "ft and mm do not mix in one length", ""},
	{"3mm 7ft", 4, "mm and ft do not mix in one length", ""},
	{"1m 20cm", 3, "a metric length has one number and one unit, as in 1.2m", ""},
	{"20cm 5", 5, "a number without a unit can follow feet only, where it counts inches", ""},
	{"7''", 1, "two foot marks do not make an inch mark: was 7in meant?", "7in"},
	{"7' 6''", 4, "two foot marks do not make an inch mark: was 7' 6in meant?", "7' 6in"},

	// Hyphens and signs.
	{"7-6", 2, "after a hyphen comes a fraction, as in 19-1/2", ""},
	{"19 -1/2in", 3, "this - can be read as joining or as taking away: was 19 1/2in meant?", "19 1/2in"},
	{`7' - 6"`, 3, `this - can be read as joining or as taking away: was 7' 6" meant?`, `7' 6"`},
	{"7in-", 3, "this - can be read as joining or as taking away", ""},
	{"39 5/8 in -0.012", 10, "this - can be read as joining or as taking away", ""},
	{"36 + 2", 3, "lengths are not added up here: + takes a decimal under one, as in 39 5/8 in + 0.012", ""},
	{"36in + 1.5", 5, "lengths are not added up here: + takes a decimal under one, as in 39 5/8 in + 0.012", ""},
	{"36in + 0.5in", 10, "what is left over has no unit of its own", "36in + 0.5"},
	{"2 ft + 0.5", 5, "write the inches too before what is left over, as in 2 ft 0 in + 0.012", ""},
	{"36in + 0.5 + 0.5", 11, `"+" does not belong here`, ""},
	{"−3in", 0, "write - for −", "-3in"},
	{"19–1/2in", 2, "write - for –", "19-1/2in"},

	// Units.
	{"7 MM", 2, `"MM" is not a unit: was mm meant?`, "7 mm"},
	{"7 inchs", 2, `"inchs" is not a unit: was inch meant?`, "7 inch"},
	{"7foots 3in", 1, `"foots" is not a unit: was foot meant?`, "7foot 3in"},
	{"7 km", 2, `"km" is not a unit that is read here: write mm, cm, m, in or ft`, ""},
	{"2x4", 1, `"x" is not a unit that is read here: write mm, cm, m, in or ft`, ""},
	{"1e3mm", 1, `"e" is not a unit that is read here: write mm, cm, m, in or ft`, ""},
	{"7 in.", 4, `"." does not belong here`, "7 in"},
	{"7ft, 3in", 3, `"," does not belong here`, "7ft 3in"},
	{"7in deep", 4, `"deep" does not belong here`, ""},
	{"7:6", 1, `":" does not belong here`, ""},
	{"7m²", 2, `"²" does not belong here`, ""},

	// Limits.
	{" 1001m", 1, "longer than the 1000 m that a length may have", ""},
	{"-3281ft", 0, "longer than the 1000 m that a length may have", ""},
	{"1000.0000000005m", 0, "longer than the 1000 m that a length may have", ""},
	{strings.Repeat("9", 64), 0, "longer than the 1000 m that a length may have", ""},
	{strings.Repeat("9", 65), 64, "a length has at most 64 characters", ""},
	{strings.Repeat("″", 30), 63, "a length has at most 64 characters", ""},
}

func TestParseRefuses(t *testing.T) {
	for _, test := range refused {
		l, err := Parse(test.text, Inches)
		if err == nil {
			t.Errorf("Parse(%q) = %d, want a refusal", test.text, l)
			continue
		}
		want := SyntaxError{Offset: test.offset, Reason: test.reason, Mend: test.mend}
		if *err != want {
			t.Errorf("Parse(%q):\n got %d, %q, %q\nwant %d, %q, %q", test.text,
				err.Offset, err.Reason, err.Mend, want.Offset, want.Reason, want.Mend)
		}
	}
}

// written draws a length as people write it, with its value worked out in
// whole nanometres.
func written(t *rapid.T) (text string, want Length) {
	feet := rapid.IntRange(0, 300).Draw(t, "feet")
	inches := rapid.IntRange(0, 11).Draw(t, "inches")
	below := 1 << rapid.IntRange(1, 6).Draw(t, "log below")
	above := rapid.IntRange(0, below-1).Draw(t, "above")
	join := rapid.SampledFrom([]string{" ", "-", "  "}).Draw(t, "join")
	foot := rapid.SampledFrom([]string{"ft", " ft ", "'", "′ ", " feet ", "'-", "ft-"}).Draw(t, "foot")
	inch := rapid.SampledFrom([]string{"in", " in", `"`, "″", " inches", ""}).Draw(t, "inch")

	want = Length(feet)*Foot + Length(inches)*Inch + Length(above)*Inch/Length(below)
	text = fmt.Sprintf("%d%s%d%s%d/%d%s", feet, foot, inches, join, above, below, inch)
	if rapid.Bool().Draw(t, "minus") {
		return "-" + text, -want
	}
	return text, want
}

func TestParseReadsWhatIsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, want := written(t)
		if got, err := Parse(text, Metres); err != nil || got != want {
			t.Fatalf("Parse(%q) = %d, %v, want %d", text, got, err, want)
		}
	})
}

// Any text is either read, and shown and read again the same, or refused with
// a place in it, a reason, and no mend or one that is read.
func FuzzParse(f *testing.F) {
	for _, test := range accepted {
		f.Add(test.text, uint8(test.bare), uint8(2))
	}
	for _, test := range refused {
		f.Add(test.text, uint8(Inches), uint8(0))
	}
	f.Fuzz(func(t *testing.T, text string, unit, fineness uint8) {
		bare := Unit(unit) % Unit(len(units))
		l, err := Parse(text, bare)
		if err != nil {
			checkRefusal(t, text, bare, err)
			return
		}
		if max(l, -l) > Max {
			t.Fatalf("Parse(%q) = %d, beyond the limit", text, l)
		}
		for u := range Unit(len(units)) {
			checkReadBack(t, l, u, Inch>>(fineness%7))
		}
	})
}

func checkRefusal(t *testing.T, text string, bare Unit, err *SyntaxError) {
	t.Helper()
	if err.Offset < 0 || err.Offset > len(text) {
		t.Fatalf("Parse(%q): offset %d is outside", text, err.Offset)
	}
	if err.Offset < len(text) && utf8.ValidString(text) && !utf8.RuneStart(text[err.Offset]) {
		t.Fatalf("Parse(%q): offset %d is inside a character", text, err.Offset)
	}
	if err.Reason == "" || !utf8.ValidString(err.Reason) {
		t.Fatalf("Parse(%q): reason %q", text, err.Reason)
	}
	if err.Mend == "" {
		return
	}
	if _, again := Parse(err.Mend, bare); again != nil || err.Mend == text {
		t.Fatalf("Parse(%q): mend %q is refused: %v", text, err.Mend, again)
	}
}
