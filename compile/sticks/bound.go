package sticks

import "math/big"

// prove is a bound in whole numbers: worths of pieces, rounded down, no pattern of which is worth more
// than it costs, as exact searches show. It is 0 where a search ended before its proof.
//
// Where all patterns of a stock are worth at most z, and the worst of the stocks in any number is w for
// a cost of c, then worths divided by w/c are no more than what those cost; each stick of a limited
// stock may pass its own cost p by z*c/w-p. What is left of the sum of all worths is the bound.
func (m *master) prove() int64 {
	values := m.worths(m.steady)
	most := make([]int64, len(m.rooms)) // a stick's worth
	worst, cost := int64(1), int64(0)   // worst/cost is the most of stocks in any number
	for k, room := range m.rooms {
		sack := m.newKnapsack(m.live[:len(values)], values, m.left, room)
		value, ok := sack.run(room, 0, 2_000_000)
		m.steps += sack.nodes
		if !ok {
			value = sack.table[sack.row-1]
		}
		most[k] = value
		if m.rows[k] < 0 && (cost == 0 || cheaper(m.costs[k], max(value, 1), cost, worst)) {
			worst, cost = max(value, 1), m.costs[k]
		}
	}
	if cost == 0 { // there are few of every stock: the worths as they are
		worst, cost = scale, m.dearest()
	}
	sum := new(big.Int)
	for i, v := range values {
		sum.Add(sum, product(v, int64(m.left[m.live[i]]), cost))
	}
	for k, row := range m.rows {
		over := new(big.Int).Sub(product(most[k], cost, 1), product(m.costs[k], worst, 1))
		if row >= 0 && over.Sign() > 0 {
			sum.Sub(sum, over.Mul(over, big.NewInt(int64(m.left[row]))))
		}
	}
	if sum.Sign() <= 0 {
		return 0
	}
	w := big.NewInt(worst)
	sum.Add(sum, w).Sub(sum, big.NewInt(1)).Quo(sum, w)
	return sum.Int64()
}

func product(a, b, c int64) *big.Int {
	p := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
	return p.Mul(p, big.NewInt(c))
}
