package finding

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/lang/source"
)

func place(file string, from, to int) source.Range {
	return source.Range{File: file, Start: source.Pos{Line: 1, Byte: from}, End: source.Pos{Line: 1, Byte: to}}
}

func TestSort(t *testing.T) {
	sorted := List{
		{Severity: Note, Slug: "no-place", Text: "first"},
		{Severity: Note, Slug: "z", At: place("a.hcl", 9, 10)},
		{Severity: Note, Slug: "a", At: place("b.hcl", 1, 2)},
		{Severity: Error, Slug: "b", At: place("b.hcl", 1, 3)},
		{Severity: Warning, Slug: "a", At: place("b.hcl", 1, 3)},
		{Severity: Note, Slug: "a", At: place("b.hcl", 1, 3), Text: "one"},
		{Severity: Note, Slug: "a", At: place("b.hcl", 1, 3), Text: "two"},
		{Severity: Note, Slug: "b", At: place("b.hcl", 1, 3)},
		{Severity: Error, Slug: "a", At: place("b.hcl", 10, 11)}, // by number, not as text
	}
	rapid.Check(t, func(t *rapid.T) {
		l := List(rapid.Permutation(append(slices.Clone(sorted), sorted[3], sorted[6])).Draw(t, "order"))
		l.Sort()
		if diff := cmp.Diff(sorted, l); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestListCounts(t *testing.T) {
	var l List
	if l.HasErrors() || l.Count(Note) != 0 {
		t.Error("the empty list has findings")
	}
	l.Notef("n", source.Range{}, "%d in", 3)
	l.Warnf("w", source.Range{}, "mend", "text")
	if l.HasErrors() {
		t.Error("a warning is an error")
	}
	l.Errorf("e", source.Range{}, "", "text").Also(place("a", 1, 2), "the %s", "wall").Also(place("a", 3, 4), "the floor")
	if !l.HasErrors() || l.Count(Error) != 1 || l.Count(Warning) != 1 || l.Count(Note) != 1 || l[0].Text != "3 in" || l[1].Mend != "mend" {
		t.Errorf("%+v", l)
	}
	if len(l[2].Related) != 2 || l[2].Related[0].Text != "the wall" {
		t.Errorf("related: %+v", l[2].Related)
	}
	defer func() {
		if recover() == nil {
			t.Error("a finding without a slug is taken")
		}
	}()
	l.Errorf("", source.Range{}, "", "text")
}

func TestNearest(t *testing.T) {
	words := []string{"thickness", "width", "lengths", "prices", "density", "label", "in", "mm"}
	for _, c := range []struct{ name, want string }{
		{"thicknes", "thickness"}, {"tickness", "thickness"}, {"thikcness", "thickness"}, {"widht", "width"}, {"Width", "width"},
		{"length", "lengths"}, {"price", "prices"}, {"lable", "label"}, {"labels", "label"},
		{"height", ""}, {"colour", ""}, {"x", ""}, {"", ""}, {"inn", "in"}, {"m", "mm"}, {"on", "in"},
	} {
		if got := Nearest(c.name, words); got != c.want {
			t.Errorf("nearest to %q is %q, want %q", c.name, got, c.want)
		}
	}
	if got := Nearest("bat", []string{"cat", "hat", "bag"}); got != "cat" {
		t.Errorf("of equals %q wins, not the first", got)
	}
	if got := Nearest("cat", nil); got != "" {
		t.Errorf("of none %q is nearest", got)
	}
}

func TestSuggest(t *testing.T) {
	many := []string{"aaaa", "bbbb", "cccc", "dddd", "eeee", "ffff", "gggg", "hhhh", "iiii", "jjjj", "kkkk", "llll", "mmmm"}
	for _, c := range []struct {
		name  string
		known []string
		want  string
	}{
		{"aaab", many, `did you mean "aaaa"?`},
		{"zzzz", many[:2], "known here: aaaa, bbbb"},
		{"zzzz", many[:12], "known here: aaaa, bbbb, cccc, dddd, eeee, ffff, gggg, hhhh, iiii, jjjj, kkkk, llll"},
		{"zzzz", many, "known here: aaaa, bbbb, cccc, dddd, eeee, ffff, gggg, hhhh, iiii, jjjj, kkkk, llll, …"},
		{"zzzz", nil, ""},
	} {
		if got := Suggest(c.name, c.known); got != c.want {
			t.Errorf("%q among %v: %q, want %q", c.name, c.known, got, c.want)
		}
	}
}
