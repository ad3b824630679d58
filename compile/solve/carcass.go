package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// carcass is how a box is made, in whole nanometres.
type carcass struct {
	block                 *lang.Block
	board, back           board
	captured, rabbeted    bool
	inset, groove, play   length.Length // of a back that is not applied
	full                  bool          // top
	stands                string        // "sides", "base", "legs"
	toeHeight, toeSetback length.Length
	baseRear              length.Length // from the wall to a base
	stretcher             length.Length
	banding               *lang.Block // on front edges; nil where there is none
	band                  length.Length
	screws                *lang.Block
}

// board is a sheet and its thickness.
type board struct {
	sheet *lang.Block
	t     length.Length
}

func (s *solver) boardOf(sheet *lang.Block) board { return board{sheet, s.Length(sheet, "thickness")} }

// cabinet is where a box of the model came from: its run and box by index,
// and its parts.
type cabinet struct {
	run, box    int
	block       *lang.Block
	first, last int      // parts, last exclusive
	stretcher   geom.Box // the rear one
}

func (s *solver) carcassOf(cab *lang.Block) carcass {
	b := s.Ref(cab, "carcass")
	if b == nil {
		b = s.Ref(cab.Parent, "carcass")
	}
	fixed := s.Field(b, "back", "fixed").Text
	c := carcass{
		block: b, board: s.boardOf(s.Ref(b, "board")), back: s.boardOf(s.FieldRef(b, "back", "board")),
		captured: fixed == "captured", rabbeted: fixed == "rabbeted",
		inset: s.FieldLength(b, "back", "inset"), groove: s.FieldLength(b, "back", "groove"), play: s.FieldLength(b, "back", "play"),
		full: s.Text(b, "top") == "full", stands: s.Text(b, "stands_on"),
		toeHeight: s.FieldLength(b, "toe_kick", "height"), toeSetback: s.FieldLength(b, "toe_kick", "setback"),
		baseRear:  s.FieldLength(b, "base", "rear"),
		stretcher: s.Length(b, "stretcher"), banding: s.Ref(b, "banding"), screws: s.Ref(b, "screws"),
	}
	if c.captured && c.inset == 0 {
		c.inset = c.board.t
	}
	if c.banding != nil {
		c.band = s.Length(c.banding, "thickness")
	}
	return c
}

// at is where the carcass says a thing, or its head where it leaves it out.
func (c *carcass) at(attr string) source.Range { return c.block.Said(attr) }

// backFace is how far the front face of the back stands from the rear edges.
func (c *carcass) backFace() length.Length {
	if c.captured {
		return c.inset + c.back.t
	}
	return c.back.t
}

// sidesFrom is where the sides begin: an applied back covers their rear edges.
func (c *carcass) sidesFrom() length.Length {
	if c.captured || c.rabbeted {
		return 0
	}
	return c.back.t
}

// bottomFrom is where the bottom and a full top begin: a captured back stands
// in their grooves, any other covers their rear edges.
func (c *carcass) bottomFrom() length.Length {
	if c.captured {
		return 0
	}
	return c.back.t
}

// foot is the height that the sides begin at.
func (c *carcass) foot() length.Length {
	if c.stands == "sides" {
		return 0
	}
	return c.toeHeight
}

// inner is what lies between the sides.
func (c *carcass) inner(hull geom.Box) geom.Span { return hull.U.Grow(-c.board.t) }

// inside is the clear space of a box.
func (c *carcass) inside(hull geom.Box) geom.Box {
	z := geom.Span{Lo: c.toeHeight + c.board.t, Hi: hull.Z.Hi}
	if c.full {
		z.Hi -= c.board.t
	}
	return geom.Box{U: c.inner(hull), V: geom.Span{Lo: c.backFace(), Hi: hull.V.Hi}, Z: z}
}

// line is the front face of the toe kick.
func (c *carcass) line(hull geom.Box) length.Length { return hull.V.Hi - c.toeSetback }

// stretcherBehind reports whether the rear stretcher stands behind the back.
func (c *carcass) stretcherBehind() bool { return c.captured && c.inset >= c.board.t }

// rearStretcher stands on edge, under a full top, behind a captured back where
// there is room, otherwise before the back.
func (c *carcass) rearStretcher(hull geom.Box) geom.Box {
	v, top := geom.Span{Lo: c.backFace(), Hi: c.backFace() + c.board.t}, c.inside(hull).Z.Hi
	if c.stretcherBehind() {
		v = geom.Span{Lo: c.inset - c.board.t, Hi: c.inset}
	}
	return geom.Box{U: c.inner(hull), V: v, Z: geom.Span{Lo: top - c.stretcher, Hi: top}}
}

// frontStretcher is laid flat where no full top is.
func (c *carcass) frontStretcher(hull geom.Box) geom.Box {
	return geom.Box{
		U: c.inner(hull), V: geom.Span{Lo: hull.V.Hi - c.stretcher, Hi: hull.V.Hi},
		Z: geom.Span{Lo: hull.Z.Hi - c.board.t, Hi: hull.Z.Hi},
	}
}

// edged puts the banding of front edges on a piece.
func (c *carcass) edged(p piece) piece {
	p.banding, p.banded = c.banding, []geom.Dir{front}
	return p
}

// cabinet adds a box and its parts.
func (s *solver) cabinet(run *model.Run, b *lang.Block, hull geom.Box) {
	c := s.carcassOf(b)
	if !s.soundBox(&c, b, hull) {
		return
	}
	from := len(s.m.Parts)
	s.sides(&c, run, b, hull)
	s.bottomAndTop(&c, run, b, hull)
	s.backPanel(&c, run, b, hull)
	s.stretchers(&c, run, b, hull)
	box := model.Box{
		Kind: model.Cabinet, Name: b.Name, Hull: hull, Inside: c.inside(hull),
		ToeHeight: c.toeHeight, ToeSetback: c.toeSetback, Why: why(b),
	}
	s.underBox(&c, run, b, &box)
	s.boxBears(&c, run, &box)
	s.interior(&c, run, b, &box)
	last := len(s.m.Parts) // nothing is cut out of what closes the box
	s.fronts(&c, run, b, &box, from)
	s.cabinets = append(s.cabinets, cabinet{len(s.m.Runs), len(run.Boxes), b, from, last, c.rearStretcher(hull)})
	run.Boxes = append(run.Boxes, box)
}

// sides reach the floor with the recess for the feet cut out, or end at its
// height. Both faces are good where one sees the outer one too.
func (s *solver) sides(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	t := c.board.t
	box := geom.Box{V: geom.Span{Lo: c.sidesFrom(), Hi: hull.V.Hi}, Z: geom.Span{Lo: c.foot(), Hi: hull.Z.Hi}}
	toe := geom.Box{U: hull.U, V: geom.Span{Lo: c.line(hull), Hi: hull.V.Hi}, Z: geom.Span{Hi: c.toeHeight}}
	for _, side := range []struct {
		u    geom.Span
		end  model.End
		rear model.Edge
		p    piece
	}{
		{geom.Span{Lo: hull.U.Lo, Hi: hull.U.Lo + t}, model.Left, model.RightEdge, piece{id: "side-left", code: "L", name: "left side", out: rightward}},
		{geom.Span{Lo: hull.U.Hi - t, Hi: hull.U.Hi}, model.Right, model.LeftEdge, piece{id: "side-right", code: "R", name: "right side", out: leftward}},
	} {
		side.p.face, side.p.grain, side.p.good, box.U = "inside", model.GrainY, model.GoodDrawn, side.u
		if s.seen(run, b, hull, side.end) {
			side.p.good = model.GoodBoth
		}
		if c.stands == "sides" {
			side.p.cuts = []geom.Box{toe}
		}
		part := s.panel(b, c.board.sheet, run.Frame, box, c.edged(side.p))
		switch {
		case c.captured && c.full:
			c.letIn(part, geom.Box{U: side.u, Z: c.heldBack(hull, c.groove)})
		case c.captured:
			c.letIn(part, geom.Box{U: side.u, Z: c.heldBack(hull, c.groove)}, model.Top)
		case c.rabbeted && c.stands == "sides":
			c.letIn(part, geom.Box{U: side.u, Z: geom.Span{Lo: c.toeHeight, Hi: hull.Z.Hi}}, side.rear, model.Top)
		case c.rabbeted:
			c.letIn(part, geom.Box{U: side.u, Z: box.Z}, side.rear, model.Top, model.Bottom)
		}
	}
}

// seen reports whether somebody sees an end of a box: it stands at a free end
// of its run, and no panel covers it.
func (s *solver) seen(run *model.Run, b *lang.Block, hull geom.Box, end model.End) bool {
	return run.FreeAt(end) && s.EndPanelAt(b.Parent, end.String()) == nil && (end == model.Left && hull.U.Lo == 0 || end == model.Right && hull.U.Hi == run.Length)
}

func (s *solver) bottomAndTop(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	t := c.board.t
	box := geom.Box{U: c.inner(hull), V: geom.Span{Lo: c.bottomFrom(), Hi: hull.V.Hi}, Z: geom.Span{Lo: c.toeHeight, Hi: c.toeHeight + t}}
	across := func(p piece) {
		part := s.panel(b, c.board.sheet, run.Frame, box, c.edged(p))
		if c.captured {
			c.letIn(part, box, model.LeftEdge, model.RightEdge)
		}
	}
	across(piece{id: "bottom", code: "BT", name: "bottom", out: above, face: "top", grain: model.GrainX, good: model.GoodDrawn})
	if c.full {
		box.Z = geom.Span{Lo: hull.Z.Hi - t, Hi: hull.Z.Hi}
		across(piece{id: "top", code: "TP", name: "full top", out: below, face: "underside", grain: model.GrainX, good: model.GoodDrawn})
	}
}

// heldBack is how high a captured back would be if it went as deep as that into
// the bottom and a full top.
func (c *carcass) heldBack(hull geom.Box, deep length.Length) geom.Span {
	z := c.inside(hull).Z
	z.Lo -= deep
	if c.full {
		z.Hi += deep
	}
	return z
}

// letIn cuts the recess for the back into a board: a groove with the play round
// a captured one, a rabbet as wide as a rabbeted one is thick.
func (c *carcass) letIn(part *model.Part, box geom.Box, open ...model.Edge) {
	kind := "rabbet"
	box.V = geom.Span{Hi: c.back.t}
	if c.captured {
		kind = "groove"
		box.V = geom.Span{Lo: c.inset - c.play/2, Hi: c.inset + c.back.t + (c.play - c.play/2)}
	}
	face, _ := part.Placement.Local(box)
	part.Recesses = append(part.Recesses, model.Recess{
		ID: part.ID + "/" + kind, Name: kind + " for the back", Shape: geom.RectContour(face),
		Depth: c.groove, Open: open, Why: why(c.block),
	})
}

// backPanel covers the rear from the underside of the bottom to the top edge,
// between the rabbets of the sides where it has them; or it stands in its
// grooves. Half the play is left at each edge that a recess holds.
func (s *solver) backPanel(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	box := geom.Box{U: hull.U, V: geom.Span{Hi: c.back.t}, Z: geom.Span{Lo: c.toeHeight, Hi: hull.Z.Hi}}
	into := c.groove - c.play/2
	if c.captured || c.rabbeted {
		box.U = c.inner(hull).Grow(into)
	}
	if c.captured {
		box.V, box.Z = geom.Span{Lo: c.inset, Hi: c.inset + c.back.t}, c.heldBack(hull, into)
	}
	s.panel(b, c.back.sheet, run.Frame, box,
		piece{id: "back", code: "BK", name: "back", out: front, face: "inside", grain: model.GrainY, good: model.GoodDrawn})
}

// stretchers tie the sides at the top. The rear one takes the wall screws.
func (s *solver) stretchers(c *carcass, run *model.Run, b *lang.Block, hull geom.Box) {
	if !c.full {
		s.panel(b, c.board.sheet, run.Frame, c.frontStretcher(hull),
			c.edged(piece{id: "stretcher-front", code: "SF", name: "front stretcher", out: above, face: "top", grain: model.GrainX, good: model.GoodFar}))
	}
	rear := piece{id: "stretcher-rear", code: "SR", name: "rear stretcher", out: front, face: "front", grain: model.GrainX, good: model.GoodDrawn}
	if c.stretcherBehind() {
		rear.good = model.GoodNone
	}
	s.panel(b, c.board.sheet, run.Frame, c.rearStretcher(hull), rear)
}
