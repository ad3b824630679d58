package layout

import (
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// check tells what is wrong with layouts. It knows the rules of cutting and
// nothing of how the layouts were found.
func check(parts []model.Part, stock model.Stock, saw model.Saw, layouts []model.Layout, misfits []Misfit) error {
	left := map[string]*model.Part{}
	for i := range parts {
		left[parts[i].ID] = &parts[i]
	}
	for _, m := range misfits {
		p := left[m.Part]
		if p == nil || p.Stock != m.Stock {
			return fmt.Errorf("misfit %v is no part, or one twice", m)
		}
		if comesOut(p, stock, saw) {
			return fmt.Errorf("misfit %v fits", m)
		}
		delete(left, m.Part)
	}
	for _, l := range layouts {
		if l.Bought != len(l.Blanks) || l.AtLeast > l.Bought || l.AtLeast < 1 {
			return fmt.Errorf("%s: %d bought, at least %d, %d blanks", l.Stock, l.Bought, l.AtLeast, len(l.Blanks))
		}
		pieces, used, all := 0, 0.0, 0.0
		for i, b := range l.Blanks {
			if err := checkBlank(b, l, left, stock, saw); err != nil {
				return fmt.Errorf("%s %d: %w", l.Stock, i, err)
			}
			across := max(b.Width, 1)
			all += b.Length.MM() * across.MM()
			for _, p := range b.Placed {
				pieces++
				used += p.At.X.Size().MM() * max(p.At.Y.Size(), 1).MM()
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

func checkBlank(b model.Blank, l model.Layout, left map[string]*model.Part, stock model.Stock, saw model.Saw) error {
	inside := geom.R(0, 0, b.Length, 0)
	grain := false
	if l.Kind == model.Panel {
		s := stock.Sheets[slices.IndexFunc(stock.Sheets, func(s model.Sheet) bool { return s.Name == l.Stock })]
		if b.Length != s.Length || b.Width != s.Width {
			return fmt.Errorf("not the size on sale: %v", b)
		}
		inside = geom.R(0, 0, s.Length, s.Width).Grow(-saw.Trim)
		grain = s.Grain
	} else {
		s := stock.Sticks[slices.IndexFunc(stock.Sticks, func(s model.Stick) bool { return s.Name == l.Stock })]
		onSale := func(o model.StickLength) bool { return o.Length == b.Length }
		if !slices.ContainsFunc(s.Lengths, onSale) || b.Width != 0 || b.Length > l.Length {
			return fmt.Errorf("not a length on sale: %v", b)
		}
	}
	if len(b.Placed) == 0 {
		return fmt.Errorf("bought for nothing")
	}
	var rects []geom.Rect
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
		for _, o := range b.Placed[:i] {
			apart := func(a, b geom.Span) bool { return a.Hi+saw.Kerf <= b.Lo || b.Hi+saw.Kerf <= a.Lo }
			if !apart(p.At.X, o.At.X) && (l.Kind != model.Panel || !apart(p.At.Y, o.At.Y)) {
				return fmt.Errorf("%s and %s are less than a cut apart", p.Part, o.Part)
			}
		}
		rects = append(rects, p.At)
	}
	if l.Kind == model.Panel && !guillotine(rects) {
		return fmt.Errorf("cannot be cut from edge to edge")
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
		slices.SortFunc(sorted, func(a, b geom.Rect) int { return int(of(a).Lo - of(b).Lo) })
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

// comesOut reports whether a part alone comes out of some stock of its name.
func comesOut(p *model.Part, stock model.Stock, saw model.Saw) bool {
	x, y := p.Size()
	for _, s := range stock.Sheets {
		room := geom.R(0, 0, s.Length-2*saw.Trim, s.Width-2*saw.Trim)
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
	for _, s := range stock.Sticks {
		long, wide := max(x, y), min(x, y)
		if p.Grain == model.GrainX {
			long, wide = x, y
		}
		if p.Grain == model.GrainY {
			long, wide = y, x
		}
		section := wide <= s.Width && p.Thickness <= s.Thickness || wide <= s.Thickness && p.Thickness <= s.Width
		reaches := func(o model.StickLength) bool { return long <= o.Length }
		if s.Name == p.Stock && section && slices.ContainsFunc(s.Lengths, reaches) {
			return true
		}
	}
	return false
}
