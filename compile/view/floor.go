package view

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// ground is where a drawing cuts the floor: its x is a place along a line of the room's plan.
type ground struct {
	frame geom.Frame
	axis  geom.Axis // of the frame, along which x runs
	neg   bool      // against it
	off   Length    // of the line, on the other axis
	bears func(*model.Shim) bool
}

func (g *ground) plan(x Length) geom.Point {
	if g.neg {
		x = -x
	}
	if g.axis == geom.U {
		return g.frame.At(x, g.off)
	}
	return g.frame.At(g.off, x)
}

func (g *ground) x(p geom.Point) Length {
	on, v := g.frame.Local(p)
	if g.axis == geom.V {
		on = v
	}
	if g.neg {
		return -on
	}
	return on
}

// underRun is the floor under the front of a run, and what stands on it there.
func underRun(r *model.Run) *ground {
	own := map[string]bool{} // lookup only
	for i := range r.Boxes {
		own[r.Boxes[i].Key()] = true
	}
	return &ground{frame: r.Frame, axis: geom.U, off: r.Depth, bears: func(s *model.Shim) bool {
		_, v := r.Frame.Local(s.At)
		return own[s.Of] && 2*v > r.Depth
	}}
}

// underWall is the floor under a knee wall, as a look at one of its faces shows it.
func underWall(k *model.KneeWall, l look) *ground {
	g := &ground{frame: k.Frame, axis: l.x.Axis, neg: l.x.Neg, off: k.Framing.V.Mid(), bears: func(s *model.Shim) bool { return s.Of == kneeWallID(k) }}
	if g.axis == geom.V {
		g.off = k.Framing.Along(geom.U).Hi
		if l.out.Neg {
			g.off = k.Framing.Along(geom.U).Lo
		}
		g.bears = func(*model.Shim) bool { return false }
	}
	return g
}

// underSection is the floor where a section cuts it.
func underSection(k *model.KneeWall, at Length) *ground {
	return &ground{frame: k.Frame, axis: geom.V, off: at, bears: func(*model.Shim) bool { return false }}
}

// floor draws the floor's line under an elevation: level at 0, or as it was read, with the
// datum over it and the shims between.
func (s *sheet) floor(m *model.Model, g *ground) {
	lo, hi := s.core.X.Lo-2*s.h, s.core.X.Hi+2*s.h
	if len(m.Room.Floor.Readings) == 0 {
		s.line(model.ShapeFloor, "", "floor", geom.Point{X: lo}, geom.Point{X: hi})
		return
	}
	surface := m.Room.Floor.Surface()
	var line []geom.Point
	for _, r := range surface.Along(g.plan(lo), g.plan(hi)) {
		line = append(line, geom.Point{X: g.x(r.At), Y: r.Value})
	}
	for i := range m.Setting.Shims {
		if shim := &m.Setting.Shims[i]; g.bears(shim) && shim.Gap > 0 {
			s.shim(shim, g.x(shim.At))
		}
	}
	s.line(model.ShapeFloor, "", "floor, as read", line...)
	s.line(model.ShapeCentre, "", "datum", geom.Point{X: lo}, geom.Point{X: hi})
	s.ground = line
	s.view.Note += " The dash-dotted line at the foot is the datum, " + s.build.Show(length.Round(m.Room.Floor.Line, s.build.Marks)) +
		" under the line that the floor was read from: heights count from it. Under it is the floor, as read."
}

// shim draws what is between the datum and the floor at a bearing point: a shim, or how far
// a leg is wound out.
func (s *sheet) shim(shim *model.Shim, x Length) {
	what := "shim " + s.num(shim.Thick)
	if shim.Winds {
		what = "wound out by " + s.num(shim.Gap)
	}
	s.rect(model.ShapeFraming, geom.R(x-s.h/2, -shim.Gap, x+s.h/2, 0), shim.Of, what+" under "+shim.Under+" of "+shim.Words())
}

// nameFloor says how low the floor is at its lowest place within what is drawn.
func (s *sheet) nameFloor() {
	low, at := Length(0), geom.Point{}
	for i, p := range s.ground {
		if i > 0 {
			for _, x := range [...]Length{s.core.X.Lo, s.core.X.Hi} {
				if q, ok := onLine(s.ground[i-1], p, x); ok && q.Y < low {
					low, at = q.Y, q
				}
			}
		}
		if p.Y < low && s.core.X.Holds(p.X) {
			low, at = p.Y, p
		}
	}
	if low < 0 {
		s.callout(at, "floor "+s.mark(-low), "below the datum")
	}
}

// onLine is the point of a straight line at x, where it has one.
func onLine(a, b geom.Point, x Length) (geom.Point, bool) {
	if x < min(a.X, b.X) || x > max(a.X, b.X) || a.X == b.X {
		return a, false
	}
	share := float64(x-a.X) / float64(b.X-a.X)
	return geom.Point{X: x, Y: a.Y + Length(math.Round(float64(share*float64(b.Y-a.Y))))}, true
}
