package router

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/lang/length"
)

// Overrun is how far the bit's edge passes an open side, where it enters and along the
// walls, so that the mouth is as wide as the rest.
const Overrun = 2 * length.Millimetre

const (
	lead     = length.Millimetre     // of the bit's edge off the end of a wall, before it finishes it
	mouth    = length.Millimetre / 2 // of its centre, at the ends of walls when roughing
	approach = 2 * length.Millimetre // above the wood, where rapid moves end
	touch    = length.Millimetre / 2 // above the wood, where ramps begin
)

// job is what a path is made from. The bit's centre stays in finish, and in
// air until the walls are finished, but for reliefs; roughing stays in rough.
// All reach beyond the wood at open sides. They are convex, so that every
// straight move between two of their points stays inside too.
type job struct {
	tool   model.Tool
	radius Length
	open   sides
	shape  region // what will be cut, without reliefs
	finish region
	air    region
	lead   region // where the bit stands before it goes sideways to a wall's end
	rough  region
	corner Length          // radius left in inside corners, 0 where there is none
	bores  [4]*geom.Point  // that relieve corners, by corner: their centres
	aside  [4][]geom.Point // where the bit goes, and back, as it passes a corner of rough
	levels []Length        // the last one is the floor's where some is left on it
	step   Length          // between rings or passes, at most
	rings  []region        // from the inside out; none beside passes between open ends
	line   bool            // the innermost ring is a line, along which the bit goes once
	passes *region         // what parallel passes fill; nil where rings do
}

// newJob checks the request and lays out the regions of the path.
func newJob(r Request) (*job, *Refusal) {
	for _, check := range [...]func(Request) *Refusal{positive, toolLimits, place} {
		if refusal := check(r); refusal != nil {
			return nil, refusal
		}
	}
	radius, finish := bitRadius(r), r.Tool.Finish
	j := &job{tool: r.Tool, radius: radius, open: sidesOf(r.Open)}
	j.levels = levels(r.Depth-r.Tool.Floor, r.Tool.Stepdown)
	if r.Tool.Floor > 0 {
		j.levels = append(j.levels, r.Depth)
	}
	j.shape.rect = r.Shape
	relieved := r.Corner == 0 && (r.Tool.Relief == relief.Diagonal || r.Tool.Relief == relief.LongSide)
	for i := range 4 {
		if j.open.closedCorner(i) && !relieved {
			j.corner = max(r.Corner, radius)
			j.shape.round[i] = j.corner
		}
	}
	j.air = j.shape.extended(j.open, 2*radius+Overrun+finish).inset(radius + finish)
	// Beside the end of a wall the bit meets the allowance √(f(2r-f)) from its centre.
	reach := Length(math.Ceil(math.Sqrt(float64(finish) * float64(2*radius-finish))))
	wide := j.shape.extended(j.open, radius+reach+lead)
	j.finish = wide.inset(radius)
	j.lead = wide.extended(j.open, finish).inset(radius + finish)
	j.rough = j.roughing()
	if refusal := j.room(r); refusal != nil {
		return nil, refusal
	}
	// Rings with square corners leave cusps beyond 0.85 of the bit: the inner
	// ring's corner reaches r outwards, the outer ring's sides r·√2 inwards,
	// and the corners are √2 steps apart. Beside the ends of parallel passes a
	// ring leaves them beyond 0.8.
	j.step = min(r.Tool.Stepover, r.Tool.Diameter*3/4)
	if relieved {
		if refusal := j.relieve(r); refusal != nil {
			return nil, refusal
		}
	}
	j.layOut()
	j.goAside()
	return j, j.effort(r)
}

// roughing returns where the bit's centre stays when roughing. At an open side
// that is 0.7 of its radius inside the wood, so that the bit's edge, and at a
// corner between two of them the corner, is in the air.
func (j *job) roughing() region {
	g := j.shape.inset(j.radius + j.tool.Finish)
	g = g.extended(j.open, j.radius*3/10+j.tool.Finish)
	for _, axis := range [2]struct {
		span      *geom.Span
		low, high model.Edge
	}{{&g.rect.X, model.LeftEdge, model.RightEdge}, {&g.rect.Y, model.Bottom, model.Top}} {
		if s := axis.span; s.Hi < s.Lo { // the bit is wider than what is open
			switch {
			case !j.open[axis.low]:
				s.Hi = s.Lo
			case !j.open[axis.high]:
				s.Lo = s.Hi
			default:
				s.Lo = s.Mid()
				s.Hi = s.Lo
			}
		}
	}
	return g
}

// goAside lays out what the bit visits at corners: at a relieved one, its bore;
// at one between a wall and an open side, the end of the wall.
func (j *job) goAside() {
	edge := j.shape.extended(j.open, mouth)
	for i := range 4 {
		at := j.rough.corner(i)
		switch starts, ends := j.open[i], j.open[before(i)]; {
		case j.bores[i] != nil:
			j.aside[i] = []geom.Point{j.finish.corner(i), *j.bores[i]}
		case starts != ends:
			open := i
			if ends {
				open = before(i)
			}
			if out := edge.onto(open, at); distanceAlong(before(open), at, out) > 0 {
				j.aside[i] = []geom.Point{out}
			}
		}
	}
}

// bitRadius rounds up: the path never comes closer to a wall than it may.
func bitRadius(r Request) Length { return (r.Tool.Diameter + 1) / 2 }

// levels returns equal depths, as few as the step-down allows.
func levels(depth, stepdown Length) []Length {
	n := min(ceilDiv(depth, stepdown), maxMoves) // so many are refused
	out := make([]Length, n)
	for i := range out {
		out[i] = depth * Length(i+1) / n
	}
	return out
}

// layOut decides how each level is cleared. Rings lie a step apart, the
// outermost along the walls; the innermost leaves no wood inside. Passes lie a
// step inside of a ring along the walls, or without one between two open ends.
func (j *job) layOut() {
	half, widest := j.rough.half(), j.tool.Diameter*9/20
	if 10*half <= j.tool.Finish && j.rough.long()-2*half >= j.radius {
		j.line = true // the last pass takes the little beside it
		j.rings = []region{j.rough.inset(half)}
		return
	}
	if j.tool.Passes == "parallel" && half > widest {
		if e := j.rough.ends(); j.open[e] && j.open[e.Opposite()] {
			// Their round ends lie 0.7 of the radius inside the wood: beyond 0.71 of the bit
			// two of them leave a cusp on its edge.
			j.passes, j.step = &j.rough, min(j.step, j.tool.Diameter*7/10) // from wall to wall
			return
		}
		if in := j.rough.inset(min(j.step, half)); in.round == ([4]Length{}) && in.long() >= j.radius {
			j.passes, j.rings = &in, []region{j.rough}
			return
		}
	}
	n := ceilDiv(max(0, half-widest), j.step)
	inner := max(0, half-n*j.step)
	if least := min(half, j.radius/2); inner < least && j.rough.long()-2*half < j.radius {
		inner = least // room to come down in
	}
	j.line = inner == 0
	for k := range n + 1 {
		offset := half
		if n > 0 {
			offset = inner + (half-inner)*k/n
		}
		j.rings = append(j.rings, j.rough.inset(half-offset))
	}
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
