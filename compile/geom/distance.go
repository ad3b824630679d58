package geom

import (
	"cmp"
	"math"
)

// FromLine returns how far x, y is from the straight line between two points, in
// nanometres: from its nearest point, an end where that is none between them.
func FromLine(x, y float64, from, to Point) float64 {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	qx, qy := x-float64(from.X), y-float64(from.Y)
	along := 0.0
	if square := float64(dx*dx) + float64(dy*dy); square > 0 {
		along = max(0, min(1, (float64(qx*dx)+float64(qy*dy))/square))
	}
	return math.Hypot(qx-float64(along*dx), qy-float64(along*dy))
}

// Apart returns how far apart the edges of two contours are at least, in nanometres: 0 where they
// meet, or where one contour lies in the other. Arcs count as chords of a degree.
func Apart(a, b Contour) float64 {
	degrees := func(arc Arc) float64 { return max(2, math.Ceil(math.Abs(arc.Turn)*180/math.Pi)) }
	p, q := a.AppendPieces(nil, degrees), b.AppendPieces(nil, degrees)
	if holds(p, q[0]) || holds(q, p[0]) {
		return 0
	}
	least := math.Inf(1)
	for i, from := range p {
		to := p[(i+1)%len(p)]
		for k, start := range q {
			end := q[(k+1)%len(q)]
			if cross(from, to, start, end) {
				return 0
			}
			least = min(least, fromPoint(start, from, to), fromPoint(from, start, end))
		}
	}
	return least
}

func fromPoint(p, from, to Point) float64 { return FromLine(float64(p.X), float64(p.Y), from, to) }

// cross reports whether two straight lines cross, each beyond the other's ends.
func cross(a, b, c, d Point) bool {
	return left(a, b, c)*left(a, b, d) < 0 && left(c, d, a)*left(c, d, b) < 0
}

// left is 1 where p is left of the line from a to b, -1 where it is right, and 0 on it.
func left(a, b, p Point) int {
	u := float64(float64(b.X-a.X) * float64(p.Y-a.Y))
	return cmp.Compare(u, float64(float64(b.Y-a.Y)*float64(p.X-a.X)))
}
