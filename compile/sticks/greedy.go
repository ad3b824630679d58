package sticks

import (
	"math/bits"
	"slices"
)

// greedy fills one stick after the other, the longest pieces first, each time of the stock that gives the
// most length for its cost, and the last of the cheapest that holds what is left. It is nil where
// stocks of which there are few run out.
func (s *solver) greedy(demand []int) *purchase {
	left := slices.Clone(demand)
	p := &purchase{}
	for !s.done(left) {
		s.steps += s.kinds() * len(s.rooms)
		c, ok := s.fill(left)
		if !ok {
			return nil
		}
		p.add(s, c, c.times(left), left)
	}
	return p
}

func (s *solver) fill(left []int) (best pattern, ok bool) {
	var bestUsed int64
	for i, room := range s.rooms {
		if s.rows[i] >= 0 && left[s.rows[i]] == 0 {
			continue
		}
		takes, used := s.firstFit(left, room)
		if used == 0 {
			continue
		}
		if !ok || cheaper(s.costs[i], used, s.costs[best.stock], bestUsed) {
			best, bestUsed, ok = s.pattern(i, takes), used, true
		}
	}
	return best, ok
}

func (s *solver) firstFit(left []int, room int64) (takes []take, used int64) {
	for k, l := range s.lengths {
		if n := int(min(int64(left[k]), (room-used)/l)); n > 0 {
			takes = append(takes, take{k, n})
			used += int64(n) * l
		}
	}
	return takes, used
}

// cheaper compares costs by length: a/la < b/lb.
func cheaper(a, la, b, lb int64) bool {
	hi, lo := bits.Mul64(uint64(a), uint64(lb))
	hi2, lo2 := bits.Mul64(uint64(b), uint64(la))
	return hi < hi2 || hi == hi2 && lo < lo2
}
