package model

import (
	"math"
	"testing"

	"barwright/compile/geom"
)

// A left side that is seen from inside has its front at the left, a bottom seen
// from above has it below; a slice off the front of the part must lie there.
func TestSides(t *testing.T) {
	box := geom.Box{U: geom.Span{Lo: 10, Hi: 30}, V: geom.Span{Lo: -5, Hi: 595}, Z: geom.Span{Lo: 100, Hi: 800}}
	for _, test := range []struct {
		id   string
		out  geom.Dir
		want []Side
	}{
		{"cabinet.urn/side-left", geom.Dir{Axis: geom.U}, []Side{{LeftEdge, "front edge"}, {RightEdge, "rear edge"}}},
		{"cabinet.urn/side-right", geom.Dir{Axis: geom.U, Neg: true}, []Side{{RightEdge, "front edge"}, {LeftEdge, "rear edge"}}},
		{"cabinet.urn/bottom", geom.Dir{Axis: geom.Z}, []Side{{Bottom, "front edge"}, {Top, "rear edge"}}},
		{"cabinet.urn/underside", geom.Dir{Axis: geom.Z, Neg: true}, []Side{{Top, "front edge"}, {Bottom, "rear edge"}}},
		{"knee_wall.bar/plate-upper", geom.Dir{Axis: geom.Z}, []Side{{Bottom, "run side"}, {Top, "room side"}}},
		{"counter.work/piece-1", geom.Dir{Axis: geom.Z}, []Side{{Bottom, "front edge"}, {Top, "rear edge"}}},
		{"bar_top.oak/piece-1", geom.Dir{Axis: geom.Z}, []Side{{Bottom, "run side"}, {Top, "room side"}}},
		{"cabinet.urn/back", geom.Dir{Axis: geom.V}, nil},
		{"skin.end/piece-1", geom.Dir{Axis: geom.U}, []Side{{LeftEdge, "run side"}, {RightEdge, "room side"}}},
		{"knee_wall.bar/stud-1", geom.Dir{Axis: geom.V, Neg: true}, nil},
	} {
		p := Part{ID: test.id, Placement: geom.Place(geom.Frame{}, box, test.out)}
		got := p.Sides()
		if len(got) != len(test.want) {
			t.Errorf("%s: %v, want %v", test.id, got, test.want)
			continue
		}
		for i := range got {
			if got[i] != test.want[i] {
				t.Errorf("%s: %v, want %v", test.id, got[i], test.want[i])
			}
		}
		if len(got) == 0 {
			continue
		}
		slice := box
		slice.V.Lo = slice.V.Hi - 1
		face, _ := p.Placement.Local(slice)
		blank := p.Placement.Blank()
		at := map[Edge]bool{ // what the slice does not reach
			Bottom: face.Y.Hi < blank.Y.Hi, Top: face.Y.Lo > blank.Y.Lo,
			LeftEdge: face.X.Hi < blank.X.Hi, RightEdge: face.X.Lo > blank.X.Lo,
		}
		if !at[got[0].Edge] || at[got[1].Edge] {
			t.Errorf("%s: the front is not at the %s: it lies at %v of %v", test.id, got[0].Edge, face, blank)
		}
	}
	if none := (&Part{}).Sides(); none != nil {
		t.Errorf("a part that stands nowhere has sides: %v", none)
	}
}

// Areas by the plain formulas: a round, and a rectangle between two half rounds.
func TestBoreShape(t *testing.T) {
	const mm = 1_000_000
	for _, test := range []struct {
		bore   Bore
		area   float64
		bounds geom.Rect
	}{
		{Bore{At: geom.Point{X: 50 * mm, Y: 20 * mm}, Diameter: 10 * mm}, math.Pi * 25, geom.R(45*mm, 15*mm, 55*mm, 25*mm)},
		{Bore{At: geom.Point{X: 50 * mm, Y: 20 * mm}, Diameter: 10 * mm, Slot: 30 * mm}, math.Pi*25 + 300, geom.R(30*mm, 15*mm, 70*mm, 25*mm)},
		{Bore{At: geom.Point{X: 50 * mm, Y: 20 * mm}, Diameter: 10 * mm, Slot: 30 * mm, Across: true}, math.Pi*25 + 300, geom.R(45*mm, 0, 55*mm, 40*mm)},
	} {
		shape := test.bore.Shape()
		if area := shape.Area(); math.Abs(area-test.area) > 1e-6 || shape.Bounds() != test.bounds {
			t.Errorf("%+v: area %f in %v, want %f in %v", test.bore, area, shape.Bounds(), test.area, test.bounds)
		}
	}
}

func TestBanded(t *testing.T) {
	box := geom.Box{U: geom.Span{Hi: 18}, V: geom.Span{Hi: 600}, Z: geom.Span{Hi: 800}}
	p := Part{ID: "cabinet.urn/side-left", Placement: geom.Place(geom.Frame{}, box, geom.Dir{Axis: geom.U})}
	if got := p.Banded(); got != "" {
		t.Errorf("bare: %q", got)
	}
	for _, step := range []struct {
		edge Edge
		want string
	}{{Top, "top edge"}, {LeftEdge, "top edge, front edge"}, {Bottom, "bottom edge, top edge, front edge"}, {RightEdge, "all edges"}} {
		p.Bands = append(p.Bands, Band{Edge: step.edge})
		if got := p.Banded(); got != step.want {
			t.Errorf("%q, want %q", got, step.want)
		}
	}
}
