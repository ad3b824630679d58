package reuse

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// addNotches reads what an outline lacks of its body; ok is false where an edge runs
// aslant, or is round otherwise than at a corner.
func (s *solid) addNotches() bool {
	square, corners, ok := squared(s.part.Outline)
	if !ok {
		return false
	}
	for _, k := range corners {
		if k.convex {
			s.cuts = append(s.cuts, cut{shape{core: k.rect()}, through, rounded, "", k.way()})
		}
	}
	for _, r := range lacking(square) {
		c := cut{shape{core: r}, through, notch, "", -1}
		for i := range s.part.Openings {
			if o := &s.part.Openings[i]; o.Notch && o.Shape.Bounds().Overlaps(r) {
				c.called, c.index = o.Name, i
				break
			}
		}
		if !c.round(r, s.body, corners) {
			return false
		}
		s.cuts = append(s.cuts, c)
	}
	return true
}

// corner is a round corner of an outline: where its sides would meet, and where the
// centre of its arc lies.
type corner struct {
	at, centre geom.Point
	convex     bool // of the part; otherwise it is the end of a notch
}

// way numbers which corner of its square it takes off.
func (k corner) way() int {
	way := 0
	if k.at.X > k.centre.X {
		way |= 1
	}
	if k.at.Y > k.centre.Y {
		way |= 2
	}
	return way
}

func (k corner) rect() geom.Rect {
	return geom.Rect{X: geom.Between(k.at.X, k.centre.X), Y: geom.Between(k.at.Y, k.centre.Y)}
}

// squared gives a counter-clockwise outline its corners back.
func squared(outline geom.Contour) (square []geom.Point, corners []corner, ok bool) {
	for i, v := range outline {
		w := outline[(i+1)%len(outline)]
		square = append(square, v.Point)
		if v.Bulge == 0 {
			if v.X != w.X && v.Y != w.Y {
				return nil, nil, false
			}
			continue
		}
		middles := []geom.Point{v.Point, w.Point}
		if math.Abs(v.Bulge) == 1 { // half a circle is two quarters
			a := geom.ArcOf(v, w.Point)
			sin, cos := math.Sincos(a.Start + a.Turn/2)
			crown := geom.Point{X: Length(math.Round(a.CX + float64(a.R*cos))), Y: Length(math.Round(a.CY + float64(a.R*sin)))}
			middles = []geom.Point{v.Point, crown, w.Point}
		} else if math.Abs(math.Abs(v.Bulge)-geom.QuarterBulge) > 1e-9 {
			return nil, nil, false
		}
		for j := range len(middles) - 1 {
			k := cornerOf(middles[j], middles[j+1], v.Bulge > 0)
			if r := k.rect(); r.X.Size() != r.Y.Size() {
				return nil, nil, false
			}
			square, corners = append(square, k.at), append(corners, k)
			if j+2 < len(middles) {
				square = append(square, middles[j+1])
			}
		}
	}
	return square, corners, true
}

// cornerOf is that of a quarter circle from p to q. Counter-clockwise, its sides meet
// to the right of the way from p to q.
func cornerOf(p, q geom.Point, convex bool) corner {
	a, b := geom.Point{X: p.X, Y: q.Y}, geom.Point{X: q.X, Y: p.Y}
	if d := q.Sub(p); d.X > 0 == (d.Y > 0) != convex {
		a, b = b, a
	}
	return corner{at: b, centre: a, convex: convex}
}

// round gives a notch that fills a rectangle the radius of its inner corners, and takes it on beyond the
// edges that it reaches; ok is false where some are round and others are not.
func (c *cut) round(r, body geom.Rect, corners []corner) bool {
	s := solid{body: body}
	c.core = s.onward(r)
	for _, k := range corners {
		if k.convex || !r.Contains(k.rect()) {
			continue
		}
		if radius := k.rect().X.Size(); c.r == 0 {
			c.r = radius
		} else if c.r != radius {
			return false
		}
	}
	if c.r == 0 {
		return true
	}
	for _, v := range geom.RectContour(c.core) {
		inner := max(v.X, -v.X) < far && max(v.Y, -v.Y) < far
		if inner && !slices.ContainsFunc(corners, func(k corner) bool { return k.at == v.Point && !k.convex }) {
			return false
		}
	}
	c.core = clamped(c.core.Grow(-c.r))
	return c.core.X.Size() >= 0 && c.core.Y.Size() >= 0
}

// roundInside reads a contour that is round only where it does not reach an edge of the
// body, as a recess that a bit has left; ok is false where it is none.
func (c *cut) roundInside(contour geom.Contour, body geom.Rect) (ok bool) {
	if contour.Area() > 0 {
		contour = contour.Reversed() // its corners are then those of a notch
	}
	square, corners, ok := squared(contour)
	r := contour.Bounds()
	for _, p := range square {
		ok = ok && (p.X == r.X.Lo || p.X == r.X.Hi || p.Y == r.Y.Lo || p.Y == r.Y.Hi)
	}
	return ok && c.round(r, body, corners)
}

// lacking lists rectangles that make up what an outline lacks of the rectangle round it.
func lacking(square []geom.Point) (out []geom.Rect) {
	var xs, ys []Length
	for _, p := range square {
		xs, ys = append(xs, p.X), append(ys, p.Y)
	}
	xs, ys = distinct(xs), distinct(ys)
	taken := make([]bool, len(xs)*len(ys))
	free := func(i, j int) bool {
		return i+1 < len(xs) && j+1 < len(ys) && !taken[j*len(xs)+i] && !within(square, geom.Point{X: (xs[i] + xs[i+1]) / 2, Y: (ys[j] + ys[j+1]) / 2})
	}
	for j := range len(ys) - 1 {
		for i := range len(xs) - 1 {
			if !free(i, j) {
				continue
			}
			right, up := i+1, j+1
			for free(right, j) {
				right++
			}
		rows:
			for ; up+1 < len(ys); up++ {
				for k := i; k < right; k++ {
					if !free(k, up) {
						break rows
					}
				}
			}
			for y := j; y < up; y++ {
				for x := i; x < right; x++ {
					taken[y*len(xs)+x] = true
				}
			}
			out = append(out, geom.R(xs[i], ys[j], xs[right], ys[up]))
		}
	}
	return out
}

// within reports whether a point that lies on no side is inside.
func within(square []geom.Point, p geom.Point) bool {
	in := false
	for i, a := range square {
		b := square[(i+1)%len(square)]
		if a.X == b.X && a.X > p.X && (a.Y > p.Y) != (b.Y > p.Y) {
			in = !in
		}
	}
	return in
}

func distinct(values []Length) []Length {
	slices.Sort(values)
	return slices.Compact(values)
}
