package paint

import (
	"cmp"
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
func (f *Seen) Holds(p geom.Point) bool { return f.ring().holds(spot{float64(p.X), float64(p.Y)}) }

func (f *Seen) ring() ring {
	r := make(ring, len(f.Outline))
	for i, p := range f.Outline {
		r[i] = spot{float64(p.X), float64(p.Y)}
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
	var faces []Seen
	var rings []ring
	var frames []bounds
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
	parts := make([][]ring, len(faces))
	for i, r := range rings {
		parts[i] = convex(r)
	}
	for i := range faces {
		slices.Sort(covers[i])
		left := slices.Clone(parts[i])
		for _, j := range covers[i] {
			for _, c := range parts[j] {
				if left = without(left, c); len(left) == 0 {
					break
				}
			}
			if len(left) == 0 || len(left) > mostPieces {
				break
			}
		}
		if len(left) == 0 {
			continue
		}
		f := faces[i]
		for _, p := range rings[i] {
			f.Outline = append(f.Outline, p.point())
		}
		f.Free = pieced(left)
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

func pieced(left []ring) (free []Free) {
	for _, r := range left {
		f := Free{Area: r.area()}
		var m spot
		for _, p := range r {
			f.Corners = append(f.Corners, p.point())
			m = spot{m.x + p.x/float64(len(r)), m.y + p.y/float64(len(r))}
		}
		f.Middle = m.point()
		free = append(free, f)
	}
	slices.SortStableFunc(free, func(a, b Free) int { return cmp.Compare(b.Area, a.Area) })
	return free
}

// without takes a convex ring out of others.
func without(all []ring, cover ring) (left []ring) {
	frame := cover.bounds()
	for _, r := range all {
		if !frame.meets(r.bounds()) || !r.meets(cover) {
			left = append(left, r)
			continue
		}
		for i, a := range cover {
			b := cover[(i+1)%len(cover)]
			if out := r.side(b, a); out.area() > speck {
				left = append(left, out)
			}
			if r = r.side(a, b); r.area() <= speck {
				break
			}
		}
	}
	return left
}

// side is what of a convex ring lies to the left of a line.
func (r ring) side(a, b spot) (left ring) {
	for i, p := range r {
		q := r[(i+1)%len(r)]
		from, to := turn(a, b, p), turn(a, b, q)
		if from >= 0 {
			left = append(left, p)
		}
		if from > 0 && to < 0 || from < 0 && to > 0 {
			t := from / (from - to)
			left = append(left, spot{p.x + float64((q.x-p.x)*t), p.y + float64((q.y-p.y)*t)})
		}
	}
	return left
}

// convex parts a ring, counter-clockwise, into convex ones: itself, or triangles by cutting off
// ears.
func convex(r ring) (parts []ring) {
	reflex := func(r ring, i int) bool {
		n := len(r)
		return turn(r[(i+n-1)%n], r[i], r[(i+1)%n]) < 0
	}
	whole := true
	for i := range r {
		whole = whole && !reflex(r, i)
	}
	if whole {
		return []ring{r}
	}
	rest := slices.Clone(r)
	for len(rest) > 3 {
		i := slices.IndexFunc(indices(len(rest)), func(i int) bool { return !reflex(rest, i) && rest.ear(i) })
		if i < 0 {
			break
		}
		n := len(rest)
		parts = append(parts, ring{rest[(i+n-1)%n], rest[i], rest[(i+1)%n]})
		rest = slices.Delete(rest, i, i+1)
	}
	if len(rest) == 3 {
		parts = append(parts, rest)
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
