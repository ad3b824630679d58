package solve

import (
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/length"
)

// underBox makes what lies between the floor and the bottom: the toe kick, and
// the base or the legs of a box whose sides end above.
func (s *solver) underBox(c *carcass, run *model.Run, b *lang.Block, box *model.Box) {
	line, t := c.line(box.Hull), c.board.t
	kick := geom.Box{U: box.Hull.U, V: geom.Span{Lo: line - t, Hi: line}, Z: geom.Span{Hi: c.toeHeight}}
	if c.stands == "sides" {
		kick.U = c.inner(box.Hull)
	}
	s.panel(b, c.board.sheet, run.Frame, kick,
		piece{id: "toe-kick", code: "TK", name: "toe kick", out: front, face: "front", grain: model.GrainX, good: model.GoodDrawn})
	switch c.stands {
	case "base":
		s.base(c, run, b, kick)
	case "legs":
		s.legs(c, b, box)
	}
}

// base is a frame as long as the box is wide: the toe kick in front, a board at
// the rear, end pieces and crosspieces between the two.
func (s *solver) base(c *carcass, run *model.Run, b *lang.Block, kick geom.Box) {
	t := c.board.t
	rear := kick
	rear.V = geom.Span{Lo: c.baseRear, Hi: c.baseRear + t}
	s.panel(b, c.board.sheet, run.Frame, rear, piece{id: "base-rear", code: "BB", name: "rear board of the base", out: front, face: "front", grain: model.GrainX})
	places := s.crosspieces(c, kick.U)
	switch {
	case places == nil:
		s.tooMany(c.at("base"), int(kick.U.Size()/s.FieldLength(c.block, "base", "apart")), "crosspieces")
	case places[1]-places[0] < t:
		s.Findings.Errorf("crosspieces-meet", c.at("base"), "base = { apart = … } of more than "+s.Show(2*t),
			"The crosspieces of the base are %s thick, but from centre to centre they would stand no more than %s apart.", s.Show(t), s.Show(s.FieldLength(c.block, "base", "apart"))).
			Also(b.Head, "under this cabinet")
		return
	}
	for i, u := range places {
		p := piece{id: "base-cross-" + strconv.Itoa(i), code: "BX" + strconv.Itoa(i), name: "crosspiece of the base"}
		switch i {
		case 0:
			p = piece{id: "base-left", code: "BL", name: "left end of the base"}
			if s.seen(run, b, kick, model.Left) {
				p.good = model.GoodFar
			}
		case len(places) - 1:
			p = piece{id: "base-right", code: "BR", name: "right end of the base"}
			if s.seen(run, b, kick, model.Right) {
				p.good = model.GoodDrawn
			}
		}
		p.out, p.face, p.grain = rightward, "right", model.GrainX
		s.panel(b, c.board.sheet, run.Frame, geom.Box{U: geom.Span{Lo: u, Hi: u + t}, V: geom.Span{Lo: rear.V.Hi, Hi: kick.V.Lo}, Z: kick.Z}, p)
	}
}

// crosspieces is where the left faces of a base's end pieces and crosspieces
// are; nothing where that would be too many.
func (s *solver) crosspieces(c *carcass, u geom.Span) []length.Length {
	u.Hi -= c.board.t
	return evenly(u, s.FieldLength(c.block, "base", "apart"))
}

// evenly lists places from end to end, as few as are no further apart than
// most; nothing where they are more than anybody asks for.
func evenly(stretch geom.Span, most length.Length) []length.Length {
	if stretch.Size()/most >= mostPieces {
		return nil
	}
	gaps := max(1, (stretch.Size()+most-1)/most)
	even, _ := spacing.Place(spacing.Ask{Stretch: stretch, Count: int(gaps) + 1})
	return even.Centres
}

// legs stand in two rows, the rear one first, their centres in from the ends,
// the rear and the line of the toe kick.
func (s *solver) legs(c *carcass, b *lang.Block, box *model.Box) {
	inset, across, hull := s.FieldLength(c.block, "legs", "inset"), s.FieldLength(c.block, "legs", "across"), box.Hull
	rear, fore, half := inset, c.line(hull)-inset, across-across/2
	switch {
	case inset < c.board.t+half:
		s.Findings.Errorf("legs-find-no-room", c.at("legs"), "legs = { inset = … } of "+s.Show(c.board.t+half)+" or more",
			"The legs are %s across, and their centres stand %s behind the line of the toe kick, whose board is %s thick: they would run into it.",
			s.Show(across), s.Show(inset), s.Show(c.board.t))
		return
	case fore-rear < across:
		s.Findings.Errorf("legs-find-no-room", c.at("legs"), "a smaller inset, or a deeper carcass",
			"The legs are %s across, and their centres stand %s from the rear and from the line of the toe kick: the two rows need %s, and that line is %s from the rear.",
			s.Show(across), s.Show(inset), s.Show(2*inset+across), s.Show(c.line(hull))).Also(b.Head, "under this cabinet")
		return
	case hull.U.Size()-2*inset < across:
		s.Findings.Errorf("legs-find-no-room", b.Head, "a smaller inset of its legs, or width = "+s.Show(2*inset+across)+" or more",
			"The legs of %s are %s across, and their centres stand %s from its ends: they need %s, and it is %s wide.",
			b.Describe(), s.Show(across), s.Show(inset), s.Show(2*inset+across), s.Show(hull.U.Size())).Also(c.at("legs"), "the inset")
		return
	}
	places := evenly(hull.U.Grow(-inset), s.FieldLength(c.block, "legs", "apart"))
	if places == nil {
		s.tooMany(c.at("legs"), 2*int(hull.U.Size()/s.FieldLength(c.block, "legs", "apart")), "legs")
		return
	}
	if places[1]-places[0] < across {
		s.Findings.Errorf("legs-find-no-room", c.at("legs"), "legs = { apart = … } of more than "+s.Show(2*across),
			"The legs are %s across, but from centre to centre they would stand no more than %s apart.", s.Show(across), s.Show(s.FieldLength(c.block, "legs", "apart"))).
			Also(b.Head, "under this cabinet")
		return
	}
	for _, v := range []length.Length{rear, fore} {
		for _, u := range places {
			box.Legs = append(box.Legs, geom.Box{U: geom.About(u, across), V: geom.About(v, across), Z: geom.Span{Hi: c.toeHeight}})
		}
	}
	s.fit(c.block, "legs", model.Fitted{Kind: "leg", Count: len(box.Legs), Use: "under cabinet " + b.Name, Why: why(b)})
}

// fit counts a fitting that an object of the carcass names, or does not.
func (s *solver) fit(carcass *lang.Block, attr string, f model.Fitted) {
	if named := s.FieldRef(carcass, attr, "fitting"); named != nil {
		f.Fitting = named.Key()
	}
	s.m.Fitted = append(s.m.Fitted, f)
}
