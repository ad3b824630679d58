package assign

import "container/heap"

// solution is a matching at the least cost, and the prices that prove it: no edge costs
// less than the prices of its ends together, those of a pair cost just as much, no
// right price is above 0, and that of a free node is 0.
type solution struct {
	*matching
	leftPrice, rightPrice []Cost
}

// least gives each left node that has edges a right one at the least cost. It must be
// possible. Each takes its first choice where that is free; for the others the
// cheapest path to a free node is found (Dijkstra's with prices, after Edmonds and Karp
// 1972 and Tomizawa 1971).
func (g *graph) least() *solution {
	s := &solution{g.unmatched(), make([]Cost, g.left), make([]Cost, g.right)}
	var late []int
	for i := range g.left {
		if edges := g.of(i); len(edges) > 0 && !s.choose(i, edges) {
			late = append(late, i)
		}
	}
	r := newReach(g.right)
	for _, i := range late {
		s.augment(i, r)
	}
	return s
}

// choose sets the price of a left node to its cheapest edge, and takes the first such
// edge to a node that is free.
func (s *solution) choose(i int, edges []Edge) bool {
	price := edges[0].Cost
	for _, e := range edges[1:] {
		if e.Cost.less(price) {
			price = e.Cost
		}
	}
	s.leftPrice[i] = price
	for _, e := range edges {
		if e.Cost == price && s.taken[e.Col] < 0 {
			s.pair[i], s.taken[e.Col] = e.Col, i
			return true
		}
	}
	return false
}

// reach is what one search has found: right nodes, and what it costs to get there beyond
// the prices.
type reach struct {
	cost    []Cost
	from    []int // the left node before each
	state   []state
	free    int   // the free node that costs the least so far; -1 for none
	touched []int // nodes in the order that they were found in
	queue   queue
}

type state uint8

const (
	unknown state = iota
	found
	settled
)

func newReach(right int) *reach {
	return &reach{cost: make([]Cost, right), from: make([]int, right), state: make([]state, right), free: -1}
}

func (r *reach) clear() {
	for _, j := range r.touched {
		r.state[j] = unknown
	}
	r.free, r.touched, r.queue = -1, r.touched[:0], r.queue[:0]
}

// late reports whether a free node is known that costs no more.
func (r *reach) late(cost Cost) bool { return r.free >= 0 && !cost.less(r.cost[r.free]) }

// find notes a way to a right node, unless one is known that costs no more.
func (r *reach) find(node, from int, cost Cost) bool {
	switch r.state[node] {
	case settled:
		return false
	case found:
		if !cost.less(r.cost[node]) {
			return false
		}
	case unknown:
		r.touched = append(r.touched, node)
	}
	r.cost[node], r.from[node], r.state[node] = cost, from, found
	heap.Push(&r.queue, stop{cost, node})
	return true
}

// nearest settles the right node that costs the least to get to.
func (r *reach) nearest() int {
	for {
		s := heap.Pop(&r.queue).(stop)
		if r.state[s.node] == found {
			r.state[s.node] = settled
			return s.node
		}
	}
}

// augment gives a left node a right one by the cheapest path, on which others move on
// to other nodes, and sets the prices by what it found.
func (s *solution) augment(start int, r *reach) {
	defer r.clear()
	var cost Cost // to get to the left node
	for left, end := start, -1; ; left = s.taken[end] {
		for _, e := range s.of(left) {
			c := cost.plus(e.Cost).minus(s.leftPrice[left]).minus(s.rightPrice[e.Col])
			if !r.late(c) && r.find(e.Col, left, c) && s.taken[e.Col] < 0 {
				r.free = e.Col
			}
		}
		end = r.nearest()
		cost = r.cost[end]
		if s.taken[end] < 0 {
			s.raise(start, cost, r)
			s.move(start, end, r)
			return
		}
	}
}

// raise sets the prices so that the path to a free node, which costs so much, is free.
func (s *solution) raise(start int, cost Cost, r *reach) {
	s.leftPrice[start] = s.leftPrice[start].plus(cost)
	for _, j := range r.touched {
		if left := s.taken[j]; r.state[j] == settled && left >= 0 {
			by := cost.minus(r.cost[j])
			s.rightPrice[j] = s.rightPrice[j].minus(by)
			s.leftPrice[left] = s.leftPrice[left].plus(by)
		}
	}
}

// move gives the right nodes of a path to the left ones before them.
func (s *solution) move(start, end int, r *reach) {
	for {
		left := r.from[end]
		before := s.pair[left]
		s.pair[left], s.taken[end] = end, left
		if left == start {
			return
		}
		end = before
	}
}

// stop is a right node with what it costs to get there.
type stop struct {
	cost Cost
	node int
}

// queue is a heap of stops, the cheapest first.
type queue []stop

func (q queue) Len() int      { return len(q) }
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q queue) Less(i, j int) bool {
	if q[i].cost == q[j].cost {
		return q[i].node < q[j].node
	}
	return q[i].cost.less(q[j].cost)
}
func (q *queue) Push(x any) { *q = append(*q, x.(stop)) }
func (q *queue) Pop() any {
	last := len(*q) - 1
	x := (*q)[last]
	*q = (*q)[:last]
	return x
}
