package latin

import (
	"strings"
	"testing"
)

var layerTests = []struct{ name, want string }{
	{"", "EDGE"},
	{" \t", "EDGE"},
	{"cut-1", "CUT-1"},
	{"Säge $5_ø", "SAEGE_$5_O"},
	{"a.b/c", "A_B_C"},
	{"what?", "WHAT_"},
	{"切る", "U5207U308B"},
	{"切", "U5207"},
	{strings.Repeat("ab", 20), strings.Repeat("AB", 15) + "A"},
}

func TestLayer(t *testing.T) {
	for _, test := range layerTests {
		if got := Layer(test.name, "EDGE"); got != test.want {
			t.Errorf("layer %q becomes %q, want %q", test.name, got, test.want)
		}
	}
}

// FuzzLayer: whatever the name, what is written keeps to R12's letters and stays as it is
// when done again.
func FuzzLayer(f *testing.F) {
	for _, test := range layerTests {
		f.Add(test.name)
	}
	f.Fuzz(func(t *testing.T, s string) {
		name := Layer(s, "EDGE")
		if strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$_-") != "" || name == "" || len(name) > LongestLayer {
			t.Errorf("%q becomes %q", s, name)
		}
		if again := Layer(name, "EDGE"); again != name {
			t.Errorf("%q becomes %q when done again", name, again)
		}
	})
}
