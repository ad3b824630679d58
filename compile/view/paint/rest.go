package paint

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
)

// piece is a convex ring and the rectangle round it.
type piece struct {
	ring
	frame bounds
}

func pieceOf(r ring) piece { return piece{r, r.bounds()} }

// rest is what is left of a face, in pieces, while others are taken out of it. Its room serves one face after
// another.
type rest struct {
	pieces, next []piece
	corners      []spot
}

// begin takes a face that nothing is taken out of yet.
func (l *rest) begin(parts []piece) {
	l.pieces, l.corners = append(l.pieces[:0], parts...), l.corners[:0]
}

// without takes a piece out of all that is left.
func (l *rest) without(cover piece) {
	left := l.next[:0]
	for _, p := range l.pieces {
		if !cover.frame.meets(p.frame) || !p.meets(cover.ring) {
			left = append(left, p)
			continue
		}
		r := p.ring
		for i, a := range cover.ring {
			b := cover.ring[(i+1)%len(cover.ring)]
			if out := l.side(r, b, a); out.area() > speck {
				left = append(left, pieceOf(out))
			}
			if r = l.side(r, a, b); r.area() <= speck {
				break
			}
		}
	}
	l.pieces, l.next = left, l.pieces
}

// side is what of a convex ring lies to the left of a line.
func (l *rest) side(r ring, a, b spot) ring {
	if len(r) == 0 {
		return nil
	}
	start := len(l.corners)
	first := turn(a, b, r[0])
	from := first
	for i, p := range r {
		q, to := r[0], first
		if i+1 < len(r) {
			q = r[i+1]
			to = turn(a, b, q)
		}
		if from >= 0 {
			l.corners = append(l.corners, p)
		}
		if from > 0 && to < 0 || from < 0 && to > 0 {
			t := from / (from - to)
			l.corners = append(l.corners, spot{p.x + float64((q.x-p.x)*t), p.y + float64((q.y-p.y)*t)})
		}
		from = to
	}
	return l.corners[start:]
}

// free are the pieces that are left, the largest first.
func (l *rest) free() []Free {
	free := make([]Free, len(l.pieces))
	for i, r := range l.pieces {
		var m spot
		for _, p := range r.ring {
			m = spot{m.x + p.x/float64(len(r.ring)), m.y + p.y/float64(len(r.ring))}
		}
		free[i] = Free{Corners: r.points(), Middle: m.point(), Area: r.area()}
	}
	slices.SortStableFunc(free, func(a, b Free) int { return cmp.Compare(b.Area, a.Area) })
	return free
}

func (r ring) points() []geom.Point {
	out := make([]geom.Point, len(r))
	for i, p := range r {
		out[i] = p.point()
	}
	return out
}
