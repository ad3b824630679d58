package dxf

import (
	"math"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// appendChords appends the corners of a contour with each arc as straight pieces between
// points on it, none of which leaves it by more than a tolerance, nor turns by more than a
// right angle.
func appendChords(dst []geom.Point, c geom.Contour, tolerance length.Length) []geom.Point {
	return c.AppendPieces(dst, func(a geom.Arc) float64 {
		turn := math.Pi / 2
		if share := float64(tolerance) / a.R; share < 1 {
			turn = min(turn, 2*math.Acos(1-share))
		}
		return math.Ceil(math.Abs(a.Turn)/turn - 1e-9)
	})
}
