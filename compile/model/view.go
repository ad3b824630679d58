package model

import "barwright/compile/geom"

// View is a drawing in real size, computed and ready to be put on a page. X
// runs right and Y up, in nanometres.
type View struct {
	Name   string // file-safe: "plan", "elevation-back"
	Title  string
	Bounds geom.Rect
	Shapes []Shape
	Texts  []Text
	Dims   []Dim
}

// Shape is a line or an area of a view, from back to front.
type Shape struct {
	Kind   ShapeKind
	Lines  geom.Contour
	Closed bool
	Part   string // ID of the part or thing, for pointing at it; may be empty
	Title  string // what it is, in words
}

// ShapeKind tells what a shape shows; the page chooses line and tint.
type ShapeKind string

const (
	ShapeWall      ShapeKind = "wall"
	ShapeStud      ShapeKind = "stud"
	ShapePanel     ShapeKind = "panel"   // cut board, seen
	ShapeHidden    ShapeKind = "hidden"  // dashed
	ShapeOpening   ShapeKind = "opening" // cut through
	ShapeRecess    ShapeKind = "recess"  // cut to a depth
	ShapeOutlet    ShapeKind = "outlet"
	ShapeStub      ShapeKind = "stub"
	ShapeAppliance ShapeKind = "appliance"
	ShapeFraming   ShapeKind = "framing"
	ShapeSteel     ShapeKind = "steel"
	ShapeSlab      ShapeKind = "slab"
	ShapeFloor     ShapeKind = "floor"
)

// Text is a label centred on a point. Room is the width that it may fill, 0
// where it does not matter.
type Text struct {
	At   geom.Point
	Room Length
	Text string
}

// Dim is a dimension line from A to B, drawn Offset to the left of the way
// from A to B (negative: to the right). Text is what it says.
type Dim struct {
	A, B   geom.Point
	Offset Length
	Text   string
}
