package reuse

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// trial is one way to lay a piece, and what it takes.
type trial struct {
	pair     *Pair
	within   Length
	old, new *solid // as laid, without the move; as drawn
	placed   solid  // the old one, moved
	made     solid  // that, with all that it lacks made up
	task
	lost  []int // cuts of the piece, of which the part needs something
	fresh []int // cuts of the part that the piece does not have
}

// task is what is to be done, but for the cuts.
type task struct {
	lay    model.Lay
	edge   [4]finish
	draw   marking
	look   bool  // a face is seen that was not
	makes  bool  // something is to be made up:
	madeUp int64 // in thousandths of a mm2, which add up the same in any order
	off    Length
	steps  int
	waste  int64 // cut away, likewise
}

// reset begins a trial anew and keeps its memory.
func (t *trial) reset(old, new *solid, l model.Lay) {
	t.old, t.new, t.task = old, new, task{lay: l}
	t.lost, t.fresh = t.lost[:0], t.fresh[:0]
	cuts := append(t.placed.cuts[:0], old.cuts...)
	t.placed = *old
	t.placed.cuts = cuts
	t.placed.moved(l.Move)
}

// marking is what is to be done to the pencil lines of a piece.
type marking int

const (
	keep marking = iota
	rub
	redraw
)

// try works out what the trial takes; ok is false where the piece cannot serve so, or only
// with more than most made up. Nothing may be made up where most is 0.
func (t *trial) try(most int64) (ok bool) {
	if !t.lack(most) {
		return false
	}
	t.want()
	t.faces()
	t.count()
	return true
}

// lack finds what the part needs and the piece lacks; ok is false where it cannot be
// made up, or is more than most.
func (t *trial) lack(most int64) (ok bool) {
	if !t.edges() {
		return false
	}
	for _, e := range [...]model.Edge{model.Bottom, model.LeftEdge} {
		// Two strips are as much as one as wide as both.
		if short := t.edge[e].short + t.edge[e.Opposite()].short; short > 0 {
			t.makes = true
			t.madeUp += shape{core: strip(t.new.body, e, short)}.thousandths()
		}
	}
	if t.madeUp > most {
		return false
	}
	both := t.placed.body.Intersect(t.new.body)
	for i := range t.placed.cuts {
		c := &t.placed.cuts[i]
		if c.kind == outside {
			continue
		}
		if off, ok := t.new.lacks(c, both, i, t.within); ok {
			t.off = max(t.off, off)
			continue
		}
		if t.new.takes(c, t.within) {
			continue
		}
		if most == 0 || c.kind == rounded {
			return false
		}
		t.makes = true
		if t.lose(i); t.madeUp > most {
			return false
		}
	}
	return !t.makes || t.mayMake()
}

// lose notes a cut that is to be made up, with the countersink of a bore and the bore of
// a countersink, which stand side by side.
func (t *trial) lose(i int) {
	cuts := t.placed.cuts
	for j := max(i-1, 0); j <= i+1; j++ {
		own := j == i || (cuts[j].kind == bore || cuts[j].kind == sink) && (cuts[i].kind == bore || cuts[i].kind == sink) && cuts[j].index == cuts[i].index
		if own && !slices.Contains(t.lost, j) {
			t.lost = append(t.lost, j)
			t.madeUp += cuts[j].within(t.new.body).thousandths()
		}
	}
}

// gap is how far the part reaches beyond the piece at an edge; negative where the piece
// reaches beyond the part.
func (t *trial) gap(e model.Edge) Length {
	a, b := t.placed.body, t.new.body
	switch e {
	case model.Bottom:
		return a.Y.Lo - b.Y.Lo
	case model.RightEdge:
		return b.X.Hi - a.X.Hi
	case model.Top:
		return b.Y.Hi - a.Y.Hi
	}
	return a.X.Lo - b.X.Lo
}

// makeUp fills what is lost and adds the strips that are missing.
func (t *trial) makeUp() *solid {
	if !t.makes {
		return &t.placed
	}
	t.made.body, t.made.thick, t.made.cuts = t.placed.body, t.placed.thick, t.made.cuts[:0]
	for i, c := range t.placed.cuts {
		switch {
		case slices.Contains(t.lost, i):
			continue
		case c.kind == outside && t.edge[c.index].short > 0:
			t.made.body = model.Edge(c.index).Onward(t.made.body, t.edge[c.index].short)
			c = t.new.cuts[len(t.new.cuts)-4+c.index]
		}
		t.made.cuts = append(t.made.cuts, c)
	}
	return &t.made
}

// want finds what is to be cut once all that lacks is made up.
func (t *trial) want() {
	made := t.makeUp()
	for i := range t.new.cuts {
		c := &t.new.cuts[i]
		if c.kind == outside {
			continue
		}
		off, ok := made.lacks(c, t.new.body.Intersect(made.body), i, t.within)
		if ok {
			t.off = max(t.off, off)
		} else {
			t.fresh = append(t.fresh, i)
		}
	}
}

// faces compares what is drawn on a face, and which faces are the better ones.
func (t *trial) faces() {
	was, is := good(t.old.part.Good, t.lay), t.new.part.Good
	t.look = is != model.GoodNone && was != model.GoodBoth && was != is
	had, want := t.lines(t.old.part, t.lay), t.lines(t.new.part, model.Lay{})
	switch {
	case len(had)+len(want) == 0:
	case len(want) == 0:
		t.draw = rub
	case t.lay.Over || len(had) != len(want):
		t.draw = redraw
	default:
		for _, m := range had {
			if !slices.ContainsFunc(want, func(n geom.Rect) bool { return t.sameLine(m, n) }) {
				t.draw = redraw
			}
		}
	}
}

// lines are the marks of a part as they are laid, which run along or across the new part,
// as far as they lie on it: what is trimmed off takes its lines along.
func (t *trial) lines(part *model.Part, l model.Lay) (out []geom.Rect) {
	for i := range part.Marks {
		p, q := l.Point(part.Marks[i].From), l.Point(part.Marks[i].To)
		line := geom.Rect{X: geom.Between(p.X, q.X), Y: geom.Between(p.Y, q.Y)}.Intersect(t.new.body)
		if line.X.Size() >= 0 && line.Y.Size() >= 0 {
			out = append(out, line)
		}
	}
	return out
}

// sameLine reports whether two lines lie on one another.
func (t *trial) sameLine(a, b geom.Rect) bool {
	near := func(p, q geom.Span) bool {
		return length.Apart(p.Lo, q.Lo) <= t.within && length.Apart(p.Hi, q.Hi) <= t.within
	}
	return near(a.X, b.X) && near(a.Y, b.Y)
}

// steps counts what is told of cuts: bores that are alike are one step.
func (s *solid) steps(cuts []int) int {
	n := 0
	for k, i := range cuts {
		c := &s.cuts[i]
		alike := func(j int) bool {
			o := &s.cuts[j]
			return (o.kind == bore || o.kind == sink) && (o.index == c.index || s.part.Bores[o.index].Like(&s.part.Bores[c.index]))
		}
		if c.kind != bore && c.kind != sink || !slices.ContainsFunc(cuts[:k], alike) {
			n++
		}
	}
	return n
}

// count sums up what there is to do.
func (t *trial) count() {
	t.steps = t.placed.steps(t.lost) + t.new.steps(t.fresh)
	for e := range t.edge {
		t.steps += t.edge[e].steps()
	}
	if t.draw != keep {
		t.steps++
	}
	if t.look {
		t.steps++
	}
	t.waste = t.cutAway()
}

// less orders trials: those that make up the least come first, then those with the least to do.
func (t *trial) less(o *trial) bool {
	switch {
	case t.madeUp != o.madeUp:
		return t.madeUp < o.madeUp
	case t.steps != o.steps:
		return t.steps < o.steps
	case t.waste != o.waste:
		return t.waste < o.waste
	}
	return t.off < o.off
}
