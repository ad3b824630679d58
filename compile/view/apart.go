package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
)

const (
	boxesOut = " Boxes are drawn apart along their run and parts square to their faces; fronts and drawers stand out to the front, slabs over what they lie on"
	skinsOut = " Parts are drawn apart, skins off the framing and the bar top over it"
	linesOut = " Centre lines lead to where a part goes."
)

// exploded shows the build taken apart, from where the axonometric view shows it whole. Where groups
// have pictures of their own, it is these that name the parts.
func exploded(m *model.Model, height Length) model.View {
	all := bodies(m)
	apart(m, all)
	names := partNames(all)
	if len(groupsOf(m)) > 0 {
		names = ownersOf(m, all)
	}
	return takenApart(m, eyeFor(m), all, names, "exploded", "Taken apart", boxesOut+", skins off their wall.", height)
}

// group is a run or a knee wall, which has a picture of its own.
type group struct {
	name, title, note string
	frame             geom.Frame
	out               geom.Dir // the side that is shown
	framing           bool
}

// groupsOf lists those of a build; none where there is but one.
func groupsOf(m *model.Model) (all []group) {
	for i := range m.Runs {
		r := &m.Runs[i]
		all = append(all, group{"exploded-" + r.Name, "Run " + r.Name + ", taken apart", " Seen from its front." + boxesOut + ".", r.Frame, geom.Dir{Axis: geom.V}, false})
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		all = append(all, group{"exploded-wall-" + k.Name, "Knee wall " + k.Name + ", taken apart", " Seen from the room." + skinsOut + ".", k.Frame, geom.Dir{Axis: geom.V, Neg: true}, true})
	}
	if len(all) < 2 {
		return nil
	}
	return all
}

// holds reports whether a body belongs to the group.
func (g *group) holds(b *body) bool {
	framing := slices.Contains([]string{"knee_wall", "skin", "corner", "bar_top"}, blockKind(b))
	return b.place.Frame == g.frame && framing == g.framing
}

// explodedGroup shows a run or a knee wall taken apart, from the side that it is used from.
func explodedGroup(m *model.Model, g *group, height Length) model.View {
	all := bodies(m)
	apart(m, all)
	all = slices.DeleteFunc(all, func(b body) bool { return !g.holds(&b) })
	best, area := eyeFor(m), -1.0
	for _, e := range paint.Eyes() {
		if !e.Sees(paint.Direction(g.frame, g.out)) {
			continue
		}
		if a := shownTo(e, all); a > area {
			best, area = e, a
		}
	}
	return takenApart(m, best, all, partNames(all), g.name, g.title, g.note, height)
}

// takenApart draws bodies where they are moved to, with their names.
func takenApart(m *model.Model, e paint.Eye, all []body, names []string, name, title, note string, height Length) model.View {
	seen := painted(e, all)
	s := newSheet(m, pictureOf(seen), height, explodedShare)
	s.view.Name, s.view.Title = name, title
	s.view.Apart = true
	s.view.Note = isometric + note + linesOut
	s.centreLines(e, all, seen)
	s.faces(all, seen)
	s.nameFaces(all, seen, names)
	s.view.Note += unseen(all, seen)
	return s.finish()
}
