package geom

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
