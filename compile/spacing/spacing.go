// Package spacing places things along a stretch: studs on centres, supports
// evenly. Positions are whole nanometres and always come out the same.
package spacing

import (
	"barwright/compile/geom"
	"barwright/lang/length"
)

// OnCentres returns the centres of studs of a thickness in a stretch: one
// flush with either end, the others a spacing apart counted from the stretch's
// low end, so that no two centres are further apart than that. One that would
// stand in the last stud stands against it instead. The spacing must be at
// least two thicknesses, and so must the stretch.
func OnCentres(stretch geom.Span, spacing, thickness geom.Length) []geom.Length {
	half := thickness / 2
	first, last := stretch.Lo+half, stretch.Hi-(thickness-half)
	out := []geom.Length{first}
	for on := stretch.Lo + spacing; last-out[len(out)-1] > spacing; on += spacing {
		out = append(out, min(on, last-thickness))
	}
	return append(out, last)
}

// Even returns n centres, mirrored about the middle of the stretch: the outer
// ones end from its ends, the others evenly between, each moved to the nearest
// mark of a tape laid from the nearer end. An end of 0 means half of what lies
// between two of them. n must be 1 or more; one alone stands in the middle.
func Even(stretch geom.Span, n int, end, mark geom.Length) []geom.Length {
	size := stretch.Size()
	out := make([]geom.Length, n)
	for i := range (n + 1) / 2 {
		var at geom.Length
		switch {
		case 2*i+1 == n:
			at = size / 2
		case end == 0:
			at = length.Round(size*geom.Length(2*i+1)/geom.Length(2*n), mark)
		default:
			at = length.Round(end+(size-2*end)*geom.Length(i)/geom.Length(n-1), mark)
		}
		out[i], out[n-1-i] = stretch.Lo+at, stretch.Hi-at
	}
	if n%2 == 1 {
		out[n/2] = stretch.Lo + size/2
	}
	return out
}
