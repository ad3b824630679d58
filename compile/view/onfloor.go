package view

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
)

// bare begins a plan with boxes, knee walls and the walls that they stand along, and nothing that is
// written.
func bare(m *model.Model, as Type) *sheet {
	s := newSheet(m, geom.Rect{}, as, roomShare)
	s.around(planCore(m))
	for i := range m.Room.Walls {
		met := slices.ContainsFunc(m.Runs, func(r model.Run) bool { return r.Wall == m.Room.Walls[i].Name })
		if i == 0 || met {
			s.planWall(m.Room.Walls, i)
		}
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		for k := range r.Boxes {
			s.area(model.ShapePanel, planQuad(r.Frame, r.Boxes[k].Hull).contour(), r.Boxes[k].Key(), s.boxTitle(&r.Boxes[k]))
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		s.area(model.ShapeFraming, planQuad(k.Frame, k.Framing).contour(), kneeWallID(k), "knee wall "+k.Name)
	}
	return s
}

// BearingPoints is a plan with a number at each point that a shim goes under, as they stand in
// the list of shims.
func BearingPoints(m *model.Model) Drawing {
	return func(as Type) model.View {
		s := bare(m, as)
		s.view.Name, s.view.Title = "shims", "Where shims go"
		for i := range m.Setting.Shims {
			at := onPlan(m.Setting.Shims[i].At)
			s.area(model.ShapeInk, geom.CircleContour(at, s.h/5), m.Setting.Shims[i].Of, m.Setting.Shims[i].Under)
			s.solid.add(boxAt(at, s.h/2, s.h/2, 0))
		}
		for i := range m.Setting.Shims {
			s.besides(onPlan(m.Setting.Shims[i].At), strconv.Itoa(i+1))
		}
		return s.finish()
	}
}

// onPlan is a point of the room as a plan shows it.
func onPlan(p geom.Point) geom.Point { return geom.Point{X: p.X, Y: -p.Y} }

// besides writes a short text next to a point, or further off with a leader.
func (s *sheet) besides(at geom.Point, text string) {
	b := setBlock([]string{text}, s.h)
	for _, far := range [...]Length{s.h / 3, s.h * 2 / 3, s.h} {
		for _, to := range [...][2]Length{{1, 1}, {-1, 1}, {1, -1}, {-1, -1}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			place := geom.Point{X: at.X + to[0]*(b.w/2+far), Y: at.Y + to[1]*(b.h/2+far/2)}
			if room := boxAt(place, b.w, b.h, 0); s.free(room, true) {
				s.set(b, place, 0)
				return
			}
		}
	}
	s.callout(at, text)
}

// SettingOrder is a plan with the number of each step of setting where its thing stands, and an
// arrow by which it slides there.
func SettingOrder(m *model.Model) Drawing {
	return func(as Type) model.View {
		s := bare(m, as)
		s.view.Name, s.view.Title = "order", "Order of setting"
		moves := onsite.Moves(m)
		for i := range moves {
			var path []geom.Point
			for _, p := range moves[i].Path {
				path = append(path, onPlan(p))
			}
			if len(path) > 1 {
				s.arrow(path, moves[i].Step.Block)
			}
		}
		for i := range moves {
			s.solid.add(planQuad(moves[i].Frame, moves[i].Place).box())
		}
		for i := range moves {
			mv := &moves[i]
			_, name, _ := strings.Cut(mv.Step.Block, ".")
			home, number := planQuad(mv.Frame, mv.Place), mv.Number
			if !s.within(home, true, []string{number + " " + name}) {
				s.name(home, number)
			}
		}
		return s.finish()
	}
}

// arrow draws a line with a head at its end.
func (s *sheet) arrow(path []geom.Point, id string) {
	last := len(path) - 1
	dx, dy := float64(path[last].X-path[last-1].X), float64(path[last].Y-path[last-1].Y)
	way := math.Hypot(dx, dy)
	if way == 0 {
		return
	}
	off := func(back, aside float64) geom.Vertex {
		x, y := float64(dx*back)+float64(dy*aside), float64(dy*back)-float64(dx*aside)
		return geom.Vertex{Point: path[last].Sub(geom.Point{X: Length(math.Round(x)), Y: Length(math.Round(y))})}
	}
	h := float64(s.h) / way
	s.line(model.ShapeFrame, id, "slides so", path...)
	s.area(model.ShapeInk, geom.Contour{{Point: path[last]}, off(h, h*0.35), off(h, -h*0.35)}, id, "slides so")
}
