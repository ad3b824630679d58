package view

import "math"

// grid finds what takes space in a drawing by where it is: each thing is noted in all squares that
// the rectangle round it meets.
type grid[T interface{ extent() extent }] struct {
	side    float64      // of a square
	squares map[cell][]T // lookup only
}

// squareSide is the side of a grid's squares, in text heights.
const squareSide = 6

func newGrid[T interface{ extent() extent }](h Length) grid[T] {
	return grid[T]{float64(squareSide * h), map[cell][]T{}}
}

type cell struct{ x, y int }

// extent is the upright rectangle round a thing.
type extent struct{ loX, loY, hiX, hiY float64 }

func (b box) extent() extent {
	return extent{b.x - b.reachX, b.y - b.reachY, b.x + b.reachX, b.y + b.reachY}
}

func (s seg) extent() extent {
	return extent{min(s.ax, s.bx), min(s.ay, s.by), max(s.ax, s.bx), max(s.ay, s.by)}
}

// cells are the first and the last square that a rectangle meets.
func (g *grid[T]) cells(e extent) (first, last cell) {
	at := func(x, y float64) cell { return cell{int(math.Floor(x / g.side)), int(math.Floor(y / g.side))} }
	return at(e.loX, e.loY), at(e.hiX, e.hiY)
}

func (g *grid[T]) add(all ...T) {
	for _, t := range all {
		first, last := g.cells(t.extent())
		for x := first.x; x <= last.x; x++ {
			for y := first.y; y <= last.y; y++ {
				g.squares[cell{x, y}] = append(g.squares[cell{x, y}], t)
			}
		}
	}
}

// any reports whether something is, of all that may lie within a rectangle.
func (g *grid[T]) any(within extent, is func(T) bool) bool {
	first, last := g.cells(within)
	for x := first.x; x <= last.x; x++ {
		for y := first.y; y <= last.y; y++ {
			for _, t := range g.squares[cell{x, y}] {
				if is(t) {
					return true
				}
			}
		}
	}
	return false
}

// count tells how many are, each in the first square that it shares with the rectangle.
func (g *grid[T]) count(within extent, is func(T) bool) (n int) {
	first, last := g.cells(within)
	for x := first.x; x <= last.x; x++ {
		for y := first.y; y <= last.y; y++ {
			for _, t := range g.squares[cell{x, y}] {
				if !is(t) {
					continue
				}
				if own, _ := g.cells(t.extent()); x == max(first.x, own.x) && y == max(first.y, own.y) {
					n++
				}
			}
		}
	}
	return n
}
