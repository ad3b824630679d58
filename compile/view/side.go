package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// side is one side of a drawing. Dimensions are laid along it, outwards.
type side struct {
	frame geom.Frame // u runs along the side
	out   Length     // 1 where outwards is to the left of u, otherwise -1
	depth Length     // how far out is taken
	ends  geom.Span  // what the outermost dimension will span; empty for none
	foot  Length     // how far out extension lines begin
}

// The sides of the drawing's core. A side begins beyond all that stands there
// already, so that what is laid along two of them cannot meet at the corner.

func (s *sheet) below() *side {
	return &side{frame: geom.Frame{Origin: geom.Point{Y: s.core.Y.Lo}}, out: -1, depth: s.core.Y.Lo - s.view.Bounds.Y.Lo}
}

func (s *sheet) above() *side {
	return &side{frame: geom.Frame{Origin: geom.Point{Y: s.core.Y.Hi}}, out: 1, depth: s.view.Bounds.Y.Hi - s.core.Y.Hi}
}

func (s *sheet) left() *side {
	f := geom.Frame{Origin: geom.Point{X: s.core.X.Lo}, Turn: 90 * geom.Degree}
	return &side{frame: f, out: 1, depth: s.core.X.Lo - s.view.Bounds.X.Lo}
}

func (s *sheet) right() *side {
	f := geom.Frame{Origin: geom.Point{X: s.core.X.Hi}, Turn: 90 * geom.Degree}
	return &side{frame: f, out: -1, depth: s.view.Bounds.X.Hi - s.core.X.Hi}
}

// at returns the point at u along the side, so far out.
func (sd *side) at(u, out Length) geom.Point { return sd.frame.At(u, sd.out*out) }

func (sd *side) dim(from, to, out Length) model.Dim {
	offset := sd.out * (out - sd.foot)
	if to < from { // the left of the way is the other side
		offset = -offset
	}
	return model.Dim{A: sd.at(from, sd.foot), B: sd.at(to, sd.foot), Offset: offset}
}

// stance is how a text stands to the line that it belongs to.
type stance int

const (
	along stance = iota
	across
)

// turn returns how a text is turned to be read from below or from the right;
// what is nearly upright counts as upright.
func (sd *side) turn(st stance) geom.Angle {
	t := sd.frame.Turn
	if st == across {
		t += 90 * geom.Degree
	}
	for t > 100*geom.Degree {
		t -= 180 * geom.Degree
	}
	for t <= -80*geom.Degree {
		t += 180 * geom.Degree
	}
	return t
}

// inward reports whether the space above a line, as its text is read, lies
// towards the drawing.
func (sd *side) inward() bool {
	upright := (sd.turn(along)-sd.frame.Turn)%(360*geom.Degree) == 0
	return upright != (sd.out > 0)
}

// How often a row moves outwards before its extension lines are cut short, so
// that they begin next to it, and before it stays where it is.
const (
	whole = 8
	most  = 80
)

// chain lays dimensions end to end between marks; texts has one for each
// stretch. The row moves outwards until it meets nothing.
func (s *sheet) chain(sd *side, st stance, marks []Length, texts []string) {
	s.lay(sd, func() ([]model.Dim, Length) { return s.chainDims(sd, st, marks, texts) })
}

// running lays dimensions that all count from one mark.
func (s *sheet) running(sd *side, from Length, marks []Length, texts []string) {
	if len(marks) == 0 {
		return
	}
	s.lay(sd, func() ([]model.Dim, Length) { return s.runningDims(sd, from, marks, texts) })
}

func (s *sheet) lay(sd *side, dims func() ([]model.Dim, Length)) {
	d, depth := dims()
	for try := 0; try < most && !s.lost && s.clash(d); try++ {
		sd.depth += s.h
		if try >= whole {
			sd.foot = sd.depth
		}
		d, depth = dims()
	}
	for _, dim := range d {
		s.dimension(dim)
	}
	sd.depth = depth
	for _, dim := range d {
		if b := s.boxOf(dim.Text); sd.ends.Lo < sd.ends.Hi && !sd.between(b) {
			sd.foot = sd.depth
		}
	}
}

// between reports whether a text keeps clear of the extension lines of the
// outermost dimension. Where a row is too full for that, they begin beyond it.
func (sd *side) between(b box) bool {
	for _, c := range b.corners() {
		u, _ := sd.frame.Local(geom.Point{X: Length(c[0]), Y: Length(c[1])})
		if u <= sd.ends.Lo || u >= sd.ends.Hi {
			return false
		}
	}
	return true
}

// clash reports whether dimensions meet what the drawing holds already.
func (s *sheet) clash(dims []model.Dim) bool {
	for _, d := range dims {
		if !s.free(s.boxOf(d.Text), true) {
			return true
		}
		for _, stroke := range d.Strokes(s.h) {
			for i := 1; i < len(stroke); i++ {
				if !s.open(segOf(stroke[i-1], stroke[i]), false) {
					return true
				}
			}
		}
	}
	return false
}

func (s *sheet) chainDims(sd *side, st stance, marks []Length, texts []string) (dims []model.Dim, depth Length) {
	air, tall := s.h/3, s.lineHeight()
	var tight []int
	for i, text := range texts {
		if st == across || s.width(text)+3*air > marks[i+1]-marks[i] {
			tight = append(tight, i)
		}
	}
	line := sd.depth + s.h
	beyond, middle := line, line+air+tall/2
	switch {
	case len(tight) == len(texts):
	case sd.inward():
		line = sd.depth + 2*air + tall
		beyond, middle = line, line-air-tall/2
	default:
		beyond = line + air + tall
	}
	var r row
	for i, text := range texts {
		mid := geom.Span{Lo: marks[i], Hi: marks[i+1]}.Mid()
		d := sd.dim(marks[i], marks[i+1], line)
		d.Text = s.text(sd.at(mid, middle), sd.turn(along), text)
		dims = append(dims, d)
	}
	for _, i := range tight {
		r.add(geom.Span{Lo: marks[i], Hi: marks[i+1]}.Mid(), texts[i])
	}
	depth = s.layRow(sd, &r, st, line, beyond)
	for k, i := range tight {
		dims[i].Text, dims[i].Lead = r.texts[k], r.leads[k]
	}
	return dims, depth
}

func (s *sheet) runningDims(sd *side, from Length, marks []Length, texts []string) (dims []model.Dim, depth Length) {
	line := sd.depth + s.h
	var r row
	for i, m := range marks {
		d := sd.dim(from, m, line)
		d.Running = true
		dims = append(dims, d)
		r.add(m, texts[i])
	}
	depth = s.layRow(sd, &r, across, line, line)
	for i := range dims {
		dims[i].Text, dims[i].Lead = r.texts[i], r.leads[i]
	}
	return dims, depth
}
