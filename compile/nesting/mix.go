package nesting

import (
	"cmp"
	"math/big"
	"slices"

	"barwright/compile/nesting/pattern"
	"barwright/compile/simplex"
)

// mix buys sheets for pieces that come in many copies: the linear program of Gilmore and Gomory,
// "A linear programming approach to the cutting stock problem", Operations Research 9 (1961) and
// 11 (1963), tells how often each pattern should be cut, in parts of sheets too; patterns come in
// as they gain.
type mix struct {
	sawer
	copies  [][]int32 // the pieces of a kind
	kinds   []pattern.Kind
	grids   []*pattern.Grid // of each kind of sheet, nil where there are few of it
	recipes []recipe
	root    *program // asks for all pieces
	until   int      // work
	atLeast int64    // the price of all
}

// recipe is a pattern for a kind of sheet.
type recipe struct {
	sheet int
	part  *pattern.Part
	gives []int // of each kind
}

// newMix is nil where there are more kinds of pieces than sheets, as then no pattern is cut often,
// and where no sheet is there in any number, or all are free.
func (s sawer) newMix(sheets, work int) *mix {
	m := &mix{sawer: s, until: s.work + work}
	if m.sort(); len(m.kinds) > sheets || m.dearest() == 0 {
		return nil
	}
	m.grids = make([]*pattern.Grid, len(s.kinds))
	any := false
	for i, k := range s.kinds {
		if k.most >= len(s.shapes) {
			any = true
			m.grids[i] = pattern.NewGrid(m.kinds, k.w, k.h, s.stages, work/(2*len(m.kinds)))
			s.work += m.grids[i].Work / 2
		}
	}
	if !any {
		return nil
	}
	return m
}

// sort finds the kinds of pieces, those first that need the most area.
func (m *mix) sort() {
	type size struct {
		w, h  Length
		turns bool
	}
	at := map[size]int{} // for lookup only
	for p, sh := range m.shapes {
		key := size{sh.w, sh.h, sh.turns}
		i, ok := at[key]
		if !ok {
			i = len(m.copies)
			at[key] = i
			m.copies = append(m.copies, nil)
		}
		m.copies[i] = append(m.copies[i], int32(p))
	}
	area := func(c []int32) float64 { return float64(len(c)) * m.shapes[c[0]].area }
	slices.SortStableFunc(m.copies, func(a, b []int32) int { return cmp.Compare(area(b), area(a)) })
	for _, c := range m.copies {
		sh := m.shapes[c[0]]
		m.kinds = append(m.kinds, pattern.Kind{W: sh.w, H: sh.h, Turns: sh.turns, Most: len(c)})
	}
}

// demand is how many pieces there are of each kind.
func (m *mix) demand() (left []int) {
	for _, k := range m.kinds {
		left = append(left, k.Most)
	}
	return left
}

// program asks for what is left.
type program struct {
	*simplex.Program
	kinds []int // of its rows
	rows  []int // of kinds, or -1
	left  []int
}

// alone is the tag of a piece that stands alone in a program, for more than a sheet costs.
const alone = -2

func (m *mix) program(left []int) *program {
	p := &program{left: left}
	var need []float64
	var first []simplex.Column
	for k, n := range left {
		row := -1
		if n > 0 {
			row = len(p.kinds)
			p.kinds, need = append(p.kinds, k), append(need, float64(n))
			first = append(first, simplex.Column{Terms: []simplex.Term{{Row: row, By: 1}}, Cost: 2 * m.dearest(), Tag: alone})
		}
		p.rows = append(p.rows, row)
	}
	p.Program = simplex.New(need, first)
	for range 2 {
		for i := range m.recipes {
			p.Enter(m.column(p, i))
		}
	}
	return p
}

// dearest is the price of the dearest sheet.
func (m *mix) dearest() (most float64) {
	for _, k := range m.search.kinds {
		most = max(most, float64(k.price))
	}
	return most
}

// column is a recipe that gives no more than what is left.
func (m *mix) column(p *program, tag int) simplex.Column {
	r := &m.recipes[tag]
	c := simplex.Column{Cost: float64(m.search.kinds[r.sheet].price), Tag: tag}
	for k, n := range r.gives {
		if n > 0 && p.rows[k] >= 0 {
			c.Terms = append(c.Terms, simplex.Term{Row: p.rows[k], By: float64(min(n, p.left[k]))})
		}
	}
	return c
}

// solve lets patterns in until none gains, or work is done.
func (m *mix) solve(p *program, until int) {
	for any := true; any && m.work < until; {
		before := p.Work
		p.Trim()
		any = m.price(p)
		m.work += (p.Work - before) / 8
	}
}

// fine is what the dearest sheet costs in whole numbers, when patterns are priced.
const fine = 1 << 40

// worths are those of kinds in whole numbers, rounded down.
func (m *mix) worths(p *program) []int64 {
	out := make([]int64, len(m.kinds))
	scale := fine / m.dearest()
	for i, y := range p.Worths() {
		out[p.kinds[i]] = int64(max(0, float64(y*scale)))
	}
	return out
}

// price lets in patterns that gain, and reports whether any did.
func (m *mix) price(p *program) (any bool) {
	worths := m.worths(p)
	most := make([]int64, len(m.grids))
	for k, g := range m.grids {
		if g != nil {
			v, gains := m.seek(p, k, slices.Clone(worths))
			most[k], any = v, any || gains
		}
	}
	if p == m.root {
		m.prove(worths, most)
	}
	return any
}

// repriced is how often worths are changed until a pattern gains.
const repriced = 8

// seek lets in patterns for a kind of sheet, and tells what it can give at most, at these worths.
// Where patterns give more than is left, and gain nothing without that, the worths of such pieces
// are lowered, for few can be used (sequential value correction: Mukhacheva, Belov, Kartack and
// Mukhacheva, "Linear one-dimensional cutting-packing problems", Pesquisa Operacional 20, 2000).
func (m *mix) seek(p *program, sheet int, worths []int64) (most int64, gains bool) {
	cost := int64(float64(m.search.kinds[sheet].price) * (fine / m.dearest()))
	g := m.grids[sheet]
	for try := range repriced {
		v := g.Price(worths)
		m.work += g.Work / 8
		if try == 0 {
			most = v
		}
		best := g.Best(cost+cost>>20, 8)
		if len(best) == 0 || m.enter(p, sheet, best) {
			return most, len(best) > 0
		}
		gives := make([]int, len(m.kinds))
		best[0].Count(gives)
		for k, n := range gives {
			if n > p.left[k] {
				worths[k] = worths[k] / int64(n) * int64(p.left[k])
			}
		}
	}
	return most, false
}

// enter lets in those of some patterns that gain, and reports whether any did.
func (m *mix) enter(p *program, sheet int, parts []*pattern.Part) (any bool) {
	for _, part := range parts {
		gives := make([]int, len(m.kinds))
		part.Count(gives)
		tag := len(m.recipes)
		m.recipes = append(m.recipes, recipe{sheet, part, gives})
		if p.Enter(m.column(p, tag)) {
			any = true
		} else {
			m.recipes = m.recipes[:tag]
		}
	}
	return any
}

// prove raises the bound by worths of pieces, and what each kind of sheet can give at most at
// these: all pieces together cost no less than what the sheets that give most for their price do
// (Farley, "A note on bounding a class of linear programming problems, including cutting stock
// problems", Operations Research 38, 1990). It is true of all layouts that are sawn in so many
// stages if the grids are whole, as all numbers are.
func (m *mix) prove(worths, most []int64) {
	sum := new(big.Int)
	for k, w := range worths {
		sum.Add(sum, new(big.Int).Mul(big.NewInt(w), big.NewInt(int64(m.kinds[k].Most))))
	}
	least := int64(-1)
	for k, g := range m.grids {
		if g == nil || !g.Whole {
			return
		}
		if most[k] == 0 {
			continue
		}
		price := big.NewInt(m.search.kinds[k].price)
		cost := new(big.Int)
		if len(m.grids) == 1 {
			cost.Mul(over(sum, most[k]), price)
		} else {
			cost = over(cost.Mul(sum, price), most[k])
		}
		if v := cost.Int64(); cost.IsInt64() && (least < 0 || v < least) {
			least = v
		}
	}
	m.atLeast = max(m.atLeast, least)
}

// over is a number divided by another, rounded up.
func over(a *big.Int, b int64) *big.Int {
	a = new(big.Int).Add(a, big.NewInt(b-1))
	return a.Quo(a, big.NewInt(b))
}
