package paper

import (
	"fmt"
	"slices"

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
	most := f.room().X.Size() - 2*stripInset - overlap
	poles := onsite.Poles(m)
	for i := range poles {
		p := &poles[i]
		step := stripStep(p.Length, most, m.Build.Unit)
		for k := Length(0); k == 0 || k*step+overlap < p.Length; k++ {
			f.strip(p, int(k), geom.Span{Lo: k * step, Hi: min((k+1)*step+overlap, p.Length)}, step)
		}
	}
	return f.numbered()
}

// stripStep is how far it is from joint to joint of a pole, at most so much: pieces are about as long
// as one another, so that none is too short to be written on, and joints lie at round figures.
func stripStep(whole, most Length, u length.Unit) Length {
	round := 5 * mm
	if u.Imperial() {
		round = length.Inch / 8
	}
	most -= most % round
	pieces := max(1, (whole-overlap+most-1)/most)
	return min(most, whole/pieces+round-whole/pieces%round)
}

// strip puts a piece below the last on its paper, or on a new one.
func (f *flow) strip(p *onsite.Pole, number int, piece geom.Span, step Length) {
	v := view.StripPiece(f.m, p, piece, stripTicks)(view.Type{Height: figures})
	edge := v.Shapes[0].Lines.Bounds() // of the strip, which lies under all else
	high := edge.Y.Size() + stripApart
	if number == 0 || f.y-high < f.room().Y.Lo {
		f.open(p.Name, p.Title+", full size", "Print at full size: the bar must be "+barWords(f.m.Build.Unit)+". Cut the strips out, and lay the left end of each on the line of the same joint. They count from "+p.From+".", poleCautions(p)...)
		f.last().ratio = "1:1"
		f.checkBar()
	}
	s := f.last()
	f.y -= high
	at := geom.Point{X: f.room().X.Lo + stripInset, Y: f.y}
	s.put(&v, 1, at.Add(geom.Point{X: v.Bounds.X.Lo, Y: v.Bounds.Y.Lo}))
	s.joint(at, number, aside(p, piece.Lo, [...]Length{5 * mm, 10 * mm, 15 * mm}))
	if piece.Hi < p.Length {
		s.joint(at.Add(geom.Point{X: step}), number+1, aside(p, piece.Lo+step, [...]Length{5 * mm, -5 * mm, -10 * mm}))
	}
}

// aside is how far from a joint its name stands: the first of some distances at which no mark runs
// through it, or the first of all.
func aside(p *onsite.Pole, joint Length, from [3]Length) Length {
	for _, off := range from {
		near := geom.Span{Lo: joint + off - smallest, Hi: joint + off + smallest}
		if !slices.ContainsFunc(p.Marks, func(mk onsite.PoleMark) bool { return near.Holds(mk.At) }) {
			return off
		}
	}
	return from[0]
}

// joint draws the line at which two pieces are laid over one another, with its name; the first is the
// pole's end.
func (s *siteSheet) joint(at geom.Point, number int, off Length) {
	text := "end"
	if number > 0 {
		text = fmt.Sprintf("joint %d", number)
	}
	s.line(model.ShapeFrame, at, at.Add(geom.Point{Y: stripTicks}))
	s.Lettering = append(s.Lettering, model.Lettering{At: at.Add(geom.Point{X: off, Y: stripTicks / 2}), Turn: 90 * geom.Degree, Height: smallest, Text: text})
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
