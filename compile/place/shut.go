package place

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/finding"
)

// beforeDoorway warns where what is built leaves no way in through the doorway: nearer to it than
// the least way in, it leaves no such stretch of the opening free.
func (r *room) beforeDoorway() {
	door, least := r.finished.Door, r.Length(r.Limits, "way_in")
	if door == nil {
		return
	}
	var first *body
	var shut []geom.Span
	for i := range r.bodies {
		o := &r.bodies[i]
		at := door.Frame.Around(o.frame, o.hull)
		if at.U.Overlaps(door.Span) && at.V.Overlaps(geom.Span{Hi: least}) && at.Z.Lo < door.Height {
			shut = append(shut, at.U.Intersect(door.Span))
			if first == nil {
				first = o
			}
		}
	}
	free := widest(door.Span, shut)
	if first == nil || free.Size() >= least {
		return
	}
	left := "nothing of it is"
	if free.Size() > 0 {
		left = r.Model.Build.Near(free.Size()) + " of it are"
	}
	r.LimitOf(r.Findings.Warnf("stands-before-doorway", r.Source.Top("room")[0].Inner("doorway")[0].Head, "",
		"%s stands before the doorway, which is %s wide: %s left free, and %s are needed to go in. What is set after it cannot be brought in.",
		finding.Capital(quoted(first.Name)), r.Show(door.Span.Size()), left, r.Show(least)).
		Also(r.Block(first.block).Head, "it stands there"), "way_in")
}

// widest is the widest stretch of a span that some others leave free.
func widest(of geom.Span, others []geom.Span) (best geom.Span) {
	slices.SortFunc(others, func(a, b geom.Span) int { return cmp.Compare(a.Lo, b.Lo) })
	from := of.Lo
	for _, o := range append(others, geom.Span{Lo: of.Hi, Hi: of.Hi}) {
		if free := (geom.Span{Lo: from, Hi: o.Lo}); free.Size() > best.Size() {
			best = free
		}
		from = max(from, o.Hi)
	}
	return best
}
