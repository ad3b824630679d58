package sticks

import (
	"cmp"
	"slices"
)

// solver is a job in the form that is searched: pieces of one length are one kind, the longest
// first, and kerf and ends are in the lengths. Rows are the kinds, then the stocks of which there
// are few.
type solver struct {
	lengths []int64 // of a kind, in units
	rooms   []int64 // of a stock, in units
	costs   []int64 // of a stock: price times count plus one, plus one for the stick
	rows    []int   // of a stock: that of its limit, or -1
	demand  []int   // of a row: pieces to give, or sticks there are
	unit    int64   // that all lengths of kinds are a multiple of
	count   int64   // of all pieces
	best    *purchase
	bound   int64 // no purchase costs less
	steps   int
	most    int // steps
	sack    knapsack
	known   []pattern       // of sticks that were filled
	seen    map[string]bool // those in the pool; looked up only
	over    []int64         // of a stock: what it is longer than its rooms, the last cut off
}

// take is so many pieces of a kind, or the one stick of a limited stock's row.
type take struct{ row, n int }

// pattern is a way to cut one stick: what it takes, in falling length.
type pattern struct {
	stock int
	takes []take
}

type cut struct {
	pattern
	times int
}

type purchase struct {
	cuts []cut
	cost int64
}

// newSolver takes a job with pieces.
func newSolver(j *Job, effort int) *solver {
	s := &solver{most: effort, seen: map[string]bool{}}
	for _, p := range j.Pieces {
		s.unit = divisor(s.unit, p.Length+j.Kerf)
		s.count += int64(p.Count)
	}
	sorted := slices.Clone(j.Pieces)
	slices.SortStableFunc(sorted, func(a, b Piece) int { return cmp.Compare(b.Length, a.Length) })
	for i, p := range sorted {
		if i > 0 && p.Length == sorted[i-1].Length {
			s.demand[len(s.demand)-1] += p.Count
			continue
		}
		s.lengths = append(s.lengths, (p.Length+j.Kerf)/s.unit)
		s.demand = append(s.demand, p.Count)
	}
	for _, st := range j.Stocks {
		room := max(0, st.Length-2*j.Ends+j.Kerf) / s.unit
		s.rooms = append(s.rooms, room)
		s.over = append(s.over, st.Length-2*j.Ends-room*s.unit)
		s.costs = append(s.costs, st.Price*(s.count+1)+1)
		row := -1
		if st.Limit > 0 {
			row = len(s.demand)
			s.demand = append(s.demand, min(st.Limit, int(s.count)))
		}
		s.rows = append(s.rows, row)
	}
	return s
}

// divisor is the greatest common one.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// split tells price and sticks of a cost.
func (s *solver) split(cost int64) (price int64, sticks int) {
	return cost / (s.count + 1), int(cost % (s.count + 1))
}

func (s *solver) kinds() int { return len(s.lengths) }

func (s *solver) longest() int64 { return slices.Max(s.rooms) }

func (s *solver) spent() bool { return s.steps >= s.most }

func (s *solver) used(p pattern) (sum int64) {
	for _, t := range p.takes {
		if t.row < s.kinds() {
			sum += int64(t.n) * s.lengths[t.row]
		}
	}
	return sum
}

// length is that of all pieces left.
func (s *solver) length(left []int) (sum int64) {
	for i, l := range s.lengths {
		sum += int64(left[i]) * l
	}
	return sum
}

func (s *solver) done(left []int) bool {
	return !slices.ContainsFunc(left[:s.kinds()], func(n int) bool { return n > 0 })
}

// pattern makes a pattern of a stock, which takes one of it where there are few.
func (s *solver) pattern(stock int, takes []take) pattern {
	if row := s.rows[stock]; row >= 0 {
		takes = append(takes, take{row, 1})
	}
	return pattern{stock, takes}
}

// times is how often a pattern can be cut of what is left.
func (p pattern) times(left []int) int {
	n := -1
	for _, t := range p.takes {
		if m := left[t.row] / t.n; n < 0 || m < n {
			n = m
		}
	}
	return max(n, 0)
}

// of is a pattern with no more than what is left; it takes nothing where that is no piece, or no stick.
func (s *solver) of(p pattern, left []int) pattern {
	if p.times(left) > 0 {
		return p
	}
	var takes []take
	for _, t := range p.takes {
		if n := min(t.n, left[t.row]); n > 0 && t.row < s.kinds() {
			takes = append(takes, take{t.row, n})
		}
	}
	if row := s.rows[p.stock]; len(takes) == 0 || row >= 0 && left[row] == 0 {
		return pattern{p.stock, nil}
	}
	return s.pattern(p.stock, takes)
}

// add cuts a pattern n times.
func (b *purchase) add(s *solver, p pattern, n int, left []int) {
	b.cuts = append(b.cuts, cut{p, n})
	b.cost += int64(n) * s.costs[p.stock]
	for _, t := range p.takes {
		left[t.row] -= n * t.n
	}
}

// and is this purchase and another.
func (b *purchase) and(o *purchase) *purchase {
	return &purchase{append(slices.Clone(b.cuts), o.cuts...), b.cost + o.cost}
}

// offer keeps a purchase that costs less than the best.
func (s *solver) offer(p *purchase) {
	if p != nil && (s.best == nil || p.cost < s.best.cost) {
		s.best = p
	}
}
