package routing

import (
	"math"

	"barwright/compile/geom"
)

// Contours here run as the bit goes round them: the wood that stays is on the right of
// their edges, and the bit on the left. So with a clockwise spindle all is climb milling.
// An opening runs counter-clockwise, the outline of a part clockwise.

// sharpened returns a contour whose inside corners that are rounder by less than a radius
// are square: what a bit of that radius leaves in them does not depend on them.
func sharpened(c geom.Contour, radius Length) geom.Contour {
	es := edges(c)
	n := len(es)
	tight := func(i int) bool {
		e, before, next := &es[i], &es[(i+n-1)%n], &es[(i+1)%n]
		return e.round && e.arc.Turn > 0 && e.arc.Turn < 0.9*math.Pi && e.arc.R < float64(radius)+1 &&
			!before.round && !next.round && meeting(before, e) == smooth && meeting(e, next) == smooth
	}
	var out geom.Contour
	for i := range es {
		switch {
		case tight(i):
			along := es[i].arc.R * math.Tan(es[i].arc.Turn/2)
			out = append(out, geom.Vertex{Point: es[i].start.onward(es[i].from, along)})
		case !tight((i + n - 1) % n):
			out = append(out, c[i])
		}
	}
	return out
}

// filleted returns a contour as a round bit leaves it: with its radius in the inside corners
// between straight edges, and a bore of its size where one relieves a corner. The edges are
// long enough for it where offset finds a way.
func filleted(c geom.Contour, radius Length, bores map[geom.Point]relief) geom.Contour {
	es := edges(c)
	var out geom.Contour
	for i := range es {
		before, e := &es[(i+len(es)-1)%len(es)], &es[i]
		if before.round || e.round || meeting(before, e) != inside {
			out = append(out, c[i])
			continue
		}
		if r, relieved := bores[e.from]; relieved {
			out = append(out, bored(before, e, r.bore)...)
			continue
		}
		half := before.end.half(e.start)
		take := half * float64(radius)
		bulge := half / (1 + math.Sqrt(1+float64(half*half)))
		out = append(out,
			geom.Vertex{Point: before.end.onward(e.from, -take), Bulge: bulge},
			geom.Vertex{Point: e.start.onward(e.from, take)})
	}
	return distinct(out)
}

// chord returns how much of an edge that begins at a corner with a heading a bore takes
// away, as the corner lies on the bore's circle.
func chord(corner, bore geom.Point, h heading) float64 {
	d := bore.Sub(corner)
	return max(0, 2*(float64(h.x*float64(d.X))+float64(h.y*float64(d.Y))))
}

// bored returns what stands for the corner between two edges once a bore has taken it away.
func bored(before, e *edge, bore geom.Point) geom.Contour {
	back, on := chord(e.from, bore, before.end.opposite()), chord(e.from, bore, e.start)
	bulge := 1.0 // half a turn: the bore's centre is on an edge
	if back > sliver && on > sliver {
		bulge = before.end.half(e.start) // it turns twice as far as the corner
	}
	return geom.Contour{
		{Point: before.end.onward(e.from, -back), Bulge: bulge},
		{Point: e.start.onward(e.from, on)},
	}
}

// apart reports whether bores at the corners of a contour leave something of each edge.
func apart(c geom.Contour, bores map[geom.Point]relief) bool {
	es := edges(c)
	for i := range es {
		e, taken := &es[i], float64(spare)
		if r, ok := bores[e.from]; ok {
			taken += chord(e.from, r.bore, e.start)
		}
		if r, ok := bores[e.to]; ok {
			taken += chord(e.to, r.bore, e.end.opposite())
		}
		if taken > e.long() {
			return false
		}
	}
	return true
}

// leftward returns a contour so that it runs counter-clockwise.
func leftward(c geom.Contour) geom.Contour {
	if c.Area() < 0 {
		return c.Reversed()
	}
	return c
}

// distinct leaves out straight edges without a length.
func distinct(c geom.Contour) geom.Contour {
	var out geom.Contour
	for i, v := range c {
		if v.Bulge != 0 || v.Point != c[(i+1)%len(c)].Point {
			out = append(out, v)
		}
	}
	return out
}

// offset returns the way of a bit's centre that keeps d from a contour. It goes round
// outside corners on a circle, and in inside ones aside to the bore that relieves them,
// where there is one. Where arcs will be chords, which may leave them by chord, those round
// wood are straight pieces that never come nearer than the arc. ok is false where there is
// no such way, as the bit does not fit.
func offset(c geom.Contour, d, chord Length, bores map[geom.Point]relief) (w *way, ok bool) {
	es := edges(c)
	n := len(es)
	starts, ends := make([]geom.Point, n), make([]geom.Point, n)
	sharp, blunt := false, false
	for i := range es {
		k := (i + n - 1) % n
		before, e := &es[k], &es[i]
		off := float64(d)
		ends[k], starts[i] = before.end.left().onward(e.from, off), e.start.left().onward(e.from, off)
		switch meeting(before, e) {
		case outside:
			blunt = true
		case inside:
			sharp = true
			if before.round || e.round {
				return nil, false
			}
			// Both lines are d off theirs; they meet on the bisector.
			back := float64(off * before.end.half(e.start))
			ends[k] = before.end.onward(ends[k], -back)
			starts[i] = ends[k]
		case smooth:
			starts[i] = ends[k]
		}
		if e.round && e.arc.Turn > 0 {
			sharp = true
			if e.arc.R <= off {
				return nil, false
			}
		}
		blunt = blunt || e.round && e.arc.Turn < 0
	}
	w = &way{}
	for i := range es {
		k := (i + n - 1) % n
		if meeting(&es[k], &es[i]) == outside {
			w.around(ends[k], starts[i], es[i].from, turnRight(es[k].end, es[i].start), chord, d)
		}
		switch e := &es[i]; {
		case e.round:
			centre := geom.Point{X: Length(math.Round(e.arc.CX)), Y: Length(math.Round(e.arc.CY))}
			w.around(starts[i], ends[i], centre, e.arc.Turn, chord, chord)
		case starts[i] != ends[i]:
			if headingOf(starts[i], ends[i]).dot(e.start) < 0 {
				return nil, false
			}
			w.line(starts[i], ends[i])
		}
		if r, relieved := bores[es[i].to]; relieved {
			w.aside(ends[i], r.wall, r.bore)
		}
	}
	if len(w.pieces) == 0 || sharp && blunt && !w.clear(c, d) {
		return nil, false
	}
	return w, true
}

// turnRight returns the angle of a turn to the right: it is below 0.
func turnRight(from, to heading) float64 {
	return -math.Abs(math.Atan2(from.cross(to), from.dot(to)))
}
