package sticks

import (
	"encoding/binary"
	"slices"
)

// decision tells by trying whether sticks give all pieces. The longest piece left goes into a stick
// of each length in turn, with whatever else fills that; a filling is tried only where no piece
// left fits into its rest, nor in place of a shorter one that is taken, for then another filling
// does no worse (Martello and Toth, "Lower bounds and reduction procedures for the bin packing
// problem", Discrete Applied Mathematics 28, 1990; Korf, "A new algorithm for optimal bin packing",
// AAAI 2002). What has failed is remembered.
type decision struct {
	*solver
	left   []int
	racks  []rack
	slack  int64           // that all fillings together may leave
	failed map[string]bool // looked up only
	taken  []int           // of a kind, of the filling that is tried
	cuts   []cut
	nodes  int
	most   int
}

// rack is so many sticks of a stock that are left, with the room in each.
type rack struct {
	stock int
	room  int64
	n     int
}

func (s *solver) racks(mix []int) (out []rack) {
	for k, n := range mix {
		if n > 0 {
			out = append(out, rack{k, s.rooms[k], n})
		}
	}
	return out
}

// fit decides within so many steps. What it finds is a purchase; known is false where the steps were
// not enough.
func (s *solver) fit(left []int, racks []rack, most int) (found *purchase, known bool) {
	d := decision{solver: s, left: slices.Clone(left), racks: racks, failed: map[string]bool{}, most: most}
	d.taken = make([]int, s.kinds())
	for _, r := range racks {
		d.slack += int64(r.n) * r.room
	}
	d.slack -= s.length(left)
	ok := d.slack >= 0 && d.next(0)
	s.steps += d.nodes * 4
	if !ok {
		return nil, d.nodes <= d.most
	}
	p := &purchase{}
	left = slices.Clone(left)
	for _, c := range d.cuts {
		p.add(s, c.pattern, c.times, left)
	}
	return p, true
}

// next fills a stick with the longest piece left, which is not longer than a kind.
func (d *decision) next(kind int) bool {
	for kind < d.kinds() && d.left[kind] == 0 {
		kind++
	}
	if kind == d.kinds() {
		return true
	}
	key := d.key(kind)
	if d.failed[key] {
		return false
	}
	for i := range d.racks {
		r := &d.racks[i]
		same := func(o rack) bool { return o.n > 0 && o.room == r.room && o.stock == r.stock }
		if r.n == 0 || d.lengths[kind] > r.room || slices.ContainsFunc(d.racks[:i], same) {
			continue
		}
		r.n--
		d.take(kind, 1)
		if d.fill(r, kind, kind, r.room-d.lengths[kind]) {
			return true
		}
		d.take(kind, -1)
		r.n++
		if d.nodes > d.most {
			return false
		}
	}
	if len(d.failed) < 1<<17 {
		d.failed[key] = true
	}
	return false
}

func (d *decision) take(kind, n int) {
	d.left[kind] -= n
	d.taken[kind] += n
}

func (d *decision) key(kind int) string {
	var b []byte
	for _, n := range d.left[kind:d.kinds()] {
		b = binary.AppendUvarint(b, uint64(n))
	}
	for _, r := range d.racks {
		b = binary.AppendUvarint(b, uint64(r.n))
	}
	return string(b)
}

// fill goes on with a stick from a kind on; first is the kind of its longest piece.
func (d *decision) fill(r *rack, first, kind int, rest int64) bool {
	if d.nodes++; d.nodes > d.most {
		return false
	}
	for kind < d.kinds() && (d.left[kind] == 0 || d.lengths[kind] > rest) {
		kind++
	}
	if kind == d.kinds() {
		return d.close(r, first, rest)
	}
	n := int(min(int64(d.left[kind]), rest/d.lengths[kind]))
	for ; n >= 0; n-- {
		d.take(kind, n)
		if d.fill(r, first, kind+1, rest-int64(n)*d.lengths[kind]) {
			return true
		}
		d.take(kind, -n)
		if d.nodes > d.most {
			return false
		}
	}
	return false
}

// close is done with a stick and goes on with the next.
func (d *decision) close(r *rack, first int, rest int64) bool {
	if rest > d.slack || d.betters(first, rest) {
		return false
	}
	takes := d.takes()
	cuts, taken := len(d.cuts), d.taken
	d.cuts = append(d.cuts, cut{d.pattern(r.stock, takes), 1})
	d.slack -= rest
	d.taken = make([]int, d.kinds())
	if d.next(first) {
		return true
	}
	d.cuts, d.taken = d.cuts[:cuts], taken
	d.slack += rest
	return false
}

// betters tells whether a piece left would fit into the rest, or in place of a shorter one.
func (d *decision) betters(first int, rest int64) bool {
	longer := -1 // the shortest with some left that is longer than the kind looked at
	for kind := first; kind < d.kinds(); kind++ {
		d.nodes++
		own := d.taken[kind]
		if kind == first {
			own--
		}
		if longer >= 0 && own > 0 && d.lengths[longer]-d.lengths[kind] <= rest {
			return true
		}
		if d.left[kind] > 0 {
			if d.lengths[kind] <= rest {
				return true
			}
			longer = kind
		}
	}
	return false
}

func (d *decision) takes() (out []take) {
	for kind, n := range d.taken {
		if n > 0 {
			out = append(out, take{kind, n})
		}
	}
	return out
}

// mostDecided is how many pieces a job may have to be decided, and mostTried how many steps one mix of
// sticks may take.
const (
	mostDecided = 60
	mostTried   = 500_000
)

// decide goes through the mixes of sticks from the bound on, the cheapest first, and decides each.
func (s *solver) decide() {
	if s.count > mostDecided {
		return
	}
	for !s.spent() {
		cost, all := s.leastMixes(s.demand, s.bound)
		if len(all) == 0 || s.best != nil && cost >= s.best.cost {
			return
		}
		for _, mix := range all {
			p, known := s.fit(s.demand, s.racks(mix), mostTried)
			if p != nil {
				s.offer(p)
				s.bound = cost
				return
			}
			if !known {
				return
			}
		}
		s.bound = s.least(s.demand, cost+1)
	}
}
