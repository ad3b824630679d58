package filename

import (
	"strings"
	"testing"
)

var tests = []struct{ text, want string }{
	{"URN-L", "URN-L"},
	{"KÜCHE-L", "KUeCHE-L"},
	{"étagère no. 3", "etagere_no._3"},
	{"board ½″ × 4′", "board_1_2_x_4_"},
	{"日本-L", "u65E5u672C-L"},
	{"a/b\\c:d*e?f\"g<h>i|j", "a_b_c_d_e_f_g_h_i_j"},
	{"../../etc/passwd", "_.._etc_passwd"},
	{".hidden", "hidden"},
	{"-rf", "rf"},
	{"tail. . .", "tail._._"},
	{"tail...", "tail"},
	{"blank ", "blank_"},
	{"tab\tline\r\nend\x00", "tab_line_end"},
	{"", "unnamed"},
	{" \t", "unnamed"},
	{"...", "unnamed"},
	{"/", "unnamed"},
	{"con", "_con"},
	{"NUL", "_NUL"},
	{"aux.dxf", "_aux.dxf"},
	{"Com1.tar.gz", "_Com1.tar.gz"},
	{"lpt⁹", "lptu2079"},
	{"COM²", "_COM2"},
	{"COM10", "COM10"},
	{"CONSOLE", "CONSOLE"},
	{strings.Repeat("ä", 300), strings.Repeat("ae", 40)},
	{strings.Repeat("x", 79) + ".y", strings.Repeat("x", 79)},
	{"bad \xff byte", "bad_uFFFD_byte"},
}

func TestOf(t *testing.T) {
	for _, test := range tests {
		if got := Of(test.text); got != test.want {
			t.Errorf("%q becomes %q, want %q", test.text, got, test.want)
		}
	}
}

func TestWith(t *testing.T) {
	for _, test := range []struct{ text, more, want string }{
		{"URN-L", "-far", "URN-L-far"},
		{"nul", "-1", "nul-1"},
		{"", "-1", "unnamed-1"},
		{"aux.x", "-far", "_aux.x-far"},
		{strings.Repeat("x", 300), "-x12", strings.Repeat("x", 80) + "-x12"},
	} {
		if got := With(test.text, test.more); got != test.want {
			t.Errorf("%q with %q: %q, want %q", test.text, test.more, got, test.want)
		}
	}
}

func TestNames(t *testing.T) {
	var n Names
	for _, test := range []struct{ text, want string }{
		{"URN-L", "URN-L"},
		{"urn-l", "urn-l-2"},
		{"URN-L-2", "URN-L-2-2"},
		{"KÜCHE-L", "KUeCHE-L"},
		{"KUECHE-L", "KUECHE-L-2"},
		{"日", "u65E5"},
		{strings.Repeat("a", 300), strings.Repeat("a", 80)},
		{strings.Repeat("a", 299), strings.Repeat("a", 80) + "-2"},
	} {
		if got := n.Of(test.text); got != test.want {
			t.Errorf("%q: %q, want %q", test.text, got, test.want)
		}
	}
}

// FuzzNames: whatever two things are called, their names are safe on every system, two,
// and stay as they are when done again.
func FuzzNames(f *testing.F) {
	for i, test := range tests {
		f.Add(test.text, tests[len(tests)-1-i].text)
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		var n Names
		first, second := n.Of(a), n.Of(b)
		if strings.EqualFold(first, second) {
			t.Errorf("%q and %q are both %q", a, b, first)
		}
		for _, text := range []string{a, b} {
			name := Of(text)
			if len(name) == 0 || len(name) > longest+1 || reserved(name) ||
				strings.Trim(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._-") != "" ||
				strings.ContainsRune(".-", rune(name[0])) || strings.HasSuffix(name, ".") {
				t.Errorf("%q becomes %q", text, name)
			}
			if again := Of(name); again != name {
				t.Errorf("%q becomes %q when done again", name, again)
			}
		}
	})
}
