package dxf

import (
	"cmp"
	"fmt"
	"iter"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// validateBores refuses a bore that reaches beyond the outline or into another:
// two that are drilled from one face, or that meet within the thickness.
func validateBores(p *model.Part) error {
	outline := p.Outline.Chords()
	for i := range p.Bores {
		b := &p.Bores[i]
		if b.Diameter < shortest || b.Slot < 0 || b.Depth < 0 {
			return fmt.Errorf("bore %q at %s has no size", b.Name, showPoint(b.At))
		}
		if short := -clearInside(outline, b); short > 0 {
			return fmt.Errorf("bore %q at %s reaches beyond the outline", b.Name, showPoint(b.At))
		}
	}
	search := crowds[*model.Bore]{
		limits: usual, count: len(p.Bores), all: boresOf(p),
		trace: func(b *model.Bore, g *grid) bool { g.crowd(boreBox(b)); return true },
		alone: func(*model.Bore) error { return nil },
		near:  func(near []*model.Bore) error { return boresApart(p, near) },
	}
	return search.in(p.Outline.Bounds())
}

func boresOf(p *model.Part) iter.Seq2[geom.Rect, *model.Bore] {
	return func(yield func(geom.Rect, *model.Bore) bool) {
		for i := range p.Bores {
			if b := &p.Bores[i]; !yield(boreBox(b), b) {
				return
			}
		}
	}
}

func boreBox(b *model.Bore) geom.Rect {
	ends := b.Middles()
	return geom.R(ends[0].X, ends[0].Y, ends[1].X, ends[1].Y).Grow(b.Diameter/2 + shortest)
}

// boresApart refuses two bores that meet, in a sweep from left to right.
func boresApart(p *model.Part, near []*model.Bore) error {
	slices.SortStableFunc(near, func(a, b *model.Bore) int { return cmp.Compare(boreBox(a).X.Lo, boreBox(b).X.Lo) })
	for i, a := range near {
		right := boreBox(a).X.Hi
		for _, b := range near[i+1:] {
			if boreBox(b).X.Lo >= right {
				break
			}
			if sameDepth(p, a, b) && apart(a, b) < 0 {
				return fmt.Errorf("bores %q at %s and %q at %s meet", a.Name, showPoint(a.At), b.Name, showPoint(b.At))
			}
		}
	}
	return nil
}

// sameDepth reports whether two bores that cover one another meet in the wood.
func sameDepth(p *model.Part, a, b *model.Bore) bool {
	return a.Through() || b.Through() || a.Far == b.Far || a.Depth+b.Depth > p.Thickness
}

// apart returns how far the edges of two bores are from one another, in
// nanometres; less than 0 where they overlap.
func apart(a, b *model.Bore) float64 {
	p, q := a.Middles(), b.Middles()
	gap := func(a0, a1, b0, b1 length.Length) float64 { return float64(max(b0-a1, a0-b1, 0)) }
	between := math.Hypot(gap(p[0].X, p[1].X, q[0].X, q[1].X), gap(p[0].Y, p[1].Y, q[0].Y, q[1].Y))
	return between - float64(a.Diameter+b.Diameter)/2
}

// clearInside returns how far a bore's edge stays inside an outline; less than 0
// where it reaches out of it.
func clearInside(outline []geom.Point, b *model.Bore) float64 {
	ends := b.Middles()
	nearest := math.Inf(1)
	for i, from := range outline {
		to := outline[(i+1)%len(outline)]
		if b.Slot > 0 && meet(from, to, ends[0], ends[1]) {
			return math.Inf(-1)
		}
		nearest = min(nearest, off(ends[0], from, to), off(ends[1], from, to), off(from, ends[0], ends[1]))
	}
	if !encloses(outline, ends[0]) {
		return math.Inf(-1)
	}
	return nearest - float64(b.Diameter)/2
}

// off returns how far a point is from a straight line between two others.
func off(p, from, to geom.Point) float64 { return geom.FromLine(float64(p.X), float64(p.Y), from, to) }
