package spacing

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// ground is where things may stand: marks in free spans, and fixed places.
type ground struct {
	whole  geom.Span
	within geom.Span
	mark   Length
	free   []geom.Span
	fixed  []Length
}

func (a *Ask) ground(mark Length) ground {
	g := ground{whole: a.Stretch, within: a.Stretch, mark: mark, fixed: a.Fixed}
	closed := slices.Clone(a.Closed)
	slices.SortStableFunc(closed, func(x, y Closed) int { return cmp.Compare(x.Span.Lo, y.Span.Lo) })
	at := a.Stretch.Lo
	for _, c := range closed {
		if c.Span.Size() <= 0 || c.Span.Hi <= at || c.Span.Lo >= a.Stretch.Hi {
			continue
		}
		if c.Span.Lo >= at {
			g.free = append(g.free, geom.Span{Lo: at, Hi: min(c.Span.Lo, a.Stretch.Hi)})
		}
		at = c.Span.Hi
	}
	if at <= a.Stretch.Hi {
		g.free = append(g.free, geom.Span{Lo: at, Hi: a.Stretch.Hi})
	}
	return g
}

func (g *ground) mid() Length { return g.whole.Mid() }

func (g *ground) open(x Length) bool {
	return slices.ContainsFunc(g.free, func(s geom.Span) bool { return s.Lo <= x && x <= s.Hi })
}

// hold fixes the outer two and keeps the others between them.
func (g *ground) hold(first, last Length) {
	g.within = geom.Span{Lo: first, Hi: last}
	fixed := append(slices.Clone(g.fixed), first, last)
	slices.Sort(fixed)
	g.fixed = slices.Compact(fixed)
}

// up returns the mark at a place of the stretch or next on its right, and down
// on its left. Marks count from the nearer end.
func (g *ground) up(x Length) Length {
	size := g.whole.Size()
	if k := (x - g.whole.Lo + g.mark - 1) / g.mark; k*g.mark <= size/2 {
		return g.whole.Lo + k*g.mark
	}
	return g.whole.Hi - min((size-1)/2, g.whole.Hi-x)/g.mark*g.mark
}

func (g *ground) down(x Length) Length {
	return g.whole.Lo + g.whole.Hi - g.up(g.whole.Lo+g.whole.Hi-x)
}

// nearest is the free mark nearest to a place, the left one of two.
func (g *ground) nearest(x Length) (Length, bool) {
	var best Length
	found := false
	for _, s := range g.free {
		in := min(max(x, s.Lo), s.Hi)
		for _, p := range [2]Length{g.down(in), g.up(in)} {
			if s.Lo <= p && p <= s.Hi && (!found || length.Apart(p, x) < length.Apart(best, x)) {
				best, found = p, true
			}
		}
	}
	return best, found
}

// places returns the marks at which things may stand, a step or more apart but
// for the outermost of each free span, and the fixed places.
func (g *ground) places(step Length) []Length {
	var out []Length
	for _, s := range g.free {
		s = s.Intersect(g.within)
		if s.Size() < 0 {
			continue
		}
		last := g.down(s.Hi)
		for p := g.up(s.Lo); p <= last; p = g.up(min(p+step-g.mark+1, last)) {
			if out = append(out, p); p == last {
				break
			}
		}
	}
	out = append(out, g.fixed...)
	slices.Sort(out)
	return slices.Compact(out)
}

// round returns the marks near a place in its free span; a fixed place alone.
func (g *ground) round(x, step Length) []Length {
	at := slices.IndexFunc(g.free, func(s geom.Span) bool { return s.Lo <= x && x <= s.Hi })
	if at < 0 || slices.Contains(g.fixed, x) {
		return []Length{x}
	}
	span := g.free[at].Intersect(g.within)
	var out []Length
	for j := Length(-around); j <= around; j++ {
		p := x
		if j != 0 {
			if p += j * step; p < span.Lo || p > span.Hi {
				continue
			}
			if p = g.up(p); p > span.Hi {
				continue
			}
		}
		out = append(out, p)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// hops is the fewest places between two that leave no gap of more than a length;
// false where what is closed is wider than that.
func (g *ground) hops(from, to, most Length) (int, bool) {
	n, i := 0, 0
	for ; to-from > most && n <= mostThings; n++ {
		next := from
		for ; i < len(g.free) && g.free[i].Lo <= from+most; i++ {
			if p := g.down(min(g.free[i].Hi, from+most)); p >= g.free[i].Lo {
				next = max(next, p)
			}
			if g.free[i].Hi > from+most {
				break
			}
		}
		if next == from {
			return 0, false
		}
		from, i = next, max(0, i-1)
	}
	return n, true
}
