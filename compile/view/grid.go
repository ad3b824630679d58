package view

import (
	"math"

	"barwright/compile/geom"
)

// grid finds what takes space in a drawing by where it is: each thing is noted in all squares that it
// may meet. Squares at the border stand for all that lies beyond them too.
type grid[T interface{ reach() reach }] struct {
	x, y, side float64 // the lower left corner, and the side of a square
	each       float64 // how many squares one of length has: 1/side
	wide, high int     // in squares
	last       []int32 // the note of each square that was made last, counted from 1; none before the first thing
	notes      []note
	things     []noted[T]
	questions  int32
}

// noted is a thing of a grid.
type noted[T any] struct {
	thing  T
	around extent
	asked  int32 // the question at which it came up last
}

// note tells that a thing is in a square, and which note of that square was made before.
type note struct{ thing, before int32 }

// squareSide is the side of a grid's squares, in text heights, where that does not make more of them in
// a row than mostSquares. They go on beyond the drawing's core as far as most callouts stand from it.
const (
	squareSide  = 4
	mostSquares = 200
)

func newGrid[T interface{ reach() reach }](core geom.Rect, h Length) grid[T] {
	core = core.Grow(distant * h)
	side := max(squareSide*h, max(core.X.Size(), core.Y.Size())/mostSquares)
	return grid[T]{
		x: float64(core.X.Lo), y: float64(core.Y.Lo), side: float64(side), each: 1 / float64(side),
		wide: int(core.X.Size()/side) + 1, high: int(core.Y.Size()/side) + 1,
	}
}

// extent is the upright rectangle round a thing.
type extent struct{ loX, loY, hiX, hiY float64 }

func (e *extent) meets(o *extent) bool {
	return e.loX <= o.hiX && o.loX <= e.hiX && e.loY <= o.hiY && o.loY <= e.hiY
}

// reach is what a thing may meet: all of an upright rectangle, or of that only what lies along a line
// from one corner to another.
type reach struct {
	extent
	line   seg
	narrow bool
}

func (b box) reach() reach {
	return reach{extent: extent{b.x - b.reachX, b.y - b.reachY, b.x + b.reachX, b.y + b.reachY}}
}

func (s seg) reach() reach {
	return reach{extent{min(s.ax, s.bx), min(s.ay, s.by), max(s.ax, s.bx), max(s.ay, s.by)}, s, true}
}

// square is the number of the one at an offset from the first, in a row of so many.
func (g *grid[T]) square(off float64, of int) int { return min(max(int(off*g.each), 0), of-1) }

// rows are the first and the last that a rectangle meets.
func (g *grid[T]) rows(e *extent) (first, last int) {
	return g.square(e.loY-g.y, g.high), g.square(e.hiY-g.y, g.high)
}

// row is which squares of a row it may meet.
func (g *grid[T]) row(r *reach, row int) (first, last int) {
	lo, hi := r.loX, r.hiX
	if l := r.line; r.narrow && l.ax != l.bx && l.ay != l.by {
		below, above := math.Inf(-1), math.Inf(1)
		if row > 0 {
			below = g.y + float64(g.side*float64(row)) - touch
		}
		if row < g.high-1 {
			above = g.y + float64(g.side*float64(row+1)) + touch
		}
		at := func(y float64) float64 { return l.ax + float64((l.bx-l.ax)*((y-l.ay)/(l.by-l.ay))) }
		lo, hi = at(max(below, r.loY)), at(min(above, r.hiY))
		lo, hi = min(lo, hi)-touch, max(lo, hi)+touch
	}
	return g.square(lo-g.x, g.wide), g.square(hi-g.x, g.wide)
}

func (g *grid[T]) add(all ...T) {
	if g.last == nil && len(all) > 0 {
		g.last = make([]int32, g.wide*g.high)
	}
	for _, t := range all {
		r := t.reach()
		for y, last := g.rows(&r.extent); y <= last; y++ {
			for x, last := g.row(&r, y); x <= last; x++ {
				at := &g.last[y*g.wide+x]
				g.notes = append(g.notes, note{int32(len(g.things)), *at})
				*at = int32(len(g.notes))
			}
		}
		g.things = append(g.things, noted[T]{thing: t, around: r.extent})
	}
}

// any reports whether something is, of all that may lie within reach.
func (g *grid[T]) any(r reach, is func(*T) bool) bool { return g.first(r, is) != nil }

// first finds something that is, or nil. Each thing is asked once, along a line those near its end first.
func (g *grid[T]) first(r reach, is func(*T) bool) *T {
	if len(g.things) == 0 {
		return nil
	}
	g.questions++
	low, high := g.rows(&r.extent)
	for k := range high - low + 1 {
		y := low + k
		if r.line.by > r.line.ay {
			y = high - k
		}
		for x, last := g.row(&r, y); x <= last; x++ {
			for n := g.last[y*g.wide+x]; n > 0; n = g.notes[n-1].before {
				t := &g.things[g.notes[n-1].thing]
				if t.asked == g.questions {
					continue
				}
				t.asked = g.questions
				if t.around.meets(&r.extent) && is(&t.thing) {
					return &t.thing
				}
			}
		}
	}
	return nil
}

// count tells how many are, as far as so many.
func (g *grid[T]) count(r reach, most int, is func(*T) bool) (n int) {
	g.first(r, func(t *T) bool {
		if is(t) {
			n++
		}
		return n >= most
	})
	return n
}
