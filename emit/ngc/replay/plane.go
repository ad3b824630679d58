package replay

import (
	"math"

	"barwright/compile/geom"
)

// spot is a point in plan, in mm.
type spot struct{ x, y float64 }

// stretch is a straight piece of a line in plan.
type stretch struct{ a, b spot }

func (s stretch) length() float64 { return math.Hypot(s.b.x-s.a.x, s.b.y-s.a.y) }

// along returns the point of a stretch at a share of its length.
func (s stretch) along(t float64) spot {
	return spot{s.a.x + float64(t*(s.b.x-s.a.x)), s.a.y + float64(t*(s.b.y-s.a.y))}
}

// part returns the piece of a stretch between two shares of its length.
func (s stretch) part(from, to float64) stretch { return stretch{s.along(from), s.along(to)} }

// shifted returns a stretch moved to its left by d.
func (s stretch) shifted(d float64) stretch {
	k := d / s.length()
	dx, dy := k*(s.a.y-s.b.y), k*(s.b.x-s.a.x)
	return stretch{spot{s.a.x + dx, s.a.y + dy}, spot{s.b.x + dx, s.b.y + dy}}
}

// sag is how far a straight piece may lie beside the arc that it stands for, in mm.
const sag = 0.001

// chords returns straight pieces for an arc, all alike.
func chords(from, to spot, cx, cy, sweep float64) []stretch {
	r := math.Hypot(from.x-cx, from.y-cy)
	n := max(1, math.Ceil(math.Abs(sweep)/(2*math.Acos(1-min(1, sag/r)))))
	start := math.Atan2(from.y-cy, from.x-cx)
	out := make([]stretch, 0, int(n))
	at := from
	for k := 1.0; k < n; k++ {
		angle := start + sweep*k/n
		next := spot{cx + float64(r*math.Cos(angle)), cy + float64(r*math.Sin(angle))}
		out = append(out, stretch{at, next})
		at = next
	}
	return append(out, stretch{at, to})
}

// distance returns how far two stretches are apart; 0 where they cross.
func (s stretch) distance(o stretch) float64 {
	if s.crosses(o) {
		return 0
	}
	return min(s.to(o.a), s.to(o.b), o.to(s.a), o.to(s.b))
}

// to returns the distance to a point.
func (s stretch) to(p spot) float64 {
	foot := s.along(min(1, max(0, s.share(p))))
	return math.Hypot(foot.x-p.x, foot.y-p.y)
}

// share tells where the foot of a point lies, as a share of the stretch's length: 0
// at its start, and for a stretch of no length.
func (s stretch) share(p spot) float64 {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	d := float64(dx*dx) + float64(dy*dy)
	if d == 0 {
		return 0
	}
	return (float64((p.x-s.a.x)*dx) + float64((p.y-s.a.y)*dy)) / d
}

func (s stretch) crosses(o stretch) bool {
	return s.side(o.a)*s.side(o.b) < 0 && o.side(s.a)*o.side(s.b) < 0
}

// off returns the distance from a point to the line that a stretch lies on.
func (s stretch) off(p spot) float64 { return math.Abs(s.side(p)) / s.length() }

// side is positive for points to the left of the stretch.
func (s stretch) side(p spot) float64 {
	return float64((s.b.x-s.a.x)*(p.y-s.a.y)) - float64((s.b.y-s.a.y)*(p.x-s.a.x))
}

// parallel reports whether two stretches run alike, or against one another, but for
// some 6 degrees.
func (s stretch) parallel(o stretch) bool {
	cross := float64((s.b.x-s.a.x)*(o.b.y-o.a.y)) - float64((s.b.y-s.a.y)*(o.b.x-o.a.x))
	return math.Abs(cross) < 0.1*s.length()*o.length()
}

// farther reports whether the boxes round two stretches are at least d apart.
func (s stretch) farther(o stretch, d float64) bool {
	return min(s.a.x, s.b.x)-max(o.a.x, o.b.x) >= d || min(o.a.x, o.b.x)-max(s.a.x, s.b.x) >= d ||
		min(s.a.y, s.b.y)-max(o.a.y, o.b.y) >= d || min(o.a.y, o.b.y)-max(s.a.y, s.b.y) >= d
}

// box is a rectangle along the axes, given by its low and its high corner.
type box struct{ low, high spot }

// boxOf returns the box round straight pieces; one that holds nothing where there are
// none.
func boxOf(edges []edge) box {
	b := box{spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}}
	for _, e := range edges {
		b.low = spot{min(b.low.x, e.a.x, e.b.x), min(b.low.y, e.a.y, e.b.y)}
		b.high = spot{max(b.high.x, e.a.x, e.b.x), max(b.high.y, e.a.y, e.b.y)}
	}
	return b
}

func (b box) grown(d float64) box {
	return box{spot{b.low.x - d, b.low.y - d}, spot{b.high.x + d, b.high.y + d}}
}

func (b box) union(o box) box {
	return box{
		spot{min(b.low.x, o.low.x), min(b.low.y, o.low.y)},
		spot{max(b.high.x, o.high.x), max(b.high.y, o.high.y)},
	}
}

func (b box) holds(p spot) bool {
	return p.x >= b.low.x && p.x <= b.high.x && p.y >= b.low.y && p.y <= b.high.y
}

// apart reports whether two boxes do not meet, or hardly.
func (b box) apart(o box) bool { return b.diagonal().farther(o.diagonal(), shortest) }

// diagonal is a stretch that has the same box.
func (b box) diagonal() stretch { return stretch{b.low, b.high} }

func mm(p geom.Point) spot { return spot{p.X.MM(), p.Y.MM()} }
