package dxf

import (
	"iter"

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
	line  *model.Mark  // or a line from the first vertex to the second
	lie   *lie         // nil: where the part has it
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

// contour makes a contour. It stays until the next one is made.
func (r *room) contour(f *form) geom.Contour {
	c := f.given
	switch {
	case f.line != nil:
		r.made = append(r.made[:0], geom.Vertex{Point: f.line.From}, geom.Vertex{Point: f.line.To})
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
	if f.lie.tolerance > 0 && f.line == nil {
		r.points = appendChords(r.points[:0], r.moved, f.lie.tolerance)
		r.moved = r.moved[:0]
		for _, p := range r.points {
			r.moved = append(r.moved, geom.Vertex{Point: p})
		}
	}
	return r.moved
}
