package solve

import (
	"math"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// trimRecesses takes what the openings of a part remove out of its recesses: wood
// that is gone is not recessed. A recess that is parted becomes several, of one
// that has nothing left nothing stays. An opening with recessed wood all round it
// leaves the recess whole. Round ends and corners become tangents, so that no piece reaches into
// an opening. Recesses that the router cuts stay as they are.
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
			cuts = append(cuts, tangents(o.Shape))
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

// tangents is an opening with straight pieces for its arcs that touch them from outside,
// one each 5 degrees at least.
func tangents(c geom.Contour) geom.Contour {
	var out geom.Contour
	for i, v := range c {
		out = append(out, geom.Vertex{Point: v.Point})
		if v.Bulge == 0 {
			continue
		}
		arc := geom.ArcOf(v, c[(i+1)%len(c)].Point)
		n := max(2, math.Ceil(math.Abs(arc.Turn)/(5*math.Pi/180)))
		r := arc.R / math.Cos(arc.Turn/n/2)
		for k := 0.5; k < n; k++ {
			sin, cos := math.Sincos(arc.Start + float64(arc.Turn*k/n))
			out = append(out, geom.Vertex{Point: geom.Point{
				X: geom.Length(math.Round(arc.CX + float64(r*cos))),
				Y: geom.Length(math.Round(arc.CY + float64(r*sin))),
			}})
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
