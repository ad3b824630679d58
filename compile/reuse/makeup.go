package reuse

import "barwright/compile/model"

// mostMade is the share of a part that may be made up: a quarter.
const mostMade = 4

// mayMake reports whether what the piece lacks can be made up.
func (t *trial) mayMake() bool {
	part := t.new.part
	made := 0.0
	for _, i := range t.lost {
		switch c := &t.placed.cuts[i]; c.kind {
		case bore, sink:
			if part.Kind != model.Panel && part.Kind != model.Lumber {
				return false
			}
		default:
			if part.Kind != model.Panel {
				return false
			}
			in := c.bounds().Intersect(t.new.body)
			made += float64(in.X.Size().MM() * in.Y.Size().MM())
		}
	}
	if made > 0 && (made*mostMade > shape{core: t.new.body}.area() || made*mostMade > part.Outline.Area()) {
		return false
	}
	across := func(e model.Edge) Length { return max(t.short[e], 0) + max(t.short[e.Opposite()], 0) }
	x, y := across(model.LeftEdge), across(model.Bottom)
	return x == 0 && y == 0 || t.pair.strips(part, x, y)
}

// strips reports whether a part may be made up by strips that lack so much both ways.
func (p *Pair) strips(part *model.Part, x, y Length) bool {
	wide, high := part.Size()
	enough := func(missing, size Length) bool { return missing <= p.within || mostMade*missing <= size }
	return p.covers(part) && enough(x, wide) && enough(y, high)
}

// covers reports whether a part only covers what stands behind it. The toe kick of a
// base bears the cabinet.
func (p *Pair) covers(part *model.Part) bool {
	if part.Kind != model.Panel {
		return false
	}
	switch part.BlockKind() {
	case "skin", "corner", "end_panel", "filler":
		return true
	case "cabinet":
		return part.Is("cabinet", "back") || part.Is("cabinet", "false-front") || part.Is("cabinet", "toe-kick") && !p.bases[part.Block()]
	}
	return false
}
