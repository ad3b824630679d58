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

// kneeWallElevation shows the bare framing from the work side, with the boxes of the
// outlets in it.
func kneeWallElevation(m *model.Model, k *model.KneeWall, as Type) model.View {
	core := rectUZ(k.Framing)
	tops := slabsOver(m, k.Frame, k.Framing)
	for _, sl := range tops {
		core = core.Union(rectUZ(sl.Box))
	}
	s := newSheet(m, core, as, roomShare)
	s.view.Note = "The framing without its skins, seen from the work side. " +
		"Running dimensions count from the framing's left end: centres of supports above, of studs below."
	s.rect(model.ShapeBeyond, rectUZ(k.Framing), kneeWallID(k), "knee wall "+k.Name)
	for _, p := range framingParts(m, k) {
		s.rect(model.ShapeFraming, rectUZ(p.Placement.Box), p.ID, partTitle(p))
	}
	for _, sup := range k.Supports {
		s.rect(model.ShapeSteel, rectUZ(sup.Steel), sup.Part, "support at "+s.num(sup.Centre))
	}
	for _, sl := range tops {
		s.rect(model.ShapeSlab, rectUZ(sl.Box), sl.Key(), sl.Words())
	}
	openings := skinOpenings(m, k)
	for _, o := range openings {
		s.rect(model.ShapeHidden, o.at, o.part.ID, o.name+" in "+o.part.Name)
	}
	s.outletBoxes(k)
	s.floor(m, underWall(k, lookFrom(geom.Dir{Axis: geom.V})))
	s.kneeWallDims(k, tops)
	for _, sl := range tops {
		s.name(upright(rectUZ(sl.Box)), sl.Words())
	}
	for _, o := range openings {
		s.callout(upright(o.at).centre(), o.name)
	}
	for i := range k.Outlets {
		o := &k.Outlets[i]
		s.callout(upright(rectUZ(o.Box)).centre(), "outlet "+o.Name, o.Face+" face")
	}
	s.nameFloor()
	return s.finish()
}

// outletBoxes draws the boxes of outlets, and carries their heights to the left.
func (s *sheet) outletBoxes(k *model.KneeWall) {
	for i := range k.Outlets {
		o := &k.Outlets[i]
		at := rectUZ(o.Box)
		s.rect(model.ShapeOutlet, at, "outlet."+o.Name, "outlet "+o.Name+", "+o.Face+" face")
		s.line(model.ShapeCentre, "", "", geom.Point{X: at.X.Lo, Y: at.Y.Mid()}, geom.Point{X: s.core.X.Lo, Y: at.Y.Mid()})
	}
	if len(k.Outlets) > 0 {
		s.view.Note += " At the left: heights of the centres of outlets."
	}
}

// skinOpening is what is cut through a panel on a knee wall.
type skinOpening struct {
	at   geom.Rect
	part *model.Part
	name string
}

func skinOpenings(m *model.Model, k *model.KneeWall) []skinOpening {
	var found []skinOpening
	if len(k.Skins) > 0 { // a view of its face shows them
		return nil
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		b := p.Placement.Box
		if p.Kind != model.Panel || p.Placement.Frame != k.Frame || b.V.Mid() >= 0 || p.Placement.Out.Axis != geom.V {
			continue
		}
		for _, o := range p.Openings {
			at := rectUZ(p.Placement.Behind(o.Shape.Bounds()))
			found = append(found, skinOpening{at, p, o.Name})
		}
	}
	return found
}

func (s *sheet) kneeWallDims(k *model.KneeWall, tops []*model.Slab) {
	left, right := k.Framing.U.Lo, k.Framing.U.Hi
	studs, supports, zs := append([]Length{right}, k.Studs...), []Length{right}, []Length{}
	for _, sup := range k.Supports {
		supports = append(supports, sup.Centre)
		s.line(model.ShapeCentre, "", "", geom.Point{X: sup.Centre, Y: sup.Steel.Z.Hi}, geom.Point{X: sup.Centre, Y: s.core.Y.Hi})
	}
	for i := range k.Outlets {
		zs = append(zs, k.Outlets[i].Box.Z.Mid())
	}
	s.count(s.left(), 0, zs, s.fine)
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

// heights lays a chain up a side, from the floor or its datum, and where there is more than
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
