package setting

import (
	"math"
	"slices"
)

// uncovered leaves out obstacles that lie in others, and all but the first of those that are the same.
func uncovered(all []obstacle) []obstacle {
	var out []obstacle
	near := stripsOf(all)
	for i := range all {
		a := &all[i]
		if !slices.ContainsFunc(near.about(a), func(j int) bool {
			b := &all[j]
			return i != j && b.at.holds(a.at) && (i > j || !a.at.holds(b.at))
		}) {
			out = append(out, *a)
		}
	}
	return out
}

// strips part obstacles along one axis: whatever holds another reaches into the strip of its lower end.
type strips struct {
	axis     int
	from, by float64
	in       [][]int // of each strip, the indices of those that reach into it, rising
}

// fewObstacles are compared without strips.
const fewObstacles = 64

// stripsOf makes as many strips as the root of the number of obstacles, along the axis on which these are
// the shortest in what they all extend over. An axis along which one has no end is none.
func stripsOf(all []obstacle) strips {
	s := strips{axis: -1}
	axes, least := 0, math.Inf(1)
	if len(all) >= fewObstacles {
		axes = len(all[0].at)
	}
	for axis := range axes {
		whole, sum := all[0].at[axis], 0.0
		for i := range all {
			on := all[i].at[axis]
			whole, sum = span{min(whole.lo, on.lo), max(whole.hi, on.hi)}, sum+on.hi-on.lo
		}
		if wide := whole.hi - whole.lo; wide > 0 && !math.IsInf(wide, 0) && sum/wide < least {
			least, s.axis, s.from, s.by = sum/wide, axis, whole.lo, wide
		}
	}
	count := 1
	if s.axis >= 0 {
		count = int(math.Sqrt(float64(len(all))))
		s.by /= float64(count)
	}
	s.in = make([][]int, count)
	for i := range all {
		first, last := s.of(&all[i])
		for k := first; k <= last; k++ {
			s.in[k] = append(s.in[k], i)
		}
	}
	return s
}

// of tells which strips an obstacle reaches into.
func (s *strips) of(o *obstacle) (first, last int) {
	if s.axis < 0 {
		return 0, 0
	}
	at := func(x float64) int { return min(max(int((x-s.from)/s.by), 0), len(s.in)-1) }
	return at(o.at[s.axis].lo), at(o.at[s.axis].hi)
}

// about are those that may hold an obstacle.
func (s *strips) about(o *obstacle) []int {
	first, _ := s.of(o)
	return s.in[first]
}
