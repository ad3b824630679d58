package model

import "barwright/compile/geom"

// Edge is a side of a part as drawn.
type Edge int

const (
	Bottom Edge = iota
	RightEdge
	Top
	LeftEdge
)

func (e Edge) String() string { return [...]string{"bottom", "right", "top", "left"}[e] }

// Opposite returns the edge across the part.
func (e Edge) Opposite() Edge { return (e + 2) % 4 }

// Onward returns a rectangle whose side at the edge lies further out.
func (e Edge) Onward(r geom.Rect, by Length) geom.Rect {
	switch e {
	case Bottom:
		r.Y.Lo -= by
	case RightEdge:
		r.X.Hi += by
	case Top:
		r.Y.Hi += by
	case LeftEdge:
		r.X.Lo -= by
	}
	return r
}
