package router

import (
	"math"

	"barwright/compile/geom"
)

// newJob checks the request and lays out the regions of the path.
func newJob(r Request) (*job, *Refusal) {
	for _, check := range [...]func(Request) *Refusal{positive, toolLimits, place} {
		if refusal := check(r); refusal != nil {
			return nil, refusal
		}
	}
	radius := bitRadius(r)
	j := &job{tool: r.Tool, open: sidesOf(r.Open), levels: levels(r.Depth, r.Tool.Stepdown)}
	j.shape.rect = r.Shape
	for i := range 4 {
		if j.open.closedCorner(i) {
			j.corner = max(r.Corner, radius)
			j.shape.round[i] = j.corner
		}
	}
	reach := j.shape.extended(j.open, 2*radius+overrun+r.Tool.Finish)
	j.finish = reach.inset(radius)
	j.rough = reach.inset(radius + r.Tool.Finish)
	if refusal := j.room(r); refusal != nil {
		return nil, refusal
	}
	// Rings with square corners leave cusps beyond 0.85 of the bit: the inner
	// ring's corner reaches r outwards, the outer ring's sides r·√2 inwards,
	// and the corners are √2 steps apart.
	j.step = min(r.Tool.Stepover, r.Tool.Diameter*4/5)
	j.slot = middle(j.rough, rampLength(j.levels[0]+approach, r.Tool.RampDegrees))
	return j, j.effort(r)
}

// bitRadius rounds up: the path never comes closer to a wall than it may.
func bitRadius(r Request) Length { return (r.Tool.Diameter + 1) / 2 }

// levels returns equal depths, as few as the step-down allows.
func levels(depth, stepdown Length) []Length {
	n := ceilDiv(depth, stepdown)
	if n > maxMoves {
		n = maxMoves // refused below
	}
	out := make([]Length, n)
	for i := range out {
		out[i] = depth * Length(i+1) / n
	}
	return out
}

// middle returns the slot that the rings start from: the region's middle line,
// and as much beyond its ends as the ramp needs and the region has.
func middle(g region, ramp Length) slot {
	mid := geom.Point{X: g.rect.X.Mid(), Y: g.rect.Y.Mid()}
	whole := g.rect.X
	if g.rect.Y.Size() > whole.Size() {
		whole = g.rect.Y
	}
	line := whole.Grow(-g.half())
	line = line.Grow(min(g.half(), max(0, ramp-line.Size()+1)/2))
	if whole == g.rect.X {
		return slot{geom.Point{X: line.Lo, Y: mid.Y}, heading[0], line.Size()}
	}
	return slot{geom.Point{X: mid.X, Y: line.Lo}, heading[1], line.Size()}
}

// rampLength returns how far a ramp of an angle runs for a drop.
func rampLength(drop Length, degrees float64) Length {
	sin, cos := rampAngle(degrees).SinCos()
	return Length(math.Ceil(float64(float64(drop)*cos) / sin))
}

func rampAngle(degrees float64) geom.Angle {
	return geom.Angle(math.Round(degrees * float64(geom.Degree)))
}

func ceilDiv(a, b Length) Length { return (a + b - 1) / b }
