// Package geom holds exact shapes in whole nanometres: points, rectangles,
// boxes, contours of lines and arcs, and the frames that place them in a room.
//
// Seen in plan, x runs along the first wall from its left end and y out from
// it towards the person who faces it; z is up. A turn is positive from x
// towards y. (Seen from above that is clockwise: the frame is left-handed, and
// a plan drawn with y down shows the room as one looks down on it.)
package geom

import "barwright/lang/length"

// Length is the measure of every coordinate.
type Length = length.Length

// Point is a point of a plane: of a panel's face (x right, y up, as seen) or
// of the floor.
type Point struct{ X, Y Length }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Span is a closed interval. Lo == Hi is a point; Lo > Hi is empty.
type Span struct{ Lo, Hi Length }

// Size returns the extent, negative where the span is empty.
func (s Span) Size() Length { return s.Hi - s.Lo }

// Mid returns the middle, rounded towards Lo.
func (s Span) Mid() Length { return s.Lo + (s.Hi-s.Lo)/2 }

// Overlaps reports whether the insides share more than a point.
func (s Span) Overlaps(o Span) bool { return s.Lo < o.Hi && o.Lo < s.Hi }

// Contains reports whether o lies within s, edges included.
func (s Span) Contains(o Span) bool { return s.Lo <= o.Lo && o.Hi <= s.Hi }

// Holds reports whether x lies within s, ends included.
func (s Span) Holds(x Length) bool { return s.Lo <= x && x <= s.Hi }

// Between returns the span between two places, in either order.
func Between(a, b Length) Span { return Span{min(a, b), max(a, b)} }

// About returns the span of a size about its middle; of an odd size the smaller
// half lies below.
func About(mid, size Length) Span { return Span{mid - size/2, mid - size/2 + size} }

// Intersect returns what both share; empty where they share nothing.
func (s Span) Intersect(o Span) Span { return Span{max(s.Lo, o.Lo), min(s.Hi, o.Hi)} }

// Union returns the least span that holds both.
func (s Span) Union(o Span) Span { return Span{min(s.Lo, o.Lo), max(s.Hi, o.Hi)} }

// Grow returns the span widened by d at either end.
func (s Span) Grow(d Length) Span { return Span{s.Lo - d, s.Hi + d} }

// Shift returns the span moved by d.
func (s Span) Shift(d Length) Span { return Span{s.Lo + d, s.Hi + d} }

// Rect is an axis-parallel rectangle. The zero Rect is the origin, a point,
// not the empty rectangle.
type Rect struct{ X, Y Span }

// R makes a rectangle from two corners.
func R(x0, y0, x1, y1 Length) Rect { return Rect{Span{x0, x1}, Span{y0, y1}} }

// Overlaps reports whether the insides share area; touching is not enough.
func (r Rect) Overlaps(o Rect) bool { return r.X.Overlaps(o.X) && r.Y.Overlaps(o.Y) }

// Contains reports whether o lies within r, edges included.
func (r Rect) Contains(o Rect) bool { return r.X.Contains(o.X) && r.Y.Contains(o.Y) }

// Intersect returns what both share.
func (r Rect) Intersect(o Rect) Rect { return Rect{r.X.Intersect(o.X), r.Y.Intersect(o.Y)} }

// Union returns the least rectangle that holds both.
func (r Rect) Union(o Rect) Rect { return Rect{r.X.Union(o.X), r.Y.Union(o.Y)} }

// Grow returns the rectangle widened by d on all sides.
func (r Rect) Grow(d Length) Rect { return Rect{r.X.Grow(d), r.Y.Grow(d)} }

// Shift returns the rectangle moved by p.
func (r Rect) Shift(p Point) Rect { return Rect{r.X.Shift(p.X), r.Y.Shift(p.Y)} }

// Spot is a place in a frame.
type Spot struct{ U, V, Z Length }

// Axis names a direction of a frame.
type Axis int

const (
	U Axis = iota // left to right along a run or a wall, seen facing it
	V             // out towards the person who faces it
	Z             // up
)

func (a Axis) String() string { return [...]string{"u", "v", "z"}[a] }

// Box is an axis-parallel box in a frame. Boxes are closed: two that share a
// face touch, they do not overlap.
type Box struct{ U, V, Z Span }

// Along returns the box's extent along an axis.
func (b Box) Along(a Axis) Span { return [...]Span{b.U, b.V, b.Z}[a] }

// Overlaps reports whether the insides share volume.
func (b Box) Overlaps(o Box) bool {
	return b.U.Overlaps(o.U) && b.V.Overlaps(o.V) && b.Z.Overlaps(o.Z)
}

// Union returns the least box that holds both.
func (b Box) Union(o Box) Box { return Box{b.U.Union(o.U), b.V.Union(o.V), b.Z.Union(o.Z)} }

// With returns the box with another extent along an axis.
func (b Box) With(a Axis, s Span) Box {
	*[...]*Span{&b.U, &b.V, &b.Z}[a] = s
	return b
}

// Grow moves every face of the box outwards, or inwards if d is negative.
func (b Box) Grow(d Length) Box { return Box{b.U.Grow(d), b.V.Grow(d), b.Z.Grow(d)} }
