package spacing

import (
	"slices"

	"barwright/lang/length"
)

// What one row may cost to find, in places looked at.
const (
	mostMarks  = 1 << 12
	mostPlaces = 1 << 22
	around     = 8 // marks to either side that a place is bettered by at a time
)

// place finds the best row of Count: to the nanometre first, each then moved to
// the nearest mark. Where that breaks a limit, it is the best row of marks.
func (a Ask) place() ([]Length, *Refusal) {
	if a.Count > mostThings {
		return nil, &Refusal{Cause: TooMany, Count: mostThings}
	}
	size, gaps := a.Stretch.Size(), Length(a.Count-1)
	if gaps*max(a.Least, 1) > size || a.Most > 0 && (gaps+2)*a.Most < size {
		return nil, a.refuse()
	}
	if pinned := !a.HalfEnds && len(a.Closed) == 0; pinned && a.Most > 0 && gaps > 0 && gaps*a.Most < size-2*a.End {
		return nil, a.refuse() // the outer ones stand at End, and the others cannot bridge what lies between
	}
	if a.Count == 1 {
		a.HalfEnds = true
		if g := a.ground(1); len(a.Fixed) == 0 && g.open(g.mid()) && (a.Most == 0 || a.image(g.mid())-a.Stretch.Lo <= a.Most) {
			return []Length{g.mid()}, nil
		}
	}
	fine, refusal := a.rowOn(1)
	if a.Mark == 1 {
		return fine, refusal
	}
	g := a.ground(a.Mark)
	if found := a.marked(&g, fine); found != nil {
		return found, nil
	}
	return a.rowOn(a.Mark)
}

// rowOn finds the best row on marks.
func (a Ask) rowOn(mark Length) ([]Length, *Refusal) {
	g := a.ground(mark)
	if !a.HalfEnds {
		if refusal := a.pin(&g); refusal != nil {
			return nil, refusal
		}
	}
	odd := a.Mirrored && a.Count%2 == 1
	mid := g.mid()
	alone := 2*mid == a.Stretch.Lo+a.Stretch.Hi // the middle is its own image
	if odd && !g.open(mid) || a.Mirrored && odd != alone && slices.Contains(a.Fixed, mid) {
		return nil, a.refuse()
	}
	r := a.row(&g, odd)
	if r.n == 0 {
		if r.last(mid) == never {
			return nil, a.refuse()
		}
		return a.whole(nil, mid, odd), nil
	}
	left := a.even(&g, r.n)
	if mark > 1 || left == nil || !r.sound(left) {
		left = r.find(&g)
	}
	if left == nil {
		return nil, a.refuse()
	}
	return a.whole(left, mid, odd), nil
}

// marked moves each to the nearest mark, halves away from the nearer end; nil
// where a limit forbids it, or there are none.
func (a *Ask) marked(g *ground, fine []Length) []Length {
	out := slices.Clone(fine)
	for i, x := range fine {
		switch {
		case slices.Contains(a.Fixed, x) || a.Mirrored && 2*i+1 == len(fine):
			continue
		case a.Mirrored && 2*i+1 > len(fine):
			out[i] = a.image(out[len(out)-1-i])
			continue
		}
		near := g.whole.Lo + length.Round(x-g.whole.Lo, g.mark)
		if x > g.mid() {
			near = g.whole.Hi - length.Round(g.whole.Hi-x, g.mark)
		}
		if !g.open(near) || min(near-g.whole.Lo, g.whole.Hi-near)%g.mark != 0 {
			var ok bool
			if near, ok = g.nearest(x); !ok {
				return nil
			}
		}
		out[i] = near
	}
	for i, x := range out {
		before, after := x-a.Stretch.Lo, a.Stretch.Hi-x
		if i > 0 {
			if before = x - out[i-1]; before < max(a.Least, 1) {
				return nil
			}
		}
		if i < len(out)-1 {
			after = 0
		}
		if a.Most > 0 && max(before, after) > a.Most {
			return nil
		}
	}
	return out
}

// pin holds the outer ones to End, or as near to it as they may stand.
func (a *Ask) pin(g *ground) *Refusal {
	first, ok := g.nearest(a.Stretch.Lo + a.End)
	last, alike := a.image(first), ok
	if !a.Mirrored {
		last, alike = g.nearest(a.Stretch.Hi - a.End)
	}
	if !ok || !alike || first >= last {
		return a.refuse()
	}
	if n := len(a.Fixed); n > 0 {
		first, last = min(first, a.Fixed[0]), max(last, a.Fixed[n-1])
	}
	g.hold(first, last)
	a.Fixed = g.fixed
	if a.Count < len(a.Fixed) {
		return &Refusal{Cause: TooFew, Count: len(a.Fixed)}
	}
	return nil
}

// row states the costs and limits of a row, or of its left half.
func (a *Ask) row(g *ground, odd bool) row {
	r := row{n: a.Count, least: max(a.Least, 1), most: a.Most, fixed: g.fixed, weight: 1}
	end := func(gap Length) area {
		switch {
		case a.Most > 0 && gap > a.Most:
			return never
		case a.HalfEnds:
			return square(gap, 2*r.weight)
		}
		return area{}
	}
	r.first = func(x Length) area { return end(x - a.Stretch.Lo) }
	r.last = func(x Length) area { return end(a.Stretch.Hi - x) }
	if !a.Mirrored {
		return r
	}
	r.n, r.weight = a.Count/2, 2
	mid := g.mid()
	g.within.Hi = min(g.within.Hi, mid)
	g.fixed = slices.DeleteFunc(slices.Clone(g.fixed), func(x Length) bool { return a.image(x) <= x || odd && x >= mid })
	r.fixed = g.fixed
	r.last = func(x Length) area {
		switch {
		case !odd:
			return r.gap(a.image(x)-x, 1)
		case r.n == 0:
			return end(a.image(mid) - a.Stretch.Lo)
		}
		return r.gap(mid-x, 1).plus(r.gap(a.image(x)-mid, 1))
	}
	return r
}

// even returns where the first n of Count stand if they are as even as whole
// nanometres can be; nil where something fixed or closed forbids it.
func (a *Ask) even(g *ground, n int) []Length {
	pins := 0
	if !a.HalfEnds {
		pins = 2
	}
	if len(a.Fixed) > pins {
		return nil
	}
	out := make([]Length, n)
	count := Length(a.Count)
	for i := range out {
		k := Length(i)
		if a.HalfEnds {
			out[i] = a.Stretch.Lo + a.Stretch.Size()*(2*k+1)/(2*count)
		} else {
			out[i] = a.Fixed[0] + (a.Fixed[1]-a.Fixed[0])*k/(count-1)
		}
		if !g.open(out[i]) {
			return nil
		}
	}
	return out
}

// whole adds the mirrored half.
func (a *Ask) whole(left []Length, mid Length, odd bool) []Length {
	if !a.Mirrored {
		return left
	}
	out := slices.Clone(left)
	if odd {
		out = append(out, mid)
	}
	for _, x := range slices.Backward(left) {
		out = append(out, a.image(x))
	}
	return out
}

// find returns the best row on a ground; nil where there is none.
func (r *row) find(g *ground) []Length {
	step := max(g.mark, g.within.Size()/Length(min(mostMarks, mostPlaces/r.n)))
	all := g.places(step)
	places := make([][]Length, r.n)
	for i := range places {
		places[i] = all
	}
	found := r.best(places)
	if found == nil || step == g.mark {
		return found
	}
	return r.better(g, found, step)
}

// sound reports whether a row keeps the limits.
func (r *row) sound(at []Length) bool {
	places := make([][]Length, len(at))
	for i := range at {
		places[i] = at[i : i+1]
	}
	return r.best(places) != nil
}

// better moves a row to the best of the marks round each place, again and again
// on ever finer marks. What must be least is convex between two closed
// stretches, so that no further place there is better than the best near ones.
func (r *row) better(g *ground, at []Length, step Length) []Length {
	for {
		places := make([][]Length, r.n)
		for i, x := range at {
			places[i] = g.round(x, step)
		}
		next := r.best(places)
		if !slices.Equal(next, at) {
			at = next
			continue
		}
		if step == g.mark {
			return at
		}
		step = max(g.mark, step/around)
	}
}
