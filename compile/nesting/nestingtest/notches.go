package nestingtest

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/nesting"
)

// spaced tells which two things on a sheet lie nearer than a kerf, notches being no part of a
// piece. The offcut is free of all pieces.
func spaced(j *nesting.Job, u nesting.Used) error {
	var all [][]geom.Rect
	for _, p := range u.Placed {
		all = append(all, cells(j.Pieces[p.Piece], p))
	}
	if u.Offcut != (geom.Rect{}) {
		all = append(all, []geom.Rect{u.Offcut})
	}
	for i, a := range all {
		for k, b := range all[:i] {
			for _, r := range a {
				if slices.ContainsFunc(b, func(o geom.Rect) bool { return near(r, o, j.Kerf) }) {
					return fmt.Errorf("%d and %d are no kerf apart: %v, %v", i, k, a, b)
				}
			}
		}
	}
	return nil
}

// cells are the rectangles between all lines of a piece's edges and notches that lie in no notch,
// where they lie on the sheet.
func cells(p nesting.Piece, at nesting.Placed) (out []geom.Rect) {
	xs, ys := []geom.Length{0, p.X}, []geom.Length{0, p.Y}
	for _, n := range p.Notches {
		xs, ys = append(xs, n.X.Lo, n.X.Hi), append(ys, n.Y.Lo, n.Y.Hi)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	box := geom.R(0, 0, p.X, p.Y)
	for i := 1; i < len(xs); i++ {
		for k := 1; k < len(ys); k++ {
			c := geom.R(xs[i-1], ys[k-1], xs[i], ys[k])
			gone := func(n geom.Rect) bool { return n.Contains(c) }
			if c.X.Size() == 0 || c.Y.Size() == 0 || !box.Contains(c) || slices.ContainsFunc(p.Notches, gone) {
				continue
			}
			if at.Turned {
				c = geom.R(p.Y-c.Y.Hi, c.X.Lo, p.Y-c.Y.Lo, c.X.Hi)
			}
			out = append(out, c.Shift(at.At))
		}
	}
	return out
}
