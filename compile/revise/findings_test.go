package revise

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/finding"
	"barwright/lang/source"
)

// TestFindings pairs findings by their words, wherever they stand.
func TestFindings(t *testing.T) {
	list := func(texts ...string) finding.List {
		var l finding.List
		for i := 0; i < len(texts); i += 2 {
			l.Warnf(texts[i], source.Range{File: "bar.hcl", Start: source.Pos{Line: 1 + len(l)}}, "", "%s", texts[i+1])
		}
		return l
	}
	for name, c := range map[string]struct {
		old, new finding.List
		want     []string // "old -> new"
	}{
		"the same": {list("gap", `Door "a" has 3 mm.`), list("gap", `Door "a" has 3 mm.`), nil},
		"moved in the text": {
			list("gap", "One.", "sag", "Two."), list("sag", "Two.", "gap", "One."), nil,
		},
		"other figures": {
			list("gap", `Door "a" has 3 mm, needs 4 mm.`), list("gap", `Door "a" has 2.5 mm, needs 4 mm.`),
			[]string{`Door "a" has 3 mm, needs 4 mm. -> Door "a" has 2.5 mm, needs 4 mm.`},
		},
		"fractions are figures": {
			list("gap", "It has 3 in."), list("gap", "It has 2 15/16 in."), []string{"It has 3 in. -> It has 2 15/16 in."},
		},
		"came":         {nil, list("gap", "One."), []string{" -> One."}},
		"went":         {list("gap", "One."), nil, []string{"One. -> "}},
		"another rule": {list("gap", "One."), list("sag", "One."), []string{" -> One.", "One. -> "}},
		"another name in quotes": {
			list("gap", `Door "a" has 3 mm.`), list("gap", `Door "b" has 3 mm.`),
			[]string{` -> Door "b" has 3 mm.`, `Door "a" has 3 mm. -> `},
		},
		"a name with a figure is a name": {
			list("gap", `Door "a1" has 3 mm.`), list("gap", `Door "a2" has 3 mm.`),
			[]string{` -> Door "a2" has 3 mm.`, `Door "a1" has 3 mm. -> `},
		},
		"one of two stays": {
			list("gap", "Shelf 1 sags by 3 mm.", "gap", "Shelf 2 sags by 4 mm."), list("gap", "Shelf 2 sags by 4 mm.", "gap", "Shelf 1 sags by 2 mm."),
			[]string{"Shelf 1 sags by 3 mm. -> Shelf 1 sags by 2 mm."},
		},
		"the likest of two": {
			list("studs", "Because of outlet scale: stud 6 by 2 in to the left.", "studs", "Because of outlet urn: stud 3 by 1 in to the left."),
			list("studs", "Because of outlet scale: stud 6 by 2 in to the left, stud 7 by 1 in."),
			[]string{"Because of outlet scale: stud 6 by 2 in to the left. -> Because of outlet scale: stud 6 by 2 in to the left, stud 7 by 1 in.",
				"Because of outlet urn: stud 3 by 1 in to the left. -> "},
		},
	} {
		var have []string
		for _, f := range findings(c.old, c.new) {
			line := " -> "
			if f.Old != nil {
				line = f.Old.Text + line
			}
			if f.New != nil {
				line += f.New.Text
			}
			have = append(have, line)
		}
		if diff := cmp.Diff(c.want, have); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
