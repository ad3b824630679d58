package view

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
)

// The skin's first piece is 48 in wide, from the run's left end, which is at the right as
// one sees it from the room, and stands 1/4 in over the datum. Of its lower edge 1/2 in comes
// off at the left and 1/4 in from its middle on, of its right edge 1/2 in below and 1/4 in above.
func TestSkinIsDrawnAsItIsCut(t *testing.T) {
	m := viewtest.Fitted()
	i := slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.ID == "skin.bar/RM1" })
	p := &m.Parts[i]
	high := p.Outline.Bounds().Y.Hi
	p.Scribes = []model.Scribe{
		{
			Edge: model.Bottom, To: model.ToFloor, From: model.LeftEdge,
			Line:     []geom.Point{{Y: inch / 2}, {X: 24 * inch, Y: inch / 4}, {X: 48 * inch, Y: inch / 4}},
			Stations: []model.Station{{Cut: inch / 2}, {Along: 24 * inch, Cut: inch / 4}, {Along: 48 * inch, Cut: inch / 4}},
		},
		{
			Edge: model.RightEdge, To: "wall.east", From: model.Top,
			Line:     []geom.Point{{X: 95 * inch / 2}, {X: 191 * inch / 4, Y: high}},
			Stations: []model.Station{{Cut: inch / 4}, {Along: high, Cut: inch / 2}},
		},
	}
	v := named(t, m, "knee-wall-bar-room")
	s := v.Shapes[slices.IndexFunc(v.Shapes, func(s model.Shape) bool { return s.Part == p.ID && s.Kind == model.ShapePanel })]
	want := geom.Rect{X: geom.Span{Lo: -48 * inch, Hi: -inch / 4}, Y: geom.Span{Lo: inch / 2, Hi: inch/4 + high}}
	if got := s.Lines.Bounds(); got != want {
		t.Errorf("drawn %v, want %v", got, want)
	}
	for _, c := range [...]geom.Point{{X: -48 * inch, Y: 3 * inch / 4}, {X: -24 * inch, Y: inch / 2}, {X: -inch / 4, Y: inch/4 + high}} {
		if !slices.ContainsFunc(s.Lines, func(v geom.Vertex) bool { return v.Point == c }) {
			t.Errorf("no corner at %v: %v", c, s.Lines)
		}
	}
	texts := dimTexts(&v)
	for _, gone := range [...]string{"1/4", "40 3/16", "72"} {
		if slices.Contains(texts, gone) {
			t.Errorf("%s to an edge that is cut on site", gone)
		}
	}
	if !slices.Contains(texts, "40 7/16") || !strings.Contains(v.Note, "drawn as it stands") {
		t.Errorf("%q, %q", texts, v.Note)
	}
}
