package router

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/relief"
)

// relieve places a bore of the bit's size at each closed corner, so that its
// edge passes through the corner: along the diagonal, r(√2-1) beyond the point
// that the bit reaches, or along the longer sides, r beyond it into the end.
func (j *job) relieve(r Request) *Refusal {
	aside, back := j.radius, Length(0) // of the bore's centre, inside the two walls
	if r.Tool.Relief == relief.Diagonal {
		aside = Length(math.Floor(float64(j.radius) * math.Sqrt2 / 2))
		back = aside
	}
	for i := range 4 {
		if !j.open.closedCorner(i) {
			continue
		}
		// The side that begins at the corner goes ahead, the one that ends there comes against.
		from := j.shape.corner(i)
		ahead, inward := heading[i], heading[after(i)]
		if (ahead.X != 0) != (r.Shape.X.Size() >= r.Shape.Y.Size()) {
			ahead, inward = inward, ahead
		}
		bore := along(along(from, ahead, back), inward, aside)
		if refusal := r.clearOfEdges(bore, j.radius); refusal != nil {
			return refusal
		}
		j.bores[i] = &bore
	}
	return nil
}

// clearOfEdges refuses a relief that would come out of the wood.
func (r Request) clearOfEdges(bore geom.Point, radius Length) *Refusal {
	w, open := r.Stock, sidesOf(r.Open)
	for e, margin := range [4]Length{bore.Y - w.Y.Lo, w.X.Hi - bore.X, w.Y.Hi - bore.Y, bore.X - w.X.Lo} {
		if over := radius - margin; over >= 0 && !open[e] {
			return &Refusal{Kind: "recess-off-stock", Have: over, Text: fmt.Sprintf(
				"The relief of a corner reaches %s past the wood at the %s.", r.show(over), model.Edge(e))}
		}
	}
	return nil
}

// reliefs lists the centres of the bores.
func (j *job) reliefs() []geom.Point {
	var out []geom.Point
	for _, bore := range j.bores {
		if bore != nil {
			out = append(out, *bore)
		}
	}
	return out
}
