package sticks

import "math"

// scale is what the dearest stick costs in whole numbers, when patterns are priced and proved.
const scale = 1 << 40

// shake is what is added to what is left, a little different for each row, so that no two patterns of a basis come to nothing at once:
// where many do, the program would hardly move (Charnes, "Optimality and degeneracy in linear
// programming", Econometrica 20, 1952).
const shake = 1e-4

// column is a pattern in the linear program, or, with stock -1, what stands in for one: pieces
// that nothing gives yet or that are given and not asked for, or a stick that is left in stock.
type column struct {
	pattern
	cost float64
}

// master is the linear program of Gilmore and Gomory, "A linear programming approach to the
// cutting stock problem", Operations Research 9 (1961) and 11 (1963): the least cost of patterns, in parts of
// sticks too, that give what is left. Patterns come in as they gain. It is the revised simplex method with
// the inverse of the basis kept whole.
type master struct {
	*solver
	left    []int // of a row
	active  []int // rows with something left
	at      []int // of a row: its place in active, or -1
	basis   []column
	inverse []float64 // square, by rows
	x       []float64 // of the basis
	y       []float64 // the worth of a row
	value   float64   // of the program
	steady  []float64 // worths of the best bound so far
	under   float64   // that bound
}

// newMaster starts a program of what is left with patterns that may do.
func (s *solver) newMaster(left []int, pool []pattern) *master {
	m := &master{solver: s, left: left, at: make([]int, len(left))}
	for row, n := range left {
		m.at[row] = -1
		if n > 0 {
			m.at[row] = len(m.active)
			m.active = append(m.active, row)
		}
	}
	n := len(m.active)
	jolt := chance(n)
	m.inverse = make([]float64, n*n)
	m.x, m.y = make([]float64, n), make([]float64, n)
	for i, row := range m.active {
		c := m.first(row)
		m.basis = append(m.basis, c)
		m.inverse[i*n+i] = 1 / float64(c.takes[0].n)
		m.x[i] = (float64(left[row]) + float64(shake*(1+jolt.unit()))) / float64(c.takes[0].n)
	}
	m.prices()
	for range 2 {
		for _, p := range pool {
			c := m.column(p)
			if p.times(left) > 0 && m.gain(c) > 1e-7*c.cost {
				m.enter(c)
			}
		}
	}
	return m
}

// first is the column that a row starts with: pieces of a kind alone in a stick, at the least cost, or none.
func (m *master) first(row int) column {
	if row >= m.kinds() {
		return column{pattern{-1, []take{{row, 1}}}, 0}
	}
	c := column{pattern{-1, []take{{row, 1}}}, 1000 * float64(m.dearest())}
	per := c.cost
	for k, room := range m.rooms {
		n := int(min(room/m.lengths[row], int64(m.left[row])))
		if n == 0 || m.rows[k] >= 0 {
			continue
		}
		if p := float64(m.costs[k]) / float64(n); p < per {
			per, c = p, column{pattern{k, []take{{row, n}}}, float64(m.costs[k])}
		}
	}
	return c
}

func (s *solver) dearest() (most int64) {
	for _, c := range s.costs {
		most = max(most, c)
	}
	return most
}

func (m *master) column(p pattern) column { return column{p, float64(m.costs[p.stock])} }

// prices works out the worth of rows anew from the basis.
func (m *master) prices() {
	n := len(m.active)
	clear(m.y)
	for r, c := range m.basis {
		for i, v := range m.inverse[r*n : (r+1)*n] {
			m.y[i] += float64(c.cost * v)
		}
	}
	m.steps += n * n / 4
}

// gain is what a unit of a column saves.
func (m *master) gain(c column) float64 {
	sum := -c.cost
	for _, t := range c.takes {
		if at := m.at[t.row]; at >= 0 {
			sum += float64(float64(t.n) * m.y[at])
		}
	}
	return sum
}

// enter puts a column into the basis for the one that gives way first, and tells whether one does.
func (m *master) enter(c column) bool {
	n := len(m.active)
	g := m.gain(c)
	d := make([]float64, n)
	for r := range d {
		for _, t := range c.takes {
			d[r] += float64(float64(t.n) * m.inverse[r*n+m.at[t.row]])
		}
	}
	m.steps += n * n / 8
	out := m.leaves(d)
	if out < 0 {
		return false
	}
	t := m.x[out] / d[out]
	row := m.inverse[out*n : (out+1)*n]
	for i := range row {
		row[i] /= d[out]
	}
	for r := range d {
		if r == out || d[r] == 0 {
			continue
		}
		m.x[r] = max(0, m.x[r]-float64(t*d[r]))
		other := m.inverse[r*n : (r+1)*n]
		for i, v := range row {
			other[i] -= float64(d[r] * v)
		}
	}
	m.x[out], m.basis[out] = t, c
	for i, v := range row {
		m.y[i] += -float64(g * v)
	}
	return true
}

// leaves is the row of the basis that a column drives out: of those that come to nothing first, within a hair,
// the one that changes most, for a small change would be divided by (Harris, "Pivot selection methods of the Devex LP
// code", Mathematical Programming 5, 1973). It is -1 where there is none.
func (m *master) leaves(d []float64) int {
	const small, hair = 1e-7, 1e-9
	most := math.Inf(1)
	for r, v := range d {
		if v > small {
			most = math.Min(most, (m.x[r]+hair)/v)
		}
	}
	out := -1
	for r, v := range d {
		if v > small && m.x[r]/v <= most && (out < 0 || v > d[out]) {
			out = r
		}
	}
	return out
}

// sum is the value of the program: that of what is left at the worths of the basis.
func (m *master) sum() (v float64) {
	for i, row := range m.active {
		v += float64(m.y[i] * float64(m.left[row]))
	}
	return v
}

// still works out the basis anew without the shaking.
func (m *master) still() {
	n := len(m.active)
	for r := range m.x {
		m.x[r] = 0
		for i, row := range m.active {
			m.x[r] += float64(m.inverse[r*n+i] * float64(m.left[row]))
		}
		m.x[r] = max(0, m.x[r])
	}
}

// solve lets patterns in until none gains, or none can change the least purchase any more; it tells
// whether it came so far. Patterns are priced between the worths of the program and those that
// gave the best bound so far, which keeps these from swinging (Wentges, "Weighted Dantzig-Wolfe decomposition for linear
// mixed-integer programming", International Transactions in Operational Research 4, 1997).
func (m *master) solve() bool {
	defer m.still()
	m.settle()
	hold := 0.0
	for round := 1; !m.spent(); round++ {
		if round%64 == 0 {
			m.prices()
		}
		m.value = m.sum()
		found, proved := m.price(hold)
		switch {
		case m.settled():
			return true
		case m.enterAll(found):
			hold = 0.8
		case hold == 0:
			return proved
		default:
			hold -= 0.4
		}
	}
	return false
}

// enterAll lets in what gains, and tells whether any does.
func (m *master) enterAll(found []column) (any bool) {
	for _, c := range found {
		if m.gain(c) > 1e-7*math.Max(c.cost, 1) && m.enter(c) {
			any = true
		}
	}
	return any
}

// settle starts the steady worths with the lengths, at the cost of the stock that is cheapest by length.
func (m *master) settle() {
	per := math.Inf(1)
	for k, room := range m.rooms {
		if room > 0 {
			per = math.Min(per, float64(m.costs[k])/float64(room))
		}
	}
	m.steady = make([]float64, len(m.active))
	for i, row := range m.active {
		if row < m.kinds() {
			m.steady[i] = float64(m.lengths[row]) * per
		}
	}
	m.under = m.worth(m.steady, 1)
}

// settled tells whether the best bound of the program gives the same least purchase as its value.
func (m *master) settled() bool {
	if m.under >= m.value*(1-1e-9) {
		return true
	}
	if len(m.costs) > 1 {
		return false
	}
	c := float64(m.costs[0])
	return math.Ceil(m.under/c-1e-9) >= math.Ceil(m.value/c-1e-6)
}

// price finds columns that gain where worths are held back to the steady ones by a share: of each stock the
// best, and some of what that leaves. A value that the
// program is not under (Farley, "A note on bounding a class of linear programming problems,
// including cutting stock problems", Operations Research 38, 1990) comes with it: the sum of the worths, less by what the
// best pattern passes the cost of its stick.
func (m *master) price(hold float64) (found []column, proved bool) {
	y := make([]float64, len(m.y))
	for i := range y {
		y[i] = float64(hold*m.steady[i]) + float64((1-hold)*m.y[i])
	}
	for i, row := range m.active {
		if row < m.kinds() && m.y[i] < 0 {
			found = append(found, column{pattern{-1, []take{{row, -1}}}, 0})
		}
	}
	for _, row := range m.rows {
		if row >= 0 && m.at[row] >= 0 {
			found = append(found, column{pattern{-1, []take{{row, 1}}}, 0})
		}
	}
	worst, proved := 1.0, true
	values := m.worths(y)
	for k, room := range m.rooms {
		budget := m.budget(k, y)
		if budget == 0 {
			continue
		}
		over := int64(math.Ceil(float64(budget * m.factor())))
		sack := m.newKnapsack(m.active[:len(values)], values, m.left, room)
		value, ok := sack.run(room, over, 100_000)
		proved = proved && ok
		worst = math.Max(worst, float64(value)/float64(over))
		for more := 0; len(sack.best) > 0; more++ {
			found = append(found, m.column(m.pattern(k, sack.takes())))
			if more == 10 {
				break
			}
			sack.next(room, over)
		}
		m.steps += sack.nodes
	}
	if u := m.worth(y, worst); u > m.under {
		m.under = u
		for i, row := range m.active {
			if m.steady[i] = y[i]; row < m.kinds() {
				m.steady[i] /= worst
			}
		}
	}
	return found, proved
}

// budget is what a pattern of a stock may be worth: its cost, and the worth of one that there are few
// of; 0 where none is left.
func (m *master) budget(stock int, y []float64) float64 {
	cost := float64(m.costs[stock])
	if row := m.rows[stock]; row >= 0 {
		if m.at[row] < 0 {
			return 0
		}
		cost -= math.Min(0, y[m.at[row]])
	}
	return cost
}

func (m *master) factor() float64 { return scale / float64(m.dearest()) }

// worths are those of the kinds with something left, in whole numbers, rounded down; never so much
// that all pieces together pass an int64.
func (m *master) worths(y []float64) []int64 {
	var out []int64
	for i, row := range m.active {
		if row < m.kinds() {
			worth := math.Max(0, float64(y[i]*m.factor()))
			out = append(out, int64(math.Min(worth, float64((1<<62)/m.count))))
		}
	}
	return out
}

// worth is the sum of all worths where those of kinds are divided.
func (m *master) worth(y []float64, by float64) (sum float64) {
	for i, row := range m.active {
		all := float64(y[i] * float64(m.left[row]))
		if row < m.kinds() {
			sum += math.Max(0, all/by)
		} else {
			sum += math.Min(0, all)
		}
	}
	return sum
}
