// Package pattern finds how a sheet is cut edge to edge so that what it gives is worth most, each
// kind of piece in any number: Gilmore and Gomory, "Multistage cutting stock problems of two and
// more dimensions", Operations Research 13 (1965); "The theory and computation of knapsack
// functions", the same journal 14 (1966). Worths are whole numbers, and so are all lengths.
package pattern

import "barwright/compile/geom"

// Length is the measure of everything.
type Length = geom.Length

// Kind is a size of pieces, with a kerf added, and how many of it there are.
type Kind struct {
	W, H  Length
	Turns bool
	Most  int
}

// Grid is a sheet, with the lengths and heights that parts of it are thought to have.
type Grid struct {
	kinds  []Kind
	x, y   *axis
	stages int
	sizes  []size
	worths []int64
	levels []level
	// Whole tells that no way to cut the sheet is worth more than what is found.
	Whole bool
	// Work is how many sums of two parts a pricing takes.
	Work int
}

// size is a kind as it lies, and where it stands in the grid: the least part that takes it.
type size struct {
	kind, x, y int
	turned     bool
}

// level is what the parts of a grid are worth, by columns: cut in so many stages, the last
// along x or not.
type level struct {
	worth  []int64
	alongX bool
}

// NewGrid makes a grid of a sheet that is priced with some work, or less. Stages are how often
// cuts may change their direction; 0 is any number.
func NewGrid(kinds []Kind, w, h Length, stages, work int) *Grid {
	g := &Grid{kinds: kinds, stages: stages}
	var xs, ys []span
	for _, k := range kinds {
		if k.W <= w && k.H <= h {
			xs, ys = append(xs, span{k.W, k.Most}), append(ys, span{k.H, k.Most})
		}
		if k.Turns && k.H <= w && k.W <= h {
			xs, ys = append(xs, span{k.H, k.Most}), append(ys, span{k.W, k.Most})
		}
	}
	g.x, g.y = newAxis(xs, w, 2*most, stages == 0), newAxis(ys, h, 2*most, stages == 0)
	g.Whole = g.x != nil && g.y != nil
	for n := most; !g.Whole || g.sums() > work; n -= n / 4 {
		if !g.Whole && n < most && g.sums() <= work || n < 8 {
			break
		}
		g.Whole = false
		g.x, g.y = rough(xs, w, n), rough(ys, h, n)
	}
	g.Work = g.sums()
	g.place()
	return g
}

// most is how many positions of an axis there are at most, where not all can be.
const most = 512

// sums is how many sums of two parts a pricing takes.
func (g *Grid) sums() int {
	one := len(g.x.pairs)*len(g.y.at) + len(g.y.pairs)*len(g.x.at)
	return one * max(1, g.stages)
}

// place finds where kinds stand.
func (g *Grid) place() {
	for i, k := range g.kinds {
		g.put(size{kind: i}, k.W, k.H)
		if k.Turns {
			g.put(size{kind: i, turned: true}, k.H, k.W)
		}
	}
}

func (g *Grid) put(s size, w, h Length) {
	s.x, s.y = g.x.ceil(w), g.y.ceil(h)
	if s.x < len(g.x.at) && s.y < len(g.y.at) {
		g.sizes = append(g.sizes, s)
	}
}

// Price works out what all parts are worth if pieces are, and returns the worth of the sheet.
func (g *Grid) Price(worths []int64) int64 {
	g.worths = worths
	n := len(g.x.at) * len(g.y.at)
	if n == 0 {
		return 0
	}
	if g.stages == 0 {
		t := g.table(0, n)
		g.pieces(t)
		g.x.highest(t, len(g.y.at))
		g.highest(t)
		for i := range g.x.at {
			g.joinX(t, i)
			g.joinY(t, i)
		}
		return t[n-1]
	}
	g.pieces(g.table(0, n))
	for s := 1; s <= g.stages; s++ {
		g.stage(s, n)
	}
	return max(g.levels[2*g.stages-1].worth[n-1], g.levels[2*g.stages].worth[n-1])
}

// stage prices what is cut in s stages; levels 2s-1 and 2s are those whose first cuts part what
// lies along x, and along y.
func (g *Grid) stage(s, n int) {
	x, y := g.table(2*s-1, n), g.table(2*s, n)
	g.levels[2*s-1].alongX = true
	copy(x, g.levels[max(0, 2*s-2)].worth)
	copy(y, g.levels[max(0, 2*s-3)].worth)
	g.x.highest(x, len(g.y.at))
	for i := range g.x.at {
		g.joinX(x, i)
	}
	g.highest(y)
	for i := range g.x.at {
		g.joinY(y, i)
	}
}

// table is the worths of a level, at first none.
func (g *Grid) table(i, n int) []int64 {
	if i == len(g.levels) {
		g.levels = append(g.levels, level{worth: make([]int64, n)})
	}
	clear(g.levels[i].worth)
	return g.levels[i].worth
}

// pieces writes the worths of pieces where they stand.
func (g *Grid) pieces(t []int64) {
	for _, s := range g.sizes {
		at := &t[s.x*len(g.y.at)+s.y]
		*at = max(*at, g.worths[s.kind])
	}
}

// highest lets each part be worth what a narrower one is.
func (a *axis) highest(t []int64, rows int) {
	for i := rows; i < len(t); i++ {
		t[i] = max(t[i], t[i-rows])
	}
}

// highest lets each part be worth what a lower one is.
func (g *Grid) highest(t []int64) {
	rows := len(g.y.at)
	for i := range t {
		if i%rows > 0 {
			t[i] = max(t[i], t[i-1])
		}
	}
}

// joinX prices parts of a length that are made of two side by side.
func (g *Grid) joinX(t []int64, i int) {
	rows := len(g.y.at)
	to := t[i*rows : (i+1)*rows]
	for _, p := range g.x.of(i) {
		a, b := t[int(p.a)*rows:][:rows], t[int(p.b)*rows:][:rows]
		for k, v := range a {
			to[k] = max(to[k], v+b[k])
		}
	}
}

// joinY prices parts of a length that are made of one above another.
func (g *Grid) joinY(t []int64, i int) {
	rows := len(g.y.at)
	to := t[i*rows : (i+1)*rows]
	for k := range to {
		v := to[k]
		for _, p := range g.y.of(k) {
			v = max(v, to[p.a]+to[p.b])
		}
		to[k] = v
	}
}
