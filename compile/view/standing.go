package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// standing is the outline of a part as it stands: with what is cut off on site along its
// lines, where they leave one piece that can be told.
func standing(p *model.Part) geom.Contour {
	if len(p.Scribes) == 0 {
		return p.Outline
	}
	var off []geom.Contour
	for i := range p.Scribes {
		off = append(off, offcut(&p.Scribes[i], p.Outline.Bounds()))
	}
	if left, ok := geom.Difference(p.Outline, off); ok && len(left) == 1 {
		return left[0]
	}
	return p.Outline
}

// offcut is what lies beyond a line, out to a little over the edge of the blank.
func offcut(s *model.Scribe, blank geom.Rect) geom.Contour {
	const over = 10 * length.Millimetre
	beyond := func(p geom.Point) geom.Point {
		switch s.Edge {
		case model.Bottom:
			p.Y = blank.Y.Lo - over
		case model.Top:
			p.Y = blank.Y.Hi + over
		case model.LeftEdge:
			p.X = blank.X.Lo - over
		case model.RightEdge:
			p.X = blank.X.Hi + over
		}
		return p
	}
	line := s.Line
	points := append(slices.Clone(line), beyond(line[len(line)-1]), beyond(line[0]))
	shape := make(geom.Contour, len(points))
	for i, p := range points {
		shape[i] = geom.Vertex{Point: p}
	}
	if shape.Area() < 0 {
		return shape.Reversed()
	}
	return shape
}
