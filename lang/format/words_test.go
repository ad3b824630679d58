package format_test

import (
	"testing"

	"barwright/lang/format"
)

func TestSameWords(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"1", "1", true}, {"1", "2", false}, {"1 + 2", "1+2", true}, {"[1,2]", "[\n  1, # along\n  2 // up\n]", true}, {"[1, /* x */ 2]", "[1, 2]", true},
		{"1 1/2", "11/2", false}, {`"a b"`, `"ab"`, false}, {`"a" + "b"`, `"a"+"b"`, true}, {`["a\\", "b c"]`, `["a\\",  "b c"]`, true},
		{`["a\\", "b c"]`, `["a\\", "bc"]`, false}, {`"a # b"`, `"a"`, false}, {`"${ given.a }"`, `"${given.a}"`, true}, {"", "# nothing", true},
		{"3ft 7in", "3ft  7in", true}, {`"`, `'`, false},
	} {
		if format.SameWords(c.a, c.b) != c.same || format.SameWords(c.b, c.a) != c.same {
			t.Errorf("%s and %s: the same words is %v", c.a, c.b, !c.same)
		}
	}
}
