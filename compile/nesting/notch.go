package nesting

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
)

// solids are, for each of these pieces, rectangles that cover it without its notches, as it lies
// upright and, if it turns, as it lies turned, each larger by the kerf. The largest comes first.
// Pieces without notches have none, and there are none at all where no piece has any.
func (j *Job) solids(pieces []int) [][2][]geom.Rect {
	out := make([][2][]geom.Rect, len(pieces))
	notched := false
	for i, n := range pieces {
		p := &j.Pieces[n]
		b := bed{spaces: []geom.Rect{geom.R(0, 0, p.X, p.Y)}}
		for _, r := range p.Notches {
			b.take(r, Size{})
		}
		if len(b.spaces) == 0 || b.spaces[0].X.Size() == p.X && b.spaces[0].Y.Size() == p.Y {
			continue
		}
		notched = true
		slices.SortStableFunc(b.spaces, func(a, b geom.Rect) int { return cmp.Compare(area(b), area(a)) })
		for _, r := range b.spaces {
			out[i][0] = append(out[i][0], geom.R(r.X.Lo, r.Y.Lo, r.X.Hi+j.Kerf, r.Y.Hi+j.Kerf))
			if p.Turns {
				out[i][1] = append(out[i][1], geom.R(p.Y-r.Y.Hi, r.X.Lo, p.Y-r.Y.Lo+j.Kerf, r.X.Hi+j.Kerf))
			}
		}
	}
	if !notched {
		return nil
	}
	return out
}

// inner is a search for the largest solids of the pieces alone: no layout of the pieces costs
// less than the best one of these.
func (s *search) inner(solids [][2][]geom.Rect) *search {
	in := *s
	in.shapes = slices.Clone(s.shapes)
	for i := range solids {
		if solids[i][0] != nil {
			p, r := &in.shapes[i], solids[i][0][0]
			p.w, p.h, p.area = r.X.Size(), r.Y.Size(), area(r)
		}
	}
	return &in
}

// interlock looks for solutions that cost less, as pieces may lie in notches of others. Where it
// finds none, no notches count still.
func (f *free) interlock(boxes *loose, solids [][2][]geom.Rect, atLeast int64, work int) *loose {
	shapes, least := f.shapes, f.least
	f.shapes, f.solids = slices.Clone(shapes), solids
	for i := range solids {
		if solids[i][0] != nil {
			f.shapes[i].area = area(solids[i][0][0])
		}
		for _, r := range slices.Concat(solids[i][0], solids[i][1]) {
			f.least = Size{min(f.least.X, r.X.Size()), min(f.least.Y, r.Y.Size())}
		}
	}
	x := &loose{}
	boxes.copyTo(x)
	for i := range x.beds {
		b := f.own(x, i)
		b.used = 0
		for k := range b.lies {
			l := &b.lies[k]
			l.solids, l.area = solids[l.piece][index(l.turned)], f.shapes[l.piece].area
			b.used += l.area
		}
		b.survey(f.kinds[b.kind], f.least)
	}
	f.cheapen(x, atLeast, work)
	if len(x.out) < len(boxes.out) || len(x.out) == 0 && x.price < boxes.price {
		return x
	}
	f.shapes, f.solids, f.least = shapes, nil, least
	return boxes
}

// nest looks for a better place of a piece with notches on a bed: it or one of its solids lies in
// the corner of a space that it fills well, and its solids where nothing is.
func (f *free) nest(i int, b *bed, piece int32, least *place) {
	p := &f.shapes[piece]
	for turn, solids := range f.solids[piece] {
		if solids == nil {
			continue
		}
		w, h := p.w, p.h
		if turn == 1 {
			w, h = h, w
		}
		l := lying{turned: turn == 1, at: geom.R(0, 0, w, h), solids: solids}
		f.fill(i, b, l, l.at, p.area, least)
		for _, r := range l.solids {
			f.fill(i, b, l, r, area(r), least)
		}
	}
}

// fill lays a piece with a part r of it in the corners of spaces.
func (f *free) fill(i int, b *bed, l lying, r geom.Rect, size float64, least *place) {
	bounds := geom.R(0, 0, f.kinds[b.kind].w, f.kinds[b.kind].h)
	for _, s := range b.spaces {
		loss := area(s) / size
		if loss > least.loss || r.X.Size() > s.X.Size() || r.Y.Size() > s.Y.Size() || loss == least.loss && f.below(2) == 0 {
			continue
		}
		box, most := l, Length(-1)
		for _, c := range corners(s, r.X.Size(), r.Y.Size()) {
			box.at = l.at.Shift(c.Sub(geom.Point{X: r.X.Lo, Y: r.Y.Lo}))
			f.work += len(b.lies)
			if !bounds.Contains(box.at) || !b.clear(&box) {
				continue
			}
			if sum := b.touched(r.Shift(box.corner()), f.kinds[b.kind]); sum > most || sum == most && f.below(2) == 0 {
				most = sum
				*least = place{bed: i, turned: l.turned, loss: loss, at: box.at}
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
