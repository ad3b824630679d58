package sticks

import (
	"math/bits"
	"slices"
	"sort"
)

// greedy fills one stick after the other, the longest pieces first, each time of the stock that
// gives the most length for its cost, and the last of the cheapest that holds what is left. It is
// nil where stocks of which there are few run out.
func (s *solver) greedy(demand []int) *purchase {
	left := slices.Clone(demand)
	p := &purchase{}
	var open []int // kinds with some left
	for kind, n := range left[:s.kinds()] {
		if n > 0 {
			open = append(open, kind)
		}
	}
	for len(open) > 0 {
		c, ok := s.fill(left, open)
		if !ok {
			return nil
		}
		p.add(s, c, c.times(left), left)
		for _, t := range c.takes {
			if i, of := slices.BinarySearch(open, t.row); of && left[t.row] == 0 {
				open = slices.Delete(open, i, i+1)
			}
		}
	}
	return p
}

func (s *solver) fill(left, open []int) (best pattern, ok bool) {
	var bestUsed int64
	for i, room := range s.rooms {
		if s.rows[i] >= 0 && left[s.rows[i]] == 0 {
			continue
		}
		takes, used := s.firstFit(left, open, room)
		if used == 0 {
			continue
		}
		if !ok || cheaper(s.costs[i], used, s.costs[best.stock], bestUsed) {
			best, bestUsed, ok = s.pattern(i, takes), used, true
		}
	}
	return best, ok
}

// firstFit goes from each piece to the longest of the next that still fits.
func (s *solver) firstFit(left, open []int, room int64) (takes []take, used int64) {
	for i := 0; i < len(open); i++ {
		i += sort.Search(len(open)-i, func(k int) bool { return s.lengths[open[i+k]] <= room-used })
		if i == len(open) {
			break
		}
		k := open[i]
		n := int(min(int64(left[k]), (room-used)/s.lengths[k]))
		takes = append(takes, take{k, n})
		used += int64(n) * s.lengths[k]
	}
	s.steps += 16 * (len(takes) + 1)
	return takes, used
}

// cheaper compares costs by length: a/la < b/lb.
func cheaper(a, la, b, lb int64) bool {
	hi, lo := bits.Mul64(uint64(a), uint64(lb))
	hi2, lo2 := bits.Mul64(uint64(b), uint64(la))
	return hi < hi2 || hi == hi2 && lo < lo2
}
