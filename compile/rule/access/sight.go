package access

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// body is what hides a piece of wall from whoever stands in the room.
type body struct {
	name string
	of   *model.Box // the box of a run; nil where it is none
	box  geom.Box
	at   geom.Frame
	why  model.Why
}

// bodiesOf lists the boxes of runs, end panels and knee walls with their skins. A filler
// is its strip: behind that nothing is.
func bodiesOf(b *rule.Build) []body {
	var out []body
	for i := range b.Runs {
		run := &b.Runs[i]
		for j := range run.Boxes {
			box := &run.Boxes[j]
			fills := box.Hull
			if strip := b.PartsOf(box.Key()); box.Kind == model.Filler && len(strip) > 0 {
				fills = strip[0].Placement.Box
			}
			out = append(out, body{box.Words(), box, fills, run.Frame, box.Why})
		}
	}
	for i := range b.Parts {
		if p := &b.Parts[i]; p.BlockKind() == "end_panel" {
			out = append(out, body{name: p.Owner, box: p.Placement.Box, at: p.Placement.Frame, why: p.Why})
		}
	}
	for i := range b.KneeWalls {
		k := &b.KneeWalls[i]
		whole := k.Framing
		for _, skin := range k.Skins {
			whole = whole.Union(skin.Box)
		}
		out = append(out, body{name: "knee wall " + k.Name, box: whole, at: k.Frame, why: k.Why})
	}
	return out
}

// spot is a point of the floor in the terms of a wall: along it and out of it.
type spot struct{ u, v float64 }

// seen is a body in the terms of a wall, or of the fronts of a run: its corners in
// plan, counter-clockwise, and what they span along it.
type seen struct {
	*body
	corners [4]spot
	lo, hi  float64
}

func seenFrom(frame geom.Frame, bodies []body) []seen {
	out := make([]seen, len(bodies))
	for i := range bodies {
		b := &bodies[i]
		out[i] = seen{body: b, lo: math.Inf(1), hi: math.Inf(-1)}
		for j, c := range b.at.Corners(b.box.U, b.box.V) {
			u, v := frame.Local(c)
			out[i].corners[j] = spot{float64(u), float64(v)}
			out[i].lo, out[i].hi = min(out[i].lo, float64(u)), max(out[i].hi, float64(u))
		}
	}
	return out
}

// reaches is how far from a point and along a direction of length 1 a body begins;
// ok is false where it is not met.
func (s *seen) reaches(from, dir spot) (far float64, ok bool) {
	lo, hi := 0.0, math.Inf(1)
	for i, a := range s.corners {
		c := s.corners[(i+1)%4]
		eu, ev := c.u-a.u, c.v-a.v
		inside := float64(eu*(from.v-a.v)) - float64(ev*(from.u-a.u))
		turn := float64(eu*dir.v) - float64(ev*dir.u)
		switch {
		case turn > 0:
			lo = max(lo, -inside/turn)
		case turn < 0:
			hi = min(hi, -inside/turn)
		case inside < 0:
			return 0, false
		}
	}
	return lo, lo <= hi
}

// on is what a body covers of a rectangle of the wall, so far out of its face.
func (s *seen) on(face geom.Rect, out geom.Length) geom.Rect {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, a := range s.corners {
		c := s.corners[(i+1)%4]
		for _, v := range []float64{0, float64(out)} {
			if d := c.v - a.v; d != 0 && min(a.v, c.v) <= v && v <= max(a.v, c.v) {
				u := a.u + float64((v-a.v)/d*(c.u-a.u))
				lo, hi = min(lo, u), max(hi, u)
			}
		}
		if 0 <= a.v && a.v <= float64(out) {
			lo, hi = min(lo, a.u), max(hi, a.u)
		}
	}
	if lo > hi {
		return geom.Rect{X: geom.Span{Lo: 1}} // empty
	}
	return geom.Rect{X: geom.Span{Lo: geom.Length(math.Round(lo)), Hi: geom.Length(math.Round(hi))}, Y: s.box.Z}.Intersect(face)
}

// view is a wall with what is in it and what stands before it.
type view struct {
	wall     *model.Wall
	fixtures []*fixture
	bodies   []seen
	others   []seen // the other walls, as thin bodies
}

// viewsOf looks at all walls that have fixtures.
func viewsOf(b *rule.Build, fixtures []fixture) []view {
	bodies, walls := bodiesOf(b), wallBodies(b)
	var out []view
	for i := range b.Room.Walls {
		v := view{wall: &b.Room.Walls[i]}
		for j := range fixtures {
			if fixtures[j].wall == v.wall {
				v.fixtures = append(v.fixtures, &fixtures[j])
			}
		}
		if len(v.fixtures) == 0 {
			continue
		}
		v.bodies = seenFrom(v.wall.Frame, v.near(bodies, away))
		v.others = seenFrom(v.wall.Frame, v.near(append(walls[:i:i], walls[i+1:]...), away))
		out = append(out, v)
	}
	return out
}

// near are the bodies that may come nearer than far to some fixture of the wall, its plate and where it
// ends in the room: of no others is anything said.
func (v *view) near(bodies []body, far geom.Length) (out []body) {
	var whole geom.Rect // in the terms of the wall, seen from above
	for i, f := range v.fixtures {
		at := geom.Rect{X: f.face.X.Union(f.cover.X), Y: geom.Span{Hi: max(0, f.out)}}
		if f.cover.X.Size() <= 0 {
			at.X = f.face.X
		}
		if i == 0 {
			whole = at
		}
		whole = geom.Rect{X: whole.X.Union(at.X), Y: whole.Y.Union(at.Y)}
	}
	mid := v.wall.Frame.At(whole.X.Mid(), whole.Y.Mid())
	far += whole.X.Size() + whole.Y.Size()
	for i := range bodies {
		b := &bodies[i]
		size := b.box.U.Size() + b.box.V.Size()
		if d := b.at.At(b.box.U.Mid(), b.box.V.Mid()).Sub(mid); max(d.X, -d.X, d.Y, -d.Y) <= far+size {
			out = append(out, *b)
		}
	}
	return out
}

// higherThanAll is taken for the height of walls, which nobody states.
const higherThanAll = 100 * length.Metre

// wallBodies lists the walls of the room, as thin as a hair.
func wallBodies(b *rule.Build) []body {
	var out []body
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		hair := geom.Box{U: geom.Span{Hi: w.Length}, V: geom.Span{Lo: -length.Millimetre}, Z: geom.Span{Hi: higherThanAll}}
		out = append(out, body{name: "wall " + w.Name, box: hair, at: w.Frame, why: w.Why})
	}
	return out
}

// away is how far one must see from a fixture, past what stands before it, to take
// it for open to the room.
const away = 1200 * length.Millimetre

// sight is the body that a fixture looks at square from its wall, where nothing open
// is seen to either side of it: no straight line up to 80 degrees off square gets
// away. Nil where one does.
func (v *view) sight(f *fixture) *body {
	from := spot{float64(f.face.X.Mid()), float64(f.out)}
	bodies, others := about(v.bodies, from, f.face.Y.Mid()), about(v.others, from, f.face.Y.Mid())
	bodies = slices.DeleteFunc(bodies, func(s seen) bool { return !s.hides(f) })
	first, far := nearest(bodies, from, 0)
	if first == nil || far > float64(away) {
		return nil
	}
	for turn := -80 * geom.Degree; turn <= 80*geom.Degree; turn += 5 * geom.Degree {
		_, toBody := nearest(bodies, from, turn)
		_, toWall := nearest(others, from, turn)
		if min(toBody, toWall) > float64(away) {
			return nil
		}
	}
	return first
}

// about are the bodies that stand at a height, no further along the wall than is away.
func about(bodies []seen, from spot, high geom.Length) []seen {
	var out []seen
	for i := range bodies {
		s := &bodies[i]
		if s.lo <= from.u+float64(away) && s.hi >= from.u-float64(away) && s.box.Z.Lo <= high && high <= s.box.Z.Hi {
			out = append(out, *s)
		}
	}
	return out
}

// nearest is the body that a line meets first, and how far off it begins.
func nearest(bodies []seen, from spot, turn geom.Angle) (first *body, far float64) {
	far = math.Inf(1)
	sin, cos := turn.SinCos()
	for i := range bodies {
		if at, ok := bodies[i].reaches(from, spot{sin, cos}); ok && at < far {
			first, far = bodies[i].body, at
		}
	}
	return first, far
}
