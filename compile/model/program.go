package model

import "barwright/compile/geom"

// Program is the router's work for one recess: what to cut and the path of the
// tool. Coordinates are the program's own: X along the part from the mark, Y
// across it from the edge named in Zero, Z up from the stock's top.
type Program struct {
	Name      string // file name without extension: "bar-support-1"
	Part      string // ID of the part
	PartLabel string
	Recess    string // name of the recess
	RecessID  string
	Zero      string    // where the person sets zero, in words
	Mark      Length    // the zero mark, from the part's left end
	Stock     geom.Rect // the wood under the tool, in program coordinates
	Thick     Length
	Shape     geom.Contour // the recess, in program coordinates
	Open      []Edge       // sides of Shape where the steel leaves the wood
	Depth     Length
	Corner    Length // radius that the round bit leaves in inside corners
	Tool      Tool
	Moves     []Move
	CutLength Length
	Seconds   float64  // estimate, without spindle start
	Levels    []Length // depths below the top, the last one is Depth
}

// Tool is the bit and how it runs.
type Tool struct {
	Router      string // block name
	Number      int
	Diameter    Length
	Flutes      int
	RPM         int
	Feed        Length // per minute
	Plunge      Length // per minute, on ramps
	Stepdown    Length
	Stepover    Length
	RampDegrees float64
	Finish      Length // left on the walls for the finishing pass
	Clearance   Length // safe height above the stock
	Dialect     Dialect
}

// Dialect is how a control wants its text.
type Dialect struct {
	Inch     bool // G20, otherwise G21
	Decimals int
	Percent  bool // percent lines round the program
}

// MoveKind tells how the tool goes to a move's end.
type MoveKind int

const (
	MoveRapid MoveKind = iota
	MoveLine           // straight, at feed
	MoveRamp           // straight and down, at plunge feed
	MoveCW             // arc in plan
	MoveCCW
)

// Move takes the tool's centre, at its lower end, to X, Y, Z.
type Move struct {
	Kind    MoveKind
	X, Y, Z Length
	CX, CY  Length // centre of an arc
	Note    string // said in the program before the move
}

// Reach returns the box of the moves of the bit's centre.
func (p *Program) Reach() (plan geom.Rect, z geom.Span) {
	for i, m := range p.Moves {
		at, height := geom.R(m.X, m.Y, m.X, m.Y), geom.Span{Lo: m.Z, Hi: m.Z}
		if i == 0 {
			plan, z = at, height
		}
		plan, z = plan.Union(at), z.Union(height)
	}
	return plan, z
}

// Table is how the shop's cutting table wants its files.
type Table struct {
	R2000  bool // otherwise R12
	Notes  bool // write texts
	Stated bool // state the unit in R12 files too
	Layers LayerNames
}

// LayerNames names a layer for each kind of work.
type LayerNames struct{ Edge, Opening, Recess, Bore, Mark, Note string }
