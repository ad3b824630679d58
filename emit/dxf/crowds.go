package dxf

import (
	"iter"
	"math"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// limits are of a tile: one with more things is parted, unless it is as small as
// smallestTile.
type limits struct {
	cells int // that are told apart, leastEach for each thing at least
	held  int // things that may come near others
}

var usual = limits{cells: 1 << 20, held: 1 << 13}

const (
	cellsEach    = 16 // for each thing, where that is less than the limit
	leastEach    = 8
	smallestTile = length.Millimetre
)

// crowds finds what comes near what among many things, in room that does not grow with
// their number: it looks at a tile of the plane at a time, and goes over all things for
// each. It parts the tile into cells. A thing that comes into no cell with another is
// alone; the others of the tile are handed over to be looked at in pairs.
type crowds[T any] struct {
	limits
	count int                     // of things
	all   iter.Seq2[geom.Rect, T] // the same each time; the box holds a thing and a little round it
	trace func(T, *grid) bool     // crowds the cells that a large thing comes into; false where there is none
	alone func(T) error           // looks at a small thing that has none near it
	near  func([]T) error         // looks at the others of a tile; a thing may be of several tiles
}

// in looks at the things of a plane that come into a rectangle.
func (c *crowds[T]) in(area geom.Rect) error {
	if c.count == 0 {
		return nil
	}
	var g grid
	var room []T
	tiles := []geom.Rect{area}
	for len(tiles) > 0 {
		tile := tiles[len(tiles)-1]
		tiles = tiles[:len(tiles)-1]
		g.lay(tile, min(c.cells, cellsEach*c.count))
		held, ok, err := c.tile(&g, room[:0])
		if err == nil && ok {
			err = c.near(held)
		}
		if err != nil {
			return err
		}
		if !ok {
			first, second := halves(tile)
			tiles = append(tiles, second, first)
		}
		room = held
	}
	return nil
}

// tile returns the things of a tile that may come near one another; ok is false where
// there are too many in it.
func (c *crowds[T]) tile(g *grid, held []T) (_ []T, ok bool, err error) {
	marked := 0
	for box, t := range c.all {
		switch {
		case !g.meets(box):
			continue
		case g.small(box):
			g.mark(box)
			marked++
		case c.trace(t, g):
			held = append(held, t)
		}
		if g.divisible() && (marked > c.cells/leastEach || len(held) > c.held) {
			return held, false, nil
		}
	}
	for box, t := range c.all {
		switch {
		case !g.meets(box) || !g.small(box):
			continue
		case !g.crowded(box):
			if err := c.alone(t); err != nil {
				return held, false, err
			}
		default:
			held = append(held, t)
		}
		if g.divisible() && len(held) > c.held {
			return held, false, nil
		}
	}
	return held, true, nil
}

// halves parts a tile across its longer side.
func halves(r geom.Rect) (first, second geom.Rect) {
	first, second = r, r
	if r.X.Size() > r.Y.Size() {
		first.X.Hi, second.X.Lo = r.X.Mid(), r.X.Mid()
	} else {
		first.Y.Hi, second.Y.Lo = r.Y.Mid(), r.Y.Mid()
	}
	return first, second
}

// grid parts a tile into square cells, and knows of each whether no, one or more things
// come into it.
type grid struct {
	tile          geom.Rect
	columns, rows int
	scale         float64  // cells to a nanometre
	once, more    []uint64 // a bit for each cell
}

// lay lays the grid over a tile, nothing in it, with about so many cells.
func (g *grid) lay(tile geom.Rect, cells int) {
	width, height := float64(tile.X.Size()), float64(tile.Y.Size())
	side := max(1, math.Sqrt(width*height/float64(cells)), max(width, height)/float64(cells))
	g.tile, g.scale = tile, 1/side
	g.columns, g.rows = 1+int(width*g.scale), 1+int(height*g.scale)
	words := (g.columns*g.rows + 63) / 64
	if words > cap(g.once) {
		g.once, g.more = make([]uint64, words), make([]uint64, words)
	}
	g.once, g.more = g.once[:words], g.more[:words]
	clear(g.once)
	clear(g.more)
}

func (g *grid) divisible() bool {
	return max(g.tile.X.Size(), g.tile.Y.Size()) > smallestTile
}

// meets reports whether a box has a point in common with the tile.
func (g *grid) meets(box geom.Rect) bool {
	return box.X.Lo <= g.tile.X.Hi && g.tile.X.Lo <= box.X.Hi && box.Y.Lo <= g.tile.Y.Hi && g.tile.Y.Lo <= box.Y.Hi
}

// small reports whether a box comes into a few cells only.
func (g *grid) small(box geom.Rect) bool {
	const few = 8
	return float64(max(box.X.Size(), box.Y.Size()))*g.scale < few
}

// cells are the columns and rows that a box which meets the tile comes into.
func (g *grid) cells(box geom.Rect) (left, right, low, high int) {
	column := func(x geom.Length) int { return max(0, min(g.columns-1, int(float64(x-g.tile.X.Lo)*g.scale))) }
	row := func(y geom.Length) int { return max(0, min(g.rows-1, int(float64(y-g.tile.Y.Lo)*g.scale))) }
	return column(box.X.Lo), column(box.X.Hi), row(box.Y.Lo), row(box.Y.Hi)
}

// mark notes that a thing comes into the cells of its box.
func (g *grid) mark(box geom.Rect) {
	left, right, low, high := g.cells(box)
	for y := low; y <= high; y++ {
		for i := y*g.columns + left; i <= y*g.columns+right; i++ {
			bit := uint64(1) << (i % 64)
			g.more[i/64] |= g.once[i/64] & bit
			g.once[i/64] |= bit
		}
	}
}

// crowd notes that more than one thing comes into the cells of a box.
func (g *grid) crowd(box geom.Rect) {
	left, right, low, high := g.cells(box)
	for y := low; y <= high; y++ {
		for i := y*g.columns + left; i <= y*g.columns+right; i++ {
			g.more[i/64] |= 1 << (i % 64)
		}
	}
}

// crowded reports whether more than one thing comes into the cells of a box.
func (g *grid) crowded(box geom.Rect) bool {
	left, right, low, high := g.cells(box)
	for y := low; y <= high; y++ {
		for i := y*g.columns + left; i <= y*g.columns+right; i++ {
			if g.more[i/64]&(1<<(i%64)) != 0 {
				return true
			}
		}
	}
	return false
}

// trace crowds the cells that come near a polygon's edges; it reports whether there
// are any.
func (g *grid) trace(polygon []geom.Point) bool {
	met := false
	for i, a := range polygon {
		met = g.edge(a, polygon[(i+1)%len(polygon)]) || met
	}
	return met
}

// edge parts a slanted edge until its pieces are as small as cells.
func (g *grid) edge(a, b geom.Point) bool {
	box := geom.Rect{X: geom.Between(a.X, b.X), Y: geom.Between(a.Y, b.Y)}.Grow(shortest)
	if !g.meets(box) {
		return false
	}
	if left, right, low, high := g.cells(box); min(right-left, high-low) <= 1 {
		g.crowd(box)
		return true
	}
	m := middle(a, b)
	first := g.edge(a, m)
	return g.edge(m, b) || first
}
