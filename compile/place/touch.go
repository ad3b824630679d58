package place

import (
	"barwright/compile/geom"
	"barwright/lang/length"
)

// play is how far what stands in two runs may lie in one another and still only touch, as
// where boxes may not meet (SPEC.md 7.4).
const play = length.Millimetre / 10

// touch trims bodies of different frames that lie in one another by no more than play, so that they
// touch.
func (s *site) touch() {
	around := make([]geom.Box, len(s.bodies)) // in the room's plan
	for i := range s.bodies {
		around[i] = geom.Frame{}.Around(s.bodies[i].frame, s.bodies[i].hull)
	}
	for i := range s.bodies {
		for k := range i {
			one, other := &s.bodies[i], &s.bodies[k]
			if one.frame != other.frame && around[i].Overlaps(around[k]) {
				one.trim(one.frame.Around(other.frame, other.hull))
			}
		}
	}
}

// trim takes off a body what lies in a box by no more than play.
func (o *body) trim(b geom.Box) {
	if !o.hull.Overlaps(b) {
		return
	}
	for axis := geom.U; axis <= geom.Z; axis++ {
		own, other := o.hull.Along(axis), b.Along(axis)
		switch {
		case own.Hi-other.Lo <= play:
			own.Hi = other.Lo
		case other.Hi-own.Lo <= play:
			own.Lo = other.Hi
		default:
			continue
		}
		for i := range o.Solids {
			s := &o.Solids[i].Box
			*s = s.With(axis, s.Along(axis).Intersect(own))
		}
		o.hull = o.hull.With(axis, own)
		return
	}
}
