package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// check tells what is wrong with layouts. It knows the rules of cutting and
// nothing of how the layouts were found.
func check(parts []model.Part, stock model.Stock, shop Shop, layouts []model.Layout, misfits []Misfit) error {
	left, known := map[string]*model.Part{}, map[string]*model.Part{}
	for i := range parts {
		left[parts[i].ID], known[parts[i].ID] = &parts[i], &parts[i]
	}
	for _, m := range misfits {
		p := left[m.Part]
		if p == nil || p.Stock != m.Stock {
			return fmt.Errorf("misfit %v is no part, or one twice", m)
		}
		if comesOut(p, stock, shop) {
			return fmt.Errorf("misfit %v fits", m)
		}
		delete(left, m.Part)
	}
	for _, l := range layouts {
		bought := 0
		for _, b := range l.Blanks {
			if !b.Own {
				bought++
			}
		}
		out := slices.ContainsFunc(misfits, func(m Misfit) bool { return m.Stock == l.Stock })
		if l.Bought != bought || l.AtLeast > l.Bought || l.AtLeast < 1 && l.AtLeast == l.Bought && !l.Least && !out {
			return fmt.Errorf("%s: %d bought, at least %d, %d blanks", l.Stock, l.Bought, l.AtLeast, len(l.Blanks))
		}
		if err := enough(l, stock); err != nil {
			return err
		}
		pieces, used, all := 0, 0.0, 0.0
		for i, b := range l.Blanks {
			if err := checkBlank(b, l, left, stock, shop); err != nil {
				return fmt.Errorf("%s %d: %w", l.Stock, i, err)
			}
			across := max(b.Width, 1)
			all += b.Length.MM() * across.MM()
			for _, p := range b.Placed {
				pieces++
				used += taken(known[p.Part], p.At, l.Free)
			}
		}
		if pieces != l.Pieces || math.Abs(l.Waste-(1-used/all)) > 1e-9 {
			return fmt.Errorf("%s: %d pieces, waste %f; found %d, %f", l.Stock, l.Pieces, l.Waste, pieces, 1-used/all)
		}
	}
	if len(left) > 0 {
		return fmt.Errorf("%d parts are in no layout", len(left))
	}
	return nil
}

// enough tells of offcuts that there are fewer of.
func enough(l model.Layout, stock model.Stock) error {
	if l.Kind != model.Panel {
		return nil
	}
	taken := map[model.Offcut]int{} // lookup only; by size
	there := map[model.Offcut]int{}
	for _, o := range sheetOf(l, stock).Offcuts {
		there[model.Offcut{Length: o.Length, Width: o.Width}] += o.Count
	}
	for _, b := range l.Blanks {
		size := model.Offcut{Length: b.Length, Width: b.Width}
		if taken[size]++; b.Own && taken[size] > there[size] {
			return fmt.Errorf("offcut %v: only %d are there", size, there[size])
		} else if !b.Own {
			taken[size]--
		}
	}
	return nil
}

func sheetOf(l model.Layout, stock model.Stock) *model.Sheet {
	return &stock.Sheets[slices.IndexFunc(stock.Sheets, func(s model.Sheet) bool { return s.Name == l.Stock })]
}

func checkBlank(b model.Blank, l model.Layout, left map[string]*model.Part, stock model.Stock, shop Shop) error {
	inside := geom.R(0, 0, b.Length, 0)
	grain, gap := false, shop.Saw.Kerf
	if l.Kind == model.Panel {
		s := sheetOf(l, stock)
		size := func(o model.SheetSize) bool { return o.Length == b.Length && o.Width == b.Width }
		if !b.Own && !slices.ContainsFunc(s.Sizes(), size) {
			return fmt.Errorf("not a size on sale: %v", b)
		}
		edge := shop.Saw.Trim
		switch {
		case shop.Table.Free:
			edge, gap = shop.Table.Margin, shop.Table.Spacing
		case b.Own:
			edge = 0
		}
		inside = geom.R(0, 0, b.Length, b.Width).Grow(-edge)
		grain = s.Grain
	} else {
		s := stock.Sticks[slices.IndexFunc(stock.Sticks, func(s model.Stick) bool { return s.Name == l.Stock })]
		onSale := func(o model.StickLength) bool { return o.Length == b.Length }
		if !slices.ContainsFunc(s.Lengths, onSale) || b.Width != 0 || b.Length > l.Length {
			return fmt.Errorf("not a length on sale: %v", b)
		}
		inside.X = inside.X.Grow(-s.Ends)
	}
	if len(b.Placed) == 0 {
		return fmt.Errorf("bought for nothing")
	}
	var rects []geom.Rect
	var outlines [][][2]float64
	for i, p := range b.Placed {
		part := left[p.Part]
		if part == nil || part.Stock != l.Stock {
			return fmt.Errorf("%s is not asked for, or placed twice", p.Part)
		}
		delete(left, p.Part)
		x, y := part.Size()
		if p.Turned {
			x, y = y, x
		}
		if l.Kind != model.Panel {
			y = 0
		}
		if p.At.X.Size() != x || p.At.Y.Size() != y {
			return fmt.Errorf("%s is not its size: %v", p.Part, p)
		}
		if !inside.Contains(p.At) {
			return fmt.Errorf("%s lies outside: %v", p.Part, p)
		}
		if grain && (part.Grain == model.GrainX && p.Turned || part.Grain == model.GrainY && !p.Turned) {
			return fmt.Errorf("%s lies across the grain", p.Part)
		}
		if l.Free {
			outline := polygon(part, p)
			for k, o := range outlines {
				if by := apart(outline, o); by < gap.MM()-1e-7 {
					return fmt.Errorf("%s and %s are %v mm apart, want %v", p.Part, b.Placed[k].Part, by, gap)
				}
			}
			outlines = append(outlines, outline)
			continue
		}
		for _, o := range b.Placed[:i] {
			apart := func(a, b geom.Span) bool { return a.Hi+gap <= b.Lo || b.Hi+gap <= a.Lo }
			if !apart(p.At.X, o.At.X) && (l.Kind != model.Panel || !apart(p.At.Y, o.At.Y)) {
				return fmt.Errorf("%s and %s are less than a cut apart", p.Part, o.Part)
			}
		}
		rects = append(rects, p.At)
	}
	if l.Kind != model.Panel {
		return nil
	}
	offcut := polygon(&model.Part{Outline: geom.RectContour(b.Offcut)}, model.Placed{At: b.Offcut})
	for i, o := range outlines {
		if b.Offcut != (geom.Rect{}) && apart(o, offcut) < gap.MM()-1e-7 {
			return fmt.Errorf("the offcut %v lies on %s", b.Offcut, b.Placed[i].Part)
		}
	}
	for _, r := range rects {
		if r.Overlaps(b.Offcut) {
			return fmt.Errorf("the offcut %v lies on %v", b.Offcut, r)
		}
	}
	if b.Offcut != (geom.Rect{}) && !inside.Contains(b.Offcut) {
		return fmt.Errorf("the offcut %v is not on the sheet", b.Offcut)
	}
	if shop.Table.Free {
		if len(b.Cuts) > 0 {
			return fmt.Errorf("cuts in a free layout")
		}
		return nil
	}
	if !guillotine(rects) {
		return fmt.Errorf("cannot be cut from edge to edge")
	}
	if err := given(&b, inside, gap); err != nil {
		return err
	}
	if b.Offcut != (geom.Rect{}) {
		rects = append(rects, b.Offcut)
	}
	return sawn(inside, b.Cuts, rects, gap)
}

// given holds that each part is told with one cut, unless it is all of its sheet.
func given(b *model.Blank, whole geom.Rect, kerf Length) error {
	times := map[string]int{} // lookup only
	for _, c := range b.Cuts {
		for _, part := range b.Gives(c, kerf) {
			times[part]++
		}
	}
	for _, p := range b.Placed {
		if times[p.Part] != 1 && p.At != whole {
			return fmt.Errorf("%d cuts give %s", times[p.Part], p.Part)
		}
	}
	return nil
}

// sawn follows the cuts in their order. Each must part something that is there; at the end every
// piece must be free.
func sawn(whole geom.Rect, cuts []model.SawCut, rects []geom.Rect, kerf Length) error {
	there := []geom.Rect{whole}
	for n, c := range cuts {
		at := slices.Index(there, c.Of)
		if at < 0 {
			return fmt.Errorf("cut %d: %v is not there to be cut", n+1, c.Of)
		}
		near, far := c.Of, c.Of
		if c.Along {
			near.Y.Hi, far.Y.Lo = c.At, c.At+kerf
		} else {
			near.X.Hi, far.X.Lo = c.At, c.At+kerf
		}
		if near.X.Size() <= 0 || near.Y.Size() <= 0 || far.X.Size() <= -kerf || far.Y.Size() <= -kerf {
			return fmt.Errorf("cut %d misses %v", n+1, c.Of)
		}
		there = append(slices.Delete(there, at, at+1), near, far)
	}
	for _, r := range rects {
		if !slices.Contains(there, r) {
			return fmt.Errorf("%v is not cut free", r)
		}
	}
	return nil
}

// guillotine reports whether straight cuts, each through all of what it cuts,
// set every rectangle free.
func guillotine(rects []geom.Rect) bool {
	if len(rects) <= 1 {
		return true
	}
	for _, of := range []func(geom.Rect) geom.Span{
		func(r geom.Rect) geom.Span { return r.X }, func(r geom.Rect) geom.Span { return r.Y },
	} {
		sorted := slices.Clone(rects)
		slices.SortFunc(sorted, func(a, b geom.Rect) int { return cmp.Compare(of(a).Lo, of(b).Lo) })
		reach := of(sorted[0]).Hi
		for i, r := range sorted[1:] {
			if reach <= of(r).Lo {
				return guillotine(sorted[:i+1]) && guillotine(sorted[i+1:])
			}
			reach = max(reach, of(r).Hi)
		}
	}
	return false
}

// comesOut reports whether a part alone comes out of some stock of its name that is on sale.
func comesOut(p *model.Part, stock model.Stock, shop Shop) bool {
	x, y := p.Size()
	edge := shop.Saw.Trim
	if shop.Table.Free {
		edge = shop.Table.Margin
	}
	for _, s := range stock.Sheets {
		for _, size := range s.Sizes() {
			room := geom.R(0, 0, size.Length-2*edge, size.Width-2*edge)
			as, turned := room.Contains(geom.R(0, 0, x, y)), room.Contains(geom.R(0, 0, y, x))
			if s.Grain && p.Grain == model.GrainX {
				turned = false
			}
			if s.Grain && p.Grain == model.GrainY {
				as = false
			}
			if s.Name == p.Stock && (as || turned) {
				return true
			}
		}
	}
	for _, s := range stock.Sticks {
		long, wide := max(x, y), min(x, y)
		if p.Grain == model.GrainX {
			long, wide = x, y
		}
		if p.Grain == model.GrainY {
			long, wide = y, x
		}
		section := wide <= s.Width && p.Thickness <= s.Thickness || wide <= s.Thickness && p.Thickness <= s.Width
		reaches := func(o model.StickLength) bool { return long <= o.Length-2*s.Ends }
		if s.Name == p.Stock && section && slices.ContainsFunc(s.Lengths, reaches) {
			return true
		}
	}
	return false
}
