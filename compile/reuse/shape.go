package reuse

import (
	"math"

	"barwright/compile/geom"
)

// far is beyond any part.
const far Length = 1 << 50

// shape is a rectangle grown all round by a radius, its corners rounded: a rectangle
// where the radius is 0, a disc or a slot where the rectangle has no area.
type shape struct {
	core geom.Rect
	r    Length
}

// shapeOf reads a contour; ok is false where it is no such shape.
func shapeOf(c geom.Contour) (s shape, ok bool) {
	bounds := c.Bounds()
	if isRect(c, bounds) {
		return shape{core: bounds}, true
	}
	radius, ok := c.Rounding()
	s = shape{core: bounds.Grow(-radius), r: radius}
	if !ok || s.core.X.Size() < 0 || s.core.Y.Size() < 0 {
		return shape{}, false
	}
	for i, v := range c {
		w := c[(i+1)%len(c)]
		along := v.Bulge == 0 && (v.X == w.X || v.Y == w.Y)
		if !along && (v.Bulge == 0 || s.toCore(v.Point) != s.toCore(w.Point)) || !s.onSide(v.Point) {
			return shape{}, false
		}
	}
	return s, math.Abs(math.Abs(c.Area())-s.area()) < 1e-3
}

func isRect(c geom.Contour, bounds geom.Rect) bool {
	if len(c) != 4 {
		return false
	}
	for i, v := range c {
		onX, onY := v.X == bounds.X.Lo || v.X == bounds.X.Hi, v.Y == bounds.Y.Lo || v.Y == bounds.Y.Hi
		w := c[(i+1)%4]
		if v.Bulge != 0 || !onX || !onY || v.X != w.X && v.Y != w.Y {
			return false
		}
	}
	return true
}

// toCore is the core's nearest point.
func (s shape) toCore(p geom.Point) geom.Point {
	return geom.Point{X: min(max(p.X, s.core.X.Lo), s.core.X.Hi), Y: min(max(p.Y, s.core.Y.Lo), s.core.Y.Hi)}
}

func (s shape) onSide(p geom.Point) bool {
	b := s.bounds()
	return p.X == b.X.Lo || p.X == b.X.Hi || p.Y == b.Y.Lo || p.Y == b.Y.Hi
}

func (s shape) bounds() geom.Rect { return s.core.Grow(s.r) }

// area is in mm2.
func (s shape) area() float64 {
	x, y, r := s.core.X.Size().MM(), s.core.Y.Size().MM(), s.r.MM()
	return float64(x*y) + float64(2*r*(x+y)) + float64(math.Pi*r*r)
}

// thousandths is the area in thousandths of a mm2.
func (s shape) thousandths() int64 { return int64(math.Round(1000 * s.area())) }

// contour runs counter-clockwise.
func (s shape) contour() geom.Contour {
	b := s.bounds()
	if s.r > 0 && s.core.X.Size() == 0 && s.core.Y.Size() == 0 {
		return geom.CircleContour(geom.Point{X: s.core.X.Lo, Y: s.core.Y.Lo}, s.r)
	}
	return geom.RoundedContour(b, s.r)
}

// beyond is how far s reaches out of t at most, square to t's outline, or most where that is
// less; negative where it stays inside, 0 where they touch.
func (s shape) beyond(t shape, most Length) Length {
	x, y := past(s.core.X, t.core.X), past(s.core.Y, t.core.Y)
	// The supporting lines of both, square to each direction, lie farthest apart along
	// an axis, or towards a corner where one core sticks out of the other both ways.
	out := max(x, y) + s.r - t.r
	if x > 0 && y > 0 && out < most {
		out = hypot(x, y) + s.r - t.r
	}
	return min(out, most)
}

// past is how far a span reaches past another, which it never does where that goes on.
func past(s, t geom.Span) Length {
	out := -far
	if t.Lo > -far {
		out = max(out, t.Lo-s.Lo)
	}
	if t.Hi < far {
		out = max(out, s.Hi-t.Hi)
	}
	return out
}

// overlaps reports whether two shapes share more than a strip of a width.
func (s shape) overlaps(t shape, strip Length) bool {
	x := max(t.core.X.Lo-s.core.X.Hi, s.core.X.Lo-t.core.X.Hi)
	y := max(t.core.Y.Lo-s.core.Y.Hi, s.core.Y.Lo-t.core.Y.Hi)
	reach := s.r + t.r - strip
	return max(x, y) < reach && (x <= 0 || y <= 0 || hypot(x, y) < reach)
}

// hypot is to the nearest nanometre.
func hypot(x, y Length) Length {
	a, b := float64(x), float64(y)
	return Length(math.Round(math.Sqrt(float64(a*a) + float64(b*b))))
}
