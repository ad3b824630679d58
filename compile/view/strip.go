package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
)

// StripPiece draws a piece of a pole as it lies, from one distance of its end to another, at 0 to
// its length. What is marked there runs up from its lower edge, which is held to the work, by so
// much; beyond that stand the distance and the name, on the strip too, so that they are cut out with
// it: beside a thin line that goes on from the mark, or, where they are too many for that, turned.
func StripPiece(m *model.Model, p *onsite.Pole, piece geom.Span, ticks Length) Drawing {
	return func(as Type) model.View {
		s := newSheet(m, geom.R(0, 0, piece.Size(), ticks), as, roomShare)
		s.view.Name, s.view.Title = p.Name, p.Title
		var r row
		for _, mk := range p.Marks {
			if x := mk.At - piece.Lo; piece.Holds(mk.At) {
				s.line(markKinds[mk.Kind], "", mk.What, geom.Point{X: x}, geom.Point{X: x, Y: ticks})
				r.add(x, s.mark(mk.At)+"  "+clip(mk.What))
			}
		}
		at, top := s.pennants(&r, ticks)
		if at == nil {
			top = s.turned(&r, ticks)
		}
		for i := range at {
			s.fly(&at[i], r.names[i], ticks)
		}
		s.rect(model.ShapeFraming, geom.R(0, 0, piece.Size(), top), "", p.Title)
		slices.SortStableFunc(s.view.Shapes, func(a, b model.Shape) int {
			return one(b.Kind == model.ShapeFraming) - one(a.Kind == model.ShapeFraming)
		})
		return s.finish()
	}
}

// pennant is a text that stands at one side of a mark, in a row over it; the lowest is 0.
type pennant struct {
	at, wide Length
	left     bool // it ends at the mark, otherwise it begins there
	row      int
}

func (f *pennant) span() geom.Span {
	if f.left {
		return geom.Span{Lo: f.at - f.wide, Hi: f.at}
	}
	return geom.Span{Lo: f.at, Hi: f.at + f.wide}
}

// pennants finds a place for each text of a row whose marks stand in their order, so that none meets
// another, nor another's line, and how high they reach; nil where they do not fit on the strip. To
// the right of its mark a text is over those that begin under it; to the left over all that is there.
func (s *sheet) pennants(r *row, ticks Length) (out []pennant, top Length) {
	limit, rows := s.core.X.Hi, 1
	out = make([]pennant, len(r.want))
	for i := len(out) - 1; i >= 0; i-- {
		f := &out[i]
		*f = pennant{at: r.want[i], wide: TypeWidth(r.names[i], s.h) + s.h}
		if f.left = f.at+f.wide > limit; f.left {
			limit = f.at
			continue
		}
		for _, o := range out[i+1:] {
			if !o.left && o.at < f.at+f.wide {
				f.row = max(f.row, o.row+1)
			}
		}
		rows = max(rows, f.row+1)
	}
	for i := range out {
		f := &out[i]
		if !f.left {
			continue
		}
		if f.at < f.wide {
			return nil, 0
		}
		for _, o := range out[:i] {
			if o.span().Hi > f.at-f.wide {
				f.row = max(f.row, o.row+1)
			}
		}
		rows = max(rows, f.row+1)
	}
	return out, ticks + s.h + Length(rows)*s.lineHeight()
}

// fly writes a pennant's text, and leads to it from its mark.
func (s *sheet) fly(f *pennant, text string, ticks Length) {
	y := ticks + s.h/2 + Length(f.row)*s.lineHeight() + s.lineHeight()/2
	s.line(model.ShapeThin, "", "", geom.Point{X: f.at, Y: ticks}, geom.Point{X: f.at, Y: y + s.h/2})
	x := f.at + s.h/2 + (f.wide-s.h)/2
	if f.left {
		x = f.at - s.h/2 - (f.wide-s.h)/2
	}
	s.put(s.text(geom.Point{X: x, Y: y}, 0, text))
}

// turned writes the texts of a row across the strip, and tells how high they reach.
func (s *sheet) turned(r *row, ticks Length) Length {
	written := Length(0)
	for _, name := range r.names {
		written = max(written, TypeWidth(name, s.h))
	}
	sd := s.above()
	sd.ends = s.core.X
	s.layRow(sd, r, across, 0, 0)
	for i, t := range r.texts {
		s.put(t)
		if lead := r.leads[i]; len(lead) > 0 {
			s.line(model.ShapeThin, "", "", lead...)
		}
	}
	return ticks + 2*s.h + written
}
