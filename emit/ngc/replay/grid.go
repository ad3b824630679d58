package replay

import "math"

// grid samples how deep the wood of the recess is cut, at points of a lattice. It
// tells how deep a bite is, and nothing else.
type grid struct {
	x0, y0, dx, dy float64
	nx, ny         int
	height         []float64 // 0 is the top of the wood
	atWall         []bool    // where the finishing pass may take the full depth
}

const (
	spacing   = 0.25    // mm, between samples
	maxPoints = 200_000 // a larger recess is sampled less closely
)

// newGrid samples the recess; samples within strip of its border are the
// finishing pass's.
func newGrid(w *wood, strip float64) *grid {
	low, high := spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}
	for _, s := range w.rooms[0] {
		low = spot{min(low.x, s.a.x), min(low.y, s.a.y)}
		high = spot{max(high.x, s.a.x), max(high.y, s.a.y)}
	}
	step := max(spacing, math.Sqrt((high.x-low.x)*(high.y-low.y)/maxPoints))
	g := &grid{x0: low.x, y0: low.y}
	g.nx, g.dx = samples(high.x-low.x, step)
	g.ny, g.dy = samples(high.y-low.y, step)
	g.height, g.atWall = make([]float64, g.nx*g.ny), make([]bool, g.nx*g.ny)
	for _, side := range w.rooms[0] {
		g.near(swath{side, strip}, func(from, to int) {
			for i := from; i < to; i++ {
				g.atWall[i] = true
			}
		})
	}
	return g
}

// columns returns the columns between two x: the first, and the one after the
// last. There are none where that is not the greater one.
func (g *grid) columns(lo, hi float64) (from, to int) {
	return max(0, int(math.Ceil((lo-g.x0)/g.dx))), min(g.nx, int(math.Floor((hi-g.x0)/g.dx))+1)
}

// lower cuts a range of samples down to z. It returns the deepest bite, and the
// deepest away from the walls.
func (g *grid) lower(from, to int, z float64) (bite, away float64) {
	for i, h := range g.height[from:to] {
		if h <= z {
			continue
		}
		g.height[from+i] = z
		bite = max(bite, h-z)
		if !g.atWall[from+i] {
			away = max(away, h-z)
		}
	}
	return bite, away
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

// near calls f for the samples in a swath, a range of indices for each row.
func (g *grid) near(s swath, f func(from, to int)) {
	first := max(0, int(math.Ceil((s.low()-g.y0)/g.dy)))
	last := min(g.ny-1, int(math.Floor((max(s.a.y, s.b.y)+s.r-g.y0)/g.dy)))
	for row := first; row <= last; row++ {
		in := s.row(g.y0 + float64(float64(row)*g.dy))
		if from, to := g.columns(in.lo, in.hi); from < to {
			f(row*g.nx+from, row*g.nx+to)
		}
	}
}
