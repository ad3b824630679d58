package routing

import (
	"math"

	"barwright/compile/geom"
)

// How closely chords follow arcs, and how much nearer a way may come to its contour than
// it should, for rounding: in nanometres.
const (
	chordSag = 500
	nearer   = 2_000
)

// clear reports whether the way keeps d from all of a contour.
func (w *way) clear(c geom.Contour, d Length) bool {
	border, least := bars(c), float64(d)-nearer
	for i := range w.pieces {
		p := &w.pieces[i]
		if p.aside {
			continue
		}
		for _, b := range p.bars() {
			for k := range border {
				if b.within(&border[k], least) {
					return false
				}
			}
		}
	}
	return true
}

// bar is a straight stretch in plan, in nanometres.
type bar struct{ ax, ay, bx, by float64 }

func barOf(a, b geom.Point) bar {
	return bar{float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)}
}

// chordsOf is how many chords an arc takes.
func chordsOf(radius, turn float64) float64 {
	return max(1, math.Ceil(math.Abs(turn)/(2*math.Acos(max(0, 1-chordSag/radius)))))
}

func bars(c geom.Contour) []bar {
	points := c.AppendPieces(nil, func(a geom.Arc) float64 { return chordsOf(a.R, a.Turn) })
	out := make([]bar, len(points))
	for i, p := range points {
		out[i] = barOf(p, points[(i+1)%len(points)])
	}
	return out
}

func (p *piece) bars() []bar {
	n := 1.0
	if p.turn != 0 {
		n = chordsOf(p.radius(), p.turn)
	}
	out, last := make([]bar, 0, int(n)), p.from
	for k := 1.0; k <= n; k++ {
		next := p.at(p.long * k / n)
		out = append(out, barOf(last, next))
		last = next
	}
	return out
}

// within reports whether two bars come nearer to each other than d.
func (b bar) within(o *bar, d float64) bool {
	if max(min(o.ax, o.bx)-max(b.ax, b.bx), min(b.ax, b.bx)-max(o.ax, o.bx),
		min(o.ay, o.by)-max(b.ay, b.by), min(b.ay, b.by)-max(o.ay, o.by)) >= d {
		return false
	}
	return b.crosses(o) || o.from(b.ax, b.ay) < d || o.from(b.bx, b.by) < d || b.from(o.ax, o.ay) < d || b.from(o.bx, o.by) < d
}

// from returns how far a point is from a bar.
func (b *bar) from(x, y float64) float64 {
	dx, dy := b.bx-b.ax, b.by-b.ay
	square, t := float64(dx*dx)+float64(dy*dy), 0.0
	if square > 0 {
		t = min(max(0, (float64((x-b.ax)*dx)+float64((y-b.ay)*dy))/square), 1)
	}
	return norm(x-b.ax-float64(dx*t), y-b.ay-float64(dy*t))
}

func (b *bar) crosses(o *bar) bool {
	return b.side(o.ax, o.ay)*b.side(o.bx, o.by) < 0 && o.side(b.ax, b.ay)*o.side(b.bx, b.by) < 0
}

// side is above 0 for a point on the left of a bar, below 0 on its right.
func (b *bar) side(x, y float64) float64 {
	s := float64((b.bx-b.ax)*(y-b.ay)) - float64((b.by-b.ay)*(x-b.ax))
	switch {
	case s > 0:
		return 1
	case s < 0:
		return -1
	}
	return 0
}
