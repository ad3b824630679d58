package compile_test

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/rule/all"
	"barwright/lang/finding"
)

// mutation is one perturbation of a good description, a folder of testdata/rules/base,
// and what must be found. In the files of testdata/mutations one begins with
// "== BASE: what is changed". Lines with # are the working of its figures. Then come
// its edits, see edittest.Edited, and a line for each finding beyond those of the base:
// "> SLUG" or "> SLUG | FIGURE | FIGURE", where each figure stands in the text of that
// finding. It must raise exactly these. They were written from the arithmetic beside
// them before they were run; where a rule was changed later, the working says so.
type mutation struct {
	place, base, words string
	edits              string
	want               []expected
}

type expected struct {
	slug    string
	figures []string
}

func mutations(t *testing.T) []mutation {
	t.Helper()
	paths, err := filepath.Glob("../testdata/mutations/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no mutations: %v", err)
	}
	var out []mutation
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for i, part := range strings.Split("\n"+string(text), "\n== ")[1:] {
			head, body, _ := strings.Cut(part, "\n")
			base, words, ok := strings.Cut(head, ": ")
			if !ok {
				t.Fatalf("%s: %q does not name its base", path, head)
			}
			m := mutation{place: fmt.Sprintf("%s/%d", strings.TrimSuffix(filepath.Base(path), ".txt"), i+1), base: base, words: words}
			var edits []string
			for line := range strings.SplitSeq(body, "\n") {
				switch say, found := strings.CutPrefix(line, "> "); {
				case found:
					fields := strings.Split(say, " | ")
					m.want = append(m.want, expected{fields[0], fields[1:]})
				case !strings.HasPrefix(line, "#"):
					edits = append(edits, line)
				}
			}
			m.edits = strings.Join(edits, "\n")
			out = append(out, m)
		}
	}
	return out
}

// TestMutations perturbs good descriptions, and demands exactly the findings that
// were written down.
func TestMutations(t *testing.T) {
	caught := map[string]int{}
	mutated, ran := mutations(t), 0 // fewer where only some are asked for
	for _, m := range mutated {
		t.Run(m.place, func(t *testing.T) {
			ran++
			src, findings := judged(edittest.Edited(t, baseFiles(t, m.base), m.edits))
			have := brought(t, m.base, findings)
			left := slices.Clone(m.want)
			for _, f := range have {
				at := slices.IndexFunc(left, func(e expected) bool { return e.is(f) })
				if at < 0 {
					t.Errorf("%s: not expected:\n%s", m.words, solved{src: src, findings: finding.List{f}}.text(t))
					continue
				}
				left = slices.Delete(left, at, at+1)
				caught[f.Slug]++
			}
			for _, e := range left {
				t.Errorf("%s: not found: %s %v", m.words, e.slug, e.figures)
			}
		})
	}
	slugs := make([]string, 0, len(caught))
	for slug := range caught {
		slugs = append(slugs, slug)
	}
	slices.SortFunc(slugs, func(a, b string) int { return cmp.Or(caught[b]-caught[a], strings.Compare(a, b)) })
	for _, slug := range slugs {
		t.Logf("%4d  %s", caught[slug], slug)
	}
	if len(mutated) < 400 {
		t.Errorf("only %d mutations", len(mutated))
	}
	for _, r := range all.Rules() {
		if ran == len(mutated) && caught[r.Slug] == 0 {
			t.Errorf("no mutation raises %s", r.Slug)
		}
	}
}

func (e expected) is(f finding.Finding) bool {
	return f.Slug == e.slug && !slices.ContainsFunc(e.figures, func(figure string) bool { return !strings.Contains(f.Text, figure) })
}
