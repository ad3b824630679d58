package loads

// The two loads that a bar top bears beside its own weight; not both at once.
const (
	atEdge = iota // somebody on its edge
	spread        // people and things all over it
)

// load is a force in newtons at the slab's edge, and newtons on each millimetre
// from the wall's face out to that edge.
type load struct{ point, spread float64 }

func (l load) add(o load) load { return load{l.point + o.point, l.spread + o.spread} }

// cantilever is a flat bar that is held at the wall's face and carries a stiff
// slab which goes on beyond it. Millimetres and MPa.
type cantilever struct {
	reach, edge  float64 // of the steel and of the slab, from the face
	width, thick float64
	modulus      float64
}

// moment is that of a load at x from the face, in newton millimetres: what is
// beyond the steel acts on its tip with the moment that it has there.
func (c cantilever) moment(l load, x float64) float64 {
	arm := c.edge - x
	return float64(l.point*arm) + l.spread*arm*arm/2
}

// stress is that of bending at x from the face, where holes have taken a part of
// the width.
func (c cantilever) stress(l load, x, lost float64) float64 {
	return c.moment(l, x) / ((c.width - lost) * c.thick * c.thick / 6)
}

// sag is how far the slab's edge goes down: the steel's tip, and its slope there
// on to the edge. What the slab bends by itself is not in it.
func (c cantilever) sag(l load) float64 {
	ei := c.modulus * c.width * c.thick * c.thick * c.thick / 12
	r, beyond := c.reach, c.edge-c.reach
	force := l.point + float64(l.spread*beyond)
	moment := c.moment(l, r)
	tip := force*r*r*r/3 + moment*r*r/2 + l.spread*r*r*r*r/8
	slope := force*r*r/2 + float64(moment*r) + l.spread*r*r*r/6
	return (tip + float64(slope*beyond)) / ei
}
