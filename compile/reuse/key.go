package reuse

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"math"
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
		if isRect(part.Outline, part.Outline.Bounds()) && len(part.Openings)+len(part.Recesses)+len(part.Bores)+len(part.Marks) == 0 {
			return string(base)
		}
	}
	// Of the lays, the one with the least digest; those with equal digests are
	// written out.
	var laid [len(lays)]model.Lay
	var digests [len(lays)]uint64
	n := 0
	for _, l := range lays {
		if grain(part.Grain, l) != model.GrainY {
			l = toOrigin(part, l)
			laid[n], digests[n] = l, digest(part, l)
			n++
		}
	}
	least := slices.Min(digests[:n])
	var best []byte
	for i, l := range laid[:n] {
		if digests[i] != least {
			continue
		}
		if text := written(part, l); best == nil || bytes.Compare(text, best) < 0 {
			best = text
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
		add(3+uint64(side(l.Over)), rect(part.Recesses[i].Shape.Bounds(), l))
	}
	for i := range part.Bores {
		b := &part.Bores[i]
		p := l.Point(b.At)
		add(5+uint64(side(behind(b, l))), geom.Rect{X: geom.Span{Lo: p.X, Hi: p.Y}, Y: geom.Span{Lo: b.Diameter, Hi: b.Depth}})
	}
	for i := range part.Bands {
		add(7, geom.Rect{X: geom.Span{Lo: Length(edge(part.Bands[i].Edge, l))}})
	}
	for i := range part.Marks {
		m := &part.Marks[i]
		p, q := l.Point(m.From), l.Point(m.To)
		add(8+uint64(side(l.Over)), geom.Rect{X: geom.Between(p.X, q.X), Y: geom.Between(p.Y, q.Y)})
	}
	add(10, geom.Rect{X: geom.Span{Lo: Length(good(part.Good, l))}})
	return sum
}

func side(behind bool) byte {
	if behind {
		return 1
	}
	return 0
}

// written spells out a part as it is laid, in an order that follows from nothing but
// where things are.
func written(part *model.Part, l model.Lay) []byte {
	text := make([]byte, 0, 128+24*(len(part.Bores)+len(part.Openings)+len(part.Recesses)+len(part.Marks)))
	var items []geom.Span // of text
	begin := 0
	add := func(kind byte) {
		text = append(text, kind)
		items = append(items, geom.Span{Lo: Length(begin), Hi: Length(len(text))})
		begin = len(text)
	}
	for i := range part.Openings {
		if o := &part.Openings[i]; !o.Notch {
			text = appendContour(text, o.Shape, l)
			add('o')
		}
	}
	for i := range part.Recesses {
		r := &part.Recesses[i]
		text = append(lengths(appendContour(text, r.Shape, l), r.Depth), side(l.Over))
		add('r')
	}
	for i := range part.Bores {
		b := &part.Bores[i]
		p := l.Point(b.At)
		across := b.Slot > 0 && b.Across != (l.Quarters%2 == 1)
		text = append(lengths(text, p.X, p.Y, b.Diameter, b.Depth, b.Sink, b.Slot), side(across), side(behind(b, l)))
		add('b')
	}
	for i := range part.Bands {
		b := &part.Bands[i]
		text = append(lengths(text, Length(edge(b.Edge, l)), b.Thickness), b.Stock...)
		add('e')
	}
	for i := range part.Marks {
		p, q := l.Point(part.Marks[i].From), l.Point(part.Marks[i].To)
		if cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) > 0 {
			p, q = q, p
		}
		text = append(lengths(text, p.X, p.Y, q.X, q.Y), side(l.Over))
		add('m')
	}
	item := func(s geom.Span) []byte { return text[s.Lo:s.Hi] }
	slices.SortFunc(items, func(a, b geom.Span) int { return bytes.Compare(item(a), item(b)) })
	out := lengths(make([]byte, 0, len(text)+len(items)+64), Length(good(part.Good, l)), Length(grain(part.Grain, l)))
	out = appendContour(out, part.Outline, l)
	for _, s := range items {
		out = append(lengths(out, s.Size()), item(s)...)
	}
	return out
}

// behind reports whether a bore is drilled from the far face once its part is laid. One
// that goes through is drilled from neither, unless it is sunk.
func behind(b *model.Bore, l model.Lay) bool { return (!b.Through() || b.Sink > 0) && b.Far != l.Over }

// appendContour spells out a contour counter-clockwise from its lowest corner.
func appendContour(to []byte, c geom.Contour, l model.Lay) []byte {
	if bounds := c.Bounds(); isRect(c, bounds) {
		r := rect(bounds, l)
		return lengths(to, r.X.Lo, r.Y.Lo, r.X.Hi, r.Y.Hi, 0)
	}
	c = l.Contour(c)
	if s, ok := shapeOf(c); ok {
		return lengths(to, s.core.X.Lo, s.core.Y.Lo, s.core.X.Hi, s.core.Y.Hi, s.r)
	}
	if c.Area() < 0 {
		c = c.Reversed()
	}
	first := c.Lowest()
	for i := range c {
		v := c[(first+i)%len(c)]
		to = lengths(to, v.X, v.Y, Length(math.Round(v.Bulge*1e9)))
	}
	return to
}
