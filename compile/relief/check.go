package relief

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Trouble is a corner that cannot be cleared.
type Trouble struct {
	In      string     // the opening or recess
	Notch   bool       // it is a notch, and In is empty
	Corner  geom.Point // as the part is drawn
	Because string     // "it would break out of the part", "it would cut into shelf pin"
}

// Check finds the corners of a part that the bit cannot clear: it would break out of the
// part or into another contour, or the edges are too short for it.
func Check(p *model.Part, way string, bit Length) (all []Trouble) {
	loops := loops(p, way, bit)
	var cuts []cut
	for i, l := range loops {
		for k, inside := range l.inside {
			if inside {
				c := cutAt(l.shape, k, way, bit)
				c.loop = i
				cuts = append(cuts, c)
			}
		}
	}
	for i := range cuts {
		if into, ok := meets(p, loops, cuts, i, float64(bit)/2); ok {
			l := &loops[cuts[i].loop]
			all = append(all, Trouble{In: l.name, Notch: l.kind == outline, Corner: l.shape[cuts[i].corner].Point, Because: because(l, into)})
		}
	}
	return all
}

func because(own, into *loop) string {
	switch {
	case own == into:
		return "there is no room for it between the sides"
	case into.kind == outline:
		return "it would break out of the part"
	}
	return "it would cut into " + into.name
}

// least is what stays of an edge between two cuts, and between a cut and whatever it must
// not touch, in nanometres.
const least = 1e5

// meets tells what the bit meets in a corner, if anything.
func meets(p *model.Part, loops []loop, cuts []cut, at int, r float64) (into *loop, ok bool) {
	k, own := &cuts[at], &loops[cuts[at].loop]
	n := len(own.shape)
	back, on := sides(own.shape, k.corner)
	next, before := (k.corner+1)%n, (k.corner+n-1)%n
	takenOn, takenBack := k.take, k.takeBack
	for i := range cuts {
		o := &cuts[i]
		beside := o.loop == k.loop && (o.corner == next || o.corner == before)
		if o.loop == k.loop && o.corner == next {
			takenOn += o.takeBack
		}
		if o.loop == k.loop && o.corner == before {
			takenBack += o.take
		}
		if i != at && !beside && inOneDepth(p, own, &loops[o.loop]) && math.Hypot(o.cx-k.cx, o.cy-k.cy) < 2*r+least {
			return &loops[o.loop], true
		}
	}
	if takenOn+least > on.long || takenBack+least > back.long {
		return own, true
	}
	for i := range loops {
		l := &loops[i]
		if !inOneDepth(p, own, l) {
			continue
		}
		for e, v := range l.shape {
			if i == k.loop && (e == k.corner || e == before) {
				continue
			}
			if gap(v, l.shape[(e+1)%len(l.shape)].Point, k.cx, k.cy) < r+least {
				return l, true
			}
		}
	}
	return nil, false
}

// inOneDepth reports whether two contours that cover one another meet in the wood.
func inOneDepth(p *model.Part, a, b *loop) bool {
	return a.depth == 0 || b.depth == 0 || a.far == b.far || a.depth+b.depth > p.Thickness
}

// gap is how far a point is from an edge, an arc in chords.
func gap(from geom.Vertex, to geom.Point, x, y float64) float64 {
	points := geom.Contour{from, {Point: to}}.Chords()
	nearest := math.Inf(1)
	for i, p := range points[1:] {
		nearest = min(nearest, geom.FromLine(x, y, points[i], p))
	}
	return nearest
}
