package dxf

import (
	"strings"
	"testing"
)

// textTests are what the format asks for beyond lang/latin.
var textTests = []struct{ text, want string }{
	{`100%, 50%%d, C:\U+00E4, a^b`, `100%, 50%d, C:/U+00E4, a?b`},
	{strings.Repeat("ä", 200), strings.Repeat("ae", 127) + "a"},
	{strings.Repeat("x", 254) + " y", strings.Repeat("x", 254)},
}

func TestASCII(t *testing.T) {
	for _, test := range textTests {
		if got := ascii(test.text); got != test.want {
			t.Errorf("%q becomes %q, want %q", test.text, got, test.want)
		}
	}
}

// FuzzText: whatever the text, what is written is printable ASCII of at most
// 255 bytes, starts no escape, and stays as it is when done again.
func FuzzText(f *testing.F) {
	for _, test := range textTests {
		f.Add(test.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := ascii(s)
		if len(got) > 255 {
			t.Errorf("%d bytes", len(got))
		}
		for i := range len(got) {
			if c := got[i]; c < ' ' || c > '~' || c == '^' || c == '\\' {
				t.Errorf("byte %q in %q", c, got)
			}
		}
		if strings.Contains(got, "%%") {
			t.Errorf("escape in %q", got)
		}
		if again := ascii(got); again != got {
			t.Errorf("%q becomes %q when done again", got, again)
		}
	})
}
