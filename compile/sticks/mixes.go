package sticks

import (
	"math"
	"slices"
)

// mixes goes through mixes of stocks, so many of each, that cost a sum or more and are as long
// together as the pieces are.
type mixes struct {
	*solver
	left   []int // of a row
	order  []int // stocks, the cheapest by length first
	length int64
	now    []int // of a stock
	nodes  int
	best   int64
	all    [][]int // those of the cost best
}

// mostMixes is how many steps the search for one cost may take.
const mostMixes = 100_000

// newMixes is for what is left.
func (s *solver) newMixes(left []int) *mixes {
	m := &mixes{solver: s, left: left, length: s.length(left), now: make([]int, len(s.rooms))}
	for k, room := range s.rooms {
		if room >= s.lengths[len(s.lengths)-1] {
			m.order = append(m.order, k)
		}
	}
	slices.SortStableFunc(m.order, func(a, b int) int {
		switch {
		case cheaper(s.costs[a], s.rooms[a], s.costs[b], s.rooms[b]):
			return -1
		case cheaper(s.costs[b], s.rooms[b], s.costs[a], s.rooms[a]):
			return 1
		}
		return 0
	})
	return m
}

// leastMixes is the least cost, from one on, of any mix that is long enough; and the mixes of that
// cost, or none where there are too many to go through.
func (s *solver) leastMixes(left []int, from int64) (int64, [][]int) {
	m := s.newMixes(left)
	m.best = math.MaxInt64
	m.walk(0, from, m.length)
	s.steps += m.nodes
	if m.nodes > mostMixes || m.best == math.MaxInt64 {
		return from, nil
	}
	return m.best, m.all
}

// least is the cost of [solver.leastMixes].
func (s *solver) least(left []int, from int64) int64 {
	cost, _ := s.leastMixes(left, from)
	return cost
}

// walk goes on with the i-th stock in order, where the mix must still cost and be long so much.
func (m *mixes) walk(i int, cost, length int64) {
	if m.nodes++; m.nodes > mostMixes {
		return
	}
	if cost <= 0 && length <= 0 {
		m.meet()
	}
	if i == len(m.order) {
		return
	}
	k := m.order[i]
	if m.spentOn(m.now)+m.rest(k, cost, length) > m.best {
		return
	}
	most := max(up(cost, m.costs[k]), up(length, m.rooms[k]))
	if row := m.rows[k]; row >= 0 {
		most = min(most, int64(m.left[row]))
	}
	for n := most; n >= 0; n-- {
		if m.nodes > mostMixes {
			break
		}
		if n == 0 && i+1 == len(m.order) {
			break
		}
		m.now[k] = int(n)
		m.walk(i+1, cost-n*m.costs[k], length-n*m.rooms[k])
	}
	m.now[k] = 0
}

// meet keeps a mix that is long and dear enough, once: where no more of any stock follows.
func (m *mixes) meet() {
	cost := m.spentOn(m.now)
	if cost < m.best {
		m.best, m.all = cost, nil
	}
	same := func(o []int) bool { return slices.Equal(o, m.now) }
	if cost == m.best && !slices.ContainsFunc(m.all, same) {
		m.all = append(m.all, slices.Clone(m.now))
	}
}

func (m *mixes) spentOn(mix []int) (sum int64) {
	for k, n := range mix {
		sum += int64(n) * m.costs[k]
	}
	return sum
}

// rest is what must be paid at least: the length at the cost of a stock, the cheapest by length.
func (m *mixes) rest(k int, cost, length int64) int64 {
	if length <= 0 {
		return max(cost, 0)
	}
	return max(cost, int64(math.Floor(float64(length)/float64(m.rooms[k])*float64(m.costs[k])*(1-1e-12))))
}

// up is a/b rounded up, 0 for what is under 0.
func up(a, b int64) int64 {
	if a <= 0 {
		return 0
	}
	return (a + b - 1) / b
}
