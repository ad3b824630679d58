package solve

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// innerCorners are the corners of a notch that have wood beyond them, counter-
// clockwise from the lower left: those that a saw does not run out of.
func innerCorners(notch, blank geom.Rect, cuts []geom.Rect) geom.Contour {
	return slices.DeleteFunc(geom.RectContour(notch), func(v geom.Vertex) bool {
		at := geom.R(v.X, v.Y, v.X, v.Y)
		return !within(blank, v.Point) || slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Grow(1).Contains(at) })
	})
}

// roundest is the largest radius that the inner corners of a notch can have.
func roundest(notch geom.Rect, inner geom.Contour) length.Length {
	most := min(notch.X.Size(), notch.Y.Size())
	for i, a := range inner {
		for _, b := range inner[:i] {
			if a.X == b.X || a.Y == b.Y { // at the ends of one side
				most = min(most, max(length.Apart(a.X, b.X), length.Apart(a.Y, b.Y))/2)
			}
		}
	}
	return most
}

// tooRound refuses corners rounder than an opening allows, once for each thing.
func (s *solver) tooRound(part *model.Part, t *thing, opening geom.Rect, most length.Length) bool {
	if t.cut.Corner <= most {
		return false
	}
	if !t.refused {
		t.refused = true
		s.Findings.Errorf("opening-too-round", t.why.At, "corner = "+s.Show(most)+" or less",
			"The opening for %s in %s of %s is %s wide and %s high: its corners can be rounded by %s at most, not by %s.",
			t.name, part.Named(), part.Owner, s.Show(opening.X.Size()), s.Show(opening.Y.Size()), s.Show(most), s.Show(t.cut.Corner)).
			Also(part.Why.At, "the box")
	}
	return true
}

// roundedAt is a rectangle with some of its corners rounded.
func roundedAt(r geom.Rect, corners geom.Contour, radius length.Length) geom.Contour {
	c := geom.RectContour(r)
	for _, v := range corners {
		if radius > 0 {
			c, _ = fillet(c, v.Point, radius)
		}
	}
	return c
}

// fillet rounds the corner of a contour at a point; ok is false where it has no
// such corner between two straight edges that run along the axes, or they are
// too short.
func fillet(c geom.Contour, at geom.Point, radius length.Length) (out geom.Contour, ok bool) {
	i := slices.IndexFunc(c, func(v geom.Vertex) bool { return v.Point == at && v.Bulge == 0 })
	if i < 0 {
		return c, false
	}
	before, after := c[(i+len(c)-1)%len(c)], c[(i+1)%len(c)].Point
	from, far := towards(at, before.Point, radius)
	to, long := towards(at, after, radius)
	if !far || !long || before.Bulge != 0 {
		return c, false
	}
	// Left turns of a contour are positive, as its bulges are.
	bulge := geom.QuarterBulge
	in, on := at.Sub(from), to.Sub(at)
	if in.X > 0 && on.Y < 0 || in.X < 0 && on.Y > 0 || in.Y > 0 && on.X > 0 || in.Y < 0 && on.X < 0 {
		bulge = -bulge
	}
	arc := geom.Contour{{Point: from, Bulge: bulge}, {Point: to}}
	if from == before.Point {
		c, i = slices.Delete(slices.Clone(c), (i+len(c)-1)%len(c), (i+len(c)-1)%len(c)+1), max(i-1, 0)
	}
	if to == after {
		arc = arc[:1]
	}
	return slices.Concat(c[:i], arc, c[i+1:]), true
}

// towards is the point at a distance from one point to another, along an axis;
// ok is false where that goes past it.
func towards(from, to geom.Point, by length.Length) (p geom.Point, ok bool) {
	d := to.Sub(from)
	step := func(l length.Length) length.Length { return max(-by, min(by, l)) }
	return geom.Point{X: from.X + step(d.X), Y: from.Y + step(d.Y)}, max(d.X, -d.X, d.Y, -d.Y) >= by
}

// roundInner rounds the corners of an outline where a notch's own are round.
func (s *solver) roundInner(part *model.Part, o *model.Opening) {
	r := straight(o.Shape)
	for i, v := range o.Shape {
		if v.Bulge != geom.QuarterBulge {
			continue
		}
		next := o.Shape[(i+1)%len(o.Shape)]
		at := geom.Point{X: v.X, Y: next.Y}
		if !slices.ContainsFunc(geom.RectContour(r), func(c geom.Vertex) bool { return c.Point == at }) {
			at = geom.Point{X: next.X, Y: v.Y}
		}
		radius := length.Apart(v.X, next.X)
		outline, ok := fillet(part.Outline, at, radius)
		if !ok {
			s.Findings.Errorf("opening-too-round", o.Why.At, "a smaller corner",
				"Where the opening for %s in %s of %s meets what is cut there already, its corners cannot be rounded by %s.",
				o.Name, part.Named(), part.Owner, s.Show(radius)).
				Also(part.Why.At, "the box")
			return
		}
		part.Outline = outline
	}
}

// boreCorners places the holes that are bored first where an opening is cut by
// hand: in each inner corner one that touches both sides from inside, or the
// round of the corner where that is rounder than the bit. A notch with fewer
// than two inner corners is freed by two cuts of a saw.
func (s *solver) boreCorners(o *model.Opening, t *thing, r geom.Rect, inner geom.Contour) {
	if s.cornerBit == 0 || len(inner) < 2 || t.kind == baseboard {
		return
	}
	if room := min(r.X.Size(), r.Y.Size()); s.cornerBit > room {
		s.bitTooWide(t, o, room)
		return
	}
	o.Bit = s.cornerBit
	off := (s.cornerBit + 1) / 2
	if over := t.cut.Corner - off; over > 0 {
		off = t.cut.Corner - length.Length(math.Floor(float64(over)/math.Sqrt2))
	}
	for _, v := range inner {
		at := geom.Point{X: r.X.Lo + off, Y: r.Y.Lo + off}
		if v.X == r.X.Hi {
			at.X = r.X.Hi - off
		}
		if v.Y == r.Y.Hi {
			at.Y = r.Y.Hi - off
		}
		o.Corners = append(o.Corners, at)
	}
}

func (s *solver) bitTooWide(t *thing, o *model.Opening, room length.Length) {
	if t.warned {
		return
	}
	t.warned = true
	s.Findings.Warnf("corner-bit-too-wide", t.why.At, "corner_bit = "+s.Show(room)+" or less",
		"The bit for the corners is %s wide, but an opening for %s is only %s across: %s too wide, and no bores are shown for it.",
		s.Show(s.cornerBit), o.Name, s.Show(room), s.Show(s.cornerBit-room)).
		Also(s.Source.Top("saw")[0].Attr("corner_bit").Expr.At, "the bit")
}
