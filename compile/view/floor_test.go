package view

import (
	"math"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
)

// sloping is the fixture on a floor that falls by a hundredth along the first wall and by
// half of that out from it, below a datum in the room's corner.
func sloping() *model.Model {
	m := viewtest.Bar()
	m.Room.Floor.Line = 48 * inch
	for _, p := range [...]geom.Point{{X: -100 * inch, Y: -100 * inch}, {X: 400 * inch, Y: -100 * inch}, {X: -100 * inch, Y: 400 * inch}, {X: 400 * inch, Y: 400 * inch}} {
		m.Room.Floor.Readings = append(m.Room.Floor.Readings, model.FloorReading{At: p, Z: -p.X/100 - p.Y/200})
	}
	m.Setting.Shims = []model.Shim{
		{Of: "cabinet.urn", Under: "front left corner", At: geom.Point{X: 2 * inch, Y: 20 * inch}, Gap: inch / 8, Thick: inch / 8},
		{Of: "cabinet.urn", Under: "rear left corner", At: geom.Point{X: 2 * inch}, Gap: inch / 50, Thick: inch / 32},
	}
	return m
}

// In each drawing the floor is where it is below what is drawn there.
func TestFloorIsDrawnAsRead(t *testing.T) {
	m := sloping()
	views := Views(m)
	run, bar := m.Runs[1].Frame, m.KneeWalls[0]
	mid := bar.Framing.V.Mid()
	for name, plan := range map[string]func(x Length) geom.Point{
		"elevation-back":  func(x Length) geom.Point { return geom.Point{X: x, Y: m.Runs[0].Depth} },
		"elevation-front": func(x Length) geom.Point { return run.At(x, m.Runs[1].Depth) },
		"knee-wall-bar":   func(x Length) geom.Point { return bar.Frame.At(x, mid) },
		"section-bar":     func(x Length) geom.Point { return bar.Frame.At(bar.Supports[0].Centre, x) },
	} {
		v := viewNamed(t, views, name)
		floors := 0
		for _, s := range v.Shapes {
			if s.Kind != model.ShapeFloor {
				continue
			}
			floors++
			for _, p := range s.Lines {
				at := plan(p.X)
				if z := -float64(at.X)/100 - float64(at.Y)/200; math.Abs(z-float64(p.Y)) > 10 {
					t.Errorf("%s: the floor is drawn at %v, and lies at %f there", name, p.Point, z)
				}
			}
		}
		if floors != 1 || !strings.Contains(v.Note, "48 in under the line") {
			t.Errorf("%s: %d floors, %q", name, floors, v.Note)
		}
	}
	v := viewNamed(t, views, "elevation-back")
	if got := shapesOf(v, model.ShapeFraming, "cabinet.urn"); len(got) != 1 || got[0].Y != (geom.Span{Lo: -inch / 8}) {
		t.Errorf("shims under the front are drawn at %v", got)
	}
	if !slices.ContainsFunc(textsOf(v), func(s string) bool { return s == "below the datum" }) {
		t.Errorf("nothing says how low the floor is: %q", textsOf(v))
	}
	v = viewNamed(t, Views(viewtest.Bar()), "elevation-back")
	if strings.Contains(v.Note, "datum") {
		t.Errorf("a floor that was not read has a datum: %q", v.Note)
	}
}

// A wall that was read leans into the drawing of the run that meets it: 1 in at 36 in up.
func TestWallIsDrawnAsRead(t *testing.T) {
	face := func(m *model.Model) geom.Contour {
		v := named(t, m, "elevation-back")
		i := slices.IndexFunc(v.Shapes, func(s model.Shape) bool { return s.Kind == model.ShapeWall && s.Part == "wall.east" })
		return v.Shapes[i].Lines
	}
	m := viewtest.Bar()
	plumb := face(m)
	i := slices.IndexFunc(m.Room.Walls, func(w model.Wall) bool { return w.Name == "east" })
	m.Room.Walls[i].Read = []model.WallReading{{}, {Along: 60 * inch}, {Height: 36 * inch, Off: inch}, {Along: 60 * inch, Height: 36 * inch, Off: inch}}
	leaning := face(m)
	if got, want := leaning[0].X, plumb[0].X-leaning[0].Y/36; leaning[0].Y != plumb[3].Y || max(got-want, want-got) > 1 {
		t.Errorf("its face is at %d at the top, want %d", got, want)
	}
	if got, want := leaning[len(leaning)-3].Point, plumb[0].Point; got != want {
		t.Errorf("its foot is at %v, want %v", got, want)
	}
}
