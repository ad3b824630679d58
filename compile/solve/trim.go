package solve

import (
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// trimRecesses takes what the openings of a part remove out of its recesses: wood
// that is gone is not recessed. A recess that is parted becomes several, of one
// that has nothing left nothing stays. An opening with recessed wood all round it
// leaves the recess whole. Round ends and corners become chords. Recesses that the
// router cuts stay as they are.
func trimRecesses(part *model.Part) {
	var left []model.Recess
	for i := range part.Recesses {
		r := part.Recesses[i]
		cuts := reachingOver(&r, part.Openings)
		if r.Routed || len(cuts) == 0 {
			left = append(left, r)
		} else if pieces, ok := geom.Difference(chorded(r.Shape), cuts); ok {
			left = append(left, parted(r, pieces)...)
		} else {
			left = append(left, r)
		}
	}
	part.Recesses = left
}

// reachingOver lists the openings that reach over a recess and beyond it.
func reachingOver(r *model.Recess, openings []model.Opening) (cuts []geom.Contour) {
	recess := r.Shape.Bounds()
	for i := range openings {
		o := &openings[i]
		if b := o.Shape.Bounds(); recess.Overlaps(b) && (o.Notch || !recess.Grow(-1).Contains(b)) {
			cuts = append(cuts, chorded(o.Shape))
		}
	}
	return cuts
}

// parted are the pieces of a recess, each open where it reaches an edge that the
// whole was open at.
func parted(whole model.Recess, pieces []geom.Contour) []model.Recess {
	bounds := whole.Shape.Bounds()
	out := make([]model.Recess, len(pieces))
	for i, shape := range pieces {
		b := shape.Bounds()
		reaches := [...]bool{
			model.Bottom: b.Y.Lo == bounds.Y.Lo, model.RightEdge: b.X.Hi == bounds.X.Hi,
			model.Top: b.Y.Hi == bounds.Y.Hi, model.LeftEdge: b.X.Lo == bounds.X.Lo,
		}
		out[i] = whole
		out[i].Shape = shape
		out[i].Open = slices.DeleteFunc(slices.Clone(whole.Open), func(e model.Edge) bool { return !reaches[e] })
		if i > 0 {
			out[i].ID += "-" + strconv.Itoa(i+1)
		}
	}
	return out
}

// chorded is a contour with chords for its arcs.
func chorded(c geom.Contour) geom.Contour {
	points := c.Chords()
	out := make(geom.Contour, len(points))
	for i, p := range points {
		out[i].Point = p
	}
	return out
}
