package revise_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/revise"
	"barwright/lang"
	"barwright/lang/source"
)

// TestScenarios holds the comparison to the archives in testdata/scenarios. Each is a
// revision of the boat shed's bar, as testdata/rules/base has it. Its comment is the
// reasoning, made from the description and SPEC.md before the code was there. It holds
//
//	change   the edits, see edittest.Edited
//	fates    what becomes of the parts, see wanted
//	changes  names that must be told, KIND NAME | FIGURE | …; where it is empty, none may be
//	again    what is bought for parts to cut, no more and no less: ITEM | FIGURE | …
func TestScenarios(t *testing.T) {
	paths, err := filepath.Glob("testdata/scenarios/*.txtar")
	if err != nil || len(paths) < 28 {
		t.Fatalf("%d scenarios: %v", len(paths), err)
	}
	base := edittest.Folder(t, "../../testdata/rules/base/boatshed")
	old := sound(t, base)
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			sections := map[string]string{} // lookup only
			for _, f := range archive.Files {
				sections[f.Name] = string(f.Data)
			}
			r := revise.Compare(old, sound(t, edittest.Edited(t, base, sections["change"])), revise.Options{Within: within})
			fatesAre(t, r, sections["fates"])
			if changes, ok := sections["changes"]; ok {
				told(t, r, lines(changes))
			}
			if again, ok := sections["again"]; ok {
				bought(t, r, lines(again))
			}
			everyPieceOnce(t, r)
		})
	}
}

// within is 1/64 in.
const within model.Length = 25_400_000 / 64

// sound compiles a description without errors.
func sound(t *testing.T, files source.Files) *model.Model {
	t.Helper()
	src, findings := lang.Read(files)
	if src.Lost {
		t.Fatal(findings)
	}
	m, more := compile.Priced(src)
	if m == nil {
		t.Fatal(more)
	}
	return m
}

func lines(text string) []string {
	return slices.DeleteFunc(strings.Split(text, "\n"), func(line string) bool { return line == "" })
}

// fatesAre holds the fates to what is wanted.
func fatesAre(t *testing.T, r *model.Revision, text string) {
	t.Helper()
	b := board{t: t, r: r, taken: make([]bool, len(r.Fates))}
	for _, line := range lines(text) {
		b.take(wantedIn(t, r, line))
	}
	open := strings.Contains(text, "<- any") // then what is left over is open too
	for i := range r.Fates {
		understood := r.Fates[i].Kind == model.Dropped && (open || r.Fates[i].Serves != nil)
		if !b.taken[i] && r.Fates[i].Kind != model.Unchanged && !understood {
			t.Errorf("not expected: %s", written(r, &r.Fates[i]))
		}
	}
}

// told looks for the changes that must be told.
func told(t *testing.T, r *model.Revision, want []string) {
	t.Helper()
	var have []string
	for _, c := range r.Changes {
		have = append(have, strings.Join([]string{c.Kind.String() + "  " + c.Name, c.Old, c.New, c.OldWritten, c.NewWritten, c.Text}, " | "))
	}
	if len(want) == 0 && len(have) > 0 {
		t.Errorf("nothing should be told, but:\n%s", strings.Join(have, "\n"))
	}
	for _, w := range want {
		if !slices.ContainsFunc(have, func(h string) bool { return says(h, w) }) {
			t.Errorf("not told: %s\ntold are:\n%s", w, strings.Join(have, "\n"))
		}
	}
}

// says reports whether a text begins as wanted, and has the figures that follow after bars.
func says(have, want string) bool {
	fields := strings.Split(want, " | ")
	return strings.HasPrefix(have, fields[0]) &&
		!slices.ContainsFunc(fields[1:], func(figure string) bool { return !strings.Contains(have, figure) })
}

// bought holds what must be cut anew to what is wanted.
func bought(t *testing.T, r *model.Revision, want []string) {
	t.Helper()
	var have []string
	for _, l := range r.Again {
		have = append(have, l.Item+" | "+l.Needed)
	}
	if !slices.EqualFunc(have, want, says) {
		t.Errorf("what is bought (-want +got):\n%s", cmp.Diff(want, have))
	}
}

// everyPieceOnce demands one fate of each part, and of each piece that it serves for one
// part, is dropped, or is told with its part, which is made again.
func everyPieceOnce(t *testing.T, r *model.Revision) {
	t.Helper()
	parts, pieces := make([]int, len(r.New.Parts)), make([]int, len(r.Old.Parts))
	again := map[string]bool{} // IDs of what is made again, which tells of its piece too; lookup only
	for _, f := range r.Fates {
		if f.Kind == model.MakeAgain {
			again[r.New.Parts[f.New].ID] = true
		}
		if f.New >= 0 {
			parts[f.New]++
		}
		if f.Old >= 0 {
			pieces[f.Old]++
		}
	}
	for i, n := range parts {
		if n != 1 {
			t.Errorf("part %s has %d fates", r.New.Parts[i].Label, n)
		}
	}
	for i, n := range pieces {
		if n > 1 || n == 0 && !again[r.Old.Parts[i].ID] {
			t.Errorf("piece %s has %d fates", r.Old.Parts[i].Label, n)
		}
	}
}
