package dxf

import (
	"iter"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// form is what a contour is made of, and how it lies. It is small beside the contour,
// which is made where it is needed.
type form struct {
	given geom.Contour // as the model has it
	bore  *model.Bore  // otherwise that of a bore,
	sunk  bool         // or of its countersink,
	line  []geom.Point // or an open line through points
	lie   *lie         // nil: where the part has it

	open    []model.Edge  // where a recess runs out over an edge
	overrun length.Length // by which it then goes on
}

// lie is where contours lie in a file; their arcs are chords where there is a tolerance.
type lie struct {
	motion
	tolerance length.Length
}

// lying yields shapes where they lie.
func lying(all iter.Seq[shape], m motion, tolerance length.Length) iter.Seq[shape] {
	if m == still && tolerance == 0 {
		return all
	}
	at := &lie{m, tolerance}
	return func(yield func(shape) bool) {
		for s := range all {
			s.lie = at
			if !yield(s) {
				return
			}
		}
	}
}

// room is where contours are made.
type room struct {
	made, moved, oriented geom.Contour
	points                []geom.Point
}

// round reports whether a drill makes the contour: it is a circle however arcs are cut.
func (f *form) round() bool { return f.bore != nil && (f.sunk || f.bore.Slot == 0) }

// drawn makes a contour as it is written: a recess with its overrun.
func (r *room) drawn(f *form) geom.Contour {
	if f.overrun == 0 || len(f.open) == 0 {
		return r.contour(f)
	}
	longer := *f
	longer.given = runOn(f.given, f.open, f.overrun)
	return r.contour(&longer)
}

// runOn takes the corners of a contour at edges of its box out by a length.
func runOn(c geom.Contour, over []model.Edge, by length.Length) geom.Contour {
	box, out := c.Bounds(), slices.Clone(c)
	for i, v := range c {
		for _, e := range over {
			switch {
			case e == model.Bottom && v.Y == box.Y.Lo:
				out[i].Y -= by
			case e == model.RightEdge && v.X == box.X.Hi:
				out[i].X += by
			case e == model.Top && v.Y == box.Y.Hi:
				out[i].Y += by
			case e == model.LeftEdge && v.X == box.X.Lo:
				out[i].X -= by
			}
		}
	}
	return out
}

// contour makes a contour. It stays until the next one is made.
func (r *room) contour(f *form) geom.Contour {
	c := f.given
	switch {
	case f.line != nil:
		r.made = r.made[:0]
		for _, p := range f.line {
			r.made = append(r.made, geom.Vertex{Point: p})
		}
		c = r.made
	case f.bore != nil:
		bore := *f.bore
		if f.sunk {
			bore.Diameter = bore.Sink
		}
		r.made = bore.AppendShape(r.made[:0])
		c = r.made
	}
	if f.lie == nil {
		return c
	}
	r.moved = f.lie.appendContour(r.moved[:0], c)
	if f.lie.tolerance > 0 && f.line == nil && !f.round() {
		r.points = appendChords(r.points[:0], r.moved, f.lie.tolerance)
		r.moved = r.moved[:0]
		for _, p := range r.points {
			r.moved = append(r.moved, geom.Vertex{Point: p})
		}
	}
	return r.moved
}
