package dxf

import (
	"cmp"
	"fmt"
	"iter"
	"slices"

	"barwright/compile/geom"
)

// extent is a contour that is cut, and what is looked at before it is flattened.
type extent struct {
	box   geom.Rect // and a little round it
	index int32     // among the shapes
	way   way
	held  bool // by an outline
}

// way is how a contour is cut.
type way uint8

const (
	through way = iota
	around      // the outline, through too
	recessed
	drilled
)

func (w way) mayCross(o way) bool {
	return w == drilled && o >= recessed || o == drilled && w >= recessed
}

// validateTogether refuses contours that cross, that are there twice, and that reach
// beyond the outline; of those that are cut through, such that touch. A recess may run
// along any other contour: it is open there. A drill follows no contour: where a bore
// crosses a recess nothing is wrong, and validateBores knows of bores and the rest.
// There are as many shapes as count says.
//
// It sweeps over them from left to right, and holds 64 bytes for each meanwhile.
func validateTogether(all iter.Seq[shape], count int) error {
	contours, extents := extentsOf(all, count)
	var p, q []geom.Point // room for chords
	for i := range extents {
		a := &extents[i]
		p = p[:0]
		for j := i + 1; j < len(extents) && extents[j].box.X.Lo < a.box.X.Hi; j++ {
			b := &extents[j]
			if !a.box.Y.Overlaps(b.box.Y) || a.way.mayCross(b.way) {
				continue
			}
			if len(p) == 0 {
				p = contours[a.index].AppendChords(p)
			}
			if a.way == around && b.way != around && !reaches(p, b.box) {
				b.held = b.held || encloses(p, contours[b.index][0].Point)
				continue
			}
			q = contours[b.index].AppendChords(q[:0])
			how := relate(p, q)
			if how > touching || how == touching && a.way <= around && b.way <= around {
				first, second := min(a.index, b.index), max(a.index, b.index)
				return fmt.Errorf("%s and %s %s", named(all, first), named(all, second), how)
			}
			switch {
			case a.way == around && b.way != around:
				b.held = b.held || inside(q, p)
			case b.way == around && a.way != around:
				a.held = a.held || inside(p, q)
			}
		}
	}
	for i := range extents {
		if e := &extents[i]; e.way != around && !e.held {
			return fmt.Errorf("%s lies beyond the outline", named(all, e.index))
		}
	}
	return nil
}

// extentsOf lists the shapes' contours, and the extents of those that are cut from the
// left.
func extentsOf(all iter.Seq[shape], count int) ([]geom.Contour, []extent) {
	contours, extents := make([]geom.Contour, 0, count), make([]extent, 0, count)
	for s := range all {
		if s.cut() {
			extents = append(extents, extent{box: s.contour.Bounds().Grow(shortest), index: int32(len(contours)), way: s.way()})
		}
		contours = append(contours, s.contour)
	}
	slices.SortFunc(extents, func(a, b extent) int {
		if a.box.X.Lo != b.box.X.Lo {
			return cmp.Compare(a.box.X.Lo, b.box.X.Lo)
		}
		return cmp.Compare(a.index, b.index)
	})
	return contours, extents
}

// cut reports whether the table or a drill follows the shape; the outline counts where
// it is cut already.
func (s *shape) cut() bool { return s.kind != mark && s.kind != sheet }

func (s *shape) way() way {
	switch s.role {
	case "outline":
		return around
	case "recess":
		return recessed
	case "bore", "slot":
		return drilled
	}
	return through
}

// named says which shape it is that has an index.
func named(all iter.Seq[shape], index int32) string {
	for s := range all {
		if index == 0 {
			return fmt.Sprintf("%s %q of part %s", s.role, s.name, s.part)
		}
		index--
	}
	return ""
}

// relation tells how two contours lie to one another.
type relation int

const (
	clear relation = iota // neither comes near the other
	touching
	crossing
	same
)

func (r relation) String() string {
	return [...]string{"keep clear", "touch", "cross", "are the same"}[r]
}

// relate looks at two polygons. What is nearer than the shortest edge touches.
func relate(p, q []geom.Point) relation {
	touch := false
	for i, a := range p {
		b := p[(i+1)%len(p)]
		edge := geom.R(a.X, a.Y, a.X, a.Y).Union(geom.R(b.X, b.Y, b.X, b.Y)).Grow(shortest)
		for j, c := range q {
			d := q[(j+1)%len(q)]
			if max(c.X, d.X) < edge.X.Lo || min(c.X, d.X) > edge.X.Hi || max(c.Y, d.Y) < edge.Y.Lo || min(c.Y, d.Y) > edge.Y.Hi {
				continue
			}
			nearest := min(off(c, a, b), off(d, a, b), off(a, c, d), off(b, c, d))
			switch {
			case nearest <= float64(shortest):
				touch = true
			case meet(a, b, c, d):
				return crossing
			}
		}
	}
	if !touch {
		return clear
	}
	pIn, pOut := sides(p, q)
	qIn, qOut := sides(q, p)
	switch {
	case pIn && pOut || qIn && qOut:
		return crossing
	case !pIn && !pOut && !qIn && !qOut:
		return same
	}
	return touching
}

// sides reports whether corners and middles of edges of one polygon are inside and
// outside of another.
func sides(p, of []geom.Point) (in, out bool) {
	for i, a := range p {
		for _, x := range [...]geom.Point{a, middle(a, p[(i+1)%len(p)])} {
			if near(x, of) {
				continue
			}
			if encloses(of, x) {
				in = true
			} else {
				out = true
			}
		}
	}
	return in, out
}

// inside reports whether a polygon that does not cross another is within it.
func inside(p, of []geom.Point) bool {
	_, out := sides(p, of)
	return !out
}

func middle(a, b geom.Point) geom.Point { return geom.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2} }

// near reports whether a point lies on a polygon's edge.
func near(x geom.Point, polygon []geom.Point) bool {
	for i, a := range polygon {
		if off(x, a, polygon[(i+1)%len(polygon)]) <= float64(shortest) {
			return true
		}
	}
	return false
}

// reaches reports whether an edge of a polygon may come into a rectangle.
func reaches(polygon []geom.Point, r geom.Rect) bool {
	for i, a := range polygon {
		b := polygon[(i+1)%len(polygon)]
		if max(a.X, b.X) >= r.X.Lo && min(a.X, b.X) <= r.X.Hi && max(a.Y, b.Y) >= r.Y.Lo && min(a.Y, b.Y) <= r.Y.Hi {
			return true
		}
	}
	return false
}
