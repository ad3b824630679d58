package geom

import "math"

// Angle is a turn in millionths of a degree: 90.4 degrees is 90 400 000.
type Angle int64

// Degree is one degree.
const Degree Angle = 1_000_000

// Degrees returns the angle as a number, for printing.
func (a Angle) Degrees() float64 { return float64(a) / float64(Degree) }

// SinCos returns sine and cosine. They are exact at quarter turns, and the
// same on every processor: no step may be fused.
func (a Angle) SinCos() (sin, cos float64) {
	a %= 360 * Degree
	if a < 0 {
		a += 360 * Degree
	}
	quarter, rest := a/(90*Degree), a%(90*Degree)
	s, c := 0.0, 1.0
	if rest != 0 {
		x := float64(rest) / float64(Degree) * math.Pi / 180
		s, c = series(x, x, 1), series(x, 1, 0)
	}
	switch quarter {
	case 1:
		return c, -s
	case 2:
		return -s, -c
	case 3:
		return -c, s
	}
	return s, c
}

// series sums the alternating power series of sine (first x, from 1) or cosine
// (first 1, from 0).
func series(x, term float64, n int) float64 {
	sum := term
	xx := float64(x * x)
	for range 16 {
		term = -float64(term*xx) / float64((n+1)*(n+2))
		sum += term
		n += 2
	}
	return sum
}

// Frame places local (u, v) in the room: u points along Turn from x towards y,
// v a quarter turn further; z is the room's.
type Frame struct {
	Origin Point
	Turn   Angle
}

// At returns the room point of local (u, v), to the nearest nanometre.
func (f Frame) At(u, v Length) Point {
	sin, cos := f.Turn.SinCos()
	x := float64(float64(u)*cos) - float64(float64(v)*sin)
	y := float64(float64(u)*sin) + float64(float64(v)*cos)
	return Point{f.Origin.X + Length(math.Round(x)), f.Origin.Y + Length(math.Round(y))}
}

// Local returns the (u, v) of a room point, to the nearest nanometre.
func (f Frame) Local(p Point) (u, v Length) {
	sin, cos := f.Turn.SinCos()
	d := p.Sub(f.Origin)
	x, y := float64(d.X), float64(d.Y)
	return Length(math.Round(float64(x*cos) + float64(y*sin))),
		Length(math.Round(float64(y*cos) - float64(x*sin)))
}

// Corners are the room points of a rectangle of (u, v), counter-clockwise as the frame
// sees it from its lower left.
func (f Frame) Corners(u, v Span) [4]Point {
	return [4]Point{f.At(u.Lo, v.Lo), f.At(u.Hi, v.Lo), f.At(u.Hi, v.Hi), f.At(u.Lo, v.Hi)}
}

// Around is the least box of the frame about a box of another.
func (f Frame) Around(of Frame, b Box) Box {
	var out Box
	for i, corner := range of.Corners(b.U, b.V) {
		u, v := f.Local(corner)
		at := Box{Span{u, u}, Span{v, v}, b.Z}
		if i == 0 {
			out = at
		}
		out = out.Union(at)
	}
	return out
}
