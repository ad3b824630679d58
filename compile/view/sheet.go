package view

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = length.Length

// How many lines of type the longer side of what is drawn holds: a whole room,
// or one piece.
const (
	roomShare  = 60
	pieceShare = 36
)

// sheet gathers one drawing and knows what space is taken.
type sheet struct {
	view  model.View
	build model.Build
	h     Length // text height
	paper bool   // it is drawn for paper, where fractions are stacked
	suits func(geom.Rect) bool
	lost  bool // it has become too large, and is given up
	core  geom.Rect
	texts grid[box]
	lines grid[seg] // of dimensions, leaders and centre lines: no text may cross them
	edges grid[seg] // of shapes: a text crosses them only where nothing else is left
	solid grid[box] // no callout stands on these
	stem  grid[seg] // nor across these

	ground  []geom.Point // the floor, where it was read
	crowded []string     // what there is no room for
	called  int          // what is named by a callout
}

// mostCrowded is how many things without room a note names.
const mostCrowded = 60

// newSheet begins a drawing of things that lie within core, with type of a height, or of a
// share of them where it is 0.
func newSheet(m *model.Model, core geom.Rect, as Type, share Length) *sheet {
	h := as.Height
	if h == 0 {
		h = max(core.X.Size(), core.Y.Size(), length.Inch) / share
	}
	s := begun(model.View{TextHeight: h, Bounds: core})
	s.build, s.core, s.paper, s.suits = m.Build, core, as.Height > 0, as.Suits
	s.extend(core)
	return s
}

// begun goes on with a view of which nothing takes space.
func begun(v model.View) *sheet {
	s := &sheet{view: v, h: v.TextHeight}
	s.around(v.Bounds)
	return s
}

// around notes what takes space by where it is in a rectangle. Nothing has been noted before.
func (s *sheet) around(r geom.Rect) {
	boxes, lines := newGrid[box](r, s.h), newGrid[seg](r, s.h)
	s.texts, s.solid, s.lines, s.edges, s.stem = boxes, boxes, lines, lines, lines
}

// num writes a length as drawings do: without its unit.
func (s *sheet) num(l Length) string { return length.Number(s.snap(l), s.build.Unit, s.build.Marks) }

// mark writes a length that is marked out on the site: to the build's mark,
// with a tilde where that is not all of it.
func (s *sheet) mark(l Length) string {
	l = s.snap(l)
	near := length.Round(l, s.build.Marks)
	if near == l {
		return s.num(l)
	}
	return "~" + s.num(near)
}

// fine writes a length that is marked out in the shop: in full where a rule can
// show it, and otherwise to the build's mark.
func (s *sheet) fine(l Length) string {
	step := length.Millimetre / 100
	if s.build.Unit.Imperial() {
		step = length.Inch / 64
	}
	if s.snap(l)%step == 0 {
		return s.num(l)
	}
	return s.mark(l)
}

// caliper writes a length that is measured in the shop: rounded to a decimal where
// no rule shows it.
func (s *sheet) caliper(l Length) string {
	return length.PlainNumber(s.snap(l), s.build.Unit, s.build.Marks)
}

// snap takes out the noise that turning a point in and out of a frame leaves:
// less than a tenth of a micrometre.
func (s *sheet) snap(l Length) Length {
	const noise = 100
	step := length.Micrometre
	if s.build.Unit.Imperial() {
		step = length.Inch / 64
	}
	if near := length.Round(l, step); max(near-l, l-near) < noise {
		return near
	}
	return l
}

// finish closes the drawing, with a margin all round.
func (s *sheet) finish() model.View {
	s.view.Bounds = s.view.Bounds.Grow(s.h)
	if s.lost {
		return s.view
	}
	rounded := func(t model.Text) bool { return strings.Contains(t.Text, "~") }
	if slices.ContainsFunc(s.view.Texts, rounded) ||
		slices.ContainsFunc(s.view.Dims, func(d model.Dim) bool { return rounded(d.Text) }) {
		s.view.Note += " " + s.build.Rounding()
	}
	if n := len(s.crowded); n > 0 {
		named := s.crowded[:min(n, mostCrowded)]
		s.view.Note += " There is no room to name: " + strings.Join(named, "; ")
		if more := n - len(named); more > 0 {
			s.view.Note += "; and " + strconv.Itoa(more) + " more"
		}
		s.view.Note += "."
	}
	return s.view
}

func (s *sheet) extend(r geom.Rect) {
	s.view.Bounds = s.view.Bounds.Union(r)
	s.lost = s.lost || s.suits != nil && !s.suits(s.view.Bounds.Grow(s.h))
}

// area adds a closed shape.
func (s *sheet) area(kind model.ShapeKind, lines geom.Contour, id, title string) {
	s.add(model.Shape{Kind: kind, Lines: lines, Closed: true, Part: id, Title: title})
}

// rect adds a closed rectangle.
func (s *sheet) rect(kind model.ShapeKind, r geom.Rect, id, title string) {
	s.area(kind, geom.RectContour(r), id, title)
}

// line adds an open line.
func (s *sheet) line(kind model.ShapeKind, id, title string, points ...geom.Point) {
	var c geom.Contour
	for _, p := range points {
		c = append(c, geom.Vertex{Point: p})
	}
	s.add(model.Shape{Kind: kind, Lines: c, Part: id, Title: title})
}

func (s *sheet) add(shape model.Shape) {
	if s.lost {
		return
	}
	s.view.Shapes = append(s.view.Shapes, shape)
	s.extend(shape.Lines.Bounds())
	segs := outlineSegs(shape)
	switch shape.Kind {
	case model.ShapeCentre, model.ShapeThin, model.ShapeLeader:
		s.lines.add(segs...)
	default:
		s.edges.add(segs...)
	}
}

// outlineSegs returns the edges of a shape as straight lines; an arc counts as
// the two legs round it.
func outlineSegs(shape model.Shape) []seg {
	n := len(shape.Lines)
	if !shape.Closed {
		n--
	}
	n = max(n, 0)
	segs := make([]seg, 0, n)
	for i := range n {
		a, b := shape.Lines[i], shape.Lines[(i+1)%len(shape.Lines)]
		if a.Bulge == 0 {
			segs = append(segs, segOf(a.Point, b.Point))
			continue
		}
		// The crown lies bulge times half the chord to the right of it.
		half := geom.Point{X: (b.X - a.X) / 2, Y: (b.Y - a.Y) / 2}
		crown := geom.Point{
			X: a.X + half.X + Length(float64(half.Y)*a.Bulge),
			Y: a.Y + half.Y - Length(float64(half.X)*a.Bulge),
		}
		segs = append(segs, segOf(a.Point, crown), segOf(crown, b.Point))
	}
	return segs
}

// put adds a text and takes its space.
func (s *sheet) put(t model.Text) {
	if s.lost {
		return
	}
	s.view.Texts = append(s.view.Texts, t)
	s.take(t)
}

func (s *sheet) take(t model.Text) {
	b := s.boxOf(t)
	s.texts.add(b)
	s.extend(b.bounds())
}

func (s *sheet) boxOf(t model.Text) box {
	return boxAt(t.At, t.Room, s.lineHeight(), t.Turn)
}

func (s *sheet) lineHeight() Length { return lineHeight * s.h / 100 }

// text makes a line of type centred on a point.
func (s *sheet) text(at geom.Point, turn geom.Angle, text string) model.Text {
	return model.Text{At: at, Turn: turn, Room: s.width(text), Text: text}
}

// dimension adds a dimension and takes its space.
func (s *sheet) dimension(d model.Dim) {
	if s.lost {
		return
	}
	s.view.Dims = append(s.view.Dims, d)
	s.take(d.Text)
	for _, stroke := range d.Strokes(s.h) {
		for i, p := range stroke {
			s.extend(geom.R(p.X, p.Y, p.X, p.Y))
			if i > 0 {
				s.lines.add(segOf(stroke[i-1], p))
			}
		}
	}
}

// apart reports whether no text is there.
func (s *sheet) apart(b box) bool { return !overlapping(&b, &s.texts) }

// free reports whether a text may stand there; strictly, whether it also keeps
// clear of the outlines of shapes.
func (s *sheet) free(b box, strictly bool) bool {
	return s.apart(b) && !crossing(&b, &s.lines) && !(strictly && crossing(&b, &s.edges))
}

// open reports whether a line meets no text and, strictly, no other thin line.
func (s *sheet) open(l seg, strictly bool) bool {
	return !s.texts.any(l.reach(), func(t *box) bool { return t.crosses(&l) }) &&
		!(strictly && s.lines.any(l.reach(), l.meets))
}

// overlapping reports whether one of some boxes meets another.
func overlapping(b *box, boxes *grid[box]) bool { return boxes.any(b.reach(), b.meets) }

// crossing reports whether one of some lines runs through a box.
func crossing(b *box, lines *grid[seg]) bool { return lines.any(b.reach(), b.crosses) }
