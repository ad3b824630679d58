package assign

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestLeast(t *testing.T) {
	one := func(row, col int, cost int64) Edge { return Edge{row, col, Cost{cost}} }
	for _, test := range []struct {
		name       string
		rows, cols int
		edges      []Edge
		want       []int
	}{
		{"nothing", 0, 0, nil, []int{}},
		{"no edges", 2, 1, nil, []int{-1, -1}},
		{"the cheaper of two", 1, 2, []Edge{one(0, 0, 2), one(0, 1, 1)}, []int{1}},
		{"the cheaper of one pair twice", 1, 1, []Edge{one(0, 0, 2), one(0, 0, -1)}, []int{0}},
		{"together, not one by one", 2, 2, []Edge{one(0, 0, 1), one(0, 1, 2), one(1, 0, 1), one(1, 1, 9)}, []int{1, 0}},
		{"two dear pairs before a cheap one", 2, 2, []Edge{one(0, 0, 0), one(0, 1, 99), one(1, 0, 99)}, []int{1, 0}},
		{"more rows than columns", 3, 1, []Edge{one(0, 0, 3), one(1, 0, 1), one(2, 0, 2)}, []int{-1, 0, -1}},
		{"the first of what is equally good", 2, 2, []Edge{one(0, 0, 1), one(0, 1, 1), one(1, 0, 1), one(1, 1, 1)}, []int{0, 1}},
		{"a level before the next", 1, 2, []Edge{{0, 0, Cost{1, 0}}, {0, 1, Cost{0, 1 << 40}}}, []int{1}},
		{"levels add up apart", 2, 2, []Edge{
			{0, 0, Cost{0, 5}}, {0, 1, Cost{1, -9}}, {1, 0, Cost{0, 1}}, {1, 1, Cost{1, -4}},
		}, []int{1, 0}},
	} {
		if got := Least(test.rows, test.cols, test.edges); !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
}

// Every way to give rows to columns is tried.
func TestAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, cols, edges := draw(t, 6)
		pairs, cost := sum(t, cols, edges, Least(rows, cols, edges))
		best, least := every(0, rows, edges, make([]bool, cols))
		if pairs != best || cost != least {
			t.Fatalf("%d pairs at %v, but %d at %v can be", pairs, cost, best, least)
		}
	})
}

// every tries all ways to give columns to the rows from one on.
func every(row, rows int, edges []Edge, taken []bool) (pairs int, cost Cost) {
	if row == rows {
		return 0, Cost{}
	}
	pairs, cost = every(row+1, rows, edges, taken)
	for _, e := range edges {
		if e.Row != row || taken[e.Col] {
			continue
		}
		taken[e.Col] = true
		p, c := every(row+1, rows, edges, taken)
		taken[e.Col] = false
		if p, c = p+1, c.plus(e.Cost); p > pairs || p == pairs && c.less(cost) {
			pairs, cost = p, c
		}
	}
	return pairs, cost
}

// What is found is proved: as many pairs as nodes that cover all edges (Kőnig), at
// prices that no way to make so many can go under.
func TestProof(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, cols, edges := draw(t, 40)
		pairs, _ := sum(t, cols, edges, Least(rows, cols, edges))
		g := byRow(rows, cols, edges)
		short, scarce := g.most().short()
		cover := 0
		for i, edges := range short {
			if !edges && len(g.of(i)) > 0 {
				cover++
			}
		}
		for j := range scarce {
			if scarce[j] {
				cover++
			}
		}
		for _, e := range edges {
			if short[e.Row] && !scarce[e.Col] {
				t.Fatalf("%v is not covered", e)
			}
		}
		if pairs != cover {
			t.Fatalf("%d pairs, but %d nodes cover all edges", pairs, cover)
		}
		for _, p := range parts(rows, cols, edges) {
			p.least().prove(t)
		}
	})
}

func (s *solution) prove(t *rapid.T) {
	for i := range s.left {
		if s.pair[i] < 0 && len(s.of(i)) > 0 {
			t.Fatalf("left %d has edges, and no pair", i)
		}
		best := false
		for _, e := range s.of(i) {
			over := e.Cost.minus(s.leftPrice[i]).minus(s.rightPrice[e.Col])
			if over.less(Cost{}) {
				t.Fatalf("%v costs less than its prices %v, %v", e, s.leftPrice[i], s.rightPrice[e.Col])
			}
			best = best || e.Col == s.pair[i] && over == Cost{}
		}
		if s.pair[i] >= 0 && !best {
			t.Fatalf("left %d has %d, which costs more than the prices", i, s.pair[i])
		}
	}
	for j, price := range s.rightPrice {
		if (Cost{}).less(price) || s.taken[j] < 0 && price != (Cost{}) {
			t.Fatalf("right %d, taken by %d, has the price %v", j, s.taken[j], price)
		}
	}
}

func draw(t *rapid.T, most int) (rows, cols int, edges []Edge) {
	rows, cols = rapid.IntRange(1, most).Draw(t, "rows"), rapid.IntRange(1, most).Draw(t, "cols")
	number := rapid.SampledFrom([]int64{0, 1, 2, 3, 50, -7, 1 << 40, -1 << 40})
	edge := rapid.Custom(func(t *rapid.T) Edge {
		return Edge{
			rapid.IntRange(0, rows-1).Draw(t, "row"), rapid.IntRange(0, cols-1).Draw(t, "col"),
			Cost{number.Draw(t, "first"), number.Draw(t, "second"), 0, number.Draw(t, "last")},
		}
	})
	return rows, cols, rapid.SliceOfN(edge, 0, 2*most).Draw(t, "edges")
}

// sum counts the pairs and adds up the costs of what rows were given.
func sum(t interface{ Fatalf(string, ...any) }, cols int, edges []Edge, given []int) (pairs int, cost Cost) {
	cheapest := map[[2]int]Cost{} // for lookup only
	for _, e := range edges {
		at := [2]int{e.Row, e.Col}
		if c, ok := cheapest[at]; !ok || e.Cost.less(c) {
			cheapest[at] = e.Cost
		}
	}
	taken := make([]bool, cols)
	for row, col := range given {
		if col < 0 {
			continue
		}
		c, ok := cheapest[[2]int{row, col}]
		if !ok || taken[col] {
			t.Fatalf("row %d cannot have %d", row, col)
		}
		taken[col] = true
		pairs, cost = pairs+1, cost.plus(c)
	}
	return pairs, cost
}

// BenchmarkLeast gives n rows a column each: most their own, some one that another
// wants too; or none its own, so that all compete.
func BenchmarkLeast(b *testing.B) {
	for _, n := range []int{300, 15_000} {
		for _, rival := range []struct {
			name  string
			share float64
		}{{"few_rivals", 0.02}, {"all_rivals", 1}} {
			b.Run(fmt.Sprintf("%s/%d_rows", rival.name, n), func(b *testing.B) {
				chance := rand.New(rand.NewPCG(1, uint64(n)))
				var edges []Edge
				for i := range n {
					own := i
					if chance.Float64() < rival.share {
						own = chance.IntN(n)
					}
					edges = append(edges, Edge{i, own, Cost{}})
					for range 8 {
						near := min(n-1, max(0, own-20+chance.IntN(40)))
						edges = append(edges, Edge{i, near, Cost{chance.Int64N(2), 1 + chance.Int64N(9), 1, chance.Int64N(1e6)}})
					}
				}
				b.ReportAllocs()
				for b.Loop() {
					Least(n, n, edges)
				}
			})
		}
	}
}
