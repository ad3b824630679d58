package solve_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

// covered is a bar in inches: a run of boxes of 30 that stands out from a wall
// on its left, a knee wall behind it with a text of its own, a counter at 36 and
// a bar top on framing 40 1/2 high. Studs stand at 20, 40, …
func covered(t *testing.T, boxes int, knee string) *model.Model {
	t.Helper()
	text := `
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}
stick "stud" {
  thickness = 1.5
  width     = 3.5
  lengths   = [192]
}
flat_bar "arm" {
  thickness = 0.5
  width     = 2.5
  lengths   = [72]
}
router "bench" {
  bit  = 0.25
  feed = 100
}
slab "oak" { thickness = 1.5 }
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin }
}
room {
  wall "north" { length = 100 }
}
run "front" {
  out_from = wall.north
  at       = 60
  carcass  = carcass.base
`
	for i := range boxes {
		text += fmt.Sprintf("  cabinet \"c%d\" { width = 30 }\n", i)
	}
	text += "}\ncounter \"work\" {\n  over = run.front\n  slab = slab.oak\n}\n" +
		"knee_wall \"bar\" {\n  behind  = run.front\n  lumber  = stick.stud\n  top     = 40.5\n  spacing = 20\n" + knee + "\n}\n" +
		"bar_top \"oak\" {\n  over     = knee_wall.bar\n  slab     = slab.oak\n  overhang = { room = 10 }\n}\n"
	m, _ := solved(t, source.File{Name: "bar.hcl", Text: []byte(text)})
	return m
}

// inches makes lengths of inches.
func inches(at ...float64) []length.Length {
	var out []length.Length
	for _, x := range at {
		out = append(out, length.Length(x*float64(inch)))
	}
	return out
}

// TestBattensBetweenSeams: a stretch longer than the 8 ft sheet gets one seam,
// its batten fixed there, a second one mirrored, and between these as many as
// one asks for, evenly. Common practice, no source. Of 120 in the seam of the
// work side lies on the last stud within 95 1/2, at 80, and 40 mirrors it.
func TestBattensBetweenSeams(t *testing.T) {
	for _, c := range []struct {
		between int
		want    []float64 // from 40 to 80
	}{
		{0, []float64{40, 80}},
		{1, []float64{40, 60, 80}},
		// 40 / 3 = 13.333; the nearest 32nd is 13 11/32, from either one.
		{2, []float64{40, 53.34375, 66.65625, 80}},
		{3, []float64{40, 50, 60, 70, 80}},
		{4, []float64{40, 48, 56, 64, 72, 80}},
	} {
		m := covered(t, 4, fmt.Sprintf("skin \"s\" {\n face = \"work\"\n board = sheet.thin\n battens = { board = sheet.thin, width = 1.5, between = %d }\n}", c.between))
		skin := m.KneeWalls[0].Skins[0]
		if diff := cmp.Diff(inches(80), skin.Seams); diff != "" {
			t.Fatal(diff)
		}
		var middle []length.Length
		for _, x := range skin.Battens {
			if x >= 40*inch && x <= 80*inch {
				middle = append(middle, x)
			}
		}
		if diff := cmp.Diff(inches(c.want...), middle); diff != "" {
			t.Errorf("%d between: %s", c.between, diff)
		}
		// As many beside these, and one at either end.
		if got, want := len(skin.Battens), 2+len(c.want)+2*c.between; got != want {
			t.Errorf("%d between make %d battens, not %d", c.between, got, want)
		}
	}
}

// TestBattensAsNearAsCanBe: how many battens stand between two 39 1/4 apart,
// as gaps of 39.25, 19.625, 13.083 and 9.813 come nearest to what is aimed at.
func TestBattensAsNearAsCanBe(t *testing.T) {
	for about, between := range map[string]int{"60": 0, "32": 0, "29": 1, "16.5": 1, "16": 2, "11.5": 2, "11.4": 3} {
		m := covered(t, 4, "skin \"s\" {\n face = \"work\"\n board = sheet.thin\n battens = { board = sheet.thin, width = 1.5, about = "+about+" }\n}")
		n := 0
		for _, x := range m.KneeWalls[0].Skins[0].Battens {
			if x > inch && x < 40*inch {
				n++
			}
		}
		if n != between {
			t.Errorf("about %s: %d between, want %d", about, n, between)
		}
	}
}

// TestMovedBattensAreTold: on the room's side of 60 in two battens would stand
// at 20 1/4 and 39 3/4; a cover plate 2 3/4 wide about 20 closes 17 7/8 to 22
// 1/8 for their centres, and 37 7/8 to 42 1/8, which mirror that.
func TestMovedBattensAreTold(t *testing.T) {
	m := covered(t, 2, "outlet \"lamp\" {\n face = \"room\"\n from_left = 20\n}\n"+
		"skin \"s\" {\n face = \"room\"\n board = sheet.thin\n battens = { board = sheet.thin, width = 1.5, between = 2 }\n}")
	wall := &m.KneeWalls[0]
	if diff := cmp.Diff(inches(59.25, 37.875, 22.125, 0.75), wall.Skins[0].Battens); diff != "" {
		t.Error(diff)
	}
	off := inches(1.875)[0]
	var moved []model.Uneven
	for _, u := range wall.Uneven {
		if strings.HasPrefix(u.What, "batten") {
			moved = append(moved, u)
		}
	}
	want := []model.Uneven{
		{What: "batten 2 of skin s", By: "outlet lamp", Off: -off},
		{What: "batten 3 of skin s", By: "outlet lamp", Off: off},
	}
	if diff := cmp.Diff(want, moved); diff != "" {
		t.Error(diff)
	}
}

// TestSkinOverRun: the L-shaped panel at the right end, seen from outside, has
// the run's front on its left. It is 24 + 3 1/2 wide, 40 7/16 less 1/4 high,
// lacks what is above the boxes, 34 1/2 less 1/4 up, and the recess for the
// feet, 3 deep and 4 less 1/4 high.
func TestSkinOverRun(t *testing.T) {
	m := covered(t, 2, "skin \"s\" {\n face = \"right\"\n board = sheet.thin\n over_run = true\n}")
	box := m.Runs[0].Boxes[1]
	toe, high := box.ToeSetback, box.ToeHeight-inch/4
	if toe != 3*inch || high != 4*inch-inch/4 {
		t.Fatalf("the recess for the feet is %d deep and %d high", toe, high)
	}
	p := m.Parts[len(m.Parts)-1]
	at := inches(24, 27.5, 34.25, 40.1875)
	want := geom.Contour{}
	for _, v := range [][2]length.Length{{toe, 0}, {at[1], 0}, {at[1], at[3]}, {at[0], at[3]}, {at[0], at[2]}, {0, at[2]}, {0, high}, {toe, high}} {
		want = append(want, geom.Vertex{Point: geom.Point{X: v[0], Y: v[1]}})
	}
	if diff := cmp.Diff(want, p.Outline); diff != "" {
		t.Error(diff)
	}
	if p.Good != model.GoodDrawn || p.Placement.Out != (geom.Dir{Axis: geom.U}) {
		t.Errorf("the good face is %s, the drawn one looks to %s", p.Good, p.Placement.Out)
	}
}

// TestKneeOutletBoxes: a lying box 3 3/4 by 2 1/4, 2 3/4 deep, of which a skin
// takes 1/4, and the same on a face without one; 14 from either's left.
func TestKneeOutletBoxes(t *testing.T) {
	m := covered(t, 2, "outlet \"a\" {\n face = \"work\"\n from_left = 14\n lying = true\n}\n"+
		"outlet \"b\" {\n face = \"room\"\n from_left = 14\n lying = true\n height = 30\n}\n"+
		"skin \"s\" {\n face = \"work\"\n board = sheet.thin\n}")
	between := func(lo, hi float64) geom.Span { s := inches(lo, hi); return geom.Span{Lo: s[0], Hi: s[1]} }
	want := []model.KneeOutlet{
		{
			Name: "a", Face: "work", ByRule: true,
			Box:   geom.Box{U: between(12.125, 15.875), V: between(-2.5, 0), Z: between(36.375, 38.625)},
			Clear: geom.Box{U: between(12.0625, 15.9375), V: between(0, 0.25), Z: between(36.3125, 38.6875)},
			Cover: geom.Box{U: between(11.75, 16.25), V: between(0.25, 0.25), Z: between(36.125, 38.875)},
		},
		{
			Name: "b", Face: "room",
			Box:   geom.Box{U: between(44.125, 47.875), V: between(-3.5, -0.75), Z: between(28.875, 31.125)},
			Clear: geom.Box{U: between(44.0625, 47.9375), V: between(-3.5, -3.5), Z: between(28.8125, 31.1875)},
			Cover: geom.Box{U: between(43.75, 48.25), V: between(-3.5, -3.5), Z: between(28.625, 31.375)},
		},
	}
	got := m.KneeWalls[0].Outlets
	for i := range got {
		got[i].Why = model.Why{}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
