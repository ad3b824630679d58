// Package assign solves the assignment problem: which row gets which column, so that
// as many as can be get one, at the least cost.
package assign

import "slices"

// Edge says that a row may have a column, and what that costs.
type Edge struct {
	Row, Col int
	Cost     Cost
}

// Cost is counted level by level: costs add up each on its own level, and what the sums
// of one level tell counts before all that the next ones do. With numbers up to 1<<40
// either way there is room for a million pairs.
type Cost [4]int64

func (a Cost) plus(b Cost) Cost {
	for l := range a {
		a[l] += b[l]
	}
	return a
}

func (a Cost) minus(b Cost) Cost {
	for l := range a {
		a[l] -= b[l]
	}
	return a
}

func (a Cost) less(b Cost) bool {
	for l := range a {
		if a[l] != b[l] {
			return a[l] < b[l]
		}
	}
	return false
}

// Least returns the column of each row, -1 for none: as many pairs as there can be, and
// among all ways to make so many, one whose costs add up to the least. Which of
// equally good ways depends on nothing but the order of the edges.
func Least(rows, cols int, edges []Edge) []int {
	given := make([]int, rows)
	for i := range given {
		given[i] = -1
	}
	for _, p := range parts(rows, cols, edges) {
		for left, right := range p.least().pair {
			switch {
			case right < 0:
			case p.columns:
				given[right] = left
			default:
				given[left] = right
			}
		}
	}
	return given
}

// part is one side of the problem that can be solved by itself, such that each node at
// the left that has an edge gets one at the right.
type part struct {
	graph
	columns bool // the left nodes are columns
}

// parts takes the problem apart as Dulmage and Mendelsohn do (Coverings of bipartite
// graphs, 1958). A row that some way to make the most pairs leaves without a column is
// short of one, and so are all rows that could lend it theirs. Each column that such a
// row may have is given to one of them in all these ways, so it is the columns
// that choose; elsewhere each row gets a column and chooses.
func parts(rows, cols int, edges []Edge) [2]part {
	g := byRow(rows, cols, edges)
	short, scarce := g.most().short()
	var plenty, few []Edge
	for _, e := range edges {
		switch {
		case short[e.Row]:
			few = append(few, Edge{e.Col, e.Row, e.Cost})
		case !scarce[e.Col]:
			plenty = append(plenty, e)
		}
	}
	return [2]part{{byRow(rows, cols, plenty), false}, {byRow(cols, rows, few), true}}
}

// graph is a bipartite graph: the edges of each left node, one node after the other, each
// in the order that they were given in.
type graph struct {
	left, right int
	edges       []Edge
	first       []int // of each left node's edges; one more than there are nodes
}

// byRow is the graph whose left nodes are the rows.
func byRow(rows, cols int, edges []Edge) graph {
	g := graph{rows, cols, make([]Edge, len(edges)), make([]int, rows+1)}
	for _, e := range edges {
		g.first[e.Row+1]++
	}
	for i := range rows {
		g.first[i+1] += g.first[i]
	}
	next := slices.Clone(g.first)
	for _, e := range edges {
		g.edges[next[e.Row]] = e
		next[e.Row]++
	}
	return g
}

func (g *graph) of(left int) []Edge { return g.edges[g.first[left]:g.first[left+1]] }
