package dxf

import (
	"math"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// chords returns the contour with each arc as straight pieces between points on it,
// none of which leaves it by more than a tolerance, nor turns by more than a right angle.
func chords(c geom.Contour, tolerance length.Length) geom.Contour {
	points := c.InChords(func(a geom.Arc) float64 {
		turn := math.Pi / 2
		if share := float64(tolerance) / a.R; share < 1 {
			turn = min(turn, 2*math.Acos(1-share))
		}
		return math.Ceil(math.Abs(a.Turn)/turn - 1e-9)
	})
	out := make(geom.Contour, len(points))
	for i, p := range points {
		out[i].Point = p
	}
	return out
}
