package revise_test

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/compile/revise"
)

// TestBothWays compares the build of each scenario with that of the next one, both ways
// round, and with itself. Nothing but what is alike to the nanometre counts as equal: a piece that is a little
// larger may be laid so that both its edges are off by less than that, one that is smaller may not.
func TestBothWays(t *testing.T) {
	paths, err := filepath.Glob("testdata/scenarios/*.txtar")
	if err != nil || len(paths) == 0 {
		t.Fatal(err)
	}
	base := edittest.Folder(t, "../../testdata/rules/base/boatshed")
	before, trimmed := sound(t, base), 0
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			m := sound(t, edittest.Edited(t, base, string(archive.Files[0].Data)))
			if r := revise.Compare(m, m, revise.Options{}); !r.Empty() || r.Count(model.Unchanged) != len(m.Parts) {
				t.Error("a build differs from itself")
			}
			there := revise.Compare(before, m, revise.Options{})
			back := revise.Compare(m, before, revise.Options{})
			if a, b := asItIs(there), asItIs(back); a != b {
				t.Errorf("%d parts serve as they are, %d the other way round", a, b)
			}
			if a, b := costs(there), costs(back); math.Abs(a+b) > 0.005 {
				t.Errorf("the bill grows by %.2f, and by %.2f the other way round", a, b)
			}
			for _, r := range []*model.Revision{there, back} {
				everyPieceOnce(t, r)
				namesAreTrue(t, r)
				trimmed += shortAfterwards(t, r)
			}
			before = m
		})
	}
	if trimmed < 100 {
		t.Errorf("only %d pieces were trimmed", trimmed)
	}
}

// asItIs counts the parts that need nothing done, or only to be looked at: a piece of which
// both faces are good serves where one is to be, and not the other way round. Nor does a piece
// without banding serve where it is asked for, so those are left out that keep some which is not.
func asItIs(r *model.Revision) int {
	n := 0
	for _, f := range r.Fates {
		if f.New >= 0 && f.Old >= 0 && len(r.Old.Parts[f.Old].Bands) == len(r.New.Parts[f.New].Bands) && (len(f.Steps) == 0 || len(f.Steps) == 1 && f.Steps[0].Kind == model.Look) {
			n++
		}
	}
	return n
}

// costs is by how much the bill grows.
func costs(r *model.Revision) (by float64) {
	for _, l := range r.Bill {
		before, after, _ := l.Costs()
		by += after - before
	}
	return by
}

// namesAreTrue holds new parts to have no piece of their ID, and those that are made again
// to have one.
func namesAreTrue(t *testing.T, r *model.Revision) {
	t.Helper()
	old := map[string]bool{} // lookup only
	for i := range r.Old.Parts {
		old[r.Old.Parts[i].ID] = true
	}
	for i := range r.Fates {
		f := &r.Fates[i]
		if f.Kind != model.NewPart && f.Kind != model.MakeAgain {
			continue
		}
		if had := old[r.New.Parts[f.New].ID]; had != (f.Kind == model.MakeAgain) {
			t.Errorf("%s, but the old build had one: %v", written(r, f), had)
		}
	}
}

// shortAfterwards demands of pieces that were only trimmed that they cannot serve as what
// they were without anything made up, and counts them.
func shortAfterwards(t *testing.T, r *model.Revision) (n int) {
	t.Helper()
	back := reuse.Open(r.New, r.Old, 0)
	for i := range r.Fates {
		f := &r.Fates[i]
		if f.Kind != model.Rework || !onlyTrimmed(f.Steps) {
			continue
		}
		n++
		if fit, ok := back.Serve(&r.New.Parts[f.New], &r.Old.Parts[f.Old]); ok && fit.Kind != model.Patch {
			t.Errorf("%s, but back it can serve: %s", written(r, f), fit.Kind)
		}
	}
	return n
}

func onlyTrimmed(steps []model.Step) bool {
	for _, s := range steps {
		if s.Kind != model.Trim {
			return false
		}
	}
	return true
}
