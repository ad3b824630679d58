package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
)

// body is a thing of the build as a picture shows it.
type body struct {
	kind      model.ShapeKind
	id, title string
	name      string // the words that are written on it
	part      *model.Part
	place     geom.Placement
	outline   geom.Contour
	cuts      []paint.Cut
	cutTitles []string
	home      paint.Vec // where it is moved with what it belongs to
	moved     paint.Vec // where it is moved in all
}

// bodies lists all that stands in the room: parts, appliances, and slabs that have no pieces yet.
func bodies(m *model.Model) (all []body) {
	fronts := map[string]bool{} // lookup only
	for i := range m.Runs {
		for j := range m.Runs[i].Boxes {
			for _, f := range m.Runs[i].Boxes[j].Fronts {
				fronts[f.Part] = true
			}
		}
	}
	slabs := map[string]*model.Slab{} // lookup only
	for i := range m.Slabs {
		slabs[m.Slabs[i].Key()] = &m.Slabs[i]
	}
	pieced := map[string]bool{} // lookup only
	for i := range m.Parts {
		b := partBody(&m.Parts[i])
		if fronts[b.id] {
			b.kind = model.ShapeFront
		}
		if sl := slabs[m.Parts[i].Block()]; sl != nil {
			b.id, b.title, b.name = sl.Key(), sl.Words(), sl.Words()
			pieced[sl.Key()] = true
		}
		all = append(all, b)
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		for j := range r.Boxes {
			if b := &r.Boxes[j]; b.Kind == model.Bay {
				all = append(all, blockBody(model.ShapeAppliance, b.Key(), "appliance in "+b.Name, b.Name, r.Frame, b.Appliance))
			}
		}
	}
	for i := range m.Slabs {
		if sl := &m.Slabs[i]; !pieced[sl.Key()] {
			all = append(all, blockBody(model.ShapeSlab, sl.Key(), sl.Words(), sl.Words(), sl.Frame, sl.Box))
		}
	}
	return slices.DeleteFunc(all, func(b body) bool { return len(b.outline) < 2 })
}

func partBody(p *model.Part) body {
	b := body{
		kind: partKind(p), id: p.ID, title: partTitle(p), name: p.Label, part: p,
		place: p.Placement, outline: standing(p),
	}
	for _, o := range p.Openings {
		if !o.Notch {
			b.cuts = append(b.cuts, paint.Cut{Shape: o.Shape})
			b.cutTitles = append(b.cutTitles, o.Name+" in "+p.Name+", "+p.Owner)
		}
	}
	return b
}

func blockBody(kind model.ShapeKind, id, title, name string, f geom.Frame, box geom.Box) body {
	at := geom.Place(f, box, geom.Dir{Axis: geom.Z})
	b := body{kind: kind, id: id, title: title, name: name, place: at}
	if at.Blank().X.Size() > 0 && at.Blank().Y.Size() > 0 && at.Thickness() > 0 {
		b.outline = geom.RectContour(at.Blank())
	}
	return b
}

// cutKind tells how the n-th cut is drawn.
func (b *body) cutKind(n int) model.ShapeKind {
	if b.cuts[n].Depth > 0 {
		return model.ShapeRecess
	}
	return model.ShapeOpening
}

// middle is where the middle of a body is.
func (b *body) middle() paint.Vec {
	box := b.place.Box
	return paint.At(b.place.Frame, geom.Spot{U: box.U.Mid(), V: box.V.Mid(), Z: box.Z.Mid()})
}

// painted returns the faces of bodies that an eye sees, from back to front.
func painted(e paint.Eye, all []body) []paint.Seen {
	solids := make([]paint.Solid, len(all))
	for i := range all {
		b := &all[i]
		solids[i] = e.Prism(i, b.place, b.outline, b.cuts, b.moved)
	}
	return e.Seen(e.Order(solids))
}
