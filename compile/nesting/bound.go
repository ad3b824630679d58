package nesting

import (
	"cmp"
	"math"
	"slices"
)

// bound is the least price of sheets that hold all pieces, and how many that cost anything they
// are at least. Where too few sheets are left for all pieces
// there is none, and enough is false.
//
// Lengths are replaced by values of a scale, such that whatever fits in a row still does. Then
// the areas, made of such values, of what a sheet holds are no more than its own: Fekete and
// Schepers, "A general framework for bounds for higher-dimensional orthogonal packing problems",
// Mathematical Methods of Operations Research 60 (2004). It holds for sheets of several sizes,
// as no scale gives a sum less than its terms together. So the sheets cover a known area, at
// the least price.
//
// It is taken twice. Across each other, two scales give a piece that turns the less of both ways
// it may lie. Or all lengths are of one scale, both ways count half, and a sheet is part of a
// square: Clautiaux, Jouglet and El Hayek, "A new lower bound for the non-oriented
// two-dimensional bin-packing problem", Operations Research Letters 35 (2007).
//
// The bound L2 of Martello and Toth, "Lower bounds and reduction procedures for the bin packing
// problem", Discrete Applied Mathematics 28 (1990), for the lengths of those pieces that are
// higher than half a sheet, and for the heights of those that are longer, is among these.
func (s *search) bound() (price int64, sheets int, enough bool) {
	price, sheets, enough = s.covered()
	for _, part := range s.confined() {
		p, n, ok := part.covered()
		price, sheets, enough = max(price, p), max(sheets, n), enough && ok
	}
	if !enough {
		return 0, 0, false
	}
	return price, sheets, true
}

// enoughParts is how many searches for some of the pieces are bounded.
const enoughParts = 6

// confined are searches for those pieces that come out of some of the kinds of sheets only, those
// that the fewest kinds give first.
func (s *search) confined() (parts []*search) {
	known := map[string]*search{} // by which kinds; for lookup only
	for _, p := range s.shapes {
		var kinds []kind
		key := make([]byte, len(s.kinds))
		for k := range s.kinds {
			if s.takes(s.kinds[k], p) {
				key[k] = 1
				kinds = append(kinds, s.kinds[k])
			}
		}
		if of := string(key); known[of] == nil && len(kinds) < len(s.kinds) {
			known[of] = &search{kinds: kinds, stages: s.stages, size: s.size}
			parts = append(parts, known[of])
		}
	}
	slices.SortStableFunc(parts, func(a, b *search) int { return cmp.Compare(len(a.kinds), len(b.kinds)) })
	parts = parts[:min(len(parts), enoughParts)]
	for _, part := range parts {
		for _, p := range s.shapes {
			if !slices.ContainsFunc(s.kinds, func(k kind) bool { return s.takes(k, p) && !slices.Contains(part.kinds, k) }) {
				part.shapes = append(part.shapes, p)
			}
		}
	}
	return parts
}

// covered is that bound, of all pieces and kinds together.
func (s *search) covered() (price int64, sheets int, enough bool) {
	costs := lowest{kinds: s.kinds, part: -1}
	count := lowest{kinds: slices.Clone(s.kinds), part: -1}
	for i := range count.kinds {
		k := &count.kinds[i]
		k.price = min(k.price, 1)
	}
	s.covers(func(need float64, area []float64) {
		count.raise(need, area)
		if len(s.kinds) > 1 {
			costs.raise(need, area)
		}
	})
	switch {
	case math.IsInf(count.part, 1):
		return 0, 0, false
	case len(s.kinds) == 1:
		return count.whole * s.kinds[0].price, int(count.whole), true
	}
	return costs.whole, int(count.whole), true
}

// lowest is the least price of sheets, of parts of them and of whole ones, that cover all needs.
type lowest struct {
	kinds []kind
	part  float64
	whole int64
}

func (l *lowest) raise(need float64, area []float64) {
	c := newCover(l.kinds, area)
	if p := c.part(need); p > l.part {
		l.part, l.whole = p, max(l.whole, c.whole(need))
	}
}

// demand is how many pieces there are of a size. It turns only where both ways fit a sheet.
type demand struct {
	w, h  Length
	turns bool
	n     float64
}

// gives reports whether there is a sheet that a piece can be cut from as it lies.
func (s *search) gives(w, h Length) bool {
	return slices.ContainsFunc(s.kinds, func(k kind) bool { return s.lies(k, w, h) })
}

func (s *search) demands() (all []demand) {
	at := map[demand]int{} // for lookup only
	for _, p := range s.shapes {
		d := demand{w: p.w, h: p.h, turns: p.turns}
		if d.turns {
			upright, turned := s.gives(p.w, p.h), s.gives(p.h, p.w)
			if d.turns = upright && turned; !upright {
				d.w, d.h = p.h, p.w
			}
		}
		i, ok := at[d]
		if !ok {
			i = len(all)
			at[d] = i
			all = append(all, d)
		}
		all[i].n++
	}
	return all
}

// covers tells f what area is needed by each pair of scales, and what each kind of sheet has.
func (s *search) covers(f func(need float64, area []float64)) {
	all := s.demands()
	var w, h Length
	turns := false
	for _, k := range s.kinds {
		w, h = max(w, k.w), max(h, k.h)
	}
	var ws, hs []Length
	for _, d := range all {
		ws, hs = append(ws, d.w), append(hs, d.h)
		if d.turns {
			ws, hs, turns = append(ws, d.h), append(hs, d.w), true
		}
	}
	s.areas(f)
	across := s.scaled(all, scales(hs, h))
	for _, x := range s.scaled(all, scales(ws, w)) {
		for _, y := range across {
			s.oriented(all, x, y, f)
		}
	}
	if !turns {
		return
	}
	both := s.scaled(all, scales(append(ws, hs...), max(w, h)))
	for i, x := range both {
		for _, y := range both[i:] {
			s.square(all, x, y, f)
		}
	}
}

// areas tells f of plain areas, which are less than those of boxes where pieces have notches.
func (s *search) areas(f func(need float64, area []float64)) {
	need, area := 0.0, make([]float64, len(s.kinds))
	for i := range s.shapes {
		need += s.shapes[i].area / s.size
	}
	for i := range area {
		area[i] = s.kinds[i].area / s.size
	}
	f(need, area)
}

// scaled has values of a scale for both extents of demands and kinds of sheet.
type scaled struct{ w, h, kw, kh []float64 }

func (s *search) scaled(all []demand, by []scale) (out []scaled) {
	for _, f := range by {
		var v scaled
		for _, d := range all {
			v.w, v.h = append(v.w, f.of(d.w)), append(v.h, f.of(d.h))
		}
		for _, k := range s.kinds {
			v.kw, v.kh = append(v.kw, f.of(k.w)), append(v.kh, f.of(k.h))
		}
		out = append(out, v)
	}
	return out
}

func (s *search) oriented(all []demand, x, y scaled, f func(float64, []float64)) {
	need := 0.0
	for i, d := range all {
		a := x.w[i] * y.h[i]
		if d.turns {
			a = min(a, x.h[i]*y.w[i])
		}
		need += float64(d.n * a)
	}
	area := make([]float64, len(s.kinds))
	for i := range area {
		area[i] = x.kw[i] * y.kh[i]
	}
	f(need, area)
}

func (s *search) square(all []demand, x, y scaled, f func(float64, []float64)) {
	need := 0.0
	for i, d := range all {
		need += float64(d.n * (float64(x.w[i]*y.h[i]) + float64(x.h[i]*y.w[i])) / 2)
	}
	area := make([]float64, len(s.kinds))
	for i := range area {
		area[i] = (float64(x.kw[i]*y.kh[i]) + float64(x.kh[i]*y.kw[i])) / 2
	}
	f(need, area)
}
