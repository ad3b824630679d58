package sticks

import (
	"math"
	"slices"
)

// cells is how many a knapsack's table may have; twice as many where it is exact then.
const cells = 1 << 20

// knapsack finds the takes of the most value in a room. Copies of a kind come in lots of 1, 2, 4
// and so on, each taken or not. A table over the room, divided into cells and every length rounded
// down to cells, tells the most that the lots from each on may give (Bellman's recursion, "Dynamic
// Programming", 1957); the search walks the lots by it, the more promising way first, and cuts off
// what cannot reach the best. Where each length is a whole number of cells the first walk finds the
// best. Values are whole numbers, so what it finds is exact.
type knapsack struct {
	lots  []lot
	width int64 // of a cell
	table []int64
	row   int // cells in a row of the table
	now   []bool
	best  []bool
	value int64
	nodes int
	most  int
}

type lot struct {
	row    int
	n      int
	length int64
	value  int64
}

// newKnapsack takes kinds with their values, those left of each, and the room. It is good until the
// next.
func (s *solver) newKnapsack(kinds []int, values []int64, left []int, room int64) *knapsack {
	k := &s.sack
	*k = knapsack{lots: k.lots[:0], table: k.table, now: k.now, best: k.best}
	for i, row := range kinds {
		l := s.lengths[row]
		if values[i] <= 0 {
			continue
		}
		for n, rest := 1, int(min(int64(left[row]), room/l)); rest > 0; n *= 2 {
			n = min(n, rest)
			k.lots = append(k.lots, lot{row, n, int64(n) * l, int64(n) * values[i]})
			rest -= n
		}
	}
	k.width = 1
	if all := float64(room) * float64(len(k.lots)+1); all > 2*cells {
		k.width = int64(math.Ceil(all / cells))
	}
	return k
}

// run finds the best of more value than one given. It returns the most that any takes are worth, and
// whether best is proved to be that.
func (k *knapsack) run(room, over int64, most int) (value int64, proved bool) {
	k.fillTable(room)
	k.most = k.nodes + most
	k.value = over
	k.now, k.best = append(k.now[:0], make([]bool, len(k.lots))...), k.best[:0]
	k.walk(0, room, 0)
	if k.nodes > k.most {
		return k.table[k.row-1], false
	}
	return k.value, true
}

// next finds another of more value than one given, of lots that none before has.
func (k *knapsack) next(room, over int64) {
	for i, in := range k.best {
		if in {
			k.lots[i].length = math.MaxInt64
		}
	}
	k.most = k.nodes + 4*len(k.lots)
	k.value, k.best = over, k.best[:0]
	k.walk(0, room, 0)
}

func (k *knapsack) fillTable(room int64) {
	k.row = int(room/k.width) + 1
	k.table = slices.Grow(k.table[:0], (len(k.lots)+1)*k.row)[:(len(k.lots)+1)*k.row]
	clear(k.table[len(k.lots)*k.row:])
	for i := len(k.lots) - 1; i >= 0; i-- {
		to, from := k.table[i*k.row:(i+1)*k.row], k.table[(i+1)*k.row:(i+2)*k.row]
		l, v := int(k.lots[i].length/k.width), k.lots[i].value
		copy(to[:min(l, k.row)], from)
		for c := l; c < k.row; c++ {
			to[c] = max(from[c], from[c-l]+v)
		}
	}
	k.nodes += len(k.lots) * k.row / 4
}

// walk goes on from a lot with the room left and the value so far.
func (k *knapsack) walk(i int, room, value int64) {
	if k.nodes++; k.nodes > k.most {
		return
	}
	if i == len(k.lots) {
		if value > k.value {
			k.value = value
			k.best = append(k.best[:0], k.now...)
		}
		return
	}
	next := k.table[(i+1)*k.row:]
	l := k.lots[i]
	without := value + next[room/k.width]
	with := int64(-1)
	if l.length <= room {
		with = value + l.value + next[(room-l.length)/k.width]
	}
	first := with >= without
	for _, in := range [...]bool{first, !first} {
		switch {
		case in && with > k.value:
			k.now[i] = true
			k.walk(i+1, room-l.length, value+l.value)
			k.now[i] = false
		case !in && without > k.value:
			k.walk(i+1, room, value)
		}
	}
}

// takes are those of the best, in falling length.
func (k *knapsack) takes() (out []take) {
	for i, in := range k.best {
		switch {
		case !in:
		case len(out) > 0 && out[len(out)-1].row == k.lots[i].row:
			out[len(out)-1].n += k.lots[i].n
		default:
			out = append(out, take{k.lots[i].row, k.lots[i].n})
		}
	}
	return out
}
