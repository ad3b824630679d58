package nesting

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
)

// greedy lays out a job piece by piece, largest first: on what is left over, then on the size
// that costs least. It is the best of a few orders.
func (j *Job) greedy() Layout {
	misfits := j.Misfits()
	var best Layout
	for at, order := range [...]func(a, b Piece) int{
		func(a, b Piece) int { return cmp.Or(cmp.Compare(b.Y, a.Y), cmp.Compare(b.X, a.X)) },
		func(a, b Piece) int { return cmp.Or(cmp.Compare(b.X, a.X), cmp.Compare(b.Y, a.Y)) },
		func(a, b Piece) int { return cmp.Compare(b.area(), a.area()) },
	} {
		var row []int
		for i := range j.Pieces {
			if !slices.Contains(misfits, i) {
				row = append(row, i)
			}
		}
		slices.SortStableFunc(row, func(a, b int) int { return order(j.Pieces[a], j.Pieces[b]) })
		for _, alongX := range []bool{true, false} {
			if l := j.fill(row, alongX); at == 0 && alongX || l.Price < best.Price {
				best = l
			}
		}
	}
	var area int64
	for i := range j.Pieces {
		if !slices.Contains(misfits, i) {
			area += j.Pieces[i].area()
		}
	}
	if len(j.Sheets) == 1 && len(best.Used) > 0 {
		one := j.Sheets[0].area()
		best.Fewest = int((area + one - 1) / one)
		best.AtLeast = int64(best.Fewest) * j.price(0)
	}
	for i := range best.Used {
		best.Used[i].Offcut = best.Used[i].largest
	}
	return best
}

func (s Size) area() int64 { return int64(s.X/1000) * int64(s.Y/1000) }

func (j *Job) price(sheet int) int64 {
	if slices.ContainsFunc(j.Sheets, func(s Sheet) bool { return s.Price > 0 }) {
		return j.Sheets[sheet].Price
	}
	return j.Sheets[sheet].area()
}

func (j *Job) fill(row []int, alongX bool) (l Layout) {
	var free [][]geom.Rect
	left := make([]int, len(j.Sheets))
	for i, s := range j.Sheets {
		left[i] = cmp.Or(s.Most, 1<<30)
	}
	for _, p := range row {
		on, at, turned := j.spot(free, p)
		for on < 0 {
			next := -1
			for i, s := range j.Sheets {
				if left[i] > 0 && j.Pieces[p].fits(s.Size) && (next < 0 || j.price(i) < j.price(next)) {
					next = i
				}
			}
			if next < 0 {
				return Layout{Price: 1 << 62}
			}
			left[next]--
			l.Price += j.price(next)
			l.Used = append(l.Used, Used{Sheet: next})
			free = append(free, []geom.Rect{geom.R(0, 0, j.Sheets[next].X, j.Sheets[next].Y)})
			on, at, turned = j.spot(free, p)
		}
		x, y := j.Pieces[p].X, j.Pieces[p].Y
		if turned {
			x, y = y, x
		}
		u, f := &l.Used[on], free[on][at]
		free[on] = slices.Delete(free[on], at, at+1)
		u.Placed = append(u.Placed, Placed{p, geom.Point{X: f.X.Lo, Y: f.Y.Lo}, turned})
		strip := f
		right := geom.Rect{X: geom.Span{Lo: f.X.Lo + x + j.Kerf, Hi: f.X.Hi}, Y: f.Y}
		above := geom.Rect{X: f.X, Y: geom.Span{Lo: f.Y.Lo + y + j.Kerf, Hi: f.Y.Hi}}
		if alongX {
			right.Y.Hi, strip.Y.Hi = f.Y.Lo+y, f.Y.Lo+y
			u.cut(f, geom.U, strip.Y.Hi, !j.Free && f.Y.Hi > strip.Y.Hi)
			u.cut(strip, geom.V, f.X.Lo+x, !j.Free && f.X.Hi > f.X.Lo+x)
		} else {
			above.X.Hi, strip.X.Hi = f.X.Lo+x, f.X.Lo+x
			u.cut(f, geom.V, strip.X.Hi, !j.Free && f.X.Hi > strip.X.Hi)
			u.cut(strip, geom.U, f.Y.Lo+y, !j.Free && f.Y.Hi > f.Y.Lo+y)
		}
		for _, r := range []geom.Rect{right, above} {
			if r.X.Size() > 0 && r.Y.Size() > 0 {
				free[on] = append(free[on], r)
			}
		}
	}
	for i := range l.Used {
		for _, r := range free[i] {
			o := l.Used[i].largest
			if (Size{r.X.Size(), r.Y.Size()}).area() > (Size{o.X.Size(), o.Y.Size()}).area() {
				l.Used[i].largest = r
			}
		}
	}
	return l
}

func (u *Used) cut(of geom.Rect, along geom.Axis, at Length, is bool) {
	if is {
		u.Cuts = append(u.Cuts, Cut{of, along, at})
	}
}

func (j *Job) spot(free [][]geom.Rect, p int) (on, at int, turned bool) {
	on = -1
	var least int64
	for i := range free {
		for k, f := range free[i] {
			room := Size{f.X.Size(), f.Y.Size()}
			s := j.Pieces[p].Size
			for _, t := range []bool{false, true} {
				if t && !j.Pieces[p].Turns {
					break
				}
				if t {
					s = Size{s.Y, s.X}
				}
				if s.X <= room.X && s.Y <= room.Y && (on < 0 || room.area()-s.area() < least) {
					on, at, turned, least = i, k, t, room.area()-s.area()
				}
			}
		}
	}
	return on, at, turned
}
