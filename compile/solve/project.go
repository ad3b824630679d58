package solve

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// standsAgainst is how far a box may stand off a wall and still be taken to
// stand against it, so that an outlet behind it is used from inside it.
const standsAgainst = 50 * length.Millimetre

// passage is the way of a thing out of its wall, in the frame of a run: in plan
// the quadrangle from the wall's face to its end, and its heights.
type passage struct {
	near, far [2]plan // the two edges of the thing: at the wall, and where it ends
	z         geom.Span
}

// plan is a point of a frame; its coordinates are not rounded.
type plan struct{ u, v float64 }

func (p plan) along(a geom.Axis) float64 {
	if a == geom.U {
		return p.u
	}
	return p.v
}

// stand is where a run stands in terms of its own wall: exact, whatever the
// wall's turn in the room.
type stand struct {
	wall    *model.Wall
	back    geom.Point // the run's origin, in the wall's (u, v)
	quarter int        // quarter turns from the wall's frame to the run's
	frame   geom.Frame
}

// local turns a point of a wall into the run's (u, v).
func (r *stand) local(wall *model.Wall, u, v length.Length) plan {
	if wall != r.wall {
		lu, lv := r.frame.Local(wall.Frame.At(u, v))
		return plan{float64(lu), float64(lv)}
	}
	du, dv := float64(u-r.back.X), float64(v-r.back.Y)
	switch r.quarter {
	case 1:
		return plan{dv, -du}
	case -1:
		return plan{-dv, du}
	}
	return plan{du, dv}
}

// pass follows a thing out of its wall, from one distance off the wall's face to another. A
// baseboard stands on the floor, and lets no tongue of a blank under it that is cut to the
// floor later.
func pass(t *thing, run *stand, from, to length.Length) passage {
	p := passage{z: t.clear.Y}
	if t.kind == baseboard {
		p.z.Lo -= length.Metre
	}
	for i, along := range []length.Length{t.clear.X.Lo, t.clear.X.Hi} {
		p.near[i] = run.local(t.wall, along, t.face.Lo+from)
		p.far[i] = run.local(t.wall, along, t.face.Hi+to)
	}
	return p
}

// project cuts what stands in or on the walls into every panel and plate that
// it passes. Baseboards come first: what is cut later meets their notches. Drains come
// last, past all of it.
func (s *solver) project(things []thing) {
	boxed, near := make([]bool, len(s.m.Parts)), s.thingsBy(things)
	for i := range s.cabinets {
		c := &s.cabinets[i]
		for _, j := range near[c.run] {
			s.projectInto(c, &things[j])
		}
		for k := c.first; k < c.last; k++ {
			boxed[k] = true
		}
	}
	for i := range s.m.Parts {
		if boxed[i] || s.m.Parts[i].BlockKind() == "cabinet" { // fronts and drawers stay whole
			continue
		}
		if run := s.standOf(&s.m.Parts[i]); run >= 0 {
			for _, j := range near[run] {
				s.projectOnto(i, &things[j], &s.stands[run], things[j].out)
			}
		}
	}
	s.drains()
	for i := range s.m.Parts {
		s.cutNotches(i)
		trimRecesses(&s.m.Parts[i])
	}
}

// letsThrough reports whether things can be cut out of a part: panels, and the
// plates of a knee wall. Studs, blocks, steel and slabs stay whole.
func letsThrough(p *model.Part) bool {
	return p.Kind == model.Panel || p.Is("knee_wall", "plate")
}

// standOf is the index of the run that a part belongs to; negative where it is none's.
func (s *solver) standOf(p *model.Part) int {
	return slices.IndexFunc(s.stands, func(r stand) bool { return r.frame == p.Placement.Frame })
}

// projectInto cuts a thing into the panels of a cabinet that it passes.
func (s *solver) projectInto(c *cabinet, t *thing) {
	run, box := &s.stands[c.run], &s.m.Runs[c.run].Boxes[c.box]
	inside := c.depthToInside(t, run, box)
	for i := c.first; i < c.last; i++ {
		s.projectOnto(i, t, run, max(t.out, inside))
	}
	s.projectOnward(c, t, run)
	if inside > 0 {
		p := pass(t, run, 0, max(t.out, inside))
		s.checkReached(t, &p, c, box)
	}
}

// projectOnward cuts what lies on a thing's way out of a box whose boards are open to
// an edge for it: without that, no slot would lead the box over it.
func (s *solver) projectOnward(c *cabinet, t *thing, run *stand) {
	to, open := opensTo(&t.cut)
	own := func(o model.Opening) bool { return o.Why.At == t.why.At }
	boards := s.m.Parts[c.first:c.last]
	if !open || t.out == 0 || !slices.ContainsFunc(boards, func(p model.Part) bool {
		_, edge := openEdge(&p, &t.cut)
		return edge && slices.ContainsFunc(p.Openings, own)
	}) {
		return
	}
	p := pass(t, run, 0, t.out)
	p.onward(to)
	for i := range boards {
		if board := &boards[i]; letsThrough(board) && !board.Is("cabinet", "shelf") && !slices.ContainsFunc(board.Openings, own) {
			if face, ok := p.footprint(board); ok {
				s.open(c.first+i, t, face)
			}
		}
	}
}

// onward takes a passage on and on in a direction.
func (p *passage) onward(to geom.Dir) {
	quad := []plan{p.near[0], p.near[1], p.far[0], p.far[1]}
	box := geom.Box{U: extent(quad, geom.U), V: extent(quad, geom.V), Z: p.z}.Onward(to, 100*length.Metre)
	if p.z = box.Z; to.Axis == geom.Z {
		return
	}
	for i, u := range []length.Length{box.U.Lo, box.U.Hi} {
		p.near[i] = plan{float64(u), float64(box.V.Lo)}
		p.far[i] = plan{float64(u), float64(box.V.Hi)}
	}
}

// projectOnto cuts a thing that goes so far out of its wall into a part that it
// passes. A part that is to be scribed to the wall reaches into it as drawn.
func (s *solver) projectOnto(i int, t *thing, run *stand, out length.Length) {
	part := &s.m.Parts[i]
	if out <= 0 || !letsThrough(part) {
		return
	}
	p := pass(t, run, -s.scribes[i], out)
	if face, ok := p.footprint(part); ok {
		s.open(i, t, face)
	}
}

// depthToInside is how far from its wall the clear inside of a box begins that
// stands against the wall before a thing used from inside; 0 where none does.
// What lies behind the rear stretcher is used from before it.
func (c *cabinet) depthToInside(t *thing, run *stand, box *model.Box) length.Length {
	clear := box.Inside
	if !t.inward || box.Kind != model.Cabinet || !t.clear.Y.Overlaps(clear.Z) {
		return 0
	}
	if t.clear.Y.Overlaps(c.stretcher.Z) {
		clear.V.Lo = max(clear.V.Lo, c.stretcher.V.Hi)
	}
	deepest := 0.0
	p := pass(t, run, 0, length.Metre)
	for i := range p.near {
		off, ok := meets(p.near[i], p.far[i], box.Hull)
		if !ok || off > float64(standsAgainst) {
			continue
		}
		if inside, ok := meets(p.near[i], p.far[i], clear); ok {
			deepest = max(deepest, inside)
		}
	}
	return length.Length(math.Round(deepest))
}

// meets is how far along the metre from a to b the way first enters a box in
// plan.
func meets(a, b plan, box geom.Box) (float64, bool) {
	from, to := 0.0, 1.0
	for _, axis := range []geom.Axis{geom.U, geom.V} {
		start, step := a.along(axis), b.along(axis)-a.along(axis)
		lo, hi := float64(box.Along(axis).Lo), float64(box.Along(axis).Hi)
		if step == 0 {
			if start < lo || start > hi {
				return 0, false
			}
			continue
		}
		enter, leave := (lo-start)/step, (hi-start)/step
		if enter > leave {
			enter, leave = leave, enter
		}
		from, to = max(from, enter), min(to, leave)
	}
	return from * float64(length.Metre), from <= to
}

// footprint is where a passage goes through a part, on the part's face and
// seen along its thickness; ok is false where it misses the part. A passage
// that is not square to the part is taken as wide as it comes anywhere in the
// thickness.
func (p *passage) footprint(part *model.Part) (geom.Rect, bool) {
	box := part.Placement.Box
	if !p.z.Overlaps(box.Z) {
		return geom.Rect{}, false
	}
	quad := []plan{p.near[0], p.near[1], p.far[1], p.far[0]}
	for _, axis := range []geom.Axis{geom.U, geom.V} {
		if axis == part.Placement.Out.Axis {
			quad = clip(quad, axis, float64(box.Along(axis).Lo), 1)
			quad = clip(quad, axis, float64(box.Along(axis).Hi), -1)
		}
	}
	if len(quad) == 0 {
		return geom.Rect{}, false
	}
	hole := geom.Box{U: extent(quad, geom.U), V: extent(quad, geom.V), Z: p.z}
	if !hole.Overlaps(box) {
		return geom.Rect{}, false
	}
	face, _ := part.Placement.Local(hole)
	return face, true
}

// clip keeps the part of a polygon whose coordinate is at least (side 1) or at
// most (side -1) a limit. Nothing is kept of one that only touches it.
func clip(poly []plan, axis geom.Axis, limit float64, side float64) []plan {
	var out []plan
	beyond := func(p plan) float64 { return side * (p.along(axis) - limit) }
	inside := false
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		dp, dq := beyond(p), beyond(q)
		inside = inside || dp > 0
		if dp >= 0 {
			out = append(out, p)
		}
		if dp > 0 && dq < 0 || dp < 0 && dq > 0 {
			k := dp / (dp - dq)
			out = append(out, plan{p.u + float64(k*(q.u-p.u)), p.v + float64(k*(q.v-p.v))})
		}
	}
	if !inside {
		return nil
	}
	return out
}

// extent rounds outwards to whole nanometres.
func extent(poly []plan, axis geom.Axis) geom.Span {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range poly {
		lo, hi = min(lo, p.along(axis)), max(hi, p.along(axis))
	}
	return geom.Span{Lo: length.Length(math.Floor(lo)), Hi: length.Length(math.Ceil(hi))}
}

// roundOn reports whether a pipe goes square through a part, so that its
// opening is round.
func roundOn(part *model.Part, t *thing) bool {
	if t.radius == 0 {
		return false
	}
	off, ok := offNormal(part, t.wall)
	return ok && off == 0
}

// offNormal is the angle between the thickness of a part and the way out of a
// wall, from 0 to 90 degrees; ok is false where the part lies flat.
func offNormal(part *model.Part, wall *model.Wall) (off geom.Angle, ok bool) {
	turn := wall.Frame.Turn - part.Placement.Frame.Turn
	switch part.Placement.Out.Axis {
	case geom.Z:
		return 0, false
	case geom.U:
		turn += 90 * geom.Degree
	}
	turn = (turn%(180*geom.Degree) + 180*geom.Degree) % (180 * geom.Degree)
	return min(turn, 180*geom.Degree-turn), true
}
