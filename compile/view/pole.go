package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
)

// StoryPole draws a pole as it stands, the end that is held at its place below, each mark with its
// distance from there: of one for a wall framing and finish at the left and all else at the right.
// One for heights has how high at the right and, where the floor was read from a line, how far
// below that at the left.
func StoryPole(m *model.Model, p *onsite.Pole) Drawing {
	return func(as Type) model.View {
		wide := 3 * as.Height
		s := newSheet(m, geom.R(0, 0, wide, p.Length), as, roomShare)
		s.view.Name, s.view.Title = p.Name, p.Title
		s.rect(model.ShapeFraming, s.core, "", p.Title)
		var left, right poleRow
		for _, mk := range p.Marks {
			s.line(markKinds[mk.Kind], "", mk.What, geom.Point{Y: mk.At}, geom.Point{X: wide, Y: mk.At})
			text := s.mark(mk.At) + "  " + clip(mk.What)
			if p.Upright && p.Line > 0 && mk.At != p.Line {
				left.add(mk.At, s.underLine(p.Line-mk.At))
			}
			if p.Upright || !mk.Kind.Built() {
				right.add(mk.At, text)
			} else {
				left.add(mk.At, text)
			}
		}
		from := Length(0)
		if p.Upright {
			from = p.Line
		}
		s.running(s.right(), 0, right.at, right.texts)
		s.running(s.left(), from, left.at, left.texts)
		return s.finish()
	}
}

// poleRow is what is written along one side of a pole.
type poleRow struct {
	at    []Length
	texts []string
}

// add adds a text at a mark, once.
func (r *poleRow) add(at Length, text string) {
	if n := len(r.at) - 1; n >= 0 && r.at[n] == at && r.texts[n] == text {
		return
	}
	r.at = append(r.at, at)
	r.texts = append(r.texts, text)
}

// underLine tells how far below the line a mark is, or above it.
func (s *sheet) underLine(l Length) string {
	if l < 0 {
		return s.mark(-l) + " above"
	}
	return s.mark(l)
}

// markKinds are the lines of the kinds of marks.
var markKinds = [...]model.ShapeKind{
	onsite.Framing: model.ShapeBeyond, onsite.Edge: model.ShapePanel, onsite.Device: model.ShapeHidden, onsite.Pipe: model.ShapeHidden, onsite.Finish: model.ShapeMark,
}

// ScrewLines draws the inside of a cabinet's rear with the lines on which screws find wood: how far
// they lie from the inner face of the left side, and how high over the bottom they go in.
func ScrewLines(m *model.Model, in *onsite.Inside) Drawing {
	return func(as Type) model.View {
		s := newSheet(m, geom.R(0, 0, in.Wide, in.High), as, pieceShare)
		s.view.Name, s.view.Title = "screws-"+in.Box, in.Box+" into "+in.Into
		s.rect(model.ShapePanel, s.core, "cabinet."+in.Box, "inside of cabinet "+in.Box)
		var at []Length
		for _, l := range in.Lines {
			s.line(model.ShapeMark, "", l.What, geom.Point{X: l.FromLeft}, geom.Point{X: l.FromLeft, Y: in.High})
			at = append(at, l.FromLeft)
		}
		s.count(s.below(), 0, at, s.mark)
		if in.Stretcher > 0 {
			s.line(model.ShapeMark, "", "middle of the rear stretcher", geom.Point{Y: in.Stretcher}, geom.Point{X: in.Wide, Y: in.Stretcher})
			s.count(s.left(), 0, []Length{in.Stretcher}, s.mark)
		}
		return s.finish()
	}
}
