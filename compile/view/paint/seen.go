package paint

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// Seen is a face of which something is seen.
type Seen struct {
	Of      int // the caller's number for its solid
	Cut     int
	Shade   Shade
	Outline []geom.Point // all of it, counter-clockwise; what is painted later may cover some
	Free    []Free       // what nothing covers, in convex pieces, the largest first
}

// Free is a convex piece of a picture that nothing covers.
type Free struct {
	Corners []geom.Point
	Middle  geom.Point
	Area    float64 // square nanometres
}

// Holds reports whether a point of the picture lies in the face.
func (f *Seen) Holds(p geom.Point) (in bool) {
	at, n := spotOf(p), len(f.Outline)
	for i := range f.Outline {
		if crosses(spotOf(f.Outline[i]), spotOf(f.Outline[(i+1)%n]), at) {
			in = !in
		}
	}
	return in
}

func spotOf(p geom.Point) spot { return spot{float64(p.X), float64(p.Y)} }

func (f *Seen) ring() ring {
	r := make(ring, len(f.Outline))
	for i, p := range f.Outline {
		r[i] = spotOf(p)
	}
	return r
}

// speck is the area, in square nanometres, below which nothing is seen: a square millimetre.
const speck = 1e12

// mostPieces is into how many a face is cut before it counts as seen, whatever is left of it.
const mostPieces = 120

// Seen projects the faces of solids, which are in order, and leaves out what is covered
// by those painted later.
func (e Eye) Seen(order []Solid) (seen []Seen) {
	most := 0
	for i := range order {
		most += len(order[i].Faces)
	}
	faces, rings, frames := make([]Seen, 0, most), make([]ring, 0, most), make([]bounds, 0, most)
	for i := range order {
		for _, f := range order[i].Faces {
			r := e.picture(f.Ring)
			if math.Abs(r.area()) < speck {
				continue
			}
			faces = append(faces, Seen{Of: order[i].Of, Cut: f.Cut, Shade: f.Shade})
			rings, frames = append(rings, r), append(frames, r.bounds())
		}
	}
	covers := make([][]int, len(faces))
	overlaps(frames, func(i, j int) { covers[min(i, j)] = append(covers[min(i, j)], max(i, j)) })
	parts := make([][]piece, len(faces))
	for i, r := range rings {
		parts[i] = convex(r)
	}
	var left rest
	for i := range faces {
		slices.Sort(covers[i])
		left.begin(parts[i])
		for _, j := range covers[i] {
			for _, c := range parts[j] {
				if left.without(c); len(left.pieces) == 0 {
					break
				}
			}
			if len(left.pieces) == 0 || len(left.pieces) > mostPieces {
				break
			}
		}
		if len(left.pieces) == 0 {
			continue
		}
		f := faces[i]
		f.Outline = rings[i].points()
		f.Free = left.free()
		seen = append(seen, f)
	}
	return seen
}

// picture projects a ring counter-clockwise, without points that repeat.
func (e Eye) picture(points []Vec) (r ring) {
	for _, p := range points {
		if s := e.project(p); len(r) == 0 || !near(r[len(r)-1], s) {
			r = append(r, s)
		}
	}
	for len(r) > 1 && near(r[0], r[len(r)-1]) {
		r = r[:len(r)-1]
	}
	if r.area() < 0 {
		slices.Reverse(r)
	}
	return r
}

// near reports whether two points are one in a picture.
func near(a, b spot) bool { return math.Abs(a.x-b.x) < touch && math.Abs(a.y-b.y) < touch }

// convex parts a ring, counter-clockwise, into convex ones: itself, or triangles by cutting off
// ears.
func convex(r ring) (parts []piece) {
	reflex := func(r ring, i int) bool {
		n := len(r)
		return turn(r[(i+n-1)%n], r[i], r[(i+1)%n]) < 0
	}
	whole := true
	for i := range r {
		whole = whole && !reflex(r, i)
	}
	if whole {
		return []piece{pieceOf(r)}
	}
	rest := slices.Clone(r)
	for len(rest) > 3 {
		i := slices.IndexFunc(indices(len(rest)), func(i int) bool { return !reflex(rest, i) && rest.ear(i) })
		if i < 0 {
			break
		}
		n := len(rest)
		parts = append(parts, pieceOf(ring{rest[(i+n-1)%n], rest[i], rest[(i+1)%n]}))
		rest = slices.Delete(rest, i, i+1)
	}
	if len(rest) == 3 {
		parts = append(parts, pieceOf(rest))
	}
	return parts
}

func indices(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// ear reports whether no other corner lies in the triangle at a corner.
func (r ring) ear(i int) bool {
	n := len(r)
	a, b, c := r[(i+n-1)%n], r[i], r[(i+1)%n]
	for k, p := range r {
		if k == i || k == (i+n-1)%n || k == (i+1)%n {
			continue
		}
		if turn(a, b, p) > 0 && turn(b, c, p) > 0 && turn(c, a, p) > 0 {
			return false
		}
	}
	return true
}
