package view

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

func viewNamed(t *testing.T, views []model.View, name string) *model.View {
	t.Helper()
	i := slices.IndexFunc(views, func(v model.View) bool { return v.Name == name })
	if i < 0 {
		t.Fatalf("no view %q", name)
	}
	return &views[i]
}

// The figures are worked out by hand from the fixture. Pins stand 37 mm from the
// edges of a side 23 1/16 in wide: the second row at 585.79 - 37 = 548.79 mm, 21.606
// in. Plates are 16 mm over and under 7 5/32 and 24 in. The door's board is its place
// of 23 7/8 x 24 5/8 in less 1/2 mm of banding all round: 605.4 x 624.5 mm, and begins
// 102.1 mm over the floor. From the room, what is at 48 of 72 in is at 24.
func TestFiguresOfFitted(t *testing.T) {
	views := Views(viewtest.Fitted())
	for name, want := range map[string][]string{
		"part-urn-l": {"19 × 32 mm", "37 mm", "50 mm", "3", "~21 19/32", "23 1/16",
			"4", "4 23/32", "6", "~6 17/32", "~7 25/32", "~23 3/8", "~24 5/8", "34 3/4"},
		"part-urn-do": {"22 mm", "~21 27/32", "~23 27/32",
			"~3 1/8", "~18 13/16", "~19 31/32", "~22 19/32", "~24 19/32"},
		"part-k-p1":          {"1", "2", "1", "2 1/2", "7 1/2", "11 1/2", "12 1/2"},
		"fronts-front":       {"sink 30", "bins 18", "kegs 24", "72", "4", "30 3/4", "1 1/4", "36"},
		"knee-wall-bar-room": {"24", "36", "48", "71", "72", "24", "52", "24", "1/4", "40 3/16", "1/16", "1 1/2", "42"},
	} {
		got := dimTexts(viewNamed(t, views, name))
		slices.SortFunc(got, strings.Compare)
		slices.SortFunc(want, strings.Compare)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	for name, want := range map[string][]string{
		"part-urn-l":   {"40 × shelf pin", "⌀ 5 mm, 12 mm deep", "4 × hinge plate", "front edge, banded", "rear edge"},
		"part-urn-do":  {"2 × hinge cup", "⌀ 35 mm, 12.5 mm deep", "from the other face", "⌀ 3/16, through", "banded"},
		"part-k-p1":    {"⌀ 7/32, through", "sunk to ⌀ 7/16", "slot 1/4 × 3/4, through"},
		"part-urn-bk":  {"corners bored ⌀ 1/2", "stud 2"},
		"fronts-front": {"false front", "left door", "14 7/8 × 24 5/8"},
		"plan":         {"sink wash", "tap wash", "switch lamp", "vent air"},
	} {
		v := viewNamed(t, views, name)
		for _, text := range want {
			if !slices.ContainsFunc(v.Texts, func(x model.Text) bool { return x.Text == text }) {
				t.Errorf("%s does not say %q", name, text)
			}
		}
	}
	note := viewNamed(t, views, "part-urn-do").Note
	for _, want := range []string{"Banded, beyond these sizes: all edges.", "Good faces: both.", "drilled from the other face is dashed"} {
		if !strings.Contains(note, want) {
			t.Errorf("the door's note does not say %q: %s", want, note)
		}
	}
}

// Doors of 24 in boxes are alike and drawn once; one whose good face differs is
// drawn for itself.
func TestAlikeIsDrawnOnce(t *testing.T) {
	m := viewtest.Fitted()
	v := viewNamed(t, Views(m), "part-urn-do")
	if v.Title != "urn-DO, kegs-DO: door" || !slices.Equal(v.Alike, []string{"cabinet.kegs/front-DO"}) {
		t.Errorf("title %q, alike %q", v.Title, v.Alike)
	}
	for i := range m.Parts {
		if m.Parts[i].ID == "cabinet.kegs/front-DO" {
			m.Parts[i].Good = model.GoodFar
		}
	}
	if v := viewNamed(t, Views(m), "part-kegs-do"); len(v.Alike) > 0 || v.Title != "kegs-DO, door" {
		t.Errorf("title %q, alike %q", v.Title, v.Alike)
	}
}

func shapesFor(v *model.View, kind model.ShapeKind, part string) (found []model.Shape) {
	for _, s := range v.Shapes {
		if s.Kind == kind && s.Part == part {
			found = append(found, s)
		}
	}
	return found
}

// Worked out by hand: the right door of the 36 in box "cups", from 48 1/4 in on, ends
// 1/16 in before its end; its hinges are there. The door of "urn" has its handle 2 in
// from its board's right and upper edges.
func TestFrontsAreSeen(t *testing.T) {
	v := viewNamed(t, Views(viewtest.Fitted()), "fronts-back")
	lines := shapesFor(v, model.ShapeHidden, "cabinet.cups/front-DR")
	if len(lines) != 1 || len(lines[0].Lines) != 3 {
		t.Fatalf("%d lines tell how the door opens", len(lines))
	}
	apex := lines[0].Lines[1]
	if want := (337*length.Inch)/4 - length.Inch/16; apex.X != want || lines[0].Lines[0].X >= apex.X || lines[0].Lines[2].X >= apex.X {
		t.Errorf("the lines meet at %d, want %d", apex.X, want)
	}
	bores := shapesFor(v, model.ShapeBore, "cabinet.urn/front-DO")
	if len(bores) != 2 {
		t.Fatalf("%d bores go through the door", len(bores))
	}
	if at := upright(bores[0].Lines.Bounds()).centre(); at != (geom.Point{X: 556_712_500, Y: 675_775_000}) {
		t.Errorf("the first hole of the handle is seen at %v", at)
	}
}

func TestPartShapes(t *testing.T) {
	views := Views(viewtest.Fitted())
	v := viewNamed(t, views, "part-urn-l")
	bands := shapesFor(v, model.ShapeBand, "cabinet.urn/side-left")
	if len(bands) != 1 || bands[0].Lines.Bounds() != geom.R(0, 4*length.Inch, 0, 139*length.Inch/4) {
		t.Errorf("bands %v", bands)
	}
	if n := len(shapesFor(v, model.ShapeBore, "cabinet.urn/side-left")); n != 44 {
		t.Errorf("%d bores, want 40 pins and 4 of plates", n)
	}
	door := viewNamed(t, views, "part-urn-do")
	if near, far := len(shapesFor(door, model.ShapeBore, door.Part)), len(shapesFor(door, model.ShapeHidden, door.Part)); near != 2 || far != 2 {
		t.Errorf("%d bores seen and %d dashed, want 2 and 2", near, far)
	}
	back := viewNamed(t, views, "part-urn-bk")
	if marks, bores := shapesFor(back, model.ShapeMark, back.Part), shapesFor(back, model.ShapeBore, back.Part); len(marks) != 1 || len(bores) != 4 {
		t.Errorf("%d marks and %d bores at corners, want 1 and 4", len(marks), len(bores))
	}
}

// The opening in the skin lies where the outlet's cover does, and battens hide the
// seam behind them.
func TestRoomFace(t *testing.T) {
	v := viewNamed(t, Views(viewtest.Fitted()), "knee-wall-bar-room")
	hole, cover := shapesFor(v, model.ShapeOpening, "skin.bar/RM1"), shapesFor(v, model.ShapeOutlet, "outlet.guests")
	if len(hole) != 1 || len(cover) != 1 {
		t.Fatalf("%d openings, %d covers", len(hole), len(cover))
	}
	if a, b := upright(hole[0].Lines.Bounds()).centre(), upright(cover[0].Lines.Bounds()).centre(); a != b || a.X != -20*length.Inch {
		t.Errorf("the opening is at %v, the cover at %v", a, b)
	}
	at := func(id string) int {
		return slices.IndexFunc(v.Shapes, func(s model.Shape) bool { return s.Part == id })
	}
	if !(0 < at("skin.bar/RM1") && at("skin.bar/RM1") < at("skin.bar/RB4")) {
		t.Error("the batten lies behind the skin")
	}
	if at("knee_wall.bar/stud-2") >= 0 {
		t.Error("a stud is seen through the skin")
	}
}

func TestBoreRows(t *testing.T) {
	var like []model.Bore
	add := func(x, y Length) { like = append(like, model.Bore{At: geom.Point{X: x, Y: y}}) }
	for i := range Length(5) {
		add(100, 100+32*i) // a row up
	}
	for i := range Length(4) {
		add(300+50*i, 700) // one along
	}
	add(100, 500) // off the row's pitch
	add(200, 10)
	add(200, 20)
	add(200, 30) // too few
	for i := range Length(4) {
		add(900, i*(widestPitch+1)) // too far apart
	}
	rows, left := boreRows(like)
	want := []boreRow{
		{geom.Point{X: 100, Y: 100}, geom.Point{X: 100, Y: 228}, 5, true},
		{geom.Point{X: 300, Y: 700}, geom.Point{X: 450, Y: 700}, 4, false},
	}
	if !slices.Equal(rows, want) || len(left) != 8 {
		t.Errorf("rows %v, %d left over; want %v and 8", rows, len(left), want)
	}
	if rows, left := boreRows([]model.Bore{{}, {}, {}, {}, {}}); len(rows) != 0 || len(left) != 5 {
		t.Errorf("bores on one spot make rows %v", rows)
	}
}
