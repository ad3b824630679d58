package solve

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/ways"
	"barwright/lang"
	"barwright/lang/length"
)

// keepOff is what a way keeps of what stands about it: half of what its holes are wide, and
// between these and an edge or a joint. Where it runs it falls on marks. A bare line comes
// as near to a board as it likes; what leads the way through its holes is wider.
type keepOff struct {
	half, edge, joint, mark length.Length
	bare                    bool
}

func (s *solver) keepOff(hole length.Length) keepOff {
	return keepOff{half: (hole + 1) / 2, edge: s.limit("opening_edge"), joint: s.limit("opening_joint"), mark: s.Marks}
}

// body is a solid as a way finds it.
func (k *keepOff) body(b geom.Box) geom.Box {
	if k.bare {
		return b
	}
	return k.off(b, 0)
}

// off grows a box by half a hole and more, outwards to marks.
func (k *keepOff) off(b geom.Box, more length.Length) geom.Box {
	for axis := geom.U; axis <= geom.Z; axis++ {
		side := b.Along(axis).Grow(k.half + more)
		b = b.With(axis, geom.Span{Lo: length.Down(side.Lo, k.mark), Hi: length.Up(side.Hi, k.mark)})
	}
	return b
}

// within shrinks a box likewise.
func (k *keepOff) within(b geom.Box) geom.Box {
	for axis := geom.U; axis <= geom.Z; axis++ {
		side := b.Along(axis).Grow(-k.half)
		b = b.With(axis, geom.Span{Lo: length.Up(side.Lo, k.mark), Hi: length.Down(side.Hi, k.mark)})
	}
	return b
}

// wayScene is what stands about a way at a run. Of each of its boards, by index, parts has
// the part, and near what each of its Shut is kept off.
type wayScene struct {
	ways.Scene
	parts []int
	near  [][]string
}

// shut shuts a board where a way would come too near something.
func (s *wayScene) shut(board int, where geom.Box, near string) {
	s.Boards[board].Shut = append(s.Boards[board].Shut, where)
	s.near[board] = append(s.near[board], near)
}

func (s *wayScene) solid(keep *keepOff, b geom.Box, what string) {
	s.Solids = append(s.Solids, ways.Solid{Box: keep.body(b), What: what})
}

// scene fills a scene with a run, the knee wall behind it and what stands out of walls.
// The holes of the block's way are at the height that it states, if it does.
func (w *laying) scene(run *model.Run, keep *keepOff, c *lang.Block) *wayScene {
	s := &wayScene{}
	for _, i := range w.partsIn(run.Frame) {
		part := &w.m.Parts[i]
		normal, bores := w.borable(part)
		switch {
		case w.loose(part):
		case bores:
			w.board(s, run, i, normal, keep, c)
		default:
			s.solid(keep, part.Placement.Box, part.Named()+" of "+part.Owner)
		}
	}
	w.boxesOf(s, run, keep)
	w.slabsOf(s, run, keep)
	w.wallsOf(s, run, keep)
	w.pipesOf(s, run, keep)
	w.lanes(s, run, keep)
	return s
}

// loose reports whether a part stands for nothing here: fronts lie before all lanes, and
// boxes of drawers count whole.
func (w *laying) loose(p *model.Part) bool {
	return slices.ContainsFunc([]string{"door", "drawer", "false-front"}, func(name string) bool { return p.Is("cabinet", name) })
}

// borable tells which way a part is bored through for a cable: sides and dividers and
// backs of cabinets, the skin that backs stand against, studs.
func (w *laying) borable(p *model.Part) (normal geom.Axis, ok bool) {
	switch {
	case p.Is("cabinet", "side"), p.Is("cabinet", "divider"), p.Is("knee_wall", "stud"):
		return geom.U, true
	case p.Is("cabinet", "back"), p.BlockKind() == "skin" && p.Placement.Out == front && p.Kind == model.Panel && strings.Contains(p.Name, "skin"):
		return geom.V, true
	}
	return 0, false
}

// board tells where a part may be bored: off its edges, what is cut into it, drawn on it
// or driven into it, and the boards that stand on it.
func (w *laying) board(s *wayScene, run *model.Run, index int, normal geom.Axis, keep *keepOff, c *lang.Block) {
	part := &w.m.Parts[index]
	box := part.Placement.Box
	b := ways.Board{Box: keep.body(box), Normal: normal, Rim: keep.within(box.Grow(-keep.edge)), What: part.Named() + " of " + part.Owner}
	switch {
	case part.Kind == model.Lumber: // what a stud keeps at its edges is judged by rules
		b.Rim = box.With(geom.Z, keep.within(box).Z)
	case part.BlockKind() == "skin": // over the boxes it is seen
		b.Rim.Z.Hi = min(b.Rim.Z.Hi, run.Height)
	}
	if c.Attr("height") != nil {
		at := w.Length(c, "height")
		b.Rim.Z = b.Rim.Z.Intersect(geom.Span{Lo: at, Hi: at})
	}
	s.parts, s.Boards, s.near = append(s.parts, index), append(s.Boards, b), append(s.near, nil)
	if part.Kind == model.Lumber {
		return
	}
	at := len(s.Boards) - 1
	shut := func(face geom.Rect, more length.Length, near string) {
		s.shut(at, keep.off(part.Placement.Behind(face), more), near)
	}
	for _, cut := range w.cuts[index] {
		shut(cut, keep.edge, "what is cut out of it")
	}
	for i := range part.Openings {
		shut(part.Openings[i].Shape.Bounds(), keep.edge, part.Openings[i].Name)
	}
	for i := range part.Bores {
		shut(part.Bores[i].Shape().Bounds(), keep.edge, part.Bores[i].Name)
	}
	for i := range part.Recesses {
		shut(part.Recesses[i].Shape.Bounds(), 0, part.Recesses[i].Name)
	}
	for _, m := range part.Marks {
		shut(geom.Rect{X: geom.Between(m.From.X, m.To.X), Y: geom.Between(m.From.Y, m.To.Y)}, keep.edge, m.Name)
	}
	w.shutByJoints(s, at, run, part, keep)
}

// shutByJoints shuts where other boards of the cabinet stand on one, and where screws join
// it to its neighbour.
func (w *laying) shutByJoints(s *wayScene, board int, run *model.Run, part *model.Part, keep *keepOff) {
	block := w.Block(part.Block())
	i := slices.IndexFunc(w.cabinets, func(c cabinet) bool { return c.block == block })
	if i < 0 {
		return
	}
	at := part.Placement
	near := at.Box.With(at.Out.Axis, at.Box.Along(at.Out.Axis).Grow(length.Millimetre))
	for j := w.cabinets[i].first; j < w.cabinets[i].last; j++ {
		if other := &w.m.Parts[j]; other != part && other.Placement.Box.Overlaps(near) && !other.Is("cabinet", "shelf") {
			s.shut(board, keep.off(other.Placement.Box, keep.joint), other.Named())
		}
	}
	name := w.cabinets[i].block.Name
	for _, j := range run.Joints {
		if j.Left != name && j.Right != name {
			continue
		}
		for _, v := range []length.Length{j.Rear, j.Front} {
			for _, z := range []length.Length{j.Low, j.High} {
				screw := geom.Box{U: at.Box.U, V: geom.Span{Lo: v, Hi: v}, Z: geom.Span{Lo: z, Hi: z}}
				if s.Boards[board].Normal == geom.U {
					s.shut(board, keep.off(screw, keep.edge), "a screw between cabinets")
				}
			}
		}
	}
}

// boxesOf are appliances, the boxes of drawers, legs, and the boxes in the knee wall.
func (w *laying) boxesOf(s *wayScene, run *model.Run, keep *keepOff) {
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind == model.Bay {
			s.solid(keep, box.Appliance, "the appliance of "+box.Words())
		}
		for _, f := range box.Fronts {
			if f.Kind == model.Drawer {
				s.solid(keep, f.Box, f.Name+" of "+box.Words())
			}
		}
		for _, leg := range box.Legs {
			s.solid(keep, leg, "a leg of "+box.Words())
		}
	}
	if k := w.kneeBehind(run); k != nil {
		for _, o := range k.Outlets {
			s.solid(keep, o.Box, "outlet "+o.Name)
		}
	}
}

// slabsOf are counters, and the bowls of sinks that hang in them.
func (w *laying) slabsOf(s *wayScene, run *model.Run, keep *keepOff) {
	for i := range w.m.Slabs {
		slab := &w.m.Slabs[i]
		if slab.Frame != run.Frame {
			continue
		}
		s.solid(keep, slab.Box, slab.Words())
		for _, cut := range slab.Cuts {
			if cut.Kind == "sink" {
				bowl := w.Length(w.Block("sink."+cut.Name), "bowl")
				s.solid(keep, cut.Box.With(geom.Z, geom.Span{Lo: slab.Box.Z.Hi - bowl, Hi: slab.Box.Z.Hi}), "sink "+cut.Name)
			}
		}
	}
}

// wallsOf are the fixtures of walls with the room before them: before an outlet that of
// its plug.
func (w *laying) wallsOf(s *wayScene, run *model.Run, keep *keepOff) {
	for i := range w.m.Room.Walls {
		wall := &w.m.Room.Walls[i]
		for _, f := range wall.Fixtures() {
			box := w.takes(&f, run, wall, f.Clearance)
			if box.U.Overlaps(geom.Span{Hi: run.Length}) && box.V.Overlaps(geom.Span{Lo: -length.Metre, Hi: run.Depth}) {
				s.solid(keep, box, f.Words())
			}
		}
	}
}

// takes is what a fixture of a wall takes up before it, seen from a run: before an outlet that
// of its plug, before another so much more than it stands out.
func (s *solver) takes(f *model.Fixture, run *model.Run, wall *model.Wall, more length.Length) geom.Box {
	face := f.Face
	if f.Outlet != nil {
		face, more = f.Outlet.Plate(), s.limit("plug_room")
	}
	return run.Frame.Around(wall.Frame, geom.Box{U: face.X, V: geom.Span{Lo: f.Out.Lo, Hi: f.Out.Hi + more}, Z: face.Y})
}

// pipesOf are the pipes and traps of drains: a bare line keeps its distance too.
func (w *laying) pipesOf(s *wayScene, run *model.Run, keep *keepOff) {
	room := w.limit("pipe_room")
	for _, p := range w.pipesIn(run.Frame) {
		box := p.box.Grow(room)
		if !keep.bare {
			box = keep.off(p.box, room)
		}
		s.Solids = append(s.Solids, ways.Solid{Box: box, What: p.name})
	}
}

// lanes are where a cable runs: up and down and along in each cabinet before its back, as
// near to that as a hole in the side may be, over its bottom; and along the middle of the
// framing of the knee wall, or where its studs are bored.
func (w *laying) lanes(s *wayScene, run *model.Run, keep *keepOff) {
	var at []length.Length
	low := run.Height
	off := func(rear, more length.Length) length.Length {
		return keep.off(geom.Box{V: geom.Span{Hi: rear}}, more).V.Hi
	}
	for i := range w.cabinets {
		c := &w.cabinets[i]
		if &w.m.Runs[c.run] != run {
			continue
		}
		box := &run.Boxes[c.box]
		for j := c.first; j < c.last; j++ {
			if p := &w.m.Parts[j]; p.Is("cabinet", "side") {
				at = append(at, max(off(p.Placement.Box.V.Lo, keep.edge), off(box.Inside.V.Lo, keep.joint)))
				low = min(low, box.Inside.Z.Lo)
			}
		}
	}
	slices.Sort(at)
	for _, v := range slices.Compact(at) {
		s.Lanes = append(s.Lanes, geom.Box{U: geom.Span{Hi: run.Length}, V: geom.Span{Lo: v, Hi: v}, Z: geom.Span{Lo: low, Hi: run.Height - keep.edge}})
	}
	if k := w.kneeBehind(run); k != nil {
		v := w.boredAt(k)
		s.Lanes = append(s.Lanes, k.Framing.With(geom.V, geom.Span{Lo: v, Hi: v}))
	}
}

// boredAt is where along v the studs of a knee wall are bored.
func (s *solver) boredAt(k *model.KneeWall) length.Length {
	if block := s.Block("knee_wall." + k.Name); block.Attr("bored") != nil {
		if from := s.FieldLength(block, "bored", "from_work"); from > 0 {
			return k.Framing.V.Hi - from
		}
	}
	return k.Framing.V.Mid()
}
