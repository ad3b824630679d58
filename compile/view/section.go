package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// barSection cuts through a knee wall and the run before it, at the first
// support, or in the middle where there is none. One looks to the right along
// the run: the work side is at the right.
func barSection(m *model.Model, k *model.KneeWall, as Type) model.View {
	at := k.Framing.U.Mid()
	where := "in the middle of the knee wall"
	if len(k.Supports) > 0 {
		at, where = k.Supports[0].Centre, "at the support nearest to the run's left end"
	}
	run := runBehind(m, k)
	front := frontBox(run, at)
	tops := slabsOver(m, k.Frame, k.Framing)
	var counters []*model.Slab
	core := rectVZ(k.Framing).Union(geom.R(k.Framing.V.Lo, 0, k.Framing.V.Hi, 0))
	if run != nil {
		counters = slabsOver(m, run.Frame, runHull(run))
		counters = slices.DeleteFunc(counters, func(sl *model.Slab) bool { return slices.Contains(tops, sl) })
	}
	if front != nil {
		core = core.Union(rectVZ(front.Hull))
	}
	slabs := append(slices.Clone(tops), counters...)
	for _, sl := range slabs {
		core = core.Union(rectVZ(sl.Box))
	}
	s := newSheet(m, core, as, pieceShare)
	s.view.Note = "Cut " + where + ", seen towards the run's right end: the room is at the left, the work side at the right."
	s.sectionShapes(m, k, front, slabs, at)
	s.floor(m, underSection(k, at))
	s.sectionDims(k, front, tops, counters)
	s.sectionNames(k, front, slabs)
	s.nameFloor()
	return s.finish()
}

func runBehind(m *model.Model, k *model.KneeWall) *model.Run {
	for i := range m.Runs {
		if m.Runs[i].Name == k.Run {
			return &m.Runs[i]
		}
	}
	return nil
}

// frontBox is the box of the run that the section passes through.
func frontBox(r *model.Run, at Length) *model.Box {
	if r == nil {
		return nil
	}
	for i := range r.Boxes {
		if u := r.Boxes[i].Hull.U; u.Lo <= at && at <= u.Hi {
			return &r.Boxes[i]
		}
	}
	return nil
}

// sectionShapes draws first what is seen beyond the cut, then what is cut.
func (s *sheet) sectionShapes(m *model.Model, k *model.KneeWall, front *model.Box, slabs []*model.Slab, at Length) {
	s.rect(model.ShapeBeyond, rectVZ(k.Framing), kneeWallID(k), "knee wall "+k.Name)
	if front != nil {
		s.rect(model.ShapeBeyond, rectVZ(front.Hull), front.Key(), s.boxTitle(front))
		if front.Kind == model.Bay {
			s.rect(model.ShapeAppliance, rectVZ(front.Appliance), front.Key(), "appliance in "+front.Name)
		}
	}
	if run := runBehind(m, k); run != nil {
		for _, p := range endPanels(m, run) {
			if p.Placement.Box.U.Lo >= at {
				s.area(model.ShapeBeyond, lookFrom(geom.Dir{Axis: geom.U, Neg: true}).shape(p, p.Outline), p.ID, partTitle(p))
			}
		}
	}
	for _, sl := range slabs {
		if sl.Box.U.Lo < at && at < sl.Box.U.Hi {
			s.cut(model.ShapeSlab, rectVZ(sl.Box), sl.Key(), sl.Words())
		}
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		b := p.Fitted()
		if p.Placement.Frame == k.Frame && p.Kind != model.Steel && p.Kind != model.SlabPiece && b.U.Lo < at && at < b.U.Hi {
			s.cut(partKind(p), rectVZ(b), p.ID, partTitle(p))
		}
	}
	for _, sup := range k.Supports {
		if sup.Steel.U.Lo < at && at < sup.Steel.U.Hi {
			s.cut(model.ShapeSteel, rectVZ(sup.Steel), sup.Part, "support at "+s.num(sup.Centre))
		}
	}
}

// cut adds a rectangle that the section cuts.
func (s *sheet) cut(kind model.ShapeKind, r geom.Rect, id, title string) {
	s.add(model.Shape{Kind: kind, Lines: geom.RectContour(r), Closed: true, Cut: true, Part: id, Title: title})
}

// sectionDims lays depths below, those of the bar top above, heights of the bar
// at the room's side and of the counter at the work side.
func (s *sheet) sectionDims(k *model.KneeWall, front *model.Box, tops, counters []*model.Slab) {
	below := []Length{k.Framing.V.Lo, k.Framing.V.Hi}
	if len(k.Supports) > 0 {
		below = append(below, k.Supports[0].Steel.V.Lo, k.Supports[0].Steel.V.Hi)
	}
	work, room := []Length{0}, []Length{0, k.Framing.Z.Lo, k.Framing.Z.Hi}
	if front != nil {
		below = append(below, front.Hull.V.Lo, front.Hull.V.Hi)
		for _, f := range front.Fronts {
			below = append(below, f.Place.V.Hi)
		}
		if front.ToeHeight > 0 {
			work = append(work, front.Hull.Z.Lo+front.ToeHeight)
		}
		work = append(work, front.Hull.Z.Lo, front.Hull.Z.Hi)
	}
	for _, sl := range counters {
		below = append(below, sl.Box.V.Hi)
		work = append(work, sl.Box.Z.Lo, sl.Box.Z.Hi)
	}
	above := []Length{k.Framing.V.Lo, k.Framing.V.Hi}
	for _, sl := range tops {
		above = append(above, sl.Box.V.Lo, sl.Box.V.Hi)
		room = append(room, sl.Box.Z.Lo, sl.Box.Z.Hi)
	}
	s.depths(s.above(), above)
	s.depths(s.below(), below)
	s.heights(s.left(), room)
	s.heights(s.right(), work)
}

// depths lays a chain along a side between distinct marks.
func (s *sheet) depths(sd *side, marks []Length) {
	slices.Sort(marks)
	marks = slices.Compact(marks)
	if len(marks) > 1 {
		sd.ends = geom.Span{Lo: marks[0], Hi: marks[len(marks)-1]}
		s.chain(sd, along, marks, stretches(marks, s.num))
	}
}

func (s *sheet) sectionNames(k *model.KneeWall, front *model.Box, slabs []*model.Slab) {
	if front != nil {
		s.name(upright(rectVZ(front.Hull)), front.Name)
	}
	for _, sl := range slabs {
		s.name(upright(rectVZ(sl.Box)), sl.Words())
	}
	if len(k.Supports) > 0 {
		s.callout(upright(rectVZ(k.Supports[0].Steel)).centre(), "support "+s.num(k.Supports[0].Steel.Z.Size())+" thick")
	}
	s.callout(upright(rectVZ(k.Framing)).centre(), "knee wall "+k.Name)
}
