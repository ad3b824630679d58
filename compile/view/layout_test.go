package view

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
)

// faults checks a view by its values alone: every text and stroke lies within
// the bounds, no two texts meet, and no text meets a thin line.
func faults(v *model.View) []string {
	var out []string
	complain := func(format string, args ...any) { out = append(out, v.Name+": "+fmt.Sprintf(format, args...)) }
	texts := append([]model.Text{}, v.Texts...)
	var strokes []seg
	inside := func(p geom.Point) {
		if !v.Bounds.Contains(geom.R(p.X, p.Y, p.X, p.Y)) {
			complain("a stroke leaves the bounds at %v", p)
		}
	}
	for _, d := range v.Dims {
		texts = append(texts, d.Text)
		for _, stroke := range d.Strokes(v.TextHeight) {
			for i, p := range stroke {
				inside(p)
				if i > 0 {
					strokes = append(strokes, segOf(stroke[i-1], p))
				}
			}
		}
	}
	for _, sh := range v.Shapes {
		if !v.Bounds.Contains(sh.Lines.Bounds()) {
			complain("shape %q leaves the bounds", sh.Title)
		}
		switch sh.Kind {
		case model.ShapeLeader, model.ShapeThin, model.ShapeCentre:
			strokes = append(strokes, outlineSegs(sh)...)
		}
	}
	boxes := make([]box, len(texts))
	for i, t := range texts {
		boxes[i] = boxAt(t.At, TypeWidth(t.Text, v.TextHeight), lineHeight*v.TextHeight/100, t.Turn)
		if !v.Bounds.Contains(boxes[i].bounds()) {
			complain("text %q leaves the bounds", t.Text)
		}
		for j := range i {
			if boxes[i].meets(boxes[j]) {
				complain("texts %q and %q meet", texts[j].Text, t.Text)
			}
		}
		for _, s := range strokes {
			if boxes[i].crosses(s) {
				complain("a line runs through text %q: %.0f", t.Text, s)
			}
		}
	}
	return out
}

func TestFixtureLayout(t *testing.T) {
	for _, m := range []*model.Model{viewtest.Bar(), viewtest.Fitted()} {
		for _, v := range Views(m) {
			for _, f := range faults(&v) {
				t.Error(f)
			}
		}
	}
}

// The check must be able to fail.
func TestFaultsAreSeen(t *testing.T) {
	text := func(x, y Length) model.Text {
		return model.Text{At: geom.Point{X: x, Y: y}, Room: 300, Text: "wide"}
	}
	v := model.View{TextHeight: 100, Bounds: geom.R(0, 0, 2000, 2000)}
	v.Texts = []model.Text{text(500, 500), text(550, 560), text(1990, 1000)}
	v.Shapes = []model.Shape{{Kind: model.ShapeThin, Lines: geom.Contour{
		{Point: geom.Point{X: 400}}, {Point: geom.Point{X: 400, Y: 1000}}}}}
	if got := faults(&v); len(got) != 3 {
		t.Errorf("want a meeting, a leaving text and a crossed one, got %q", got)
	}
}
