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
	Test      bool      // a piece of scrap is cut, to try the fit of Recess
	Zero      string    // where the person sets zero, in words
	Mark      Length    // where X is zero, from the part's left end
	Setup     int       // how many times the part has been laid on the machine by then, from 1
	MovedOn   Length    // of X's zero along the part, since the setup before
	Stock     geom.Rect // the wood under the tool, in program coordinates
	Thick     Length
	Shape     geom.Contour // the recess, in program coordinates
	Open      []Edge       // sides of Shape where the steel leaves the wood
	Depth     Length
	Corner    Length       // radius that the round bit leaves in inside corners; 0 where relieved
	Reliefs   []geom.Point // centres of bores of the bit's size, to Depth, at the corners that are relieved
	Tool      Tool
	Moves     []Move
	Finishing int // index of the first of Moves that finishes the floor or the walls
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
	Wood        string // "softwood", "plywood", "hardwood", "mdf"
	Machine     string // "light", "rigid"
	Entry       string // "ramp", "helix"
	Passes      string // "rings", "parallel"; a program's as it is cut
	Floor       Length // left on the floor for a last pass
	Relief      string // of inside corners: "none", "diagonal", "long_side"
	Datum       string // "mark", "end", "last"
	Travel      Travel
	Rapid       Length  // per minute
	Accelerate  float64 // mm/s2
	Dialect     Dialect
}

// Travel is how far a machine moves each way; 0 where it is not known.
type Travel struct{ X, Y, Z Length }

// Guide is a router that is led by hand along a template: round a bush that is wider
// than the bit, or by a bearing on it.
type Guide struct {
	Bush, Bearing, Bit Length // Bush or Bearing is 0; without a guide all are
	Board              string // "sheet.thin", which templates are cut from
	Collar             Length // how far the bush stands out below the router's base; 0 where it is not known
}

// Also is what a router cuts beside recesses for steel.
type Also struct {
	Openings, Outlines, Cups, Pins, Grooves bool

	Under Length // how far cuts that go through reach below the board
	Room  Length // in a blank, beyond the cut round the part
	Tabs  Tabs
}

// Tabs is how pieces are held that come free.
type Tabs struct {
	Width, Height, Spacing Length
	Least                  int // for each piece
}

// Dialect is how a control wants its text.
type Dialect struct {
	Inch     bool // G20, otherwise G21
	Decimals int
	Percent  bool     // percent lines round the program
	Chords   bool     // arcs as straight pieces
	Chord    Length   // how far these may leave an arc
	Numbers  bool     // line numbers
	Comments string   // "brackets", "semicolon", "none"
	Start    []string // lines of the control's own after the units
	End      []string // before the spindle stops
	Change   bool     // bits are changed by M6
	SpinUp   float64  // seconds until the spindle is up to speed
}

// MoveKind tells how the tool goes to a move's end.
type MoveKind int

const (
	MoveRapid MoveKind = iota
	MoveLine           // straight, at feed
	MoveRamp           // straight and down, at plunge feed
	MoveCW             // arc in plan; a helix, at plunge feed, where it goes down
	MoveCCW
)

// Move takes the tool's centre, at its lower end, to X, Y, Z.
type Move struct {
	Kind    MoveKind
	X, Y, Z Length
	CX, CY  Length // centre of an arc
	Note    string // said in the program before the move
}
