package layout

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// board is one sheet that is being filled. Each piece goes into the lower left
// corner of a free rectangle, and the rest of that is cut in two from edge to
// edge: what is placed can always be cut by a saw that cannot stop in a board.
type board struct {
	free   []geom.Rect
	placed []lying
}

type lying struct {
	part *model.Part
	way  way
	at   geom.Rect
}

// method is one way to fill boards. The fields choose from the tables below.
type method struct{ order, fit, split int }

// orders tell which of two pieces is placed first. Largest first is what all
// have in common; they differ in what is large.
var orders = [...]func(a, b way) int{
	func(a, b way) int { return cmp.Or(cmp.Compare(b.y, a.y), cmp.Compare(b.x, a.x)) },
	func(a, b way) int { return cmp.Or(cmp.Compare(b.x, a.x), cmp.Compare(b.y, a.y)) },
	func(a, b way) int {
		return cmp.Or(cmp.Compare(max(b.x, b.y), max(a.x, a.y)), cmp.Compare(min(b.x, b.y), min(a.x, a.y)))
	},
	func(a, b way) int { return cmp.Compare(b.area(), a.area()) },
}

// fits tell how much a piece leaves of a free rectangle: less is better.
var fits = [...]func(free, w size) int64{
	func(free, w size) int64 { return int64(min(free.x-w.x, free.y-w.y)) },
	func(free, w size) int64 { return free.area() - w.area() },
	func(free, w size) int64 { return int64(free.y - w.y) },
	func(free, w size) int64 { return int64(free.x - w.x) },
}

// splits tell whether the first cut beside a piece runs along x, so that what
// is left above is as long as the free rectangle. right and above are what is
// left of it.
var splits = [...]func(right, above Length) bool{
	func(right, above Length) bool { return true },
	func(right, above Length) bool { return false },
	func(right, above Length) bool { return right <= above },
	func(right, above Length) bool { return right > above },
}

// methods lists all of them.
func methods() (all []method) {
	for o := range orders {
		for f := range fits {
			for s := range splits {
				all = append(all, method{o, f, s})
			}
		}
	}
	return all
}

// pack places the pieces one after the other, each where it fits best. looks counts
// the boards' free rectangles that it went through.
func (m method) pack(pieces []piece, room size, kerf Length) (boards []board, looks int) {
	row := slices.Clone(pieces)
	slices.SortStableFunc(row, func(a, b piece) int { return orders[m.order](a.ways[0], b.ways[0]) })
	rects := 0
	for _, p := range row {
		at, free, w := m.best(boards, p)
		if at < 0 {
			boards = append(boards, board{free: []geom.Rect{geom.R(0, 0, room.x, room.y)}})
			at, free, w = m.best(boards, p)
			rects++
		}
		rects -= len(boards[at].free)
		boards[at].place(lying{part: p.part, way: w}, free, kerf, splits[m.split])
		rects += len(boards[at].free)
		looks += rects
	}
	return boards, looks
}

// best returns the board and its free rectangle that a piece fits best, and
// how it lies there; of equal ones the first. The board is -1 where none has
// room.
func (m method) best(boards []board, p piece) (at, free int, lies way) {
	at = -1
	var least int64
	for i, b := range boards {
		for j, f := range b.free {
			room := size{f.X.Size(), f.Y.Size()}
			for _, w := range p.ways {
				if !w.fitsIn(room) {
					continue
				}
				if left := fits[m.fit](room, w.size); at < 0 || left < least {
					at, free, lies, least = i, j, w, left
				}
			}
		}
	}
	return at, free, lies
}

func (b *board) place(p lying, free int, kerf Length, alongX func(right, above Length) bool) {
	f := b.free[free]
	p.at = geom.R(f.X.Lo, f.Y.Lo, f.X.Lo+p.way.x, f.Y.Lo+p.way.y)
	b.placed = append(b.placed, p)
	right := geom.Rect{X: geom.Span{Lo: p.at.X.Hi + kerf, Hi: f.X.Hi}, Y: f.Y}
	above := geom.Rect{X: f.X, Y: geom.Span{Lo: p.at.Y.Hi + kerf, Hi: f.Y.Hi}}
	if alongX(right.X.Size(), above.Y.Size()) {
		right.Y = p.at.Y
	} else {
		above.X = p.at.X
	}
	b.free = slices.Delete(b.free, free, free+1)
	for _, r := range []geom.Rect{right, above} {
		if r.X.Size() > 0 && r.Y.Size() > 0 {
			b.free = append(b.free, r)
		}
	}
}

// offcut returns the area of the largest rectangle that is left on any board.
func offcut(boards []board) (area int64) {
	for _, b := range boards {
		for _, f := range b.free {
			area = max(area, size{f.X.Size(), f.Y.Size()}.area())
		}
	}
	return area
}
