package view

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/lang/finding"
)

// moreThanRectangle reports whether a part needs a drawing.
func moreThanRectangle(p *model.Part) bool {
	return len(p.Openings)+len(p.Recesses)+len(p.Bores)+len(p.Marks) > 0 || len(p.Outline) != 4
}

// partDrawing shows one part on its drawn face.
// Running dimensions count from its left and from its lower edge to the corners of
// its outline, to the edges of every opening, notch and recess, and to the centre
// of a round one; the size of each stands beside it. Rows of bores have a dimension
// of their own.
func partDrawing(m *model.Model, p *model.Part, as Type) model.View {
	s := newSheet(m, p.Outline.Bounds(), as, pieceShare)
	s.view.Note = partNote(m, p) + s.rounding(p.Outline)
	s.area(partKind(p), p.Outline, p.ID, partTitle(p))
	s.bands(p)
	var xs, ys []Length
	for _, v := range p.Outline {
		xs, ys = append(xs, v.X), append(ys, v.Y)
	}
	features := s.partFeatures(p, relief.Routed(p, m.Programs))
	for _, f := range features {
		if f.kind == model.ShapeMark {
			for i, to := range f.shape[1:] {
				s.line(f.kind, p.ID, f.title, f.shape[i].Point, to.Point)
			}
		} else {
			s.area(f.kind, f.drawn, p.ID, f.title)
		}
		fx, fy := f.marks()
		if f.kind == model.ShapeMark { // one may run out over the edge
			off := func(span geom.Span) func(Length) bool {
				return func(at Length) bool { return at < span.Lo || at > span.Hi }
			}
			fx, fy = slices.DeleteFunc(fx, off(s.core.X)), slices.DeleteFunc(fy, off(s.core.Y))
		}
		xs, ys = append(xs, fx...), append(ys, fy...)
		s.witness(f)
	}
	for _, o := range p.Openings {
		for _, at := range o.Corners {
			s.bore(&model.Bore{At: at, Diameter: o.Bit}, p.ID, o.Name+", bored at its corners, ⌀ "+s.bit(o.Bit))
		}
	}
	rows, bx, by, bores := s.boring(p)
	xs, ys, features = append(xs, bx...), append(ys, by...), append(features, bores...)
	ex, ey := rowEnds(rows)
	s.nameSides(p, features, append(ex, xs...), append(ey, ys...))
	s.rowDims(rows)
	s.count(s.below(), s.core.X.Lo, xs, s.spot)
	s.count(s.left(), s.core.Y.Lo, ys, s.spot)
	s.nameFeatures(features)
	return s.finish()
}

// mostAlike is how many parts a title names one by one.
const mostAlike = 150

// partHead is the head of the drawing of a part, whose title tells which others are cut so.
func partHead(p *model.Part, alike []*model.Part) Head {
	h := Head{Name: "part-" + p.Label, Title: p.Label + ", " + p.Name, Part: p.ID}
	if len(alike) == 0 {
		return h
	}
	labels, names := []string{p.Label}, layout.Joined("", p.Name)
	for _, a := range alike {
		labels = append(labels, a.Label)
		names = layout.Joined(names, a.Name)
		h.Alike = append(h.Alike, a.ID)
	}
	listed, rest := strings.Join(labels[:min(len(labels), mostAlike)], ", "), ""
	if more := len(labels) - mostAlike; more > 0 {
		rest = " and " + strconv.Itoa(more) + " more"
	}
	h.Title = listed + rest + ": " + names
	return h
}

// bands draws the banded edges of a part.
func (s *sheet) bands(p *model.Part) {
	b := p.Outline.Bounds()
	for _, band := range p.Bands {
		on := func(q geom.Point) bool {
			return q.Y == [...]Length{b.Y.Lo, q.Y, b.Y.Hi, q.Y}[band.Edge] && q.X == [...]Length{q.X, b.X.Hi, q.X, b.X.Lo}[band.Edge]
		}
		for i, v := range p.Outline {
			if to := p.Outline[(i+1)%len(p.Outline)].Point; v.Bulge == 0 && on(v.Point) && on(to) {
				s.line(model.ShapeBand, p.ID, "banded with "+band.Stock, v.Point, to)
			}
		}
	}
}

// edgeNames are what is written along the edges of a part: where it is front, and
// which are banded.
func edgeNames(p *model.Part) []model.Side {
	var names []model.Side
	sides := p.Sides()
	for e := model.Bottom; e <= model.LeftEdge; e++ {
		name := ""
		if i := slices.IndexFunc(sides, func(s model.Side) bool { return s.Edge == e }); i >= 0 {
			name = sides[i].Name
		}
		if slices.ContainsFunc(p.Bands, func(b model.Band) bool { return b.Edge == e }) {
			name = strings.TrimPrefix(name+", banded", ", ")
		}
		if name != "" {
			names = append(names, model.Side{Edge: e, Name: name})
		}
	}
	return names
}

// shares are where along an edge its name is tried, in hundredths.
var shares = [...]Length{50, 45, 55, 40, 60, 35, 65, 30, 70, 25, 75, 20, 80, 15, 85, 10, 90}

// nameSides writes along the edges which is the front, and which are banded: inside where there is room,
// otherwise outside, clear of what is measured to below and at the left, and of the
// leaders that may come down from above. What finds no place is in the note alone.
func (s *sheet) nameSides(p *model.Part, features []feature, xs, ys []Length) {
	for _, side := range edgeNames(p) {
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
	onPart := func(p *candidate) bool { return s.core.Contains(p.text.bounds().Grow(s.h / 5)) }
	var rest []feature
	for _, f := range features {
		named := func(at geom.Point) bool {
			return s.searchTo(0, distant, []block{setBlock(f.lines, s.h)}, at, onPart, true)
		}
		if !named(f.target()) && !slices.ContainsFunc(f.others, named) {
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
	if banded := p.Banded(); banded != "" {
		note += " Banded, beyond these sizes: " + banded + "."
	}
	switch p.Good {
	case model.GoodDrawn:
		note += " Good face: this one."
	case model.GoodFar:
		note += " Good face: the other one."
	case model.GoodBoth:
		note += " Good faces: both."
	}
	if slices.ContainsFunc(p.Bores, func(b model.Bore) bool { return b.Behind() }) {
		note += " What is drilled from the other face is dashed."
	}
	if len(p.Scribes) > 0 {
		note += " It is cut on site where the line is drawn; what comes off is listed under Setting."
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

// feature is an opening, a notch, a recess, a mark or a kind of bore, as it is drawn.
type feature struct {
	kind   model.ShapeKind
	shape  geom.Contour // what is measured
	drawn  geom.Contour // as it looks: with the bores at the corners of a recess
	title  string
	lines  []string
	others []geom.Point // that will do as well to point at
}

// partFeatures lists what is cut into a part. What the router cuts is written as a
// caliper shows it: its fit is finer than a mark. routed is the part as its router leaves it.
func (s *sheet) partFeatures(p, routed *model.Part) []feature {
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
		if len(o.Corners) > 0 {
			lines = append(lines, "corners bored ⌀ "+s.bit(o.Bit))
		}
		f := feature{kind: kind, shape: o.Shape, drawn: o.Shape, title: strings.Join(lines, ", "), lines: lines}
		if o.Notch { // where it is deep, its middle is easily behind something
			b := upright(o.Shape.Bounds())
			f.others = []geom.Point{b.at(b.u.Lo+b.u.Size()*17/20, b.v.Mid()), b.at(b.u.Lo+b.u.Size()*3/20, b.v.Mid())}
		}
		found = append(found, f)
	}
	for i, r := range p.Recesses {
		lines := []string{r.Name, sizeOf(r.Shape, s.caliper), s.caliper(r.Depth) + " deep"}
		drawn := routed.Recesses[i].Shape
		if d := boreIn(drawn); len(drawn) > len(r.Shape) {
			lines = append(lines, "corners bored ⌀ "+s.bit(d))
		}
		found = append(found, feature{kind: model.ShapeRecess, shape: r.Shape, drawn: drawn, title: strings.Join(lines, ", "), lines: lines})
	}
	for i, m := range p.Marks {
		if p.GoesOn(i) {
			f := &found[len(found)-1]
			f.shape = append(f.shape, geom.Vertex{Point: m.To})
			continue
		}
		line := geom.Contour{{Point: m.From}, {Point: m.To}}
		found = append(found, feature{kind: model.ShapeMark, shape: line, title: m.Name + ", drawn on the face", lines: strings.SplitAfter(m.Name, ", ")})
	}
	return found
}

// boreIn is the diameter of the first half round in a shape; 0 where there is none.
func boreIn(shape geom.Contour) Length {
	for i, v := range shape {
		if v.Bulge == 1 {
			d := shape[(i+1)%len(shape)].Sub(v.Point)
			return Length(math.Round(math.Hypot(float64(d.X), float64(d.Y))))
		}
	}
	return 0
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
	return sorted([]Length{b.X.Lo, b.X.Hi}), sorted([]Length{b.Y.Lo, b.Y.Hi})
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
