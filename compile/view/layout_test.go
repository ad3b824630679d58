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
	return faultsOf(v, &sheet{h: v.TextHeight})
}

// faultsOf takes texts as wide as a sheet sets them.
func faultsOf(v *model.View, as *sheet) []string {
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
		boxes[i] = boxAt(t.At, as.width(t.Text), lineHeight*v.TextHeight/100, t.Turn)
		if !v.Bounds.Contains(boxes[i].bounds()) {
			complain("text %q leaves the bounds", t.Text)
		}
		for j := range i {
			if boxes[i].meets(&boxes[j]) {
				complain("texts %q and %q meet", texts[j].Text, t.Text)
			}
		}
		for _, s := range strokes {
			if boxes[i].crosses(&s) {
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

// On paper a fraction at the end of a line is as wide as the longer of its numbers: 1 at 66, a gap
// of 30 and 70 hundredths of 8 at 66, or of 16 at 132.
func TestWidthOfFractions(t *testing.T) {
	screen, paper := &sheet{h: 100}, &sheet{h: 100, paper: true}
	for text, want := range map[string]Length{"1 3/8": 142, "1 3/16": 188, "3/8": 76, "~3/8": 176, "5/1000": 373, "a/8": 175, "12": 132, "1 3/8 in": 436} {
		if got := paper.width(text); got != want {
			t.Errorf("%q is %d wide on paper, not %d", text, got, want)
		}
		if got := screen.width(text); got != TypeWidth(text, 100) {
			t.Errorf("%q is %d wide on a screen", text, got)
		}
	}
}
