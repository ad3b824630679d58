package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
)

// How many lines of type the longer side of a picture holds.
const (
	pictureShare  = 80
	explodedShare = 110
)

const isometric = "Isometric: lengths along the first wall, square to it and upwards are true to scale."

// picture is what is painted of bodies. Type of any height is laid out over the same one.
type picture struct {
	eye  paint.Eye
	all  []body
	seen []paint.Seen
}

// scene is all that stands in the room, and from where it is seen.
type scene struct {
	eye paint.Eye
	all []body
}

// asItStands is the build seen from the corner of the room that shows most of it.
func asItStands(m *model.Model) scene { return scene{eyeFor(m), bodies(m)} }

// painted is the picture of a scene.
func (s scene) painted() picture { return picture{s.eye, s.all, painted(s.eye, s.all)} }

// axonometric shows the build as it stands.
func axonometric(m *model.Model, of picture, as Type) model.View {
	e, all, seen := of.eye, of.all, of.seen
	s := newSheet(m, pictureOf(seen), as, pictureShare)
	s.view.Note = isometric + " Walls are drawn as high as the build, and only those that face the eye; openings are left blank."
	if beyondReading(m) {
		s.view.Note += " The whole has too many parts to be drawn taken apart: each run and each knee wall is drawn so."
	}
	s.room(m, e, all)
	s.faces(all, seen)
	s.nameFaces(all, seen, ownersOf(m, all))
	return s.finish()
}

// pictureOf is the rectangle round what is seen.
func pictureOf(seen []paint.Seen) (r geom.Rect) {
	for i := range seen {
		own := ringOf(seen[i].Outline).Bounds()
		if i == 0 {
			r = own
		}
		r = r.Union(own)
	}
	return r
}

// eyeFor chooses from where the build is seen: with the most of those walls in view that runs
// stand at, and of such corners the one from which most of the build is seen. Of equals it takes
// the first.
func eyeFor(m *model.Model) paint.Eye {
	eyes := paint.Eyes()
	var walls [len(eyes)]Length
	for i, e := range eyes {
		for j := range m.Room.Walls {
			w := &m.Room.Walls[j]
			carries := slices.ContainsFunc(m.Runs, func(r model.Run) bool { return r.Wall == w.Name })
			if carries && e.Sees(outOf(w)) {
				walls[i] += w.Length
			}
		}
	}
	most := slices.Max(walls[:])
	best, area := eyes[0], -1.0
	for i, e := range eyes {
		if walls[i] < most-most/100 {
			continue
		}
		if a := uncovered(painted(e, hulls(m))); a > area {
			best, area = e, a
		}
	}
	return best
}

// outOf is where the face of a wall looks.
func outOf(w *model.Wall) paint.Vec { return paint.Direction(w.Frame, geom.Dir{Axis: geom.V}) }

// uncovered is how much of a picture nothing covers, in square nanometres.
func uncovered(seen []paint.Seen) (area float64) {
	for _, f := range seen {
		for _, free := range f.Free {
			area += free.Area
		}
	}
	return area
}

// hulls are the build in the large: boxes of runs, knee walls and slabs.
func hulls(m *model.Model) (all []body) {
	add := func(f geom.Frame, b geom.Box) { all = append(all, blockBody(model.ShapePanel, "", "", "", f, b)) }
	for i := range m.Runs {
		for _, b := range m.Runs[i].Boxes {
			add(m.Runs[i].Frame, b.Hull)
		}
	}
	for _, k := range m.KneeWalls {
		add(k.Frame, k.Framing)
	}
	for _, sl := range m.Slabs {
		add(sl.Frame, sl.Box)
	}
	return slices.DeleteFunc(all, func(b body) bool { return b.outline == nil })
}

// faces draws what is seen of bodies.
func (s *sheet) faces(all []body, seen []paint.Seen) {
	for i := range seen {
		f := &seen[i]
		b := &all[f.Of]
		kind, title := b.kind, b.title
		if f.Cut > 0 {
			kind, title = b.cutKind(f.Cut-1), b.cutTitles[f.Cut-1]
		}
		s.shaded(kind, ringOf(f.Outline), b.id, title, f.Shade)
	}
}

func (s *sheet) shaded(kind model.ShapeKind, lines geom.Contour, id, title string, by paint.Shade) {
	shade := [...]model.Shade{paint.Top: model.ShadeTop, paint.Left: model.ShadeLeft, paint.Right: model.ShadeRight}[by]
	s.add(model.Shape{Kind: kind, Lines: lines, Closed: true, Part: id, Title: title, Shade: shade})
}

func ringOf(points []geom.Point) geom.Contour {
	c := make(geom.Contour, len(points))
	for i, p := range points {
		c[i] = geom.Vertex{Point: p}
	}
	return c
}
