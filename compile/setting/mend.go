package setting

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
)

// Less is a box less an opening in it, as boxes: four round a hole through it, three round
// a slot that is open to an edge, the box itself where the opening passes it by.
func Less(b, opening geom.Box) []geom.Box {
	if !b.Overlaps(opening) {
		return []geom.Box{b}
	}
	var out []geom.Box
	for axis := geom.U; axis <= geom.Z; axis++ {
		whole, cut := b.Along(axis), b.Along(axis).Intersect(opening.Along(axis))
		for _, rest := range []geom.Span{{Lo: whole.Lo, Hi: cut.Lo}, {Lo: cut.Hi, Hi: whole.Hi}} {
			if rest.Size() > 0 {
				out = append(out, b.With(axis, rest))
			}
		}
		b = b.With(axis, cut)
	}
	return out
}

// With returns the room with other bodies in the place of one: it made otherwise, or in parts.
func (r Room) With(body string, by ...Body) Room {
	i := slices.IndexFunc(r.Bodies, func(b Body) bool { return b.Name == body })
	if i >= 0 {
		r.Bodies = slices.Replace(slices.Clone(r.Bodies), i, i+1, by...)
	}
	return r
}

var along, inward = geom.Dir{Axis: geom.U}, geom.Dir{Axis: geom.V}

func (d Door) box() geom.Box {
	return geom.Box{U: d.Span, V: geom.Span{Hi: d.Landing}, Z: geom.Span{Hi: d.Height}}
}

// Passes returns across which faces a body goes through the door, untipped or tipped: V
// where its front or back goes first. None means that it does not come in whole.
func (d Door) Passes(b Body) []geom.Axis {
	var out []geom.Axis
	size := b.size()
	for axis := geom.U; axis <= geom.Z; axis++ {
		p, q := size[(axis+1)%3], size[(axis+2)%3]
		if min(p, q) <= min(d.Span.Size(), d.Height) && max(p, q) <= max(d.Span.Size(), d.Height) {
			out = append(out, axis)
		}
	}
	return out
}

// size is how far the body extends along u, v and z of its first solid's frame.
func (b Body) size() [3]Length {
	if len(b.Solids) == 0 {
		return [3]Length{}
	}
	s := newScene(Room{Bodies: []Body{b}})
	hull := s.groups[0].hull
	var out [3]Length
	for axis := range out {
		w := s.direction(b.Solids[0].Frame.Turn, geom.Dir{Axis: geom.Axis(axis)})
		out[axis] = rounded(hull[w.axis].hi - hull[w.axis].lo)
	}
	return out
}

// Aside looks for the shortest level slide of a neighbour, which stands, after which all that is
// to be set can be: it makes way before, and slides back behind them. It returns that slide and
// the steps between. It tries the slides by which the neighbour's hull comes to leave body just the room
// to pass something else.
func (r Room) Aside(body, neighbour string) (aside Slide, steps []Step, ok bool) {
	s := newScene(r)
	b, n := s.named(body), s.named(neighbour)
	if b < 0 || n < 0 || b == n {
		return aside, nil, false
	}
	stood := r.Bodies[n-len(r.Fixed)]
	stood.Stands = true
	for _, slide := range s.asides(b, n) {
		if steps, blocked := r.With(neighbour, stood.moved(slide)).Order(); blocked == nil {
			return slide, steps, true
		}
	}
	return aside, nil, false
}

// named is the index of a body, -1 for none.
func (s *scene) named(body string) int {
	return slices.IndexFunc(s.groups, func(g group) bool { return g.body && g.name == body })
}

// asides are the slides of n that may let b past, shortest first.
func (s *scene) asides(b, n int) []Slide {
	var others, rest []int
	for o := range s.groups {
		if o != n {
			others = append(others, o)
		}
		if o != n && o != b {
			rest = append(rest, o)
		}
	}
	f := s.flood(b, rest)
	for i := range f.obstacles {
		f.obstacles[i].faces = true
	}
	touch := meeting(nil, s.groups[b].hull, s.groups[n].hull)
	var out []Slide
	for _, w := range s.groups[n].ways {
		if w.dir.Axis == geom.Z {
			continue
		}
		_, first, stopped := s.first(n, others, w)
		for _, x := range f.facesAlong(w.axis) {
			for _, by := range []float64{w.sign * (x - touch[w.axis].lo), w.sign * (x - touch[w.axis].hi)} {
				if by > hair && (!stopped || by <= first.by+hair) {
					out = append(out, Slide{w.turn, w.dir, rounded(by)})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Slide) int { return cmp.Compare(a.By, b.By) })
	return slices.Compact(out)
}

// moved is the body after a slide.
func (b Body) moved(s Slide) Body {
	step := geom.Box{}.Onward(s.Dir, s.By)
	by := geom.Frame{Turn: s.Turn}.At(step.U.Lo+step.U.Hi, step.V.Lo+step.V.Hi)
	b.Solids = slices.Clone(b.Solids)
	for i := range b.Solids {
		solid := &b.Solids[i]
		solid.Frame.Origin = solid.Frame.Origin.Add(by)
		solid.Box.Z = solid.Box.Z.Shift(step.Z.Lo + step.Z.Hi)
	}
	return b
}
