package dxf

import (
	"fmt"
	"iter"
	"math/bits"
	"slices"

	"barwright/compile/geom"
)

// extent is a contour that is cut, and what is looked at before it is flattened.
type extent struct {
	box   geom.Rect // and a little round it
	index uint32    // among the shapes
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
	uncut
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
// It sweeps over them from left to right, and holds 73 bytes for each meanwhile.
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

// extentsOf lists the shapes' contours, and the extents of those that are cut, from the
// left. Numbers are sorted much faster than extents: a key is how far from the left a
// contour begins, in as many steps as 32 bits tell apart, and its index. Such a step is
// less than the boxes are larger.
func extentsOf(all iter.Seq[shape], count int) ([]geom.Contour, []extent) {
	contours, keys := make([]geom.Contour, 0, count), make([]uint64, 0, count)
	ways := make([]way, 0, count)
	var reach geom.Span
	for s := range all {
		contours, ways = append(contours, s.contour), append(ways, s.way())
		reach = reach.Union(s.contour.Bounds().X)
	}
	step := max(0, bits.Len64(uint64(reach.Size()))-32)
	for i, c := range contours {
		if ways[i] != uncut {
			keys = append(keys, uint64(c.Bounds().X.Lo-reach.Lo)>>step<<32|uint64(i))
		}
	}
	slices.Sort(keys)
	extents := make([]extent, len(keys))
	for k, key := range keys {
		i := uint32(key)
		extents[k] = extent{box: contours[i].Bounds().Grow(shortest), index: i, way: ways[i]}
	}
	return contours, extents
}

// way tells how the table or a drill follows a shape. The outline counts where it is cut
// already.
func (s *shape) way() way {
	if s.kind == mark || s.kind == sheet {
		return uncut
	}
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
func named(all iter.Seq[shape], index uint32) string {
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
