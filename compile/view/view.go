// Package view computes the drawings of a solved build: a plan; of each run an
// elevation, and one with its fronts; of each knee wall its framing, its finished
// faces, and a section; the whole in isometric view, as it stands and taken apart,
// and each run and knee wall taken apart; and a drawing of every part that is more
// than a rectangle, one for those that are alike. It takes a model without views and
// returns them in that order; the same model gives the same values. Beside these it
// draws sheets and sticks as they are cut, and what is marked and set by hand.
//
// A drawing is in real size. It is laid out for type of one height, a share of
// what is drawn, so that no text meets another text or a thin line, and all of
// it lies within the view's bounds. Lines follow the habits of ISO 128 and
// ISO 129-1 (from memory): thick outlines, thin dimensions, dashes for what is
// hidden, text above its line and read from below or from the right.
package view

import (
	"cmp"
	"slices"
	"sync"

	"barwright/compile/atonce"
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Drawing lays a view out for type.
type Drawing func(as Type) model.View

// Type is what a view is laid out for: a height of type in the drawing's own lengths, 0 for a share of
// what is drawn, as suits a screen; and which bounds suit, nil for any. Larger ones than what does not
// suit do not either: a view that has come so far is given up, and returned with bounds that do not suit.
type Type struct {
	Height Length
	Suits  func(bounds geom.Rect) bool
}

// Views returns the drawings of a build as a screen shows them.
func Views(m *model.Model) []model.View { return Drawn(Drawings(m)) }

// Drawn returns what some drawings draw, as a screen shows it.
func Drawn(drawings []Titled) []model.View {
	views := make([]model.View, len(drawings))
	atonce.Each(len(drawings), func(i int) { views[i] = drawings[i].Draw(Type{}) })
	return views
}

// Drawings returns what draws each of the views, in their order. What is painted of the whole is painted
// once, when it is first asked for, whatever it is drawn for.
func Drawings(m *model.Model) []Titled {
	var all titles
	in := sync.OnceValue(func() framed { return byFrame(m) })
	if len(m.Room.Walls)+len(m.Runs) > 0 {
		all.add(Head{Name: "plan", Title: "Plan"}, func(as Type) model.View { return plan(m, in(), as) })
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		all.add(Head{Name: "elevation-" + r.Name, Title: "Run " + r.Name}, func(as Type) model.View { return runElevation(in().of(r.Frame), r, as) })
		if slices.ContainsFunc(r.Boxes, func(b model.Box) bool { return len(b.Fronts) > 0 }) {
			all.add(Head{Name: "fronts-" + r.Name, Title: "Fronts of run " + r.Name}, func(as Type) model.View { return frontsElevation(in().of(r.Frame), r, as) })
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		name, title := "knee-wall-"+k.Name, "Knee wall "+k.Name
		all.add(Head{Name: name, Title: title}, func(as Type) model.View { return kneeWallElevation(in().of(k.Frame), k, as) })
		for j := range kneeWallFaces {
			if f := &kneeWallFaces[j]; len(skinsOn(k, f.name)) > 0 {
				all.add(Head{Name: name + "-" + f.name, Title: title + ", " + f.name + " face"}, func(as Type) model.View { return finishedFace(in().of(k.Frame), k, f, as) })
			}
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		all.add(Head{Name: "section-" + k.Name, Title: "Section through " + k.Name}, func(as Type) model.View { return barSection(in().of(k.Frame), k, as) })
	}
	all.pictures(m)
	for _, like := range drawnParts(m) {
		all.add(partHead(like[0], like[1:]), func(as Type) model.View { return partDrawing(m, like[0], as) })
	}
	return all.all
}

// pictures adds those of the whole and of what stands in it, as it stands and taken apart.
func (t *titles) pictures(m *model.Model) {
	if len(hulls(m)) == 0 {
		return
	}
	stands := sync.OnceValue(func() scene { return asItStands(m) })
	apart := sync.OnceValue(func() scene { return stands().takenApart(m) })
	whole := sync.OnceValue(func() picture { return stands().painted() })
	parts := sync.OnceValue(func() picture { return apart().painted() })
	t.add(Head{Name: "axonometric", Title: "The whole, seen from the room"}, func(as Type) model.View { return axonometric(m, whole(), as) })
	if !beyondReading(m) {
		t.add(Head{Name: "exploded", Title: "Taken apart", Apart: true}, func(as Type) model.View { return exploded(m, parts(), as) })
	}
	for _, g := range groupsOf(m) {
		own := sync.OnceValue(func() picture { return g.of(apart()) })
		t.add(Head{Name: g.name, Title: g.title, Apart: true}, func(as Type) model.View { return explodedGroup(m, &g, own(), as) })
	}
}

// framed is a build with the parts of each frame alone: who draws a run or a knee wall need not look at
// all the others.
type framed struct {
	builds map[geom.Frame]*model.Model // lookup only
	none   *model.Model
}

func byFrame(m *model.Model) framed {
	none := *m
	none.Parts = nil
	in := framed{map[geom.Frame]*model.Model{}, &none}
	for i := range m.Parts {
		f := m.Parts[i].Placement.Frame
		own := in.builds[f]
		if own == nil {
			own = new(model.Model)
			*own = none
			in.builds[f] = own
		}
		own.Parts = append(own.Parts, m.Parts[i])
	}
	return in
}

func (in framed) of(f geom.Frame) *model.Model { return cmp.Or(in.builds[f], in.none) }

// partKind tells how a part is drawn.
func partKind(p *model.Part) model.ShapeKind {
	switch p.Kind {
	case model.Lumber:
		return model.ShapeFraming
	case model.Steel:
		return model.ShapeSteel
	case model.SlabPiece:
		return model.ShapeSlab
	}
	return model.ShapePanel
}

// partTitle says what a part is when somebody points at it.
func partTitle(p *model.Part) string { return p.Label + ": " + p.Name + ", " + p.Owner }

func kneeWallID(k *model.KneeWall) string { return "knee_wall." + k.Name }

// rectUZ is what one sees of a box from the front of its frame.
func rectUZ(b geom.Box) geom.Rect { return geom.Rect{X: b.U, Y: b.Z} }

// rectVZ is what one sees of it from its frame's left end, front to the right.
func rectVZ(b geom.Box) geom.Rect { return geom.Rect{X: b.V, Y: b.Z} }

// mirrored returns a span as seen from the other side.
func mirrored(s geom.Span) geom.Span { return geom.Span{Lo: -s.Hi, Hi: -s.Lo} }

// slabsOver finds the slabs that lie over a box of the same frame.
func slabsOver(m *model.Model, f geom.Frame, over geom.Box) []*model.Slab {
	var found []*model.Slab
	for i := range m.Slabs {
		sl := &m.Slabs[i]
		if sl.Frame == f && sl.Box.U.Overlaps(over.U) && sl.Box.V.Overlaps(over.V) {
			found = append(found, sl)
		}
	}
	return found
}

// runHull is the box round all of a run's boxes.
func runHull(r *model.Run) geom.Box {
	hull := geom.Box{U: geom.Span{Hi: r.Length}, V: geom.Span{Hi: r.Depth}, Z: geom.Span{Hi: r.Height}}
	for i := range r.Boxes {
		hull = hull.Union(r.Boxes[i].Hull)
	}
	return hull
}
