package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang/length"
)

// drawer is one drawer of a cabinet: a box on slides at its sides, behind a
// front of its own.
type drawer struct {
	*closing
	row                row
	name               string // "drawer 2"
	side, base         board
	groove, low, play  length.Length // low is from the box's lower edge to the groove
	outer, face        geom.Box      // of the box, and of its front
	frontPart, boxPart int
}

// drawer makes the front of a drawer, its box, and the lines for its slides.
func (f *closing) drawer(r row, n int) bool {
	d := &drawer{
		closing: f, row: r, name: nth("drawer ", n), side: f.carcass.board, base: f.carcass.back,
		groove: f.drawerLength("groove"), low: f.drawerLength("groove_up"), play: f.drawerLength("play"),
	}
	if sheet := f.s.FieldRef(f.carcass.block, "drawer", "board"); sheet != nil {
		d.side = f.s.boardOf(sheet)
	}
	if sheet := f.s.FieldRef(f.carcass.block, "drawer", "bottom"); sheet != nil {
		d.base = f.s.boardOf(sheet)
	}
	var ok bool
	if d.frontPart, ok = f.front(r, f.area.U, model.Front{Kind: model.Drawer, Name: d.name},
		piece{id: nth("drawer-", n) + "-front", code: nth("F", n), name: nth("drawer front ", n)}); !ok {
		return false
	}
	front := &f.box.Fronts[len(f.box.Fronts)-1]
	d.face = front.Place
	if !d.place() || !d.sound() || d.touches() {
		return false
	}
	front.Box = d.outer
	d.boards(nth("drawer-", n)+"-box-", nth("K", n))
	d.markSlides()
	return f.handleDrawer(d.frontPart, d.boxPart, d.face, r.at)
}

func (f *closing) drawerLength(field string) length.Length {
	return f.s.FieldLength(f.carcass.block, "drawer", field)
}

// place works out what the box fills: what the slides leave between the sides,
// lower than its front, and as long as the longest slides that fit.
func (d *drawer) place() bool {
	f, hull := d.closing, d.box.Hull
	low := d.face.Z.Lo + f.drawerLength("up")
	d.outer = geom.Box{
		U: hull.U.Grow(-f.carcass.board.t - f.drawerLength("clearance")),
		Z: geom.Span{Lo: low, Hi: low + d.face.Z.Size() - f.drawerLength("lower")},
	}
	slide, room := length.Length(0), d.face.V.Lo-d.rear()-f.drawerLength("behind")
	lengths := f.s.Field(f.carcass.block, "drawer", "lengths").Items
	for _, l := range lengths {
		if values.LengthOf(l) <= room {
			slide = values.LengthOf(l)
		}
	}
	if slide == 0 {
		f.s.Findings.Errorf("no-slide-fits", d.row.at, "a deeper carcass, or drawer = { lengths = [ … ] } with slides that short",
			"The box of %s of %s has %s for its slides; the shortest on sale is %s long: %s too much.", d.name, f.block.Describe(),
			f.s.Show(max(room, 0)), f.s.Show(values.LengthOf(lengths[0])), f.s.Show(values.LengthOf(lengths[0])-room)).
			Also(f.carcass.at("drawer"), "the slides on sale")
		return false
	}
	d.outer.V = geom.Span{Lo: d.face.V.Lo - slide, Hi: d.face.V.Lo}
	return true
}

// rear is how far the back, or a stretcher before it, comes forward behind the
// box: the box may not even touch it from below.
func (d *drawer) rear() length.Length {
	s, out := d.s, length.Length(0)
	for _, id := range []string{"back", "stretcher-rear"} {
		if box := s.m.Parts[s.partOf(d.block, id)].Placement.Box; box.Z.Overlaps(d.outer.Z.Grow(1)) {
			out = max(out, box.V.Hi)
		}
	}
	return out
}

// sound refuses a box that has no inside, or whose bottom would not hold.
func (d *drawer) sound() bool {
	s, c := d.s, d.carcass.block
	for _, need := range []struct {
		have        length.Length
		size, parts string
		taken       length.Length
		mend        string
	}{
		{d.outer.U.Size(), "wide", "its two sides", 2 * d.side.t, "a wider cabinet"},
		{d.outer.V.Size(), "long", "its front and back", 2 * d.side.t, "longer slides"},
		{d.outer.Z.Size(), "high", "its bottom and what is under it", d.low + d.base.t + d.play, "a higher front"},
	} {
		if need.have <= need.taken {
			s.Findings.Errorf("drawer-too-small", d.row.at, need.mend, "The box of %s of %s would be %s %s, but %s take up %s.",
				d.name, d.block.Describe(), s.Show(need.have), need.size, need.parts, s.Show(need.taken)).
				Also(d.carcass.at("drawer"), "how boxes of drawers are made")
			return false
		}
	}
	at := d.carcass.at("drawer")
	switch {
	case d.groove >= d.side.t:
		s.Findings.Errorf("drawer-groove", at, "drawer = { groove = … } of at most half the board, "+s.Show(d.side.t/2),
			"The grooves for the bottom of a drawer are %s deep, but its boards are %s thick: nothing would be left behind them.", s.Show(d.groove), s.Show(d.side.t)).
			Also(c.Head, "the carcass")
	case d.play >= 2*d.groove:
		s.Findings.Errorf("drawer-groove", at, "drawer = { play = … } of less, or a deeper groove",
			"The grooves for the bottom of a drawer are %s deep and have %s of play: the bottom would fall out of them.", s.Show(d.groove), s.Show(d.play)).
			Also(c.Head, "the carcass")
	default:
		return true
	}
	return false
}

// touches refuses a box that would stand in a part of its cabinet, or slide on
// it.
func (d *drawer) touches() bool {
	s, box := d.s, d.outer
	p := d.met(geom.Box{U: box.U, V: box.V, Z: box.Z.Grow(1)})
	if p == nil {
		return false
	}
	z := p.Placement.Box.Z
	text, mend := "stands where the box would slide", "leave the "+p.Name+" out: drawers want all the width between the sides"
	switch {
	case z.Lo < box.Z.Lo && z.Hi < box.Z.Mid():
		text = "reaches up to " + s.Show(z.Hi)
		mend = "drawer = { up = … } of more than " + s.Show(d.drawerLength("up")+z.Hi-box.Z.Lo)
	case z.Hi > box.Z.Hi && z.Lo > box.Z.Mid():
		text = "reaches down to " + s.Show(z.Lo)
		mend = "drawer = { lower = … } of more than " + s.Show(d.drawerLength("lower")+box.Z.Hi-z.Lo)
	}
	s.Findings.Errorf("front-meets", d.row.at, mend, "The box of %s of %s is to stand from %s to %s, but the %s %s.",
		d.name, d.block.Describe(), s.Show(box.Z.Lo), s.Show(box.Z.Hi), p.Name, text).Also(p.Why.At, "the %s", p.Name)
	return true
}

// boards makes the box: two sides over its whole length, front and back
// between them, and a bottom in grooves of all four.
func (d *drawer) boards(id, code string) {
	e, b := d.side.t, d.outer
	inner := b.U.Grow(-e)
	for _, board := range []struct {
		at geom.Box
		p  piece
	}{
		{b.With(geom.U, geom.Span{Lo: b.U.Lo, Hi: b.U.Lo + e}), piece{id: "left", code: "L", name: " left side", out: rightward, good: model.GoodBoth}},
		{b.With(geom.U, geom.Span{Lo: b.U.Hi - e, Hi: b.U.Hi}), piece{id: "right", code: "R", name: " right side", out: leftward, good: model.GoodBoth}},
		{geom.Box{U: inner, V: geom.Span{Lo: b.V.Hi - e, Hi: b.V.Hi}, Z: b.Z}, piece{id: "front", code: "F", name: " box front", out: rearward, good: model.GoodDrawn}},
		{geom.Box{U: inner, V: geom.Span{Lo: b.V.Lo, Hi: b.V.Lo + e}, Z: b.Z}, piece{id: "back", code: "K", name: " back", out: front, good: model.GoodDrawn}},
	} {
		p := board.p
		p.id, p.code, p.name, p.face, p.grain = id+p.id, code+p.code, d.name+p.name, "inside", model.GrainX
		d.grooved(d.s.panel(d.block, d.side.sheet, d.run.Frame, board.at, p))
		if board.p.id == "front" {
			d.boxPart = len(d.s.m.Parts) - 1
		}
	}
	into := d.groove - d.play/2
	low := b.Z.Lo + d.low + d.play/2
	d.s.panel(d.block, d.base.sheet, d.run.Frame, geom.Box{U: inner.Grow(into), V: b.V.Grow(into - e), Z: geom.Span{Lo: low, Hi: low + d.base.t}},
		piece{id: id + "bottom", code: code + "B", name: d.name + " bottom", out: above, face: "top", grain: model.GrainX, good: model.GoodDrawn})
}

// grooved cuts the groove for the bottom into a board of the box, from end to
// end.
func (d *drawer) grooved(part *model.Part) {
	box := part.Placement.Box
	box.Z = geom.Span{Lo: d.outer.Z.Lo + d.low, Hi: d.outer.Z.Lo + d.low + d.base.t + d.play}
	face, _ := part.Placement.Local(box)
	part.Recesses = append(part.Recesses, model.Recess{
		ID: part.ID + "/groove", Name: "groove for the bottom", Shape: geom.RectContour(face),
		Depth: d.groove, Open: []model.Edge{model.LeftEdge, model.RightEdge}, Why: why(d.carcass.block),
	})
}

// markSlides draws the centre line of the slides on the cabinet's sides, at the
// middle of the box's height.
func (d *drawer) markSlides() {
	z := d.outer.Z.Mid()
	for _, end := range []model.End{model.Left, model.Right} {
		part := &d.s.m.Parts[d.closing.side(end)]
		part.Marks = append(part.Marks, model.Mark{
			Name: "slide of " + d.name, From: on(part, 0, d.outer.V.Hi, z), To: on(part, 0, d.outer.V.Lo, z),
			Why: model.Why{Block: d.block.Path(), At: d.row.at},
		})
	}
}
