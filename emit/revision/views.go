package revision

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// seen is a view of both builds, or of the one that has it.
type seen struct {
	name, title, note string
	picture           picture
}

// views lays the views of both builds over each other, those with a difference; of how
// many there is none it tells. Where things are drawn apart, a difference tells nothing.
func (r *report) views() (out []seen, same int) {
	old := map[string]*model.View{} // lookup only
	for i := range r.Old.Views {
		old[r.Old.Views[i].Name] = &r.Old.Views[i]
	}
	for i := range r.New.Views {
		v := &r.New.Views[i]
		if v.Part != "" || v.Apart {
			continue
		}
		before := old[v.Name]
		delete(old, v.Name)
		if before == nil {
			out = append(out, r.alone(v, "new", r.names.New))
			continue
		}
		s := seen{name: v.Name, title: v.Title}
		by := r.shift(v.Name)
		if by != (geom.Point{}) {
			s.note = "What it is measured from stands elsewhere than before: both builds are drawn where they stand in the room."
		}
		then := shifted(before.Shapes, by)
		if s.picture = over(then, v.Shapes, r.steady(then, v.Shapes)); s.picture.differ {
			s.picture.letter(v)
			out = append(out, s)
		} else {
			same++
		}
	}
	for i := range r.Old.Views {
		if v := &r.Old.Views[i]; v.Part == "" && !v.Apart && old[v.Name] != nil {
			out = append(out, r.alone(v, "old", r.names.Old))
		}
	}
	return out, same
}

// alone shows a view that only one build has.
func (r *report) alone(v *model.View, class, side string) seen {
	s := seen{name: v.Name, title: v.Title, note: "Only " + side + " has this view."}
	s.picture = over(nil, v.Shapes, func(*model.Shape) bool { return false })
	for i := range s.picture.layers {
		if l := &s.picture.layers[i]; l.class == "new" {
			l.class = class
		}
	}
	s.picture.letter(v)
	return s
}

// letter adds the texts of a view, and what leads from them.
func (p *picture) letter(v *model.View) {
	p.height = v.TextHeight
	for i := range v.Shapes {
		if s := &v.Shapes[i]; s.Kind == model.ShapeLeader {
			p.layers = append(p.layers, layer{class: "leader", lines: []geom.Contour{s.Lines}})
			p.extend(s.Lines.Bounds())
		}
	}
	p.texts = v.Texts
	for _, t := range v.Texts {
		half := max(t.Room, v.TextHeight) / 2
		if t.Turn == 0 {
			p.extend(geom.R(t.At.X-half, t.At.Y-v.TextHeight, t.At.X+half, t.At.Y+v.TextHeight))
		} else {
			p.extend(geom.R(t.At.X-half, t.At.Y-half, t.At.X+half, t.At.Y+half))
		}
	}
}

// steady tells of what a view's layout alone makes larger or smaller: the floor, walls
// that did not change, for how thick one is drawn means nothing, and what stands in
// them, which is drawn no smaller than one can see.
func (r *report) steady(old, new []model.Shape) func(*model.Shape) bool {
	before, after := inWalls(old), inWalls(new)
	return func(s *model.Shape) bool {
		switch s.Kind {
		case model.ShapeFloor:
			return true
		case model.ShapeWall, model.ShapeStud:
			return r.sameWall(strings.TrimPrefix(s.Part, "wall."))
		case model.ShapeOutlet, model.ShapeStub:
			near := func(o *model.Shape) bool {
				return o.Kind == s.Kind && o.Lines.Bounds().Grow(nearly).Contains(s.Lines.Bounds()) &&
					s.Lines.Bounds().Grow(nearly).Contains(o.Lines.Bounds())
			}
			return slices.ContainsFunc(before[s.Part], near) && slices.ContainsFunc(after[s.Part], near)
		}
		return false
	}
}

// inWalls are the shapes of what stands in walls, by what they are of; lookup only.
func inWalls(shapes []model.Shape) map[string][]*model.Shape {
	out := map[string][]*model.Shape{}
	for i := range shapes {
		if s := &shapes[i]; s.Kind == model.ShapeOutlet || s.Kind == model.ShapeStub {
			out[s.Part] = append(out[s.Part], s)
		}
	}
	return out
}

// nearly is how far the sides of what stands in a wall may be apart.
const nearly = length.Millimetre

// sameWall reports whether a wall stands in both builds, with the same studs.
func (r *report) sameWall(name string) bool {
	find := func(m *model.Model) *model.Wall {
		i := slices.IndexFunc(m.Room.Walls, func(w model.Wall) bool { return w.Name == name })
		if i < 0 {
			return nil
		}
		return &m.Room.Walls[i]
	}
	a, b := find(r.Old), find(r.New)
	return a != nil && b != nil && a.Length == b.Length && a.Corner == b.Corner && a.Frame == b.Frame && slices.Equal(a.Studs, b.Studs)
}

// shift is how far an old view is to be moved so that what is at one place in the room
// is at one place in both: views of a run count from its left end.
func (r *report) shift(view string) geom.Point {
	for i := range r.New.Runs {
		run := &r.New.Runs[i]
		u, v := r.moved(run)
		if view == "elevation-"+run.Name || view == "fronts-"+run.Name {
			return geom.Point{X: u}
		}
		for j := range r.New.KneeWalls {
			k := &r.New.KneeWalls[j]
			if k.Run != run.Name {
				continue
			}
			switch view {
			case "knee-wall-" + k.Name, "knee-wall-" + k.Name + "-work":
				return geom.Point{X: u}
			case "knee-wall-" + k.Name + "-room":
				return geom.Point{X: -u}
			case "knee-wall-" + k.Name + "-left", "section-" + k.Name:
				return geom.Point{X: v}
			case "knee-wall-" + k.Name + "-right":
				return geom.Point{X: -v}
			}
		}
	}
	return geom.Point{}
}

// moved tells where the old origin of a run stands in its new frame; nowhere else where
// it faces another way.
func (r *report) moved(run *model.Run) (u, v model.Length) {
	i := slices.IndexFunc(r.Old.Runs, func(o model.Run) bool { return o.Name == run.Name })
	if i < 0 || r.Old.Runs[i].Frame.Turn != run.Frame.Turn {
		return 0, 0
	}
	return run.Frame.Local(r.Old.Runs[i].Frame.Origin)
}
