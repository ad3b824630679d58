package reuse

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// useful is the least size of an offcut that is of any use, about 2 in.
const useful = 50 * length.Millimetre

// Rest lists the rectangles that are left of a piece beside a part cut out of it, or of
// all of it where part is nil, clear of all that is cut or drilled in it: on the piece's drawn face,
// kerf taken off, largest first. Those under 2 in (50 mm) either way are no use; of a stick
// and a bar that holds for the length alone.
func (p *Pair) Rest(old *model.Part, part *model.Part, lay model.Lay, kerf Length) []geom.Rect {
	piece, ok := solidOf(old, old.Thickness)
	if !ok {
		return nil
	}
	o := offcuts{least: least(old), left: []geom.Rect{piece.body}}
	if part != nil {
		taken := back(part.Outline.Bounds(), lay)
		if o.least.X == 0 {
			taken.X = piece.body.X
		}
		if o.least.Y == 0 {
			taken.Y = piece.body.Y
		}
		o.take(taken, kerf)
	}
	for i := range piece.cuts {
		if c := &piece.cuts[i]; c.kind != outside {
			o.take(c.bounds(), 0)
		}
	}
	return o.sorted()
}

// Holds reports whether a part can be cut out of such a rectangle of the piece, and
// what is left of the rectangle then.
func (p *Pair) Holds(rest geom.Rect, old, new *model.Part, kerf Length) (left []geom.Rect, ok bool) {
	board := p.Board(old)
	if board < 0 || board != p.Board(new) {
		return nil, false
	}
	x, y := new.Size()
	if old.Kind == model.Lumber {
		rolled := *new
		rolled.Openings, rolled.Recesses, rolled.Bores, rolled.Outline = nil, nil, nil, geom.RectContour(new.Outline.Bounds())
		on, ok := roll(&rolled, old)
		if !ok {
			return nil, false
		}
		if x, y = on.Size(); on.Grain != old.Grain {
			x, y = y, x
		}
		return p.holds(rest, old, x, y, kerf)
	}
	for _, l := range [...]model.Lay{{}, {Quarters: 1}} {
		wide, high := x, y
		if l.Quarters == 1 {
			wide, high = y, x
		}
		if runs(old, new, l) {
			if left, ok := p.holds(rest, old, wide, high, kerf); ok {
				return left, true
			}
		}
	}
	return nil, false
}

func (p *Pair) holds(rest geom.Rect, old *model.Part, wide, high, kerf Length) ([]geom.Rect, bool) {
	if wide > rest.X.Size()+p.within || high > rest.Y.Size()+p.within {
		return nil, false
	}
	o := offcuts{least: least(old), left: []geom.Rect{rest}}
	o.take(geom.R(rest.X.Lo, rest.Y.Lo, rest.X.Lo+wide, rest.Y.Lo+high), kerf)
	return o.sorted(), true
}

// back is where a rectangle of a part's face lies on the piece's.
func back(r geom.Rect, l model.Lay) geom.Rect {
	r = r.Shift(geom.Point{X: -l.Move.X, Y: -l.Move.Y})
	r = rect(r, model.Lay{Quarters: (4 - l.Quarters) % 4})
	return rect(r, model.Lay{Over: l.Over})
}

// offcuts are rectangles that are left, each at least as large as is useful.
type offcuts struct {
	least geom.Point
	left  []geom.Rect
}

// least is the size under which an offcut of a piece is no use.
func least(old *model.Part) geom.Point {
	x, y := old.Size()
	switch old.Kind {
	case model.Lumber, model.Steel:
		if old.Grain == model.GrainX || old.Grain == model.GrainNone && x >= y {
			return geom.Point{X: useful}
		}
		return geom.Point{Y: useful}
	}
	return geom.Point{X: useful, Y: useful}
}

// take cuts what is left from edge to edge along the sides of a rectangle, first the
// way that leaves the larger piece.
func (o *offcuts) take(taken geom.Rect, kerf Length) {
	var next []geom.Rect
	for _, r := range o.left {
		if !r.Overlaps(taken) {
			next = append(next, r)
			continue
		}
		t := taken.Grow(kerf)
		left, right, below, above := r, r, r, r
		left.X.Hi, right.X.Lo, below.Y.Hi, above.Y.Lo = t.X.Lo, t.X.Hi, t.Y.Lo, t.Y.Hi
		if max(o.area(left), o.area(right)) >= max(o.area(below), o.area(above)) {
			below.X, above.X = r.X.Intersect(taken.X), r.X.Intersect(taken.X)
		} else {
			left.Y, right.Y = r.Y.Intersect(taken.Y), r.Y.Intersect(taken.Y)
		}
		for _, s := range [...]geom.Rect{left, right, below, above} {
			if o.area(s) > 0 {
				next = append(next, s)
			}
		}
	}
	o.left = next
}

// area is in mm2; 0 of what is no use.
func (o *offcuts) area(r geom.Rect) float64 {
	x, y := r.X.Size(), r.Y.Size()
	if min(x, y) <= 0 || x < o.least.X || y < o.least.Y {
		return 0
	}
	return float64(x.MM() * y.MM())
}

func (o *offcuts) sorted() []geom.Rect {
	slices.SortStableFunc(o.left, func(a, b geom.Rect) int { return cmp.Compare(o.area(b), o.area(a)) })
	return o.left
}
