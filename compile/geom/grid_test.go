package geom

import "slices"

// byGrid does what Cut does for rectangles, exactly and by no overlay: the oracle of these tests.
func byGrid(blank Rect, cuts []Rect) []Contour {
	if len(cuts) == 0 {
		return []Contour{RectContour(blank)}
	}
	return newGrid(blank, cuts).outlines()
}

// grid is the plane divided along every edge of the input; solid tells which
// cells hold material.
type grid struct {
	xs, ys []Length
	solid  []bool
}

func newGrid(blank Rect, cuts []Rect) *grid {
	g := &grid{xs: []Length{blank.X.Lo, blank.X.Hi}, ys: []Length{blank.Y.Lo, blank.Y.Hi}}
	kept := make([]Rect, 0, len(cuts))
	for _, c := range cuts {
		if !blank.Overlaps(c) {
			continue
		}
		c = blank.Intersect(c)
		kept = append(kept, c)
		g.xs = append(g.xs, c.X.Lo, c.X.Hi)
		g.ys = append(g.ys, c.Y.Lo, c.Y.Hi)
	}
	g.xs, g.ys = distinct(g.xs), distinct(g.ys)
	g.solid = make([]bool, (len(g.xs)-1)*(len(g.ys)-1))
	for j := range len(g.ys) - 1 {
		for i := range len(g.xs) - 1 {
			cell := R(g.xs[i], g.ys[j], g.xs[i+1], g.ys[j+1])
			g.solid[g.index(i, j)] = !slices.ContainsFunc(kept, func(c Rect) bool { return c.Contains(cell) })
		}
	}
	return g
}

func distinct(v []Length) []Length {
	slices.Sort(v)
	return slices.Compact(v)
}

func (g *grid) index(i, j int) int { return j*(len(g.xs)-1) + i }

func (g *grid) isSolid(i, j int) bool {
	return i >= 0 && j >= 0 && i < len(g.xs)-1 && j < len(g.ys)-1 && g.solid[g.index(i, j)]
}

// step is a unit edge of the grid that has material on its left: it starts at
// grid point (i, j) and runs east, north, west or south.
type step struct{ i, j, way int }

var ways = [4]struct{ di, dj int }{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}

// borders reports whether the step runs along material: solid on its left,
// empty on its right.
func (g *grid) borders(s step) bool {
	// Cells left and right of a step, relative to its start.
	left := [4][2]int{{0, 0}, {-1, 0}, {-1, -1}, {0, -1}}[s.way]
	right := [4][2]int{{0, -1}, {0, 0}, {-1, 0}, {-1, -1}}[s.way]
	return g.isSolid(s.i+left[0], s.j+left[1]) && !g.isSolid(s.i+right[0], s.j+right[1])
}

func (g *grid) outlines() []Contour {
	done := map[step]bool{} // lookup only
	var out []Contour
	for j := range g.ys {
		for i := range g.xs {
			first := step{i, j, 0}
			if !done[first] && g.borders(first) {
				out = append(out, g.follow(first, done))
			}
		}
	}
	return out
}

// follow walks round one outline. Where two pieces touch at a corner it turns
// left, so that each piece keeps an outline of its own.
func (g *grid) follow(first step, done map[step]bool) Contour {
	var c Contour
	corner := func(s step) Vertex { return Vertex{Point: Point{g.xs[s.i], g.ys[s.j]}} }
	for s := first; !done[s]; {
		done[s] = true
		next := step{s.i + ways[s.way].di, s.j + ways[s.way].dj, 0}
		for _, turn := range [3]int{1, 0, 3} { // left, straight on, right
			next.way = (s.way + turn) % 4
			if g.borders(next) {
				break
			}
		}
		if next.way != s.way {
			c = append(c, corner(next))
		}
		s = next
	}
	// The corner that the walk began from comes last.
	n := len(c)
	return append(Contour{c[n-1]}, c[:n-1]...)
}
