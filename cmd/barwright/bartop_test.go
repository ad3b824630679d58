package main

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// TestBarTopMoves raises the example's bar top by an inch and lists all that
// this moves, worked out by hand: the framing and its skins grow, what lies on
// them rises, outlets stand in the middle of what is free and rise by half of
// it. No other part, wall, box or slab changes in anything.
func TestBarTopMoves(t *testing.T) {
	before := compiled(t, "boatshed")
	r, err := options{set: []string{"bar_top=43"}}.solve(example("boatshed"), compile.Compile)
	if err != nil || r.model == nil {
		t.Fatal(err, r.findings)
	}
	after := r.model
	if len(before.Parts) != len(after.Parts) {
		t.Fatalf("%d parts became %d", len(before.Parts), len(after.Parts))
	}
	const inch = length.Inch
	moved := 0
	for i := range before.Parts {
		old, now := &before.Parts[i], &after.Parts[i]
		grow, rise := byAnInch(old)
		want := old.Placement.Box.Z.Shift(rise)
		want.Hi += grow
		if now.ID != old.ID || now.Placement.Box != old.Placement.Box.With(geom.Z, want) {
			t.Errorf("%s was at %v; now %s is at %v", old.ID, old.Placement.Box, now.ID, now.Placement.Box)
		}
		if grow != 0 || rise != 0 {
			moved++
			continue
		}
		if diff := cmp.Diff(old, now); diff != "" {
			t.Errorf("%s changed (-42 +43):\n%s", old.ID, diff)
		}
	}
	// 9 studs, the upper plate, 4 supports; the bar top; skins of 2, 2 and 1
	// pieces; 6 battens, 2 pieces of the cap, 2 strips of the corner.
	if moved != 9+1+4+1+5+6+2+2 {
		t.Errorf("%d parts moved", moved)
	}
	checkOutletsRise(t, &before.KneeWalls[0], &after.KneeWalls[0], inch/2)
	for name, pair := range map[string][2]any{
		"room": {before.Room, after.Room}, "runs": {before.Runs, after.Runs},
		"studs":    {before.KneeWalls[0].Studs, after.KneeWalls[0].Studs},
		"counters": {before.Slabs[:2], after.Slabs[:2]}, "screws": {before.Fastening, after.Fastening},
		"fittings": {before.Fitted, after.Fitted}, "programs": {before.Programs, after.Programs},
	} {
		if diff := cmp.Diff(pair[0], pair[1]); diff != "" {
			t.Errorf("%s changed (-42 +43):\n%s", name, diff)
		}
	}
}

// byAnInch is how much a part grows at its upper end, and how far it rises.
func byAnInch(p *model.Part) (grow, rise length.Length) {
	owner, id, _ := strings.Cut(p.ID, "/")
	switch {
	case owner == "bar_top.oak", strings.HasPrefix(id, "plate-upper"), strings.HasPrefix(id, "support-"), strings.HasPrefix(id, "cap-"):
		return 0, length.Inch
	case owner == "knee_wall.bar" && !strings.HasPrefix(id, "plate-lower"), strings.HasPrefix(owner, "skin."), strings.HasPrefix(owner, "corner."):
		return length.Inch, 0
	}
	return 0, 0
}

func checkOutletsRise(t *testing.T, old, now *model.KneeWall, by length.Length) {
	t.Helper()
	if len(old.Outlets) != 2 || len(now.Outlets) != 2 {
		t.Fatalf("%d outlets became %d", len(old.Outlets), len(now.Outlets))
	}
	for i, o := range old.Outlets {
		up := func(b geom.Box) geom.Box { return b.With(geom.Z, b.Z.Shift(by)) }
		if n := now.Outlets[i]; n.Box != up(o.Box) || n.Clear != up(o.Clear) || n.Cover != up(o.Cover) {
			t.Errorf("outlet %s was at %v, is at %v", o.Name, o.Box, n.Box)
		}
	}
}
