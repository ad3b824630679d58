package reuse

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
)

// openings tells of openings and notches to cut, one step for each.
func (w *words) openings() {
	var done []cut
	for _, i := range w.fresh {
		c := &w.new.cuts[i]
		if c.kind != opening && c.kind != notch && c.kind != rounded ||
			slices.ContainsFunc(done, func(d cut) bool { return d.kind == c.kind && d.index == c.index && d.index >= 0 }) {
			continue
		}
		done = append(done, *c)
		name := titled(c)
		from, filled := w.grows(c), moved(c, &w.placed, w.lost)
		switch {
		case c.kind == rounded:
			w.add(model.CutOut, "corner", "round the %s to a radius of %s", name, w.show(c.core.X.Size()))
		case from != nil && w.growth(from, c, growing) == "":
			w.add(model.Enlarge, what(c), "cut the corners of the %s to a radius of %s", name, w.show(c.r))
		case from != nil:
			w.add(model.Enlarge, what(c), "enlarge the %s by %s", name, w.growth(from, c, growing))
		case filled == nil:
			w.add(model.CutOut, what(c), "cut the %s", name)
		case w.growth(filled, c, growing) != "":
			w.add(model.Enlarge, what(c), "enlarge the %s by %s", name, w.growth(filled, c, growing))
		}
	}
}

// recesses tells of recesses to cut, or to make deeper or larger.
func (w *words) recesses() {
	for _, i := range w.fresh {
		c := &w.new.cuts[i]
		if c.kind != recess {
			continue
		}
		name, deep := titled(c), w.new.part.Recesses[c.index].Depth
		from := w.grows(c)
		if from == nil {
			w.add(model.Rout, what(c), "cut the %s, %s, %s deep", name, w.size(c, w.new.body), w.show(deep))
			continue
		}
		wider, deeper := w.growth(from, c, growing), c.depth.Hi-from.depth.Hi
		switch {
		case wider == "" && deeper <= w.within:
			w.add(model.Deepen, what(c), "cut the corners of the %s to a radius of %s", name, w.show(c.r))
		case wider == "":
			w.add(model.Deepen, what(c), "deepen the %s by %s", name, w.show(deeper))
		case deeper <= w.within:
			w.add(model.Deepen, what(c), "enlarge the %s by %s", name, wider)
		default:
			w.add(model.Deepen, what(c), "enlarge the %s by %s, and deepen it by %s", name, wider, w.show(deeper))
		}
	}
}

// grows finds the cut of the piece that is to become a larger one of the part.
func (w *words) grows(c *cut) *cut {
	for i := range w.placed.cuts {
		m := &w.placed.cuts[i]
		if m.kind == c.kind && m.bounds().Overlaps(w.new.body) && m.beyond(c, w.within+1) <= w.within && !slices.Contains(w.lost, i) {
			return m
		}
	}
	return nil
}

// moved finds, among cuts of the other solid, the one that an opening or a notch was or is to be: of
// its kind and name, and overlapping it. Both are rectangles.
func moved(c *cut, in *solid, among []int) *cut {
	for _, i := range among {
		m := &in.cuts[i]
		if c.kind != recess && m.kind == c.kind && m.called == c.called && m.r == 0 && c.r == 0 && m.core.Overlaps(c.core) {
			return m
		}
	}
	return nil
}

// Where a cut grows to, and where it is filled.
var (
	growing = [4]string{"to the left", "to the right", "downwards", "upwards"}
	filling = [4]string{"on the left", "on the right", "below", "above"}
)

// growth tells by how much a cut is to grow, and where: "1/8 in to the left and 1/4 in
// upwards"; empty where it does not.
func (w *words) growth(from, to *cut, ways [4]string) string {
	a, b := from.bounds().Intersect(w.new.body), to.bounds().Intersect(w.new.body)
	by := [4]Length{a.X.Lo - b.X.Lo, b.X.Hi - a.X.Hi, a.Y.Lo - b.Y.Lo, b.Y.Hi - a.Y.Hi}
	if by[0] > w.within && by[0] == by[1] && by[0] == by[2] && by[0] == by[3] {
		return w.show(by[0]) + " all round"
	}
	var sides []string
	for i, l := range by {
		if l > w.within {
			sides = append(sides, w.show(l)+" "+ways[i])
		}
	}
	return finding.Listed(sides)
}

// drills tells of bores to drill, and of those that only lack their countersink.
func (w *words) drills() {
	var bores, sinks []int
	drilled := make(map[int]bool) // lookup only
	for _, i := range w.fresh {
		if c := &w.new.cuts[i]; c.kind == bore {
			bores, drilled[c.index] = append(bores, i), true
		}
	}
	for _, i := range w.fresh {
		if c := &w.new.cuts[i]; c.kind == sink && !drilled[c.index] {
			sinks = append(sinks, i)
		}
	}
	for _, g := range groups(w.new, bores) {
		deep := ""
		if !g.bore.Through() {
			deep = fmt.Sprintf(", %s deep", w.bit(g.bore.Depth))
		}
		w.addEach(g, model.Drill, "drill %s%s%s%s", w.bores(g), deep, w.face(g.bore), w.inPlugs(g, bores))
	}
	for _, g := range groups(w.new, sinks) {
		w.addEach(g, model.Drill, "countersink %s to %s%s", w.bores(g), w.bit(g.bore.Sink), w.face(g.bore))
	}
}

// inPlugs tells of bores of a group that run into what is filled or plugged.
func (w *words) inPlugs(g group, fresh []int) string {
	n := 0
	for _, i := range fresh {
		c := &w.new.cuts[i]
		if w.new.part.Bores[c.index].Like(g.bore) && slices.ContainsFunc(w.lost, func(j int) bool {
			l := &w.placed.cuts[j]
			return l.overlaps(c.shape, 0) && l.depth.Overlaps(c.depth)
		}) {
			n++
		}
	}
	switch {
	case n == 0:
		return ""
	case g.n == 1:
		return "; it runs into what is made up"
	case n == g.n:
		return "; they run into what is made up"
	}
	return fmt.Sprintf("; %d of them run into what is made up", n)
}

// face tells from which face a bore is drilled where that is not the drawn one.
func (w *words) face(b *model.Bore) string {
	if b.Behind() {
		return ", from the face behind the " + faceName(w.new.part)
	}
	return ""
}

// missing draws what the piece lacks.
func (t *trial) missing() (out []geom.Contour) {
	left := t.new.body
	for e := range t.edge {
		if gap := t.edge[e].short; gap > 0 {
			s := cut{shape: shape{core: strip(left, model.Edge(e), gap)}, depth: through}
			out = append(out, s.less(t.new)...)
			left = model.Edge(e).Onward(left, -gap)
		}
	}
	for _, i := range t.lost {
		c := t.placed.cuts[i]
		c.shape = c.within(left)
		out = append(out, c.less(t.new)...)
	}
	return out
}

// spare draws what is cut away from the piece.
func (t *trial) spare() (out []geom.Contour) {
	left := t.placed.body
	for e := range t.edge {
		if by := t.cutOff(e); by > 0 {
			s := cut{shape: shape{core: strip(left, model.Edge(e), by)}, depth: through}
			out = append(out, s.less(&t.placed)...)
			left = model.Edge(e).Onward(left, -by)
		}
	}
	for _, i := range t.fresh {
		c := t.new.cuts[i]
		c.shape = c.within(left.Intersect(t.new.body))
		out = append(out, c.less(&t.placed)...)
	}
	return out
}

// less draws a cut less the rectangles that a solid lacks as deep. Of a round one
// nothing is taken.
func (c *cut) less(s *solid) []geom.Contour {
	if c.core.X.Size() < 0 || c.core.Y.Size() < 0 {
		return nil
	}
	if c.r > 0 {
		return []geom.Contour{c.contour()}
	}
	var others []geom.Rect
	for i := range s.cuts {
		if v := &s.cuts[i]; v.r == 0 && v.kind != rounded && v.depth.Contains(c.depth) {
			others = append(others, v.core)
		}
	}
	return geom.Cut(c.core, others)
}

// cutAway is about the area of what is cut away: of a cut that grows, all of it.
func (t *trial) cutAway() (area int64) {
	left := t.placed.body
	for e := range t.edge {
		if by := t.cutOff(e); by > 0 {
			area += shape{core: strip(left, model.Edge(e), by)}.thousandths()
			left = model.Edge(e).Onward(left, -by)
		}
	}
	for _, i := range t.fresh {
		area += t.new.cuts[i].within(t.new.body).thousandths()
	}
	return area
}

// within is a cut as far as it lies in a body; of a round one that reaches out of it, the
// rectangle over all.
func (c *cut) within(body geom.Rect) shape {
	if b := c.bounds(); c.r == 0 || !body.Contains(b) {
		return shape{core: b.Intersect(body)}
	}
	return c.shape
}

// strip is what lies along an edge of a rectangle, inside it.
func strip(r geom.Rect, e model.Edge, wide Length) geom.Rect {
	switch e {
	case model.Bottom:
		r.Y.Hi = r.Y.Lo + wide
	case model.RightEdge:
		r.X.Lo = r.X.Hi - wide
	case model.Top:
		r.Y.Lo = r.Y.Hi - wide
	case model.LeftEdge:
		r.X.Hi = r.X.Lo + wide
	}
	return r
}
