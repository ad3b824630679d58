package nesting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// reset empties a bed.
func (b *bed) reset(s *search, kind int) {
	b.blank, b.lies = blank{kind: kind, held: 1}, b.lies[:0]
	b.survey(s.kinds[kind], s.least)
}

func (b *bed) copyTo(c *bed) (work int) {
	c.blank, c.held = b.blank, 1
	c.lies = append(c.lies[:0], b.lies...)
	c.spaces = append(c.spaces[:0], b.spaces...)
	return 0
}

// gist tells of spaces. These overlap, and no sum of theirs means anything.
func (b *bed) gist() (g gist) {
	for _, r := range b.spaces {
		w, h := float64(r.X.Size()), float64(r.Y.Size())
		g.wide, g.high = max(g.wide, w), max(g.high, h)
		g.largest = max(g.largest, w*h)
	}
	g.largest *= g.largest
	return g
}

// best looks for the smallest space for a piece.
func (b *bed) best(s *search, i int, p *shape, upright, turned bool) {
	s.work += len(b.spaces)
	if p.solids != nil {
		b.nest(s, i, p)
		return
	}
	for k, r := range b.spaces {
		w, h := r.X.Size(), r.Y.Size()
		upright, turned := upright && p.w <= w && p.h <= h, turned && p.h <= w && p.w <= h
		if !upright && !turned || s.passes() {
			continue
		}
		if a := float64(w) * float64(h) / p.area; a < s.found.loss {
			s.found = spot{sheet: i, node: int32(k), turned: !upright || turned && s.below(2) == 0, loss: a}
		}
	}
}

// put lays a piece down, in a space where it touches most.
func (b *bed) put(s *search, piece int32, at spot) {
	p := &s.shapes[piece]
	if p.solids == nil {
		w, h := p.w, p.h
		if at.turned {
			w, h = h, w
		}
		at.at = b.corner(b.spaces[at.node], w, h, s.kinds[b.kind])
	}
	b.lay(s, s.lyingAt(piece, at.turned, at.at))
	b.cover(&b.lies[len(b.lies)-1], s.least)
	s.work += len(b.lies) + 2*len(b.spaces)
}

// lay puts a piece down, and leaves the spaces as they are.
func (b *bed) lay(s *search, l lying) {
	b.lies = append(b.lies, l)
	b.used += s.shapes[l.piece].area
	b.count++
}

// ruin takes pieces that lie together, and now and then all.
func (b *bed) ruin(s *search, take int, out []int32) []int32 {
	take = min(take, len(b.lies))
	if s.below(8) == 0 {
		take = len(b.lies)
	}
	at := b.lies[s.below(len(b.lies))].at
	for range take {
		near, next := Length(math.MaxInt64), 0
		for i := range b.lies {
			o := &b.lies[i].at
			d := max(at.X.Lo-o.X.Hi, o.X.Lo-at.X.Hi, at.Y.Lo-o.Y.Hi, o.Y.Lo-at.Y.Hi)
			if d < near || d == near && s.below(3) == 0 {
				near, next = d, i
			}
		}
		p := b.lies[next].piece
		b.used -= s.shapes[p].area
		b.count--
		b.lies = slices.Delete(b.lies, next, next+1)
		out = append(out, p)
	}
	b.survey(s.kinds[b.kind], s.least)
	s.work += len(b.lies) * (2 + len(b.spaces)/2)
	return out
}

func (b *bed) pieces(out []int32) []int32 {
	for i := range b.lies {
		out = append(out, b.lies[i].piece)
	}
	return out
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
func (b *bed) corner(space geom.Rect, w, h Length, k kind) (at geom.Point) {
	most := Length(-1)
	for _, c := range corners(space, w, h) {
		if sum := b.touched(geom.R(0, 0, w, h).Shift(c), k); sum > most {
			most, at = sum, c
		}
	}
	return at
}

// corners are where the lower left corner of a rectangle lies in each corner of a space.
func corners(s geom.Rect, w, h Length) [4]geom.Point {
	x, y := s.X.Hi-w, s.Y.Hi-h
	return [4]geom.Point{{X: s.X.Lo, Y: s.Y.Lo}, {X: s.X.Lo, Y: y}, {X: x, Y: s.Y.Lo}, {X: x, Y: y}}
}
