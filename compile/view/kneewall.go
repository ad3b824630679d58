package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// framingParts returns the lumber of a knee wall.
func framingParts(m *model.Model, k *model.KneeWall) []*model.Part {
	var found []*model.Part
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Kind == model.Lumber && p.Placement.Frame == k.Frame && p.Placement.Box.Overlaps(k.Framing) {
			found = append(found, p)
		}
	}
	return found
}

// upstanding reports whether a piece of lumber stands.
func upstanding(b geom.Box) bool { return b.Z.Size() > max(b.U.Size(), b.V.Size()) }

// kneeWallElevation shows the bare framing from the room's side: what is at
// the run's right end is at the left.
func kneeWallElevation(m *model.Model, k *model.KneeWall) model.View {
	fromRoom := func(b geom.Box) geom.Rect { return geom.Rect{X: mirrored(b.U), Y: b.Z} }
	core := fromRoom(k.Framing)
	tops := slabsOver(m, k.Frame, k.Framing)
	for _, sl := range tops {
		core = core.Union(fromRoom(sl.Box))
	}
	s := newSheet(m, core, roomShare)
	s.view.Name, s.view.Title = "knee-wall-"+k.Name, "Knee wall "+k.Name
	s.view.Note = "The framing without its skins, seen from the room. " +
		"Running dimensions count from the framing's left end as seen: centres of supports above, of studs below."
	s.rect(model.ShapeBeyond, fromRoom(k.Framing), kneeWallID(k), "knee wall "+k.Name)
	for _, p := range framingParts(m, k) {
		s.rect(model.ShapeFraming, fromRoom(p.Placement.Box), p.ID, partTitle(p))
	}
	for _, sup := range k.Supports {
		s.rect(model.ShapeSteel, fromRoom(sup.Steel), sup.Part, "support at "+s.num(sup.Centre))
	}
	for _, sl := range tops {
		s.rect(model.ShapeSlab, fromRoom(sl.Box), slabID(sl), words(sl.Kind)+" "+sl.Name)
	}
	openings := skinOpenings(m, k)
	for _, o := range openings {
		s.rect(model.ShapeHidden, o.at, o.part.ID, o.name+" in "+o.part.Name)
	}
	s.floor(core)
	s.kneeWallDims(k, tops)
	for _, sl := range tops {
		s.name(upright(fromRoom(sl.Box)), words(sl.Kind)+" "+sl.Name)
	}
	for _, o := range openings {
		s.callout(upright(o.at).centre(), o.name)
	}
	return s.finish()
}

// skinOpening is what is cut through a knee wall's skin, as seen from the room.
type skinOpening struct {
	at   geom.Rect
	part *model.Part
	name string
}

func skinOpenings(m *model.Model, k *model.KneeWall) []skinOpening {
	var found []skinOpening
	for i := range m.Parts {
		p := &m.Parts[i]
		b := p.Placement.Box
		if p.Kind != model.Panel || p.Placement.Frame != k.Frame || b.V.Mid() >= 0 || p.Placement.Out.Axis != geom.V {
			continue
		}
		for _, o := range p.Openings {
			at := inFrame(p.Placement, o.Shape.Bounds())
			found = append(found, skinOpening{geom.Rect{X: mirrored(at.U), Y: at.Z}, p, o.Name})
		}
	}
	return found
}

// inFrame returns the space behind a rectangle on a part's face, in the frame
// that the part is placed in.
func inFrame(p geom.Placement, face geom.Rect) geom.Box {
	b := p.Box
	set := func(d geom.Dir, s geom.Span) {
		whole := b.Along(d.Axis)
		s = s.Shift(whole.Lo)
		if d.Neg {
			s = mirrored(s).Shift(whole.Lo + whole.Hi)
		}
		switch d.Axis {
		case geom.U:
			b.U = s
		case geom.V:
			b.V = s
		case geom.Z:
			b.Z = s
		}
	}
	set(p.X, face.X)
	set(p.Y, face.Y)
	return b
}

func (s *sheet) kneeWallDims(k *model.KneeWall, tops []*model.Slab) {
	left, right := -k.Framing.U.Hi, -k.Framing.U.Lo
	studs, supports := []Length{right}, []Length{right}
	for _, u := range k.Studs {
		studs = append(studs, -u)
	}
	for _, sup := range k.Supports {
		supports = append(supports, -sup.Centre)
		s.line(model.ShapeCentre, "", "", geom.Point{X: -sup.Centre, Y: sup.Steel.Z.Hi}, geom.Point{X: -sup.Centre, Y: s.core.Y.Hi})
	}
	s.count(s.below(), left, studs, s.num)
	if len(k.Supports) > 0 {
		s.count(s.above(), left, supports, s.num)
	}
	heights := []Length{0, k.Framing.Z.Lo, k.Framing.Z.Hi}
	for _, sl := range tops {
		heights = append(heights, sl.Box.Z.Lo, sl.Box.Z.Hi)
	}
	s.heights(s.right(), heights)
}

// heights lays a chain up a side, from the floor, and where there is more than
// one stretch their sum.
func (s *sheet) heights(sd *side, marks []Length) {
	marks = distinct(marks, s.core.Y.Hi)
	if len(marks) < 2 {
		return
	}
	s.chainAndSum(sd, across, marks, stretches(marks, s.num))
}

// chainAndSum lays a chain and, where it has more than one stretch, their sum.
func (s *sheet) chainAndSum(sd *side, st stance, marks []Length, texts []string) {
	ends := []Length{marks[0], marks[len(marks)-1]}
	if len(marks) > 2 {
		sd.ends = geom.Span{Lo: ends[0], Hi: ends[1]}
	}
	s.chain(sd, st, marks, texts)
	if len(marks) > 2 {
		s.chain(sd, st, ends, stretches(ends, s.num))
	}
}

// floor draws the floor's line under an elevation.
func (s *sheet) floor(core geom.Rect) {
	s.line(model.ShapeFloor, "", "floor",
		geom.Point{X: core.X.Lo - 2*s.h, Y: 0}, geom.Point{X: core.X.Hi + 2*s.h, Y: 0})
}
