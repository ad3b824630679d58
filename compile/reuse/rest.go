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
// all of it where part is nil, clear of all that is cut or drilled in it: on the piece's
// drawn face, kerf taken off, largest first. Those under 2 in (50 mm) either way are no use.
func (p *Pair) Rest(old *model.Part, part *model.Part, lay model.Lay, kerf Length) []geom.Rect {
	piece, ok := solidOf(old, old.Thickness)
	if !ok {
		return nil
	}
	left := []geom.Rect{piece.body}
	if part != nil {
		left = split(piece.body, back(part.Outline.Bounds(), lay), kerf)
	}
	for i := range piece.cuts {
		if c := &piece.cuts[i]; c.kind != outside {
			var next []geom.Rect
			for _, r := range left {
				next = append(next, split(r, c.bounds(), 0)...)
			}
			left = next
		}
	}
	largestFirst(left)
	return left
}

// back is where a rectangle of a part's face lies on the piece's.
func back(r geom.Rect, l model.Lay) geom.Rect {
	r = r.Shift(geom.Point{X: -l.Move.X, Y: -l.Move.Y})
	r = rect(r, model.Lay{Quarters: (4 - l.Quarters) % 4})
	return rect(r, model.Lay{Over: l.Over})
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
		a, b := along(old), along(new)
		if min(a.wide, a.thick)+remeasured < min(b.wide, b.thick) || max(a.wide, a.thick)+remeasured < max(b.wide, b.thick) {
			return nil, false
		}
		x, y = b.long, a.wide
		if old.Grain == model.GrainY {
			x, y = y, x
		}
		if rest.X.Size()+p.within < x || rest.Y.Size()+remeasured < y {
			return nil, false
		}
		return p.taken(rest, x, y, kerf), true
	}
	for _, l := range [...]model.Lay{{}, {Quarters: 1}} {
		wide, high := x, y
		if l.Quarters == 1 {
			wide, high = y, x
		}
		if runs(old, new, l) && wide <= rest.X.Size()+p.within && high <= rest.Y.Size()+p.within {
			return p.taken(rest, wide, high, kerf), true
		}
	}
	return nil, false
}

// taken is what is left of a rectangle once its lower left is cut out of it.
func (p *Pair) taken(rest geom.Rect, wide, high, kerf Length) []geom.Rect {
	at := geom.R(rest.X.Lo, rest.Y.Lo, rest.X.Lo+wide, rest.Y.Lo+high)
	left := split(rest, at, kerf)
	largestFirst(left)
	return left
}

// split cuts a rectangle from edge to edge along the sides of what is taken, first across the
// way that leaves the larger piece whole. What is too small is left out.
func split(r, taken geom.Rect, kerf Length) []geom.Rect {
	if !r.Overlaps(taken) {
		return []geom.Rect{r}
	}
	t := taken.Grow(kerf)
	left, right, below, above := r, r, r, r
	left.X.Hi, right.X.Lo, below.Y.Hi, above.Y.Lo = t.X.Lo, t.X.Hi, t.Y.Lo, t.Y.Hi
	if max(size(left), size(right)) >= max(size(below), size(above)) {
		below.X, above.X = r.X.Intersect(taken.X), r.X.Intersect(taken.X)
	} else {
		left.Y, right.Y = r.Y.Intersect(taken.Y), r.Y.Intersect(taken.Y)
	}
	var out []geom.Rect
	for _, s := range [...]geom.Rect{left, right, below, above} {
		if s.X.Size() >= useful && s.Y.Size() >= useful {
			out = append(out, s)
		}
	}
	return out
}

// size orders rectangles: the area in mm2, 0 where it is of no use.
func size(r geom.Rect) float64 {
	x, y := r.X.Size(), r.Y.Size()
	if x < useful || y < useful {
		return 0
	}
	return float64(x.MM() * y.MM())
}

func largestFirst(rects []geom.Rect) {
	slices.SortStableFunc(rects, func(a, b geom.Rect) int { return cmp.Compare(size(b), size(a)) })
}
