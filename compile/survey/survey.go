// Package survey makes surfaces of readings: of a floor, how far it lies below a level
// line at points of the plan; of a wall, how far it stands off a straight one at points
// of its face. Between readings a surface is linear over the triangles of their Delaunay
// triangulation, and beyond them it goes on flat from the nearest point of their hull.
package survey

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"barwright/compile/geom"
)

// Length is the measure of places and of values.
type Length = geom.Length

// Reading is the value that was read at a point.
type Reading struct {
	At    geom.Point
	Value Length
}

// Surface has a value at every point of the plane. The zero Surface is level at 0.
type Surface struct {
	readings  []Reading // by x, then by y; one at a point
	triangles [][3]int  // a positive way round, from x towards y
	rim       [][2]int  // edges of the hull; of readings on one line, from each to the next
	bands     bands
}

// New makes the surface of readings. Of several at one point the first counts.
func New(readings []Reading) Surface {
	sorted := slices.Clone(readings)
	slices.SortStableFunc(sorted, func(a, b Reading) int {
		return cmp.Or(cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y))
	})
	s := Surface{readings: slices.CompactFunc(sorted, func(a, b Reading) bool { return a.At == b.At })}
	s.triangulate()
	s.bands = s.banded()
	return s
}

// Triangles lists the triangles by their corners, in an order that only depends on the
// places. There are none where all readings stand on one line.
func (s Surface) Triangles() [][3]geom.Point {
	var out [][3]geom.Point
	for _, t := range s.triangles {
		out = append(out, [3]geom.Point{s.readings[t[0]].At, s.readings[t[1]].At, s.readings[t[2]].At})
	}
	return out
}

// At returns the value at a point, to the nearest nanometre, and whether the point lies
// within the readings: in their hull or on its edge.
func (s Surface) At(p geom.Point) (value Length, within bool) {
	for _, n := range s.bands.at(p) {
		t := s.triangles[n]
		a, b, c := s.readings[t[0]], s.readings[t[1]], s.readings[t[2]]
		if side(a.At, b.At, p) >= 0 && side(b.At, c.At, p) >= 0 && side(c.At, a.At, p) >= 0 {
			return between(a, b, c, p), true
		}
	}
	return s.beyond(p)
}

// between weighs the values at the corners of a triangle that holds p.
func between(a, b, c Reading, p geom.Point) Length {
	sum, all := new(big.Int), new(big.Int)
	for _, part := range [3]struct {
		weight *big.Int
		value  Length
	}{
		{cross(b.At, c.At, p), a.Value}, {cross(c.At, a.At, p), b.Value}, {cross(a.At, b.At, p), c.Value},
	} {
		all.Add(all, part.weight)
		sum.Add(sum, new(big.Int).Mul(part.weight, big.NewInt(int64(part.value))))
	}
	sum.Add(sum.Lsh(sum, 1), all) // halves go up
	return Length(sum.Div(sum, all.Lsh(all, 1)).Int64())
}

// beyond returns the value at the point of the rim that is nearest to p, and whether p
// is that point: the foot of the perpendicular on an edge before which p lies, or a corner.
func (s Surface) beyond(p geom.Point) (value Length, within bool) {
	for _, e := range s.rim {
		a, b := s.readings[e[0]], s.readings[e[1]]
		beside := side(a.At, b.At, p)
		if share := foot(a.At, b.At, p); share >= 0 && share <= 1 && (beside <= 0 || len(s.triangles) == 0) {
			return a.Value + Length(math.Round(share*float64(b.Value-a.Value))), beside == 0
		}
	}
	nearest := math.Inf(1)
	for _, r := range s.readings {
		if far := math.Hypot(float64(p.X-r.At.X), float64(p.Y-r.At.Y)); far < nearest {
			nearest, value = far, r.Value
		}
	}
	return value, nearest == 0
}

// Off returns how far a point lies outside the hull of the readings; 0 where it lies within
// or on its edge, and where there is no reading.
func (s Surface) Off(p geom.Point) Length {
	if _, within := s.At(p); within || len(s.readings) == 0 {
		return 0
	}
	off := math.Inf(1)
	for _, r := range s.readings {
		off = min(off, math.Hypot(float64(p.X-r.At.X), float64(p.Y-r.At.Y)))
	}
	for _, e := range s.rim {
		a, b := s.readings[e[0]].At, s.readings[e[1]].At
		if share := foot(a, b, p); share >= 0 && share <= 1 {
			twice, _ := cross(a, b, p).Float64()
			off = min(off, math.Abs(twice)/math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)))
		}
	}
	return Length(math.Ceil(off))
}

// foot is where the perpendicular from p meets the line of a and b: 0 at a, 1 at b.
func foot(a, b, p geom.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	return (float64(float64(p.X-a.X)*dx) + float64(float64(p.Y-a.Y)*dy)) / (float64(dx*dx) + float64(dy*dy))
}

// Along returns the surface along the straight line between two points: at either end,
// and wherever it bends between them.
func (s Surface) Along(from, to geom.Point) []Reading {
	shares := append(s.bends(from, to), 0, 1)
	slices.Sort(shares)
	var out []Reading
	for _, share := range shares {
		p := geom.Point{
			X: from.X + Length(math.Round(share*float64(to.X-from.X))),
			Y: from.Y + Length(math.Round(share*float64(to.Y-from.Y))),
		}
		if len(out) > 0 && out[len(out)-1].At == p {
			continue
		}
		value, _ := s.At(p)
		for len(out) > 1 && straight(out[len(out)-2], out[len(out)-1], Reading{p, value}) {
			out = out[:len(out)-1]
		}
		out = append(out, Reading{p, value})
	}
	return out
}

// bends lists where on the line between two points, as shares of it, it meets what a surface may bend at: edges of triangles, and
// beyond the rim the perpendiculars at the ends of its edges.
func (s Surface) bends(from, to geom.Point) []float64 {
	var out []float64
	meet := func(at geom.Point, dx, dy Length) { // the line through a point, along (dx, dy)
		ahead := float64(float64(to.X-from.X)*float64(dy)) - float64(float64(to.Y-from.Y)*float64(dx))
		off := float64(float64(at.X-from.X)*float64(dy)) - float64(float64(at.Y-from.Y)*float64(dx))
		if ahead != 0 {
			if share := off / ahead; share > 0 && share < 1 {
				out = append(out, share)
			}
		}
	}
	for _, near := range s.bands.between(from, to) {
		for _, n := range near {
			t := s.triangles[n]
			for k := range t {
				a, b := s.readings[t[k]].At, s.readings[t[(k+1)%3]].At
				meet(a, b.X-a.X, b.Y-a.Y)
			}
		}
	}
	if s.holds(from) && s.holds(to) { // and, as a hull is convex, all between
		return out
	}
	for _, e := range s.rim {
		a, b := s.readings[e[0]].At, s.readings[e[1]].At
		meet(a, a.Y-b.Y, b.X-a.X)
		meet(b, a.Y-b.Y, b.X-a.X)
	}
	return out
}

// holds reports whether a point lies within the readings.
func (s Surface) holds(p geom.Point) bool {
	_, within := s.At(p)
	return within
}

// straight reports whether the middle one of three readings on a line adds nothing: its
// value is within a nanometre of the line between the others.
func straight(a, b, c Reading) bool {
	line := float64(a.Value) + float64(foot(a.At, c.At, b.At)*float64(c.Value-a.Value))
	return math.Abs(line-float64(b.Value)) <= 1
}
