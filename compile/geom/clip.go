package geom

import (
	"math"
	"slices"
)

// Clip returns the stretches of a straight line that lie within a contour, from its first
// end to its second. Arcs count as chords, and what lies along an edge as within.
func (c Contour) Clip(from, to Point) (within [][2]Point) {
	points := c.Chords()
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	at := func(t float64) Point {
		return from.Add(Point{X: Length(math.Round(float64(dx * t))), Y: Length(math.Round(float64(dy * t)))})
	}
	cuts := []float64{0, 1}
	for i, a := range points {
		b := points[(i+1)%len(points)]
		ex, ey := float64(b.X-a.X), float64(b.Y-a.Y)
		qx, qy := float64(a.X-from.X), float64(a.Y-from.Y)
		cross := float64(dx*ey) - float64(dy*ex)
		if cross == 0 {
			continue
		}
		along := (float64(qx*ey) - float64(qy*ex)) / cross
		on := (float64(qx*dy) - float64(qy*dx)) / cross
		if along > 0 && along < 1 && on >= 0 && on <= 1 {
			cuts = append(cuts, along)
		}
	}
	slices.Sort(cuts)
	for i, t := range cuts[1:] {
		a, b := at(cuts[i]), at(t)
		if a == b && from != to || !holds(points, at((cuts[i]+t)/2)) {
			continue
		}
		if n := len(within); n > 0 && within[n-1][1] == a {
			within[n-1][1] = b
		} else {
			within = append(within, [2]Point{a, b})
		}
	}
	return within
}

// holds reports whether a point lies in a polygon or on its edge.
func holds(polygon []Point, p Point) (in bool) {
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		cross := float64(float64(b.X-a.X)*float64(p.Y-a.Y)) - float64(float64(b.Y-a.Y)*float64(p.X-a.X))
		if cross == 0 && min(a.X, b.X) <= p.X && p.X <= max(a.X, b.X) && min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y) {
			return true
		}
		if (a.Y <= p.Y) != (b.Y <= p.Y) && (cross > 0) == (b.Y > a.Y) {
			in = !in
		}
	}
	return in
}
