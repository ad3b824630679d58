package paper

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Labels are so many side by side and below one another.
const (
	labelColumns = 4
	labelLines   = 4
	labelLeading = figures * 13 / 10
	labelHigh    = labelLines*labelLeading + 3*mm
)

// labels sets one for each part, in their order, to be cut apart and stuck on.
func (f *flow) labels() {
	if len(f.m.Parts) == 0 {
		return
	}
	title, text := "Labels", "Cut them apart, and stick each to its part when it is cut."
	f.open("labels", title, text)
	room := f.room()
	wide := room.X.Size() / labelColumns
	for i := range f.m.Parts {
		column := Length(i % labelColumns)
		if column == 0 && i > 0 {
			f.y -= labelHigh
		}
		if column == 0 && f.y-labelHigh < room.Y.Lo {
			f.open("labels", continued(title), "")
		}
		f.label(&f.m.Parts[i], geom.R(room.X.Lo+column*wide, f.y-labelHigh, room.X.Lo+(column+1)*wide, f.y))
	}
	f.y -= labelHigh
}

func (f *flow) label(p *model.Part, at geom.Rect) {
	s, b := f.last(), f.m.Build
	x, y := p.Size()
	s.rect(model.ShapeRule, at)
	line := at.Y.Hi
	for i, text := range [labelLines]string{p.Label, p.Name, p.Owner, mark(b, x) + " × " + mark(b, y)} {
		line -= labelLeading
		if i < labelLines-1 { // of a size nothing is left out: its fractions are narrower than their figures
			text = clipped(text, figures, at.X.Size()-4*mm)
		}
		s.words(geom.Point{X: at.X.Lo + 2*mm, Y: line}, figures, model.Start, i == 0, text)
	}
}
