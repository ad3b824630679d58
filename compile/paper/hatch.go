package paper

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Hatches follow ISO 128-3 (from memory): thin lines at 45 degrees, wider apart on larger areas;
// framing and steel are told by their direction from boards and slabs that they touch; they leave
// room for text; what is too narrow for them is black.
const (
	narrow      = mm // what is not wider is black
	nearHatches = 8 * mm / 10
	farHatches  = 3 * mm
)

// leftward are the kinds whose hatches fall to the right; those of others rise.
var leftward = map[model.ShapeKind]bool{model.ShapeFraming: true, model.ShapeSteel: true}

// hatch draws the hatches of an area that a section cuts, clear of texts.
func (s *sheet) hatch(shape *model.Shape, texts []geom.Contour) {
	b := shape.Lines.Bounds()
	least := min(b.X.Size(), b.Y.Size())
	if least <= narrow {
		s.Shapes = append(s.Shapes, model.Shape{Kind: model.ShapeInk, Lines: shape.Lines, Closed: true})
		return
	}
	apart := min(max(least/3, nearHatches), farHatches) * 1414 / 1000 // along the page's axes
	high := b.Y.Size()
	// Lines count from the paper's corner, so that an area in two pieces is hatched as one.
	for x := (b.X.Lo-high)/apart*apart - b.Y.Lo%apart; x < b.X.Hi; x += apart {
		from, to := geom.Point{X: x, Y: b.Y.Lo}, geom.Point{X: x + high, Y: b.Y.Hi}
		if leftward[shape.Kind] {
			from.Y, to.Y = b.Y.Hi, b.Y.Lo
		}
		for _, stretch := range besides(shape.Lines.Clip(from, to), texts) {
			s.line(model.ShapeHatch, stretch[0], stretch[1])
		}
	}
}

// besides is what is left of stretches of a line outside some areas that have no hollows.
func besides(stretches [][2]geom.Point, areas []geom.Contour) [][2]geom.Point {
	for _, area := range areas {
		var left [][2]geom.Point
		for _, s := range stretches {
			for _, in := range area.Clip(s[0], s[1]) {
				if s[0] != in[0] {
					left = append(left, [2]geom.Point{s[0], in[0]})
				}
				s[0] = in[1]
			}
			if s[0] != s[1] {
				left = append(left, s)
			}
		}
		stretches = left
	}
	return stretches
}
