package solve

import (
	"math"
	"slices"

	"barwright/compile/drainway"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
)

// trapTakes is how much of the way the bend of a trap takes, in sizes of it: a
// bend's radius is about one and a half (common practice, from memory).
const trapTakes = 3

// pipes are outside diameters and what they are sold as (ASTM D1785, table 1; 3 and
// 4 in from memory).
var pipes = []struct{ outside, size geom.Length }{
	{length.Inch * 1660 / 1000, length.Inch * 5 / 4},
	{length.Inch * 1900 / 1000, length.Inch * 3 / 2},
	{length.Inch * 2375 / 1000, length.Inch * 2},
	{length.Inch * 3500 / 1000, length.Inch * 3},
	{length.Inch * 4500 / 1000, length.Inch * 4},
}

// soldAs is the size that pipe of an outside diameter is sold as: that of the
// table, told to a fifth of a millimetre, or tube, which is sold by its diameter
// (common practice, from memory).
func soldAs(outside geom.Length) geom.Length {
	for _, p := range pipes {
		if length.Apart(outside, p.outside) <= length.Millimetre/5 {
			return p.size
		}
	}
	return outside
}

// drains lays the pipe of each drain, in the order of the text, and bores the boards that
// it passes. A drain into water is refused elsewhere, and one from a sink that is refused
// has nowhere to begin.
func (s *solver) drains() {
	var all []laidFixture
	for _, b := range s.Source.Top("drain") {
		if s.Text(s.Ref(b, "to"), "carries") == "water" {
			continue
		}
		if slab, cut := s.sinkCut(s.Ref(b, "from").Name); cut != nil {
			if all == nil {
				all = s.laidFixtures()
			}
			s.drain(b, slab, cut, all)
		}
	}
}

// laidFixture is a fixture of a wall and a rectangle of the plan that holds it, as any frame's axes do.
type laidFixture struct {
	model.Fixture
	wall *model.Wall
	in   geom.Rect
}

// laidFixtures are all of the room, in the order of its walls.
func (s *solver) laidFixtures() (all []laidFixture) {
	room := &model.Run{}
	for i := range s.m.Room.Walls {
		wall := &s.m.Room.Walls[i]
		for _, f := range wall.Fixtures() {
			box := s.takes(&f, room, wall, 0)
			in := geom.Rect{X: box.U, Y: box.V}.Grow(box.U.Size() + box.V.Size())
			all = append(all, laidFixture{f, wall, in})
		}
	}
	return all
}

// sinkCut finds the cut-out of a sink, and the slab that it is in.
func (s *solver) sinkCut(name string) (*model.Slab, *model.SlabCut) {
	for i := range s.m.Slabs {
		for j := range s.m.Slabs[i].Cuts {
			if cut := &s.m.Slabs[i].Cuts[j]; cut.Kind == "sink" && cut.Name == name {
				return &s.m.Slabs[i], cut
			}
		}
	}
	return nil, nil
}

// plumbing is a drain while it is laid.
type plumbing struct {
	run   *model.Run
	stub  *model.Stub
	box   *model.Box // that the sink hangs in
	drain model.Drain
	way   model.Way
	wall  *model.Wall // that the stub stands out of
}

func (s *solver) drain(b *lang.Block, slab *model.Slab, cut *model.SlabCut, all []laidFixture) {
	sink, to := s.Ref(b, "from"), s.Ref(b, "to")
	wall := s.wall(to.Parent.Name)
	p := plumbing{
		wall: wall,
		run:  s.runNamed(s.Ref(sink.Parent, "over").Name),
		stub: &wall.Stubs[slices.IndexFunc(wall.Stubs, func(o model.Stub) bool { return o.Name == to.Name })],
		drain: model.Drain{
			Name: b.Name, Sink: sink.Name, Stub: to.Name, Vent: s.Text(b, "vent"), Why: why(b), Diameter: s.Length(b, "diameter"),
			Size: s.Length(b, "size"), TrapSize: s.FieldLength(b, "trap", "size"), Seal: s.FieldLength(b, "trap", "seal"),
			Bowl: slab.Box.Z.Hi - s.Length(sink, "bowl"),
		},
	}
	p.box = boxNamed(p.run, s.Ref(sink, "in").Name)
	d := &p.drain
	p.way = model.Way{Kind: "drain", Name: b.Name, From: sink.Key(), To: to.Key(), Diameter: d.Diameter, Why: d.Why}
	if d.Size == 0 {
		d.Size = soldAs(d.Diameter)
	}
	if d.TrapSize == 0 {
		d.TrapSize = d.Size
	}
	if d.Vent == "" && p.run.Along {
		d.Vent = "wall"
	}
	ask := s.askOf(&p, b, cut)
	face := s.faceAt(wall, p.stub.Along, p.stub.Height)
	ask.To.X, ask.To.Y = p.run.Frame.Local(wall.Frame.At(p.stub.Along, face+p.stub.StandsOut))
	ask.Within = geom.Rect{X: geom.Span{Hi: p.run.Length}, Y: geom.Span{Lo: min(0, ask.To.Y), Hi: p.run.Depth}}
	var foot geom.Point
	foot.X, foot.Y = p.run.Frame.Local(wall.Frame.At(p.stub.Along, face))
	bodies := s.besidePipe(&p, &ask, all)
	way := drainway.Lay(&ask)
	s.laid(&p, &ask, &way, ask.To.Sub(foot))
	s.boreFor(&p, &way, bodies, ask.Trap)
	s.piped(&p, &ask, &way)
	if len(way.Stopped) > 0 && !ask.Lined {
		p.drain.StubBy = s.stubBy(&p, b, &ask, &way)
	}
	s.m.Drains, s.m.Ways = append(s.m.Drains, p.drain), append(s.m.Ways, p.way)
}

// askOf is what the text says of a drain's way, from under the middle of its bowl.
func (s *solver) askOf(p *plumbing, b *lang.Block, cut *model.SlabCut) drainway.Ask {
	d := &p.drain
	ask := drainway.Ask{
		From:   geom.Point{X: cut.Box.U.Mid(), Y: cut.Box.V.Mid()},
		Beyond: p.stub.StandsOut, Height: p.stub.Height, Slope: min(1, s.Number(b, "slope")), Bend: trapTakes * d.TrapSize,
		Diameter: d.Diameter, Clearance: s.Length(b, "clearance"), Edge: s.limit("opening_edge"), Mark: s.Marks,
		Line: s.Length(b, "from_back"), Lined: b.Attr("from_back") != nil,
	}
	if d.Vent != "wall" {
		ask.Hang = d.Bowl - s.FieldLength(b, "trap", "drop")
	}
	ask.Trap = geom.Box{U: geom.About(ask.From.X, d.Diameter), V: geom.About(ask.From.Y, d.Diameter), Z: p.trapAt(p.stub.Height, ask.Hang)}
	return ask
}

// trapAt is how high tailpiece and trap reach, at least, with the stub at a height, or hung higher.
func (p *plumbing) trapAt(height, hang geom.Length) geom.Span {
	d := &p.drain
	z := geom.Span{Lo: max(height, hang) - d.TrapSize/2 - d.Seal - d.Diameter, Hi: d.Bowl}
	if d.Vent == "wall" { // a trap in the bottom of the box is another matter: stub-too-low
		z.Lo = max(z.Lo, p.box.Inside.Z.Lo)
	}
	return z
}

// laid fills in what follows from the way: levels at the trap, and what is bought. The
// stub comes out of its wall in a direction.
func (s *solver) laid(p *plumbing, ask *drainway.Ask, way *drainway.Way, out geom.Point) {
	d := &p.drain
	points := way.Points
	d.Arm, d.Fall = way.Arm, way.Fall
	d.Outlet, d.End = points[0].Z, points[len(points)-1].Z
	d.Weir = d.Outlet - d.TrapSize/2
	d.Under = d.Weir - d.Seal - d.Diameter
	level, drop, last := geom.Length(0), geom.Length(0), geom.Spot{}
	p.way.Points = append(p.way.Points, p.inRoom(points[0]))
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		step := length.Apart(a.U, b.U) + length.Apart(a.V, b.V)
		switch {
		case step == 0:
			drop = a.Z - b.Z
			d.Elbows++ // down behind the trap
		case i > 1 && (level >= ask.Bend || level == 0):
			d.Elbows++
		}
		level += step
		last = geom.Spot{U: b.U - a.U, V: b.V - a.V}
		p.way.Points = append(p.way.Points, p.inRoom(b))
	}
	if d.Straight = (last.U == 0) == (max(out.X, -out.X) < max(out.Y, -out.Y)); !d.Straight {
		d.Elbows++
	}
	level = max(0, level-ask.Bend)
	p.way.Length = drop + geom.Length(math.Round(float64(level)*math.Sqrt(1+float64(ask.Slope*ask.Slope))))
	if level > 0 {
		p.way.Supports = int((level - 1) / s.limit("drain_support"))
	}
}

// inRoom is a place of the run's frame in the room.
func (p *plumbing) inRoom(s geom.Spot) model.Spot {
	at := p.run.Frame.At(s.U, s.V)
	return model.Spot{X: at.X, Y: at.Y, Z: s.Z}
}

// body is what a pipe may meet: a part, or what is none.
type body struct {
	part int // index into the model's parts; -1 for none
	name string
	why  model.Why
}

// besidePipe lists what stands about a pipe, and what each of it is.
func (s *solver) besidePipe(p *plumbing, ask *drainway.Ask, all []laidFixture) (bodies []body) {
	within := geom.Rect{X: geom.Between(ask.From.X, ask.To.X), Y: geom.Between(ask.From.Y, ask.To.Y)}.Union(ask.Within).Grow(ask.Diameter)
	add := func(solid drainway.Solid, b body) {
		if solid.Box.U.Overlaps(within.X) && solid.Box.V.Overlaps(within.Y) {
			ask.Solids, bodies = append(ask.Solids, solid), append(bodies, b)
		}
	}
	for _, i := range s.partsIn(p.run.Frame) {
		if part := &s.m.Parts[i]; !part.Is("cabinet", "drawer") && !s.letsStub(part, p.stub) {
			solid := drainway.Solid{Box: part.Placement.Box}
			if axis, ok := boredAlong(part); ok {
				solid.Axis, solid.Bores = axis, func(hole geom.Box) bool { return s.holds(i, hole) }
			}
			add(solid, body{i, part.Named() + " of " + part.Owner, part.Why})
		}
	}
	for i := range s.m.Runs {
		run := &s.m.Runs[i]
		if run != p.run && !overRun(p.run.Frame, run, within) {
			continue
		}
		for j := range run.Boxes {
			box := &run.Boxes[j]
			if run != p.run {
				add(drainway.Solid{Box: p.run.Frame.Around(run.Frame, box.Hull)}, body{-1, box.Words() + " of run " + run.Name, box.Why})
				continue
			}
			if box.Kind == model.Bay {
				add(drainway.Solid{Box: box.Appliance}, body{-1, "the appliance of bay " + box.Name, box.Why})
			}
			for _, front := range box.Fronts {
				if front.Kind == model.Drawer {
					add(drainway.Solid{Box: front.Box}, body{-1, front.Name + " of cabinet " + box.Name, box.Why})
				}
			}
			for _, leg := range box.Legs {
				add(drainway.Solid{Box: leg}, body{-1, "a leg of cabinet " + box.Name, box.Why})
			}
		}
	}
	for i := range s.m.KneeWalls {
		k := &s.m.KneeWalls[i]
		for _, o := range k.Outlets {
			if k.Frame == p.run.Frame {
				add(drainway.Solid{Box: o.Box}, body{-1, "the box of outlet " + o.Name, o.Why})
			}
		}
	}
	s.othersLaid(p, within, all, add)
	return bodies
}

// overRun reports whether a rectangle of a frame lies over boxes of a run, or nearly so.
func overRun(f geom.Frame, run *model.Run, within geom.Rect) bool {
	var whole geom.Box
	for i := range run.Boxes {
		whole = whole.Union(run.Boxes[i].Hull)
	}
	around := f.Around(run.Frame, whole)
	return geom.Rect{X: around.U, Y: around.V}.Overlaps(within.Grow(length.Millimetre))
}

// othersLaid are those fixtures of the room that may lie within a rectangle of the run's frame, but for
// the drain's own stub, and the drains before it. Two may join at one stub.
func (s *solver) othersLaid(p *plumbing, within geom.Rect, all []laidFixture, add func(drainway.Solid, body)) {
	around := geom.Frame{}.Around(p.run.Frame, geom.Box{U: within.X, V: within.Y})
	reach := geom.Rect{X: around.U, Y: around.V}.Grow(length.Millimetre)
	for i := range all {
		if f := &all[i]; f.in.Overlaps(reach) && f.Why.At != p.stub.Why.At {
			add(drainway.Solid{Box: s.takes(&f.Fixture, p.run, f.wall, 0)}, body{-1, f.Words(), f.Why})
		}
	}
	for _, q := range s.pipesIn(p.run.Frame) {
		if q.stub != p.stub {
			add(drainway.Solid{Box: q.box}, body{-1, q.name, q.why})
		}
	}
}

// letsStub reports whether a part has an opening for a stub: what the stub passes, the
// pipe behind it does not.
func (s *solver) letsStub(part *model.Part, stub *model.Stub) bool {
	return slices.ContainsFunc(part.Openings, func(o model.Opening) bool { return o.Why.At == stub.Why.At })
}

// boredAlong is the axis along which a part is bored for a pipe: panels through their
// thickness, but for fronts; studs of a knee wall along that.
func boredAlong(p *model.Part) (geom.Axis, bool) {
	switch {
	case p.Is("knee_wall", "stud"):
		return geom.U, true
	case p.Kind != model.Panel || p.Is("cabinet", "door") || p.Is("cabinet", "false-front"):
		return 0, false
	}
	return p.Placement.Out.Axis, true
}

// holds reports whether a hole lies in a part with wood all round it.
func (s *solver) holds(index int, hole geom.Box) bool {
	part := &s.m.Parts[index]
	if part.Kind == model.Lumber {
		at := part.Placement.Box
		return at.V.Grow(-1).Contains(hole.V) && at.Z.Grow(-1).Contains(hole.Z)
	}
	face, _ := part.Placement.Local(hole)
	return part.Placement.Blank().Grow(-1).Contains(face) &&
		!slices.ContainsFunc(s.cuts[index], func(c geom.Rect) bool { return c.Grow(1).Overlaps(face) }) &&
		!slices.ContainsFunc(part.Openings, func(o model.Opening) bool { return o.Shape.Bounds().Grow(1).Overlaps(face) })
}

// boreFor makes the holes of a way, and tells what stops it. A stud is drawn on its face
// towards the run: the hole across it is a line there.
func (s *solver) boreFor(p *plumbing, way *drainway.Way, bodies []body, trap geom.Box) {
	name := "drain " + p.drain.Name
	for _, h := range way.Holes {
		part := &s.m.Parts[bodies[h.Solid].part]
		hole := model.WayHole{Part: part.ID, At: p.inRoom(h.At), Wide: h.Diameter, High: h.Diameter}
		if key := part.Block(); part.BlockKind() == "cabinet" && !slices.Contains(p.way.Past, key) {
			p.way.Past = append(p.way.Past, key)
		}
		if part.Kind == model.Lumber {
			box := part.Placement.Box
			hole.Edge = min(h.At.V-box.V.Lo, box.V.Hi-h.At.V) - h.Diameter/2
			p.way.Holes = append(p.way.Holes, hole)
			part.Marks = append(part.Marks, model.Mark{Name: name, From: on(part, box.U.Lo, h.At.V, h.At.Z), To: on(part, box.U.Hi, h.At.V, h.At.Z), Why: p.drain.Why})
			continue
		}
		p.way.Holes = append(p.way.Holes, hole)
		part.Openings = append(part.Openings, model.Opening{
			Name: name, Shape: geom.CircleContour(on(part, h.At.U, h.At.V, h.At.Z), (h.Diameter+1)/2).Reversed(), Why: p.drain.Why,
		})
	}
	for _, i := range way.Stopped {
		p.drain.Stops = append(p.drain.Stops, model.Stop{Name: bodies[i].name, Why: bodies[i].why})
	}
	for _, q := range s.pipesIn(p.run.Frame) { // trap-meets knows nothing of them
		if q.box.Overlaps(trap) && !slices.ContainsFunc(p.drain.Stops, func(o model.Stop) bool { return o.Name == q.name }) {
			p.drain.Stops = append(p.drain.Stops, model.Stop{Name: q.name, Why: q.why})
		}
	}
}
