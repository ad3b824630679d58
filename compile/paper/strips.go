package paper

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
	"barwright/compile/view"
	"barwright/lang/length"
)

// Sizes of strips at full size.
const (
	stripTicks = 20 * mm
	stripApart = 6 * mm
	stripInset = figures // of both ends, for what is written at them
	overlap    = 10 * mm // that the next piece is laid over
)

// Strips lays out story poles at full size: pieces that are cut out and laid over one another at
// their joints, with a bar on each paper that is held against a rule before anything is marked.
func Strips(m *model.Model, size geom.Point) []model.Paper {
	f := &flow{m: m, size: size}
	step := f.room().X.Size() - 2*stripInset - overlap
	step -= step % stripStep(m.Build.Unit)
	poles := onsite.Poles(m)
	for i := range poles {
		p := &poles[i]
		for k := Length(0); k*step < p.Length; k++ {
			f.strip(p, int(k), geom.Span{Lo: k * step, Hi: min((k+1)*step+overlap, p.Length)}, step)
		}
	}
	return f.numbered()
}

// stripStep is what the length of a piece is a multiple of, so that joints lie at round figures.
func stripStep(u length.Unit) Length {
	if u.Imperial() {
		return length.Inch / 2
	}
	return 10 * mm
}

// strip puts a piece below the last on its paper, or on a new one.
func (f *flow) strip(p *onsite.Pole, number int, piece geom.Span, step Length) {
	v := view.StripPiece(f.m, p, piece, stripTicks)(figures)
	high := v.Bounds.Y.Size() + stripApart
	if number == 0 || f.y-high < f.room().Y.Lo {
		f.open(p.Name, p.Title+", full size", "Print at full size: the bar must be "+barWords(f.m.Build.Unit)+". The strip counts from "+p.From+".", poleCautions(p)...)
		f.last().ratio = "1:1"
		f.checkBar()
	}
	s := f.last()
	f.y -= high
	at := geom.Point{X: f.room().X.Lo + stripInset, Y: f.y - v.Bounds.Y.Lo}
	s.put(&v, 1, at.Add(geom.Point{X: v.Bounds.X.Lo, Y: v.Bounds.Y.Lo}))
	s.joint(at, number)
	if piece.Lo+step < p.Length {
		s.joint(at.Add(geom.Point{X: step}), number+1)
	}
}

// joint draws the line at which two pieces are laid over one another; the first is the pole's end.
func (s *siteSheet) joint(at geom.Point, number int) {
	text := "end"
	if number > 0 {
		text = fmt.Sprintf("joint %d", number)
	}
	s.line(model.ShapeFrame, at, at.Add(geom.Point{Y: stripTicks}))
	s.Lettering = append(s.Lettering, model.Lettering{At: at.Add(geom.Point{X: 45 * mm / 10, Y: stripTicks / 2}), Turn: 90 * geom.Degree, Height: smallest, Text: text})
}

// checkBar draws the bar at the upper right of a paper.
func (f *flow) checkBar() {
	const high = 3 * mm
	quarter, room := 25*mm, f.room()
	if f.m.Build.Unit.Imperial() {
		quarter = length.Inch
	}
	f.last().stripes(geom.Point{X: room.X.Hi - 4*quarter, Y: room.Y.Hi - high}, quarter, 4, high)
}
