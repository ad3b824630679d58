package compile_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"barwright/compile/model"
)

// TestLabels looks at every part of every case and example that compiles:
// labels are short and unique, are made of the block's name and a code, and no
// two kinds of block use one code, so that none can meet another's.
func TestLabels(t *testing.T) {
	kindOf := map[string]string{} // of a code without its numbers; lookup only
	number := regexp.MustCompile(`\d+`)
	looked := 0
	for _, m := range solvedModels(t) {
		seen := map[string]string{} // lookup only
		for i := range m.Parts {
			p := &m.Parts[i]
			looked++
			if other, taken := seen[p.Label]; taken {
				t.Errorf("%s: %s and %s are both labelled %s", m.Build.Name, other, p.ID, p.Label)
			}
			seen[p.Label] = p.ID
			owner, _, _ := strings.Cut(p.ID, "/")
			kind, name, _ := strings.Cut(owner, ".")
			code, ok := strings.CutPrefix(p.Label, strings.ToUpper(name)+"-")
			if !ok || len(code) < 1 || len(code) > 4 {
				t.Errorf("%s: %s is labelled %s", m.Build.Name, p.ID, p.Label)
			}
			code = number.ReplaceAllString(code, "#")
			if other, known := kindOf[code]; known && other != kind {
				t.Errorf("%s and %s both use the code %s", other, kind, code)
			}
			kindOf[code] = kind
		}
	}
	if looked < 500 {
		t.Errorf("only %d parts were looked at", looked)
	}
}

// TestLabelsStay puts another cabinet before all others: none of their parts
// gets another label.
func TestLabelsStay(t *testing.T) {
	s := readSpec(t)
	before := mustCompile(t, s.named(t, "bar"))
	more := s.named(t, "bar")
	for i := range more {
		more[i].Text = bytes.Replace(more[i].Text, []byte(`  cabinet "cups" {`), []byte("  cabinet \"new\" { width = 12 }\n  cabinet \"cups\" {"), 1)
	}
	after := mustCompile(t, more)
	labels := map[string]string{} // by ID; lookup only
	for _, p := range after.Parts {
		labels[p.ID] = p.Label
	}
	for _, p := range before.Parts {
		if labels[p.ID] != p.Label {
			t.Errorf("%s was labelled %s, now %q", p.ID, p.Label, labels[p.ID])
		}
	}
	if len(after.Parts) != len(before.Parts)+7 {
		t.Errorf("%d parts became %d", len(before.Parts), len(after.Parts))
	}
}

// solvedModels compiles all cases that are not refused, and the example of SPEC.md.
func solvedModels(t *testing.T) []*model.Model {
	t.Helper()
	out := []*model.Model{mustCompile(t, readSpec(t).named(t, "bar"))}
	for _, c := range specCases(t) {
		for _, folder := range []string{"", "mended/"} {
			if s := c.solve(folder); s.model != nil {
				out = append(out, s.model)
			}
		}
	}
	return out
}
