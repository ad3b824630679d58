package solve

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// tap bores a round hole, which keeps clear of what is cut out already, of the
// slab's edges and of walls.
func (s *solver) tap(t *top, b *lang.Block) bool {
	u, ok := s.tapAlong(t, b)
	if !ok {
		return false
	}
	r, v := s.Length(b, "diameter")/2, t.slab.Box.V.Lo+s.Length(b, "from_rear")
	cut := model.SlabCut{
		Kind: "tap", Name: b.Name, Radius: r, Why: why(b),
		Box: geom.Box{U: geom.About(u, 2*r), V: geom.About(v, 2*r), Z: t.slab.Box.Z},
	}
	if !s.tapClear(t, b, &cut) {
		return false
	}
	if u := s.under(t, &cut); len(u.over)+len(u.drawers) > 0 {
		over := slices.Concat(u.over, u.drawers)
		s.Findings.Warnf("cut-out-over-board", b.Head, "", "The hole of tap %q lies over %s: its nut and hoses need that space.", b.Name, strings.Join(over, ", over "))
	}
	t.slab.Cuts = append(t.slab.Cuts, cut)
	return true
}

// tapAlong is where a tap stands along its counter: in the middle of a sink, or
// as written.
func (s *solver) tapAlong(t *top, b *lang.Block) (length.Length, bool) {
	behind, left := b.Attr("behind"), b.Attr("from_left")
	switch {
	case behind == nil && left == nil:
		s.Findings.Errorf("attribute-missing", b.Head, "behind = sink.NAME, or from_left = …", "%s does not say where it stands.", finding.Capital(b.Describe()))
		return 0, false
	case behind != nil && left != nil:
		s.Findings.Errorf("said-twice", left.NameAt, "leave one of them out", "%s stands behind a sink or at a place of its own, not both.", finding.Capital(b.Describe())).
			Also(behind.NameAt, "behind stands here")
		return 0, false
	case behind == nil:
		return s.Length(b, "from_left"), true
	}
	sink := s.Ref(b, "behind")
	if sink.Parent != t.block {
		s.Findings.Errorf("cut-out-elsewhere", behind.Expr.At, "a sink of this counter",
			"%s is cut out of another counter.", finding.Capital(sink.Describe())).Also(sink.Head, "it stands here")
		return 0, false
	}
	for i := range t.slab.Cuts {
		if c := &t.slab.Cuts[i]; c.Kind == "sink" && c.Name == sink.Name {
			return c.Box.U.Mid(), true
		}
	}
	return 0, false
}

// What a tap's hole keeps clear of: other cut-outs and edges, so that slab is
// left all round it, and walls, so that there is room for its plate and lever
// (common practice, from memory; the maker's sheet may ask for more).
func (s *solver) tapRim() length.Length    { return s.practice(3*length.Inch/4, 20*length.Millimetre) }
func (s *solver) tapToWall() length.Length { return s.practice(length.Inch, 25*length.Millimetre) }

// near is something that a tap may come too near to: how far its hole is from
// it, and should be.
type near struct {
	name       string
	away, need length.Length
	at         source.Range // of what is cut there; zero for an edge
}

func (s *solver) tapClear(t *top, b *lang.Block, cut *model.SlabCut) bool {
	var worst near
	for _, n := range s.tapNear(t, cut) {
		if n.need-n.away > worst.need-worst.away {
			worst = n
		}
	}
	if worst.name == "" {
		return true
	}
	text := fmt.Sprintf("The hole of %s would be %s from %s, and keeps %s from it: %s too near.",
		b.Describe(), s.Show(worst.away), worst.name, s.Show(worst.need), s.Show(worst.need-worst.away))
	if worst.away < 0 {
		text = fmt.Sprintf("The hole of %s would run into %s by %s, and keeps %s from it.", b.Describe(), worst.name, s.Show(-worst.away), s.Show(worst.need))
	}
	f := s.Findings.Errorf("tap-too-near", b.Said("from_left", "from_rear"), s.tapMoved(t, b, cut), "%s", text)
	if !worst.at.IsZero() {
		f.Also(worst.at, "it is cut here")
	}
	return false
}

// tapNear lists the edges of the slab, the walls that they meet, and what is cut
// out already.
func (s *solver) tapNear(t *top, cut *model.SlabCut) []near {
	slab := t.slab.Box
	edge := func(name, wall string, meets bool, away length.Length) near {
		if meets {
			return near{name: wall, away: away, need: s.tapToWall()}
		}
		return near{name: name, away: away, need: s.tapRim()}
	}
	out := []near{
		edge("the slab's front edge", "", false, slab.V.Hi-cut.Box.V.Hi),
		edge("the slab's rear edge", "the wall behind", s.wallBehind(t.run), cut.Box.V.Lo-slab.V.Lo),
		edge("the slab's left end", "the wall at the left", !t.run.FreeAt(model.Left), cut.Box.U.Lo-slab.U.Lo),
		edge("the slab's right end", "the wall at the right", !t.run.FreeAt(model.Right), slab.U.Hi-cut.Box.U.Hi),
	}
	for i := range t.slab.Cuts {
		o := &t.slab.Cuts[i]
		out = append(out, near{fmt.Sprintf("the cut-out of %s %q", o.Kind, o.Name), clearOf(cut, o), s.tapRim(), o.Why.At})
	}
	return out
}

// clearOf is how far a round hole keeps from another cut-out, that of a sink
// taken with square corners.
func clearOf(hole, o *model.SlabCut) length.Length {
	inner := o.Box
	if o.Kind == "tap" { // its centre
		inner.U, inner.V = o.Box.U.Grow(-o.Radius), o.Box.V.Grow(-o.Radius)
	}
	centre := geom.Box{U: hole.Box.U.Grow(-hole.Radius), V: hole.Box.V.Grow(-hole.Radius)}
	u, v := apart(centre.U, inner.U), apart(centre.V, inner.V)
	away := max(u, v)
	if u > 0 && v > 0 {
		away = length.Length(math.Hypot(float64(u), float64(v)))
	}
	if o.Kind == "tap" {
		away -= o.Radius
	}
	return away - hole.Radius
}

// wallBehind reports whether a wall, or a knee wall, stands behind a run.
func (s *solver) wallBehind(run *model.Run) bool {
	return run.Along || len(s.m.KneeWallsBehind(run)) > 0
}

// tapMoved is how to write that a tap behind a sink stands between it and the
// rear, where there is room.
func (s *solver) tapMoved(t *top, b *lang.Block, cut *model.SlabCut) string {
	behind := s.Ref(b, "behind")
	if behind == nil {
		return ""
	}
	rear := s.tapRim()
	if s.wallBehind(t.run) {
		rear = s.tapToWall()
	}
	for i := range t.slab.Cuts {
		if c := &t.slab.Cuts[i]; c.Kind == "sink" && c.Name == behind.Name {
			room := geom.Span{Lo: rear + cut.Radius, Hi: c.Box.V.Lo - t.slab.Box.V.Lo - s.tapRim() - cut.Radius}
			if x, ok := s.middle(room); ok {
				return fmt.Sprintf("from_rear = %q", s.Show(x))
			}
			return "the sink further to the front, or a smaller one"
		}
	}
	return ""
}
