package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// carcass is how a box is made, in whole nanometres.
type carcass struct {
	block                 *lang.Block
	board, back           board
	captured              bool
	inset, groove, play   length.Length // of a captured back
	toeHeight, toeSetback length.Length
	stretcher             length.Length
}

// board is a sheet and its thickness.
type board struct {
	sheet *lang.Block
	t     length.Length
}

func (s *solver) boardOf(sheet *lang.Block) board { return board{sheet, s.length(sheet, "thickness")} }

// cabinet is where a box of the model came from: its run and box by index,
// and its parts.
type cabinet struct {
	run, box    int
	block       *lang.Block
	first, last int      // parts, last exclusive
	stretcher   geom.Box // the rear one
}

func (s *solver) carcassOf(cab *lang.Block) carcass {
	b := s.ref(cab, "carcass")
	if b == nil {
		b = s.ref(cab.Parent, "carcass")
	}
	c := carcass{
		block: b, board: s.boardOf(s.ref(b, "board")), back: s.boardOf(s.fieldRef(b, "back", "board")),
		captured: s.field(b, "back", "fixed").Text == "captured",
		inset:    s.fieldLength(b, "back", "inset"), groove: s.fieldLength(b, "back", "groove"), play: s.fieldLength(b, "back", "play"),
		toeHeight: s.fieldLength(b, "toe_kick", "height"), toeSetback: s.fieldLength(b, "toe_kick", "setback"),
		stretcher: s.length(b, "stretcher"),
	}
	if c.captured && c.inset == 0 {
		c.inset = c.board.t
	}
	return c
}

// backFace is how far the front face of the back stands from the rear edges.
func (c *carcass) backFace() length.Length {
	if c.captured {
		return c.inset + c.back.t
	}
	return c.back.t
}

// rear is where the sides and the bottom begin: behind a captured back they
// reach the rear edge, an applied back covers them.
func (c *carcass) rear() length.Length {
	if c.captured {
		return 0
	}
	return c.back.t
}

// rearStretcher stands on edge behind a captured back where there is room,
// otherwise before the back.
func (c *carcass) rearStretcher(inner geom.Span, top length.Length) geom.Box {
	v := geom.Span{Lo: c.backFace(), Hi: c.backFace() + c.board.t}
	if c.captured && c.inset >= c.board.t {
		v = geom.Span{Lo: c.inset - c.board.t, Hi: c.inset}
	}
	return geom.Box{U: inner, V: v, Z: geom.Span{Lo: top - c.stretcher, Hi: top}}
}

// cabinet adds a box and its parts: two sides with the recess for the feet cut
// out, a bottom, a back, a stretcher laid flat in front, one on edge behind,
// and the toe kick between the sides.
func (s *solver) cabinet(run *model.Run, b *lang.Block, hull geom.Box) {
	c := s.carcassOf(b)
	if !s.soundBox(&c, b, hull) {
		return
	}
	t, inner := c.board.t, geom.Span{Lo: hull.U.Lo + c.board.t, Hi: hull.U.Hi - c.board.t}
	from := len(s.m.Parts)
	s.sides(&c, run, b, hull)
	s.bottom(&c, run, b, hull, inner)
	s.backPanel(&c, run, b, hull)
	s.stretchers(&c, run, b, hull, inner)
	kick := hull.V.Hi - c.toeSetback
	s.panel(b, c.board.sheet, run.Frame, geom.Box{U: inner, V: geom.Span{Lo: kick - t, Hi: kick}, Z: geom.Span{Hi: c.toeHeight}},
		piece{id: "toe-kick", code: "TK", name: "toe kick", out: front, face: "front", grain: model.GrainX})
	box := model.Box{
		Kind: model.Cabinet, Name: b.Name, Hull: hull, ToeHeight: c.toeHeight, ToeSetback: c.toeSetback, Why: why(b),
		Inside: geom.Box{U: inner, V: geom.Span{Lo: c.backFace(), Hi: hull.V.Hi}, Z: geom.Span{Lo: c.toeHeight + t, Hi: hull.Z.Hi}},
	}
	s.interior(&c, run, b, &box)
	last := len(s.m.Parts) // nothing is cut out of what closes the box
	s.fronts(&c, run, b, &box)
	s.cabinets = append(s.cabinets, cabinet{len(s.m.Runs), len(run.Boxes), b, from, last, c.rearStretcher(inner, hull.Z.Hi)})
	run.Boxes = append(run.Boxes, box)
}

func (s *solver) sides(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	t, v := c.board.t, geom.Span{Lo: c.rear(), Hi: hull.V.Hi}
	toe := geom.Box{U: hull.U, V: geom.Span{Lo: hull.V.Hi - c.toeSetback, Hi: hull.V.Hi}, Z: geom.Span{Hi: c.toeHeight}}
	for _, side := range []struct {
		u geom.Span
		p piece
	}{
		{geom.Span{Lo: hull.U.Lo, Hi: hull.U.Lo + t}, piece{id: "side-left", code: "L", name: "left side", out: geom.Dir{Axis: geom.U}}},
		{geom.Span{Lo: hull.U.Hi - t, Hi: hull.U.Hi}, piece{id: "side-right", code: "R", name: "right side", out: geom.Dir{Axis: geom.U, Neg: true}}},
	} {
		side.p.face, side.p.grain, side.p.cuts = "inside", model.GrainY, []geom.Box{toe}
		part := s.panel(b, c.board.sheet, run.Frame, geom.Box{U: side.u, V: v, Z: hull.Z}, side.p)
		s.groove(c, part, geom.Box{U: side.u, Z: geom.Span{Lo: c.toeHeight + t - c.groove, Hi: hull.Z.Hi}}, model.Top)
	}
}

func (s *solver) bottom(c *carcass, run *model.Run, b *lang.Block, hull geom.Box, inner geom.Span) {
	box := geom.Box{U: inner, V: geom.Span{Lo: c.rear(), Hi: hull.V.Hi}, Z: geom.Span{Lo: c.toeHeight, Hi: c.toeHeight + c.board.t}}
	part := s.panel(b, c.board.sheet, run.Frame, box,
		piece{id: "bottom", code: "BT", name: "bottom", out: above, face: "top", grain: model.GrainX})
	s.groove(c, part, box, model.LeftEdge, model.RightEdge)
}

// groove lets a captured back into a side or the bottom.
func (s *solver) groove(c *carcass, part *model.Part, box geom.Box, open ...model.Edge) {
	if !c.captured {
		return
	}
	box.V = geom.Span{Lo: c.inset - c.play/2, Hi: c.inset + c.back.t + (c.play - c.play/2)}
	face, _ := part.Placement.Local(box)
	part.Recesses = append(part.Recesses, model.Recess{
		ID: part.ID + "/groove", Name: "groove for the back", Shape: geom.RectContour(face),
		Depth: c.groove, Open: open, Why: why(c.block),
	})
}

// backPanel covers the rear from the underside of the bottom to the top edge,
// or stands in its grooves with half the play at each edge.
func (s *solver) backPanel(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	box := geom.Box{U: hull.U, V: geom.Span{Hi: c.back.t}, Z: geom.Span{Lo: c.toeHeight, Hi: hull.Z.Hi}}
	if c.captured {
		into := c.groove - c.play/2
		box = geom.Box{
			U: geom.Span{Lo: hull.U.Lo + c.board.t - into, Hi: hull.U.Hi - c.board.t + into},
			V: geom.Span{Lo: c.inset, Hi: c.inset + c.back.t},
			Z: geom.Span{Lo: c.toeHeight + c.board.t - into, Hi: hull.Z.Hi},
		}
	}
	s.panel(b, c.back.sheet, run.Frame, box,
		piece{id: "back", code: "BK", name: "back", out: front, face: "inside", grain: model.GrainY})
}

// stretchers tie the sides at the top. The rear one takes the wall screws.
func (s *solver) stretchers(c *carcass, run *model.Run, b *lang.Block, hull geom.Box, inner geom.Span) {
	t, top := c.board.t, hull.Z.Hi
	s.panel(b, c.board.sheet, run.Frame, geom.Box{U: inner, V: geom.Span{Lo: hull.V.Hi - c.stretcher, Hi: hull.V.Hi}, Z: geom.Span{Lo: top - t, Hi: top}},
		piece{id: "stretcher-front", code: "SF", name: "front stretcher", out: above, face: "top", grain: model.GrainX})
	s.panel(b, c.board.sheet, run.Frame, c.rearStretcher(inner, top),
		piece{id: "stretcher-rear", code: "SR", name: "rear stretcher", out: front, face: "front", grain: model.GrainX})
}

// soundBox refuses sizes that no board could make.
func (s *solver) soundBox(c *carcass, b *lang.Block, hull geom.Box) bool {
	h, d, t := hull.Z.Hi, hull.V.Hi, c.board.t
	for _, need := range []struct {
		have        length.Length
		size, parts string
		taken       length.Length
	}{
		{hull.U.Size(), "wide", "its two sides", 2 * t},
		{h, "high", "toe kick, bottom and rear stretcher", c.toeHeight + t + c.stretcher},
		{d, "deep", "back, toe kick and setback", c.backFace() + t + c.toeSetback},
		{d, "deep", "back and stretchers", max(c.backFace(), c.rearStretcher(hull.U, h).V.Hi) + c.stretcher},
	} {
		if need.have <= need.taken {
			s.findings.Errorf("box-too-small", b.Head, "", "%s is %s %s, but %s take up %s.",
				finding.Capital(b.Describe()), s.show(need.have), need.size, need.parts, s.show(need.taken)).
				Also(c.block.Head, "its carcass")
			return false
		}
	}
	return !c.captured || s.soundGroove(c)
}

// soundGroove refuses a groove that would cut its board through, or that the
// back would not reach into. The rear edge must stay whole behind it.
func (s *solver) soundGroove(c *carcass) bool {
	at := c.block.Attr("back").Expr.At
	switch {
	case c.groove >= c.board.t:
		s.findings.Errorf("groove-too-deep", at, "a groove of at most half the board, "+s.show(c.board.t/2),
			"The groove for the back is %s deep, but its board is %s thick: nothing would be left behind it.", s.show(c.groove), s.show(c.board.t))
	case c.play >= 2*c.groove:
		s.findings.Errorf("groove-too-loose", at, "less play, or a deeper groove",
			"The groove for the back is %s deep and has %s of play: the back would not hold in it.", s.show(c.groove), s.show(c.play))
	case c.inset <= c.play/2:
		s.findings.Errorf("groove-meets-edge", at, "a larger inset",
			"The back stands %s from the rear edges, and its groove is %s wider on each side: it would run off the edge.", s.show(c.inset), s.show(c.play/2))
	default:
		return true
	}
	return false
}
