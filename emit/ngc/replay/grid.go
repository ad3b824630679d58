package replay

import (
	"iter"
	"math"
)

// grid samples how deep the wood of a work is cut, at points of a lattice. It
// tells how deep a bite is, and nothing else.
type grid struct {
	box            box
	x0, y0, dx, dy float64
	nx, ny         int
	height         []float64 // 0 is the top of the wood
	atWall         []bool    // where the finishing pass may take the full depth
}

const (
	spacing   = 0.25    // mm, between samples
	maxPoints = 200_000 // a larger work is sampled less closely, but thrice across the bit
)

// newGrid samples a work; samples near its border, or another work's, are the finishing
// pass's. Roughing leaves the allowance, half as much again where it is a line through the
// middle, and √2 of that in a square corner.
func newGrid(t *task, w *work) *grid {
	bit := t.tool.Diameter.MM()
	b := w.rings[0].box
	if w.outline {
		b = t.reach(w)
	}
	size := spot{b.high.x - b.low.x, b.high.y - b.low.y}
	step := max(spacing, min(math.Sqrt(size.x*size.y/maxPoints), bit/3))
	g := &grid{box: b, x0: b.low.x, y0: b.low.y}
	g.nx, g.dx = samples(size.x, step)
	g.ny, g.dy = samples(size.y, step)
	g.height, g.atWall = make([]float64, g.nx*g.ny), make([]bool, g.nx*g.ny)
	var wood []interval
	for row := range g.ny {
		wood = t.wood.across(g.y(row), wood[:0])
		g.clear(row, wood)
	}
	var whole [4]run
	strip := 1.5*math.Sqrt2*t.tool.Finish.MM() + leftBeside
	for _, other := range t.works {
		if b.grown(strip).apart(other.rings[0].box) {
			continue
		}
		for _, side := range other.rings[0].edges {
			near := straight(side.stretch, strip)
			for row := range g.rows(&near) {
				for _, r := range g.row(&near, row, whole[:0]) {
					for i := r.from; i < r.to; i++ {
						g.atWall[i] = true
					}
				}
			}
		}
	}
	return g
}

// clear takes the samples of a row away that are not in the wood.
func (g *grid) clear(row int, wood []interval) {
	at := row * g.nx
	for _, in := range append(wood, interval{math.Inf(1), math.Inf(1)}) {
		from, to := g.nx, g.nx
		if in.lo < math.Inf(1) {
			from, to = g.columns(in.lo, in.hi)
		}
		for end := row*g.nx + from; at < end; at++ {
			g.height[at] = math.Inf(-1)
		}
		at = max(at, row*g.nx+to)
	}
}

// y returns the Y of a row.
func (g *grid) y(row int) float64 { return g.y0 + float64(float64(row)*g.dy) }

// columns returns the columns between two x: the first, and the one after the
// last. There are none where that is not the greater one.
func (g *grid) columns(lo, hi float64) (from, to int) {
	return max(0, int(math.Ceil((lo-g.x0)/g.dx))), min(g.nx, int(math.Floor((hi-g.x0)/g.dx))+1)
}

// cut lowers the samples in a swath to z. It returns the deepest bite that all of the bit
// but a rim takes, and the deepest away from the walls.
func (g *grid) cut(s *swath, rim, z float64) (bite, away float64) {
	inner := s.narrower(rim)
	var whole, within [4]run
	for row := range g.rows(s) {
		swept := g.row(s, row, whole[:0])
		if !g.higher(swept, z) {
			continue
		}
		for _, r := range g.row(&inner, row, within[:0]) {
			for i := r.from; i < r.to; i++ {
				d := g.height[i] - z
				if d > bite {
					bite = d
				}
				if d > away && !g.atWall[i] {
					away = d
				}
			}
		}
		for _, r := range swept {
			for i := r.from; i < r.to; i++ {
				if g.height[i] > z {
					g.height[i] = z
				}
			}
		}
	}
	return bite, away
}

// higher reports whether wood stands above z at a sample.
func (g *grid) higher(runs []run, z float64) bool {
	for _, r := range runs {
		for _, h := range g.height[r.from:r.to] {
			if h > z {
				return true
			}
		}
	}
	return false
}

// samples returns how many samples cover a length, ends included, and how far
// they are apart; none where there is no length.
func samples(length, step float64) (n int, apart float64) {
	if length <= 0 {
		return 0, 1
	}
	gaps := max(1, math.Ceil(length/step))
	return int(gaps) + 1, length / gaps
}

// run is a range of samples of one row, by their indices.
type run struct{ from, to int }

// rows gives the rows that a swath may meet.
func (g *grid) rows(s *swath) iter.Seq[int] {
	b := s.box()
	first := max(0, int(math.Ceil((b.low.y-g.y0)/g.dy)))
	last := min(g.ny-1, int(math.Floor((b.high.y-g.y0)/g.dy)))
	return func(yield func(int) bool) {
		for row := first; row <= last && yield(row); row++ {
		}
	}
}

// row appends the samples of a row that lie in a swath.
func (g *grid) row(s *swath, row int, in []run) []run {
	var parts [4]interval
	for _, part := range s.row(g.y(row), parts[:0]) {
		if from, to := g.columns(part.lo, part.hi); from < to {
			in = append(in, run{row*g.nx + from, row*g.nx + to})
		}
	}
	return in
}
