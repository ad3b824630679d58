package revise

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang/length"
)

// TestStands moves the shelf of a cabinet 600 wide, 500 deep and 800 high, and the cabinet.
func TestStands(t *testing.T) {
	box := func(u, v, z, u1, v1, z1 model.Length) geom.Box {
		return geom.Box{U: geom.Span{Lo: u * mm, Hi: u1 * mm}, V: geom.Span{Lo: v * mm, Hi: v1 * mm}, Z: geom.Span{Lo: z * mm, Hi: z1 * mm}}
	}
	cabinet := func(around, shelf geom.Box) *model.Model {
		side, on := panel("side", 500, 800), panel("shelf", 400, 564)
		side.ID, on.ID, on.Owner = "cabinet.urn/side", "cabinet.urn/shelf", side.Owner
		side.Placement.Box, on.Placement.Box = around, shelf
		m := build(side, on)
		m.Build.Unit, m.Build.Marks = length.Millimetres, mm/2
		return m
	}
	old := cabinet(box(0, 0, 0, 600, 500, 800), box(18, 50, 400, 582, 450, 418))
	for _, c := range []struct {
		name          string
		around, shelf geom.Box
		want          string
	}{
		{"as before", box(0, 0, 0, 600, 500, 800), box(18, 50, 400, 582, 450, 418), ""},
		{"the whole cabinet", box(100, 10, 5, 700, 510, 805), box(118, 60, 405, 682, 460, 423), ""},
		{"lower", box(0, 0, 0, 600, 500, 800), box(18, 50, 380, 582, 450, 398), "20 mm lower"},
		{"lower in a cabinet that moved", box(100, 0, 20, 700, 500, 820), box(118, 50, 410, 682, 450, 428), "10 mm lower"},
		{"all ways", box(0, 0, 0, 600, 500, 800), box(20, 45, 410, 584, 445, 428), "2 mm to the right, 5 mm back, 10 mm higher"},
		{"off by what counts as equal", box(0, 0, 0, 600, 500, 800), box(18, 50, 401, 582, 450, 419), ""},
		{"as far from the foot", box(0, 0, 0, 600, 500, 900), box(18, 50, 400, 582, 450, 418), ""},
		{"as far from the top", box(0, 0, 0, 600, 500, 900), box(18, 50, 500, 582, 450, 518), ""},
		{"as far from the middle", box(0, 0, 0, 600, 500, 900), box(18, 50, 450, 582, 450, 468), ""},
		{"neither", box(0, 0, 0, 600, 500, 900), box(18, 50, 430, 582, 450, 448), "30 mm higher"},
		{"lowered at the foot", box(0, 0, -100, 600, 500, 800), box(18, 50, 380, 582, 450, 398), "80 mm higher"},
	} {
		new := cabinet(c.around, c.shelf)
		all, _ := fates(reuse.Open(old, new, mm), Options{Within: mm})
		kind := model.Unchanged
		if c.want != "" {
			kind = model.Relabel
		}
		if f := all[1]; f.Stands != c.want || f.Kind != kind {
			t.Errorf("%s: %s, %q; want %q", c.name, f.Kind, f.Stands, c.want)
		}
		if f := all[0]; f.Stands != "" || f.Kind != model.Unchanged {
			t.Errorf("%s: the side is %s, %q", c.name, f.Kind, f.Stands)
		}
	}
}

// TestElsewhereHasItsReason lowers a shelf that is fixed, and widens the cabinet before it: the
// shelf has the nearer cause of its height, not that of the width.
func TestElsewhereHasItsReason(t *testing.T) {
	files := example(t, "boatshed")
	new := edited(t, edited(t, files, "fixed_shelves = [18]", "fixed_shelves = [16]"), "    width   = 18\n    doors   = 1", "    width   = 18.25\n    doors   = 1")
	r := Compare(mustBuild(t, files), mustBuild(t, new), Options{Within: length.Inch / 64})
	for _, f := range r.Fates {
		if f.New < 0 || r.New.Parts[f.New].Label != "MUGS-FS1" {
			continue
		}
		if f.Kind != model.Relabel || f.Stands != "2 in lower" || len(f.Because) == 0 || f.Because[len(f.Because)-1] != "cabinet.mugs.fixed_shelves" {
			t.Errorf("%s, %q because of %q", f.Kind, f.Stands, f.Because)
		}
		return
	}
	t.Error("there is no shelf")
}
