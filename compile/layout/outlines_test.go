package layout

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// polygon is what a part's outline is where it was laid, in mm: arcs as chords of two degrees.
// Where the part is turned, its x runs up the sheet and its y from right to left.
func polygon(part *model.Part, at model.Placed) (out [][2]float64) {
	turns := func(a geom.Arc) float64 { return math.Ceil(math.Abs(a.Turn) * 90 / math.Pi) }
	x0, y0 := math.Inf(1), math.Inf(1)
	for _, p := range part.Outline.AppendPieces(nil, turns) {
		q := [2]float64{p.X.MM(), p.Y.MM()}
		if at.Turned {
			q = [2]float64{-p.Y.MM(), p.X.MM()}
		}
		x0, y0 = min(x0, q[0]), min(y0, q[1])
		out = append(out, q)
	}
	for i := range out {
		out[i][0] += at.At.X.Lo.MM() - x0
		out[i][1] += at.At.Y.Lo.MM() - y0
	}
	return out
}

// apart is the least distance of two polygons in mm, 0 where they cross or one holds the other.
func apart(p, q [][2]float64) float64 {
	least := math.Inf(1)
	for _, pair := range [2][2][][2]float64{{p, q}, {q, p}} {
		for i, a := range pair[0] {
			b := pair[0][(i+1)%len(pair[0])]
			inside := false
			for k, c := range pair[1] {
				d := pair[1][(k+1)%len(pair[1])]
				least = min(least, beside(a, c, d))
				if (c[1] <= a[1]) != (d[1] <= a[1]) && c[0]+(a[1]-c[1])/(d[1]-c[1])*(d[0]-c[0]) > a[0] {
					inside = !inside
				}
				if leftOf(a, b, c)*leftOf(a, b, d) < 0 && leftOf(c, d, a)*leftOf(c, d, b) < 0 {
					return 0
				}
			}
			if inside {
				return 0
			}
		}
	}
	return least
}

// beside is how far a point is from a line between two.
func beside(p, a, b [2]float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = max(0, min(1, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l))
	}
	return math.Hypot(p[0]-a[0]-t*dx, p[1]-a[1]-t*dy)
}

func leftOf(a, b, p [2]float64) float64 { return (b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0]) }

// taken is the area of a piece, in mm²: in a free layout what its outline holds where all edges
// are square to one another, otherwise that of the rectangle round it.
func taken(part *model.Part, at geom.Rect, free bool) float64 {
	square := free
	for i, v := range part.Outline {
		to := part.Outline[(i+1)%len(part.Outline)]
		square = square && v.Bulge == 0 && (v.X == to.X || v.Y == to.Y)
	}
	if square {
		return part.Outline.Area()
	}
	return at.X.Size().MM() * max(at.Y.Size(), 1).MM()
}
