// Package paint draws solids as one sees them from a corner of the room: it projects their
// faces, finds the order in which they are painted so that what is near covers what is far, and
// tells what is seen of each.
//
// The projection is the isometric one of ISO 5456-3 (from memory): the eye is infinitely far
// away, the three axes of the room are drawn 120 degrees apart, and lengths along each of them
// are true. Points of the room are floats in nanometres, in its left-handed frame: x to the right
// and y towards whoever faces the first wall, z up.
package paint

import (
	"math"

	"barwright/compile/geom"
)

// Vec is a point of the room or a direction in it.
type Vec struct{ X, Y, Z float64 }

// Add returns v moved by o.
func (v Vec) Add(o Vec) Vec { return Vec{v.X + o.X, v.Y + o.Y, v.Z + o.Z} }

// Sub returns the step from o to v.
func (v Vec) Sub(o Vec) Vec { return Vec{v.X - o.X, v.Y - o.Y, v.Z - o.Z} }

// Scale returns v so many times as long.
func (v Vec) Scale(by float64) Vec { return Vec{v.X * by, v.Y * by, v.Z * by} }

// Long is how long v is.
func (v Vec) Long() float64 { return math.Sqrt(v.dot(v)) }

func (v Vec) dot(o Vec) float64 {
	return float64(v.X*o.X) + float64(v.Y*o.Y) + float64(v.Z*o.Z)
}

// Eye looks from one of the four upper corners of the room.
type Eye struct{ toward Vec } // to the eye; each coordinate is 1 or -1

// Eyes are the four: they look along the first wall's left and right half, then from behind it.
func Eyes() [4]Eye {
	return [4]Eye{{Vec{-1, 1, 1}}, {Vec{1, 1, 1}}, {Vec{-1, -1, 1}}, {Vec{1, -1, 1}}}
}

// Sees reports whether the eye sees a face that looks in a direction.
func (e Eye) Sees(out Vec) bool { return out.dot(e.toward) > edgeOn }

// edgeOn is the cosine, nearly, below which a face is seen as its edge.
const edgeOn = 1e-6

// cos30 is the cosine of 30 degrees: the axes of the floor are drawn so far off the horizontal.
const cos30 = 0.8660254037844386

// project returns where a point is drawn: X to the right, Y up, in nanometres.
func (e Eye) project(p Vec) spot {
	right := float64(e.toward.Y*p.X) - float64(e.toward.X*p.Y)
	near := float64(e.toward.X*p.X) + float64(e.toward.Y*p.Y)
	return spot{float64(right * cos30), p.Z - near/2}
}

// Project returns where a point is drawn, to the nearest nanometre.
func (e Eye) Project(p Vec) geom.Point { return e.project(p).point() }

// spot is a point of the picture.
type spot struct{ x, y float64 }

func (s spot) point() geom.Point {
	return geom.Point{X: geom.Length(math.Round(s.x)), Y: geom.Length(math.Round(s.y))}
}

// Shade tells which way a face looks, as it is seen.
type Shade int

const (
	Top Shade = iota
	Left
	Right
)

// Shade tells which way a face looks.
func (e Eye) Shade(out Vec) Shade {
	across := float64(e.toward.Y*out.X) - float64(e.toward.X*out.Y)
	switch {
	case out.Z > 0.5:
		return Top
	case across < 0:
		return Left
	}
	return Right
}

// Along tells how far a step goes along two level ways, which together make it, to the nearest
// nanometre.
func Along(step Vec, ways [2]Vec) (a, b geom.Length) {
	p, q := ways[0], ways[1]
	det := float64(p.X*q.Y) - float64(p.Y*q.X)
	return geom.Length(math.Round((float64(step.X*q.Y) - float64(step.Y*q.X)) / det)),
		geom.Length(math.Round((float64(p.X*step.Y) - float64(p.Y*step.X)) / det))
}
