package model

import (
	"slices"

	"barwright/compile/geom"
)

// Routing is what a router cuts in one face of a part, beside recesses for steel: one
// program. Coordinates are the program's own: X and Y as the part lies on the machine,
// Z up from the board's top.
type Routing struct {
	Name      string // file name without extension
	Part      string // ID of the part
	PartLabel string
	Far       bool         // the face behind the drawn one is up: the part is turned over from left to right
	Zero      string       // where the person sets zero, in words
	Stock     geom.Rect    // the board under the tool
	Piece     geom.Contour // outline of the part as it lies, counter-clockwise
	Thick     Length
	Under     Length // how far cuts that go through reach below the board, into what it lies on
	Works     []Work // in their order
	Tool      Tool
	Moves     []Move
	CutLength Length
	Seconds   float64 // estimate, without spindle start
}

// GoesThrough reports whether any of its works cuts through the board.
func (r *Routing) GoesThrough() bool {
	return slices.ContainsFunc(r.Works, func(w Work) bool { return w.Depth == 0 })
}

// Work is one shape that a Routing cuts. Openings and grooves run out over an edge of the
// Piece, into what is waste or into the air, where they are open there.
type Work struct {
	Kind   string       // "opening", "outline", "cup", "pin", "groove"
	Name   string       // "outlet urn"
	Shape  geom.Contour // counter-clockwise: what is cut out, its inside corners as the bit leaves them; of an outline what stays
	Depth  Length       // 0: through
	Freed  bool         // what falls out, or of an outline what stays, is cut round and not cleared
	Open   []Edge       // sides of Shape that lie on the Stock's edge
	Tabs   []Tab        // of what is Freed
	Levels []Length     // depths below the top where the bit moves level, the tabs' tops among them; the last one is Depth, or Thick and Under
	First  int          // index of its first one of Routing.Moves; the next one's is where it ends
}

// Tab is wood that is left in a cut, so that what it frees stays where it is. The bit rises
// to its top where its centre is within half the Width and its radius of At, along the cut.
type Tab struct {
	At     geom.Point // its middle, on the Shape of its Work
	Width  Length     // along Shape, in the middle of the cut; beside the walls it is wider, as the bit is round
	Height Length     // up from the board's lower face
}
