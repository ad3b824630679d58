package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
)

// StripPiece draws a piece of a pole as it lies, from one distance of its end to another, at 0 to
// its length. What is marked there runs up from its lower edge, which is held to the work, by so
// much; beyond that stand the distance and the name, on the strip too, so that they are cut out with
// it.
func StripPiece(m *model.Model, p *onsite.Pole, piece geom.Span, ticks Length) Drawing {
	return func(height Length) model.View {
		s := newSheet(m, geom.R(0, 0, piece.Size(), ticks), height, roomShare)
		s.view.Name, s.view.Title = p.Name, p.Title
		written := Length(0)
		var r row
		for _, mk := range p.Marks {
			if piece.Holds(mk.At) {
				name := s.mark(mk.At) + "  " + clip(mk.What)
				written = max(written, TypeWidth(name, height))
				r.add(mk.At-piece.Lo, name)
			}
		}
		s.rect(model.ShapeFraming, geom.R(0, 0, piece.Size(), ticks+2*height+written), "", p.Title)
		for _, mk := range p.Marks {
			if at := mk.At - piece.Lo; piece.Holds(mk.At) {
				s.line(markKinds[mk.Kind], "", mk.What, geom.Point{X: at}, geom.Point{X: at, Y: ticks})
			}
		}
		sd := s.above()
		sd.ends = s.core.X
		s.layRow(sd, &r, across, 0, 0)
		for i, t := range r.texts {
			s.put(t)
			if lead := r.leads[i]; len(lead) > 0 {
				s.line(model.ShapeThin, "", "", lead...)
			}
		}
		return s.finish()
	}
}
