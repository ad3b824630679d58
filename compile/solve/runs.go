package solve

import (
	"fmt"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// runs places every run and makes the parts of its boxes.
func (s *solver) runs() {
	for _, b := range s.Source.Top("run") {
		run := s.run(b)
		for _, box := range values.Boxes(b) {
			span := geom.Span{Lo: s.SolvedLength(box, "left"), Hi: s.SolvedLength(box, "right")}
			hull := geom.Box{U: span, V: geom.Span{Hi: run.Depth}, Z: geom.Span{Hi: run.Height}}
			switch box.Spec.Kind {
			case "cabinet":
				s.cabinet(&run, box, hull)
			case "bay":
				s.bay(&run, box, hull)
			case "filler":
				s.filler(&run, box, hull)
			}
		}
		for _, a := range b.Inner("anchor") {
			s.anchor(&run, a)
		}
		run.Joints = s.joints(b, &run)
		s.m.Runs = append(s.m.Runs, run)
		s.fastenRun(b, &run)
	}
}

func (s *solver) run(b *lang.Block) model.Run {
	run := model.Run{
		Name: b.Name, Length: values.LengthOf(s.RunLength(b)),
		Height: s.SolvedLength(b, "height"), Depth: s.SolvedLength(b, "depth"), Why: why(b),
	}
	if wall := s.Ref(b, "along"); wall != nil {
		run.Wall, run.Along = wall.Name, true
		s.alongWall(b, wall, &run)
	} else {
		wall := s.Ref(b, "out_from")
		run.Wall = wall.Name
		s.outFrom(b, wall, &run)
	}
	return run
}

// stand puts a run's back left corner at a point of its wall's (u, v), turned
// by quarter turns.
func (s *solver) stand(run *model.Run, wall *model.Wall, back geom.Point, quarter int) {
	run.Frame = geom.Frame{Origin: wall.Frame.At(back.X, back.Y), Turn: wall.Frame.Turn + geom.Angle(quarter)*90*geom.Degree}
	s.stands = append(s.stands, stand{wall: wall, back: back, quarter: quarter, frame: run.Frame})
}

// wall finds a wall that has been placed.
func (s *solver) wall(name string) *model.Wall {
	for i := range s.m.Room.Walls {
		if s.m.Room.Walls[i].Name == name {
			return &s.m.Room.Walls[i]
		}
	}
	panic("no wall " + name)
}

func (s *solver) alongWall(b, wall *lang.Block, run *model.Run) {
	begin, end, _ := s.Stretch(b, wall)
	if s.Text(b, "from") == "right" {
		begin = end - run.Length
	}
	w := s.wall(wall.Name)
	off := s.standOff(run, w, geom.Span{Lo: begin, Hi: begin + run.Length})
	s.stand(run, w, geom.Point{X: begin, Y: off}, 0)
	before, after := s.WallBefore(wall), s.WallAfter(wall)
	left, _ := s.LeansIn(b, before, wall)
	right, _ := s.LeansIn(b, wall, after)
	if !s.closes(before, wall) || begin > left {
		run.Free = append(run.Free, model.Left)
	}
	if !s.closes(wall, after) || begin+run.Length < w.Length-right {
		run.Free = append(run.Free, model.Right)
	}
	start := s.Length(b, "start")
	switch from := s.Text(b, "from"); {
	case from == "left" && left > start:
		s.leaning(b, from, left)
	case from == "right" && right > start:
		s.leaning(b, from, right)
	}
	switch from := s.Text(b, "from"); {
	case from == "left" && right > 0 && !run.FreeAt(model.Right):
		s.leaning(b, "right", right)
	case from == "right" && left > 0 && !run.FreeAt(model.Left):
		s.leaning(b, "left", left)
	}
}

// closes reports whether the corner between two walls has a wall on either
// side of the room: an outside corner, or one that is straight, stops no run.
func (s *solver) closes(a, b *lang.Block) bool {
	return a != nil && b != nil && values.AngleOf(s.Value(a, "corner")) < 180*geom.Degree
}

func (s *solver) leaning(run *lang.Block, side string, by length.Length) {
	s.Findings.Notef("corner-leans-in", run.Head,
		"The wall to the %s leans in: so that the front clears it, the back of %s stops %s from the corner.",
		side, run.Describe(), s.Show(by))
}

// outFrom places a run that stands square out from a wall. One end meets the
// wall, the other is free.
func (s *solver) outFrom(b, wall *lang.Block, run *model.Run) {
	w, at := s.wall(wall.Name), s.Length(b, "at")
	covers, back, quarter := geom.Span{Lo: at, Hi: at + run.Depth}, geom.Point{X: at + run.Depth}, 1
	run.Free = []model.End{model.Right}
	if s.Text(b, "faces") == "right" {
		covers, back, quarter = geom.Span{Lo: at - run.Depth, Hi: at}, geom.Point{X: at - run.Depth, Y: run.Length}, -1
		run.Free = []model.End{model.Left}
	}
	boxes, touches := values.Boxes(b), 0
	if quarter < 0 {
		touches = len(boxes) - 1
	}
	if len(boxes) > 0 && boxes[touches].Spec.Kind != "filler" { // a filler takes up what the wall is off
		back.Y += s.standOff(run, w, covers)
	}
	s.stand(run, w, back, quarter)
	if !(geom.Span{Hi: w.Length}).Contains(covers) {
		miss := max(-covers.Lo, covers.Hi-w.Length)
		s.Findings.Errorf("outside-wall", b.Attr("at").Expr.At, "",
			"%s meets its wall from %s to %s, but the wall is %s long: %s outside.", finding.Capital(b.Describe()),
			s.Show(covers.Lo), s.Show(covers.Hi), s.Show(w.Length), s.Show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	}
}

// bay keeps a place open for an appliance and brings its top to the line.
func (s *solver) bay(run *model.Run, b *lang.Block, hull geom.Box) {
	w, h, d := s.FieldLength(b, "appliance", "width"), s.FieldLength(b, "appliance", "height"), s.FieldLength(b, "appliance", "depth")
	gap, back := s.Length(b, "gap"), s.Length(b, "back_gap")
	line := run.Height - s.Length(b, "top_gap")
	if h > line {
		s.Findings.Errorf("appliance-too-tall", s.Field(b, "appliance", "height").At, "a lower appliance, or a higher carcass",
			"The appliance is %s high, but its bay has room for %s under the line of the boxes: %s too tall.", s.Show(h), s.Show(line), s.Show(h-line))
		return
	}
	box := model.Box{
		Kind: model.Bay, Name: b.Name, Hull: hull, Inside: hull, BlockHeight: line - h, Why: why(b),
		Appliance: geom.Box{
			U: geom.Span{Lo: hull.U.Lo + gap, Hi: hull.U.Lo + gap + w},
			V: geom.Span{Lo: back, Hi: back + d},
			Z: geom.Span{Lo: line - h, Hi: line},
		},
	}
	run.Boxes = append(run.Boxes, box)
	s.underAppliance(run, b, &box)
}

// underAppliance lays lumber flat under both sides of an appliance, as many layers as
// fit, from its back to the line of the toe kicks.
func (s *solver) underAppliance(run *model.Run, b *lang.Block, box *model.Box) {
	stick := s.Ref(b, "blocks")
	if stick == nil {
		if box.BlockHeight > 0 {
			s.Findings.Notef("appliance-low", b.Head, "The appliance stands %s below the line and has no blocks under it: blocks = stick.NAME brings it up.", s.Show(box.BlockHeight))
		}
		s.applianceBears(run, box, nil, geom.Span{})
		return
	}
	t, w := s.Length(stick, "thickness"), s.Length(stick, "width")
	at, layers := b.Attr("blocks").Expr.At, box.BlockHeight/t
	a := box.Appliance
	_, setback := s.toeKick(b.Parent)
	under := geom.Span{Lo: a.V.Lo, Hi: min(a.V.Hi, run.Depth-setback)}
	switch {
	case layers > mostPieces:
		s.tooMany(at, int(layers), "layers of blocks")
		return
	case a.U.Size() < 2*w || under.Size() <= 0:
		s.Findings.Errorf("blocks-too-large", at, "leave the blocks out, or take a narrower stick",
			"Two blocks side by side take %s, but the appliance is %s wide; from its back to the toe kicks there are %s.",
			s.Show(2*w), s.Show(a.U.Size()), s.Show(max(under.Size(), 0)))
		return
	}
	if left := box.BlockHeight % t; left > 0 {
		what := fmt.Sprintf("%s of %s and %s", finding.Counted(int(layers), "layer"), s.Show(t), s.Show(left))
		if layers == 0 {
			what = fmt.Sprintf("no layer of %s fits, %s are", s.Show(t), s.Show(left))
		}
		s.Findings.Notef("blocks-to-pack", at, "The appliance stands %s over the floor: %s to be packed, or wound out of its feet.", s.Show(box.BlockHeight), what)
	}
	if layers > 0 {
		s.applianceBears(run, box, []geom.Span{{Lo: a.U.Lo, Hi: a.U.Lo + w}, {Lo: a.U.Hi - w, Hi: a.U.Hi}}, under)
	} else {
		s.applianceBears(run, box, nil, geom.Span{})
	}
	for layer := range layers {
		z := geom.Span{Lo: layer * t, Hi: (layer + 1) * t}
		for _, side := range []struct {
			id, name string
			u        geom.Span
		}{
			{"left", "left block", geom.Span{Lo: a.U.Lo, Hi: a.U.Lo + w}},
			{"right", "right block", geom.Span{Lo: a.U.Hi - w, Hi: a.U.Hi}},
		} {
			s.lumber(b, stick, run.Frame, geom.Box{U: side.u, V: under, Z: z}, piece{
				id: "block-" + side.id + "-" + strconv.Itoa(int(layer)+1), code: "B" + strconv.Itoa(int(layer)+1) + side.id[:1], name: side.name, out: above, face: "top",
			})
		}
	}
}

// toeKick is the recess for the feet that the carcass of a run asks for.
func (s *solver) toeKick(run *lang.Block) (height, setback length.Length) {
	c := s.Ref(run, "carcass")
	return s.FieldLength(c, "toe_kick", "height"), s.FieldLength(c, "toe_kick", "setback")
}

// anchor is a block on the floor behind a cabinet's toe kick, between its sides
// or, on a base, before its rear board and left of the first crosspiece.
func (s *solver) anchor(run *model.Run, b *lang.Block) {
	under, stick := s.Ref(b, "under"), s.Ref(b, "block")
	if under.Parent != b.Parent {
		s.Findings.Errorf("anchor-elsewhere", b.Attr("under").Expr.At, "put the anchor into the run of its cabinet",
			"%s is not in this run.", finding.Capital(under.Describe())).
			Also(under.Head, "it stands here")
		return
	}
	c := s.carcassOf(under)
	if c.stands == "legs" {
		s.Findings.Errorf("anchor-on-legs", b.Attr("under").Expr.At, `stands_on = "sides" or "base" in its carcass, or leave the anchor out`,
			"%s stands on legs: its toe kick holds nothing that a block could take.", finding.Capital(under.Describe())).
			Also(c.at("stands_on"), "it stands so")
		return
	}
	t, w := s.Length(stick, "thickness"), s.Length(stick, "width")
	play := s.Length(b, "play")
	u := geom.Span{Lo: s.SolvedLength(under, "left"), Hi: s.SolvedLength(under, "right")}
	front, rear := run.Depth-c.toeSetback-c.board.t, length.Length(0)
	if c.stands == "base" {
		rear = c.baseRear + c.board.t
		if between := s.crosspieces(&c, u); between != nil {
			u.Hi = between[1] + c.board.t
		}
	}
	u = geom.Span{Lo: u.Lo + c.board.t + play/2, Hi: u.Hi - c.board.t - (play - play/2)}
	if t > c.toeHeight || w > front-rear || u.Size() <= 0 {
		s.Findings.Errorf("anchor-too-large", b.Attr("block").Expr.At, "a smaller stick",
			"The block is %s thick and %s wide; the space for it, under the box and behind its toe kick, is %s high, %s deep and %s long.",
			s.Show(t), s.Show(w), s.Show(c.toeHeight), s.Show(max(front-rear, 0)), s.Show(max(u.Size(), 0)))
		return
	}
	block := s.lumber(b, stick, run.Frame, geom.Box{U: u, V: geom.Span{Lo: front - w, Hi: front}, Z: geom.Span{Hi: t}},
		piece{id: "block", code: "A", name: "anchor block", out: above, face: "top"})
	block.Glued = s.Text(b, "fixed") == "adhesive"
	s.fastenAnchor(b)
}
