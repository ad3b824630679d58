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

// Dir is a signed axis of a frame.
type Dir struct {
	Axis Axis
	Neg  bool
}

func (d Dir) String() string {
	if d.Neg {
		return "-" + d.Axis.String()
	}
	return "+" + d.Axis.String()
}

// Opposite is the direction the other way along the same axis.
func (d Dir) Opposite() Dir { return Dir{d.Axis, !d.Neg} }

// Onward is a box taken further in a direction.
func (b Box) Onward(d Dir, by Length) Box {
	s := b.Along(d.Axis)
	if d.Neg {
		s.Lo -= by
	} else {
		s.Hi += by
	}
	return b.With(d.Axis, s)
}

// Placement puts a part into its frame. X and Y are where the part's own x and
// y axes point; Out is where the drawn face looks. Box is the part's extent.
type Placement struct {
	Frame     Frame
	Box       Box
	X, Y, Out Dir
}

// Local returns where a box of the same frame lies on the part's face, and how
// deep below the drawn face it reaches from and to.
func (p Placement) Local(b Box) (face Rect, depth Span) {
	return Rect{p.project(b, p.X), p.project(b, p.Y)}, p.project(b, p.Out.Opposite())
}

func (p Placement) project(b Box, d Dir) Span {
	whole, s := p.Box.Along(d.Axis), b.Along(d.Axis)
	if d.Neg {
		return Span{whole.Hi - s.Hi, whole.Hi - s.Lo}
	}
	return Span{s.Lo - whole.Lo, s.Hi - whole.Lo}
}

// Behind returns the space behind a rectangle on the part's face, as deep as the part.
func (p Placement) Behind(face Rect) Box {
	out := p.Box
	for _, side := range [...]struct {
		to Dir
		on Span
	}{{p.X, face.X}, {p.Y, face.Y}} {
		whole := p.Box.Along(side.to.Axis)
		span := side.on.Shift(whole.Lo)
		if side.to.Neg {
			span = Span{whole.Hi - side.on.Hi, whole.Hi - side.on.Lo}
		}
		out = out.With(side.to.Axis, span)
	}
	return out
}

// Grow moves every face of the box outwards, or inwards if d is negative.
func (b Box) Grow(d Length) Box { return Box{b.U.Grow(d), b.V.Grow(d), b.Z.Grow(d)} }

// Place puts a part into its frame as it is seen from the side that out points
// to: x right and y up as that person sees it. Looking down, the person stands
// where v points to.
func Place(f Frame, b Box, out Dir) Placement {
	p := Placement{Frame: f, Box: b, Out: out, Y: Dir{Axis: Z}}
	switch out.Axis {
	case V:
		p.X = Dir{U, out.Neg}
	case U:
		p.X = Dir{V, !out.Neg}
	case Z:
		p.X, p.Y = Dir{Axis: U}, Dir{V, !out.Neg}
	}
	return p
}

// Blank returns the part's face before anything is cut: its rectangle with the
// lower left at the origin.
func (p Placement) Blank() Rect {
	face, _ := p.Local(p.Box)
	return face
}

// Thickness returns the part's extent below its drawn face.
func (p Placement) Thickness() Length { return p.Box.Along(p.Out.Axis).Size() }
