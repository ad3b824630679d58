package nesting

import (
	"math"
	"slices"
)

// job is a demand for pieces and the sheets they are cut from, kerf added to all.
type job struct {
	W, H   int32
	Pieces []rect
	Rotate bool
}

type rect struct{ W, H int32 }

type rng uint64

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
func (r *rng) below(n int) int { return int(r.next() >> 33 % uint64(n)) }
func (r *rng) unit() float64   { return float64(r.next()>>11) / (1 << 53) }

type solution struct {
	trees []*tree
	out   []int32 // pieces in no sheet
	cost  float64
}

type search struct {
	*job
	rng
	area  []int64
	sheet float64
	Work  int
	P     Params
}

type Params struct {
	Power, Leftover, Blink float64
	List                   int
	Most                   int
	Noise, Exp, Worst      float64
	Tour                   int
	Sheets                 int
}

var Default = Params{Power: 2, Leftover: 0.05, Blink: 0.02, List: 40, Most: 5, Noise: 0.3, Exp: 2, Sheets: 3, Worst: 0.8, Tour: 3}

func (s *search) measure(x *solution) {
	out := 0.0
	for _, p := range x.out {
		out += float64(s.area[p])
	}
	left := 0.0
	for _, t := range x.trees {
		left += t.left()
	}
	x.cost = out/s.sheet - s.P.Leftover*left/(s.sheet*s.sheet)
}

func (t *tree) left() (sum float64) {
	for i := range t.nodes {
		if n := &t.nodes[i]; n.piece == offcut && n.parent != -2 {
			a := float64(n.w) * float64(n.h)
			sum += a * a
		}
	}
	return sum
}

type spot struct {
	tree   int
	node   int32
	turned bool
	alongX bool
	loss   float64
}

func (s *search) pow(a float64) float64 {
	if s.P.Exp == 2 {
		return a * a
	}
	return math.Pow(a, s.P.Exp)
}

// best finds where a piece goes best.
func (s *search) best(x *solution, piece int32) (spot, bool) {
	p := s.Pieces[piece]
	least := spot{loss: math.Inf(1)}
	for ti, t := range x.trees {
		if int64(s.W)*int64(s.H)-t.used < s.area[piece] {
			continue
		}
		s.Work += len(t.nodes)
		for i := range t.nodes {
			n := &t.nodes[i]
			if n.piece != offcut {
				continue
			}
			for turn := 0; turn < 2; turn++ {
				w, h := p.W, p.H
				if turn == 1 {
					if !s.Rotate || w == h {
						break
					}
					w, h = h, w
				}
				if w > n.w || h > n.h {
					continue
				}
				if s.P.Blink > 0 && s.unit() < s.P.Blink {
					continue
				}
				W, H := float64(n.w), float64(n.h)
				fw, fh := float64(w), float64(h)
				old := s.pow(W * H)
				// along x: strip w x H
				lx := old - s.pow((W-fw)*H) - s.pow(fw*(H-fh))
				ly := old - s.pow(W*(H-fh)) - s.pow((W-fw)*fh)
				if lx < least.loss {
					least = spot{ti, int32(i), turn == 1, true, lx}
				}
				if ly < least.loss {
					least = spot{ti, int32(i), turn == 1, false, ly}
				}
			}
		}
	}
	return least, !math.IsInf(least.loss, 1)
}

func (s *search) put(x *solution, own []bool, piece int32, at spot) {
	if !own[at.tree] {
		x.trees[at.tree], own[at.tree] = x.trees[at.tree].clone(), true
	}
	w, h := s.Pieces[piece].W, s.Pieces[piece].H
	if at.turned {
		w, h = h, w
	}
	x.trees[at.tree].place(at.node, piece, w, h, at.turned, at.alongX)
}

// recreate places what it can of a solution's pieces that are out.
func (s *search) recreate(x *solution, own []bool, most int) {
	out := x.out
	key := make([]float64, len(s.Pieces))
	kind := s.below(4)
	for _, p := range out {
		k := 0.0
		w, h := float64(s.Pieces[p].W), float64(s.Pieces[p].H)
		switch kind {
		case 0, 1:
			k = w * h
		case 2:
			k = math.Max(w/float64(s.W), h/float64(s.H))
		case 3:
			k = w/float64(s.W) + h/float64(s.H)
		}
		key[p] = k * (1 - s.P.Noise*s.unit())
	}
	slices.SortFunc(out, func(a, b int32) int {
		switch {
		case key[a] > key[b]:
			return -1
		case key[a] < key[b]:
			return 1
		}
		return int(a - b)
	})
	rest := out[:0]
	for _, p := range out {
		at, ok := s.best(x, p)
		if !ok && len(x.trees) < most {
			x.trees = append(x.trees, newTree(0, s.W, s.H))
			own = append(own, true)
			at, ok = s.best(x, p)
			for !ok {
				at, ok = s.best(x, p)
			}
		}
		if !ok {
			rest = append(rest, p)
			continue
		}
		s.put(x, own, p, at)
	}
	x.out = rest
}

// ruin takes pieces out of some sheets.
func (s *search) ruin(x *solution, own []bool) {
	sheets := 1 + s.below(s.P.Sheets)
	take := 1 + s.below(s.P.Most)
	for range sheets {
		ti := s.below(len(x.trees))
		if s.unit() < s.P.Worst {
			for range s.P.Tour {
				if o := s.below(len(x.trees)); x.trees[o].used < x.trees[ti].used {
					ti = o
				}
			}
		}
		if x.trees[ti].count == 0 {
			continue
		}
		if !own[ti] {
			x.trees[ti], own[ti] = x.trees[ti].clone(), true
		}
		t := x.trees[ti]
		for n := 0; n < take && t.count > 0; {
			i := int32(s.below(len(t.nodes)))
			if nd := &t.nodes[i]; nd.piece < 0 && (nd.piece != cut || nd.parent == -2) {
				continue
			}
			if t.nodes[i].piece == cut && i == root && s.below(3) > 0 {
				continue
			}
			t.clear(i, func(p int32) { x.out = append(x.out, p); n++ })
		}
	}
}

func (x *solution) copy() *solution {
	return &solution{trees: append(make([]*tree, 0, len(x.trees)+1), x.trees...), out: append(make([]int32, 0, 2*len(x.out)+16), x.out...), cost: x.cost}
}

// solve lays out a job in as few sheets as it can within so much work.
func solve(j *job, work int, atLeast int, seed uint64, par Params) (sheets int, trees []*tree, spent int) {
	s := &search{job: j, rng: rng(seed), sheet: float64(j.W) * float64(j.H), P: par}
	for _, p := range j.Pieces {
		s.area = append(s.area, int64(p.W)*int64(p.H))
	}
	var best *solution
	for range 8 {
		x := &solution{}
		for p := range j.Pieces {
			x.out = append(x.out, int32(p))
		}
		s.recreate(x, nil, math.MaxInt)
		if best == nil || len(x.trees) < len(best.trees) {
			best = x
		}
	}
	for len(best.trees) > atLeast && s.Work < work {
		if x := s.fewer(best, work); x != nil {
			best = x
			continue
		}
		break
	}
	return len(best.trees), best.trees, s.Work
}

// fewer looks for a solution with a sheet less.
func (s *search) fewer(from *solution, work int) *solution {
	now := from.copy()
	// empty the sheet with the least in it
	least := 0
	for i, t := range now.trees {
		if t.used < now.trees[least].used {
			least = i
		}
	}
	t := now.trees[least].clone()
	t.clear(root, func(p int32) { now.out = append(now.out, p) })
	now.trees = slices.Delete(now.trees, least, least+1)
	own := make([]bool, len(now.trees))
	s.recreate(now, own, 0)
	s.measure(now)
	history := make([]float64, s.P.List)
	for i := range history {
		history[i] = now.cost
	}
	for step := 0; s.Work < work; step++ {
		if len(now.out) == 0 {
			return now
		}
		x := now.copy()
		own := make([]bool, len(x.trees))
		s.ruin(x, own)
		s.recreate(x, own, 0)
		s.measure(x)
		s.Work += 50
		slot := step % len(history)
		if x.cost <= now.cost || x.cost < history[slot] {
			now = x
		}
		if now.cost < history[slot] {
			history[slot] = now.cost
		}
	}
	return nil
}
