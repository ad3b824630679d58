package assign

// matching is a set of pairs; -1 is nobody.
type matching struct {
	*graph
	pair  []int // the right node of each left one
	taken []int // the left node of each right one
}

func (g *graph) unmatched() *matching {
	m := &matching{g, make([]int, g.left), make([]int, g.right)}
	for i := range m.pair {
		m.pair[i] = -1
	}
	for j := range m.taken {
		m.taken[j] = -1
	}
	return m
}

// most makes as many pairs as there can be, by the shortest augmenting paths of
// Hopcroft and Karp (1973).
func (g *graph) most() *matching {
	m := g.unmatched()
	for {
		depth, more := m.layers()
		if !more {
			return m
		}
		next := make([]int, g.left) // the edge of each left node to be tried next
		for i := range m.pair {
			if m.pair[i] < 0 {
				m.augment(i, depth, next)
			}
		}
	}
}

// layers tells how many pairs away from a lonely left node each of them is, -1 out of
// reach, and whether a right node that is free can be reached.
func (m *matching) layers() (depth []int, more bool) {
	depth = make([]int, m.left)
	var queue []int
	for i, right := range m.pair {
		depth[i] = -1
		if right < 0 {
			depth[i] = 0
			queue = append(queue, i)
		}
	}
	for n := 0; n < len(queue); n++ {
		for _, e := range m.of(queue[n]) {
			switch next := m.taken[e.Col]; {
			case next < 0:
				more = true
			case depth[next] < 0:
				depth[next] = depth[queue[n]] + 1
				queue = append(queue, next)
			}
		}
	}
	return depth, more
}

// augment gives the left node a right one along a path that goes one layer deeper with
// each pair. It goes without recursion: paths may be as long as there are pairs.
func (m *matching) augment(start int, depth, next []int) {
	path := []int{start}
	for len(path) > 0 {
		at := path[len(path)-1]
		edges := m.of(at)
		if next[at] == len(edges) {
			if path = path[:len(path)-1]; len(path) > 0 {
				next[path[len(path)-1]]++
			}
			continue
		}
		switch over := m.taken[edges[next[at]].Col]; {
		case over < 0:
			for _, i := range path {
				m.pair[i] = m.of(i)[next[i]].Col
				m.taken[m.pair[i]] = i
			}
			return
		case depth[over] == depth[at]+1:
			path = append(path, over)
		default:
			next[at]++
		}
	}
}

// short marks the left nodes that are lonely in some way to make as many pairs as m
// does, which must be the most, and the right nodes that they have edges to.
func (m *matching) short() (left, right []bool) {
	left, right = make([]bool, m.left), make([]bool, m.right)
	depth, _ := m.layers()
	for i := range depth {
		left[i] = depth[i] >= 0
		for _, e := range m.of(i) {
			right[e.Col] = right[e.Col] || left[i]
		}
	}
	return left, right
}
