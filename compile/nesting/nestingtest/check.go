// Package nestingtest checks layouts of sheets. It looks at rectangles only and knows nothing of
// how they were found.
package nestingtest

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/nesting"
)

// Check tells what is wrong with a layout: each piece is cut once or out, inside its sheet, as
// it may lie, a kerf from the next; a saw can part them edge to edge, in so many stages; sheets
// and prices add up, and no bound is above them; cuts and offcuts are clean.
func Check(j *nesting.Job, l nesting.Layout) error {
	seen := make([]int, len(j.Pieces))
	bought := make([]int, len(j.Sheets))
	for _, p := range l.Out {
		seen[p]++
	}
	for i, u := range l.Used {
		bought[u.Sheet]++
		for _, p := range u.Placed {
			seen[p.Piece]++
		}
		if err := sheet(j, u); err != nil {
			return fmt.Errorf("sheet %d: %w", i, err)
		}
	}
	for i, n := range seen {
		if n != 1 {
			return fmt.Errorf("piece %d is %d times there", i, n)
		}
	}
	for _, i := range j.Misfits() {
		if !slices.Contains(l.Out, i) {
			return fmt.Errorf("misfit %d is cut", i)
		}
	}
	return prices(j, l, bought)
}

func prices(j *nesting.Job, l nesting.Layout, bought []int) error {
	var price int64
	costing := 0
	priced := slices.ContainsFunc(j.Sheets, func(s nesting.Sheet) bool { return s.Price > 0 })
	for k, n := range bought {
		s := j.Sheets[k]
		if s.Most > 0 && n > s.Most {
			return fmt.Errorf("%d of %d sheets %d", n, s.Most, k)
		}
		if !priced {
			s.Price = int64(s.X.MM() * s.Y.MM() * 1e6)
		}
		price += int64(n) * s.Price
		if !priced || s.Price > 0 {
			costing += n
		}
	}
	if priced && price != l.Price {
		return fmt.Errorf("price %d, sheets %d", l.Price, price)
	}
	if d := float64(price - l.Price); d*d > float64(len(l.Used)*len(l.Used))*4 {
		return fmt.Errorf("area %d, sheets %d", l.Price, price)
	}
	if len(l.Out) == len(j.Misfits()) && (l.AtLeast > l.Price || l.Fewest > costing) {
		return fmt.Errorf("price %d of at least %d, %d sheets of %d", l.Price, l.AtLeast, costing, l.Fewest)
	}
	return nil
}

func sheet(j *nesting.Job, u nesting.Used) error {
	s := j.Sheets[u.Sheet]
	inside := geom.R(0, 0, s.X, s.Y)
	if len(u.Placed) == 0 {
		return fmt.Errorf("bought for nothing")
	}
	var boxes []geom.Rect
	for _, p := range u.Placed {
		piece := j.Pieces[p.Piece]
		if p.Turned {
			if !piece.Turns {
				return fmt.Errorf("piece %d is turned", p.Piece)
			}
			piece.X, piece.Y = piece.Y, piece.X
		}
		b := geom.R(p.At.X, p.At.Y, p.At.X+piece.X, p.At.Y+piece.Y)
		if !inside.Contains(b) {
			return fmt.Errorf("piece %d lies outside: %v", p.Piece, b)
		}
		boxes = append(boxes, b)
	}
	all := boxes
	if u.Offcut != (geom.Rect{}) {
		if !inside.Contains(u.Offcut) {
			return fmt.Errorf("offcut outside: %v", u.Offcut)
		}
		all = append(all, u.Offcut)
	}
	if j.Free {
		return spaced(j, u)
	}
	for i, a := range all {
		for _, b := range all[:i] {
			if near(a, b, j.Kerf) {
				return fmt.Errorf("%v and %v are no kerf apart", a, b)
			}
		}
	}
	if !parts(all, inside, j.Kerf, j.Stages, true, true) {
		return fmt.Errorf("not cut edge to edge: %v", all)
	}
	return cuts(boxes, u, inside, j.Kerf)
}

func near(a, b geom.Rect, kerf geom.Length) bool {
	return apart(a.X, b.X) < kerf && apart(a.Y, b.Y) < kerf
}

func apart(a, b geom.Span) geom.Length { return max(a.Lo-b.Hi, b.Lo-a.Hi) }

// parts reports whether cuts from edge to edge can part boxes that lie in a rectangle, in so
// many stages of cuts along x and along y; 0 is any number. Cuts of the next stage may lie in a
// direction that is not excluded.
func parts(boxes []geom.Rect, in geom.Rect, kerf geom.Length, stages int, alongX, alongY bool) bool {
	if len(boxes) == 1 && boxes[0] == in {
		return true
	}
	if stages < 0 {
		return false
	}
	for _, along := range []geom.Axis{geom.U, geom.V} {
		if along == geom.U && alongX || along == geom.V && alongY {
			if strips(boxes, in, kerf, stages, along) {
				return true
			}
		}
	}
	return false
}

// strips cuts all that can be cut in one direction, which excludes none of the cuts after it.
func strips(boxes []geom.Rect, in geom.Rect, kerf geom.Length, stages int, along geom.Axis) bool {
	span := func(r geom.Rect) geom.Span {
		if along == geom.V {
			return r.X
		}
		return r.Y
	}
	next := stages - 1
	if stages == 1 {
		next = -1
	} else if stages == 0 {
		next = 0
	}
	boxes = slices.Clone(boxes)
	slices.SortFunc(boxes, func(a, b geom.Rect) int { return cmp.Compare(span(a).Lo, span(b).Lo) })
	from := 0
	far := span(boxes[0])
	for i := 1; i <= len(boxes); i++ {
		if i < len(boxes) && span(boxes[i]).Lo < far.Hi+kerf {
			far.Hi = max(far.Hi, span(boxes[i]).Hi)
			continue
		}
		strip := in
		if along == geom.V {
			strip.X = far
		} else {
			strip.Y = far
		}
		if strip == in || !parts(boxes[from:i], strip, kerf, next, along == geom.V, along == geom.U) {
			return false
		}
		if i < len(boxes) {
			from, far = i, span(boxes[i])
		}
	}
	return true
}

// cuts follows a saw: each cut goes through one of the rectangles that there are, and parts it.
// What it cuts at last are all pieces, and rectangles that are none.
func cuts(boxes []geom.Rect, u nesting.Used, inside geom.Rect, kerf geom.Length) error {
	there := []geom.Rect{inside}
	for _, c := range u.Cuts {
		i := slices.Index(there, c.Of)
		if i < 0 {
			return fmt.Errorf("no such rectangle to cut: %v", c)
		}
		low, high := c.Of, c.Of
		if c.Along == geom.V {
			low.X.Hi, high.X.Lo = c.At, c.At+kerf
		} else {
			low.Y.Hi, high.Y.Lo = c.At, c.At+kerf
		}
		there = append(slices.Delete(there, i, i+1), low, high)
	}
	for _, b := range boxes {
		if !slices.Contains(there, b) {
			return fmt.Errorf("cuts do not give %v", b)
		}
	}
	if u.Offcut != (geom.Rect{}) && !slices.Contains(there, u.Offcut) {
		return fmt.Errorf("cuts do not give the offcut %v", u.Offcut)
	}
	return nil
}
