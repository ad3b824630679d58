package solve

import (
	"barwright/compile/geom"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// soundBox refuses sizes that no board could make.
func (s *solver) soundBox(c *carcass, b *lang.Block, hull geom.Box) bool {
	h, d, t := hull.Z.Hi, hull.V.Hi, c.board.t
	type need struct {
		have        length.Length
		size, parts string
		taken       length.Length
	}
	high, rear := need{h, "high", "toe kick, bottom and rear stretcher", c.toeHeight + t + max(c.stretcher, t)}, c.rearStretcher(hull).V.Hi
	strips := need{d, "deep", "back and stretchers", max(c.backFace(), rear) + c.stretcher}
	if c.full {
		high.parts, high.taken = "toe kick, bottom, rear stretcher and top", c.toeHeight+2*t+c.stretcher
		strips.parts, strips.taken = "back and rear stretcher", max(c.backFace(), rear)
	}
	needs := []need{
		{hull.U.Size(), "wide", "its two sides", 2 * t}, high,
		{d, "deep", "back, toe kick and setback", c.backFace() + t + c.toeSetback}, strips,
	}
	if c.stands == "base" {
		needs = append(needs, need{d, "deep", "the boards of its base, what they keep clear of the wall and the setback", c.baseRear + 2*t + c.toeSetback})
	}
	for i, n := range needs {
		switch {
		case n.have > n.taken:
			continue
		case i == 0:
			s.Findings.Errorf("box-too-small", b.Head, "", "%s is %s %s, but %s take up %s.",
				finding.Capital(b.Describe()), s.Show(n.have), n.size, n.parts, s.Show(n.taken)).
				Also(c.block.Head, "its carcass")
		default: // alike for all boxes of the run, and told once
			s.Findings.Errorf("box-too-small", c.block.Head, "", "Boxes of %s are to be %s %s, but %s take up %s.",
				c.block.Describe(), s.Show(n.have), n.size, n.parts, s.Show(n.taken)).
				Also(b.Head, "the first of them")
		}
		return false
	}
	return s.soundRecess(c) && s.soundBanding(c)
}

// soundRecess refuses a groove or a rabbet that would cut its board through, or
// that the back would not reach into. The rear edge must stay whole behind a
// groove.
func (s *solver) soundRecess(c *carcass) bool {
	name := "groove"
	if c.rabbeted {
		name = "rabbet"
	}
	switch at := c.block.Attr("back").Expr.At; {
	case !c.captured && !c.rabbeted:
		return true
	case c.groove >= c.board.t:
		s.Findings.Errorf("groove-too-deep", at, "a "+name+" of at most half the board, "+s.Show(c.board.t/2),
			"The %s for the back is %s deep, but its board is %s thick: nothing would be left behind it.", name, s.Show(c.groove), s.Show(c.board.t))
	case c.play >= 2*c.groove:
		s.Findings.Errorf("groove-too-loose", at, "less play, or a deeper "+name,
			"The %s for the back is %s deep and has %s of play: the back would not hold in it.", name, s.Show(c.groove), s.Show(c.play))
	case c.captured && c.inset <= c.play/2:
		s.Findings.Errorf("groove-meets-edge", at, "a larger inset",
			"The back stands %s from the rear edges, and its groove is %s wider on each side: it would run off the edge.", s.Show(c.inset), s.Show(c.play/2))
	default:
		return true
	}
	return false
}

// soundBanding refuses banding that would leave no board behind it.
func (s *solver) soundBanding(c *carcass) bool {
	most := min(c.board.t, c.toeSetback, c.stretcher)
	if c.band < most {
		return true
	}
	s.Findings.Errorf("banding-too-thick", c.at("banding"), "banding under "+s.Show(most)+" thick",
		"The banding is %s thick; it must be thinner than the board, the setback of the toe kick and the stretchers, the least of which has %s.", s.Show(c.band), s.Show(most)).
		Also(c.banding.Attr("thickness").Expr.At, "its thickness")
	return false
}
