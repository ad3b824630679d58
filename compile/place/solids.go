package place

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/setting"
)

// solids is the wood of a part as boxes: its outline cut into upright strips, less its
// openings, each as the rectangle about it. Round corners and ends count as square ones,
// and so do the pipes that go through them.
func solids(p *model.Part) []setting.Solid {
	boxes := []geom.Box{p.Placement.Box}
	if len(p.Outline) != 4 {
		boxes = boxes[:0]
		for _, r := range strips(p.Outline) {
			boxes = append(boxes, p.Placement.Behind(r))
		}
	}
	for i := range p.Openings {
		opening := p.Placement.Behind(p.Openings[i].Shape.Bounds())
		var left []geom.Box
		for _, b := range boxes {
			left = append(left, setting.Less(b, opening)...)
		}
		boxes = left
	}
	out := make([]setting.Solid, len(boxes))
	for i, b := range boxes {
		out[i] = setting.Solid{Name: p.Named(), Frame: p.Placement.Frame, Box: b}
	}
	return out
}

// strips cuts an outline into rectangles between the places along x where it has corners.
// An arc counts as its chord, and a slanting edge as level at its middle.
func strips(outline geom.Contour) []geom.Rect {
	var xs []geom.Length
	for _, v := range outline {
		xs = append(xs, v.X)
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	var out []geom.Rect
	for i := range len(xs) - 1 {
		at := geom.Span{Lo: xs[i], Hi: xs[i+1]}
		ys := crossings(outline, at)
		for k := 0; k+1 < len(ys); k += 2 {
			out = joined(out, geom.Rect{X: at, Y: geom.Span{Lo: ys[k], Hi: ys[k+1]}})
		}
	}
	return out
}

// joined adds a rectangle, or makes one that ends where it begins longer.
func joined(rects []geom.Rect, r geom.Rect) []geom.Rect {
	for i := range rects {
		if rects[i].Y == r.Y && rects[i].X.Hi == r.X.Lo {
			rects[i].X.Hi = r.X.Hi
			return rects
		}
	}
	return append(rects, r)
}

// crossings are the heights at which the edges of an outline pass the middle of a strip.
func crossings(outline geom.Contour, at geom.Span) []geom.Length {
	var ys []geom.Length
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if geom.Between(a.X, b.X).Contains(at) {
			share := (float64(at.Lo) + float64(at.Size())/2 - float64(a.X)) / float64(b.X-a.X)
			ys = append(ys, a.Y+geom.Length(float64(share*float64(b.Y-a.Y))))
		}
	}
	slices.Sort(ys)
	return ys
}

// hull is the least box about solids of one frame.
func hull(solids []setting.Solid) geom.Box {
	if len(solids) == 0 {
		return geom.Box{}
	}
	out := solids[0].Box
	for _, s := range solids[1:] {
		out = out.Union(s.Box)
	}
	return out
}

// goesInto reports whether a box of a frame reaches behind the face of a wall, from before it:
// what lies behind it altogether stands in another part of the room.
func goesInto(f geom.Frame, b geom.Box, w *model.Wall) bool {
	at := w.Frame.Around(f, b)
	return at.V.Lo < 0 && at.V.Hi > play && at.U.Lo < w.Length-play && at.U.Hi > play
}

// farFrom reports whether all that is no further than so far from a point lies clear of a wall.
func farFrom(w *model.Wall, p geom.Point, far geom.Length) bool {
	d := p.Sub(w.Frame.Origin)
	return max(d.X, -d.X, d.Y, -d.Y) > w.Length+far
}

// cutTo is a box of a frame as it is once it is cut to a wall that it reaches into, as what is
// scribed is, and a counter in a corner that leans in.
func cutTo(f geom.Frame, b geom.Box, w *model.Wall) geom.Box {
	sin, cos := (f.Turn - w.Frame.Turn).SinCos()
	axis, off := geom.U, sin // off the wall for each step along the axis
	if math.Abs(cos) > math.Abs(sin) {
		axis, off = geom.V, cos
	}
	deep := geom.Length(0) // behind the wall
	for _, corner := range f.Corners(b.U, b.V) {
		if along, v := w.Frame.Local(corner); along >= 0 && along <= w.Length {
			deep = max(deep, -v)
		}
	}
	s, by := b.Along(axis), geom.Length(math.Ceil(float64(deep)/math.Abs(off)))
	if off > 0 {
		s.Lo += by
	} else {
		s.Hi -= by
	}
	return b.With(axis, s)
}
