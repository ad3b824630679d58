package nesting

import (
	"cmp"
	"math"
	"slices"
)

// search looks for layouts by ruin and recreate: a few pieces are taken from a few sheets, with
// what lies in one part of the cutting tree with them, and are placed anew where they leave the
// rest in the largest rectangles. Schrimpf, Schneider, Stamm-Wilbrandt and Dueck, "Record
// breaking optimization results using the ruin and recreate principle", Journal of
// Computational Physics 159 (2000); for pieces cut edge to edge the goal tree of Gardeyn and
// Wauters, "A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing
// problem with guillotine constraints", European Journal of Operational Research 301 (2022).
// What is found is taken if it is not worse than what there was some steps before: Burke and
// Bykov, "The late acceptance hill-climbing heuristic", the same journal 258 (2017).
type search struct {
	rng
	shapes []shape
	kinds  []kind
	stages int
	most   int64 // what sheets may cost together
	size   float64
	work   int
	skip   int // candidates until the next is passed over
	pool   []*tree
	key    []float64
	stuck  []bool // of pieces
}

// shape is a piece with a kerf added.
type shape struct {
	w, h  Length
	area  float64
	turns bool
}

// kind is a sheet on sale with a kerf added.
type kind struct {
	w, h  Length
	area  float64
	price int64
	most  int
}

// solution is a set of sheets, and the pieces that are in none.
type solution struct {
	trees  []*tree
	gists  []gist // of trees
	out    []int32
	bought []int // of each kind
	price  int64
	cost   float64
}

// gist is what most looks at a tree need.
type gist struct {
	free       float64
	wide, high float64 // the most of any offcut
	spread     float64 // squares of all offcuts
	largest    float64 // and the largest
	changed    bool    // since the solution was copied
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

// copyTo makes a solution like this one of another, whose memory is used again.
func (x *solution) copyTo(c *solution) {
	trees, gists := append(c.trees[:0], x.trees...), append(c.gists[:0], x.gists...)
	out, bought := append(c.out[:0], x.out...), append(c.bought[:0], x.bought...)
	*c = *x
	c.trees, c.gists, c.out, c.bought = trees, gists, out, bought
	for i, t := range c.trees {
		t.held++
		c.gists[i].changed = false
	}
}

// release gives back the trees that no other solution holds.
func (s *search) release(x *solution) {
	for _, t := range x.trees {
		if t.held--; t.held == 0 {
			s.pool = append(s.pool, t)
		}
	}
	x.trees, x.gists = x.trees[:0], x.gists[:0]
}

// note makes the gist of a tree that was changed.
func (s *search) note(x *solution, i int) {
	t := x.trees[i]
	g := gist{free: s.kinds[t.kind].area - t.used, changed: true}
	for _, r := range t.rests {
		g.wide, g.high = max(g.wide, r.w), max(g.high, r.h)
		g.spread += r.square
		g.largest = max(g.largest, r.square)
	}
	x.gists[i] = g
}

func (s *search) tree() *tree {
	last := len(s.pool) - 1
	if last < 0 {
		return &tree{}
	}
	t := s.pool[last]
	s.pool = s.pool[:last]
	return t
}

// own makes sure that no other solution holds a tree, and returns it.
func (s *search) own(x *solution, i int) *tree {
	t := x.trees[i]
	if t.held > 1 {
		c := s.tree()
		t.copyTo(c)
		t.held--
		x.trees[i] = c
		s.work += len(t.nodes) / 8
		return c
	}
	return t
}

// remove takes a sheet away, with its pieces out.
func (s *search) remove(x *solution, i int) {
	t := s.own(x, i)
	x.out = t.clear(root, x.out)
	x.bought[t.kind]--
	x.price -= s.kinds[t.kind].price
	t.held = 0
	s.pool = append(s.pool, t)
	x.trees, x.gists = slices.Delete(x.trees, i, i+1), slices.Delete(x.gists, i, i+1)
}

// open adds an empty sheet that a piece fits, if one may be bought: first if it will do, or any.
func (s *search) open(x *solution, piece int32, first int) bool {
	found, ways := none, 0
	for k := range s.kinds {
		if !s.from(k, s.shapes[piece]) || x.bought[k] >= s.kinds[k].most || s.kinds[k].price > s.most-x.price {
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
	k, t := s.kinds[found], s.tree()
	t.reset(found, k.w, k.h)
	x.trees, x.gists = append(x.trees, t), append(x.gists, gist{})
	s.note(x, len(x.trees)-1)
	x.bought[found]++
	x.price += k.price
	return true
}

// from reports whether a piece can be cut from an empty sheet.
func (s *search) from(k int, p shape) bool {
	return s.lies(s.kinds[k], p.w, p.h) || p.turns && s.lies(s.kinds[k], p.h, p.w)
}

func (s *search) lies(k kind, w, h Length) bool {
	return w <= k.w && h <= k.h && (s.stages != 1 || w == k.w || h == k.h)
}

func (s *search) measure(x *solution) {
	out, spread := 0.0, 0.0
	for _, p := range x.out {
		out += s.shapes[p].area
	}
	for i := range x.gists {
		spread += x.gists[i].spread
	}
	x.cost = out/s.size - float64(leftover*(spread/(s.size*s.size)))
}

// spot is where a piece may go, and how much of the rests' worth is lost by it.
type spot struct {
	tree           int
	node           int32
	turned, alongX bool
	loss           float64
}

// best finds where a piece goes best, in any sheet or in those that were changed.
func (s *search) best(x *solution, piece int32, changed bool) (spot, bool) {
	p := &s.shapes[piece]
	least := spot{loss: math.Inf(1)}
	w, h, area := float64(p.w), float64(p.h), p.area*(1-1e-9)
	for ti := range x.gists {
		g := &x.gists[ti]
		if g.free < area || changed && !g.changed {
			continue
		}
		upright, turned := w <= g.wide && h <= g.high, p.turns && h <= g.wide && w <= g.high
		if !upright && !turned {
			continue
		}
		t := x.trees[ti]
		s.work += len(t.rests)
		for i := range t.rests {
			r := &t.rests[i]
			if upright && w <= r.w && h <= r.h {
				s.weigh(t, ti, r, p.w, p.h, false, &least)
			}
			if turned && h <= r.w && w <= r.h {
				s.weigh(t, ti, r, p.h, p.w, true, &least)
			}
		}
	}
	s.work += 2 + len(x.gists)/8
	return least, !math.IsInf(least.loss, 1)
}

// weigh compares both ways to cut a piece from an offcut with the best so far.
func (s *search) weigh(t *tree, ti int, r *rest, w, h Length, turned bool, least *spot) {
	if s.skip--; s.skip < 0 {
		s.skip = s.below(2 * blink)
		return
	}
	fw, fh := float64(w), float64(h)
	rest, strip := (r.w-fw)*r.h, fw*(r.h-fh)
	x := r.square - float64(rest*rest) - float64(strip*strip)
	rest, strip = (r.h-fh)*r.w, fh*(r.w-fw)
	y := r.square - float64(rest*rest) - float64(strip*strip)
	if x < least.loss && (s.stages == 0 || t.stages(r.node, w, h, true) <= s.stages) {
		*least = spot{ti, r.node, turned, true, x}
	}
	if y < least.loss && (s.stages == 0 || t.stages(r.node, w, h, false) <= s.stages) {
		*least = spot{ti, r.node, turned, false, y}
	}
}

func (s *search) put(x *solution, piece int32, at spot) {
	w, h := s.shapes[piece].w, s.shapes[piece].h
	if at.turned {
		w, h = h, w
	}
	s.own(x, at.tree).place(at.node, piece, w, h, at.turned, at.alongX)
	s.note(x, at.tree)
}

// recreate places what it can of a solution's pieces that are out, the large ones first. As many
// as are stuck are known to fit no sheet that was not changed. first is the sheet that is opened
// if there is a choice, or none.
func (s *search) recreate(x *solution, stuck, first int) {
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
			s.key[p] = s.unit()
			continue
		case 3, 4, 5, 6:
			k = max(w/W, h/H)
		case 7, 8, 9:
			k = w/W + h/H
		}
		s.key[p] = k * (1 - float64(noise*s.unit()))
	}
	slices.SortFunc(out, func(a, b int32) int {
		return cmp.Or(cmp.Compare(s.key[b], s.key[a]), cmp.Compare(a, b))
	})
}

// ruin takes pieces out of up to three sheets, mostly of those that hold little.
func (s *search) ruin(x *solution) {
	if len(s.kinds) > 1 && len(x.trees) > 0 && s.below(8) == 0 {
		s.remove(x, s.emptier(x))
	}
	if len(x.trees) == 0 {
		return
	}
	take := 1 + s.below(5)
	for range 1 + s.below(3) {
		i := s.below(len(x.trees))
		if s.below(5) > 0 {
			i = s.emptier(x)
		}
		if x.trees[i].count == 0 {
			continue
		}
		t := s.own(x, i)
		for to := len(x.out) + take; len(x.out) < to && t.count > 0; {
			i := int32(s.below(len(t.nodes)))
			if n := &t.nodes[i]; n.piece < 0 && (n.piece != cut || i == root && s.below(3) > 0) {
				continue
			}
			x.out = t.clear(i, x.out)
		}
		s.note(x, i)
	}
}

// emptier draws a sheet, and of four the one that holds the least.
func (s *search) emptier(x *solution) int {
	i := s.below(len(x.trees))
	for range 3 {
		if o := s.below(len(x.trees)); x.trees[o].used < x.trees[i].used {
			i = o
		}
	}
	return i
}
