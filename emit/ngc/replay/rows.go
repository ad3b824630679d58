package replay

import (
	"cmp"
	"math"
	"slices"
)

// swath is what a round bit sweeps along a stretch, or along an arc between its ends: all
// within r of it.
type swath struct {
	stretch
	r   float64
	arc arc
	off spot // of a straight one, from its middle to the side on its right
}

// straight returns what a round bit sweeps along a stretch.
func straight(s stretch, r float64) swath {
	out := swath{stretch: s, r: r}
	if l := s.length(); l > 0 {
		out.off = spot{r * (s.b.y - s.a.y) / l, -r * (s.b.x - s.a.x) / l}
	}
	return out
}

// narrower returns a swath that ends so much short of its border.
func (s swath) narrower(by float64) swath {
	if s.arc.radius > 0 {
		s.r -= by
		return s
	}
	return straight(s.stretch, s.r-by)
}

// arc is a piece of a circle of at most half a turn; of no radius where there is none.
type arc struct {
	centre spot
	radius float64
	turn   float64 // radians, positive counter-clockwise
}

// interval is a piece of a row.
type interval struct{ lo, hi float64 }

// row appends the parts of a line along X that lie in the swath. Their ends lie on the
// circles round the stretch's ends, or on the lines or circles beside it.
func (s *swath) row(y float64, in []interval) []interval {
	if s.arc.radius > 0 {
		return s.bent(y, in)
	}
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	all := interval{math.Inf(1), math.Inf(-1)}
	for _, end := range [2]spot{s.a, s.b} {
		if at, ok := disc(end, s.r, y); ok {
			all = interval{min(all.lo, at.lo), max(all.hi, at.hi)}
		}
	}
	if math.Abs(dy) > 1e-9 {
		for _, off := range [2]spot{{-s.off.x, -s.off.y}, s.off} {
			if t := (y - s.a.y - off.y) / dy; t >= 0 && t <= 1 {
				x := s.a.x + off.x + float64(t*dx)
				all = interval{min(all.lo, x), max(all.hi, x)}
			}
		}
	}
	if all.lo > all.hi {
		return in
	}
	return append(in, all)
}

// disc returns the part of a row that lies in a disc; ok is false where it misses it.
func disc(c spot, r, y float64) (in interval, ok bool) {
	h := float64(r*r) - float64((y-c.y)*(y-c.y))
	if h < 0 {
		return in, false
	}
	h = math.Sqrt(h)
	return interval{c.x - h, c.x + h}, true
}

// bent is row for an arc: discs round its ends, and between them what lies between two
// circles.
func (s *swath) bent(y float64, in []interval) []interval {
	for _, end := range [2]spot{s.a, s.b} {
		if at, ok := disc(end, s.r, y); ok {
			in = append(in, at)
		}
	}
	outer, ok := disc(s.arc.centre, s.arc.radius+s.r, y)
	if !ok {
		return in
	}
	// Counter-clockwise, the sector is on the left of the radius to its start, and on the
	// right of that to its end.
	from, to := s.a, s.b
	if s.arc.turn < 0 {
		from, to = to, from
	}
	sector := outer
	for _, side := range [2]stretch{{s.arc.centre, from}, {to, s.arc.centre}} {
		dx, dy := side.b.x-side.a.x, side.b.y-side.a.y
		across := float64(dx * (y - side.a.y)) // the side of the point at side.a.x
		switch at := side.a.x + across/dy; {
		case dy > 0:
			sector.hi = min(sector.hi, at)
		case dy < 0:
			sector.lo = max(sector.lo, at)
		case across < 0:
			return in
		}
	}
	parts := [2]interval{sector, {1, 0}}
	if inner, ok := disc(s.arc.centre, s.arc.radius-s.r, y); ok && s.arc.radius > s.r {
		parts = [2]interval{{sector.lo, min(sector.hi, inner.lo)}, {max(sector.lo, inner.hi), sector.hi}}
	}
	for _, part := range parts {
		if part.lo <= part.hi {
			in = append(in, part)
		}
	}
	return in
}

// box returns a box that holds the swath.
func (s *swath) box() box {
	if s.arc.radius > 0 {
		return box{s.arc.centre, s.arc.centre}.grown(s.arc.radius + s.r)
	}
	return box{
		spot{min(s.a.x, s.b.x), min(s.a.y, s.b.y)},
		spot{max(s.a.x, s.b.x), max(s.a.y, s.b.y)},
	}.grown(s.r)
}

// on appends the parts of a stretch's line that lie in the swath, in mm from its start.
func (s swath) on(line stretch, in []interval) []interval {
	l := line.length()
	cos, sin := (line.b.x-line.a.x)/l, (line.b.y-line.a.y)/l
	turned := func(p spot) spot {
		dx, dy := p.x-line.a.x, p.y-line.a.y
		return spot{float64(dx*cos) + float64(dy*sin), float64(dy*cos) - float64(dx*sin)}
	}
	across := stretch{turned(s.a), turned(s.b)}
	if s.arc.radius == 0 {
		level := straight(across, s.r)
		return level.row(0, in)
	}
	s.stretch, s.arc.centre = across, turned(s.arc.centre)
	return s.row(0, in)
}

// rows calls f for lines along X in the middle of steps from one Y to another one,
// as many as come to the step at most, with what the swaths cover of each: pieces
// in order, none touching the next. They are good until f returns.
func rows(swaths []swath, from, to, step float64, f func(y float64, covered []interval) error) error {
	next := make([]lying, len(swaths))
	for i, s := range swaths {
		b := s.box()
		next[i] = lying{s, b.low.y, b.high.y}
	}
	slices.SortFunc(next, func(s, o lying) int { return cmp.Compare(s.low, o.low) })
	n := math.Ceil((to - from) / step)
	var near []lying
	var covered []interval
	ends := math.Inf(1) // the first of those near
	for k := 0.0; k < n; k++ {
		y := from + (k+0.5)*(to-from)/n
		for len(next) > 0 && next[0].low <= y {
			ends = min(ends, next[0].high)
			near, next = append(near, next[0]), next[1:]
		}
		if ends < y {
			near = slices.DeleteFunc(near, func(s lying) bool { return s.high < y })
			ends = math.Inf(1)
			for i := range near {
				ends = min(ends, near[i].high)
			}
		}
		covered = covered[:0]
		for i := range near {
			covered = near[i].row(y, covered)
		}
		covered = joined(covered)
		if err := f(y, covered); err != nil {
			return err
		}
	}
	return nil
}

// lying is a swath and the rows that it may meet.
type lying struct {
	swath
	low, high float64
}

// few pieces are sorted fastest one by one.
const few = 32

// joined sorts pieces and joins those that touch, in place.
func joined(in []interval) []interval {
	if len(in) > few {
		slices.SortFunc(in, func(a, b interval) int { return cmp.Compare(a.lo, b.lo) })
	} else {
		for i := range in {
			for k := i; k > 0 && in[k].lo < in[k-1].lo; k-- {
				in[k], in[k-1] = in[k-1], in[k]
			}
		}
	}
	out := in[:0]
	for _, p := range in {
		if last := len(out) - 1; last >= 0 && p.lo <= out[last].hi {
			out[last].hi = max(out[last].hi, p.hi)
		} else {
			out = append(out, p)
		}
	}
	return out
}

// common appends what is in both of two lists of pieces, each in order.
func common(a, b, out []interval) []interval {
	for _, p := range a {
		for _, q := range b {
			if in := (interval{max(p.lo, q.lo), min(p.hi, q.hi)}); in.lo < in.hi {
				out = append(out, in)
			}
		}
	}
	return out
}

// gap returns the longest part of a piece that is not covered.
func gap(piece interval, covered []interval) interval {
	longest, at := interval{piece.lo, piece.lo}, piece.lo
	for _, c := range covered {
		if end := min(c.lo, piece.hi); end-at > longest.hi-longest.lo {
			longest = interval{at, end}
		}
		at = max(at, c.hi)
	}
	if piece.hi-at > longest.hi-longest.lo {
		longest = interval{at, piece.hi}
	}
	return longest
}
