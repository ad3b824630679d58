package reuse

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Key is the same for pieces and parts of one board that can serve for each other as
// they are, without any step; marks count, labels and places do not. It is exact: what
// differs by less than Open was told has other keys, and so have parts whose cuts overlap
// or touch, however alike they are.
func (p *Pair) Key(part *model.Part) string {
	base := binary.AppendVarint(make([]byte, 0, 64), int64(p.Board(part)))
	if part.Kind == model.Lumber {
		s := along(part)
		base = lengths(base, s.long, min(s.wide, s.thick), max(s.wide, s.thick))
		if len(part.Outline) == 4 && len(part.Openings)+len(part.Recesses)+len(part.Bores)+len(part.Marks) == 0 {
			return string(base)
		}
	}
	// Of the lays, the one with the least digest; those with equal digests are
	// written out.
	b := part.Outline.Bounds()
	least, best := ^uint64(0), []byte(nil)
	for _, l := range lays {
		if g := grain(part.Grain, l); g == model.GrainY {
			continue
		}
		at := rect(b, l)
		l.Move = geom.Point{X: -at.X.Lo, Y: -at.Y.Lo}
		d := digest(part, l)
		if d > least {
			continue
		}
		if text := written(part, l); d < least || bytes.Compare(text, best) < 0 {
			least, best = d, text
		}
	}
	return string(append(base, best...))
}

func lengths(to []byte, values ...Length) []byte {
	for _, v := range values {
		to = binary.AppendVarint(to, int64(v))
	}
	return to
}

// digest mixes what is cut in a part, in whatever order.
func digest(part *model.Part, l model.Lay) uint64 {
	sum := uint64(0)
	add := func(kind uint64, r geom.Rect) {
		h := kind
		for _, v := range [...]Length{r.X.Lo, r.Y.Lo, r.X.Hi, r.Y.Hi} {
			h = (h ^ uint64(v)) * 0x9e3779b97f4a7c15
			h ^= h >> 29
		}
		sum += h
	}
	for _, v := range part.Outline {
		p := l.Point(v.Point)
		add(1, geom.Rect{X: geom.Span{Lo: p.X, Hi: p.Y}})
	}
	for i := range part.Openings {
		if o := &part.Openings[i]; !o.Notch {
			add(2, rect(o.Shape.Bounds(), l))
		}
	}
	for i := range part.Recesses {
		add(3+side(l.Over), rect(part.Recesses[i].Shape.Bounds(), l))
	}
	for i := range part.Bores {
		b := &part.Bores[i]
		p := l.Point(b.At)
		add(5+side(b.Behind() != l.Over && (!b.Through() || b.Sink > 0)), geom.Rect{X: geom.Span{Lo: p.X, Hi: p.Y}, Y: geom.Span{Lo: b.Diameter, Hi: b.Depth}})
	}
	for i := range part.Bands {
		add(7, geom.Rect{X: geom.Span{Lo: Length(edge(part.Bands[i].Edge, l))}})
	}
	for i := range part.Marks {
		m := &part.Marks[i]
		p, q := l.Point(m.From), l.Point(m.To)
		add(8+side(l.Over), geom.Rect{X: geom.Between(p.X, q.X), Y: geom.Between(p.Y, q.Y)})
	}
	add(10, geom.Rect{X: geom.Span{Lo: Length(good(part.Good, l))}})
	return sum
}

func side(behind bool) uint64 {
	if behind {
		return 1
	}
	return 0
}

// written spells out a part as it is laid, in an order that follows from nothing but
// where things are.
func written(part *model.Part, l model.Lay) []byte {
	out := binary.AppendVarint(make([]byte, 0, 128), int64(good(part.Good, l)))
	out = binary.AppendVarint(out, int64(grain(part.Grain, l)))
	out = append(out, contourKey(part.Outline, l)...)
	var items [][]byte
	add := func(kind byte, item []byte) { items = append(items, append(item, kind)) }
	for i := range part.Openings {
		if o := &part.Openings[i]; !o.Notch {
			add('o', contourKey(o.Shape, l))
		}
	}
	for i := range part.Recesses {
		r := &part.Recesses[i]
		add('r', append(lengths(contourKey(r.Shape, l), r.Depth), byte(side(l.Over))))
	}
	for i := range part.Bores {
		b := &part.Bores[i]
		p := l.Point(b.At)
		across := b.Slot > 0 && b.Across != (l.Quarters%2 == 1)
		behind := (!b.Through() || b.Sink > 0) && b.Far != l.Over
		add('b', append(lengths(make([]byte, 0, 40), p.X, p.Y, b.Diameter, b.Depth, b.Sink, b.Slot), byte(side(across)), byte(side(behind))))
	}
	for i := range part.Bands {
		b := &part.Bands[i]
		add('e', append(lengths(nil, Length(edge(b.Edge, l))), b.Stock...))
	}
	for i := range part.Marks {
		p, q := l.Point(part.Marks[i].From), l.Point(part.Marks[i].To)
		if cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) > 0 {
			p, q = q, p
		}
		add('m', append(lengths(nil, p.X, p.Y, q.X, q.Y), byte(side(l.Over))))
	}
	slices.SortFunc(items, bytes.Compare)
	for _, item := range items {
		out = append(binary.AppendVarint(out, int64(len(item))), item...)
	}
	return out
}

// contourKey spells out a contour counter-clockwise from its lowest corner.
func contourKey(c geom.Contour, l model.Lay) []byte {
	if l != (model.Lay{}) {
		c = l.Contour(c)
	}
	if s, ok := shapeOf(c); ok {
		return lengths(make([]byte, 0, 40), s.core.X.Lo, s.core.Y.Lo, s.core.X.Hi, s.core.Y.Hi, s.r)
	}
	if c.Area() < 0 {
		c = c.Reversed()
	}
	first := 0
	for i, v := range c {
		if f := c[first]; cmp.Or(cmp.Compare(v.Y, f.Y), cmp.Compare(v.X, f.X)) < 0 {
			first = i
		}
	}
	out := make([]byte, 0, 20*len(c))
	for i := range c {
		v := c[(first+i)%len(c)]
		out = lengths(out, v.X, v.Y, Length(v.Bulge*1e9))
	}
	return out
}
