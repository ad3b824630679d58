package nesting

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// Solve lays out all pieces that sheets can give, for the least price and then with the largest
// offcut that it finds. It stops when the price is the least possible, and no offcut is sought
// for more than a quarter of the work.
func (j *Job) Solve() Layout {
	if j.Free {
		return j.solveFree()
	}
	s, pieces := j.search()
	l := Layout{Out: j.Misfits()}
	if len(pieces) == 0 {
		return l
	}
	l.AtLeast, l.Fewest = s.bound()
	x := s.construct()
	s.cheapen(x, l.AtLeast, j.Work-j.Work/4)
	s.clean(x, s.work+j.Work/4)
	for _, p := range x.out {
		l.Out = append(l.Out, pieces[p])
	}
	slices.Sort(l.Out)
	l.Price, l.Work = x.price, s.work
	for _, t := range x.trees {
		l.Used = append(l.Used, t.sheet(j.Kerf, pieces))
	}
	return l
}

// search makes a search of the pieces that sheets can give, and tells which they are.
func (j *Job) search() (*search, []int) {
	s := &search{rng: 1, stages: j.Stages, most: math.MaxInt64}
	var pieces []int
	for i, p := range j.Pieces {
		if j.gives(p) {
			w, h := p.X+j.Kerf, p.Y+j.Kerf
			s.shapes = append(s.shapes, shape{w, h, float64(w) * float64(h), p.Turns && w != h})
			pieces = append(pieces, i)
		}
	}
	s.key, s.stuck = make([]float64, len(s.shapes)), make([]bool, len(s.shapes))
	priced := slices.ContainsFunc(j.Sheets, func(s Sheet) bool { return s.Price > 0 })
	for _, b := range j.Sheets {
		k := kind{w: b.X + j.Kerf, h: b.Y + j.Kerf, price: b.Price, most: b.Most}
		k.area = float64(k.w) * float64(k.h)
		if !priced {
			k.price = b.micrometres()
		}
		if k.most == 0 {
			k.most = math.MaxInt
		}
		s.kinds = append(s.kinds, k)
		s.size = max(s.size, k.area)
	}
	return s, pieces
}

// micrometres is an area in square micrometres, at least one.
func (s Size) micrometres() int64 {
	hi, lo := bits.Mul64(uint64(s.X), uint64(s.Y))
	q, _ := bits.Div64(hi, lo, 1e6)
	return max(1, int64(q))
}

// construct makes a first solution, the best of a few.
func (s *search) construct() *solution {
	var best *solution
	for try := range 8 {
		x := &solution{bought: make([]int, len(s.kinds))}
		for p := range s.shapes {
			x.out = append(x.out, int32(p))
		}
		first := try
		if first >= len(s.kinds) {
			first = none
		}
		s.recreate(x, 0, first)
		s.prune(x)
		if best == nil || s.better(x, best) {
			best = x
		}
	}
	return best
}

// better reports whether a solution has less out, or else costs less.
func (s *search) better(x, than *solution) bool {
	out := func(x *solution) (sum float64) {
		for _, p := range x.out {
			sum += s.shapes[p].area
		}
		return sum
	}
	return cmp.Or(cmp.Compare(out(x), out(than)), cmp.Compare(x.price, than.price)) < 0
}

// cheapen looks for solutions that cost less, one after the other, until work is done.
func (s *search) cheapen(best *solution, atLeast int64, work int) {
	for len(best.out) > 0 || best.price > atLeast {
		if len(best.out) == 0 {
			s.most = best.price - 1
		}
		if !s.within(best, work) {
			return
		}
	}
}

// within looks for a solution that has nothing out and costs no more than may be paid. It starts
// from one that costs more, and puts what it finds in its place.
func (s *search) within(best *solution, work int) bool {
	x := &solution{}
	best.copyTo(x)
	for x.price > s.most {
		s.remove(x, s.emptiest(x))
	}
	s.recreate(x, 0, none)
	found := false
	x = s.climb(x, s.measure, work, func(x *solution) bool {
		found = len(x.out) == 0
		return found
	})
	if found || s.better(x, best) {
		s.release(best)
		*best = *x
		s.prune(best)
	}
	return found
}

// clean looks for solutions of the same price with a larger offcut.
func (s *search) clean(best *solution, work int) {
	if len(best.out) > 0 {
		return
	}
	s.most = best.price
	largest := best.largest()
	x := &solution{}
	best.copyTo(x)
	x = s.climb(x, s.tidy, work, func(x *solution) bool {
		if l := x.largest(); len(x.out) == 0 && (x.price < best.price || l > largest) {
			s.release(best)
			x.copyTo(best)
			s.prune(best)
			s.most, largest = best.price, l
		}
		return false
	})
	s.release(x)
}

// tidy measures a solution by what is out, and then by its largest offcut.
func (s *search) tidy(x *solution) {
	s.measure(x)
	x.cost -= math.Sqrt(x.largest()) / s.size
}

// largest is the square of the area of the largest offcut, of sheets that are cut at all.
func (x *solution) largest() (most float64) {
	for i, g := range x.gists {
		if x.trees[i].count > 0 {
			most = max(most, g.largest)
		}
	}
	return most
}

// history is how many steps ago the solution was that a new one must not be worse than.
const history = 40

// rescan is after how many steps all sheets are tried for all pieces that are out. In others a
// piece that was out before is tried in sheets that were changed only.
const rescan = 16

// climb changes a solution step by step until work is done, or what it is shown on the way
// will do, and returns the last one.
func (s *search) climb(now *solution, measure func(*solution), work int, done func(*solution) bool) *solution {
	next := &solution{}
	measure(now)
	var late [history]float64
	for i := range late {
		late[i] = now.cost
	}
	for step := 0; !done(now) && s.work < work; step++ {
		now.copyTo(next)
		stuck := len(next.out)
		if step%rescan == 0 {
			stuck = 0
		}
		s.ruin(next)
		s.recreate(next, stuck, none)
		measure(next)
		s.work += 150
		slot := &late[step%history]
		if next.cost <= now.cost || next.cost < *slot {
			now, next = next, now
		}
		*slot = min(*slot, now.cost)
		s.release(next)
	}
	return now
}

// emptiest is the sheet that holds the least.
func (s *search) emptiest(x *solution) int {
	least := 0
	for i, t := range x.trees {
		if t.used < x.trees[least].used {
			least = i
		}
	}
	return least
}

// prune gives back sheets that nothing is cut from.
func (s *search) prune(x *solution) {
	for i := len(x.trees) - 1; i >= 0; i-- {
		if x.trees[i].count == 0 {
			s.remove(x, i)
		}
	}
}
