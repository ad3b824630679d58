package nesting

import (
	"slices"

	"barwright/compile/geom"
)

// bed is one sheet of a free layout: what lies on it, and its spaces, which are the empty
// rectangles that lie in no other one. Lai and Chan, "Developing a simulated annealing algorithm
// for the cutting stock problem", Computers & Industrial Engineering 32 (1997).
type bed struct {
	blank
	lies   []lying
	spaces []geom.Rect
	parts  []geom.Rect
}

// lying is a piece on a bed. If it has notches that count, solids cover the rest of it.
type lying struct {
	piece  int32
	turned bool
	at     geom.Rect
	solids []geom.Rect // from its lower left corner
}

func (l *lying) corner() geom.Point { return geom.Point{X: l.at.X.Lo, Y: l.at.Y.Lo} }

// lyingAt is a piece with its lower left corner somewhere.
func (s *search) lyingAt(piece int32, turned bool, at geom.Point) lying {
	p, l := &s.shapes[piece], lying{piece: piece, turned: turned}
	w, h := p.w, p.h
	if turned {
		w, h = h, w
	}
	l.at = geom.R(0, 0, w, h).Shift(at)
	if p.solids != nil {
		l.solids = p.solids[index(turned)]
	}
	return l
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

// largest is the largest space, with a kerf at its far edges.
func (b *bed) largest() (most geom.Rect) {
	for _, s := range b.spaces {
		if area(s) > area(most) {
			most = s
		}
	}
	return most
}
