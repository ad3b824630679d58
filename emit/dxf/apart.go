package dxf

import (
	"cmp"
	"fmt"
	"iter"
	"slices"

	"barwright/compile/geom"
)

// cut is a contour that is cut.
type cut struct {
	contour geom.Contour
	box     geom.Rect // and a little round it
	index   int       // among the shapes
	part    int       // among the outlines
	way     way
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
// There are as many shapes as count says, and box holds them.
func validateTogether(all iter.Seq[shape], count int, box geom.Rect) error {
	outlines := outlinesOf(all)
	held := func(c cut) error {
		if c.way != around && !outlines.hold(&c) {
			return fmt.Errorf("%s lies beyond the outline", named(all, c.index))
		}
		return nil
	}
	var room []geom.Point
	search := crowds[cut]{
		all: cutsOf(all), count: count, alone: held,
		trace: func(c cut, g *grid) bool {
			room = c.contour.AppendChords(room[:0])
			return g.trace(room)
		},
		near: func(near []cut) error {
			if err := validateNear(near, all); err != nil {
				return err
			}
			for _, c := range near {
				if err := held(c); err != nil {
					return err
				}
			}
			return nil
		},
	}
	return search.in(box.Grow(shortest))
}

// validateNear looks at contours in pairs, in a sweep from left to right.
func validateNear(near []cut, all iter.Seq[shape]) error {
	slices.SortFunc(near, func(a, b cut) int {
		return cmp.Or(cmp.Compare(a.box.X.Lo, b.box.X.Lo), cmp.Compare(a.index, b.index))
	})
	var p, q []geom.Point // room for chords
	for i := range near {
		a := &near[i]
		p = p[:0]
		for j := i + 1; j < len(near) && near[j].box.X.Lo < a.box.X.Hi; j++ {
			b := &near[j]
			if !a.box.Y.Overlaps(b.box.Y) || a.way.mayCross(b.way) {
				continue
			}
			if len(p) == 0 {
				p = a.contour.AppendChords(p)
			}
			if !reaches(p, b.box) {
				continue
			}
			q = b.contour.AppendChords(q[:0])
			how := relate(p, q)
			if how > touching || how == touching && a.way <= around && b.way <= around {
				first, second := min(a.index, b.index), max(a.index, b.index)
				return fmt.Errorf("%s and %s %s", named(all, first), named(all, second), how)
			}
		}
	}
	return nil
}

// cutsOf yields the contours of shapes that are cut.
func cutsOf(all iter.Seq[shape]) iter.Seq2[geom.Rect, cut] {
	return func(yield func(geom.Rect, cut) bool) {
		index, part := -1, 0
		for s := range all {
			index++
			way := s.way()
			if way == uncut {
				continue
			}
			box := s.contour.Bounds().Grow(shortest)
			if !yield(box, cut{contour: s.contour, box: box, index: index, part: part, way: way}) {
				return
			}
			if way == around {
				part++
			}
		}
	}
}

// outline is a part's, in chords.
type outline struct {
	box    geom.Rect
	chords []geom.Point
}

type outlines []outline

func outlinesOf(all iter.Seq[shape]) (list outlines) {
	for s := range all {
		if s.way() == around {
			list = append(list, outline{s.contour.Bounds().Grow(shortest), s.contour.Chords()})
		}
	}
	return list
}

// hold reports whether a contour that crosses no outline is within one: that of its part,
// or another.
func (o outlines) hold(c *cut) bool {
	if c.part < len(o) && o[c.part].holds(c) {
		return true
	}
	for i := range o {
		if o[i].holds(c) {
			return true
		}
	}
	return false
}

func (o *outline) holds(c *cut) bool {
	switch {
	case !o.box.Contains(c.box):
		return false
	case reaches(o.chords, c.box):
		return inside(c.contour.Chords(), o.chords)
	}
	return encloses(o.chords, c.contour[0].Point)
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
func named(all iter.Seq[shape], index int) string {
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
	clearOf relation = iota // neither comes near the other
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
		return clearOf
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
