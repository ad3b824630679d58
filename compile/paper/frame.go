package paper

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang/length"
)

// bar draws a bar of a round length at a scale, with what the scale is called.
func (s *sheet) bar(m *model.Model, n scale, at geom.Point) {
	step, unit := n.step(m.Build.Unit)
	w := n.on(step)
	for i := range Length(4) {
		r := geom.R(at.X+i*w, at.Y, at.X+(i+1)*w, at.Y+mm)
		if i%2 == 0 {
			s.rect(model.ShapeInk, r)
		} else {
			s.rect(model.ShapeRing, r)
		}
	}
	text := fmt.Sprintf("%s  %s", unit, n.words(m.Build.Unit))
	s.words(geom.Point{X: at.X + 4*w + note/2, Y: at.Y}, note, model.Start, false, text)
}

// step is the length of a quarter of the bar, and what all of it is called.
func (n scale) step(u length.Unit) (Length, string) {
	if u.Imperial() {
		for _, inches := range []Length{1, 3, 6, 12, 24, 48, 96} {
			if l := inches * length.Inch; n.on(l) >= 6*mm {
				if inches < 12 {
					return l, fmt.Sprintf("%d in", 4*inches)
				}
				return l, fmt.Sprintf("%d ft", 4*inches/12)
			}
		}
	}
	for _, l := range []Length{10, 20, 50, 100, 200, 500, 1000, 2000} {
		if n.on(l*mm) >= 6*mm {
			return l * mm, fmt.Sprintf("%d mm", 4*l)
		}
	}
	return 1000 * mm, "4 m"
}

// barWidth is how much the bar and its words take.
func (it *item) barWidth(m *model.Model) Length {
	step, unit := it.scale.step(m.Build.Unit)
	return 4*it.scale.on(step) + view.TypeWidth(unit+"  "+it.scale.words(m.Build.Unit), note)
}

// frame draws the frame and the title block.
func (s *sheet) frame(m *model.Model) {
	w := s.Size.X - 2*margin
	s.rect(model.ShapeFrame, geom.R(margin, margin, margin+w, s.Size.Y-margin))
	s.line(model.ShapeFrame, geom.Point{X: margin, Y: margin + block}, geom.Point{X: margin + w, Y: margin + block})
	scales := "as beside each view"
	if s.scale > 0 {
		scales = s.scale.words(m.Build.Unit)
	}
	unit := "mm"
	if m.Build.Unit.Imperial() {
		unit = "inches"
	}
	revision := m.Build.Revision
	if revision == "" {
		revision = "–"
	}
	cells := []struct {
		share       Length // of a hundred
		name, value string
	}{
		{32, "Build", m.Build.Name},
		{26, "Sheet", s.Title},
		{18, "Scale", scales},
		{8, "Sizes in", unit},
		{8, "Revision", revision},
		{8, "No.", fmt.Sprintf("%d of %d", s.Number, s.Of)},
	}
	x := margin
	for i, c := range cells {
		if i > 0 {
			s.line(model.ShapeRule, geom.Point{X: x, Y: margin}, geom.Point{X: x, Y: margin + block})
		}
		wide := w * c.share / 100
		s.words(geom.Point{X: x + 2*mm, Y: margin + block - 4*mm}, 21*mm/10, model.Start, false, c.name)
		height := 36 * mm / 10
		for height > 2*mm && view.TypeWidth(c.value, height) > wide-3*mm {
			height -= mm / 10
		}
		s.words(geom.Point{X: x + 2*mm, Y: margin + 3*mm}, height, model.Start, true, c.value)
		x += wide
	}
}
