package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
	"barwright/lang/length"
)

// MarkingCard draws a panel on the face that is marked, as one sees it then. Running dimensions
// count from two of its edges, drawn heavy, to the sides of each opening, to the centre of a round
// one, and to the centres of bores at corners; they are rounded to the build's mark.
func MarkingCard(m *model.Model, c *onsite.Card) Drawing {
	return func(as Type) model.View {
		s := newSheet(m, c.Blank, as, pieceShare)
		p := c.Part
		s.view.Name, s.view.Title, s.view.Part = "card-"+p.Label, "Marking card: "+p.Label+", "+p.Name+" of "+p.Owner, p.ID
		s.area(partKind(p), c.Outline, p.ID, partTitle(p))
		s.datumEdge(c, c.Across)
		s.datumEdge(c, c.Up)
		var xs, ys []Length
		var features []feature
		for i := range c.Holes {
			h := &c.Holes[i]
			f := s.cardHole(h)
			features = append(features, f)
			s.area(f.kind, h.Shape, p.ID, f.title)
			fx, fy := f.marks()
			for _, at := range h.Corners {
				s.area(model.ShapeBore, geom.CircleContour(at, h.Diameter/2), p.ID, "bored first")
				fx, fy = append(fx, at.X), append(fy, at.Y)
			}
			xs, ys = append(xs, fx...), append(ys, fy...)
			s.carry(c, h, fx, fy)
		}
		s.cardDims(c, xs, ys)
		s.nameFeatures(s.nameBeside(c, features))
		s.nameCardEdges(c)
		return s.finish()
	}
}

// cardHole is a hole as it is drawn and named.
func (s *sheet) cardHole(h *onsite.Hole) feature {
	kind, name := model.ShapeOpening, h.Name
	if h.Notch {
		kind, name = model.ShapeHidden, "notch, "+name
	}
	lines := []string{name, sizeOf(h.Shape, s.mark)}
	if _, radius, _ := h.Shape.Circle(); h.Round && s.build.Metric(2*radius, length.Millimetre/2) {
		lines[1] = "⌀ " + s.bit(2*radius)
	}
	if len(h.Corners) > 0 {
		lines = append(lines, "corners bored ⌀ "+s.bit(h.Diameter))
	}
	return feature{kind: kind, shape: h.Shape, drawn: h.Shape, title: name, lines: lines}
}

// datumEdge draws what there is of an edge that is measured from.
func (s *sheet) datumEdge(c *onsite.Card, e model.Edge) {
	for i, v := range c.Outline {
		to := c.Outline[(i+1)%len(c.Outline)].Point
		on := func(p geom.Point) bool {
			b := c.Blank
			return [...]bool{p.Y == b.Y.Lo, p.X == b.X.Hi, p.Y == b.Y.Hi, p.X == b.X.Lo}[e]
		}
		if v.Bulge == 0 && on(v.Point) && on(to) {
			s.line(model.ShapeBand, c.Part.ID, "measured from here", v.Point, to)
		}
	}
}

// carry leads what is measured of a hole to the sides where its dimensions stand.
func (s *sheet) carry(c *onsite.Card, h *onsite.Hole, xs, ys []Length) {
	kind, b := model.ShapeThin, h.Shape.Bounds()
	from := geom.Point{X: b.X.Lo, Y: b.Y.Lo}
	if centre, _, ok := h.Shape.Circle(); ok {
		kind, from = model.ShapeCentre, centre
	}
	foot, side := c.Blank.Y.Lo, c.Blank.X.Lo
	if c.Up == model.Top {
		foot, from.Y = c.Blank.Y.Hi, max(from.Y, b.Y.Hi)
	}
	if c.Across == model.RightEdge {
		side, from.X = c.Blank.X.Hi, max(from.X, b.X.Hi)
	}
	if kind == model.ShapeCentre {
		from, _, _ = h.Shape.Circle()
	}
	for _, x := range xs {
		if from.Y != foot && x != c.Blank.X.Lo && x != c.Blank.X.Hi { // on an edge it would hide that
			s.line(kind, "", "", geom.Point{X: x, Y: from.Y}, geom.Point{X: x, Y: foot})
		}
	}
	for _, y := range ys {
		if from.X != side && y != c.Blank.Y.Lo && y != c.Blank.Y.Hi {
			s.line(kind, "", "", geom.Point{X: from.X, Y: y}, geom.Point{X: side, Y: y})
		}
	}
}

func (s *sheet) cardDims(c *onsite.Card, xs, ys []Length) {
	write := func(l Length) string { return s.mark(max(l, -l)) }
	across, up, x, y := s.below(), s.left(), c.Blank.X.Lo, c.Blank.Y.Lo
	if c.Up == model.Top {
		across, y = s.above(), c.Blank.Y.Hi
	}
	if c.Across == model.RightEdge {
		up, x = s.right(), c.Blank.X.Hi
	}
	s.count(across, x, xs, write)
	s.count(up, y, ys, write)
}

// nameBeside writes the names of openings next to them, on the panel, and returns what is left to be
// named: with no leader none is taken for another's, nor for an edge.
func (s *sheet) nameBeside(c *onsite.Card, features []feature) (rest []feature) {
	for _, f := range features {
		if !s.nextTo(c, f) {
			rest = append(rest, f)
		}
	}
	return rest
}

func (s *sheet) nextTo(c *onsite.Card, f feature) bool {
	n, b, off := f.shape.Bounds(), setBlock(f.lines, s.h), s.h/4
	for _, at := range [...]geom.Point{
		{X: n.X.Mid(), Y: n.Y.Hi + off + b.h/2}, {X: n.X.Hi + off + b.w/2, Y: n.Y.Mid()},
		{X: n.X.Mid(), Y: n.Y.Lo - off - b.h/2}, {X: n.X.Lo - off - b.w/2, Y: n.Y.Mid()},
	} {
		if place := boxAt(at, b.w, b.h, 0); c.Blank.Contains(place.bounds()) && s.free(place, true) {
			s.set(b, at, 0)
			return true
		}
	}
	return false
}

// nameCardEdges writes along each edge where it lies once the part stands: inside where the part is
// wide enough for that, otherwise outside; what finds no place is told above the card.
func (s *sheet) nameCardEdges(c *onsite.Card) {
	for e := model.Bottom; e <= model.LeftEdge; e++ {
		across := c.Blank.Y.Size()
		if e == model.LeftEdge || e == model.RightEdge {
			across = c.Blank.X.Size()
		}
		b := setBlock([]string{EdgeWords(c, e)}, s.h)
		if across < 6*s.h || !s.nameSide(e, b, -1, nil) {
			s.nameSide(e, b, 1, nil)
		}
	}
}

// EdgeWords tell where an edge of a card lies once the part stands, as one faces the run or the wall
// that it belongs to: "top", "front edge", "left end".
func EdgeWords(c *onsite.Card, e model.Edge) string {
	d := c.Direction(e)
	switch sides := c.Part.Sides(); {
	case d.Axis == geom.Z:
		return [...]string{"top", "bottom"}[one(d.Neg)]
	case d.Axis == geom.U:
		return [...]string{"right end", "left end"}[one(d.Neg)]
	case len(sides) == 2:
		return sides[one(d.Neg)].Name
	}
	return [...]string{"front", "rear"}[one(d.Neg)]
}

func one(is bool) int {
	if is {
		return 1
	}
	return 0
}
