package work_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/lang/source"
)

// ticks are the figures of a step that is there.
func ticks(t *testing.T, m *model.Model, key string) (out []string) {
	t.Helper()
	for _, c := range step(t, m, key).Checks {
		out = append(out, c.What+": "+c.Figure)
	}
	return out
}

func waitsFor(task model.Task, key string) bool {
	return slices.ContainsFunc(task.After, func(b model.Before) bool { return b.Key == key })
}

const shop = `
build "bar" { unit = "in" }
stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["10ft"]
}
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
`

func bar(t *testing.T, text string) *model.Model {
	return solved(t, source.Files{{Name: "bar.hcl", Text: []byte(shop + text)}})
}

// TestCableThroughBoxes: it is agreed to before anything is ordered or bored, pulled once the boxes
// stand and are held, looked at, and then covered. Its way is 98 3/4 in long: 1 + 74 3/4 / 54 staples,
// rounded up, are 3.
func TestCableThroughBoxes(t *testing.T) {
	m := bar(t, `
room {
  wall "north" { length = 150 }
  wall "east" { length = 150 }
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
    from_right = 4.25
    lying      = true
    height     = 38
  }
}
cable "through" {
  from    = outlet.left
  to      = outlet.right
  through = [cabinet.a, cabinet.b, cabinet.c]
  height  = 20
}
slab "maple" { thickness = 1.5 }
counter "work" {
  over = run.front
  slab = slab.maple
}
`)
	if !waitsFor(step(t, m, "order"), "site.ways") || !waitsFor(step(t, m, "panels"), "site.ways") {
		t.Error("boards are bored before who wires has agreed")
	}
	if got := ticks(t, m, "panels"); !slices.Contains(got, "A-R, hole for cable through, where its drawing has it: 3/4 in across") {
		t.Errorf("%q", got)
	}
	pull := step(t, m, "cable.through")
	for _, key := range []string{"set.cabinet.a", "set.cabinet.b", "set.cabinet.c", "hold.bar", "wire.bar"} {
		if !waitsFor(pull, key) && slices.ContainsFunc(m.Work, func(t model.Task) bool { return t.Key == key }) {
			t.Errorf("it is pulled before %s", key)
		}
	}
	if pull.Hold == "" || len(pull.Cautions) == 0 {
		t.Error("nobody looks at it")
	}
	for _, key := range []string{"fix.counter.work", "devices"} {
		if !waitsFor(step(t, m, key), "cable.through") {
			t.Errorf("%s does not wait for it", key)
		}
	}
	way := m.Ways[0]
	want := []string{
		"cable, with what is left over and what is free in the boxes: " + m.Build.Near(way.Need),
		"staples: 3",
	}
	if got := ticks(t, m, "cable.through"); way.Supports != 3 || !cmp.Equal(want, got[:2]) {
		t.Errorf("%q of %+v", got, way)
	}
}

// TestCableInFraming: it is pulled and looked at before boxes close the wall.
func TestCableInFraming(t *testing.T) {
	m := solved(t, edittest.Edited(t, edittest.Folder(t, "../../examples/boatshed"), `+ cable "bar" {
+   from = outlet.blender
+   to   = outlet.scale
+   through = [knee_wall.bar]
+ }`))
	if !waitsFor(step(t, m, "cable.bar"), "wire.bar") || !waitsFor(step(t, m, "wire.seen.bar"), "cable.bar") {
		t.Error("it is not pulled between wiring and the look at it")
	}
	holes := 0
	for _, tick := range ticks(t, m, "cable.bar") {
		if strings.HasPrefix(tick, "hole through the sides of BAR-S") {
			holes++
		}
	}
	if holes == 0 || holes != len(m.Ways[slices.IndexFunc(m.Ways, func(w model.Way) bool { return w.Key() == "cable.bar" })].Holes) {
		t.Errorf("%d holes in studs, of %d", holes, len(m.Ways[slices.IndexFunc(m.Ways, func(w model.Way) bool { return w.Key() == "cable.bar" })].Holes))
	}
}

// TestCord: its plug goes through before the appliance stands.
func TestCord(t *testing.T) {
	m := bar(t, `
room {
  wall "north" {
    length = 120
    outlet "ice" { at = [60, 18] }
  }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  bay "ice" {
    appliance = { width = 24, height = 32.75, depth = 22.5 }
    gap       = "1/4in"
    top_gap   = "1/4in"
    back_gap  = "1/2in"
    blocks    = stick.two_by_four
  }
  cabinet "bags" { width = 46 }
}
cord "ice" {
  of     = bay.ice
  to     = outlet.ice
  length = "9ft"
}
`)
	task := step(t, m, "appliance.ice")
	if got := ticks(t, m, "appliance.ice"); !strings.HasPrefix(task.Title, "Put the plug of appliance ice through") ||
		!slices.ContainsFunc(got, func(s string) bool {
			return strings.HasPrefix(s, "cord ice, from bay ice to outlet ice, by way of ") && strings.Contains(s, "its plug first: ")
		}) {
		t.Errorf("%s: %q", task.Title, got)
	}
	if !slices.ContainsFunc(ticks(t, m, "panels"), func(s string) bool { return strings.HasPrefix(s, "BAGS-L, hole for cord ice") }) {
		t.Errorf("%q", ticks(t, m, "panels"))
	}
}

// TestShims: under cabinet kettle of the boat shed, whose front right corner is the datum, as the table
// of shims that was worked out by hand has them, and in one line.
func TestShims(t *testing.T) {
	m := solved(t, edittest.Folder(t, "../../examples/boatshed"))
	want := "shims, each within 1/64 in: rear left corner: 1/32 in; rear right corner: 3/32 in; front left corner: 1/32 in; front right corner: none"
	if got := ticks(t, m, "set.cabinet.kettle"); !slices.Contains(got, want) {
		t.Errorf("%q", got)
	}
	want = "the highest point, where no shim goes: under cabinet kettle, front right corner, along the first wall and out from it: 30 in, 20 1/4 in"
	if got := ticks(t, m, "line"); !slices.Contains(got, want) {
		t.Errorf("%q", got)
	}
}

// TestFromMarkedLines: run front of the boat shed is marked by the line of its fronts, 66 in from the
// first wall, so what stands behind or under it is measured from there: the framing behind boxes
// 23 1/4 in deep, and the rear of the anchor's block, 16 1/32 in before theirs. The datum lies, by hand,
// 47.98015 in below the line: no tape shows that, 47 31/32 in is the mark that is nearest.
func TestFromMarkedLines(t *testing.T) {
	m := solved(t, edittest.Folder(t, "../../examples/boatshed"))
	for _, c := range [][2]string{
		{"frame.bar", "its face towards the boxes, from their fronts: 23 1/4 in"},
		{"fix.anchor.end", "its rear, from the fronts of the boxes: 7 7/32 in"},
		{"line", "right end of run front, from its left end: 109 1/2 in"},
		{"line", "the datum, under the line that the floor was read from: 47 31/32 in"},
	} {
		if got := ticks(t, m, c[0]); !slices.Contains(got, c[1]) {
			t.Errorf("%s: %q", c[0], got)
		}
	}
}

// TestPackedAndScribed: a wall 74 in long stands back by 1/4 in at its right end. The screws of cabinet b
// are 50 mm inside its sides, 26.72 in and 45.28 in along: there it stands back by 0.090 in and 0.153 in, in
// shims of 1/32 in 3/32 in and 5/32 in. The wall beside the filler leans in by 1/8 in over 40 in, 0.108 in over
// the 34 1/2 in of the filler, whose blank goes 1/2 in beyond the furthest point.
func TestPackedAndScribed(t *testing.T) {
	m := bar(t, `
room {
  wall "north" {
    length  = 74
    backing = "planks"
    reading {
      at  = [0, 10]
      off = 0
    }
    reading {
      at  = [74, 10]
      off = "-1/4in"
    }
  }
  wall "east" {
    length = 60
    reading {
      at  = [30, 0]
      off = 0
    }
    reading {
      at  = [30, 40]
      off = "1/8in"
    }
  }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = 24 }
  cabinet "b" { width = 24 }
  cabinet "c" { width = 24 }
  filler "wall" { width = rest }
}
`)
	want := "packed solid behind its back before a screw is drawn tight, or it bows; along wall north: 3/32 in at 26 23/32 in, 5/32 in at 45 9/32 in"
	if got := ticks(t, m, "set.cabinet.b"); !slices.Contains(got, want) {
		t.Errorf("%q", got)
	}
	want = `cut off the right edge, to the wall east, station by station as the page has it under "Setting": WALL-F 1/2 in to 19/32 in`
	if got := ticks(t, m, "fit.filler.wall"); !cmp.Equal([]string{want}, got) {
		t.Errorf("%q", got)
	}
}

// TestWoundOut: the legs of cabinet urn of the servery, as they were worked out by hand, and which is which.
func TestWoundOut(t *testing.T) {
	m := solved(t, edittest.Folder(t, "../../examples/servery"))
	want := "wound out over the floor; legs count from the left, the rear row first: leg 1: 153 mm; leg 2: 153.5 mm; leg 3: 150 mm; leg 4: 150.5 mm"
	if got := ticks(t, m, "set.cabinet.urn"); !slices.Contains(got, want) {
		t.Errorf("%q", got)
	}
}

// TestLaid: 12 mm that are laid since the floor was read bring the datum, which is 1002.14 mm under the line
// of the servery on the bare floor, up to 990.14 mm under it; readings of walls say so before it is struck.
func TestLaid(t *testing.T) {
	files := edittest.Folder(t, "../../examples/servery")
	for i := range files {
		files[i].Text = bytes.Replace(files[i].Text, []byte("  floor {\n"), []byte("  floor {\n    laid = 12\n"), 1)
	}
	m := solved(t, files)
	got := ticks(t, m, "line")
	for _, want := range []string{"what is laid on the whole floor since it was read: 12 mm", "the datum, under the line that the floor was read from: 990 mm"} {
		if !slices.Contains(got, want) {
			t.Errorf("no %q: %q", want, got)
		}
	}
	if title := step(t, m, "site.walls").Title; !strings.HasSuffix(title, "; up is from the datum, which lies 990 mm under the line that the floor is read from") {
		t.Errorf("%q", title)
	}
}
