package solve

import (
	"math"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// open cuts an opening into a part, or a notch where it reaches an edge. Where
// the part has no wood there already, nothing is cut.
func (s *solver) open(index int, t *thing, face geom.Rect, round bool) {
	part, cuts := &s.m.Parts[index], s.cuts[index]
	blank := part.Placement.Blank()
	if slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Contains(blank.Intersect(face)) }) {
		return
	}
	o := model.Opening{Name: t.name, Why: t.why}
	meetsCut := slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Grow(1).Overlaps(face) })
	inside := blank.Grow(-1).Contains(face) && !meetsCut
	switch {
	case inside && round:
		centre := geom.Point{X: face.X.Lo + t.radius, Y: face.Y.Lo + t.radius}
		o.Shape = geom.CircleContour(centre, t.radius).Reversed()
	case inside:
		o.Shape = geom.RectContour(face).Reversed()
	default:
		o.Notch = true
		o.Shape = notch(blank, face, round && !meetsCut, t.radius)
	}
	s.checkOpenings(part, &o, t)
	part.Openings = append(part.Openings, o)
}

// checkOpenings says when two openings run into one another.
func (s *solver) checkOpenings(part *model.Part, o *model.Opening, t *thing) {
	for _, other := range part.Openings {
		overlap := o.Shape.Bounds().Intersect(other.Shape.Bounds())
		if overlap.X.Size() > 0 && overlap.Y.Size() > 0 && !roundsApart(o.Shape, other.Shape) {
			s.findings.Errorf("openings-meet", t.why.At, "move one of them, or describe both as one",
				"In the %s of %s the openings for %s and %s run into one another: they overlap by %s.", part.Name, part.Owner,
				other.Name, o.Name, s.show(min(overlap.X.Size(), overlap.Y.Size()))).
				Also(other.Why.At, "the other one")
		}
	}
}

// roundsApart reports whether two full circles keep clear of one another.
func roundsApart(a, b geom.Contour) bool {
	ca, ra, aRound := a.Circle()
	cb, rb, bRound := b.Circle()
	d := ca.Sub(cb)
	return aRound && bRound && math.Hypot(float64(d.X), float64(d.Y)) >= float64(ra+rb)
}

// checkReached warns where a thing used from inside a box is partly covered by
// the edge of one of its boards, or by one that divides it.
func (s *solver) checkReached(t *thing, p *passage, c *cabinet, box *model.Box) {
	end := geom.Box{U: extent(p.far[:], geom.U), V: extent(p.far[:], geom.V), Z: p.z}
	across, deep := geom.U, geom.V
	if end.V.Size() > end.U.Size() {
		across, deep = geom.V, geom.U
	}
	s.covered(t, box, end.Along(across), box.Inside.Along(across))
	s.covered(t, box, p.z, box.Inside.Z)
	reached := end.With(deep, end.Along(deep).Grow(1))
	var before []string
	for i := c.first; i < c.last; i++ {
		if part := &s.m.Parts[i]; divides(part) && part.Placement.Box.Overlaps(reached) {
			before = append(before, part.Name)
		}
	}
	if len(before) > 0 {
		s.findings.Warnf("opening-meets-joint", t.why.At, "move the outlet, or what stands before it",
			"The opening for %s lies partly behind %s of %s %s.", t.name, strings.Join(before, ", "), box.Kind, box.Name).
			Also(box.Why.At, "the box")
	}
}

// divides reports whether a part divides the inside of its cabinet and meets
// the back.
func divides(p *model.Part) bool {
	_, id, _ := strings.Cut(p.ID, "/")
	return strings.HasPrefix(id, "divider-") || strings.HasPrefix(id, "fixed-shelf-")
}

func (s *solver) covered(t *thing, box *model.Box, have, clear geom.Span) {
	if miss := max(clear.Lo-have.Lo, have.Hi-clear.Hi); miss > 0 {
		s.findings.Warnf("opening-meets-joint", t.why.At, "move the outlet or the box, so that the opening lies within one box",
			"The opening for %s runs %s past the clear inside of %s %s, into its joint.", t.name, s.show(min(miss, have.Size())), box.Kind, box.Name).
			Also(box.Why.At, "the box")
	}
}

// notch is the shape of an opening that reaches an edge of a blank. That for a
// pipe whose centre lies within the blank and that leaves it over one edge is
// a slot with a round end; any other is a rectangle.
func notch(blank, face geom.Rect, round bool, radius length.Length) geom.Contour {
	cut := geom.RectContour(blank.Intersect(face))
	if !round {
		return cut
	}
	centre := geom.Point{X: face.X.Lo + radius, Y: face.Y.Lo + radius}
	edge, ok := leftOver(blank, face)
	if !ok || !within(blank, centre) {
		return cut
	}
	return slot(blank.Intersect(face), edge, centre)
}

func within(r geom.Rect, p geom.Point) bool {
	return r.X.Lo < p.X && p.X < r.X.Hi && r.Y.Lo < p.Y && p.Y < r.Y.Hi
}

// leftOver is the one edge of a blank that an opening crosses.
func leftOver(blank, face geom.Rect) (model.Edge, bool) {
	crossed := []bool{
		model.Bottom: face.Y.Lo <= blank.Y.Lo, model.RightEdge: face.X.Hi >= blank.X.Hi,
		model.Top: face.Y.Hi >= blank.Y.Hi, model.LeftEdge: face.X.Lo <= blank.X.Lo,
	}
	first := slices.Index(crossed, true)
	return model.Edge(first), first >= 0 && !slices.Contains(crossed[first+1:], true)
}

// slot is a rectangle whose end opposite to an edge is a half circle about the
// centre.
func slot(r geom.Rect, open model.Edge, centre geom.Point) geom.Contour {
	switch open {
	case model.Bottom:
		r.Y.Hi = centre.Y
	case model.Top:
		r.Y.Lo = centre.Y
	case model.LeftEdge:
		r.X.Hi = centre.X
	case model.RightEdge:
		r.X.Lo = centre.X
	}
	c := geom.RectContour(r)
	// RectContour's edges run bottom, right, top, left; the round end faces
	// the open edge.
	c[(int(open)+2)%4].Bulge = 1
	return c
}

// cutNotches takes the notches of a cabinet's parts out of their outlines.
func (s *solver) cutNotches(c *cabinet) {
	for i := c.first; i < c.last; i++ {
		part := &s.m.Parts[i]
		cuts := s.cuts[i]
		for _, o := range part.Openings {
			if o.Notch {
				cuts = append(cuts, straight(o.Shape))
			}
		}
		if len(cuts) == len(s.cuts[i]) {
			continue
		}
		pieces := geom.Cut(part.Placement.Blank(), cuts)
		if len(pieces) != 1 {
			s.findings.Errorf("opening-parts-panel", part.Openings[0].Why.At, "move it, or move the box",
				"The openings would leave the %s of %s in %d pieces.", part.Name, part.Owner, len(pieces)).
				Also(c.block.Head, "the box")
			continue
		}
		part.Outline = pieces[0]
		for _, o := range part.Openings {
			roundEnd(part.Outline, o.Shape)
		}
	}
}

// straight is a notch without its round end.
func straight(notch geom.Contour) geom.Rect {
	r := geom.R(notch[0].X, notch[0].Y, notch[0].X, notch[0].Y)
	for _, v := range notch {
		r = r.Union(geom.R(v.X, v.Y, v.X, v.Y))
	}
	return r
}

// roundEnd gives an outline the round end of a notch, where the notch has one
// and its end is whole.
func roundEnd(outline, notch geom.Contour) {
	for i, v := range notch {
		end := notch[(i+1)%len(notch)].Point
		for j := range outline {
			// The outline passes the notch the other way round.
			if v.Bulge != 0 && outline[j].Point == end && outline[(j+1)%len(outline)].Point == v.Point {
				outline[j].Bulge = -v.Bulge
			}
		}
	}
}
