package nesting

import (
	"slices"

	"barwright/compile/geom"
)

// bed is one sheet of a free layout: what lies on it, and its spaces, which are the empty
// rectangles that lie in no other one. Lai and Chan, "Developing a simulated annealing algorithm
// for the cutting stock problem", Computers & Industrial Engineering 32 (1997).
type bed struct {
	kind   int // of the sheet
	lies   []lying
	spaces []geom.Rect
	used   float64 // area of the pieces
	held   int     // by how many solutions
	parts  []geom.Rect
}

// lying is a piece on a bed. If it has notches that count, solids cover the rest of it.
type lying struct {
	piece  int32
	turned bool
	at     geom.Rect
	area   float64
	solids []geom.Rect // from its lower left corner
}

func (l *lying) corner() geom.Point { return geom.Point{X: l.at.X.Lo, Y: l.at.Y.Lo} }

func (b *bed) copyTo(c *bed) {
	c.kind, c.used, c.held = b.kind, b.used, 1
	c.lies = append(c.lies[:0], b.lies...)
	c.spaces = append(c.spaces[:0], b.spaces...)
}

// reset empties a bed. Spaces are found by survey.
func (b *bed) reset(kind int) {
	b.kind, b.lies, b.used, b.held = kind, b.lies[:0], 0, 1
}

func (b *bed) lay(l lying, least Size) {
	b.lies = append(b.lies, l)
	b.used += l.area
	b.cover(&l, least)
}

// cover cuts a piece out of all spaces.
func (b *bed) cover(l *lying, least Size) {
	if l.solids == nil {
		b.take(l.at, least)
	}
	for _, r := range l.solids {
		b.take(r.Shift(l.corner()), least)
	}
}

// lift takes a piece away. What it leaves is found by survey.
func (b *bed) lift(i int) lying {
	l := b.lies[i]
	b.used -= l.area
	b.lies = slices.Delete(b.lies, i, i+1)
	return l
}

// survey finds all spaces that are no smaller than least.
func (b *bed) survey(k kind, least Size) {
	b.spaces = append(b.spaces[:0], geom.R(0, 0, k.w, k.h))
	for i := range b.lies {
		b.cover(&b.lies[i], least)
	}
}

// take cuts a rectangle out of all spaces, and lets go of those that become smaller than least.
func (b *bed) take(r geom.Rect, least Size) {
	parts, kept := b.parts[:0], b.spaces[:0]
	for _, s := range b.spaces {
		if !s.Overlaps(r) {
			kept = append(kept, s)
			continue
		}
		for _, x := range [2]geom.Span{{Lo: s.X.Lo, Hi: r.X.Lo}, {Lo: r.X.Hi, Hi: s.X.Hi}} {
			if x.Size() >= least.X && x.Size() > 0 {
				parts = append(parts, geom.Rect{X: x, Y: s.Y})
			}
		}
		for _, y := range [2]geom.Span{{Lo: s.Y.Lo, Hi: r.Y.Lo}, {Lo: r.Y.Hi, Hi: s.Y.Hi}} {
			if y.Size() >= least.Y && y.Size() > 0 {
				parts = append(parts, geom.Rect{X: s.X, Y: y})
			}
		}
	}
	whole := kept
	for i, p := range parts {
		holds := func(o geom.Rect) bool { return o.Contains(p) }
		wider := func(o geom.Rect) bool { return o.Contains(p) && o != p }
		if !slices.ContainsFunc(whole, holds) && !slices.ContainsFunc(parts[:i], holds) && !slices.ContainsFunc(parts[i+1:], wider) {
			kept = append(kept, p)
		}
	}
	b.spaces, b.parts = kept, parts
}

// touched is how far the edges of a rectangle touch pieces and the edges of a sheet.
func (b *bed) touched(r geom.Rect, k kind) (sum Length) {
	if r.X.Lo == 0 {
		sum += r.Y.Size()
	}
	if r.X.Hi == k.w {
		sum += r.Y.Size()
	}
	if r.Y.Lo == 0 {
		sum += r.X.Size()
	}
	if r.Y.Hi == k.h {
		sum += r.X.Size()
	}
	for i := range b.lies {
		at := &b.lies[i].at
		if r.X.Lo == at.X.Hi || r.X.Hi == at.X.Lo {
			sum += max(0, r.Y.Intersect(at.Y).Size())
		}
		if r.Y.Lo == at.Y.Hi || r.Y.Hi == at.Y.Lo {
			sum += max(0, r.X.Intersect(at.X).Size())
		}
	}
	return sum
}

// corner is where in a space a piece touches most.
func (b *bed) corner(space geom.Rect, w, h Length, k kind) (at geom.Rect) {
	most := Length(-1)
	for _, c := range corners(space, w, h) {
		r := geom.R(0, 0, w, h).Shift(c)
		if sum := b.touched(r, k); sum > most {
			most, at = sum, r
		}
	}
	return at
}

// corners are where the lower left corner of a rectangle lies in each corner of a space.
func corners(s geom.Rect, w, h Length) [4]geom.Point {
	x, y := s.X.Hi-w, s.Y.Hi-h
	return [4]geom.Point{{X: s.X.Lo, Y: s.Y.Lo}, {X: s.X.Lo, Y: y}, {X: x, Y: s.Y.Lo}, {X: x, Y: y}}
}

// largest is the largest space, with a kerf at its far edges.
func (b *bed) largest() (most geom.Rect) {
	for _, s := range b.spaces {
		if area(s) > area(most) {
			most = s
		}
	}
	return most
}
