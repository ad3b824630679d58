package sticks

import "slices"

// lengthen looks for a purchase of the same cost that leaves a longer rest of one stick: it asks
// whether all pieces come out where one stick is shorter, and halves the question.
func (s *solver) lengthen() {
	cost, all := s.leastMixes(s.demand, s.best.cost)
	if cost != s.best.cost {
		return
	}
	end := s.steps + s.most/10
	for _, mix := range all {
		for k, n := range mix {
			if n > 0 && s.steps < end {
				s.shorten(mix, k)
			}
		}
	}
}

// shorten makes one stick of a stock in a mix as short as it can be.
func (s *solver) shorten(mix []int, k int) {
	slack := -s.length(s.demand)
	for i, n := range mix {
		slack += int64(n) * s.rooms[i]
	}
	// more than this may come off, or has; not so much
	least, most := s.useful(k), min(slack, s.rooms[k]-s.lengths[s.kinds()-1])
	for try := most; least < most; try = least + (most-least+1)/2 {
		racks := append(s.racks(mix), rack{k, s.rooms[k] - try, 1})
		i := slices.IndexFunc(racks, func(r rack) bool { return r.stock == k })
		racks[i].n--
		p, _ := s.fit(s.demand, racks, mostTried/10)
		switch {
		case p == nil || p.cost > s.best.cost:
			most = try - 1
		case s.rest(p) > s.rest(s.best):
			s.best = p
			least = max(try, s.useful(k))
		default:
			least = try
		}
	}
}

// useful is what may be off a stick of a stock while its rest is no longer than the best now; -1
// where even the whole stick's is.
func (s *solver) useful(k int) int64 {
	rest := s.rest(s.best) - s.over[k]
	if rest < 0 {
		return -1
	}
	return rest / s.unit
}

// rest is the longest rest of one stick, its ends and the cut before it taken off.
func (s *solver) rest(p *purchase) (longest int64) {
	for _, c := range p.cuts {
		longest = max(longest, (s.rooms[c.stock]-s.used(c.pattern))*s.unit+s.over[c.stock])
	}
	return longest
}
