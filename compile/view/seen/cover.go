package seen

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// cover is a shape that hides what lies behind it.
type cover struct {
	index  int // of the shape: it hides those before
	bounds geom.Rect
	ring   []spot
}

// covers are the covers of a view, in upright strips about as wide as a few of them, so
// that a long view is not searched from end to end for each shape.
type covers struct {
	x      geom.Span
	strips [][]*cover
}

// perStrip is how many covers there are to a strip.
const perStrip = 4

func coversOf(v *model.View) *covers {
	var list []*cover
	c := &covers{}
	for i := range v.Shapes {
		s := &v.Shapes[i]
		if !s.Fills() {
			continue
		}
		one := &cover{index: i, bounds: s.Lines.Bounds()}
		for _, e := range edgesOf(s.Lines, true) {
			one.ring = append(one.ring, e.points[:len(e.points)-1]...)
		}
		if len(list) == 0 {
			c.x = one.bounds.X
		}
		c.x = c.x.Union(one.bounds.X)
		list = append(list, one)
	}
	c.strips = make([][]*cover, 1+len(list)/perStrip)
	for _, one := range list {
		first, last := c.reach(one.bounds.X)
		for i := first; i <= last; i++ {
			c.strips[i] = append(c.strips[i], one)
		}
	}
	return c
}

// reach returns the first and the last strip that a span touches.
func (c *covers) reach(x geom.Span) (first, last int) {
	wide := c.x.Size()/geom.Length(len(c.strips)) + 1
	strip := func(at geom.Length) int { return int(max(0, min((at-c.x.Lo)/wide, geom.Length(len(c.strips)-1)))) }
	return strip(x.Lo), strip(x.Hi)
}

// over returns the covers that may hide some of what lies within bounds and is the
// shape of an index, in the order of the view.
func (c *covers) over(bounds geom.Rect, index int) (found []*cover) {
	first, last := c.reach(bounds.X)
	bounds = bounds.Grow(1) // a straight line has no size across
	for i := first; i <= last; i++ {
		for _, one := range c.strips[i] {
			if one.index > index && one.bounds.Overlaps(bounds) {
				found = append(found, one)
			}
		}
	}
	slices.SortFunc(found, func(a, b *cover) int { return a.index - b.index })
	return slices.Compact(found)
}

// hidden returns the stretches of an edge that the cover hides.
func (c *cover) hidden(e *edge) (out []share) {
	n := float64(len(e.points) - 1)
	for k := range len(e.points) - 1 {
		a, b := e.points[k], e.points[k+1]
		cuts := []float64{0, 1}
		for i, p := range c.ring {
			cuts = appendCrossings(cuts, a, b, p, c.ring[(i+1)%len(c.ring)])
		}
		slices.Sort(cuts)
		for i, from := range cuts[:len(cuts)-1] {
			to := cuts[i+1]
			if c.inside(between(a, b, (from+to)/2)) {
				out = append(out, share{(float64(k) + from) / n, (float64(k) + to) / n})
			}
		}
	}
	return out
}

// appendCrossings appends where the way from a to b meets the line from p to q, as
// shares of the way: where it crosses it, or is beside its ends if it runs along it.
func appendCrossings(cuts []float64, a, b, p, q spot) []float64 {
	way, side := spot{b.x - a.x, b.y - a.y}, spot{q.x - p.x, q.y - p.y}
	off := spot{p.x - a.x, p.y - a.y}
	add := func(s float64) {
		if 0 < s && s < 1 {
			cuts = append(cuts, s)
		}
	}
	if across := cross(way, side); math.Abs(across) > 1e-9*way.to(spot{})*side.to(spot{}) {
		if u := cross(off, way) / across; -1e-6 <= u && u <= 1+1e-6 {
			add(cross(off, side) / across)
		}
		return cuts
	}
	square := dot(way, way)
	if square > 0 {
		add(dot(off, way) / square)
		add(dot(spot{q.x - a.x, q.y - a.y}, way) / square)
	}
	return cuts
}

// inside reports whether a point lies in the cover, and not on its edge.
func (c *cover) inside(p spot) bool {
	in := false
	for i, a := range c.ring {
		b := c.ring[(i+1)%len(c.ring)]
		if offLine(p, a, b) < near {
			return false
		}
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+float64((p.y-a.y)/(b.y-a.y)*(b.x-a.x)) {
			in = !in
		}
	}
	return in
}

// offLine is how far a point is from the straight line between two others.
func offLine(p, a, b spot) float64 {
	way, off := spot{b.x - a.x, b.y - a.y}, spot{p.x - a.x, p.y - a.y}
	square := dot(way, way)
	if square == 0 {
		return p.to(a)
	}
	return p.to(between(a, b, max(0, min(1, dot(off, way)/square))))
}

func between(a, b spot, t float64) spot {
	return spot{a.x + float64((b.x-a.x)*t), a.y + float64((b.y-a.y)*t)}
}

func cross(a, b spot) float64 { return float64(a.x*b.y) - float64(a.y*b.x) }

func dot(a, b spot) float64 { return float64(a.x*b.x) + float64(a.y*b.y) }
