package sticks

import (
	"math"
	"slices"

	"barwright/compile/simplex"
)

// scale is what the dearest stick costs in whole numbers, when patterns are priced and proved.
const scale = 1 << 40

// master is the linear program of Gilmore and Gomory, "A linear programming approach to the
// cutting stock problem", Operations Research 9 (1961) and 11 (1963): the least cost of patterns,
// in parts of sticks too, that give what is left. Patterns come in as they gain. A stock of which
// there are few is a row of which a pattern takes one.
type master struct {
	*solver
	*simplex.Program
	left     []int // of a row
	live     []int // rows with something left: those of the program
	at       []int // of a row: its place in live, or -1
	patterns []pattern
	pool     []simplex.Column // patterns by their tags, and what is spare of rows
	value    float64          // of the program
	steady   []float64        // worths of the best bound so far
	under    float64          // that bound
	cut      float64          // a bound that is as good as any
}

// newMaster starts a program of what is left with patterns that may do.
func (s *solver) newMaster(left []int, patterns []pattern) *master {
	m := &master{solver: s, left: left, at: make([]int, len(left)), cut: math.Inf(1)}
	for row, n := range left {
		m.at[row] = -1
		if n > 0 {
			m.at[row] = len(m.live)
			m.live = append(m.live, row)
		}
	}
	var first []simplex.Column
	for i, row := range m.live {
		first = append(first, m.first(row))
		m.pool = append(m.pool, simplex.Spare(i))
	}
	for _, p := range patterns {
		if p = m.of(p, left); len(p.takes) > 0 {
			m.add(p)
		}
	}
	m.Program = simplex.New(m.need(), first)
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
		return m.newMaster(left, m.patterns)
	}
	o := &master{solver: m.solver, left: left, live: m.live, at: m.at, cut: math.Inf(1)}
	o.patterns, o.pool = slices.Clone(m.patterns), slices.Clone(m.pool)
	o.Program = m.Again(o.need(), m.alone())
	return o
}

// need is what the program's rows ask for: below 0 the sticks of which there are few.
func (m *master) need() (out []float64) {
	for _, row := range m.live {
		n := float64(m.left[row])
		if row >= m.kinds() {
			n = -n
		}
		out = append(out, n)
	}
	return out
}

// alone is the cost of what no pattern gives.
func (m *master) alone() float64 { return 1000 * float64(m.dearest()) }

// first is the column that a row starts with: pieces of a kind alone in a stick, at the least cost,
// or in none; or all sticks of a stock left there.
func (m *master) first(row int) simplex.Column {
	if row >= m.kinds() {
		return simplex.Spare(m.at[row])
	}
	c := simplex.Column{Terms: []simplex.Term{{Row: m.at[row], By: 1}}, Cost: m.alone(), Tag: simplex.Excess}
	best, per := pattern{}, c.Cost
	for k, room := range m.rooms {
		n := int(min(room/m.lengths[row], int64(m.left[row])))
		if n == 0 || m.rows[k] >= 0 {
			continue
		}
		if p := float64(m.costs[k]) / float64(n); p < per {
			per, best = p, pattern{k, []take{{row, n}}}
		}
	}
	if best.takes != nil {
		c = m.add(best)
	}
	return c
}

// add adds a pattern to the pool.
func (m *master) add(p pattern) simplex.Column {
	c := m.column(p)
	m.patterns, m.pool = append(m.patterns, p), append(m.pool, c)
	return c
}

// column is a pattern that is not in the pool yet.
func (m *master) column(p pattern) simplex.Column {
	c := simplex.Column{Cost: float64(m.costs[p.stock]), Tag: len(m.patterns)}
	for _, t := range p.takes {
		by := float64(t.n)
		if t.row >= m.kinds() {
			by = -by
		}
		c.Terms = append(c.Terms, simplex.Term{Row: m.at[t.row], By: by})
	}
	return c
}

func (s *solver) dearest() (most int64) {
	for _, c := range s.costs {
		most = max(most, c)
	}
	return most
}

// solve lets patterns in until none gains, or none can change the least purchase any more. Patterns are priced between the worths of the program and those that
// gave the best bound so far, which keeps these from swinging (Wentges, "Weighted Dantzig-Wolfe
// decomposition for linear mixed-integer programming", International Transactions in Operational
// Research 4, 1997).
func (m *master) solve() {
	m.settle()
	m.improve()
	hold := 0.0
	for !m.spent() {
		m.value = m.Value()
		found := m.price(hold)
		switch {
		case m.settled():
			return
		case m.admit(found):
			m.improve()
			hold = 0.8
		case hold == 0:
			return
		default:
			hold -= 0.4
		}
	}
}

// improve brings in columns of the pool, each time the one that gains most, until none gains.
func (m *master) improve() {
	for round := 0; round < 20*len(m.live) && !m.spent(); round++ {
		before, best, most := m.Work, -1, 0.0
		for i, c := range m.pool {
			if g := m.Gain(c); g > most {
				best, most = i, g
			}
		}
		entered := best >= 0 && m.Enter(m.pool[best])
		m.steps += len(m.pool) + (m.Work-before)/8
		if !entered {
			break
		}
	}
	before := m.Work
	m.Price()
	m.steps += (m.Work - before) / 8
}

// admit adds what gains to the pool, and tells whether any does.
func (m *master) admit(found []pattern) (any bool) {
	for _, p := range found {
		if m.Gain(m.column(p)) > 0 {
			m.add(p)
			any = true
		}
	}
	return any
}

// settle starts the steady worths with the lengths, at the cost of the stock that is cheapest by
// length.
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

// price finds columns that gain where worths are held back to the steady ones by a share: of each
// stock the best, and some of what that leaves. With them comes a bound of the program (Farley, "A
// note on bounding a class of linear programming problems, including cutting stock problems",
// Operations Research 38, 1990), which is kept where it is the best so far: the sum of the worths,
// less by what the best pattern passes the cost of its stick.
func (m *master) price(hold float64) (found []pattern) {
	y := slices.Clone(m.Worths())
	for i := range y {
		y[i] = float64(hold*m.steady[i]) + float64((1-hold)*y[i])
	}
	worst := 1.0
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
			value, _ = sack.run(room, over, 3_000_000)
		}
		worst = math.Max(worst, float64(value)/float64(over))
		for more := 0; len(sack.best) > 0; more++ {
			found = append(found, m.pattern(k, sack.takes()))
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
	return found
}

// budget is what a pattern of a stock may be worth: its cost, and the worth of one that there are few
// of; 0 where none is left.
func (m *master) budget(stock int, y []float64) float64 {
	cost := float64(m.costs[stock])
	if row := m.rows[stock]; row >= 0 {
		if m.left[row] == 0 {
			return 0
		}
		cost += math.Max(0, y[m.at[row]])
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
		all := math.Max(0, float64(y[i]*float64(m.left[row])))
		if row < m.kinds() {
			sum += all / by
		} else {
			sum -= all
		}
	}
	return sum
}
