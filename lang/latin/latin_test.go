package latin

import "testing"

var tests = []struct{ text, want string }{
	{"", ""},
	{"URN-L left side", "URN-L left side"},
	{"Seitenwand für Spüle, groß", "Seitenwand fuer Spuele, gross"},
	{"Ärger Öl Übung", "Aerger Oel Uebung"},
	{"étagère, niño, crème brûlée, Łódź", "etagere, nino, creme brulee, Lodz"},
	{"e\u0301tage\u0300re", "etagere"}, // letters and marks apart
	{"23⁄32″ × 4′", "23/32\" x 4'"},
	{"19½ in, 19 ½ in, ½ in", "19 1/2 in, 19 1/2 in, 1/2 in"},
	{"90° ±1, 20–30 µm", "90deg +/-1, 20-30 um"},
	{"a\tb\r\nc  d\u00a0", "a b c d"},
	{"  lead", "lead"},
	{"日本", "??"},
	{"bad \xff byte", "bad ? byte"},
}

func TestASCII(t *testing.T) {
	for _, test := range tests {
		if got := ASCII(test.text); got != test.want {
			t.Errorf("%q becomes %q, want %q", test.text, got, test.want)
		}
	}
}

// FuzzASCII: whatever the text, what is written is printable ASCII and stays as it is
// when done again.
func FuzzASCII(f *testing.F) {
	for _, test := range tests {
		f.Add(test.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := ASCII(s)
		for i := range len(got) {
			if got[i] < ' ' || got[i] > '~' {
				t.Errorf("byte %q in %q", got[i], got)
			}
		}
		if again := ASCII(got); again != got {
			t.Errorf("%q becomes %q when done again", got, again)
		}
	})
}
