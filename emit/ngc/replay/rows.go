package replay

import (
	"cmp"
	"math"
	"slices"
)

// swath is what a round bit sweeps along a stretch: all within r of it.
type swath struct {
	stretch
	r float64
}

// interval is a piece of a row.
type interval struct{ lo, hi float64 }

// row returns the part of a line along X that lies in the swath; it is in one
// piece, and empty (lo above hi) where the line misses the swath. Its ends lie on
// the circles round the stretch's ends, or on the lines beside it.
func (s swath) row(y float64) interval {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	in := interval{math.Inf(1), math.Inf(-1)}
	for _, end := range [2]spot{s.a, s.b} {
		if h := float64(s.r*s.r) - float64((y-end.y)*(y-end.y)); h >= 0 {
			in = interval{min(in.lo, end.x-math.Sqrt(h)), max(in.hi, end.x+math.Sqrt(h))}
		}
	}
	if math.Abs(dy) <= 1e-9 {
		return in
	}
	l := math.Hypot(dx, dy)
	for _, beside := range [2]float64{s.r, -s.r} {
		if t := (y - s.a.y - beside*dx/l) / dy; t >= 0 && t <= 1 {
			x := s.a.x - beside*dy/l + float64(t*dx)
			in = interval{min(in.lo, x), max(in.hi, x)}
		}
	}
	return in
}

// on returns the part of a stretch's line that lies in the swath, in mm from its start.
func (s swath) on(line stretch) interval {
	l := line.length()
	cos, sin := (line.b.x-line.a.x)/l, (line.b.y-line.a.y)/l
	turned := func(p spot) spot {
		dx, dy := p.x-line.a.x, p.y-line.a.y
		return spot{float64(dx*cos) + float64(dy*sin), float64(dy*cos) - float64(dx*sin)}
	}
	return swath{stretch{turned(s.a), turned(s.b)}, s.r}.row(0)
}

// rows calls f for lines along X in the middle of steps from one Y to another one,
// as many as come to the step at most, with what the swaths cover of each: pieces
// in order, none touching the next. They are good until f returns.
func rows(swaths []swath, from, to, step float64, f func(y float64, covered []interval) error) error {
	swaths = slices.Clone(swaths)
	slices.SortFunc(swaths, func(s, o swath) int { return cmp.Compare(s.low(), o.low()) })
	n := math.Ceil((to - from) / step)
	var near []swath
	var covered []interval
	for k := 0.0; k < n; k++ {
		y := from + (k+0.5)*(to-from)/n
		for len(swaths) > 0 && swaths[0].low() <= y {
			near, swaths = append(near, swaths[0]), swaths[1:]
		}
		near = slices.DeleteFunc(near, func(s swath) bool { return max(s.a.y, s.b.y)+s.r < y })
		covered = covered[:0]
		for _, s := range near {
			if in := s.row(y); in.lo <= in.hi {
				covered = append(covered, in)
			}
		}
		covered = joined(covered)
		if err := f(y, covered); err != nil {
			return err
		}
	}
	return nil
}

// low is the least Y of a swath.
func (s swath) low() float64 { return min(s.a.y, s.b.y) - s.r }

// joined sorts pieces and joins those that touch, in place.
func joined(in []interval) []interval {
	slices.SortFunc(in, func(a, b interval) int { return cmp.Compare(a.lo, b.lo) })
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

// common returns what is in both of two lists of pieces, each in order.
func common(a, b []interval) []interval {
	var out []interval
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
	for _, c := range append(slices.Clip(covered), interval{piece.hi, piece.hi}) {
		if end := min(c.lo, piece.hi); end-at > longest.hi-longest.lo {
			longest = interval{at, end}
		}
		at = max(at, c.hi)
	}
	return longest
}
