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
	x := s.construct(j.Work / 8)
	l.AtLeast = s.patterns(x, l.AtLeast, j.Work/2)
	if p := s.kinds[0].price; len(s.kinds) == 1 && p > 0 {
		l.Fewest = max(l.Fewest, int(l.AtLeast/p))
	}
	s.cheapen(x, l.AtLeast, j.Work-j.Work/4)
	s.clean(x, s.work+j.Work/4)
	for _, p := range x.out {
		l.Out = append(l.Out, pieces[p])
	}
	slices.Sort(l.Out)
	l.Price, l.Work = x.price, s.work
	slices.SortFunc(x.trees, func(a, b *tree) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(b.used, a.used), cmp.Compare(a.first(root), b.first(root)))
	})
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

// construct makes a first solution, the best of a few: of fewer where these take much work.
func (s *search) construct(work int) *solution {
	var best *solution
	for try := 0; try < 8 && (try == 0 || s.work < work); try++ {
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

// within looks for a solution that has nothing out and costs no more than may be paid, and puts
// what it finds in the place of one that costs more. It starts from that anew when it is stuck,
// and then cools down more slowly.
func (s *search) within(best *solution, work int) bool {
	for history := quick; s.work < work; history *= 2 {
		x := &solution{}
		best.copyTo(x)
		for x.price > s.most {
			s.remove(x, s.emptiest(x))
		}
		s.recreate(x, 0, none)
		found := false
		c := climb{history: history, patience: patience * history, work: work, measure: s.measure}
		x = s.climb(x, c, func(x *solution) bool {
			found = len(x.out) == 0
			return found
		})
		if !found && !s.better(x, best) {
			s.release(x)
			continue
		}
		s.release(best)
		*best = *x
		s.prune(best)
		if found {
			return true
		}
	}
	return false
}

// clean looks for solutions of the same price with a larger offcut, until that is all there is.
func (s *search) clean(best *solution, work int) {
	if len(best.out) > 0 {
		return
	}
	s.most = best.price
	largest := best.largest()
	x := &solution{}
	best.copyTo(x)
	x = s.climb(x, climb{history: quick, work: work, measure: s.tidy}, func(x *solution) bool {
		if l := x.largest(); len(x.out) == 0 && (x.price < best.price || l > largest) {
			s.release(best)
			x.copyTo(best)
			s.prune(best)
			s.most, largest = best.price, l
		}
		return math.Sqrt(largest) >= s.free(best)*(1-1e-9)
	})
	s.release(x)
}

// free is the area that is left of all sheets.
func (s *search) free(x *solution) (sum float64) {
	for i := range x.gists {
		sum += x.gists[i].free
	}
	return sum
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

// climb says how a solution is changed step by step: how many steps ago the solution was that a
// new one must not be worse than; after how many without a better one it is stuck, 0 for never;
// and when all work is done.
type climb struct {
	history, patience, work int
	measure                 func(*solution)
}

const (
	// quick is a history that a climb is done with soon, and patience how many times that it
	// waits. Small jobs that are filled to the last need ten times and more of it; others lose
	// time by it.
	quick    = 40
	patience = 100
	// rescan is after how many steps all sheets are tried for all pieces that are out. In others
	// a piece that was out before is tried in sheets that were changed only.
	rescan = 16
	// step is the work of a step beside that of looking for places.
	step = 150
)

// climb changes a solution until it is stuck, or work is done, or what it is shown on the way
// will do, and returns the last one.
func (s *search) climb(now *solution, c climb, done func(*solution) bool) *solution {
	next := &solution{}
	c.measure(now)
	late := slices.Repeat([]float64{now.cost}, c.history)
	lowest, since := now.cost, 0
	for i := 0; !done(now) && s.work < c.work && (c.patience == 0 || since < c.patience); i++ {
		now.copyTo(next)
		stuck := len(next.out)
		if i%rescan == 0 {
			stuck = 0
		}
		s.ruin(next)
		s.recreate(next, stuck, none)
		c.measure(next)
		s.work += step
		slot := &late[i%c.history]
		if next.cost <= now.cost || next.cost < *slot {
			now, next = next, now
		}
		*slot = min(*slot, now.cost)
		s.release(next)
		if since++; now.cost < lowest {
			lowest, since = now.cost, 0
		}
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
