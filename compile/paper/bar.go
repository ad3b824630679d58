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
	step, long := it.scale.step(m.Build.Unit)
	return 4*it.scale.on(step) + note/2 + view.TypeWidth(long, note)
}
