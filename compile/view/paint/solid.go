package paint

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
)

// Solid is a convex body as the painter orders it, with the faces that are seen of what fills it:
// an upright prism, at first a box of a frame.
type Solid struct {
	Of     int    // the caller's number for it; pieces of one solid have the same
	Faces  []Face // in the order in which they are painted
	plan   []Vec  // its corners, from above
	lo, hi float64
	axes   []Vec // square to its upright faces
}

// body is the solid of a box of a frame, without faces.
func body(of int, f geom.Frame, b geom.Box, moved Vec) Solid {
	s := Solid{Of: of, lo: float64(b.Z.Lo) + moved.Z, hi: float64(b.Z.Hi) + moved.Z}
	s.axes = []Vec{Direction(f, geom.Dir{Axis: geom.U}), Direction(f, geom.Dir{Axis: geom.V})}
	for _, c := range [...][2]geom.Length{{b.U.Lo, b.V.Lo}, {b.U.Hi, b.V.Lo}, {b.U.Hi, b.V.Hi}, {b.U.Lo, b.V.Hi}} {
		s.plan = append(s.plan, At(f, geom.Spot{U: c[0], V: c[1]}).Add(Vec{X: moved.X, Y: moved.Y}))
	}
	return s
}

// Face is a plane area of a solid.
type Face struct {
	Ring  []Vec
	Shade Shade
	Cut   int // 0 of the body itself; n of its n-th cut, which lies on a face painted before
}

// Block is the solid that fills a box of a frame, moved.
func (e Eye) Block(of int, f geom.Frame, b geom.Box, moved Vec) Solid {
	at := geom.Place(f, b, geom.Dir{Axis: geom.Z})
	return e.Prism(of, at, geom.RectContour(at.Blank()), nil, moved)
}

// Cut is what is cut from the face of a prism.
type Cut struct {
	Shape geom.Contour
	Depth geom.Length // from the drawn face; 0: through
}

// Prism is the solid of an outline as thick as its placement, moved, with the cuts on the face
// that is seen.
func (e Eye) Prism(of int, at geom.Placement, outline geom.Contour, cuts []Cut, moved Vec) Solid {
	bounds := outline.Bounds()
	s := body(of, at.Frame, at.Behind(bounds), moved)
	out := Direction(at.Frame, at.Out)
	drawn := e.Sees(out)
	thick := float64(at.Thickness())
	near, far := 0.0, thick
	if !drawn {
		near, far, out = thick, 0, out.Scale(-1)
	}
	p := prism{at, moved}
	s.Faces = e.sides(p, outline, near, far)
	if !e.Sees(out) {
		return s
	}
	front := func(c geom.Contour, cut int) {
		s.Faces = append(s.Faces, Face{p.ring(pieces(c), near), e.Shade(out), cut})
	}
	front(outline, 0)
	for i, c := range cuts {
		if c.Depth == 0 || drawn {
			front(c.Shape, i+1)
		}
	}
	return s
}

// sides are the faces round an outline that are seen, the farthest first.
func (e Eye) sides(p prism, outline geom.Contour, near, far float64) (faces []Face) {
	for i, v := range outline {
		to := outline[(i+1)%len(outline)].Point
		points := arc(v, to)
		var seen []geom.Point
		var out Vec
		end := func() {
			if len(seen) > 1 {
				ring := p.ring(seen, near)
				back := p.ring(seen, far)
				slices.Reverse(back)
				faces = append(faces, Face{Ring: append(ring, back...), Shade: e.Shade(out)})
			}
			seen = nil
		}
		for k := 1; k < len(points); k++ {
			a, b := points[k-1], points[k]
			looks := p.across(a, b)
			if !e.Sees(looks) {
				end()
				continue
			}
			if out = looks; seen == nil {
				seen = append(seen, a)
			}
			seen = append(seen, b)
		}
		end()
	}
	slices.SortStableFunc(faces, func(a, b Face) int {
		return cmp.Compare(middle(a.Ring).dot(e.toward), middle(b.Ring).dot(e.toward))
	})
	return faces
}

// chordTurn is the turn of the chords that stand for an arc.
const chordTurn = 15 * math.Pi / 180

// pieces returns the corners of a contour, arcs as chords.
func pieces(c geom.Contour) []geom.Point {
	return c.AppendPieces(nil, func(a geom.Arc) float64 { return max(2, math.Ceil(math.Abs(a.Turn)/chordTurn)) })
}

// arc returns the points of one edge, both ends included.
func arc(v geom.Vertex, to geom.Point) []geom.Point {
	if v.Bulge == 0 {
		return []geom.Point{v.Point, to}
	}
	return pieces(geom.Contour{v, {Point: to}})
}

// prism puts points of a part's face into the room.
type prism struct {
	at    geom.Placement
	moved Vec
}

func (p prism) ring(points []geom.Point, depth float64) []Vec {
	ring := make([]Vec, len(points))
	for i, c := range points {
		ring[i] = p.point(c, depth)
	}
	return ring
}

// point is where a point of the face lies, so deep below the drawn one.
func (p prism) point(c geom.Point, depth float64) Vec {
	var spot [3]float64
	for _, on := range [...]struct {
		to geom.Dir
		by float64
	}{{p.at.X, float64(c.X)}, {p.at.Y, float64(c.Y)}, {p.at.Out.Opposite(), depth}} {
		span := p.at.Box.Along(on.to.Axis)
		spot[on.to.Axis] = float64(span.Lo) + on.by
		if on.to.Neg {
			spot[on.to.Axis] = float64(span.Hi) - on.by
		}
	}
	return place(p.at.Frame, spot[geom.U], spot[geom.V], spot[geom.Z]).Add(p.moved)
}

// across is the direction in which the side along an edge of the outline looks.
func (p prism) across(a, b geom.Point) Vec {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if long == 0 {
		return Vec{}
	}
	x, y := Direction(p.at.Frame, p.at.X), Direction(p.at.Frame, p.at.Y)
	return x.Scale(dy / long).Add(y.Scale(-dx / long))
}

// place is a spot of a frame in the room.
func place(f geom.Frame, u, v, z float64) Vec {
	sin, cos := f.Turn.SinCos()
	return Vec{
		float64(f.Origin.X) + float64(u*cos) - float64(v*sin),
		float64(f.Origin.Y) + float64(u*sin) + float64(v*cos), z,
	}
}

// At is a spot of a frame in the room.
func At(f geom.Frame, s geom.Spot) Vec { return place(f, float64(s.U), float64(s.V), float64(s.Z)) }

// Direction is a direction of a frame in the room, of length 1.
func Direction(f geom.Frame, d geom.Dir) Vec {
	sin, cos := f.Turn.SinCos()
	v := [...]Vec{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1}}[d.Axis]
	if d.Neg {
		return v.Scale(-1)
	}
	return v
}

// middle is the middle of the corners.
func middle(ring []Vec) (m Vec) {
	for _, p := range ring {
		m = m.Add(p)
	}
	return m.Scale(1 / float64(len(ring)))
}
