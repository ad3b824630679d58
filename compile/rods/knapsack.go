package rods

// knapsack finds the pattern of the most value in a length: so many of each piece, no more
// than are left, by branch and bound over the pieces in falling value per length. It counts
// its nodes; ok is false where they pass most, and the pattern is the best so far.
type knapsack struct {
	lengths []int64
	values  []int64
	left    []int
	counts  []int
	best    []int
	value   int64
	nodes   int
	most    int
}

func (k *knapsack) run(room int64, atLeast int64) (ok bool) {
	k.counts = make([]int, len(k.lengths))
	k.best = make([]int, len(k.lengths))
	k.value = atLeast
	k.search(0, room, 0)
	return k.nodes <= k.most
}

func (k *knapsack) search(i int, room, value int64) {
	k.nodes++
	if k.nodes > k.most {
		return
	}
	if value > k.value {
		k.value = value
		copy(k.best, k.counts)
	}
	for ; i < len(k.lengths); i++ {
		if k.values[i] <= 0 {
			return
		}
		if k.left[i] > 0 && k.lengths[i] <= room {
			break
		}
	}
	if i == len(k.lengths) {
		return
	}
	// what the room gives at the best value per length
	if value+mulDiv(room, k.values[i], k.lengths[i]) <= k.value {
		return
	}
	for n := min(int64(k.left[i]), room/k.lengths[i]); n >= 0; n-- {
		k.counts[i] = int(n)
		k.search(i+1, room-n*k.lengths[i], value+n*k.values[i])
		if k.nodes > k.most {
			break
		}
		// with one less: what is left is filled by the next best
		if i+1 < len(k.lengths) {
			r := room - (n-1)*k.lengths[i]
			if value+(n-1)*k.values[i]+mulDiv(r, k.values[i+1], k.lengths[i+1]) <= k.value {
				break
			}
		}
	}
	k.counts[i] = 0
}
