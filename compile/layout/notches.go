package layout

import (
	"slices"

	"barwright/compile/geom"
)

// mostCorners is how many corners an outline has whose notches are looked for; one with more
// counts as the rectangle round it.
const mostCorners = 60

// notches are disjoint rectangles that an outline leaves free of the rectangle round it, from the
// lower left corner of that. Of an edge that slopes or bends all of the rectangle round it counts
// as wood.
func notches(outline geom.Contour) (out []geom.Rect) {
	if len(outline) <= 4 || len(outline) > mostCorners {
		return nil
	}
	box := outline.Bounds()
	outline = outline.Shifted(geom.Point{X: -box.X.Lo, Y: -box.Y.Lo})
	var edges []geom.Rect
	var xs, ys []Length
	for i, v := range outline {
		e := geom.Contour{v, {Point: outline[(i+1)%len(outline)].Point}}.Bounds()
		edges = append(edges, e)
		xs, ys = append(xs, e.X.Lo, e.X.Hi), append(ys, e.Y.Lo, e.Y.Hi)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	free := func(r geom.Rect) bool {
		mid := geom.Point{X: r.X.Mid(), Y: r.Y.Mid()}
		return !slices.ContainsFunc(edges, r.Overlaps) && outline.Clip(mid, mid) == nil
	}
	var below []geom.Rect // that end where a row begins
	for k := range ys[1:] {
		row := freeOf(xs, geom.Span{Lo: ys[k], Hi: ys[k+1]}, free)
		for i := range row {
			for _, b := range below {
				if b.X == row[i].X {
					row[i].Y.Lo = b.Y.Lo
				}
			}
		}
		for _, b := range below {
			if !slices.ContainsFunc(row, func(r geom.Rect) bool { return r.Contains(b) }) {
				out = append(out, b)
			}
		}
		below = row
	}
	return append(out, below...)
}

// reached are those notches that something gap apart reaches into.
func reached(notches []geom.Rect, gap Length) (out []geom.Rect) {
	for _, r := range notches {
		if min(r.X.Size(), r.Y.Size()) > gap {
			out = append(out, r)
		}
	}
	return out
}

// freeOf joins the cells of a row that are free.
func freeOf(xs []Length, y geom.Span, free func(geom.Rect) bool) (row []geom.Rect) {
	for i := range xs[1:] {
		r := geom.Rect{X: geom.Span{Lo: xs[i], Hi: xs[i+1]}, Y: y}
		switch n := len(row); {
		case !free(r):
		case n > 0 && row[n-1].X.Hi == r.X.Lo:
			row[n-1].X.Hi = r.X.Hi
		default:
			row = append(row, r)
		}
	}
	return row
}
