package sticks

import (
	"encoding/binary"
	"math"
	"slices"

	"barwright/compile/chance"
)

// refill searches for a way to cut all pieces out of a mix of sticks. It takes a few sticks apart,
// fills them anew, each by subsets of what lies about that fill it best, and goes on from there
// where little more lies about than before (ruin and recreate: Schrimpf, Schneider, Stamm-Wilbrandt
// and Dueck, "Record breaking optimization results using the ruin and recreate principle", Journal
// of Computational Physics 159, 2000; partial solutions: Buljubasic and Vasquez, "Consistent
// neighborhood search for one-dimensional bin packing and two-dimensional vector packing",
// Computers and Operations Research 76, 2016; filling: Gupta and Ho, "A new heuristic algorithm for
// the one-dimensional bin-packing problem", Production Planning and Control 10, 1999).
type refill struct {
	*solver
	chance chance.Source
	sticks []filled
	out    []int // kinds of pieces that lie about, the longest first
}

type filled struct {
	stock  int
	pieces []int // kinds, the longest first
	rest   int64
}

func (s *solver) newRefill(mix []int, seed uint64) *refill {
	r := &refill{solver: s, chance: chance.Source(seed)}
	for k, n := range mix {
		for range n {
			r.sticks = append(r.sticks, filled{stock: k, rest: s.rooms[k]})
		}
	}
	for kind, n := range s.demand[:s.kinds()] {
		for range n {
			r.out = append(r.out, kind)
		}
	}
	r.out = r.fillAll(r.sticks, r.out)
	return r
}

// below is a number from 0 up to n.
func (r *refill) below(n int) int { return int(r.chance.Next() % uint64(n)) }

// fillAll fills empty sticks from pieces and returns those over.
func (r *refill) fillAll(sticks []filled, pieces []int) []int {
	for i := range sticks {
		f := &sticks[i]
		f.pieces, f.rest = nil, r.rooms[f.stock]
		pieces = r.fill(f, pieces)
	}
	return pieces
}

// fill puts the longest piece that fits into a stick, and of the others those that fill it best.
func (r *refill) fill(f *filled, pieces []int) []int {
	first := slices.IndexFunc(pieces, func(k int) bool { return r.lengths[k] <= f.rest })
	if first < 0 {
		return pieces
	}
	b := subset{lengths: r.lengths, pieces: pieces[first+1:], most: 300}
	room := f.rest - r.lengths[pieces[first]]
	b.run(room)
	r.steps += b.nodes*6 + 2*len(pieces)
	f.pieces = append(f.pieces, pieces[first])
	rest := slices.Clone(pieces[:first])
	for i, k := range b.pieces {
		if len(b.best) > 0 && b.best[0] == i {
			b.best = b.best[1:]
			f.pieces = append(f.pieces, k)
			continue
		}
		rest = append(rest, k)
	}
	f.rest = room - b.sum
	return rest
}

// subset finds which of some pieces, the longest first, fill a room best, by trying in that order.
type subset struct {
	lengths []int64
	pieces  []int
	after   []int64
	now     []int
	best    []int
	sum     int64
	nodes   int
	most    int
}

func (b *subset) run(room int64) {
	b.after = make([]int64, len(b.pieces)+1)
	for i := len(b.pieces) - 1; i >= 0; i-- {
		b.after[i] = b.after[i+1] + b.lengths[b.pieces[i]]
	}
	b.walk(0, room, 0)
}

func (b *subset) walk(i int, room, sum int64) {
	if sum > b.sum {
		b.sum = sum
		b.best = append(b.best[:0], b.now...)
	}
	for ; i < len(b.pieces); i++ {
		if b.nodes++; b.nodes > b.most || room == 0 || sum+min(room, b.after[i]) <= b.sum {
			return
		}
		l := b.lengths[b.pieces[i]]
		if l > room || i > 0 && b.pieces[i] == b.pieces[i-1] && (len(b.now) == 0 || b.now[len(b.now)-1] != i-1) {
			continue
		}
		b.now = append(b.now, i)
		b.walk(i+1, room-l, sum+l)
		b.now = b.now[:len(b.now)-1]
	}
}

// heated is what the energy may rise by at first, of the length of a stick.
const heated = 0.003

// run searches for so many steps; it is true where nothing lies about any more.
func (r *refill) run(steps int) bool {
	from := r.steps
	end := min(r.most, from+steps)
	now := r.energy(r.sticks, r.out)
	least := now
	for len(r.out) > 0 && r.steps < end {
		heat := float64(heated*float64(r.longest())) * (1 - float64(r.steps-from)/float64(steps))
		now += r.step(heat)
		if now < least {
			least = now
			r.keep()
		}
	}
	return len(r.out) == 0
}

// step takes a few sticks apart and fills them, and puts them back where that is worse by more than
// the heat allows. It returns by how much the energy changed.
func (r *refill) step(heat float64) float64 {
	n := min(2+r.below(6), len(r.sticks))
	for i := range n {
		j := i + r.below(len(r.sticks)-i)
		r.sticks[i], r.sticks[j] = r.sticks[j], r.sticks[i]
	}
	before := slices.Clone(r.sticks[:n])
	pieces := slices.Clone(r.out)
	for _, f := range before {
		pieces = append(pieces, f.pieces...)
	}
	slices.Sort(pieces)
	r.steps += 4 * len(pieces)
	was := r.energy(before, r.out)
	out := r.fillAll(r.sticks[:n], pieces)
	change := r.energy(r.sticks[:n], out) - was
	if change > -heat*math.Log(r.chance.Unit()+1e-300) {
		copy(r.sticks, before)
		return 0
	}
	r.out = out
	return change
}

// keep adds the patterns of the sticks to those that the linear program may start with.
func (r *refill) keep() {
	for _, f := range r.sticks {
		r.steps += 4 * (1 + len(f.pieces))
		if len(f.pieces) == 0 {
			continue
		}
		p := r.cutOf(f)
		if key := p.key(); !r.seen[key] {
			r.seen[key] = true
			r.known = append(r.known, p)
		}
	}
}

// key is another for each pattern.
func (p pattern) key() string {
	b := binary.AppendUvarint(nil, uint64(p.stock))
	for _, t := range p.takes {
		b = binary.AppendUvarint(binary.AppendUvarint(b, uint64(t.row)), uint64(t.n))
	}
	return string(b)
}

func (r *refill) cutOf(f filled) pattern {
	var takes []take
	for _, k := range f.pieces {
		if n := len(takes); n > 0 && takes[n-1].row == k {
			takes[n-1].n++
			continue
		}
		takes = append(takes, take{k, 1})
	}
	return r.pattern(f.stock, takes)
}

// purchase is the sticks, and what else it takes to give what lies about.
func (r *refill) purchase() *purchase {
	left := slices.Clone(r.demand)
	p := &purchase{}
	for _, f := range r.sticks {
		if len(f.pieces) > 0 {
			p.add(r.solver, r.cutOf(f), 1, left)
		}
	}
	rest := r.greedy(left)
	if rest == nil {
		return nil
	}
	return p.and(rest)
}

// energy is what lies about, less for rests that are large.
func (r *refill) energy(sticks []filled, out []int) (sum float64) {
	for _, k := range out {
		sum += float64(r.lengths[k])
	}
	room := float64(r.longest())
	for _, f := range sticks {
		sum -= float64(f.rest) * float64(f.rest) / room
	}
	return sum
}

// refill searches for so many steps, in mixes of sticks of one cost, the least from one on.
func (s *solver) refill(from int64, seed uint64, steps int) {
	cost, all := s.leastMixes(s.demand, from)
	if s.best != nil && cost >= s.best.cost {
		return
	}
	for i, mix := range all {
		r := s.newRefill(mix, seed+uint64(i))
		r.run(steps / len(all))
		r.keep()
		s.offer(r.purchase())
		if s.met() || s.spent() {
			return
		}
	}
}
