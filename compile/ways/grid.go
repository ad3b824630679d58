package ways

import (
	"slices"

	"barwright/compile/geom"
)

// window is what of a scene lies within a stretch along u.
type window struct {
	u      geom.Span
	solids []*Solid
	boards []*Board
	nth    []int // of each board, in the scene
	lanes  []geom.Box
}

func (s *Scene) within(u geom.Span) *window {
	w := &window{u: u, lanes: s.Lanes}
	for i := range s.Solids {
		if s.Solids[i].Box.U.Overlaps(u) {
			w.solids = append(w.solids, &s.Solids[i])
		}
	}
	for i := range s.Boards {
		if s.Boards[i].Box.U.Overlaps(u) {
			w.boards, w.nth = append(w.boards, &s.Boards[i]), append(w.nth, i)
		}
	}
	return w
}

// grid is what the lines of a window, through the ends of a way and along all that it may
// have to pass, divide one another into. A shortest way along the axes needs no others.
type grid struct {
	*window
	lines  [3][]Length // along each axis, rising
	steps  [3]int      // how far apart neighbours along each axis are in the numbers of crossings
	size   int         // in crossings
	pieces [3][]piece  // along each axis, from each crossing on
}

// piece is the part of a line between two crossings.
type piece struct {
	lane        bool
	shut, holes int32
	by          int32 // the last board that shut it, counted from 1
}

func (w *window) grid(a *Ask) *grid {
	g := &grid{window: w}
	add := func(axis geom.Axis, side geom.Span) {
		g.lines[axis] = append(g.lines[axis], side.Lo, side.Hi)
	}
	for axis := geom.U; axis <= geom.Z; axis++ {
		for _, p := range slices.Concat(a.From, a.To) {
			add(axis, geom.Span{Lo: p[axis], Hi: p[axis]})
		}
		if axis == geom.V { // along which a way turns in lanes and at its ends only
			for _, l := range w.lanes {
				add(axis, l.V)
			}
			continue
		}
		for _, b := range a.Through {
			add(axis, b.Along(axis))
		}
		for _, s := range w.solids {
			add(axis, s.Box.Along(axis))
		}
		for _, b := range w.boards {
			add(axis, b.Box.Along(axis))
			if b.Normal == axis {
				continue
			}
			add(axis, b.Rim.Along(axis))
			for _, shut := range b.Shut {
				side := shut.Along(axis)
				for _, x := range [2]Length{side.Lo, side.Hi} {
					if !b.shutBeyond(shut, axis, x) {
						add(axis, geom.Span{Lo: x, Hi: x})
					}
				}
			}
		}
	}
	g.size = 1
	for axis := range g.lines {
		slices.Sort(g.lines[axis])
		g.lines[axis] = slices.Compact(g.lines[axis])
		reach := g.reach(a, geom.Axis(axis))
		g.lines[axis] = slices.DeleteFunc(g.lines[axis], func(x Length) bool { return !reach.Holds(x) })
		g.steps[axis], g.size = g.size, g.size*len(g.lines[axis])
	}
	return g
}

// shutBeyond reports whether both sides of an end of what is shut, along an axis of the
// board's face, lie within something else that is: no way needs to pass along there.
func (b *Board) shutBeyond(shut geom.Box, axis geom.Axis, end Length) bool {
	other := geom.U + geom.V + geom.Z - axis - b.Normal
	return slices.ContainsFunc(b.Shut, func(o geom.Box) bool {
		side := o.Along(axis)
		return side.Lo < end && end < side.Hi && o.Along(other).Contains(shut.Along(other))
	})
}

// reach is how far along an axis a way can come at all.
func (w *window) reach(a *Ask, axis geom.Axis) geom.Span {
	reach := geom.Span{Lo: a.From[0][axis], Hi: a.From[0][axis]}
	for _, l := range w.lanes {
		reach = reach.Union(l.Along(axis))
	}
	for _, p := range slices.Concat(a.From, a.To) {
		reach = reach.Union(geom.Span{Lo: p[axis], Hi: p[axis]})
	}
	if axis == geom.U {
		return reach.Intersect(w.u)
	}
	return reach
}

// same reports whether a grid differs from another in nothing that a way could find.
func (g *grid) same(o *grid) bool {
	for axis := range g.lines {
		if !slices.Equal(g.lines[axis], o.lines[axis]) {
			return false
		}
	}
	return slices.Equal(g.solids, o.solids) && slices.Equal(g.boards, o.boards)
}

// fill tells of each piece what holes it needs and by how much it is shut.
func (g *grid) fill() {
	for axis := range g.pieces {
		g.pieces[axis] = make([]piece, g.size)
		along := geom.Axis(axis)
		for _, l := range g.lanes {
			r := g.touching(l)
			r[axis][1]--
			g.each(along, r, func(p *piece, _ int) { p.lane = true })
		}
		for _, s := range g.solids {
			g.each(along, g.crossing(s.Box, along), func(p *piece, _ int) { p.shut++ })
		}
		for i, b := range g.boards {
			g.bore(b, int32(i+1), along)
		}
	}
	for at := range g.pieces[geom.V] {
		g.pieces[geom.V][at].lane = true
	}
}

// bore tells of each piece along an axis whether a board shuts it, which the board of that
// number does once, or wants a hole.
func (g *grid) bore(b *Board, number int32, along geom.Axis) {
	shut := func(p *piece, _ int) {
		if p.by != number {
			p.by = number
			p.shut++
		}
	}
	all := g.crossing(b.Box, along)
	if b.Normal != along {
		g.each(along, all, shut)
		return
	}
	through := b.Box.Along(along)
	for _, s := range b.Shut {
		in := geom.Box{U: s.U.Intersect(b.Box.U), V: s.V.Intersect(b.Box.V), Z: s.Z.Intersect(b.Box.Z)}
		g.each(along, g.crossing(in.With(along, through), along), shut)
	}
	mid := through.Mid()
	g.each(along, all, func(p *piece, at int) {
		switch from := g.spot(at); {
		case !b.frames(from):
			shut(p, at)
		case p.by != number && from[along] < mid && mid <= g.spot(at + g.steps[along])[along]:
			p.holes++
		}
	})
}

// crossing are the lines of each axis, from one and before another, on which the pieces
// along an axis begin that go through the inside of a box.
func (g *grid) crossing(b geom.Box, along geom.Axis) (r [3][2]int) {
	for axis := range r {
		side, lines := b.Along(geom.Axis(axis)), g.lines[axis]
		from, _ := slices.BinarySearch(lines, side.Lo+1)
		before, _ := slices.BinarySearch(lines, side.Hi)
		if geom.Axis(axis) == along {
			from, before = max(from-1, 0), min(before, len(lines)-1)
		}
		r[axis] = [2]int{from, before}
	}
	return r
}

// touching are the lines of each axis, from one and before another, that cross in a box,
// its faces included.
func (g *grid) touching(b geom.Box) (r [3][2]int) {
	for axis := range r {
		side, lines := b.Along(geom.Axis(axis)), g.lines[axis]
		from, _ := slices.BinarySearch(lines, side.Lo)
		before, _ := slices.BinarySearch(lines, side.Hi+1)
		r[axis] = [2]int{from, before}
	}
	return r
}

// each calls f with each piece along an axis that begins on some lines, and the crossing
// where it does.
func (g *grid) each(along geom.Axis, r [3][2]int, f func(p *piece, at int)) {
	for z := r[2][0]; z < r[2][1]; z++ {
		for v := r[1][0]; v < r[1][1]; v++ {
			for u := r[0][0]; u < r[0][1]; u++ {
				at := u*g.steps[0] + v*g.steps[1] + z*g.steps[2]
				f(&g.pieces[along][at], at)
			}
		}
	}
}

// beside is the crossing next to another along an axis, and where the piece between them
// begins; ok is false at the end of a line.
func (g *grid) beside(at, axis, by int) (to, begins int, ok bool) {
	i := at/g.steps[axis]%len(g.lines[axis]) + by
	to = at + by*g.steps[axis]
	return to, min(at, to), 0 <= i && i < len(g.lines[axis])
}

func (g *grid) number(p Spot) (at int) {
	for axis, step := range g.steps {
		i, _ := slices.BinarySearch(g.lines[axis], p[axis])
		at += i * step
	}
	return at
}

func (g *grid) spot(at int) (p Spot) {
	for axis, step := range g.steps {
		p[axis] = g.lines[axis][at/step%len(g.lines[axis])]
	}
	return p
}

// line tells of a straight part of a way what holes it needs and by what it is shut.
func (w *window) line(p, q Spot, axis geom.Axis) (holes []Hole, shut []string) {
	for _, solid := range w.solids {
		if inside(solid.Box, p, q) {
			shut = append(shut, solid.What)
		}
	}
	for i, b := range w.boards {
		if !inside(b.Box, p, q) {
			continue
		}
		if b.Normal != axis || !b.lets(p) {
			shut = append(shut, b.What)
			continue
		}
		at := p
		at[axis] = b.Box.Along(axis).Mid()
		if lo, hi := min(p[axis], q[axis]), max(p[axis], q[axis]); lo < at[axis] && at[axis] <= hi {
			holes = append(holes, Hole{w.nth[i], at})
		}
	}
	return holes, shut
}
