package solve_test

import (
	"slices"
	"strings"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// solids is a part as boxes of its frame: its outline less its recesses, and
// its banding. The outline must have square corners.
func solids(p *model.Part) []geom.Box {
	xs, ys := []length.Length{}, []length.Length{}
	for _, v := range p.Outline {
		xs, ys = append(xs, v.X), append(ys, v.Y)
	}
	for _, r := range p.Recesses {
		b := r.Shape.Bounds()
		xs, ys = append(xs, b.X.Lo, b.X.Hi), append(ys, b.Y.Lo, b.Y.Hi)
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	var out []geom.Box
	for i := range xs[1:] {
		for j := range ys[1:] {
			cell := geom.R(xs[i], ys[j], xs[i+1], ys[j+1])
			if !holds(p.Outline, cell) {
				continue
			}
			depth := span{Hi: p.Thickness}
			for _, r := range p.Recesses {
				if r.Shape.Bounds().Contains(cell) {
					depth.Lo = max(depth.Lo, r.Depth)
				}
			}
			out = append(out, inFrame(p, cell, depth))
		}
	}
	for _, band := range p.Bands {
		for i, v := range p.Outline {
			if strip, ok := stripOn(p, v.Point, p.Outline[(i+1)%len(p.Outline)].Point, band); ok {
				out = append(out, inFrame(p, strip, span{Hi: p.Thickness}))
			}
		}
	}
	return out
}

// holds reports whether the middle of a cell is inside an outline: an odd
// number of its upright edges lie to the right.
func holds(c geom.Contour, cell geom.Rect) bool {
	x, y, inside := cell.X.Lo+cell.X.Hi, cell.Y.Lo+cell.Y.Hi, false // doubled
	for i, v := range c {
		w := c[(i+1)%len(c)]
		if lo, hi := min(v.Y, w.Y), max(v.Y, w.Y); v.X == w.X && 2*v.X > x && 2*lo < y && y < 2*hi {
			inside = !inside
		}
	}
	return inside
}

// stripOn is the banding on one edge of an outline, where that lies on the edge
// of the blank that is banded.
func stripOn(p *model.Part, a, b geom.Point, band model.Band) (geom.Rect, bool) {
	blank := p.Outline.Bounds()
	r := geom.R(min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y))
	switch t := band.Thickness; {
	case band.Edge == model.LeftEdge && r.X.Hi == blank.X.Lo:
		r.X.Lo -= t
	case band.Edge == model.RightEdge && r.X.Lo == blank.X.Hi:
		r.X.Hi += t
	case band.Edge == model.Bottom && r.Y.Hi == blank.Y.Lo:
		r.Y.Lo -= t
	case band.Edge == model.Top && r.Y.Lo == blank.Y.Hi:
		r.Y.Hi += t
	default:
		return r, false
	}
	return r, true
}

// inFrame is where a piece of a part's face stands, some way below that face.
func inFrame(p *model.Part, face geom.Rect, depth span) geom.Box {
	at, box := p.Placement, p.Placement.Box
	for _, side := range []struct {
		way geom.Dir
		s   span
	}{{at.X, face.X}, {at.Y, face.Y}, {geom.Dir{Axis: at.Out.Axis, Neg: !at.Out.Neg}, depth}} {
		whole := at.Box.Along(side.way.Axis)
		if side.way.Neg {
			box = box.With(side.way.Axis, span{Lo: whole.Hi - side.s.Hi, Hi: whole.Hi - side.s.Lo})
		} else {
			box = box.With(side.way.Axis, side.s.Shift(whole.Lo))
		}
	}
	return box
}

// checkTogether checks that parts, their recesses cut and their edges banded,
// fill their hull from face to face, do not run into one another anywhere, and
// touch where the construction says, and nowhere else.
func checkTogether(t *rapid.T, d *drawn, b *drawnBox, hull geom.Box, parts []*model.Part) {
	whole := make([][]geom.Box, len(parts))
	all := geom.Box{}
	for i, p := range parts {
		whole[i] = solids(p)
		if i == 0 {
			all = whole[0][0]
		}
		for _, s := range whole[i] {
			all = all.Union(s)
		}
	}
	if all != hull {
		t.Fatalf("the parts reach %v, the hull is %v", all, hull)
	}
	want := d.joints(b, parts)
	for i := range parts {
		for j := range parts[:i] {
			joint := jointOf(suffix(parts[i]), suffix(parts[j]))
			have := false
			for _, x := range whole[i] {
				for _, y := range whole[j] {
					if x.Overlaps(y) {
						t.Fatalf("%s: %v and %v run into one another", joint, x, y)
					}
					have = have || touch(x, y)
				}
			}
			if have != want[joint] {
				t.Fatalf("%s: they touch: %v, they should: %v", joint, have, want[joint])
			}
			delete(want, joint)
		}
	}
	for joint, should := range want {
		if should {
			t.Fatalf("%s: one of them is missing", joint)
		}
	}
}

// touch reports whether two boxes share some of a face.
func touch(a, b geom.Box) bool {
	meet, over := 0, 0
	for _, axis := range []geom.Axis{geom.U, geom.V, geom.Z} {
		switch x, y := a.Along(axis), b.Along(axis); {
		case x.Overlaps(y):
			over++
		case x.Hi == y.Lo || y.Hi == x.Lo:
			meet++
		}
	}
	return meet == 1 && over == 2
}

func suffix(p *model.Part) string { return p.ID[strings.Index(p.ID, "/")+1:] }

func jointOf(a, b string) string { return min(a, b) + " and " + max(a, b) }

// joints lists what should touch what in a cabinet. A captured back with play
// floats in its grooves.
func (d *drawn) joints(b *drawnBox, parts []*model.Part) map[string]bool {
	out := map[string]bool{}
	say := func(yes bool, a string, bs ...string) {
		for _, b := range bs {
			out[jointOf(a, b)] = yes
		}
	}
	rear, sidesFrom, bottomFrom := d.baseRear, length.Length(0), d.back
	if d.fixed == "applied" {
		sidesFrom = d.back
	}
	if d.captured {
		bottomFrom = 0
	}
	sides, tie := []string{"side-left", "side-right"}, "stretcher-front"
	if d.top == "full" {
		tie = "top"
		say(true, tie, "stretcher-rear")
		say(!d.captured || d.play == 0, tie, "back")
	}
	for _, s := range sides {
		say(true, s, "bottom", "stretcher-rear", "toe-kick", tie)
		say(!d.captured || d.play == 0, s, "back")
	}
	say(!d.captured || d.play == 0, "bottom", "back")
	say(true, "bottom", "toe-kick")
	say(true, "stretcher-rear", "back")
	if d.stands == "base" {
		say(rear+d.board > sidesFrom, "base-rear", sides...)
		say(rear+d.board > bottomFrom, "base-rear", "bottom")
		say(!d.captured && rear < d.back, "base-rear", "back")
		say(true, "base-left", "side-left")
		say(true, "base-right", "side-right")
		for _, p := range parts {
			if id := suffix(p); strings.HasPrefix(id, "base-") && id != "base-rear" {
				say(true, id, "base-rear", "toe-kick")
				say(!d.captured && rear+d.board < d.back, id, "back")
				say(strings.HasPrefix(id, "base-cross"), id, "bottom")
			}
		}
	}
	for i := range b.dividers {
		id := numbered("divider", i)
		say(true, id, "bottom", "back", tie)
		say(!d.stretcherBehind(), id, "stretcher-rear")
	}
	for i := range (len(b.dividers) + 1) * len(b.fixed) {
		left, right := b.beside(i / len(b.fixed))
		say(true, numbered("fixed-shelf", i), left, right, "back")
	}
	return out
}

// beside names the boards on the left and the right of a space.
func (b *drawnBox) beside(space int) (left, right string) {
	left, right = "side-left", "side-right"
	if space > 0 {
		left = numbered("divider", space-1)
	}
	if space < len(b.dividers) {
		right = numbered("divider", space)
	}
	return left, right
}
