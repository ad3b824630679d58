package nesting

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
)

// solids are rectangles that cover a piece without its notches, as it lies upright and, if it
// turns, as it lies turned, each larger by the kerf. The largest comes first.
type solids [2][]geom.Rect

// notched are shapes as they lie without their notches; nil where no piece has any.
func (j *Job) notched(s *search, pieces []int) []shape {
	shapes, some := slices.Clone(s.shapes), false
	for i, n := range pieces {
		p := &j.Pieces[n]
		b := bed{spaces: []geom.Rect{geom.R(0, 0, p.X, p.Y)}}
		for _, r := range p.Notches {
			b.take(r, Size{})
		}
		if len(b.spaces) == 0 || b.spaces[0].X.Size() == p.X && b.spaces[0].Y.Size() == p.Y {
			continue
		}
		some = true
		slices.SortStableFunc(b.spaces, func(a, b geom.Rect) int { return cmp.Compare(area(b), area(a)) })
		var of solids
		for _, r := range b.spaces {
			of[0] = append(of[0], geom.R(r.X.Lo, r.Y.Lo, r.X.Hi+j.Kerf, r.Y.Hi+j.Kerf))
			if p.Turns {
				of[1] = append(of[1], geom.R(p.Y-r.Y.Hi, r.X.Lo, p.Y-r.Y.Lo+j.Kerf, r.X.Hi+j.Kerf))
			}
		}
		shapes[i].solids, shapes[i].area = &of, together(of[0])
	}
	if !some {
		return nil
	}
	return shapes
}

// together is the area of rectangles that overlap.
func together(all []geom.Rect) (sum float64) {
	var xs []Length
	for _, r := range all {
		xs = append(xs, r.X.Lo, r.X.Hi)
	}
	slices.Sort(xs)
	all = slices.SortedFunc(slices.Values(all), func(a, b geom.Rect) int { return cmp.Compare(a.Y.Lo, b.Y.Lo) })
	for i := range xs[1:] {
		x, top := geom.Span{Lo: xs[i], Hi: xs[i+1]}, Length(0)
		for _, r := range all {
			if r.X.Contains(x) {
				r.Y.Lo = max(top, r.Y.Lo)
				sum += area(geom.Rect{X: x, Y: r.Y})
				top = max(top, r.Y.Hi)
			}
		}
	}
	return sum
}

// inner is a search for the largest solids of pieces alone: no layout of the pieces costs less
// than the best one of these. Their areas are those of the pieces.
func (s *search) inner(notched []shape) *search {
	if notched == nil {
		return s
	}
	in := *s
	in.shapes = slices.Clone(notched)
	for i := range in.shapes {
		if p := &in.shapes[i]; p.solids != nil {
			r := p.solids[0][0]
			p.w, p.h = r.X.Size(), r.Y.Size()
		}
	}
	return &in
}

// interlock looks for solutions that cost less, as pieces may lie in notches of others. Where it
// finds none, no notches count still.
func interlock(s *solver[*bed], boxes *solution[*bed], notched []shape, atLeast int64, work int) *solution[*bed] {
	shapes := s.shapes
	s.shapes = notched
	s.narrow()
	x := &solution[*bed]{}
	boxes.copyTo(x)
	for i := range x.sheets {
		b := s.own(x, i)
		b.used = 0
		for k := range b.lies {
			l := &b.lies[k]
			*l = s.lyingAt(l.piece, l.turned, l.corner())
			b.used += s.shapes[l.piece].area
		}
		b.survey(s.kinds[b.kind], s.least)
		s.note(x, i)
	}
	s.cheapen(x, atLeast, work)
	if len(x.out) < len(boxes.out) || len(x.out) == 0 && x.price < boxes.price {
		return x
	}
	s.shapes = shapes
	s.narrow()
	return boxes
}

// nest looks for a better place of a piece with notches on a bed: it or one of its solids lies in
// the corner of a space that it fills well, and its solids where nothing is.
func (b *bed) nest(s *search, i int, p *shape) {
	for turn, solids := range p.solids {
		if solids == nil {
			continue
		}
		w, h := p.w, p.h
		if turn == 1 {
			w, h = h, w
		}
		l := lying{turned: turn == 1, at: geom.R(0, 0, w, h), solids: solids}
		b.fill(s, i, l, l.at, p.area)
		for _, r := range l.solids {
			b.fill(s, i, l, r, area(r))
		}
	}
}

// fill lays a piece with a part r of it in the corners of spaces.
func (b *bed) fill(s *search, i int, l lying, r geom.Rect, size float64) {
	k := s.kinds[b.kind]
	bounds := geom.R(0, 0, k.w, k.h)
	for _, space := range b.spaces {
		loss := area(space) / size
		if loss > s.found.loss || r.X.Size() > space.X.Size() || r.Y.Size() > space.Y.Size() || loss == s.found.loss && s.below(2) == 0 {
			continue
		}
		box, most := l, Length(-1)
		for _, c := range corners(space, r.X.Size(), r.Y.Size()) {
			box.at = l.at.Shift(c.Sub(geom.Point{X: r.X.Lo, Y: r.Y.Lo}))
			s.work += len(b.lies)
			if !bounds.Contains(box.at) || !b.clear(&box) {
				continue
			}
			if sum := b.touched(r.Shift(box.corner()), k); sum > most || sum == most && s.below(2) == 0 {
				most = sum
				s.found = spot{sheet: i, turned: l.turned, loss: loss, at: box.corner()}
			}
		}
	}
}

// clear reports whether nothing lies where a piece is to lie.
func (b *bed) clear(l *lying) bool {
	for i := range b.lies {
		o := &b.lies[i]
		if !o.at.Overlaps(l.at) {
			continue
		}
		for _, r := range l.solids {
			r = r.Shift(l.corner())
			if o.solids == nil && o.at.Overlaps(r) {
				return false
			}
			for _, q := range o.solids {
				if q.Shift(o.corner()).Overlaps(r) {
					return false
				}
			}
		}
	}
	return true
}

func index(b bool) int {
	if b {
		return 1
	}
	return 0
}
