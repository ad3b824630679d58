package reuse

import (
	"bytes"
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// search lays the piece in every way that is allowed, and returns the trial that takes
// the least: one that makes nothing up, or else one that does.
func (p *Pair) search(old, new *model.Part) (*trial, bool) {
	if old.Kind == model.Lumber {
		rolled, ok := roll(old, new)
		if !ok {
			return nil, false
		}
		old = rolled
	}
	x, y := old.OverAll()
	wantX, wantY := new.Size()
	var fit, strips []model.Lay
	for _, l := range lays {
		wide, high := x, y
		if l.Quarters%2 == 1 {
			wide, high = y, x
		}
		switch {
		case !runs(old, new, l):
		case wide+p.within >= wantX && high+p.within >= wantY:
			fit = append(fit, l)
		case p.strips(new, wantX-wide, wantY-high):
			strips = append(strips, l)
		}
	}
	if len(fit)+len(strips) == 0 {
		return nil, false
	}
	piece, known := solidOf(old, new.Thickness)
	part, alsoKnown := solidOf(new, new.Thickness)
	if !known || !alsoKnown {
		return p.alike(old, new)
	}
	if best, ok := p.least(piece, part, fit, 0); ok {
		return best, true
	}
	if new.Kind != model.Panel && new.Kind != model.Lumber {
		return nil, false
	}
	return p.least(piece, part, append(fit, strips...), math.MaxInt64)
}

// least is the trial that takes the least, of those that make up no more than most,
// in thousandths of a mm2.
func (p *Pair) least(piece, part *solid, lays []model.Lay, most int64) (best *trial, found bool) {
	// One trial is the best so far, the other is at work.
	trials := [2]trial{{pair: p, within: p.within}, {pair: p, within: p.within}}
	t, best := &trials[0], &trials[1]
	for _, l := range lays {
		laid := piece.laid(l)
		for _, l.Move = range moves(laid, part, p.within) {
			t.reset(laid, part, l)
			if t.try(most) && (!found || t.less(best)) {
				t, best, found = best, t, true
				most = best.madeUp
			}
			if found && best.steps == 0 {
				return best, true
			}
		}
	}
	return best, found
}

// alike serves parts whose outline or cuts are of no known shape: for one another only
// where they are equal.
func (p *Pair) alike(old, new *model.Part) (*trial, bool) {
	want := written(new, toOrigin(new, model.Lay{}))
	for _, l := range lays {
		if l = toOrigin(old, l); bytes.Equal(written(old, l), want) {
			l.Move = l.Move.Sub(toOrigin(new, model.Lay{}).Move)
			return &trial{old: &solid{part: old}, new: &solid{part: new}, task: task{lay: l}}, true
		}
	}
	return nil, false
}

// toOrigin moves a lay so that the part's lower left comes to the origin.
func toOrigin(part *model.Part, l model.Lay) model.Lay {
	at := rect(part.Outline.Bounds(), l)
	l.Move = geom.Point{X: -at.X.Lo, Y: -at.Y.Lo}
	return l
}

// runs reports whether the grain of a piece that is laid so runs as the part wants it.
func runs(old, new *model.Part, l model.Lay) bool {
	return new.Grain == model.GrainNone || grain(old.Grain, l) == new.Grain
}

// roll turns a stick to the face that the part is drawn on; ok is false where their
// sections differ, or something is cut in one that would have to be rolled. One that was
// measured anew has the part's section.
func roll(old, new *model.Part) (*model.Part, bool) {
	a, b := along(old), along(new)
	same := func(x, y Length) bool { return length.Apart(x, y) <= remeasured }
	plain := isRect(old.Outline, old.Outline.Bounds()) && len(old.Openings)+len(old.Recesses)+len(old.Bores) == 0
	lies := same(a.thick, b.thick) && same(a.wide, b.wide)
	switch {
	case lies && (a.wide == b.wide || !plain):
		return old, true
	case !plain || !lies && (!same(a.thick, b.wide) || !same(a.wide, b.thick)):
		return nil, false
	}
	rolled := *old
	face := geom.Rect{X: geom.Span{Hi: a.long}, Y: geom.Span{Hi: b.wide}}
	if old.Grain == model.GrainY {
		face.X, face.Y = face.Y, face.X
	}
	rolled.Outline, rolled.Thickness = geom.RectContour(face), new.Thickness
	if !lies {
		rolled.Marks = nil
	}
	return &rolled, true
}

// stick is a length of lumber as drawn.
type stick struct{ long, wide, thick Length }

func along(part *model.Part) stick {
	x, y := part.Size()
	if part.Grain == model.GrainY {
		x, y = y, x
	}
	return stick{x, y, part.Thickness}
}

// Bounds of a search: with more work than this, only the moves that bring most features
// into line are tried.
const (
	mostWork  = 100_000 // pairs of cuts
	mostMoves = 4       // each way
)

// moves lists where a laid piece may lie on a part: an edge of it on one of the part's,
// or, where it is larger or smaller, a feature of it on one of the part's.
func moves(old, new *solid, within Length) []geom.Point {
	byX := func(r geom.Rect) geom.Span { return r.X }
	byY := func(r geom.Rect) geom.Span { return r.Y }
	xs, ys := shifts(old, new, within, model.LeftEdge, byX), shifts(old, new, within, model.Bottom, byY)
	if len(xs)*len(ys)*len(old.cuts)*len(new.cuts) > mostWork {
		xs, ys = xs[:min(len(xs), mostMoves)], ys[:min(len(ys), mostMoves)]
	}
	out := make([]geom.Point, 0, len(xs)*len(ys))
	for _, y := range ys {
		for _, x := range xs {
			out = append(out, geom.Point{X: x, Y: y})
		}
	}
	return out
}

// shifts lists moves along one axis: those that bring edges together first, with their
// banding and without, then the others, those that bring most features together first. The
// axis begins at the edge low.
func shifts(old, new *solid, within Length, low model.Edge, axis func(geom.Rect) geom.Span) []Length {
	a, b := axis(old.body), axis(new.body)
	lo, hi := b.Lo-a.Lo, b.Hi-a.Hi
	more := func(e model.Edge) Length { return thickness(new.bands[e]) - thickness(old.bands[e]) }
	ends := make([]Length, 0, 4)
	for _, d := range [...]Length{lo - more(low), hi + more(low.Opposite()), lo, hi} {
		if !slices.Contains(ends, d) {
			ends = append(ends, d)
		}
	}
	room := geom.Span{Lo: slices.Min(ends), Hi: slices.Max(ends)}
	if room.Size() <= within || old.plain() && new.plain() {
		return ends
	}
	var all []Length
	for i := range old.cuts {
		s := axis(old.cuts[i].bounds())
		for j := range new.cuts {
			t := axis(new.cuts[j].bounds())
			for _, d := range [...]Length{t.Lo - s.Lo, t.Hi - s.Hi, t.Lo - s.Hi, t.Hi - s.Lo, t.Mid() - s.Mid()} {
				if room.Lo < d && d < room.Hi {
					all = append(all, d)
				}
			}
		}
	}
	slices.Sort(all)
	type vote struct {
		move Length
		n    int
	}
	var votes []vote
	for _, d := range all {
		if n := len(votes); n > 0 && votes[n-1].move == d {
			votes[n-1].n++
		} else {
			votes = append(votes, vote{d, 1})
		}
	}
	slices.SortStableFunc(votes, func(v, w vote) int { return cmp.Compare(w.n, v.n) })
	for _, v := range votes {
		ends = append(ends, v.move)
	}
	return ends
}
