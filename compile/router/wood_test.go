package router_test

import (
	"math"
	"slices"

	"barwright/compile/model"
)

// wood is the stock as a raster of heights, 0 at the top: what the bit takes off,
// for tests of the path. It shares nothing with the planner but the moves.
type wood struct {
	p      *model.Program
	cell   float64 // mm
	x0, y0 float64
	nx, ny int
	z      []float64
}

// rasterOf covers the recess and what the bit may reach beside it.
func rasterOf(p *model.Program, cell float64) *wood {
	b, margin := p.Shape.Bounds(), p.Tool.Diameter
	b = b.Grow(margin)
	w := &wood{p: p, cell: cell, x0: b.X.Lo.MM(), y0: b.Y.Lo.MM()}
	w.nx, w.ny = int(b.X.Size().MM()/cell)+1, int(b.Y.Size().MM()/cell)+1
	w.z = make([]float64, w.nx*w.ny)
	return w
}

func (w *wood) at(i int) (x, y float64) {
	return w.x0 + float64(i%w.nx)*w.cell, w.y0 + float64(i/w.nx)*w.cell
}

// stock reports whether there is wood at a point.
func (w *wood) stock(x, y float64) bool {
	s := w.p.Stock
	return x > s.X.Lo.MM() && x < s.X.Hi.MM() && y > s.Y.Lo.MM() && y < s.Y.Hi.MM()
}

// bite is what the bit takes as it steps to a point: how deep at most, and how
// much in mm3. What it covered where it came from, not higher up, is gone already.
func (w *wood) bite(from, to [3]float64) (deep, volume float64) {
	x, y, z, r := to[0], to[1], to[2], w.p.Tool.Diameter.MM()/2
	for row := max(0, int(math.Ceil((y-r-w.y0)/w.cell))); row < w.ny && w.y0+float64(row)*w.cell <= y+r; row++ {
		cy := w.y0 + float64(row)*w.cell
		lo, hi := w.columns(x, cy-y, r)
		gone, rest := hi, hi
		if from[2] <= z && from != to {
			gone, rest = w.columns(from[0], cy-from[1], r)
		}
		for col := lo; col < hi; col++ {
			if col == gone && gone < rest {
				col = rest
				if col >= hi {
					break
				}
			}
			i := row*w.nx + col
			if w.z[i] > z && w.stock(w.at(i)) {
				deep = max(deep, w.z[i]-z)
				volume += (w.z[i] - z) * w.cell * w.cell
				w.z[i] = z
			}
		}
	}
	return deep, volume
}

// columns returns the columns under the bit at x in a row that is dy aside: the
// first, and the one after the last.
func (w *wood) columns(x, dy, r float64) (lo, hi int) {
	if math.Abs(dy) > r {
		return 0, 0
	}
	h := math.Sqrt(r*r - dy*dy)
	return max(0, int(math.Ceil((x-h-w.x0)/w.cell))), min(w.nx, int(math.Floor((x+h-w.x0)/w.cell))+1)
}

// atWall reports whether the bit touches a wall of the recess: the allowance there
// is less than a cell. Corners are arcs, or belong to both sides.
func (w *wood) atWall(x, y float64) bool {
	b, r := w.p.Shape.Bounds(), w.p.Tool.Diameter.MM()/2+1e-5
	if !w.stock(x, y) {
		return false
	}
	for e, d := range [4]float64{y - b.Y.Lo.MM(), b.X.Hi.MM() - x, b.Y.Hi.MM() - y, x - b.X.Lo.MM()} {
		if d <= r && !slices.Contains(w.p.Open, model.Edge(e)) {
			return true
		}
	}
	return false
}

// spent is what a path takes, in mm: roughing on the levels, ramps, finishing
// walls and floor, air, all at feed, and the deepest bite.
type spent struct{ rough, ramp, finish, air, all, deepest float64 }

// run cuts the program's moves. Air is every move of the bit sideways that takes no
// wood, at whatever speed, above the top or below it, ramps too; the way to the
// recess and home, which the place of zero decides, does not count. A step that
// takes nothing that the raster has is air, so that skims narrower than a cell are
// air in part. The last pass along a wall is none, though what it takes may be less
// than a cell; nor is the quarter circle that leads on to the wall.
func (w *wood) run() spent {
	var s spent
	for i := 1; i < len(w.p.Moves); i++ {
		from, m := w.p.Moves[i-1], w.p.Moves[i]
		points, l := steps(from, m, w.cell)
		sideways := m.X != from.X || m.Y != from.Y || m.Kind == model.MoveCCW
		if m.Kind == model.MoveRapid {
			if sideways {
				s.air += l
			}
			continue
		}
		s.all += l
		walls, air := i >= w.p.Finishing, 0.0
		for k, at := range points {
			deep, volume := w.bite(points[max(0, k-1)], at)
			if !walls {
				s.deepest = max(s.deepest, deep)
			}
			if k > 0 && volume == 0 && sideways && !(walls && (m.Kind == model.MoveCCW || w.atWall(at[0], at[1]))) {
				air += l / float64(len(points)-1)
			}
		}
		s.air, l = s.air+air, l-air
		switch {
		case walls:
			s.finish += l
		case m.Z != from.Z:
			s.ramp += l
		default:
			s.rough += l
		}
	}
	return s
}

// steps returns points along a move, at most a cell apart, and its length.
func steps(from, m model.Move, cell float64) (points [][3]float64, length float64) {
	x, y, z := from.X.MM(), from.Y.MM(), from.Z.MM()
	dx, dy, dz := m.X.MM()-x, m.Y.MM()-y, m.Z.MM()-z
	flat := math.Hypot(dx, dy)
	var radius, start, sweep float64
	cx, cy := m.CX.MM(), m.CY.MM()
	if m.Kind == model.MoveCCW {
		radius = math.Hypot(x-cx, y-cy)
		start = math.Atan2(y-cy, x-cx)
		if sweep = math.Atan2(m.Y.MM()-cy, m.X.MM()-cx) - start; sweep <= 1e-9 {
			sweep += 2 * math.Pi
		}
		flat = radius * sweep
	}
	n := max(1, math.Ceil(flat/cell))
	for k := 0.0; k <= n; k++ {
		px, py := x+dx*k/n, y+dy*k/n
		if radius > 0 {
			px, py = cx+radius*math.Cos(start+sweep*k/n), cy+radius*math.Sin(start+sweep*k/n)
		}
		points = append(points, [3]float64{px, py, z + dz*k/n})
	}
	return points, math.Hypot(flat, dz)
}
