package sticks

import "fmt"

// check tells what is wrong with a result. It knows how sticks are cut and nothing of how the
// result was found.
func check(j *Job, r *Result) error {
	have := make([]int, len(j.Pieces))
	bought := make([]int, len(j.Stocks))
	var price, offcut int64
	sticks := 0
	for _, c := range r.Cuts {
		stock := j.Stocks[c.Stock]
		length, pieces := int64(0), 0
		for _, t := range c.Takes {
			if t.Count < 1 {
				return fmt.Errorf("%d pieces", t.Count)
			}
			length += int64(t.Count) * j.Pieces[t.Piece].Length
			pieces += t.Count
			have[t.Piece] += t.Count * c.Times
		}
		if pieces == 0 || c.Times < 1 {
			return fmt.Errorf("bought for nothing: %v", c)
		}
		rest := stock.Length - 2*j.Ends - length - int64(pieces-1)*j.Kerf
		if rest < 0 {
			return fmt.Errorf("%d too long: %v", -rest, c)
		}
		offcut = max(offcut, rest-j.Kerf)
		price += int64(c.Times) * stock.Price
		sticks += c.Times
		bought[c.Stock] += c.Times
	}
	for i, p := range j.Pieces {
		if have[i] != p.Count {
			return fmt.Errorf("%d of piece %d, not %d", have[i], i, p.Count)
		}
	}
	for k, s := range j.Stocks {
		if s.Limit > 0 && bought[k] > s.Limit {
			return fmt.Errorf("%d of stock %d, not %d", bought[k], k, s.Limit)
		}
	}
	if price != r.Price || sticks != r.Sticks || offcut != r.Offcut {
		return fmt.Errorf("price %d, %d sticks, offcut %d; said %d, %d, %d", price, sticks, offcut, r.Price, r.Sticks, r.Offcut)
	}
	if r.LeastPrice > r.Price || r.LeastPrice == r.Price && r.LeastSticks > r.Sticks {
		return fmt.Errorf("at least %d with %d sticks, but %d with %d do", r.LeastPrice, r.LeastSticks, r.Price, r.Sticks)
	}
	return nil
}

// purse is a price, sticks, and the longest offcut.
type purse struct{ price, sticks, offcut int64 }

func (p purse) better(o purse) bool {
	if p.price != o.price {
		return p.price < o.price
	}
	if p.sticks != o.sticks {
		return p.sticks < o.sticks
	}
	return p.offcut > o.offcut
}

// exhaust tries every way to put single pieces, one after the other, into sticks, those that are
// begun or a new one.
func exhaust(j *Job, pieces []int64) (best purse, ok bool) {
	type begun struct {
		stock int
		rest  int64 // the cut after the last piece not taken off
	}
	var sticks []begun
	bought := make([]int, len(j.Stocks))
	var price int64
	var put func(i int)
	put = func(i int) {
		if i == len(pieces) {
			p := purse{price, int64(len(sticks)), 0}
			for _, s := range sticks {
				p.offcut = max(p.offcut, s.rest-j.Kerf)
			}
			if !ok || p.better(best) {
				best, ok = p, true
			}
			return
		}
		for k := range sticks {
			if need := j.Kerf + pieces[i]; sticks[k].rest >= need {
				sticks[k].rest -= need
				put(i + 1)
				sticks[k].rest += need
			}
		}
		for k, s := range j.Stocks {
			rest := s.Length - 2*j.Ends - pieces[i]
			if rest < 0 || s.Limit > 0 && bought[k] == s.Limit {
				continue
			}
			bought[k]++
			price += s.Price
			sticks = append(sticks, begun{k, rest})
			put(i + 1)
			sticks = sticks[:len(sticks)-1]
			price -= s.Price
			bought[k]--
		}
	}
	put(0)
	return best, ok
}
