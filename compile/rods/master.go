package rods

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// mulDiv is a*b/c rounded down, for a, b >= 0 and c > 0 and a quotient that fits.
func mulDiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return math.MaxInt64 / 4
	}
	q, _ := bits.Div64(hi, lo, uint64(c))
	return int64(min(q, math.MaxInt64/4))
}

// column is a pattern of the linear program.
type column struct {
	stock  int
	counts []int
	price  float64
}

// master is the linear program: the least price of patterns, in parts of sticks too, that
// give the demand. Its basis is kept with its inverse.
type master struct {
	*solver
	demand  []int
	basis   []column
	inverse [][]float64
	x       []float64 // of the basis
	y       []float64 // the prices of pieces
}

func (s *solver) master(demand []int, pool []column) *master {
	m := &master{solver: s, demand: demand}
	n := len(demand)
	m.inverse = make([][]float64, n)
	m.x, m.y = make([]float64, n), make([]float64, n)
	for i := range n {
		m.inverse[i] = make([]float64, n)
		c := column{stock: -1, counts: make([]int, n)}
		// a piece alone in the stick that gives it at the least price
		var per float64
		for k, st := range s.Stocks {
			take := min(int(st.Length/s.lengths[i]), max(demand[i], 1))
			if take == 0 {
				continue
			}
			if p := float64(st.Price) / float64(take); c.stock < 0 || p < per {
				per, c.stock, c.price = p, k, float64(st.Price)
				c.counts[i] = take
			}
		}
		m.basis = append(m.basis, c)
		m.inverse[i][i] = 1 / float64(c.counts[i])
		m.x[i] = float64(demand[i]) / float64(c.counts[i])
	}
	m.prices()
	for range 2 {
		for _, c := range pool {
			if m.gain(c) > 1e-7*c.price && fits(c.counts, demand) {
				m.enter(c)
			}
		}
	}
	return m
}

func fits(counts, demand []int) bool {
	for i, n := range counts {
		if n > demand[i] {
			return false
		}
	}
	return true
}

func (m *master) prices() {
	for i := range m.y {
		m.y[i] = 0
	}
	for r, c := range m.basis {
		for i, v := range m.inverse[r] {
			m.y[i] += float64(c.price * v)
		}
	}
}

func (m *master) gain(c column) float64 {
	sum := -c.price
	for i, n := range c.counts {
		if n > 0 {
			sum += float64(float64(n) * m.y[i])
		}
	}
	return sum
}

// enter puts a column into the basis for the one that gives way first.
func (m *master) enter(c column) bool {
	n := len(m.basis)
	d := make([]float64, n)
	for r := range d {
		for i, k := range c.counts {
			if k > 0 {
				d[r] += float64(float64(k) * m.inverse[r][i])
			}
		}
	}
	out := -1
	for r := range d {
		if d[r] > 1e-9 && (out < 0 || m.x[r]*d[out] < m.x[out]*d[r]-1e-12) {
			out = r
		}
	}
	m.work += n*n/8 + 1
	if out < 0 {
		return false
	}
	g := m.gain(c)
	t := m.x[out] / d[out]
	row := m.inverse[out]
	for i := range row {
		row[i] /= d[out]
	}
	for r := range d {
		if r == out || d[r] == 0 {
			continue
		}
		m.x[r] -= float64(t * d[r])
		if m.x[r] < 0 {
			m.x[r] = 0
		}
		for i := range row {
			m.inverse[r][i] -= float64(d[r] * row[i])
		}
	}
	m.x[out] = t
	m.basis[out] = c
	for i := range row {
		m.y[i] -= float64(g * row[i])
	}
	return true
}

// solve generates columns until none gains, and tells whether it came so far.
func (m *master) solve() bool {
	const scale = 1 << 32
	n := len(m.demand)
	by := make([]int, n)
	for round := 0; ; round++ {
		if m.work > m.most {
			return false
		}
		if round%50 == 49 {
			m.prices()
		}
		for i := range by {
			by[i] = i
		}
		slices.SortStableFunc(by, func(a, b int) int {
			return cmp.Compare(m.y[b]/float64(m.lengths[b]), m.y[a]/float64(m.lengths[a]))
		})
		entered := false
		var bestC column
		bestGain := 0.0
		for st, stock := range m.Stocks {
			k := m.knapsack(by, func(i int) int64 { return int64(math.Max(0, m.y[i]) * scale / float64(stock.Price)) })
			k.most = 200_000
			k.run(stock.Length, scale+scale>>20)
			m.work += k.nodes
			if k.value <= scale+scale>>20 {
				continue
			}
			c := column{stock: st, counts: make([]int, n), price: float64(stock.Price)}
			for at, i := range by {
				c.counts[i] = k.best[at]
			}
			if g := m.gain(c); g > bestGain {
				bestGain, bestC = g, c
				entered = true
			}
		}
		if !entered || !m.enter(bestC) {
			return true
		}
	}
}

func (m *master) knapsack(by []int, value func(i int) int64) *knapsack {
	k := &knapsack{}
	for _, i := range by {
		k.lengths = append(k.lengths, m.lengths[i])
		k.values = append(k.values, value(i))
		k.left = append(k.left, m.demand[i])
	}
	return k
}

// prove is a bound in whole numbers: prices of pieces, rounded down, of which no pattern of
// a stock is worth more than that costs, as an exact search shows.
func (m *master) prove() int64 {
	const scale = 1 << 24
	n := len(m.demand)
	value := make([]int64, n)
	by := make([]int, n)
	for i := range by {
		by[i] = i
		value[i] = int64(math.Max(0, m.y[i]) * scale)
	}
	slices.SortStableFunc(by, func(a, b int) int {
		return cmp.Compare(float64(value[b])/float64(m.lengths[b]), float64(value[a])/float64(m.lengths[a]))
	})
	// the worst of stocks: value of its best pattern by its price
	worstValue, worstPrice := int64(0), int64(1)
	for _, stock := range m.Stocks {
		k := m.knapsack(by, func(i int) int64 { return value[i] })
		k.most = 2_000_000
		ok := k.run(stock.Length, 0)
		m.work += k.nodes
		if !ok {
			return 0
		}
		if k.value*worstPrice > worstValue*stock.Price {
			worstValue, worstPrice = k.value, stock.Price
		}
	}
	var sum int64
	for i, v := range value {
		sum += v * int64(m.demand[i])
	}
	// price * worstValue/worstPrice >= sum
	return ceilMulDiv(sum, worstPrice, worstValue)
}

func ceilMulDiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	q, r := bits.Div64(hi, lo, uint64(c))
	if r > 0 {
		q++
	}
	return int64(q)
}

// root solves the whole linear program, proves its bound, and dives.
func (s *solver) root(demand []int) {
	m := s.master(demand, nil)
	if !m.solve() {
		return
	}
	bound := m.prove()
	// prices are sums of stocks' prices
	if g := s.step(); g > 1 {
		bound = (bound + g - 1) / g * g
	}
	s.bound = max(s.bound, bound)
	for try := 0; s.best.price > s.bound && s.work < s.most && try < 200; try++ {
		s.dive(m, demand, uint64(try))
	}
}

// step is the greatest common divisor of all prices.
func (s *solver) step() int64 {
	g := int64(0)
	for _, st := range s.Stocks {
		a, b := g, st.Price
		for b != 0 {
			a, b = b, a%b
		}
		g = a
	}
	return g
}

type rng uint64

func (r *rng) unit() float64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	z ^= z >> 31
	return float64(z>>11) / (1 << 53)
}

// dive fixes whole sticks of the linear program, and solves what is left of it, until
// nothing is left.
func (s *solver) dive(root *master, demand []int, seed uint64) {
	r := rng(seed)
	left := slices.Clone(demand)
	var p purchase
	m := root
	for {
		var pool []column
		taken := false
		type part struct {
			c column
			x float64
		}
		var parts []part
		for b, c := range m.basis {
			pool = append(pool, c)
			whole := int(m.x[b] + 1e-6)
			for whole > 0 && !fits(times(c.counts, whole), left) {
				whole--
			}
			if whole > 0 {
				p = p.with(cutting{c.stock, c.counts, whole}, s.Stocks[c.stock].Price)
				for i, n := range c.counts {
					left[i] -= n * whole
				}
				taken = true
			}
			f := m.x[b] - math.Floor(m.x[b]+1e-6)
			if f > 1e-6 {
				if seed > 0 {
					f *= 1 - 0.5*r.unit()
				}
				parts = append(parts, part{c, f})
			}
		}
		slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(b.x, a.x) })
		n := 1
		for _, q := range parts {
			if n == 0 {
				break
			}
			if fits(q.c.counts, left) {
				p = p.with(cutting{q.c.stock, q.c.counts, 1}, s.Stocks[q.c.stock].Price)
				for i, k := range q.c.counts {
					left[i] -= k
				}
				taken = true
				n--
			}
		}
		if p.price >= s.best.price {
			return
		}
		rest := s.greedy(left)
		if p.price+rest.price < s.best.price {
			s.best = purchase{append(slices.Clone(p.cuts), rest.cuts...), p.price + rest.price}
		}
		if s.best.price <= s.bound || !taken || !slices.ContainsFunc(left, func(n int) bool { return n > 0 }) || s.work > s.most {
			return
		}
		m = s.master(slices.Clone(left), pool)
		if !m.solve() {
			return
		}
	}
}

func times(counts []int, n int) []int {
	out := slices.Clone(counts)
	for i := range out {
		out[i] *= n
	}
	return out
}
