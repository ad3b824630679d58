package sticks

import "math"

// scale is what the dearest stick costs in whole numbers, when patterns are priced and proved.
const scale = 1 << 40

// master is the linear program of Gilmore and Gomory, "A linear programming approach to the
// cutting stock problem", Operations Research 9 (1961) and 11 (1963): the least cost of patterns, in parts of
// sticks too, that give what is left. Patterns come in as they gain.
type master struct {
	*solver
	*program
	left   []int     // of a row
	value  float64   // of the program
	steady []float64 // worths of the best bound so far
	under  float64   // that bound
	cut    float64   // a bound that is as good as any
}

// newMaster starts a program of what is left with patterns that may do.
func (s *solver) newMaster(left []int, pool []column) *master {
	m := &master{solver: s, program: newProgram(left), left: left, cut: math.Inf(1)}
	var first []column
	for _, row := range m.live {
		first = append(first, m.first(row))
		spare := column{pattern{-1, []take{{row, -1}}}, 0}
		if row >= m.kinds() {
			spare.takes[0].n = 1
		}
		m.pool = append(m.pool, spare)
	}
	m.begin(first)
	for _, c := range pool {
		if c.stock >= 0 {
			if c.pattern = m.of(c.pattern, left); len(c.takes) > 0 {
				m.pool = append(m.pool, c)
			}
		}
	}
	return m
}

// rest is the program of what is left after some of it has been bought.
func (m *master) rest(left []int) *master {
	some := 0
	for _, row := range m.live {
		if left[row] > 0 {
			some++
		}
	}
	if 4*some < 3*len(m.live) {
		return m.newMaster(left, m.pool)
	}
	return &master{solver: m.solver, program: m.again(left, 1000*float64(m.dearest())), left: left, cut: math.Inf(1)}
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

// solve lets patterns in until none gains, or none can change the least purchase any more; it tells
// whether it came so far. Patterns are priced between the worths of the program and those that
// gave the best bound so far, which keeps these from swinging (Wentges, "Weighted Dantzig-Wolfe
// decomposition for linear mixed-integer programming", International Transactions in Operational
// Research 4, 1997).
func (m *master) solve() bool {
	defer m.still()
	m.settle()
	m.improve()
	hold := 0.0
	for !m.spent() {
		m.value = m.sum()
		found, proved := m.price(hold)
		m.steps, m.work = m.steps+m.work, 0
		switch {
		case m.settled():
			return true
		case m.admit(found):
			m.improve()
			hold = 0.8
		case hold == 0:
			return proved
		default:
			hold -= 0.4
		}
	}
	return false
}

// admit adds what gains to the pool, and tells whether any does.
func (m *master) admit(found []column) (any bool) {
	for _, c := range found {
		if m.gains(&c) {
			m.pool = append(m.pool, c)
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
	m.steady = make([]float64, len(m.live))
	for i, row := range m.live {
		if row < m.kinds() {
			m.steady[i] = float64(m.lengths[row]) * per
		}
	}
	m.under = m.worth(m.steady, 1)
}

// settled tells whether the best bound of the program gives the same least purchase as its value.
func (m *master) settled() bool {
	if m.under >= m.value*(1-1e-9) || m.under >= m.cut {
		return true
	}
	if len(m.costs) > 1 {
		return false
	}
	c := float64(m.costs[0])
	return math.Ceil(m.under/c-1e-9) >= math.Ceil(m.value/c-1e-6)
}

// price finds columns that gain where worths are held back to the steady ones by a share: of each stock the
// best, and some of what that leaves. A value that the program is not under (Farley, "A note on
// bounding a class of linear programming problems, including cutting stock problems", Operations
// Research 38, 1990) comes with it: the sum of the worths, less by what the best pattern passes the
// cost of its stick.
func (m *master) price(hold float64) (found []column, proved bool) {
	y := make([]float64, len(m.y))
	for i := range y {
		y[i] = float64(hold*m.steady[i]) + float64((1-hold)*m.y[i])
	}
	worst, proved := 1.0, true
	values := m.worths(y)
	for k, room := range m.rooms {
		budget := m.budget(k, y)
		if budget == 0 {
			continue
		}
		over := int64(math.Ceil(float64(budget * m.factor())))
		sack := m.newKnapsack(m.live[:len(values)], values, m.left, room)
		value, ok := sack.run(room, over, 100_000)
		if !ok && len(sack.best) == 0 {
			value, ok = sack.run(room, over, 3_000_000)
		}
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
		for i, row := range m.live {
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
		if m.left[row] == 0 {
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
	for i, row := range m.live {
		if row < m.kinds() {
			worth := math.Max(0, float64(y[i]*m.factor()))
			out = append(out, int64(math.Min(worth, float64((1<<62)/m.count))))
		}
	}
	return out
}

// worth is the sum of all worths where those of kinds are divided.
func (m *master) worth(y []float64, by float64) (sum float64) {
	for i, row := range m.live {
		all := float64(y[i] * float64(m.left[row]))
		if row < m.kinds() {
			sum += math.Max(0, all/by)
		} else {
			sum += math.Min(0, all)
		}
	}
	return sum
}
