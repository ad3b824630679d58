package view

import (
	"math"

	"barwright/compile/geom"
)

// touch is how far, in nanometres, two things may run into each other and
// still count as touching: rounding of turned corners comes to less.
const touch = 10

// box is a turned rectangle: the room that a text takes.
type box struct {
	x, y     float64 // centre
	hw, hh   float64 // half of width and height
	cos, sin float64
	reachX   float64 // half of the upright rectangle round it
	reachY   float64
	upright  bool // it is that rectangle
}

func boxAt(at geom.Point, w, h Length, turn geom.Angle) box {
	b := box{x: float64(at.X), y: float64(at.Y), hw: float64(w) / 2, hh: float64(h) / 2, cos: 1}
	if turn == 0 {
		b.reachX, b.reachY, b.upright = b.hw, b.hh, true
		return b
	}
	b.sin, b.cos = turn.SinCos()
	sin, cos := b.sin, b.cos
	b.reachX = float64(b.hw*math.Abs(cos)) + float64(b.hh*math.Abs(sin))
	b.reachY = float64(b.hw*math.Abs(sin)) + float64(b.hh*math.Abs(cos))
	b.upright = sin == 0 || cos == 0
	return b
}

func boxOfRect(r geom.Rect) box {
	return boxAt(geom.Point{X: r.X.Mid(), Y: r.Y.Mid()}, r.X.Size(), r.Y.Size(), 0)
}

// corners returns the box's corners, counter-clockwise.
func (b box) corners() [4][2]float64 {
	ux, uy := float64(b.hw*b.cos), float64(b.hw*b.sin)
	vx, vy := -float64(b.hh*b.sin), float64(b.hh*b.cos)
	return [4][2]float64{
		{b.x - ux - vx, b.y - uy - vy}, {b.x + ux - vx, b.y + uy - vy},
		{b.x + ux + vx, b.y + uy + vy}, {b.x - ux + vx, b.y - uy + vy},
	}
}

func (b box) bounds() geom.Rect {
	return geom.R(
		Length(math.Floor(b.x-b.reachX)), Length(math.Floor(b.y-b.reachY)),
		Length(math.Ceil(b.x+b.reachX)), Length(math.Ceil(b.y+b.reachY)))
}

// local returns a point as seen from the box's centre, along its own axes.
func (b *box) local(x, y float64) (u, v float64) {
	dx, dy := x-b.x, y-b.y
	return float64(dx*b.cos) + float64(dy*b.sin), float64(dy*b.cos) - float64(dx*b.sin)
}

// meets reports whether the insides of two boxes share more than a touch.
func (b *box) meets(o *box) bool {
	offX, offY := math.Abs(b.x-o.x)-(b.reachX+o.reachX), math.Abs(b.y-o.y)-(b.reachY+o.reachY)
	if b.upright && o.upright {
		return offX <= -touch && offY <= -touch
	}
	return offX <= 0 && offY <= 0 && !b.parted(o) && !o.parted(b)
}

// parted reports whether one of b's own axes runs between the two.
func (b *box) parted(o *box) bool {
	loU, hiU, loV, hiV := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, c := range o.corners() {
		u, v := b.local(c[0], c[1])
		loU, hiU = min(loU, u), max(hiU, u)
		loV, hiV = min(loV, v), max(hiV, v)
	}
	return loU > b.hw-touch || hiU < touch-b.hw || loV > b.hh-touch || hiV < touch-b.hh
}

// holds reports whether all of o lies in b.
func (b *box) holds(o *box) bool {
	for _, c := range o.corners() {
		u, v := b.local(c[0], c[1])
		if math.Abs(u) > b.hw+touch || math.Abs(v) > b.hh+touch {
			return false
		}
	}
	return true
}

// seg is a straight line that texts keep clear of.
type seg struct{ ax, ay, bx, by float64 }

func segOf(a, b geom.Point) seg {
	return seg{float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)}
}

// crosses reports whether a line runs through the inside of the box.
func (b *box) crosses(s *seg) bool {
	if min(s.ax, s.bx) > b.x+b.reachX || max(s.ax, s.bx) < b.x-b.reachX ||
		min(s.ay, s.by) > b.y+b.reachY || max(s.ay, s.by) < b.y-b.reachY {
		return false
	}
	from, to := 0.0, 1.0
	if b.upright {
		return clipped(s.ax-b.x, s.bx-b.x, b.reachX-touch, &from, &to) && clipped(s.ay-b.y, s.by-b.y, b.reachY-touch, &from, &to)
	}
	au, av := b.local(s.ax, s.ay)
	bu, bv := b.local(s.bx, s.by)
	return clipped(au, bu, b.hw-touch, &from, &to) && clipped(av, bv, b.hh-touch, &from, &to)
}

// clipped narrows the stretch from..to of a line to where one of its
// coordinates, running from a to b, lies within half of zero. It reports
// whether anything is left. (Liang and Barsky's way of clipping.)
func clipped(a, b, half float64, from, to *float64) bool {
	if a == b {
		return math.Abs(a) < half
	}
	in, out := (-half-a)/(b-a), (half-a)/(b-a)
	*from, *to = max(*from, min(in, out)), min(*to, max(in, out))
	return *from < *to
}

// meets reports whether two lines cross between their ends.
func (s *seg) meets(o *seg) bool {
	if max(s.ax, s.bx) < min(o.ax, o.bx) || max(o.ax, o.bx) < min(s.ax, s.bx) ||
		max(s.ay, s.by) < min(o.ay, o.by) || max(o.ay, o.by) < min(s.ay, s.by) {
		return false
	}
	return s.parts(o) && o.parts(s)
}

// parts reports whether o's ends lie on different sides of s's line.
func (s *seg) parts(o *seg) bool { return s.side(o.ax, o.ay)*s.side(o.bx, o.by) < 0 }

// side is 1 to the left of the line, -1 to the right, 0 on it or so near that
// it only touches.
func (s *seg) side(x, y float64) int {
	dx, dy := s.bx-s.ax, s.by-s.ay
	cross := float64(dx*(y-s.ay)) - float64(dy*(x-s.ax))
	if math.Abs(cross) <= touch*(math.Abs(dx)+math.Abs(dy)) {
		return 0
	}
	if cross > 0 {
		return 1
	}
	return -1
}
