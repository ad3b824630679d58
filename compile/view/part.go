package view

import (
	"cmp"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
)

// moreThanRectangle reports whether a part needs a drawing.
func moreThanRectangle(p *model.Part) bool {
	return len(p.Openings)+len(p.Recesses) > 0 || len(p.Outline) != 4
}

// partDrawing shows one part on its drawn face. Running dimensions count from
// its left and from its lower edge to the corners of its outline, to the edges
// of every opening, notch and recess, and to the centre of a round one; the
// size of each stands beside it.
func partDrawing(m *model.Model, p *model.Part) model.View {
	s := newSheet(m, p.Outline.Bounds(), pieceShare)
	s.view.Name, s.view.Title = "part-"+p.Label, p.Label+", "+p.Name
	s.view.Part = p.ID
	s.view.Note = partNote(m, p) + s.rounding(p.Outline)
	s.area(partKind(p), p.Outline, p.ID, partTitle(p))
	var xs, ys []Length
	for _, v := range p.Outline {
		xs, ys = append(xs, v.X), append(ys, v.Y)
	}
	features := s.partFeatures(p)
	for _, f := range features {
		s.area(f.kind, f.shape, p.ID, f.title)
		fx, fy := f.marks()
		xs, ys = append(xs, fx...), append(ys, fy...)
		s.witness(f)
	}
	s.nameSides(p, features, xs, ys)
	s.count(s.below(), s.core.X.Lo, xs, s.fine)
	s.count(s.left(), s.core.Y.Lo, ys, s.fine)
	s.nameFeatures(features)
	return s.finish()
}

// shares are where along an edge its name is tried, in hundredths.
var shares = [...]Length{50, 45, 55, 40, 60, 35, 65, 30, 70, 25, 75, 20, 80, 15, 85, 10, 90}

// nameSides writes along the edges which is the front: inside where there is room,
// otherwise outside, clear of what is measured to below and at the left, and of the
// leaders that may come down from above. What finds no place is in the note alone.
func (s *sheet) nameSides(p *model.Part, features []feature, xs, ys []Length) {
	for _, side := range p.Sides() {
		var marks []Length
		switch side.Edge {
		case model.Bottom:
			marks = xs
		case model.LeftEdge:
			marks = ys
		case model.Top:
			for _, f := range features {
				marks = append(marks, f.target().X)
			}
		}
		if b := setBlock([]string{side.Name}, s.h); !s.nameSide(side.Edge, b, -1, nil) {
			s.nameSide(side.Edge, b, 1, marks)
		}
	}
}

// nameSide writes a name along an edge, outwards or else inwards of it, and clear
// of marks. It reports whether there was room.
func (s *sheet) nameSide(e model.Edge, b block, outwards Length, marks []Length) bool {
	off, c := outwards*(b.h/2+s.h/4), s.core
	for _, share := range shares {
		at := geom.Point{X: c.X.Lo + c.X.Size()*share/100, Y: c.Y.Lo + c.Y.Size()*share/100}
		mid, turn := at.X, geom.Angle(0)
		switch e {
		case model.Bottom:
			at.Y = c.Y.Lo - off
		case model.Top:
			at.Y = c.Y.Hi + off
		case model.LeftEdge:
			mid, turn, at.X = at.Y, 90*geom.Degree, c.X.Lo-off
		case model.RightEdge:
			mid, turn, at.X = at.Y, 90*geom.Degree, c.X.Hi+off
		}
		place := boxAt(at, b.w, b.h, turn)
		within := c.Contains(place.bounds()) || outwards > 0
		onMark := func(m Length) bool { return mid-b.w/2 < m && m < mid+b.w/2 }
		if within && s.free(place, true) && !slices.ContainsFunc(marks, onMark) {
			s.set(b, at, turn)
			return true
		}
	}
	return false
}

// nameFeatures writes names and sizes on the part where there is room, and
// otherwise in a row above it.
func (s *sheet) nameFeatures(features []feature) {
	onPart := func(p *candidate) bool {
		return s.core.Contains(p.text.bounds().Grow(s.h/5)) && !p.overLines && p.thin == 0
	}
	var rest []feature
	for _, f := range features {
		if !s.search([]block{setBlock(f.lines, s.h)}, f.target(), onPart) {
			rest = append(rest, f)
		}
	}
	slices.SortStableFunc(rest, func(a, b feature) int { return cmp.Compare(a.target().X, b.target().X) })
	blocks, want, sizes := make([]block, len(rest)), make([]Length, len(rest)), make([]Length, len(rest))
	sum := Length(0)
	for i, f := range rest {
		blocks[i] = setBlock(f.lines, s.h)
		want[i], sizes[i] = f.target().X, blocks[i].w+s.h
		sum += sizes[i]
	}
	if len(rest) == 0 {
		return
	}
	places, foot := spread(want, sizes, geom.Span{}), s.view.Bounds.Y.Hi+2*s.h
	for i, f := range rest {
		if sum > s.core.X.Size()*rowShare/100 || !s.nameAbove(blocks[i], f.target(), places[i], foot) {
			s.callout(f.target(), f.lines...)
		}
	}
}

// rowShare is how long a row of names may be, in hundredths of the part.
const rowShare = 160

// nameAbove writes a block above the part and leads down from it. It reports
// whether nothing was in the way.
func (s *sheet) nameAbove(b block, target geom.Point, x, foot Length) bool {
	at := geom.Point{X: x, Y: foot + b.h/2}
	from, knee := geom.Point{X: x, Y: foot}, geom.Point{X: target.X, Y: s.core.Y.Hi + s.h/2}
	if !s.free(boxAt(at, b.w, b.h, 0), true) || !s.open(segOf(from, knee), true) || !s.open(segOf(knee, target), false) {
		return false
	}
	s.set(b, at, 0)
	s.line(model.ShapeLeader, "", "", from, knee, target)
	return true
}

func partNote(m *model.Model, p *model.Part) string {
	note := p.Stock + ", " + m.Build.Plain(p.Thickness) + " thick."
	if p.Face != "" {
		note = "The " + p.Face + " face is seen. " + note
	}
	switch p.Grain {
	case model.GrainX:
		note += " Grain from left to right."
	case model.GrainY:
		note += " Grain upwards."
	}
	if sides := p.Sides(); len(sides) > 0 {
		note += " " + finding.Capital(sides[0].Name) + " at the " + sides[0].Edge.String() + "."
	}
	return note
}

// rounding tells the radius of an outline's round corners, where all have one.
func (s *sheet) rounding(outline geom.Contour) string {
	radius, alike := outline.Rounding()
	if !alike || radius == 0 {
		return ""
	}
	return " Round corners have a radius of " + s.build.Plain(s.snap(radius)) + "."
}

// feature is an opening, a notch or a recess, as it is drawn.
type feature struct {
	kind  model.ShapeKind
	shape geom.Contour
	title string
	lines []string
}

// partFeatures lists what is cut into a part. What the router cuts is written as a
// caliper shows it: its fit is finer than a mark.
func (s *sheet) partFeatures(p *model.Part) []feature {
	var found []feature
	for _, o := range p.Openings {
		kind, name := model.ShapeOpening, o.Name
		if o.Notch {
			kind, name = model.ShapeHidden, "notch, "+name
		}
		lines := []string{name, sizeOf(o.Shape, s.fine)}
		if r := cornersOf(o.Shape); r > 0 {
			lines = append(lines, "corners r "+s.fine(s.snap(r)))
		}
		found = append(found, feature{kind, o.Shape, strings.Join(lines, ", "), lines})
	}
	for _, r := range p.Recesses {
		size, deep := sizeOf(r.Shape, s.caliper), s.caliper(r.Depth)+" deep"
		found = append(found, feature{model.ShapeRecess, r.Shape, r.Name + ", " + size + ", " + deep, []string{r.Name, size, deep}})
	}
	return found
}

// cornersOf is the radius of round corners with straight sides between them; 0
// for any other shape.
func cornersOf(shape geom.Contour) Length {
	r, alike := shape.Rounding()
	if b := shape.Bounds(); !alike || 2*r >= min(b.X.Size(), b.Y.Size()) {
		return 0
	}
	return r
}

func sizeOf(shape geom.Contour, write func(Length) string) string {
	if _, radius, ok := shape.Circle(); ok {
		return "⌀ " + write(2*radius)
	}
	b := shape.Bounds()
	return write(b.X.Size()) + " × " + write(b.Y.Size())
}

// marks returns what is measured to.
func (f *feature) marks() (xs, ys []Length) {
	if c, _, ok := f.shape.Circle(); ok {
		return []Length{c.X}, []Length{c.Y}
	}
	b := f.shape.Bounds()
	return []Length{b.X.Lo, b.X.Hi}, []Length{b.Y.Lo, b.Y.Hi}
}

func (f *feature) target() geom.Point { return upright(f.shape.Bounds()).centre() }

// witness carries the edges that are measured to the edges of the part.
func (s *sheet) witness(f feature) {
	kind, b := model.ShapeThin, f.shape.Bounds()
	foot, side := b.Y.Lo, b.X.Lo
	if c, _, ok := f.shape.Circle(); ok {
		kind, foot, side = model.ShapeCentre, c.Y, c.X
	}
	xs, ys := f.marks()
	for _, x := range xs {
		if s.core.X.Lo < x && x < s.core.X.Hi && foot > s.core.Y.Lo {
			s.line(kind, "", "", geom.Point{X: x, Y: foot}, geom.Point{X: x, Y: s.core.Y.Lo})
		}
	}
	for _, y := range ys {
		if s.core.Y.Lo < y && y < s.core.Y.Hi && side > s.core.X.Lo {
			s.line(kind, "", "", geom.Point{X: side, Y: y}, geom.Point{X: s.core.X.Lo, Y: y})
		}
	}
}
