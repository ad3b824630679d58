package reuse

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
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
		name := titled(c, w.new.part)
		if from := w.grows(c); from != nil {
			w.add(model.Enlarge, what(c, w.new.part), "enlarge %s by %s", name, w.growth(from, c))
		} else {
			w.add(model.CutOut, what(c, w.new.part), "cut %s", name)
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
		name, deep := titled(c, w.new.part), w.new.part.Recesses[c.index].Depth
		from := w.grows(c)
		if from == nil {
			w.add(model.Rout, what(c, w.new.part), "cut %s, %s, %s deep", name, w.size(c, w.new.body), w.show(deep))
			continue
		}
		wider, deeper := w.growth(from, c), c.depth.Hi-from.depth.Hi
		switch {
		case wider == "":
			w.add(model.Deepen, what(c, w.new.part), "deepen %s by %s", name, w.show(deeper))
		case deeper <= w.within:
			w.add(model.Deepen, what(c, w.new.part), "enlarge %s by %s", name, wider)
		default:
			w.add(model.Deepen, what(c, w.new.part), "enlarge %s by %s, and deepen it by %s", name, wider, w.show(deeper))
		}
	}
}

// grows finds the cut of the piece that is to become a larger one of the part.
func (w *words) grows(c *cut) *cut {
	for i := range w.placed.cuts {
		m := &w.placed.cuts[i]
		deep := max(c.depth.Lo-m.depth.Lo, m.depth.Hi-c.depth.Hi) <= w.within
		if m.kind == c.kind && deep && m.bounds().Overlaps(w.new.body) && max(m.out(c), 0) <= w.within && !slices.Contains(w.lost, i) {
			return m
		}
	}
	return nil
}

// growth tells by how much a cut grows to which sides: "1/8 in to the left and 1/4 in
// upwards"; empty where to none.
func (w *words) growth(from, to *cut) string {
	a, b := from.bounds().Intersect(w.new.body), to.bounds().Intersect(w.new.body)
	var sides []string
	for _, s := range []struct {
		by  Length
		way string
	}{
		{a.X.Lo - b.X.Lo, "to the left"}, {b.X.Hi - a.X.Hi, "to the right"},
		{a.Y.Lo - b.Y.Lo, "downwards"}, {b.Y.Hi - a.Y.Hi, "upwards"},
	} {
		if s.by > w.within {
			sides = append(sides, w.show(s.by)+" "+s.way)
		}
	}
	if len(sides) == 4 && a.X.Mid() == b.X.Mid() && a.Y.Mid() == b.Y.Mid() && b.X.Size()-a.X.Size() == b.Y.Size()-a.Y.Size() {
		return w.show(a.X.Lo-b.X.Lo) + " all round"
	}
	if n := len(sides); n > 1 {
		return strings.Join(sides[:n-1], ", ") + " and " + sides[n-1]
	}
	return strings.Join(sides, "")
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
		w.add(model.Drill, g.bore.Name, "drill %s%s%s", w.bores(g), deep, w.face(g.bore))
	}
	for _, g := range groups(w.new, sinks) {
		w.add(model.Drill, g.bore.Name, "countersink %s to %s%s", w.bores(g), w.bit(g.bore.Sink), w.face(g.bore))
	}
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
	for e, gap := range t.short {
		if gap > 0 {
			out = append(out, geom.RectContour(strip(t.new.body, model.Edge(e), gap)))
		}
	}
	for _, i := range t.lost {
		out = append(out, t.placed.cuts[i].drawn(t.new.body))
	}
	return out
}

// spare draws what is cut away from the piece.
func (t *trial) spare() (out []geom.Contour) {
	left := t.placed.body
	for e, by := range t.over {
		if by > 0 {
			out = append(out, geom.RectContour(strip(left, model.Edge(e), by)))
			left = grown(left, model.Edge(e), -by)
		}
	}
	for _, i := range t.fresh {
		out = append(out, t.new.cuts[i].drawn(t.new.body))
	}
	return out
}

// cutAway is the area of what is cut away, in mm2.
func (t *trial) cutAway() float64 {
	area := 0.0
	left := t.placed.body
	for e, by := range t.over {
		if by > 0 {
			s := strip(left, model.Edge(e), by)
			area += shape{core: s}.area()
			left = grown(left, model.Edge(e), -by)
		}
	}
	for _, i := range t.fresh {
		c := &t.new.cuts[i]
		area += c.within(t.new.body).area()
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

// drawn is the outline of a cut as far as it lies in a body.
func (c *cut) drawn(body geom.Rect) geom.Contour { return c.within(body).contour() }
