package solve

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// wayBar is a run with a knee wall behind it, in inches: boxes of 24 with studs 16 apart.
const wayBar = `
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["10ft"]
}
room {
  wall "north" {
    length = 150
    corner = 90
  }
  wall "east" { length = 150 }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "front" {
  out_from = wall.east
  at       = 70
  carcass  = carcass.base
  cabinet "a" { width = 24 }
  cabinet "b" { width = 24 }
  cabinet "c" { width = 24 }
}
knee_wall "bar" {
  behind = run.front
  top    = 42
  lumber = stick.two_by_four
  outlet "left" {
    face      = "work"
    from_left = 8
    lying     = true
    height    = 38
  }
  outlet "right" {
    face       = "work"
    from_right = 8
    lying      = true
    height     = 38
  }
}
`

func wayModel(t *testing.T, more string) *model.Model {
	t.Helper()
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(wayBar + more)}})
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	s := Solve(src)
	if s.Model == nil || s.Findings.Has("cable-finds-no-way", src.Top("cable")[0].Head) {
		t.Fatal(s.Findings)
	}
	return s.Model
}

// TestCableInKneeWall has a cable worked out by hand: boxes 3 3/4 wide whose middles are 8
// from the ends of 72: 56 less 3 3/4 between them, straight through the studs at 16, 32, 48,
// and the one that the right box moves off 64, to its left.
func TestCableInKneeWall(t *testing.T) {
	m := wayModel(t, `
cable "straight" {
  from = outlet.left
  to   = outlet.right
}`)
	w := m.Ways[0]
	if want := 209 * length.Inch / 4; w.Length != want {
		t.Errorf("the way is %v, not %v", w.Length, want)
	}
	// 12 of slack, and 6 free at each end; staples 12 from both boxes, and 28 1/4 between them.
	if want := 305 * length.Inch / 4; w.Need != want || w.Supports != 2 {
		t.Errorf("it needs %v and %d staples", w.Need, w.Supports)
	}
	if len(w.Holes) != 4 || !slices.Equal(w.Past, []string{"knee_wall.bar"}) {
		t.Errorf("holes %v, past %v", w.Holes, w.Past)
	}
	for _, h := range w.Holes {
		// 3 1/2 less 3/4, half of it on each side, over 1 1/4.
		if h.Edge != 11*length.Inch/8 || h.Plates != 0 || h.At.Z != 38*length.Inch {
			t.Errorf("%+v", h)
		}
		marks := partNamed(m, h.Part).Marks
		if i := slices.IndexFunc(marks, func(k model.Mark) bool { return k.Name == "cable straight" }); i < 0 || marks[i].From.Y != marks[i].To.Y {
			t.Errorf("%s: no line across it: %v", h.Part, marks)
		}
	}
}

// TestCableThroughBoxes goes by way of the middle cabinet, at a height: each hole is a bore
// there. Sides begin 3/4 before the rear, and the back ends there: 1/2 of wood, the limit at an
// edge, is more than 1/4 at a joint, and 3/8 of half a hole more is 1 5/8.
func TestCableThroughBoxes(t *testing.T) {
	m := wayModel(t, `
cable "through" {
  from    = outlet.left
  to      = outlet.right
  through = [cabinet.a, cabinet.b, cabinet.c]
  height  = 20
}`)
	w := m.Ways[0]
	var parts []string
	for _, h := range w.Holes {
		parts = append(parts, h.Part)
		part := partNamed(m, h.Part)
		i := slices.IndexFunc(part.Bores, func(b model.Bore) bool { return b.Name == "cable through" })
		if i < 0 {
			t.Fatalf("%s has no bore: %v", h.Part, part.Bores)
		}
		at := part.Placement.Behind(geom.Rect{X: geom.About(part.Bores[i].At.X, 0), Y: geom.About(part.Bores[i].At.Y, 0)})
		if part.Bores[i].Diameter != 3*length.Inch/4 || at.Z.Lo != 20*length.Inch {
			t.Errorf("%s: %+v at %v", h.Part, part.Bores[i], at)
		}
		if part.Is("cabinet", "side") && at.V.Lo != 13*length.Inch/8 {
			t.Errorf("%s is bored at %v", h.Part, at.V)
		}
	}
	want := []string{"cabinet.a/back", "cabinet.a/side-right", "cabinet.b/side-left", "cabinet.b/side-right", "cabinet.c/side-left", "cabinet.c/back"}
	if !slices.Equal(parts, want) {
		t.Errorf("holes in %v", parts)
	}
	if want := []string{"knee_wall.bar", "cabinet.a", "cabinet.b", "cabinet.c", "knee_wall.bar"}; !slices.Equal(w.Past, want) {
		t.Errorf("past %v", w.Past)
	}
}

// TestCableComesBack has a cable turn in a box and go back through the holes that it came by,
// each of which is made once.
func TestCableComesBack(t *testing.T) {
	m := wayModel(t, `
cable "back" {
  from    = outlet.right
  to      = outlet.left
  through = [cabinet.a, cabinet.c, cabinet.a]
}`)
	w := m.Ways[0]
	for i, h := range w.Holes {
		if slices.Contains(w.Holes[:i], h) {
			t.Errorf("two holes at %v in %s", h.At, h.Part)
		}
	}
	if bores := partNamed(m, "cabinet.c/side-left").Bores; len(bores) != 1 {
		t.Errorf("the side is bored %d times: %v", len(bores), bores)
	}
}

// TestNailPlates has larger holes: 3 1/2 less 1 1/4, half of it on each side, is under 1 1/4.
func TestNailPlates(t *testing.T) {
	src, _ := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(wayBar + `
cable "near" {
  from     = outlet.left
  to       = outlet.right
  diameter = 1.25
}`)}})
	for _, h := range Solve(src).Model.Ways[0].Holes {
		if want := 9 * length.Inch / 8; h.Edge != want || h.Plates != 2 {
			t.Errorf("%+v", h)
		}
	}
}

func TestStaples(t *testing.T) {
	s := &solver{}
	src, _ := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(wayBar)}})
	s.Values = Solve(src).Values
	for long, want := range map[length.Length]int{1: 1, 24: 1, 25: 2, 78: 2, 79: 3, 132: 3, 133: 4} {
		if got := s.staples(long * length.Inch); got != want {
			t.Errorf("%d in: %d staples, not %d", long, got, want)
		}
	}
}

func partNamed(m *model.Model, id string) *model.Part {
	return &m.Parts[slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.ID == id })]
}

// TestCableToSwitch leads to a switch in the wall at the run's left end, 94 - 80 = 14 before the
// rear. It comes out of the box in the knee wall at u = 8 - 1 7/8, 1 3/4 behind the rear and 38 up, and
// ends at the top of the switch's, 20 + 1 7/8: in all 6 1/8 + 15 3/4 + 16 1/8 = 38. The left side
// it passes over the opening for that box, with 1/16 of room, 1/2 of wood and half of 3/4:
// 22 13/16 up.
func TestCableToSwitch(t *testing.T) {
	text := strings.Replace(wayBar, `wall "east" { length = 150 }`, `wall "east" {
    length = 150
    switch "lamp" { at = [80, 20] }
  }`, 1)
	w := solved(t, text+`
cable "lamp" {
  from = outlet.left
  to   = switch.lamp
}`).Model.Ways[0]
	if w.Length != 38*length.Inch || len(w.Holes) != 2 || w.Holes[1].Part != "cabinet.a/side-left" || w.Holes[1].At.Z != 365*length.Inch/16 {
		t.Errorf("the way is %v long with holes %+v", w.Length, w.Holes)
	}
}

// TestWaysFromFace moves the face of a wall by half an inch: what stands out of it and the run
// move with it, so that ways are as long and holes where they were in their parts.
func TestWaysFromFace(t *testing.T) {
	text := strings.Replace(wetWays, `    stub "waste" {`, `    switch "lamp" { at = [80, 20] }
    stub "waste" {`, 1) + `
cable "lamp" {
  from = outlet.left
  to   = switch.lamp
}`
	straight := solved(t, text).Model
	read := solved(t, strings.Replace(text, `    switch "lamp"`, `    reading {
      at  = [75, 30]
      off = 0.5
    }
    switch "lamp"`, 1)).Model
	for i, want := range straight.Ways {
		if got := read.Ways[i]; got.Length != want.Length || len(got.Holes) != len(want.Holes) {
			t.Errorf("%s is %d long with %d holes, of a straight wall %d with %d", got.Words(), got.Length, len(got.Holes), want.Length, len(want.Holes))
		}
		for _, h := range want.Holes {
			for _, o := range partNamed(straight, h.Part).Openings {
				if !slices.ContainsFunc(partNamed(read, h.Part).Openings, func(p model.Opening) bool { return p.Name == o.Name && p.Shape.Bounds() == o.Shape.Bounds() }) {
					t.Errorf("%s of %s is elsewhere", o.Name, h.Part)
				}
			}
		}
	}
	for _, w := range read.Room.Walls {
		for _, f := range w.Fixtures() {
			if f.Out.Lo != length.Inch/2 || f.Out.Size() != f.StandsOut {
				t.Errorf("%s stands out %v", f.Words(), f.Out)
			}
		}
	}
	if len(straight.Ways) != 2 || len(straight.Ways[0].Holes) == 0 || len(straight.Ways[1].Holes) == 0 {
		t.Errorf("nothing is bored: %+v", straight.Ways)
	}
}
