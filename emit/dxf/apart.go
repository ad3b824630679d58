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
	form
	box   geom.Rect // and a little round it
	index int       // among the shapes
	part  int       // among the outlines
	way   way
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
func validateTogether(all iter.Seq[shape], count int, box geom.Rect, most limits) error {
	t := together{all: all}
	t.findOutlines()
	search := crowds[cut]{limits: most, count: count, all: t.cuts(), trace: t.trace, alone: t.held, near: t.apart}
	return search.in(box.Grow(shortest))
}

// together are contours, and room to look at two of them.
type together struct {
	all      iter.Seq[shape]
	outlines []outline // one of each part
	room     room
	p, q     []geom.Point
}

// outline is a part's, in chords.
type outline struct {
	box    geom.Rect // and a little round it
	chords []geom.Point
}

func (t *together) findOutlines() {
	for s := range t.all {
		if s.way() == around {
			c := t.room.contour(&s.form)
			t.outlines = append(t.outlines, outline{c.Bounds().Grow(shortest), c.Chords()})
		}
	}
}

// cuts yields the contours that are cut.
func (t *together) cuts() iter.Seq2[geom.Rect, cut] {
	return func(yield func(geom.Rect, cut) bool) {
		index, part := -1, 0
		for s := range t.all {
			index++
			way := s.way()
			if way == uncut {
				continue
			}
			box := t.room.contour(&s.form).Bounds().Grow(shortest)
			if !yield(box, cut{form: s.form, box: box, index: index, part: part, way: way}) {
				return
			}
			if way == around {
				part++
			}
		}
	}
}

// appendChords appends what stands for a contour where it is looked at.
func (t *together) appendChords(dst []geom.Point, c *cut) []geom.Point {
	return t.room.contour(&c.form).AppendChords(dst)
}

func (t *together) trace(c cut, g *grid) bool {
	t.p = t.appendChords(t.p[:0], &c)
	return g.trace(t.p)
}

// apart looks at contours in pairs, in a sweep from left to right.
func (t *together) apart(near []cut) error {
	slices.SortFunc(near, func(a, b cut) int {
		return cmp.Or(cmp.Compare(a.box.X.Lo, b.box.X.Lo), cmp.Compare(a.index, b.index))
	})
	for i := range near {
		a := &near[i]
		t.p = t.p[:0]
		for j := i + 1; j < len(near) && near[j].box.X.Lo < a.box.X.Hi; j++ {
			b := &near[j]
			if !a.box.Y.Overlaps(b.box.Y) || a.way.mayCross(b.way) {
				continue
			}
			if len(t.p) == 0 {
				t.p = t.appendChords(t.p, a)
			}
			if !reaches(t.p, b.box) {
				continue
			}
			t.q = t.appendChords(t.q[:0], b)
			how := relate(t.p, t.q)
			if how > touching || how == touching && a.way <= around && b.way <= around {
				first, second := min(a.index, b.index), max(a.index, b.index)
				return fmt.Errorf("%s and %s %s", named(t.all, first), named(t.all, second), how)
			}
		}
	}
	for _, c := range near {
		if err := t.held(c); err != nil {
			return err
		}
	}
	return nil
}

// held refuses a contour that lies beyond the outline of its part, and beyond those of
// others. It crosses none.
func (t *together) held(c cut) error {
	if c.way == around || c.part < len(t.outlines) && t.holds(&t.outlines[c.part], &c) {
		return nil
	}
	for i := range t.outlines {
		if t.holds(&t.outlines[i], &c) {
			return nil
		}
	}
	return fmt.Errorf("%s lies beyond the outline", named(t.all, c.index))
}

func (t *together) holds(o *outline, c *cut) bool {
	switch {
	case !o.box.Contains(c.box):
		return false
	case reaches(o.chords, c.box):
		t.q = t.appendChords(t.q[:0], c)
		return inside(t.q, o.chords)
	}
	return encloses(o.chords, t.room.contour(&c.form)[0].Point)
}

// way tells how the table or a drill follows a shape. The outline counts where it is cut
// already.
func (s *shape) way() way {
	if s.line != nil || s.kind == mark || s.kind == sheet {
		return uncut
	}
	switch s.role {
	case "outline":
		return around
	case "recess":
		return recessed
	case "slot":
		if s.kind == opening {
			return through
		}
		return drilled
	case "bore":
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
