package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
)

// StripPiece draws a piece of a pole as it lies, from one distance of its end to another, at 0 to
// its length: what is marked there, each mark with its distance. It is as high as it is given.
func StripPiece(m *model.Model, p *onsite.Pole, piece geom.Span, wide Length) Drawing {
	return func(height Length) model.View {
		s := newSheet(m, geom.R(0, 0, piece.Size(), wide), height, roomShare)
		s.view.Name, s.view.Title = p.Name, p.Title
		s.rect(model.ShapeFraming, s.core, "", p.Title)
		var r row
		for _, mk := range p.Marks {
			if !piece.Holds(mk.At) {
				continue
			}
			at := mk.At - piece.Lo
			s.line(markKinds[mk.Kind], "", mk.What, geom.Point{X: at}, geom.Point{X: at, Y: wide})
			r.add(at, s.mark(mk.At)+"  "+clip(mk.What))
		}
		sd := s.above()
		s.layRow(sd, &r, across, 0, s.h/2)
		for i, t := range r.texts {
			s.put(t)
			if lead := r.leads[i]; len(lead) > 0 {
				s.line(model.ShapeThin, "", "", lead...)
			}
		}
		return s.finish()
	}
}
