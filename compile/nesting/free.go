package nesting

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
)

// solveFree lays pieces out for a router, which cuts anywhere. What a saw can cut it can too:
// the search starts from that.
func (j *Job) solveFree() Layout {
	s, pieces := j.search()
	s.stages = 0
	l := Layout{Out: j.Misfits()}
	if len(pieces) == 0 {
		return l
	}
	solids := j.solids(pieces)
	l.AtLeast, l.Fewest = s.inner(solids).bound()
	sawn := s.construct(j.Work / 16)
	s.cheapen(sawn, s.patterns(sawn, l.AtLeast, j.Work/4), j.Work/8)
	f := newFree(s)
	x := f.from(sawn)
	f.cheapen(x, l.AtLeast, j.Work/4*(3-index(solids != nil)))
	if solids != nil && (x.price > l.AtLeast || len(x.out) > 0) {
		x = f.interlock(x, solids, l.AtLeast, j.Work-j.Work/4)
	}
	f.clean(x, s.work+j.Work/4)
	for _, p := range x.out {
		l.Out = append(l.Out, pieces[p])
	}
	slices.Sort(l.Out)
	l.Price, l.Work = x.price, s.work
	for _, b := range x.beds {
		l.Used = append(l.Used, f.used(b, j.Kerf, pieces))
	}
	return l
}

// newFree makes a search for free layouts of one for sawn ones.
func newFree(s *search) *free {
	f := &free{search: s, least: Size{math.MaxInt64, math.MaxInt64}}
	for _, p := range s.shapes {
		w, h := p.w, p.h
		if p.turns {
			w, h = min(w, h), min(w, h)
		}
		f.least = Size{min(f.least.X, w), min(f.least.Y, h)}
	}
	return f
}

// from is a sawn layout as a free one.
func (f *free) from(sawn *solution) *loose {
	same := make([]int, len(f.shapes))
	for i := range same {
		same[i] = i
	}
	x := &loose{out: sawn.out, bought: sawn.bought, price: sawn.price}
	for _, t := range sawn.trees {
		b := f.bed()
		b.reset(t.kind)
		for _, p := range t.sheet(0, same).Placed {
			w, h := f.shapes[p.Piece].w, f.shapes[p.Piece].h
			if p.Turned {
				w, h = h, w
			}
			at := geom.R(0, 0, w, h).Shift(p.At)
			b.lies = append(b.lies, lying{piece: int32(p.Piece), turned: p.Turned, at: at, area: area(at)})
			b.used += area(at)
		}
		b.survey(f.kinds[b.kind], f.least)
		x.beds = append(x.beds, b)
	}
	return x
}

// used tells what lies on a bed, from the lower left corner on.
func (f *free) used(b *bed, kerf Length, pieces []int) Used {
	u := Used{Sheet: b.kind}
	for _, l := range b.lies {
		u.Placed = append(u.Placed, Placed{Piece: pieces[l.piece], At: geom.Point{X: l.at.X.Lo, Y: l.at.Y.Lo}, Turned: l.turned})
	}
	slices.SortFunc(u.Placed, func(p, q Placed) int {
		return cmp.Or(cmp.Compare(p.At.Y, q.At.Y), cmp.Compare(p.At.X, q.At.X))
	})
	b.survey(f.kinds[b.kind], Size{kerf + 1, kerf + 1})
	if r := b.largest(); r != (geom.Rect{}) {
		r.X.Hi, r.Y.Hi = r.X.Hi-kerf, r.Y.Hi-kerf
		u.Offcut = r
	}
	return u
}

// cheapen looks for solutions that cost less, one after the other, until work is done.
func (f *free) cheapen(best *loose, atLeast int64, work int) {
	for len(best.out) > 0 || best.price > atLeast {
		if len(best.out) == 0 {
			f.most = best.price - 1
		}
		if !f.within(best, work) {
			return
		}
	}
}

// within looks for a solution that has nothing out and costs no more than may be paid, and puts
// what it finds in the place of one that costs more. It starts from that anew when it is stuck,
// and then cools down more slowly.
func (f *free) within(best *loose, work int) bool {
	for history := quick; f.work < work; history *= 2 {
		x := &loose{}
		best.copyTo(x)
		for x.price > f.most {
			f.remove(x, x.emptiest())
		}
		f.recreate(x, 0)
		found := false
		x = f.climb(x, history, patience*history, work, f.measure, func(x *loose) bool {
			found = len(x.out) == 0
			return found
		})
		if !found && f.outside(x) >= f.outside(best) {
			f.release(x)
			continue
		}
		f.release(best)
		*best = *x
		f.prune(best)
		if found {
			return true
		}
	}
	return false
}

// clean looks for solutions of the same price with a larger offcut.
func (f *free) clean(best *loose, work int) {
	if len(best.out) > 0 {
		return
	}
	f.most = best.price
	largest := best.largest()
	x := &loose{}
	best.copyTo(x)
	tidy := func(x *loose) { x.cost = (f.outside(x) - x.largest()) / f.size }
	x = f.climb(x, quick, math.MaxInt, work, tidy, func(x *loose) bool {
		if l := x.largest(); len(x.out) == 0 && (x.price < best.price || l > largest) {
			f.release(best)
			x.copyTo(best)
			f.prune(best)
			f.most, largest = best.price, l
		}
		return false
	})
	f.release(x)
}

// climb changes a solution as that of search does.
func (f *free) climb(now *loose, history, patience, work int, measure func(*loose), done func(*loose) bool) *loose {
	next := &loose{}
	measure(now)
	late := slices.Repeat([]float64{now.cost}, history)
	lowest, since := now.cost, 0
	for i := 0; !done(now) && f.work < work && since < patience; i++ {
		now.copyTo(next)
		stuck := len(next.out)
		if i%rescan == 0 {
			stuck = 0
		}
		f.ruin(next)
		f.recreate(next, stuck)
		measure(next)
		f.work += 20 + len(next.beds)/4
		slot := &late[i%history]
		if next.cost <= now.cost || next.cost < *slot {
			now, next = next, now
		}
		*slot = min(*slot, now.cost)
		f.release(next)
		if since++; now.cost < lowest {
			lowest, since = now.cost, 0
		}
	}
	return now
}
