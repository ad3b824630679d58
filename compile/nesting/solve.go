package nesting

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// Solve lays out all pieces that sheets can give, for the least price and then with the largest
// offcut that it finds. It stops when the price is the least possible, or when it is proved that
// too few sheets are left; and no offcut is sought for more than a quarter of the work.
func (j *Job) Solve() Layout {
	s, pieces := j.search()
	l := Layout{Out: j.Misfits()}
	switch {
	case len(pieces) == 0:
	case j.Free:
		j.solveFree(s, pieces, &l)
	default:
		enough := false
		l.AtLeast, l.Fewest, enough = s.bound()
		saw := sawing(s)
		x := saw.construct(j.Work / 8)
		if enough {
			l.AtLeast = saw.patterns(x, l.AtLeast, j.Work/2)
			if p := s.kinds[0].price; len(s.kinds) == 1 && p > 0 {
				l.Fewest = max(l.Fewest, int(l.AtLeast/p))
			}
			saw.cheapen(x, l.AtLeast, j.Work-j.Work/4)
			saw.clean(x, s.work+j.Work/4)
		}
		saw.tell(x, &l, j.Kerf, pieces)
	}
	return l
}

// sawer looks for layouts that a saw can cut.
type sawer struct{ *solver[*tree] }

func sawing(s *search) sawer {
	return sawer{&solver[*tree]{search: s, fresh: func() *tree { return &tree{} }, step: 150}}
}

// tell tells what was found, pieces by their index in the job.
func (s *solver[S]) tell(x *solution[S], l *Layout, kerf Length, pieces []int) {
	for _, p := range x.out {
		l.Out = append(l.Out, pieces[p])
	}
	slices.Sort(l.Out)
	l.Price, l.Work = x.price, s.work
	slices.SortFunc(x.sheets, func(a, b laid[S]) int {
		first := func(l laid[S]) int32 { return slices.Min(l.on.pieces(nil)) }
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(b.used, a.used), cmp.Compare(first(a), first(b)))
	})
	for i := range x.sheets {
		l.Used = append(l.Used, x.sheets[i].on.tell(s.search, kerf, pieces))
	}
}

// search makes a search of the pieces that sheets can give, and tells which they are.
func (j *Job) search() (*search, []int) {
	s := &search{rng: rng{1}, stages: j.Stages, most: math.MaxInt64}
	var pieces []int
	for i, p := range j.Pieces {
		if j.gives(p) {
			w, h := p.X+j.Kerf, p.Y+j.Kerf
			s.shapes = append(s.shapes, shape{w: w, h: h, area: float64(w) * float64(h), turns: p.Turns && w != h})
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
func (s *solver[S]) construct(work int) *solution[S] {
	var best *solution[S]
	for try := 0; try < 8 && (try == 0 || s.work < work); try++ {
		x := &solution[S]{bought: make([]int, len(s.kinds))}
		for p := range s.shapes {
			x.out = append(x.out, int32(p))
		}
		first := try
		if first >= len(s.kinds) {
			first = none
		}
		s.portions(x, first)
		s.prune(x)
		if best == nil || s.better(x, best) {
			best = x
		}
	}
	return best
}

// mostAtOnce is how many pieces are placed among each other's sheets alone when a solution is first made: what
// that takes grows with their square.
const mostAtOnce = 3000

// portions places all pieces, in as few portions as that takes, each of them of all sizes.
func (s *solver[S]) portions(x *solution[S], first int) {
	all, n := x.out, (len(x.out)+mostAtOnce-1)/mostAtOnce
	var out []int32
	for k := range n {
		x.out = nil
		for i := k; i < len(all); i += n {
			x.out = append(x.out, all[i])
		}
		s.recreate(x, 0, first)
		out = append(out, x.out...)
		s.from = len(x.sheets)
	}
	x.out, s.from = out, 0
}

// better reports whether a solution has less out, or else costs less.
func (s *solver[S]) better(x, than *solution[S]) bool {
	return cmp.Or(cmp.Compare(s.outside(x), s.outside(than)), cmp.Compare(x.price, than.price)) < 0
}

// cheapen looks for solutions that cost less, one after the other, until work is done.
func (s *solver[S]) cheapen(best *solution[S], atLeast int64, work int) {
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
func (s *solver[S]) within(best *solution[S], work int) bool {
	for history := quick; s.work < work; history *= 2 {
		x := &solution[S]{}
		best.copyTo(x)
		for x.price > s.most {
			s.remove(x, x.emptiest())
		}
		s.recreate(x, 0, none)
		found := false
		c := climb[S]{history: history, patience: patience * history, work: work, measure: s.measure}
		x = s.climb(x, c, func(x *solution[S]) bool {
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
func (s *solver[S]) clean(best *solution[S], work int) {
	if len(best.out) > 0 {
		return
	}
	s.most = best.price
	largest := best.largest()
	x := &solution[S]{}
	best.copyTo(x)
	x = s.climb(x, climb[S]{history: quick, work: work, measure: s.tidy}, func(x *solution[S]) bool {
		if l := x.largest(); len(x.out) == 0 && (x.price < best.price || l > largest) {
			s.release(best)
			x.copyTo(best)
			s.prune(best)
			s.most, largest = best.price, l
		}
		return math.Sqrt(largest) >= best.free()*(1-1e-9)
	})
	s.release(x)
}

// tidy measures a solution by what is out, and then by its largest offcut.
func (s *solver[S]) tidy(x *solution[S]) {
	s.measure(x)
	x.cost -= math.Sqrt(x.largest()) / s.size
}

// climb says how a solution is changed step by step: how many steps ago the solution was that a
// new one must not be worse than; after how many without a better one it is stuck, 0 for never;
// and when all work is done.
type climb[S sheet[S]] struct {
	history, patience, work int
	measure                 func(*solution[S])
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
)

// climb changes a solution until it is stuck, or work is done, or what it is shown on the way
// will do, and returns the last one.
func (s *solver[S]) climb(now *solution[S], c climb[S], done func(*solution[S]) bool) *solution[S] {
	next := &solution[S]{}
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
		s.work += s.step
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
