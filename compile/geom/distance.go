package geom

import "math"

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
