package view

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

const inch = length.Inch

// named returns a view by its name.
func named(t *testing.T, m *model.Model, name string) model.View {
	t.Helper()
	for _, v := range Views(m) {
		if v.Name == name {
			return v
		}
	}
	t.Fatalf("no view %s", name)
	return model.View{}
}

// shapesOf returns the bounds of the shapes that show a thing.
func shapesOf(v *model.View, kind model.ShapeKind, part string) (found []geom.Rect) {
	for _, s := range v.Shapes {
		if s.Kind == kind && s.Part == part {
			found = append(found, s.Lines.Bounds())
		}
	}
	return found
}

func textsOf(v *model.View) (texts []string) {
	for _, t := range v.Texts {
		texts = append(texts, t.Text)
	}
	return texts
}

// The bar top lies at 40 1/2 in on the knee wall, whose studs show over the
// counter, from 36 in up to the plate at 39; where the framing reaches beyond the
// run, down to the lower plate. The work side's skin hides nothing of its own.
func TestKneeWallBehindItsRun(t *testing.T) {
	m := viewtest.Bar()
	m.KneeWalls[0].Framing.U.Hi += 8 * inch
	for i := range m.Parts {
		if p := &m.Parts[i]; p.ID == "knee_wall.bar/plate-bottom" {
			p.Placement.Box.U.Hi += 8 * inch
		}
	}
	v := named(t, m, "elevation-front")
	for part, want := range map[string]geom.Rect{
		"knee_wall.bar/stud-2":       geom.R(61*inch/4, 36*inch, 67*inch/4, 39*inch),
		"knee_wall.bar/plate-top":    geom.R(0, 39*inch, 72*inch, 81*inch/2),
		"knee_wall.bar/plate-bottom": geom.R(72*inch, 0, 80*inch, 3*inch/2),
	} {
		if got := shapesOf(&v, model.ShapeFraming, part); len(got) != 1 || got[0] != want {
			t.Errorf("%s is drawn at %v, want %v", part, got, want)
		}
	}
	if got := shapesOf(&v, model.ShapeSteel, "knee_wall.bar/support-1"); len(got) != 1 || got[0].Y.Hi != 81*inch/2 {
		t.Errorf("the steel that reaches through is drawn at %v", got)
	}

	m = viewtest.Bar() // as before, but the steel ends in the plate
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Kind == model.Steel {
			p.Placement.Box.V.Hi -= inch / 2
		}
	}
	v = named(t, m, "elevation-front")
	if len(shapesOf(&v, model.ShapeSteel, "knee_wall.bar/support-1")) != 0 || len(shapesOf(&v, model.ShapeHidden, "knee_wall.bar/support-1")) != 1 {
		t.Error("steel that ends in the plate is not drawn hidden")
	}
}

// The east wall stands across the left end of the run that starts at it. It leans
// away from the back run by 0.4 degrees: at the front, 23 1/4 in from the wall, by
// 0.162 in (tan 0.4 degrees is 0.006 981).
func TestWallsAtTheEndsOfRuns(t *testing.T) {
	m := viewtest.Bar()
	v := named(t, m, "elevation-front")
	cut := shapesOf(&v, model.ShapeWall, "wall.east")
	if len(cut) != 1 || cut[0].X.Hi > 100 || cut[0].X.Hi < -100 || cut[0].Y != (geom.Span{Hi: 42 * inch}) {
		t.Errorf("at the left end: %v", cut)
	}
	v = named(t, m, "elevation-back")
	cut = shapesOf(&v, model.ShapeWall, "wall.east")
	want := 493*inch/4 + 162*inch/1000
	if len(cut) != 1 || cut[0].X.Lo < want-inch/1000 || cut[0].X.Lo > want+inch/1000 {
		t.Errorf("at the right end: %v, want from %d", cut, want)
	}
	if !slices.Contains(textsOf(&v), "wall east") {
		t.Error("the wall's name is missing")
	}
	m.Runs[0].Free = []model.End{model.Right}
	if v = named(t, m, "elevation-back"); len(shapesOf(&v, model.ShapeWall, "wall.east")) != 0 {
		t.Error("a free end meets a wall")
	}
}

// Two strips 1/2 in thick lie under the cooler, which stands at 5/8 in.
func TestBlocksUnderAppliance(t *testing.T) {
	m := viewtest.Bar()
	v := named(t, m, "elevation-back")
	left := shapesOf(&v, model.ShapeFraming, "bay.cooler/block-1")
	if len(left) != 1 || left[0] != geom.R(195*inch/8, 0, 215*inch/8, inch/2) {
		t.Errorf("the left block is drawn at %v", left)
	}
	texts := strings.Join(textsOf(&v), " ")
	if !strings.Contains(texts, "on 1/2 of blocks, 1/8 to pack") {
		t.Errorf("nothing said of blocks: %s", texts)
	}
	m.Parts = slices.DeleteFunc(m.Parts, func(p model.Part) bool { return strings.HasPrefix(p.ID, "bay.") })
	v = named(t, m, "elevation-back")
	if texts := strings.Join(textsOf(&v), " "); strings.Contains(texts, "block") || strings.Contains(texts, "pack") {
		t.Errorf("blocks where there are none: %s", texts)
	}
	for _, s := range v.Shapes {
		if strings.Contains(s.Title, "block") {
			t.Errorf("drawn: %s", s.Title)
		}
	}
}

// Every drawn part with a front says so, on its edge and in its note: of a side
// seen from inside the front is where the toe kick is cut out.
func TestFrontIsNamed(t *testing.T) {
	for _, m := range []*model.Model{viewtest.Bar(), viewtest.Fitted()} {
		frontIsNamed(t, m)
	}
}

func frontIsNamed(t *testing.T, m *model.Model) {
	t.Helper()
	tried := 0
	for _, v := range Views(m) {
		i := slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.ID == v.Part })
		if i < 0 || len(m.Parts[i].Sides()) == 0 || m.Parts[i].Kind == model.Steel {
			continue
		}
		tried++
		p := &m.Parts[i]
		for _, side := range p.Sides() {
			n := slices.IndexFunc(v.Texts, func(t model.Text) bool { return strings.TrimSuffix(t.Text, ", banded") == side.Name })
			if n < 0 {
				t.Errorf("%s: no %s", v.Name, side.Name)
				continue
			}
			at, b := v.Texts[n].At, p.Outline.Bounds()
			near := map[model.Edge]Length{
				model.Bottom: at.Y - b.Y.Lo, model.Top: b.Y.Hi - at.Y,
				model.LeftEdge: at.X - b.X.Lo, model.RightEdge: b.X.Hi - at.X,
			}[side.Edge]
			if max(near, -near) > 2*v.TextHeight {
				t.Errorf("%s: %s stands %d from its edge", v.Name, side.Name, near)
			}
		}
		if side := p.Sides()[0]; !strings.Contains(strings.ToLower(v.Note), side.Name+" at the "+side.Edge.String()) {
			t.Errorf("%s: the note does not tell: %s", v.Name, v.Note)
		}
		for _, o := range p.Openings {
			if o.Name == "toe kick" && (o.Shape.Bounds().X.Lo == 0) != (p.Sides()[0].Edge == model.LeftEdge) {
				t.Errorf("%s: the front is not where the toe kick is", v.Name)
			}
		}
	}
	if tried < 3 {
		t.Errorf("only %d drawings were looked at", tried)
	}
}

// What is in a wall is named in the room, off the walls; and what points at the
// bar top does not point at its steel.
func TestPlanLabels(t *testing.T) {
	m := viewtest.Bar()
	m.Slabs[1].Name = strings.Repeat("m", 20)   // finds no room between the plates
	middle := &m.KneeWalls[0].Supports[1].Steel // reaches nearly to the edge
	middle.U, middle.V.Lo = geom.Span{Lo: 35 * inch, Hi: 37 * inch}, -14*inch
	v := named(t, m, "plan")
	var walls, steel []geom.Rect
	for _, s := range v.Shapes {
		switch s.Kind {
		case model.ShapeWall:
			walls = append(walls, s.Lines.Bounds())
		case model.ShapeSteel:
			steel = append(steel, s.Lines.Bounds())
		}
	}
	north := walls[0]
	for _, x := range v.Texts {
		if strings.HasPrefix(x.Text, "outlet ") && x.At.Y+v.TextHeight/2 > north.Y.Lo {
			t.Errorf("%s stands at %v, outside the room or in its wall %v", x.Text, x.At, north)
		}
	}
	if len(steel) != 4 {
		t.Fatalf("%d plates", len(steel))
	}
	leaders := 0
	for _, s := range v.Shapes {
		if s.Kind != model.ShapeLeader {
			continue
		}
		leaders++
		end := s.Lines[len(s.Lines)-1].Point
		for _, plate := range steel {
			if plate.Contains(geom.R(end.X, end.Y, end.X, end.Y)) {
				t.Errorf("a leader ends on steel at %v", end)
			}
		}
	}
	if leaders < 6 { // two outlets, two stubs, the bar top, the knee wall
		t.Errorf("only %d leaders", leaders)
	}
}
