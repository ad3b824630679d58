package ngc

import (
	"fmt"
	"math"

	"barwright/compile/model"
)

// arc writes an arc, or a turn of a helix. Where a dialect has none, straight
// pieces stand for it. A full turn is written as two halves.
func (p *pen) arc(from, m model.Move, feed Length) error {
	a := around(from, m)
	switch {
	case p.dialect.Chords:
		p.chords(a, m, feed)
	case a.full(p.units):
		half := m
		half.X, half.Y, half.Z = 2*m.CX-from.X, 2*m.CY-from.Y, (from.Z+m.Z)/2
		if err := p.centred(a, half, feed); err != nil {
			return err
		}
		return p.centred(around(half, m), m, feed)
	default:
		return p.centred(a, m, feed)
	}
	return nil
}

// turn is an arc as seen from its centre.
type turn struct {
	from, to vector
	z        [2]Length
	ccw      bool
}

// vector is a step in plan, in nanometres or in steps of the last decimal.
type vector struct{ x, y float64 }

// size takes a square root only, which is the same on every processor.
func (v vector) size() float64 { return math.Sqrt(float64(v.x*v.x) + float64(v.y*v.y)) }

func around(from, m model.Move) turn {
	return turn{
		vector{float64(from.X - m.CX), float64(from.Y - m.CY)}, vector{float64(m.X - m.CX), float64(m.Y - m.CY)},
		[2]Length{from.Z, m.Z}, m.Kind == model.MoveCCW,
	}
}

// cross is above 0 where an arc from v to w, the way it turns, is less than half.
func (t turn) cross(v, w vector) float64 {
	c := float64(v.x*w.y) - float64(v.y*w.x)
	if t.ccw {
		return c
	}
	return -c
}

// short reports whether an arc is less than a quarter.
func (t turn) short() bool {
	return t.cross(t.from, t.to) > 0 && float64(t.from.x*t.to.x)+float64(t.from.y*t.to.y) > 0
}

// full reports whether an arc goes round until its end can no longer be told
// from its start.
func (t turn) full(u units) bool {
	gap := vector{t.to.x - t.from.x, t.to.y - t.from.y}.size()
	return !t.short() && gap < 2*u.step() && gap < t.from.size()
}

// centred writes the centre as increments from the start as written. A line is
// written where rounding leaves an arc without a radius, or so short that it
// would read as the rest of its circle.
func (p *pen) centred(t turn, m model.Move, feed Length) error {
	u := p.units
	x, y, z := u.steps(m.X), u.steps(m.Y), u.steps(m.Z)
	i, j := u.steps(m.CX)-p.x, u.steps(m.CY)-p.y
	start := vector{float64(-i), float64(-j)}
	end := vector{float64(x - p.x - i), float64(y - p.y - j)}
	if i == 0 && j == 0 || t.short() && t.cross(start, end) <= 0 {
		p.words("G1", x, y, z, feed)
		return nil
	}
	miss := math.Abs(start.size() - end.size())
	if miss > float64(u.arcSlack*float64(u.perUnit))+1e-6 {
		return fmt.Errorf("%d decimals are too few: an arc at X%s Y%s would miss its circle", u.decimals, u.text(x), u.text(y))
	}
	code, down := "G2", ""
	if t.ccw {
		code = "G3"
	}
	if z != p.z {
		down = " Z" + u.text(z)
	}
	p.x, p.y, p.z = x, y, z
	p.block(fmt.Sprintf("%s X%s Y%s%s I%s J%s%s", code, u.text(x), u.text(y), down, u.text(i), u.text(j), p.feedWord(feed)))
	return nil
}

// chords writes straight pieces for an arc. Their ends are rounded to the last
// decimal, which takes one step of how far they may leave the arc.
func (p *pen) chords(t turn, m model.Move, feed Length) {
	for _, at := range t.points(float64(p.dialect.Chord) - p.units.step()) {
		piece := m
		piece.X, piece.Y = m.CX+Length(math.Round(at.x)), m.CY+Length(math.Round(at.y))
		piece.Z = t.z[0] + Length(math.Round(float64(t.z[1]-t.z[0])*at.share))
		p.straight(piece, feed)
	}
	p.straight(m, feed)
}

// point is a point of an arc, from its centre, and how much of the arc lies before it.
type point struct {
	vector
	share float64
}

// points halves an arc until its pieces leave it by no more than slack, which is
// above 0, and returns the points in between.
func (t turn) points(slack float64) []point {
	var out []point
	var halve func(a, b point)
	halve = func(a, b point) {
		if t.cross(a.vector, b.vector) > 0 && t.rise(a.vector, b.vector) <= slack {
			return
		}
		mid := point{t.middle(a.vector, b.vector), (a.share + b.share) / 2}
		halve(a, mid)
		out = append(out, mid)
		halve(mid, b)
	}
	halve(point{t.from, 0}, point{t.to, 1})
	return out
}

// rise is how far an arc of less than half leaves its chord.
func (t turn) rise(a, b vector) float64 {
	r, half := t.from.size(), vector{a.x - b.x, a.y - b.y}.size()/2
	square := float64(half * half)
	return square / (r + math.Sqrt(max(float64(r*r)-square, 0)))
}

// middle returns the middle of an arc from a to b: square to the chord, on the
// side that is passed.
func (t turn) middle(a, b vector) vector {
	square := vector{b.y - a.y, a.x - b.x}
	if !t.ccw {
		square = vector{-square.x, -square.y}
	}
	if square == (vector{}) {
		return vector{-a.x, -a.y}
	}
	grow := t.from.size() / square.size()
	return vector{square.x * grow, square.y * grow}
}
