package view

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// piecesOf returns the parts that a slab is made of, those that lie.
func piecesOf(m *model.Model, sl *model.Slab) (found []*model.Part) {
	for i := range m.Parts {
		if p := &m.Parts[i]; slices.Contains(sl.Parts, p.ID) && p.Placement.Out.Axis == geom.Z {
			found = append(found, p)
		}
	}
	return found
}

// planCuts draws what is cut and bored through a slab.
func (s *sheet) planCuts(m *model.Model, sl *model.Slab) {
	for _, p := range piecesOf(m, sl) {
		for _, o := range p.Openings {
			s.area(model.ShapeAbove, planShape(p, o.Shape), p.ID, o.Name+" in "+p.Owner)
		}
		for j := range p.Bores {
			if b := &p.Bores[j]; b.Through() {
				s.area(model.ShapeAbove, planShape(p, b.Shape()), p.ID, b.Name+" in "+p.Owner)
			}
		}
	}
}

// planShape is a contour on the face of a part that lies, seen from above.
func planShape(p *model.Part, c geom.Contour) geom.Contour {
	f := planFrame(p.Placement.Frame)
	out := make(geom.Contour, len(c))
	for i, v := range lookFrom(geom.Dir{Axis: geom.Z}).shape(p, c) {
		out[i] = geom.Vertex{Point: f.At(v.X, v.Y), Bulge: v.Bulge}
	}
	return out
}

func (s *sheet) boxTitle(b *model.Box) string {
	return b.Words() + ", " + s.build.Plain(b.Hull.U.Size()) + " wide"
}

// planCutNames names what is cut and bored through a slab.
func (s *sheet) planCutNames(m *model.Model, sl *model.Slab) {
	for _, p := range piecesOf(m, sl) {
		for _, o := range p.Openings {
			home := planShape(p, o.Shape).Bounds()
			if !s.inside(upright(home), o.Name) {
				s.callout(s.clear(home), o.Name)
			}
		}
		for _, like := range p.LikeBores() {
			if like[0].Through() {
				s.callout(upright(planShape(p, like[0].Shape()).Bounds()).centre(), like[0].Name)
			}
		}
	}
}

// clear is a point in a rectangle that no text covers, or its middle.
func (s *sheet) clear(r geom.Rect) geom.Point {
	q := upright(r)
	for _, spot := range spots {
		at := q.at(r.X.Lo+r.X.Size()*spot[0]/100, r.Y.Lo+r.Y.Size()*spot[1]/100)
		if s.free(boxAt(at, s.h, s.h, 0), false) {
			return at
		}
	}
	return q.centre()
}
