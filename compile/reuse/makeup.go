package reuse

import "barwright/compile/model"

// mostMade is the share of a part that may be made up: a quarter.
const mostMade = 4

// mayMake reports whether what the piece lacks can be made up.
func (t *trial) mayMake() bool {
	part := t.new.part
	filled := 0.0
	for _, i := range t.lost {
		c := &t.placed.cuts[i]
		if c.kind == bore || c.kind == sink {
			continue
		}
		if part.Kind != model.Panel {
			return false
		}
		filled += c.within(t.new.body).area()
	}
	if filled > 0 && (filled*mostMade > shape{core: t.new.body}.area() || filled*mostMade > part.Outline.Area()) {
		return false
	}
	across := func(e model.Edge) Length { return t.edge[e].short + t.edge[e.Opposite()].short }
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
