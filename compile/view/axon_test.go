package view

import (
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

// The fixture's walls meet at the right of the first one, so it is seen from the left; without
// walls nothing forbids another corner.
func TestEye(t *testing.T) {
	m := viewtest.Bar()
	if got := eyeFor(m); got != paint.Eyes()[0] {
		t.Errorf("seen from %v", got)
	}
	m.Room.Walls = m.Room.Walls[:1]
	if got := eyeFor(m); got != paint.Eyes()[0] && got != paint.Eyes()[1] {
		t.Errorf("one wall: seen from %v", got)
	}
}

// The counter of the fixture's front run: its outer right corner is 72 in along the run and
// 24 1/4 in out from its rear, 36 in high. The run starts 85 1/4 in from the corner of the room,
// on a wall that is turned 89.6 degrees, and is itself turned 179.6: so the corner is, in inches,
// at x = 123.25 + 85.25 cos 89.6 + 72 cos 179.6 - 24.25 sin 179.6, y = 85.25 sin 89.6 + 72 sin
// 179.6 + 24.25 cos 179.6, that is 51.67761, 61.50116. Seen from the left it is drawn at
// (x + y) cos 30 = 98.01569 to the right, 36 + (x - y) / 2 = 31.08822 up.
func TestCornerOfCounter(t *testing.T) {
	v := axonometric(viewtest.Bar(), asItStands(viewtest.Bar()).painted(), Type{})
	const x, y = 98.01569, 31.08822
	nearest := 1e9
	for _, s := range v.Shapes {
		if s.Part != "counter.work" {
			continue
		}
		for _, p := range s.Lines {
			dx, dy := float64(p.X)/float64(length.Inch)-x, float64(p.Y)/float64(length.Inch)-y
			nearest = min(nearest, dx*dx+dy*dy)
		}
	}
	if nearest > 1e-8 {
		t.Errorf("no corner nearer than %g in (squared)", nearest)
	}
}

// No shape of a picture is less than an area that is seen, and all that fills is shaded.
func TestPicturesHaveNoSpecks(t *testing.T) {
	for _, m := range []*model.Model{viewtest.Bar(), viewtest.Fitted()} {
		for _, v := range []model.View{axonometric(m, asItStands(m).painted(), Type{}), exploded(m, asItStands(m).takenApart(m).painted(), Type{})} {
			for _, s := range v.Shapes {
				if !s.Closed {
					continue
				}
				if s.Lines.Area() <= 1 && -s.Lines.Area() <= 1 {
					t.Errorf("%s: %q has %g mm²", v.Name, s.Title, s.Lines.Area())
				}
				if s.Fills() != (s.Shade != model.Unshaded) {
					t.Errorf("%s: %q: fills %v, shade %v", v.Name, s.Title, s.Fills(), s.Shade)
				}
			}
		}
	}
}

// Taken apart, every part is seen at least in part, but the toe-boards of cabinets that turn their
// backs to the eye, which stand low behind these; the note names them.
func TestPartsSeenApart(t *testing.T) {
	m := viewtest.Bar()
	v := exploded(m, asItStands(m).takenApart(m).painted(), Type{})
	seen := map[string]bool{}
	for _, s := range v.Shapes {
		seen[s.Part] = true
	}
	var hidden []string
	for _, p := range m.Parts {
		if !seen[p.ID] {
			hidden = append(hidden, p.ID)
			if !strings.Contains(v.Note, p.Label) {
				t.Errorf("the note does not name %s: %s", p.Label, v.Note)
			}
		}
	}
	if diff := cmp.Diff([]string{"cabinet.sink/toe-board", "cabinet.bins/toe-board"}, hidden); diff != "" {
		t.Errorf("hidden (-want +got):\n%s", diff)
	}
}

// A box of two sides, a bottom and a door, alone in its run, worked by hand: sides 380 mm from the
// middle go 35 hundredths of that further, the bottom 440 below the middle as much down; the door
// goes 300 mm to the front.
func TestApart(t *testing.T) {
	const mm = length.Millimetre
	box := func(u0, u1, v0, v1, z0, z1 Length) geom.Box {
		return geom.Box{U: geom.Span{Lo: u0 * mm, Hi: u1 * mm}, V: geom.Span{Lo: v0 * mm, Hi: v1 * mm}, Z: geom.Span{Lo: z0 * mm, Hi: z1 * mm}}
	}
	hull := box(0, 780, 0, 600, 0, 900)
	m := &model.Model{Runs: []model.Run{{Name: "r", Length: hull.U.Hi, Depth: hull.V.Hi, Height: hull.Z.Hi, Boxes: []model.Box{{
		Kind: model.Cabinet, Name: "c", Hull: hull, Fronts: []model.Front{{Part: "cabinet.c/door", Place: box(0, 780, 600, 620, 0, 900)}},
	}}}}}
	add := func(name string, b geom.Box, out geom.Axis) {
		at := geom.Place(geom.Frame{}, b, geom.Dir{Axis: out})
		m.Parts = append(m.Parts, model.Part{ID: "cabinet.c/" + name, Placement: at, Outline: geom.RectContour(at.Blank())})
	}
	add("left", box(0, 20, 0, 600, 0, 900), geom.U)
	add("right", box(760, 780, 0, 600, 0, 900), geom.U)
	add("bottom", box(20, 760, 0, 600, 0, 20), geom.Z)
	add("door", box(0, 780, 600, 620, 0, 900), geom.V)
	all := bodies(m)
	apart(m, all)
	var got []paint.Vec
	for i := range all {
		got = append(got, all[i].moved)
	}
	want := []paint.Vec{{X: -133e6}, {X: 133e6}, {Z: -154e6}, {Y: 300e6}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Every part is drawn in the picture of one run or knee wall, which names it.
func TestGroupsHoldAll(t *testing.T) {
	m := viewtest.Bar()
	shown := map[string]int{}
	for _, g := range groupsOf(m) {
		v := explodedGroup(m, &g, g.of(asItStands(m).takenApart(m)), Type{})
		own := map[string]bool{}
		for _, s := range v.Shapes {
			own[s.Part] = true
		}
		for _, p := range m.Parts {
			if own[p.ID] || strings.Contains(v.Note, p.Label+",") || strings.Contains(v.Note, p.Label+".") {
				shown[p.ID]++
			}
		}
	}
	for _, p := range m.Parts {
		if shown[p.ID] != 1 {
			t.Errorf("%s is in %d pictures", p.ID, shown[p.ID])
		}
	}
}
