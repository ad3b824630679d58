package replay

import (
	"math"
	"slices"
)

// grid samples the floor of the recess: heights at points of a lattice, the
// outermost of them just inside the walls.
type grid struct {
	x0, y0, dx, dy float64
	nx, ny         int
	height         []float64 // 0 is the top of the wood
	inside         []bool    // of the recess, and not within the tolerance of a wall
	atWall         []bool    // where the finishing pass may take the full depth
}

const (
	spacing   = 0.25    // mm, between samples
	maxPoints = 200_000 // a larger recess is sampled less closely
)

// newGrid samples the recess; samples within off of a wall are left out, and
// those within strip of a wall are the finishing pass's.
func newGrid(w *wood, off, strip float64) *grid {
	low, high := spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}
	for _, s := range w.recess {
		low = spot{min(low.x, s.a.x), min(low.y, s.a.y)}
		high = spot{max(high.x, s.a.x), max(high.y, s.a.y)}
	}
	step := max(spacing, math.Sqrt((high.x-low.x)*(high.y-low.y)/maxPoints))
	g := &grid{x0: low.x + off, y0: low.y + off}
	g.nx, g.dx = samples(high.x-low.x-2*off, step)
	g.ny, g.dy = samples(high.y-low.y-2*off, step)
	n := g.nx * g.ny
	g.height, g.inside, g.atWall = make([]float64, n), make([]bool, n), make([]bool, n)
	for row := range g.ny {
		g.fill(w.recess, row)
	}
	for _, wall := range w.walls {
		g.near(wall, off-1e-6, func(from, to int) { clear(g.inside[from:to]) })
		g.near(wall, strip, func(from, to int) {
			for i := from; i < to; i++ {
				g.atWall[i] = true
			}
		})
	}
	return g
}

// fill marks the samples of a row that lie inside a closed border: between its
// first and second crossing, its third and fourth, and so on.
func (g *grid) fill(border []stretch, row int) {
	y := g.y0 + float64(row)*g.dy
	var crossings []float64
	for _, s := range border {
		if (s.a.y <= y) != (s.b.y <= y) {
			crossings = append(crossings, s.a.x+(y-s.a.y)/(s.b.y-s.a.y)*(s.b.x-s.a.x))
		}
	}
	slices.Sort(crossings)
	for k := 0; k+1 < len(crossings); k += 2 {
		from, to := g.columns(crossings[k], crossings[k+1])
		for i := row*g.nx + from; i < row*g.nx+to; i++ {
			g.inside[i] = true
		}
	}
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

func (g *grid) at(i int) spot {
	return spot{g.x0 + float64(i%g.nx)*g.dx, g.y0 + float64(i/g.nx)*g.dy}
}

// near calls f for the samples within r of a stretch, a range of indices for
// each row. They lie between two ends: of the circles round the stretch's ends, or of the lines
// beside it.
func (g *grid) near(s stretch, r float64, f func(from, to int)) {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	l := math.Hypot(dx, dy)
	first := max(0, int(math.Ceil((min(s.a.y, s.b.y)-r-g.y0)/g.dy)))
	last := min(g.ny-1, int(math.Floor((max(s.a.y, s.b.y)+r-g.y0)/g.dy)))
	for row := first; row <= last; row++ {
		y := g.y0 + float64(row)*g.dy
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, end := range [2]spot{s.a, s.b} {
			if h := r*r - (y-end.y)*(y-end.y); h >= 0 {
				lo, hi = min(lo, end.x-math.Sqrt(h)), max(hi, end.x+math.Sqrt(h))
			}
		}
		if math.Abs(dy) > 1e-9 {
			for _, beside := range [2]float64{r, -r} {
				if t := (y - s.a.y - beside*dx/l) / dy; t >= 0 && t <= 1 {
					x := s.a.x - beside*dy/l + t*dx
					lo, hi = min(lo, x), max(hi, x)
				}
			}
		}
		from, to := g.columns(lo, hi)
		if from < to {
			f(row*g.nx+from, row*g.nx+to)
		}
	}
}
