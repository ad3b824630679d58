package paint

import (
	"cmp"
	"math"
	"slices"
)

// ring is a polygon of the picture.
type ring []spot

// bounds is the upright rectangle round something in the picture.
type bounds struct{ x0, y0, x1, y1 float64 }

func (r ring) bounds() bounds {
	b := bounds{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range r {
		b = bounds{min(b.x0, p.x), min(b.y0, p.y), max(b.x1, p.x), max(b.y1, p.y)}
	}
	return b
}

// meets reports whether two rectangles share more than a touch.
func (b bounds) meets(o bounds) bool {
	return b.x0 < o.x1-touch && o.x0 < b.x1-touch && b.y0 < o.y1-touch && o.y0 < b.y1-touch
}

// overlaps tells of each pair of rectangles that meet, in a sweep from the left.
func overlaps(all []bounds, each func(i, j int)) {
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Or(cmp.Compare(all[i].x0, all[j].x0), cmp.Compare(i, j)) })
	var open []int
	for _, i := range order {
		kept := open[:0]
		for _, j := range open {
			if all[j].x1 <= all[i].x0 {
				continue
			}
			kept = append(kept, j)
			if all[i].meets(all[j]) {
				each(j, i)
			}
		}
		open = append(kept, i)
	}
}

// turn is twice the area of the triangle a, b, c: positive where it turns counter-clockwise.
func turn(a, b, c spot) float64 {
	return float64((b.x-a.x)*(c.y-a.y)) - float64((b.y-a.y)*(c.x-a.x))
}

func (r ring) area() (twice float64) {
	for i := 2; i < len(r); i++ {
		twice += turn(r[0], r[i-1], r[i])
	}
	return twice / 2
}

// hull is the convex outline of points, counter-clockwise (Andrew's monotone chain).
func hull(points ring) ring {
	slices.SortFunc(points, func(a, b spot) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y)) })
	var out ring
	half := func(from int) {
		for _, p := range points {
			for len(out) >= from+2 && turn(out[len(out)-2], out[len(out)-1], p) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		out = out[:len(out)-1]
	}
	half(0)
	lower := len(out)
	slices.Reverse(points)
	half(lower)
	return out
}

// meets reports whether two convex rings, counter-clockwise, share more than a touch.
func (r ring) meets(o ring) bool { return !r.parts(o) && !o.parts(r) }

// parts reports whether an edge of r has all of o outside of it.
func (r ring) parts(o ring) bool {
	for i, a := range r {
		b := r[0]
		if i+1 < len(r) {
			b = r[i+1]
		}
		if near(a, b) {
			continue
		}
		most := math.Inf(-1)
		for _, p := range o {
			if t := turn(a, b, p); t > most {
				most = t
			}
		}
		if most <= 0 {
			return true
		}
		dx, dy := b.x-a.x, b.y-a.y
		if most <= touch*math.Sqrt(float64(dx*dx)+float64(dy*dy)) {
			return true
		}
	}
	return false
}

// holds reports whether a point lies in a ring, in a convex one or not.
func (r ring) holds(p spot) (in bool) {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if crosses(a, b, p) {
			in = !in
		}
	}
	return in
}

// crosses reports whether a ray from a point along x crosses an edge.
func crosses(a, b, p spot) bool {
	return (a.y <= p.y) != (b.y <= p.y) && (turn(a, b, p) > 0) == (b.y > a.y)
}
