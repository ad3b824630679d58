package model

import "barwright/compile/geom"

// Paper is one sheet of a set that is printed: its points are where they lie on the paper, from
// its lower left corner, at full size.
type Paper struct {
	Name       string // file-safe and unique in its set: "elevation-back"
	Title      string
	Number, Of int      // in its set, from 1
	Views      []string // names of those that it shows
	Size       geom.Point
	Shapes     []Shape // from back to front
	Lettering  []Lettering
}

// Lettering is one line of text on paper. It stands on a line through At, which is where it
// begins, has its middle or ends, and which turns counter-clockwise.
type Lettering struct {
	At     geom.Point
	Turn   geom.Angle
	Height Length // of the type, from line to line where it is set solid
	Align  Align
	Bold   bool
	Room   Length // that was kept free for it; type that would be wider is set smaller. 0: as wide as it is
	Text   string
}

// Align is which point of a line of text is given.
type Align int

const (
	Middle Align = iota
	Start
	Finish
)

// Lines that only papers have.
const (
	ShapeDim   ShapeKind = "dim"   // dimension and extension lines
	ShapeRing  ShapeKind = "ring"  // where running dimensions begin
	ShapeDot   ShapeKind = "dot"   // the end of a leader
	ShapeHatch ShapeKind = "hatch" // of what a section cuts
	ShapeFrame ShapeKind = "frame" // round the paper, and of the title block
	ShapeRule  ShapeKind = "rule"  // within tables and blocks
	ShapeInk   ShapeKind = "ink"   // filled black: bars of a scale
)
