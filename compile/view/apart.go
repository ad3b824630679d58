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

// beyondReading reports whether a build has too many parts for a picture of all taken apart, where runs and
// knee walls have pictures of their own: nobody would find one in it.
func beyondReading(m *model.Model) bool { return m.Large() && len(groupsOf(m)) > 0 }

// takenApart is the scene with its bodies moved from each other.
func (s scene) takenApart(m *model.Model) scene {
	s.all = slices.Clone(s.all)
	apart(m, s.all)
	return s
}

// exploded shows the build taken apart, from where the axonometric view shows it whole. Where groups
// have pictures of their own, it is these that name the parts.
func exploded(m *model.Model, of picture, as Type) model.View {
	names := partNames(of.all)
	if len(groupsOf(m)) > 0 {
		names = ownersOf(m, of.all)
	}
	return apartView(m, of, names, boxesOut+", skins off their wall.", as)
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
	return b.place.Frame == g.frame && g.framing == slices.Contains([]string{"knee_wall", "skin", "corner", "bar_top"}, blockKind(b))
}

// of paints what of a scene that is taken apart belongs to the group, from the side that it is used from.
func (g *group) of(apart scene) picture {
	var all []body
	for i := range apart.all {
		if b := &apart.all[i]; g.holds(b) {
			all = append(all, *b)
		}
	}
	best, area := picture{}, -1.0
	for _, e := range paint.Eyes() {
		if !e.Sees(paint.Direction(g.frame, g.out)) {
			continue
		}
		seen := painted(e, all)
		if a := uncovered(seen); a > area {
			best, area = picture{e, all, seen}, a
		}
	}
	return best
}

// explodedGroup shows a run or a knee wall taken apart.
func explodedGroup(m *model.Model, g *group, of picture, as Type) model.View {
	return apartView(m, of, partNames(of.all), g.note, as)
}

// apartView draws bodies where they are moved to, with their names.
func apartView(m *model.Model, of picture, names []string, note string, as Type) model.View {
	s := newSheet(m, pictureOf(of.seen), as, explodedShare)
	s.view.Note = isometric + note + linesOut
	s.centreLines(of.eye, of.all, of.seen)
	s.faces(of.all, of.seen)
	s.nameFaces(of.all, of.seen, names)
	s.view.Note += unseen(of.all, of.seen)
	return s.finish()
}
