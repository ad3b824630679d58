package replay

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// edge is a straight piece of a border.
type edge struct {
	stretch
	round bool // stands for a piece of an arc
}

// ring is a closed border, counter-clockwise.
type ring struct {
	edges []edge
	box   box
}

func ringOf(c geom.Contour) ring {
	if c.Area() < 0 {
		c = c.Reversed()
	}
	var edges []edge
	for i, v := range c {
		next := c[(i+1)%len(c)].Point
		if next == v.Point {
			continue
		}
		if v.Bulge == 0 {
			edges = append(edges, edge{stretch: stretch{mm(v.Point), mm(next)}})
			continue
		}
		a := geom.ArcOf(v, next)
		for _, piece := range chords(mm(v.Point), mm(next), a.CX/1e6, a.CY/1e6, a.Turn) {
			edges = append(edges, edge{piece, true})
		}
	}
	return ring{edges, boxOf(edges)}
}

// bored returns the border of a bore.
func bored(c spot, r float64) ring {
	east, west := spot{c.x + r, c.y}, spot{c.x - r, c.y}
	var edges []edge
	for _, half := range [2]stretch{{east, west}, {west, east}} {
		for _, piece := range chords(half.a, half.b, c.x, c.y, math.Pi) {
			edges = append(edges, edge{piece, true})
		}
	}
	return ring{edges, boxOf(edges)}
}

// inside counts the border's crossings to the right of a point.
func (r ring) inside(p spot) bool {
	if !r.box.holds(p) {
		return false
	}
	in := false
	for _, s := range r.edges {
		if (s.a.y <= p.y) != (s.b.y <= p.y) && s.at(p.y) > p.x {
			in = !in
		}
	}
	return in
}

// at returns the X of a stretch at a Y, which it crosses.
func (s stretch) at(y float64) float64 { return s.a.x + float64((y-s.a.y)/(s.b.y-s.a.y)*(s.b.x-s.a.x)) }

// across appends the parts of a row inside a ring: between its first and second
// crossing, its third and fourth, and so on.
func (r *ring) across(y float64, out []interval) []interval {
	var few [8]float64
	at := few[:0]
	for i := range r.edges {
		if s := &r.edges[i]; (s.a.y <= y) != (s.b.y <= y) {
			at = append(at, s.at(y))
		}
	}
	slices.Sort(at)
	for k := 0; k+1 < len(at); k += 2 {
		out = append(out, interval{at[k], at[k+1]})
	}
	return out
}

// place returns how far along a ring the point lies that is nearest to p.
func (r ring) place(p spot) float64 {
	at, nearest, gone := 0.0, math.Inf(1), 0.0
	for _, e := range r.edges {
		if d := e.to(p); d < nearest {
			nearest, at = d, gone+float64(min(1, max(0, e.share(p)))*e.length())
		}
		gone += e.length()
	}
	return at
}

// between returns the pieces of a ring from one place to a later one, which may lie
// beyond its start.
func (r ring) between(from, to float64) []stretch {
	round := 0.0
	for _, e := range r.edges {
		round += e.length()
	}
	var out []stretch
	for gone := -round; gone < to; {
		for _, e := range r.edges {
			l := e.length()
			lo, hi := max(0, (from-gone)/l), min(1, (to-gone)/l)
			if (hi-lo)*l > shortest {
				out = append(out, e.part(lo, hi))
			}
			gone += l
		}
	}
	return out
}

// split parts a stretch wherever others cross it or end on it.
func (s stretch) split(others []edge) []stretch {
	at := []float64{0, 1}
	for _, o := range others {
		if s.farther(o.stretch, shortest) {
			continue
		}
		from, to := s.side(o.a), s.side(o.b)
		if (from <= 0) != (to <= 0) {
			at = append(at, s.share(o.along(from/(from-to))))
		}
		if s.to(o.a) < shortest {
			at = append(at, s.share(o.a))
		}
	}
	slices.Sort(at)
	var out []stretch
	for i := range at[1:] {
		if at[i] < 0 || at[i+1] > 1 {
			continue
		}
		if piece := s.part(at[i], at[i+1]); piece.length() > shortest {
			out = append(out, piece)
		}
	}
	return out
}

// shortest is how long a piece of a border is at least, in mm: no bit goes through a
// gap as wide.
const shortest = 1e-6
