package access

import (
	"math"

	"barwright/compile/geom"
)

// void is where a panel has no wood, or where a board stands on it: all that is
// within a radius of a core, which is a rectangle, a line or a point.
type void struct {
	core   geom.Rect
	radius geom.Length
}

// voidOf is the void of an opening in a blank: a circle, a rectangle whose corners
// may be round, or a notch, which goes on beyond the edges that it is open to.
func voidOf(shape geom.Contour, blank geom.Rect) void {
	if at, r, ok := shape.Circle(); ok {
		return void{geom.R(at.X, at.Y, at.X, at.Y), r}
	}
	bounds := shape.Bounds()
	r, ok := shape.Rounding()
	if !ok {
		return void{core: bounds}
	}
	core := bounds.Grow(-r)
	for _, open := range []struct {
		at     *geom.Length
		opens  bool
		beyond geom.Length
	}{
		{&core.X.Lo, bounds.X.Lo <= blank.X.Lo, -r}, {&core.X.Hi, bounds.X.Hi >= blank.X.Hi, r},
		{&core.Y.Lo, bounds.Y.Lo <= blank.Y.Lo, -r}, {&core.Y.Hi, bounds.Y.Hi >= blank.Y.Hi, r},
	} {
		if open.opens {
			*open.at += open.beyond
		}
	}
	return void{core, r}
}

// outlineVoids are the straight edges of an outline, and the discs of its arcs:
// these lie where the wood is missing.
func outlineVoids(outline geom.Contour) []void {
	var out []void
	for i, v := range outline {
		w := outline[(i+1)%len(outline)]
		if v.Bulge == 0 {
			out = append(out, void{core: geom.R(min(v.X, w.X), min(v.Y, w.Y), max(v.X, w.X), max(v.Y, w.Y))})
			continue
		}
		a := geom.ArcOf(v, w.Point)
		x, y := geom.Length(math.Round(a.CX)), geom.Length(math.Round(a.CY))
		out = append(out, void{geom.R(x, y, x, y), geom.Length(math.Round(a.R))})
	}
	return out
}

// apart is what lies between two voids, to the nearest nanometre. Where they run into
// one another it is less than 0: what the rectangles about them share, the lesser way.
func apart(a, b void) geom.Length {
	dx := max(0, a.core.X.Lo-b.core.X.Hi, b.core.X.Lo-a.core.X.Hi)
	dy := max(0, a.core.Y.Lo-b.core.Y.Hi, b.core.Y.Lo-a.core.Y.Hi)
	between := max(dx, dy)
	if dx > 0 && dy > 0 {
		between = geom.Length(math.Round(math.Hypot(float64(dx), float64(dy))))
	}
	between -= a.radius + b.radius
	if between >= 0 && !a.core.Overlaps(b.core) {
		return between
	}
	shared := a.bounds().Intersect(b.bounds())
	return -max(1, min(shared.X.Size(), shared.Y.Size()))
}

// shifted is the void moved on its face.
func (v void) shifted(by geom.Point) void { return void{v.core.Shift(by), v.radius} }

// bounds is the least rectangle that holds the void.
func (v void) bounds() geom.Rect { return v.core.Grow(v.radius) }
