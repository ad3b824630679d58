package dxf

import (
	"cmp"
	"fmt"
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
	rising := make([]*model.Bore, len(p.Bores))
	for i := range p.Bores {
		rising[i] = &p.Bores[i]
	}
	left := func(b *model.Bore) length.Length { return b.Middles()[0].X - b.Diameter/2 }
	slices.SortStableFunc(rising, func(a, b *model.Bore) int { return cmp.Compare(left(a), left(b)) })
	for i, a := range rising {
		right := a.Middles()[1].X + a.Diameter/2
		for _, b := range rising[i+1:] {
			if left(b) >= right {
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
func off(p, from, to geom.Point) float64 {
	d, q := to.Sub(from), p.Sub(from)
	dx, dy, qx, qy := float64(d.X), float64(d.Y), float64(q.X), float64(q.Y)
	along := 0.0
	if square := float64(dx*dx) + float64(dy*dy); square > 0 {
		along = max(0, min(1, (float64(qx*dx)+float64(qy*dy))/square))
	}
	return math.Hypot(qx-float64(along*dx), qy-float64(along*dy))
}
