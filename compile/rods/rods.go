// Package rods cuts sticks: what to buy and how to cut it so that a demand of lengths is met
// at the least price. It is the one-dimensional cutting stock problem, solved by column
// generation (Gilmore and Gomory, "A linear programming approach to the cutting stock
// problem", Operations Research 9, 1961, and part II, 11, 1963), diving, and a bound that
// is proved in whole numbers.
package rods

import (
	"cmp"
	"slices"
)

// Demand is so many pieces of a length.
type Demand struct {
	Length int64
	Count  int
}

// Stock is a length on sale, and its price in any unit of money.
type Stock struct {
	Length int64
	Price  int64
}

// Job is what is to be cut out of what is on sale. All lengths have the kerf added.
type Job struct {
	Demands []Demand
	Stocks  []Stock
}

// Pattern is how one stick is cut: so many pieces of each demand.
type Pattern struct {
	Stock  int
	Counts []int
	Times  int
}

// Result is a purchase, its price, and a price under which there is none.
type Result struct {
	Patterns []Pattern
	Price    int64
	AtLeast  int64
	Work     int
}

// Solve cuts a job within so much work. Every demand must fit some stock.
func Solve(j *Job, work int) Result {
	s := &solver{Job: j, most: work}
	order := make([]int, len(j.Demands))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(j.Demands[b].Length, j.Demands[a].Length) })
	s.order = order
	for _, i := range order {
		s.lengths = append(s.lengths, j.Demands[i].Length)
	}
	demand := make([]int, len(order))
	for k, i := range order {
		demand[k] = j.Demands[i].Count
	}
	s.best = s.greedy(demand)
	s.bound = s.trivial(demand)
	if s.best.price > s.bound {
		s.root(demand)
	}
	r := Result{Price: s.best.price, AtLeast: s.bound, Work: s.work}
	for _, p := range s.best.cuts {
		counts := make([]int, len(order))
		for k, n := range p.counts {
			counts[order[k]] = n
		}
		r.Patterns = append(r.Patterns, Pattern{p.stock, counts, p.times})
	}
	return r
}

type solver struct {
	*Job
	order   []int
	lengths []int64 // falling
	best    purchase
	bound   int64
	work    int
	most    int
}

type cutting struct {
	stock  int
	counts []int
	times  int
}

type purchase struct {
	cuts  []cutting
	price int64
}

func (p purchase) with(c cutting, price int64) purchase {
	return purchase{append(slices.Clip(p.cuts), c), p.price + price*int64(c.times)}
}

// trivial is the bound of all lengths at the cheapest price by length.
func (s *solver) trivial(demand []int) int64 {
	var sum int64
	for k, n := range demand {
		sum += s.lengths[k] * int64(n)
	}
	least := int64(-1)
	for _, st := range s.Stocks {
		// ceil(sum * price / length)
		v := (sum/st.Length)*st.Price + (sum%st.Length*st.Price+st.Length-1)/st.Length
		if least < 0 || v < least {
			least = v
		}
	}
	return least
}

// greedy fills one stick after the other by first fit, the longest first, for each stock alone and
// for the cheapest by length, and keeps the best.
func (s *solver) greedy(demand []int) (best purchase) {
	left := slices.Clone(demand)
	for {
		c, ok := s.fill(left)
		if !ok {
			return best
		}
		best = best.with(c, s.Stocks[c.stock].Price)
		for k, n := range c.counts {
			left[k] -= n
		}
	}
}

// fill fills the stick that costs least by what it gives: greedily, the longest first.
func (s *solver) fill(left []int) (best cutting, ok bool) {
	var bestUsed int64
	for i, st := range s.Stocks {
		c := cutting{stock: i, counts: make([]int, len(left)), times: 1}
		room := st.Length
		for k, n := range left {
			take := min(int64(n), room/s.lengths[k])
			c.counts[k] = int(take)
			room -= take * s.lengths[k]
		}
		used := st.Length - room
		if used == 0 {
			continue
		}
		// used/price larger is better
		if !ok || used*s.Stocks[best.stock].Price > bestUsed*st.Price {
			best, bestUsed, ok = c, used, true
		}
	}
	return best, ok
}
