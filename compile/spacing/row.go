package spacing

import (
	"math/bits"
	"slices"
	"sort"
)

// area is a sum of squares, of up to 128 bits.
type area struct{ hi, lo uint64 }

// never is what cannot be costs.
var never = area{^uint64(0), ^uint64(0)}

func square(l Length, times uint64) area {
	hi, lo := bits.Mul64(uint64(l), uint64(l))
	carry, low := bits.Mul64(lo, times)
	return area{hi*times + carry, low}
}

func (a area) plus(b area) area {
	if a == never || b == never {
		return never
	}
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, _ := bits.Add64(a.hi, b.hi, carry)
	return area{hi, lo}
}

func (a area) less(b area) bool { return a.hi < b.hi || a.hi == b.hi && a.lo < b.lo }

// row says what a row of n things costs, and what it must keep.
type row struct {
	n           int
	least, most Length            // between neighbours; most of 0 is no limit
	fixed       []Length          // that must not be passed over
	weight      uint64            // of the square of a gap
	first, last func(Length) area // cost of the outer ones
	each        func(Length) area // of every one; nil: none
}

// gap is the cost of a gap with a weight of its own.
func (r *row) gap(gap Length, weight uint64) area {
	if gap < r.least || r.most > 0 && gap > r.most {
		return never
	}
	return square(gap, weight)
}

// best returns the cheapest row whose ith thing stands at one of the ith
// places, which rise; among equals the leftmost. Nil where there is none.
//
// The square of a gap has the quadrangle inequality, which the limits keep: the
// further right a thing stands, the further right stands the best one before
// it. So the middle one of the places halves the search for the others.
func (r *row) best(places [][]Length) []Length {
	cost := make([]area, len(places[0]))
	for j, x := range places[0] {
		if cost[j] = never; len(r.fixed) == 0 || x <= r.fixed[0] {
			cost[j] = r.first(x).plus(r.own(x))
		}
	}
	from := make([][]int32, r.n)
	for i := 1; i < r.n; i++ {
		next := layer{r: r, from: places[i-1], cost: cost, to: places[i], next: make([]area, len(places[i])), back: make([]int32, len(places[i]))}
		first, last := reached(cost)
		if first < 0 {
			return nil
		}
		next.fill(0, len(next.to)-1, first, last)
		cost, from[i] = next.next, next.back
	}
	end, total := -1, never
	for j, x := range places[r.n-1] {
		if f := len(r.fixed); f > 0 && x < r.fixed[f-1] {
			continue
		}
		if c := cost[j].plus(r.last(x)); c.less(total) {
			end, total = j, c
		}
	}
	if end < 0 {
		return nil
	}
	out := make([]Length, r.n)
	for i := r.n - 1; ; i-- {
		out[i] = places[i][end]
		if i == 0 {
			return out
		}
		end = int(from[i][end])
	}
}

// reached tells the outermost places that some row ends at, -1 where none does.
func reached(cost []area) (first, last int) {
	can := func(c area) bool { return c != never }
	first = slices.IndexFunc(cost, can)
	for last = len(cost) - 1; last >= 0 && !can(cost[last]); last-- {
	}
	return first, last
}

func (r *row) own(x Length) area {
	if r.each == nil {
		return area{}
	}
	return r.each(x)
}

// layer works out the best rows that end at each of some places, from those
// that end at the places of the thing before.
type layer struct {
	r    *row
	from []Length
	cost []area
	to   []Length
	next []area
	back []int32
}

// fill works out the places lo … hi, whose best ones before them are among
// a … b.
func (l *layer) fill(lo, hi, a, b int) {
	for lo <= hi {
		mid := (lo + hi) / 2
		x := l.to[mid]
		low, high := l.window(x)
		best, at := never, -1
		for j := max(a, low); j <= min(b, high); j++ {
			if c := l.cost[j].plus(square(x-l.from[j], l.r.weight)); c.less(best) {
				best, at = c, j
			}
		}
		l.next[mid], l.back[mid] = best.plus(l.r.own(x)), int32(at)
		if at < 0 { // nothing leads here, which says nothing of the others
			l.fill(lo, mid-1, a, b)
			lo = mid + 1
			continue
		}
		l.fill(lo, mid-1, a, at)
		lo, a = mid+1, at
	}
}

// window tells which places before x keep the limits and pass nothing fixed.
func (l *layer) window(x Length) (low, high int) {
	if l.r.most > 0 {
		low = sort.Search(len(l.from), func(j int) bool { return l.from[j] >= x-l.r.most })
	}
	if f := sort.Search(len(l.r.fixed), func(j int) bool { return l.r.fixed[j] >= x }); f > 0 {
		low = max(low, sort.Search(len(l.from), func(j int) bool { return l.from[j] >= l.r.fixed[f-1] }))
	}
	return low, sort.Search(len(l.from), func(j int) bool { return l.from[j] > x-l.r.least }) - 1
}
