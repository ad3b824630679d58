package paper

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang/length"
)

// bar draws a bar of a round length at a scale, with how long it is.
func (s *sheet) bar(m *model.Model, n scale, at geom.Point) {
	step, long := n.step(m.Build.Unit)
	s.stripes(at, n.on(step), 4, mm)
	s.words(geom.Point{X: at.X + 4*n.on(step) + note/2, Y: at.Y}, note, model.Start, false, long)
}

// step is the length of a quarter of the bar, and what all of it is called.
func (n scale) step(u length.Unit) (Length, string) {
	unit, one, lengths := "mm", mm, []Length{10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000}
	if u.Imperial() {
		unit, one, lengths = "in", length.Inch, []Length{1, 3, 6, 12, 24, 48, 96, 240, 480, 1200, 2400, 4800}
	}
	i := 0
	for i < len(lengths)-1 && n.on(lengths[i]*one) < 6*mm {
		i++
	}
	whole := 4 * lengths[i]
	if u.Imperial() && whole >= 48 {
		unit, whole = "ft", whole/12
	}
	return lengths[i] * one, fmt.Sprintf("%d %s", whole, unit)
}

// barWidth is how much the bar and its words take.
func (it *item) barWidth(m *model.Model) Length {
	step, long := it.scale.step(m.Build.Unit)
	return 4*it.scale.on(step) + note/2 + view.TypeWidth(long, note)
}
