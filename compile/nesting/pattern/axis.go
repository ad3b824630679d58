package pattern

import "slices"

// axis are the positions that cuts in one direction are thought to have: the lengths of parts, as
// sums of pieces in a row (Herz, "Recursive computational procedure for two-dimensional stock
// cutting", IBM Journal of Research and Development 16, 1972). A part that is a little longer is
// worth no more.
type axis struct {
	at    []Length
	pairs []pair // of all positions
	from  []int32
}

// pair is two positions that are in a third one together: the less first, and no greater one
// leaves as much.
type pair struct{ a, b int32 }

// span is a length of a piece, and how many there are.
type span struct {
	length Length
	most   int
}

// newAxis has all positions up to a whole, or is nil if they are too many. It has the whole too, or
// only what parts of the whole can be, as is needed if there are stages, or not.
func newAxis(spans []span, whole Length, most int, needed bool) *axis {
	at := []Length{0}
	for _, s := range spans {
		layer := at
		for range s.most {
			var next []Length
			for _, v := range layer {
				if v+s.length <= whole {
					next = append(next, v+s.length)
				}
			}
			if len(next) == 0 {
				break
			}
			at = sorted(slices.Concat(at, next))
			if len(at) > most {
				return nil
			}
			layer = next
		}
	}
	a := &axis{at: at[1:]}
	if needed {
		a.at = a.needed()
	} else if len(at) > 1 && at[len(at)-1] < whole {
		a.at = append(a.at, whole)
	}
	a.pair()
	return a
}

// sorted are values rising, each once.
func sorted(v []Length) []Length {
	slices.Sort(v)
	return slices.Compact(v)
}

// rough has so many positions, or fewer: lengths of pieces, sums of two, and what these leave of
// the whole, of the first spans first; all lengths of pieces at least.
func rough(spans []span, whole Length, most int) *axis {
	at := []Length{whole}
	seen := map[Length]bool{whole: true} // for lookup only
	add := func(v Length) {
		if v > 0 && v <= whole && !seen[v] {
			seen[v] = true
			at = append(at, v)
		}
	}
	for _, s := range spans {
		add(s.length)
	}
	for _, s := range spans {
		if len(at) < most {
			add(whole - s.length)
		}
	}
	for sum := range 2 * len(spans) {
		for i := max(0, sum-len(spans)+1); 2*i <= sum; i++ {
			if v := spans[i].length + spans[sum-i].length; len(at) < most {
				add(v)
				add(whole - v)
			}
		}
	}
	slices.Sort(at)
	a := &axis{at: at}
	a.pair()
	return a
}

// floor is the greatest position up to a length, or -1.
func (a *axis) floor(v Length) int {
	i, ok := slices.BinarySearch(a.at, v)
	if ok {
		return i
	}
	return i - 1
}

// ceil is the least position from a length on.
func (a *axis) ceil(v Length) int {
	i, _ := slices.BinarySearch(a.at, v)
	return i
}

// of are the pairs in a position.
func (a *axis) of(i int) []pair { return a.pairs[a.from[i]:a.from[i+1]] }

// in adds the pairs in a position to others.
func (a *axis) in(i int, to []pair) []pair {
	x := a.at[i]
	last := -1
	for k := a.floor(x / 2); k >= 0; k-- {
		if b := a.floor(x - a.at[k]); b != last {
			to = append(to, pair{int32(k), int32(b)})
			last = b
		}
	}
	return to
}

func (a *axis) pair() {
	a.pairs, a.from = a.pairs[:0], append(a.from[:0], 0)
	for i := range a.at {
		a.pairs = a.in(i, a.pairs)
		a.from = append(a.from, int32(len(a.pairs)))
	}
}

// needed are the positions that parts of the greatest can have.
func (a *axis) needed() (out []Length) {
	need := make([]bool, len(a.at))
	var pairs []pair
	for i := len(a.at) - 1; i >= 0; i-- {
		if need[i] = need[i] || i == len(a.at)-1; !need[i] {
			continue
		}
		out = append(out, a.at[i])
		pairs = a.in(i, pairs[:0])
		for _, p := range pairs {
			need[p.a], need[p.b] = true, true
		}
	}
	slices.Reverse(out)
	return out
}
