package routing

import (
	"math"
	"sort"

	"barwright/compile/geom"
)

// way is the closed way of a bit's centre.
type way struct {
	pieces []piece
	starts []float64 // of each piece along the way, in nanometres
	total  float64
}

// piece is a straight piece or an arc of at most half a circle.
type piece struct {
	from, to geom.Point
	centre   geom.Point
	turn     float64 // of an arc, in radians, above 0 counter-clockwise; 0: straight
	long     float64
	aside    bool // it leads to a relieved corner, or back
}

func (w *way) add(p piece) {
	w.pieces, w.starts = append(w.pieces, p), append(w.starts, w.total)
	w.total += p.long
}

func (w *way) line(from, to geom.Point) { w.add(straight(from, to)) }

// aside leads over a point to another one and back.
func (w *way) aside(from, over, to geom.Point) {
	for _, p := range [...]piece{straight(from, over), straight(over, to), straight(to, over), straight(over, from)} {
		if p.long > 0 {
			p.aside = true
			w.add(p)
		}
	}
}

func straight(from, to geom.Point) piece {
	return piece{from: from, to: to, long: norm(float64(to.X-from.X), float64(to.Y-from.Y))}
}

func (w *way) arc(from, to, centre geom.Point, turn float64) {
	p := piece{from: from, to: to, centre: centre, turn: turn}
	p.long = p.radius() * math.Abs(turn)
	w.add(p)
}

// around leads along an arc or, where arcs will be chords and it turns to the right, along
// straight pieces that touch it and lie outside, by slack at most.
func (w *way) around(from, to, centre geom.Point, turn float64, chord, slack Length) {
	if chord == 0 || turn >= 0 {
		w.arc(from, to, centre, turn)
		return
	}
	x, y := float64(from.X-centre.X), float64(from.Y-centre.Y)
	r := norm(x, y)
	n := math.Ceil(-turn / min(math.Pi/4, 2*math.Acos(r/(r+float64(slack)))))
	out := 1 / math.Cos(turn/(2*n))
	for k := 0.5; k < n; k++ {
		sin, cos := math.Sincos(turn * k / n)
		next := centre.Add(geom.Point{
			X: Length(math.Round((float64(x*cos) - float64(y*sin)) * out)),
			Y: Length(math.Round((float64(x*sin) + float64(y*cos)) * out)),
		})
		w.line(from, next)
		from = next
	}
	w.line(from, to)
}

func (p *piece) radius() float64 {
	return norm(float64(p.from.X-p.centre.X), float64(p.from.Y-p.centre.Y))
}

// at returns the point that lies d along a piece.
func (p *piece) at(d float64) geom.Point {
	switch {
	case d <= 0:
		return p.from
	case d >= p.long:
		return p.to
	case p.turn == 0:
		return headingOf(p.from, p.to).onward(p.from, d)
	}
	x, y := float64(p.from.X-p.centre.X), float64(p.from.Y-p.centre.Y)
	sin, cos := math.Sincos(p.turn * d / p.long)
	return p.centre.Add(geom.Point{
		X: Length(math.Round(float64(x*cos) - float64(y*sin))),
		Y: Length(math.Round(float64(x*sin) + float64(y*cos))),
	})
}

// cut returns what of a piece lies between two places along it.
func (p *piece) cut(a, b float64) piece {
	out := *p
	out.from, out.to = p.at(a), p.at(b)
	out.long = min(b, p.long) - max(a, 0)
	out.turn = p.turn * out.long / p.long
	return out
}

func (p piece) reversed() piece {
	p.from, p.to, p.turn = p.to, p.from, -p.turn
	return p
}

// sliver is what is not worth a move of its own, in nanometres.
const sliver = 100

// between returns what lies on the way from one place to another one, further on; it may
// be further than all the way round.
func (w *way) between(a, b float64) []piece {
	var out []piece
	for b-a > sliver {
		i, in := w.find(a)
		p := &w.pieces[i]
		to := min(p.long, in+b-a)
		if to-in > sliver {
			out = append(out, p.cut(in, to))
		}
		a += max(to-in, sliver/2)
	}
	return out
}

// find returns the piece at a place, and how far along it that is.
func (w *way) find(s float64) (i int, in float64) {
	s = math.Mod(s, w.total)
	i = sort.SearchFloat64s(w.starts, s+sliver/2) - 1
	i = max(i, 0)
	return i, max(0, s-w.starts[i])
}

// at returns the point at a place.
func (w *way) at(s float64) geom.Point {
	i, in := w.find(s)
	return w.pieces[i].at(in)
}

// nearest returns the place on the way that is nearest to a point, and how it is bent
// there: the radius of its arc, 0 where it is straight.
func (w *way) nearest(p geom.Point) (s, radius float64) {
	best := math.Inf(1)
	for i := range w.pieces {
		q := &w.pieces[i]
		if q.aside || q.long == 0 {
			continue
		}
		in := q.foot(p)
		at := q.at(in)
		if d := norm(float64(at.X-p.X), float64(at.Y-p.Y)); d < best {
			best, s, radius = d, w.starts[i]+in, 0
			if q.turn != 0 {
				radius = q.radius()
			}
		}
	}
	return s, radius
}

// foot returns how far along a piece its point nearest to p lies.
func (p *piece) foot(q geom.Point) float64 {
	if p.turn == 0 {
		h := headingOf(p.from, p.to)
		return min(max(0, float64(h.x*float64(q.X-p.from.X))+float64(h.y*float64(q.Y-p.from.Y))), p.long)
	}
	a := math.Atan2(float64(p.from.Y-p.centre.Y), float64(p.from.X-p.centre.X))
	b := math.Atan2(float64(q.Y-p.centre.Y), float64(q.X-p.centre.X))
	gone := math.Copysign(1, p.turn) * (b - a)
	gone = math.Mod(gone+4*math.Pi, 2*math.Pi)
	if most := math.Abs(p.turn); gone > most {
		if gone-most < 2*math.Pi-gone {
			return p.long
		}
		return 0
	}
	return gone * p.radius()
}
