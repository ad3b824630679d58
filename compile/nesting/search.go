package nesting

import (
	"cmp"
	"math"
	"slices"
)

// search is what is looked for, and how far the search has come.
type search struct {
	rng
	shapes []shape
	kinds  []kind
	stages int
	least  Size  // no piece, nor solid of one, has less in x, nor in y
	most   int64 // what sheets may cost together
	size   float64
	work   int
	from   int  // no place is looked for in sheets before this one
	skip   int  // candidates until the next is passed over
	found  spot // the best of those so far
	key    []float64
	stuck  []bool // of pieces
}

// shape is a piece with a kerf added.
type shape struct {
	w, h   Length
	area   float64 // without notches
	turns  bool
	solids *solids // nil where it lies as its box
}

// kind is a sheet on sale with a kerf added.
type kind struct {
	w, h  Length
	area  float64
	price int64
	most  int
}

// solver looks for layouts on sheets of a sort by ruin and recreate: a few pieces are taken from
// a few sheets, with what lies near them, and are placed anew where they fit best. Schrimpf,
// Schneider, Stamm-Wilbrandt and Dueck, "Record breaking optimization results using the ruin and
// recreate principle", Journal of Computational Physics 159 (2000); for pieces cut edge to edge
// the goal tree of Gardeyn and Wauters, "A goal-driven ruin and recreate heuristic for the 2D
// variable-sized bin packing problem with guillotine constraints", European Journal of
// Operational Research 301 (2022). What is found is taken if it is not worse than what there was
// some steps before: Burke and Bykov, "The late acceptance hill-climbing heuristic", the same
// journal 258 (2017).
type solver[S sheet[S]] struct {
	*search
	fresh func() S
	step  int // work of a step beside that of looking for places
	pool  []S
}

const (
	// blink is how many candidates for a place are looked at until one is passed over, in the
	// mean: Christiaens and Vanden Berghe, "Slack induction by string removals for vehicle
	// routing problems", Transportation Science 54 (2020). More and fewer were worse.
	blink = 50
	// noise is how far an order of pieces by size is stirred.
	noise = 0.3
	// leftover is the worth of offcuts: enough to tell apart what has as much out.
	leftover = 0.05
)

// note makes the gist of a sheet that was changed.
func (s *solver[S]) note(x *solution[S], i int) {
	l := &x.sheets[i]
	l.gist = l.on.gist()
	l.free, l.changed = s.kinds[l.kind].area-l.used, true
}

// take is an empty sheet that was let go, or a new one.
func (s *solver[S]) take() S {
	last := len(s.pool) - 1
	if last < 0 {
		return s.fresh()
	}
	t := s.pool[last]
	s.pool = s.pool[:last]
	return t
}

// release lets the sheets go that no other solution holds.
func (s *solver[S]) release(x *solution[S]) {
	for i := range x.sheets {
		s.drop(&x.sheets[i])
	}
	x.sheets = x.sheets[:0]
}

func (s *solver[S]) drop(l *laid[S]) {
	if l.held--; l.held == 0 {
		s.pool = append(s.pool, l.on)
	}
}

// own makes sure that no other solution holds a sheet, and returns it.
func (s *solver[S]) own(x *solution[S], i int) S {
	l := &x.sheets[i]
	if l.held > 1 {
		c := s.take()
		s.work += l.on.copyTo(c)
		l.held--
		l.on, l.blank = c, c.base()
	}
	return l.on
}

// remove takes a sheet away, with its pieces out.
func (s *solver[S]) remove(x *solution[S], i int) {
	l := &x.sheets[i]
	x.out = l.on.pieces(x.out)
	x.bought[l.kind]--
	x.price -= s.kinds[l.kind].price
	s.drop(l)
	x.sheets = slices.Delete(x.sheets, i, i+1)
}

// prune gives back sheets that nothing is cut from.
func (s *solver[S]) prune(x *solution[S]) {
	for i := len(x.sheets) - 1; i >= 0; i-- {
		if x.sheets[i].count == 0 {
			s.remove(x, i)
		}
	}
}

// open adds an empty sheet that a piece fits, if one may be bought: first if it will do, or any.
func (s *solver[S]) open(x *solution[S], piece int32, first int) bool {
	found, ways := none, 0
	for k := range s.kinds {
		if !s.takes(s.kinds[k], s.shapes[piece]) || x.bought[k] >= s.kinds[k].most || s.kinds[k].price > s.most-x.price {
			continue
		}
		if k == first {
			found = k
			break
		}
		if ways++; ways == 1 || s.below(ways) == 0 {
			found = k
		}
	}
	if found == none {
		return false
	}
	on := s.take()
	on.reset(s.search, found)
	s.add(x, on)
	return true
}

// add buys a sheet for a solution.
func (s *solver[S]) add(x *solution[S], on S) {
	b := on.base()
	x.sheets = append(x.sheets, laid[S]{blank: b, on: on})
	s.note(x, len(x.sheets)-1)
	x.bought[b.kind]++
	x.price += s.kinds[b.kind].price
}

// takes reports whether a piece can be cut from an empty sheet.
func (s *search) takes(k kind, p shape) bool {
	return s.lies(k, p.w, p.h) || p.turns && s.lies(k, p.h, p.w)
}

func (s *search) lies(k kind, w, h Length) bool {
	return w <= k.w && h <= k.h && (s.stages != 1 || w == k.w || h == k.h)
}

// measure counts what is out, and then how scattered the offcuts are.
func (s *solver[S]) measure(x *solution[S]) {
	spread := 0.0
	for i := range x.sheets {
		spread += x.sheets[i].spread
	}
	x.cost = s.outside(x)/s.size - float64(leftover*(spread/(s.size*s.size)))
}

// outside is the area of the pieces that are out.
func (s *solver[S]) outside(x *solution[S]) (sum float64) {
	for _, p := range x.out {
		sum += s.shapes[p].area
	}
	return sum
}

// best finds where a piece goes best, in any sheet or in those that were changed.
func (s *solver[S]) best(x *solution[S], piece int32, changed bool) (spot, bool) {
	p := &s.shapes[piece]
	s.found = spot{loss: math.Inf(1)}
	w, h, area := float64(p.w), float64(p.h), p.area*(1-1e-9)
	for i := s.from; i < len(x.sheets); i++ {
		l := &x.sheets[i]
		if l.free < area || changed && !l.changed {
			continue
		}
		upright, turned := w <= l.wide && h <= l.high, p.turns && h <= l.wide && w <= l.high
		if !upright && !turned && p.solids == nil {
			continue
		}
		l.on.best(s.search, i, p, upright, turned)
	}
	s.work += 2 + (len(x.sheets)-s.from)/8
	return s.found, !math.IsInf(s.found.loss, 1)
}

// passes reports whether a candidate for a place is to be passed over.
func (s *search) passes() bool {
	if s.skip--; s.skip < 0 {
		s.skip = s.below(2 * blink)
		return true
	}
	return false
}

func (s *solver[S]) put(x *solution[S], piece int32, at spot) {
	s.own(x, at.sheet).put(s.search, piece, at)
	s.note(x, at.sheet)
}

// recreate places what it can of a solution's pieces that are out, the large ones first. As many
// as are stuck are known to fit no sheet that was not changed. first is the sheet that is opened
// if there is a choice, or none.
func (s *solver[S]) recreate(x *solution[S], stuck, first int) {
	for i, p := range x.out {
		s.stuck[p] = i < stuck
	}
	s.order(x.out)
	rest := x.out[:0]
	for _, p := range x.out {
		at, ok := s.best(x, p, s.stuck[p])
		if !ok && s.open(x, p, first) {
			for !ok {
				at, ok = s.best(x, p, false)
			}
		}
		if !ok {
			rest = append(rest, p)
			continue
		}
		s.put(x, p, at)
	}
	x.out = rest
}

// order sorts pieces by area, by their longer extent against the sheet, or by both extents; now
// and then by one extent alone, or not at all, for what fills a sheet to the last may need a
// long small piece to come first.
func (s *search) order(out []int32) {
	W, H := float64(s.kinds[0].w), float64(s.kinds[0].h)
	by := s.below(16)
	for _, p := range out {
		w, h := float64(s.shapes[p].w), float64(s.shapes[p].h)
		k := w * h
		switch by {
		case 0:
			k = w
		case 1:
			k = h
		case 2:
			s.key[p] = s.Unit()
			continue
		case 3, 4, 5, 6:
			k = max(w/W, h/H)
		case 7, 8, 9:
			k = w/W + h/H
		}
		s.key[p] = k * (1 - float64(noise*s.Unit()))
	}
	slices.SortFunc(out, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.key[b], s.key[a]), cmp.Compare(a, b))
	})
}

// ruin takes pieces out of up to three sheets, mostly of those that hold little.
func (s *solver[S]) ruin(x *solution[S]) {
	if len(s.kinds) > 1 && len(x.sheets) > 0 && s.below(8) == 0 {
		s.remove(x, s.emptier(x))
	}
	if len(x.sheets) == 0 {
		return
	}
	take := 1 + s.below(5)
	for range 1 + s.below(3) {
		i := s.below(len(x.sheets))
		if s.below(5) > 0 {
			i = s.emptier(x)
		}
		if x.sheets[i].count == 0 {
			continue
		}
		x.out = s.own(x, i).ruin(s.search, take, x.out)
		s.note(x, i)
	}
}

// emptier draws a sheet, and of four the one that holds the least.
func (s *solver[S]) emptier(x *solution[S]) int {
	i := s.below(len(x.sheets))
	for range 3 {
		if o := s.below(len(x.sheets)); x.sheets[o].used < x.sheets[i].used {
			i = o
		}
	}
	return i
}
