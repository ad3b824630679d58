package reuse

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// solid is a part as material: its body, the rectangle over all, less its cuts.
type solid struct {
	part  *model.Part
	body  geom.Rect
	thick Length
	bands [4]*model.Band // by model.Edge; nil where there is none
	cuts  []cut          // what is outside the body comes last, by model.Edge
}

// cut is what a solid lacks: a shape, from one depth below the drawn face to another.
type cut struct {
	shape
	depth  geom.Span
	kind   cutKind
	called string // "outlet urn"; empty of what has no name
	index  int    // in the part's own list of its kind; of outside, the model.Edge; -1 of a notch without a name
}

type cutKind int

const (
	outside cutKind = iota // what is beyond an edge of the body
	notch
	rounded // what a convex round corner of the outline takes off the body; its shape is the square about it
	opening
	recess
	bore
	sink // the countersink of a bore
)

var through = geom.Span{Lo: -far, Hi: far}

// solidOf reads a part that is as thick as said, whatever its own thickness; ok is
// false where its outline or a cut is of no shape that is known here.
func solidOf(part *model.Part, thick Length) (s *solid, ok bool) {
	s = &solid{part: part, body: part.Outline.Bounds(), thick: thick}
	s.cuts = make([]cut, 0, len(part.Bores)+len(part.Openings)+len(part.Recesses)+4)
	if !isRect(part.Outline, s.body) && !s.addNotches() {
		return nil, false
	}
	for i := range part.Openings {
		if o := &part.Openings[i]; !o.Notch && !s.add(o.Shape, through, opening, o.Name, i) {
			return nil, false
		}
	}
	for i := range part.Recesses {
		if r := &part.Recesses[i]; !s.add(r.Shape, s.from(r.Depth, false), recess, r.Name, i) {
			return nil, false
		}
	}
	for i := range part.Bores {
		s.addBore(&part.Bores[i], i)
	}
	for i := range part.Bands {
		s.bands[part.Bands[i].Edge] = &part.Bands[i]
	}
	s.addOutside()
	return s, true
}

// from is the depth of what is cut from a face.
func (s *solid) from(deep Length, behind bool) geom.Span {
	switch {
	case deep == 0 || deep >= s.thick:
		return through
	case behind:
		return geom.Span{Lo: s.thick - deep, Hi: far}
	}
	return geom.Span{Lo: -far, Hi: deep}
}

// add takes straight sides that lie on an edge of the body on beyond it, where there is
// nothing to cut.
func (s *solid) add(c geom.Contour, depth geom.Span, kind cutKind, name string, index int) bool {
	shape, ok := shapeOf(c)
	if shape.r == 0 {
		shape.core = s.onward(shape.core)
	}
	a := cut{shape, depth, kind, name, index}
	if !ok {
		ok = a.roundInside(c, s.body)
	}
	s.cuts = append(s.cuts, a)
	return ok
}

func (s *solid) onward(r geom.Rect) geom.Rect {
	if r.X.Lo <= s.body.X.Lo {
		r.X.Lo = -far
	}
	if r.X.Hi >= s.body.X.Hi {
		r.X.Hi = far
	}
	if r.Y.Lo <= s.body.Y.Lo {
		r.Y.Lo = -far
	}
	if r.Y.Hi >= s.body.Y.Hi {
		r.Y.Hi = far
	}
	return r
}

// addBore takes a countersink for a cylinder as deep as a cone of 90 degrees.
func (s *solid) addBore(b *model.Bore, index int) {
	ends := b.Middles()
	core := geom.R(ends[0].X, ends[0].Y, ends[1].X, ends[1].Y)
	s.cuts = append(s.cuts, cut{shape{core, b.Diameter / 2}, s.from(b.Depth, b.Far), bore, b.Name, index})
	if b.Sink > b.Diameter {
		s.cuts = append(s.cuts, cut{shape{core, b.Sink / 2}, s.from((b.Sink-b.Diameter)/2, b.Far), sink, b.Name, index})
	}
}

func (s *solid) addOutside() {
	all := geom.R(-far, -far, far, far)
	bottom, right, top, left := all, all, all, all
	bottom.Y.Hi, right.X.Lo, top.Y.Lo, left.X.Hi = s.body.Y.Lo, s.body.X.Hi, s.body.Y.Hi, s.body.X.Lo
	for e, r := range [...]geom.Rect{model.Bottom: bottom, model.RightEdge: right, model.Top: top, model.LeftEdge: left} {
		s.cuts = append(s.cuts, cut{shape{core: r}, through, outside, "", e})
	}
}

// plain reports whether nothing is cut in the body.
func (s *solid) plain() bool { return len(s.cuts) == 4 }
