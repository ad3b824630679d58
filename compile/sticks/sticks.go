// Package sticks tells which sticks to buy and how to cut them, so that all pieces come out
// at the least cost; of those, with the fewest sticks; of those, with the longest offcut. It is
// the one-dimensional cutting stock problem, with several lengths on sale at their prices,
// each in any number or in a few that lie in stock.
//
// A linear program gives a bound that is proved in whole numbers ([master], [master.prove]).
// Dives into that program give purchases ([solver.dive]); what they leave above the bound is
// searched by refilling sticks ([refill]) and, for as few pieces as a bar has, decided by
// trying every way ([decision]).
//
// Equal jobs give equal results on every machine: effort counts steps, not time.
package sticks

import (
	"errors"
	"slices"
)

// Piece is so many pieces of a length.
type Piece struct {
	Length int64
	Count  int
}

// Stock is a length on sale. Limit is how many there are of it, 0 for any number. Price is in
// any unit of money, and may be 0.
type Stock struct {
	Length int64
	Price  int64
	Limit  int
}

// Job is what is to be cut out of what is on sale. Each length is in one unit, such as
// nanometres. Ends is what each end of a stick loses before it is used, its cut included. Kerf is
// lost between pieces; the last cut may run out of the stick or into what the end loses.
type Job struct {
	Pieces []Piece
	Stocks []Stock
	Kerf   int64
	Ends   int64
}

// Stick is a stick as bought: which of the stocks, and what it gives. Times is how many are cut alike.
type Stick struct {
	Stock int
	Takes []Take
	Times int
}

// Take is so many of one of the job's pieces.
type Take struct{ Piece, Count int }

// Result is what to buy. No purchase has a price under LeastPrice, and none of this price has
// fewer sticks than LeastSticks: where these are Price and Sticks, the purchase is the least possible.
type Result struct {
	Cuts        []Stick
	Price       int64
	Sticks      int
	LeastPrice  int64
	LeastSticks int
	Offcut      int64 // the longest rest of one stick, its ends and the cut before it taken off
	Steps       int   // done, of the effort allowed
}

// Least tells whether the purchase is proved to be the least possible: by price, then by sticks.
func (r *Result) Least() bool { return r.Price == r.LeastPrice && r.Sticks == r.LeastSticks }

// Limits of a job.
const (
	MostPieces = 100_000
	MostKinds  = 20_000 // different lengths
	MostStocks = 100
	MostLength = 1 << 50
)

// Errors of [Solve].
var (
	ErrLarge = errors.New("more pieces or larger figures than can be laid out")
	ErrWrong = errors.New("a length or a count under one, or a price, a kerf, a limit or an end under zero")
	ErrLong  = errors.New("a piece longer than any stick")
	ErrShort = errors.New("no purchase found that gives all pieces")
)

// Default is an effort of two seconds at most; a job as small as a bar's takes some milliseconds of it.
const Default = 180_000_000

// Solve finds a purchase within an effort in steps, of a few nanoseconds each.
func Solve(j *Job, effort int) (*Result, error) {
	if err := j.check(); err != nil {
		return nil, err
	}
	if len(j.Pieces) == 0 {
		return &Result{}, nil
	}
	s := newSolver(j, effort)
	if !s.fits() {
		return nil, ErrLong
	}
	s.run()
	if s.best == nil {
		return nil, ErrShort
	}
	s.lengthen()
	return s.result(j), nil
}

func (j *Job) check() error {
	pieces, price := 0, int64(0)
	if len(j.Stocks) > MostStocks || j.Kerf > MostLength || j.Ends > MostLength {
		return ErrLarge
	}
	if j.Kerf < 0 || j.Ends < 0 {
		return ErrWrong
	}
	for _, p := range j.Pieces {
		if p.Length < 1 || p.Count < 1 {
			return ErrWrong
		}
		if p.Length > MostLength || p.Count > MostPieces {
			return ErrLarge
		}
		pieces = min(pieces+p.Count, MostPieces+1)
	}
	for _, s := range j.Stocks {
		if s.Length < 1 || s.Price < 0 || s.Limit < 0 {
			return ErrWrong
		}
		if s.Length > MostLength {
			return ErrLarge
		}
		price = max(price, s.Price)
	}
	lengths := map[int64]bool{} // counted only
	for _, p := range j.Pieces {
		lengths[p.Length] = true
	}
	n := int64(pieces)
	if pieces > MostPieces || len(lengths) > MostKinds || price >= (1<<60)/(n+1)/(n+1) {
		return ErrLarge
	}
	return nil
}

// run buys, proves, and searches on while the proof does not meet the purchase.
func (s *solver) run() {
	s.best = s.greedy(s.demand)
	s.bound = s.least(s.demand, 0)
	s.decide()
	if s.met() || s.kinds() > mostRows {
		return
	}
	s.refill(s.bound, 0, s.most/6)
	if s.met() {
		return
	}
	m := s.root()
	s.decide()
	for seed := uint64(0); seed < 1000 && !s.met() && !s.spent(); seed++ {
		from := s.steps
		s.dive(m, seed)
		if s.met() {
			return
		}
		s.refill(s.between(seed), seed+1, s.steps-from) // as long as the dive
	}
}

// mostRows is how many kinds a linear program may have; a job of more is bought greedily.
const mostRows = 500

// between is the bound, and every other time half of the way from there to the best, a quarter, and
// so on.
func (s *solver) between(seed uint64) int64 {
	if seed%2 == 0 || s.best == nil {
		return s.bound
	}
	return s.bound + (s.best.cost-s.bound)>>(1+seed/2%4)
}

// fits tells whether each piece fits some stick.
func (s *solver) fits() bool { return len(s.rooms) > 0 && s.lengths[0] <= s.longest() }

func (s *solver) result(j *Job) *Result {
	r := &Result{Offcut: s.rest(s.best), Steps: s.steps}
	r.Price, r.Sticks = s.split(s.best.cost)
	r.LeastPrice, r.LeastSticks = s.split(s.bound)
	if r.LeastPrice < r.Price {
		r.LeastSticks = 1 // a dearer one may have fewer
	}
	of := s.pieces(j)
	left := make([]int, len(j.Pieces))
	for i, p := range j.Pieces {
		left[i] = p.Count
	}
	for _, c := range s.best.cuts {
		for range c.times {
			r.add(c.pattern, of, left)
		}
	}
	return r
}

// pieces are the job's of each kind, in their order.
func (s *solver) pieces(j *Job) [][]int {
	kinds := make(map[int64]int, s.kinds()) // looked up only
	for kind, l := range s.lengths {
		kinds[l] = kind
	}
	of := make([][]int, s.kinds())
	for i, p := range j.Pieces {
		kind := kinds[(p.Length+j.Kerf)/s.unit]
		of[kind] = append(of[kind], i)
	}
	return of
}

// add cuts a stick, and gives a kind's first pieces first; left is what the pieces still ask for.
func (r *Result) add(p pattern, of [][]int, left []int) {
	var takes []Take
	for _, t := range p.takes {
		if t.row >= len(of) { // the stick itself
			continue
		}
		for t.n > 0 {
			i := of[t.row][0]
			if left[i] == 0 {
				of[t.row] = of[t.row][1:]
				continue
			}
			n := min(t.n, left[i])
			takes = append(takes, Take{i, n})
			left[i], t.n = left[i]-n, t.n-n
		}
	}
	last := len(r.Cuts) - 1
	if last >= 0 && r.Cuts[last].Stock == p.stock && slices.Equal(r.Cuts[last].Takes, takes) {
		r.Cuts[last].Times++
		return
	}
	r.Cuts = append(r.Cuts, Stick{p.stock, takes, 1})
}
