package view

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
	"barwright/lang/length"
)

// beside is how far floor and walls go on beside the build.
const beside = 300 * length.Millimetre

// stage is the floor of a picture: a parallelogram from a corner along two ways.
type stage struct {
	corner paint.Vec
	ways   [2]paint.Vec // of length 1
	spans  [2]geom.Span // along them
	walls  [2]*model.Wall
}

// at is a point of the stage at a height.
func (g *stage) at(a, b, z Length) paint.Vec {
	return g.corner.Add(g.ways[0].Scale(float64(a))).Add(g.ways[1].Scale(float64(b))).Add(paint.Vec{Z: float64(z)})
}

// room draws the floor under the build and the walls behind it, as high as the build, before all
// else: nothing is hidden by them.
func (s *sheet) room(m *model.Model, e paint.Eye, all []body) {
	g := stageOf(m, e)
	high := g.reach(all)
	a, b := g.spans[0], g.spans[1]
	face := func(corners ...paint.Vec) (c geom.Contour) {
		for _, v := range corners {
			c = append(c, geom.Vertex{Point: e.Project(v)})
		}
		return c
	}
	s.area(model.ShapeBeyond, face(g.at(a.Lo, b.Lo, 0), g.at(a.Hi, b.Lo, 0), g.at(a.Hi, b.Hi, 0), g.at(a.Lo, b.Hi, 0)), "", "floor")
	for i, w := range g.walls {
		if w == nil {
			continue
		}
		end := g.at(a.Hi, 0, 0)
		start := g.at(a.Lo, 0, 0)
		if i == 1 {
			start, end = g.at(0, b.Lo, 0), g.at(0, b.Hi, 0)
		}
		up := paint.Vec{Z: float64(high)}
		s.shaded(model.ShapeWall, face(start, end, end.Add(up), start.Add(up)), "wall."+w.Name, "wall "+w.Name, e.Shade(outOf(w)))
	}
}

// stageOf lays the floor along the two walls that meet in view, along one, or along a run.
func stageOf(m *model.Model, e paint.Eye) stage {
	var facing []*model.Wall
	for i := range m.Room.Walls {
		if w := &m.Room.Walls[i]; w.Length > 0 && e.Sees(outOf(w)) {
			facing = append(facing, w)
		}
	}
	along := geom.Dir{Axis: geom.U}
	for _, w := range facing {
		for _, next := range facing {
			corner := w.Frame.At(w.Length, 0)
			if w != next && meetsAt(corner, next.Frame.Origin) {
				ways := [2]paint.Vec{paint.Direction(w.Frame, along.Opposite()), paint.Direction(next.Frame, along)}
				return stage{level(corner, 0), ways, [2]geom.Span{}, [2]*model.Wall{w, next}}
			}
		}
	}
	frame := m.Runs[0].Frame
	var wall *model.Wall
	if len(facing) > 0 {
		wall = slices.MaxFunc(facing, func(a, b *model.Wall) int { return cmp.Compare(a.Length, b.Length) })
		frame = wall.Frame
	}
	ways := [2]paint.Vec{paint.Direction(frame, along), paint.Direction(frame, geom.Dir{Axis: geom.V})}
	return stage{level(frame.Origin, 0), ways, [2]geom.Span{}, [2]*model.Wall{wall}}
}

// reach extends the stage under all bodies, and returns how high these are.
func (g *stage) reach(all []body) (high Length) {
	for i := range all {
		at := &all[i].place
		high = max(high, at.Box.Z.Hi)
		for j, p := range at.Frame.Corners(at.Box.U, at.Box.V) {
			a, b := paint.Along(level(p, 0).Sub(g.corner), g.ways)
			if i == 0 && j == 0 {
				g.spans = [2]geom.Span{{Lo: a, Hi: a}, {Lo: b, Hi: b}}
			}
			g.spans[0], g.spans[1] = g.spans[0].Union(geom.Span{Lo: a, Hi: a}), g.spans[1].Union(geom.Span{Lo: b, Hi: b})
		}
	}
	for i := range g.spans {
		g.spans[i] = g.spans[i].Grow(beside)
	}
	switch w := g.walls[0]; {
	case g.walls[1] != nil:
		g.spans[0] = g.spans[0].Intersect(geom.Span{Hi: w.Length})
		g.spans[1] = g.spans[1].Intersect(geom.Span{Hi: g.walls[1].Length})
	case w != nil:
		g.spans[0] = g.spans[0].Intersect(geom.Span{Hi: w.Length})
		g.spans[1].Lo = 0
	}
	return high
}

// level is a point of the room's plan at a height.
func level(p geom.Point, z Length) paint.Vec {
	return paint.Vec{X: float64(p.X), Y: float64(p.Y), Z: float64(z)}
}
