package solve

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// seventy is a knee wall of 70 in; the sizes of its lumber are those of a dry
// 2x4 by PS 20, 1 1/2 x 3 1/2 in.
const seventy = `
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = [96]
}
flat_bar "arm" {
  thickness = 0.5
  width     = 2.5
  lengths   = [72]
}
screw "plate" {
  diameter = 0.19
  length   = 1.25
  per_box  = 50
}
router "bench" {
  bit  = 0.25
  feed = 100
}
slab "oak" {
  thickness = 1.5
  solid     = true
}
room {
  wall "north" { length = 100 }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  out_from = wall.north
  at       = 30
  carcass  = carcass.base
  cabinet "cups" { width = 70 }
}
knee_wall "bar" {
  behind = run.back
  lumber = stick.two_by_four
  router = router.bench
  supports {
    count           = 4
    plate           = flat_bar.arm
    reach           = 10
    tail            = 3
    screws          = screw.plate
    screws_each     = 5
    top_screws      = screw.plate
    top_screws_each = 6
  }
}
bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  height   = 42
  overhang = { room = 12 }
}
`

// framedAround frames the wall with outlets in it.
func framedAround(t *testing.T, outlets ...model.KneeOutlet) *solver {
	t.Helper()
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(seventy)}})
	s := &solver{m: &model.Model{}}
	s.Values = values.New(src, &s.out.Findings)
	s.build()
	s.All()
	s.room()
	s.runs()
	k := s.knee(src.Top("knee_wall")[0], &s.m.Runs[0])
	k.wall.Outlets = outlets
	s.frame(&k)
	if findings.HasErrors() || s.out.Findings.HasErrors() {
		t.Fatal(findings, s.out.Findings)
	}
	return s
}

// boxAt is an outlet box 2 1/4 in wide, with 1/16 in of clearance in the skin.
func boxAt(name string, centre length.Length) model.KneeOutlet {
	u := geom.Span{Lo: centre, Hi: centre}
	return model.KneeOutlet{Name: name, Box: geom.Box{U: u.Grow(length.Inch * 9 / 8)}, Clear: geom.Box{U: u.Grow(length.Inch * 19 / 16)}}
}

func inches(values ...float64) []length.Length {
	var out []length.Length
	for _, v := range values {
		out = append(out, length.Length(v*float64(length.Inch)))
	}
	return out
}

// TestKneeWallAroundOutlets has figures worked out by hand.
func TestKneeWallAroundOutlets(t *testing.T) {
	for _, c := range []struct {
		name            string
		outlets         []model.KneeOutlet
		studs, supports []length.Length
		uneven          []model.Uneven
	}{
		{
			// 70 / 8 and so on; no stud within 1 1/4 + 0.008 + 3/4 = 2.008 of a support.
			name:     "none",
			studs:    inches(0.75, 16, 32, 48, 64, 69.25),
			supports: inches(8.75, 26.25, 43.75, 61.25),
		},
		{
			// A stud's centre keeps 1 3/16 + 3/4 off 32: 30 1/16 and 33 15/16; one alone
			// would leave more than 16. A support's keeps 1 3/16 + 1.258: all do.
			name:     "where a stud would stand",
			outlets:  []model.KneeOutlet{boxAt("blender", 32*length.Inch)},
			studs:    inches(0.75, 16, 30.0625, 33.9375, 48, 64, 69.25),
			supports: inches(8.75, 26.25, 43.75, 61.25),
			uneven: []model.Uneven{
				{What: "stud 3", By: "outlet blender", Off: -length.Inch * 31 / 16},
				{What: "stud 4", By: "outlet blender", Off: length.Inch * 31 / 16},
			},
		},
		{
			// 26 -+ (1 3/16 + 1.258) is 23.5545 to 28.4455, and its image from 41.5545.
			// The second support is nearer to 28.4455, on a mark 28 15/32. The first
			// is a third of that, 9.4818, on a mark 9 15/32. Then 28 15/32 + 2.008 is
			// under 32, and 41 17/32 + 2.008 under 48.
			name:     "where a support would lie",
			outlets:  []model.KneeOutlet{boxAt("blender", 26*length.Inch)},
			studs:    inches(0.75, 16, 32, 48, 64, 69.25),
			supports: inches(9.46875, 28.46875, 41.53125, 60.53125),
			uneven: []model.Uneven{
				{What: "support 1", By: "outlet blender", Off: length.Inch * 23 / 32},
				{What: "support 2", By: "outlet blender", Off: length.Inch * 71 / 32},
				{What: "support 3", By: "outlet blender", Off: -length.Inch * 71 / 32},
				{What: "support 4", By: "outlet blender", Off: -length.Inch * 23 / 32},
			},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			wall := framedAround(t, c.outlets...).m.KneeWalls[0]
			var supports []length.Length
			for _, s := range wall.Supports {
				supports = append(supports, s.Centre)
			}
			if diff := cmp.Diff(c.studs, wall.Studs); diff != "" {
				t.Errorf("studs:\n%s", diff)
			}
			if diff := cmp.Diff(c.supports, supports); diff != "" {
				t.Errorf("supports:\n%s", diff)
			}
			if diff := cmp.Diff(c.uneven, wall.Uneven); diff != "" {
				t.Errorf("uneven:\n%s", diff)
			}
		})
	}
}

// TestHolesOfASupport has figures worked out by hand for steel 2 1/2 wide, 3 on
// the wood and 10 beyond: two rows at a quarter and three quarters of the width.
// Five from above are three, at a sixth, a half and five sixths of 3, and two, at
// a quarter and three quarters. Six from below are three in each row, at a sixth,
// a half and five sixths of 10: on marks 1 21/32, 5 and 8 11/32; and they are
// slots 1/4 in longer either way.
func TestHolesOfASupport(t *testing.T) {
	s := framedAround(t)
	const down, up = "screw down", "screw up"
	want := []struct {
		name string
		at   []length.Length
	}{
		{down, inches(0.625, 0.5)}, {down, inches(0.625, 1.5)}, {down, inches(0.625, 2.5)},
		{down, inches(1.875, 0.75)}, {down, inches(1.875, 2.25)},
		{up, inches(0.625, 4.65625)}, {up, inches(0.625, 8)}, {up, inches(0.625, 11.34375)},
		{up, inches(1.875, 4.65625)}, {up, inches(1.875, 8)}, {up, inches(1.875, 11.34375)},
	}
	seen := 0
	for _, p := range s.m.Parts {
		if p.Kind != model.Steel {
			continue
		}
		seen++
		if len(p.Bores) != len(want) {
			t.Fatalf("%s has %d holes", p.ID, len(p.Bores))
		}
		for i, b := range p.Bores {
			far := want[i].name == up
			slot := length.Length(0)
			if far {
				slot = length.Inch / 2
			}
			expect := model.Bore{
				Name: want[i].name, At: geom.Point{X: want[i].at[0], Y: want[i].at[1]}, Diameter: inches(0.19 + 1./32)[0],
				Far: far, Sink: inches(0.38)[0], Slot: slot, Across: far, Why: b.Why,
			}
			if diff := cmp.Diff(expect, b); diff != "" {
				t.Errorf("%s, hole %d:\n%s", p.ID, i+1, diff)
			}
		}
	}
	if seen != 4 {
		t.Errorf("%d supports", seen)
	}
}
