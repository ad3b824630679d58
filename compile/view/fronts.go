package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// endPanels returns the panels that cover the ends of a run.
func endPanels(m *model.Model, r *model.Run) (found []*model.Part) {
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Placement.Frame == r.Frame && p.BlockKind() == "end_panel" {
			found = append(found, p)
		}
	}
	return found
}

// isFront reports whether a part closes a box of the run from the front.
func isFront(r *model.Run, p *model.Part) bool {
	return slices.ContainsFunc(r.Boxes, func(b model.Box) bool {
		return slices.ContainsFunc(b.Fronts, func(f model.Front) bool { return f.Part == p.ID })
	})
}

// frontsElevation shows a run from the front with its doors and drawers shut.
func frontsElevation(m *model.Model, r *model.Run, as Type) model.View {
	hull := runHull(r)
	slabs := slabsOver(m, r.Frame, hull)
	slabs = slices.DeleteFunc(slabs, func(sl *model.Slab) bool { return sl.Kind != "counter" })
	core := rectUZ(hull).Union(geom.R(0, 0, 0, 0))
	for _, sl := range slabs {
		core = core.Union(rectUZ(sl.Box))
	}
	ends := endPanels(m, r)
	for _, p := range ends {
		core = core.Union(rectUZ(p.Fitted()))
	}
	s := newSheet(m, core, as, roomShare)
	s.view.Note = "Seen from the front, doors and drawers shut. The dashed lines of a door meet at its hinges. " +
		"Sizes are with the banding: width × height."
	cuts := s.endWalls(m, r)
	s.runBoxes(r, runParts(m, r))
	for _, p := range ends {
		s.seen(lookFrom(geom.Dir{Axis: geom.V}), p, model.ShapePanel)
	}
	for i := range r.Boxes {
		for j := range r.Boxes[i].Fronts {
			s.front(m, &r.Boxes[i], &r.Boxes[i].Fronts[j])
		}
	}
	for _, sl := range slabs {
		s.rect(model.ShapeSlab, rectUZ(sl.Box), sl.Key(), sl.Words())
	}
	s.floor(m, underRun(r))
	s.frontNames(m, r)
	for _, c := range cuts {
		s.nameWall(c)
	}
	s.runHeights(r, hull, slabs)
	for _, sl := range slabs {
		s.name(upright(rectUZ(sl.Box)), sl.Words())
	}
	s.nameFloor()
	return s.finish()
}

// front draws a front, what goes through it, and how a door opens.
func (s *sheet) front(m *model.Model, b *model.Box, f *model.Front) {
	at := rectUZ(f.Place)
	s.rect(model.ShapeFront, at, f.Part, f.Name+" of "+b.Name)
	l := lookFrom(geom.Dir{Axis: geom.V})
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.ID != f.Part || !l.faces(p) {
			continue
		}
		for j := range p.Bores {
			if bore := &p.Bores[j]; bore.Through() {
				hole := l.shape(p, bore.Shape())
				s.area(model.ShapeBore, hole, p.ID, bore.Name+" in "+f.Name+" of "+b.Name)
				s.lines.add(outlineSegs(model.Shape{Lines: hole, Closed: true})...) // no text hides it
			}
		}
	}
	if f.Kind != model.Door {
		return
	}
	hinges, open := at.X.Lo, at.X.Hi
	if f.Hinged == model.Right {
		hinges, open = open, hinges
	}
	s.line(model.ShapeHidden, f.Part, f.Name+" of "+b.Name+", how it opens",
		geom.Point{X: open, Y: at.Y.Lo}, geom.Point{X: hinges, Y: at.Y.Mid()}, geom.Point{X: open, Y: at.Y.Hi})
}

// frontNames writes what each front is and its size, and lays the chain of widths
// below.
func (s *sheet) frontNames(m *model.Model, r *model.Run) {
	var marks []Length
	var widths []string
	for i := range r.Boxes {
		b := &r.Boxes[i]
		width := s.num(b.Hull.U.Size())
		switch {
		case len(b.Fronts) > 0:
			width = clip(b.Name) + " " + width
		case !s.boxName(m, b):
			width = clip(b.Name) + " " + width
		}
		marks, widths = append(marks, b.Hull.U.Lo), append(widths, width)
		if i+1 == len(r.Boxes) {
			marks = append(marks, b.Hull.U.Hi)
		}
	}
	s.chainAndSum(s.below(), along, marks, widths)
	for i := range r.Boxes {
		for _, f := range r.Boxes[i].Fronts {
			home := upright(rectUZ(f.Place))
			w, h := s.caliper(home.u.Size()), s.caliper(home.v.Size())
			forms := [][]string{{f.Name, w + " × " + h}, {f.Name + ", " + w + " × " + h}, {f.Name, w + " ×", h}}
			clear := func(form []string) bool { return s.within(home, true, form) }
			over := func(form []string) bool { return s.within(home, false, form) }
			if !slices.ContainsFunc(forms, clear) && !slices.ContainsFunc(forms, over) {
				s.callout(home.centre(), forms[0]...)
			}
		}
	}
}
