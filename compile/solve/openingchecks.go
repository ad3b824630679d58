package solve

import (
	"math"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// checkOpenings says when two openings run into one another. What meets the
// notch for a baseboard is one with it.
func (s *solver) checkOpenings(part *model.Part, o *model.Opening, t *thing) {
	for _, other := range part.Openings {
		if strings.HasPrefix(other.Name, baseboard+" ") {
			continue
		}
		overlap := o.Shape.Bounds().Intersect(other.Shape.Bounds())
		if overlap.X.Size() > 0 && overlap.Y.Size() > 0 && !roundsApart(o.Shape, other.Shape) {
			s.Findings.Errorf("openings-meet", t.why.At, "move one of them, or describe both as one",
				"In %s of %s the openings for %s and %s run into one another: they overlap by %s.", part.Named(), part.Owner,
				other.Name, o.Name, s.Show(min(overlap.X.Size(), overlap.Y.Size()))).
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
	if !s.Findings.Has("opening-meets-joint", t.why.At) { // the box on the other side of the joint says the same
		s.covered(t, box, end.Along(across), box.Inside.Along(across))
		s.covered(t, box, p.z, box.Inside.Z)
	}
	reached := end.With(deep, end.Along(deep).Grow(1))
	var before []string
	for i := c.first; i < c.last; i++ {
		if part := &s.m.Parts[i]; divides(part) && part.Placement.Box.Overlaps(reached) {
			before = append(before, part.Name)
		}
	}
	if len(before) > 0 {
		s.Findings.Warnf("opening-meets-joint", t.why.At, "move the "+t.kind+", or what stands before it",
			"The opening for %s lies partly behind %s of %s %s.", t.name, strings.Join(before, ", "), box.Kind, box.Name).
			Also(box.Why.At, "the box")
	}
}

func (s *solver) covered(t *thing, box *model.Box, have, clear geom.Span) {
	if miss := max(clear.Lo-have.Lo, have.Hi-clear.Hi); miss > 0 {
		s.Findings.Warnf("opening-meets-joint", t.why.At, "move the "+t.kind+" or the box, so that the opening lies within one box",
			"The opening for %s runs %s past the clear inside of %s %s, into its joint.", t.name, s.Show(min(miss, have.Size())), box.Kind, box.Name).
			Also(box.Why.At, "the box")
	}
}

// divides reports whether a part divides the inside of its cabinet and meets
// the back.
func divides(p *model.Part) bool {
	return p.Is("cabinet", "divider") || p.Is("cabinet", "fixed-shelf")
}
