package model

import (
	"math"

	"barwright/compile/geom"
)

// Reach returns the box of the moves of the bit's centre.
func (p *Program) Reach() (plan geom.Rect, z geom.Span) { return reach(p.Moves) }

// Reach returns the box of the moves of the bit's centre.
func (r *Routing) Reach() (plan geom.Rect, z geom.Span) { return reach(r.Moves) }

func reach(moves []Move) (plan geom.Rect, z geom.Span) {
	for i, m := range moves {
		at, height := geom.R(m.X, m.Y, m.X, m.Y), geom.Span{Lo: m.Z, Hi: m.Z}
		if i == 0 {
			plan, z = at, height
		}
		plan, z = plan.Union(at), z.Union(height)
		if i > 0 && (m.Kind == MoveCW || m.Kind == MoveCCW) {
			plan = plan.Union(m.crowns(moves[i-1]))
		}
	}
	return plan, z
}

// crowns returns the box of an arc's end and of the points of it that lie farthest along the
// axes. The arc is half a circle at most.
func (m *Move) crowns(from Move) geom.Rect {
	ax, ay, bx, by := from.X-m.CX, from.Y-m.CY, m.X-m.CX, m.Y-m.CY
	if m.Kind == MoveCW {
		ax, ay, bx, by = bx, by, ax, ay
	}
	r := Length(math.Round(math.Hypot(float64(ax), float64(ay))))
	box := geom.R(m.X, m.Y, m.X, m.Y)
	for _, c := range [4]geom.Point{{X: r}, {Y: r}, {X: -r}, {Y: -r}} {
		if ax*c.Y-ay*c.X >= 0 && c.X*by-c.Y*bx >= 0 { // counter-clockwise from a to b
			box = box.Union(geom.R(m.CX+c.X, m.CY+c.Y, m.CX+c.X, m.CY+c.Y))
		}
	}
	return box
}
