package routing

import (
	"math"

	"barwright/compile/geom"
)

// straightOn is the sine of the turn below which an edge goes on as the one before it;
// rounding an arc to the nanometre turns its ends by less.
const straightOn = 1e-4

// heading is a direction in plan, of length 1.
type heading struct{ x, y float64 }

func headingOf(from, to geom.Point) heading {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	long := norm(dx, dy)
	return heading{dx / long, dy / long}
}

// norm takes a square root only, which is the same on every processor.
func norm(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }

func (h heading) left() heading     { return heading{-h.y, h.x} }
func (h heading) opposite() heading { return heading{-h.x, -h.y} }

// onward returns the point that lies d further.
func (h heading) onward(p geom.Point, d float64) geom.Point {
	return p.Add(geom.Point{X: Length(math.Round(h.x * d)), Y: Length(math.Round(h.y * d))})
}

func (h heading) cross(o heading) float64 { return float64(h.x*o.y) - float64(h.y*o.x) }
func (h heading) dot(o heading) float64   { return float64(h.x*o.x) + float64(h.y*o.y) }

// half returns the tangent of half the turn to another heading, to the left.
func (h heading) half(o heading) float64 { return h.cross(o) / (1 + h.dot(o)) }

// edge is one edge of a contour, with its headings at both ends.
type edge struct {
	from, to   geom.Point
	start, end heading
	arc        geom.Arc // of a round one
	round      bool
}

func edges(c geom.Contour) []edge {
	out := make([]edge, len(c))
	for i, v := range c {
		to := c[(i+1)%len(c)].Point
		e := edge{from: v.Point, to: to, round: v.Bulge != 0}
		if e.round {
			e.arc = geom.ArcOf(v, to)
			e.start, e.end = e.tangent(v.Point), e.tangent(to)
		} else {
			e.start = headingOf(v.Point, to)
			e.end = e.start
		}
		out[i] = e
	}
	return out
}

// tangent returns the heading of a round edge at one of its points.
func (e *edge) tangent(p geom.Point) heading {
	x, y := float64(p.X)-e.arc.CX, float64(p.Y)-e.arc.CY
	r := math.Copysign(norm(x, y), e.arc.Turn)
	return heading{-y / r, x / r}
}

// long returns an edge's length in nanometres.
func (e *edge) long() float64 {
	if e.round {
		return e.arc.R * math.Abs(e.arc.Turn)
	}
	return norm(float64(e.to.X-e.from.X), float64(e.to.Y-e.from.Y))
}

// at returns the point on an edge that lies d from its start.
func (e *edge) at(d float64) geom.Point {
	if !e.round {
		return e.start.onward(e.from, d)
	}
	sin, cos := math.Sincos(e.arc.Start + math.Copysign(d/e.arc.R, e.arc.Turn))
	return geom.Point{
		X: Length(math.Round(e.arc.CX + float64(e.arc.R*cos))),
		Y: Length(math.Round(e.arc.CY + float64(e.arc.R*sin))),
	}
}

// corner tells how two edges meet.
type corner int

const (
	smooth  corner = iota
	inside         // it turns left, towards the bit
	outside        // it turns right, and the bit goes round it
)

func meeting(before, next *edge) corner {
	switch cross := before.end.cross(next.start); {
	case cross > straightOn:
		return inside
	case cross < -straightOn || before.end.dot(next.start) < 0:
		return outside
	}
	return smooth
}
