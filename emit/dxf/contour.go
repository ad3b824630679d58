package dxf

import (
	"errors"
	"fmt"
	"math"
	"math/bits"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// shortest is the least length of an edge: what is shorter is the rounding of
// an edge that should not be there.
const shortest = length.Micrometre

// flat is the bulge below which an arc is straight: across a kilometre its
// crown is less than a nanometre high.
const flat = 1e-12

// validate refuses a contour that a cutting table would choke on: too few
// vertices, edges without length, the first vertex repeated at the end, a line
// that crosses, touches or folds back on itself. Nothing that the compiler
// makes should be refused; an error is a fault of the program.
func (r *room) validate(c geom.Contour) error {
	n := len(c)
	if n < 2 {
		return fmt.Errorf("%d vertices make no contour", n)
	}
	if c[0].Point == c[n-1].Point {
		return errors.New("the first vertex is repeated at the end")
	}
	for i, v := range c {
		if math.IsNaN(v.Bulge) || math.IsInf(v.Bulge, 0) {
			return fmt.Errorf("edge %d has no bulge that is a number", i)
		}
		if err := longEnough(v.Point, c[(i+1)%n].Point); err != nil {
			return fmt.Errorf("edge %d %w", i, err)
		}
	}
	if _, _, ok := c.Circle(); ok {
		return nil
	}
	r.points = c.AppendChords(r.points[:0])
	return simple(r.points)
}

var errNoLength = errors.New("has no length")

func longEnough(from, to geom.Point) error {
	if d := to.Sub(from); max(d.X, -d.X, d.Y, -d.Y) < shortest {
		return errNoLength
	}
	return nil
}

// simple refuses a polygon of which two edges share more than a common corner.
func simple(p []geom.Point) error {
	n := len(p)
	if n < 3 {
		return errors.New("the contour encloses nothing")
	}
	for i := range p {
		a, b := p[i], p[(i+1)%n]
		if next := p[(i+2)%n]; turn(a, b, next) == 0 && !between(a, next, b) {
			return fmt.Errorf("the contour folds back on itself at %s", showPoint(b))
		}
		low, high := geom.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}, geom.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
		for j := i + 2; j < n && j-i < n-1; j++ {
			c, d := p[j], p[0]
			if j+1 < n {
				d = p[j+1]
			}
			if c.X > high.X && d.X > high.X || c.X < low.X && d.X < low.X ||
				c.Y > high.Y && d.Y > high.Y || c.Y < low.Y && d.Y < low.Y {
				continue // most of them, and told soonest so
			}
			if meet(a, b, c, d) {
				return fmt.Errorf("the edges from %s and from %s meet", showPoint(a), showPoint(p[j]))
			}
		}
	}
	return nil
}

// appendOriented appends a contour, run clockwise or counter-clockwise, and moved.
func appendOriented(dst, c geom.Contour, clockwise bool, by geom.Point) geom.Contour {
	if n := len(c); runsClockwise(c) != clockwise {
		for i := n - 1; i >= 0; i-- { // the edge that arrives at a vertex now leaves from it
			dst = append(dst, geom.Vertex{Point: c[i].Point.Add(by), Bulge: -c[(i+n-1)%n].Bulge})
		}
		return dst
	}
	for _, v := range c {
		dst = append(dst, geom.Vertex{Point: v.Point.Add(by), Bulge: v.Bulge})
	}
	return dst
}

// runsClockwise tells which way round a contour runs that crosses itself nowhere.
func runsClockwise(c geom.Contour) bool {
	area := 0.0 // twice what is enclosed, in nm²
	for i, v := range c {
		w := c[(i+1)%len(c)]
		from, to := v.Sub(c[0].Point), w.Sub(c[0].Point)
		area += float64(float64(from.X)*float64(to.Y)) - float64(float64(from.Y)*float64(to.X))
		if v.Bulge != 0 {
			arc := geom.ArcOf(v, w.Point)
			area += float64(arc.R * arc.R * (arc.Turn - math.Sin(arc.Turn)))
		}
	}
	return area < 0
}

// encloses reports whether a point that lies on no edge of the polygon is inside.
func encloses(polygon []geom.Point, p geom.Point) bool {
	in := false
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if a.Y > b.Y {
			a, b = b, a
		}
		if a.Y <= p.Y && p.Y < b.Y && turn(a, b, p) > 0 {
			in = !in
		}
	}
	return in
}

// meet reports whether two closed segments have a point in common.
func meet(a, b, c, d geom.Point) bool {
	if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) ||
		max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	return turn(a, b, c)*turn(a, b, d) <= 0 && turn(c, d, a)*turn(c, d, b) <= 0
}

// between reports whether p, on the line through a and b, lies from a to b.
func between(a, b, p geom.Point) bool {
	return min(a.X, b.X) <= p.X && p.X <= max(a.X, b.X) &&
		min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y)
}

// turn is 1 where the way from a over b to c turns left, -1 where it turns
// right, 0 where the three lie on a line. It is exact.
func turn(a, b, c geom.Point) int {
	ab, ac := b.Sub(a), c.Sub(a)
	leftHigh, leftLow := product(ab.X, ac.Y)
	rightHigh, rightLow := product(ab.Y, ac.X)
	switch {
	case leftHigh > rightHigh, leftHigh == rightHigh && leftLow > rightLow:
		return 1
	case leftHigh == rightHigh && leftLow == rightLow:
		return 0
	}
	return -1
}

// product returns a*b in 128 bits, two's complement.
func product(a, b length.Length) (high int64, low uint64) {
	h, low := bits.Mul64(uint64(a), uint64(b))
	h -= uint64(a>>63)&uint64(b) + uint64(b>>63)&uint64(a)
	return int64(h), low
}

// showPoint prints a point in millimetres, exactly.
func showPoint(p geom.Point) string {
	return "(" + p.X.Decimal(length.Millimetres, 6) + ", " + p.Y.Decimal(length.Millimetres, 6) + ")"
}
