package model

// Stock is everything that the description says can be bought, each kind in
// the order of the text.
type Stock struct {
	Sheets   []Sheet
	Sticks   []Stick // sticks and flat bars
	Slabs    []SlabStock
	Screws   []Screw
	Fittings []Fitting
	Bandings []Banding
}

// Saw is what cutting costs. Kerf is the width of a cut. Trim is what comes off
// each factory edge of a sheet, its cut included. Stages is
// how often cuts in a sheet may change their direction; 0 is any number.
type Saw struct {
	Kerf, Trim Length
	Stages     int
}

// Fitting is a hinge, a pair of slides, a pin, a leg or a handle.
type Fitting struct {
	Name    string // "fitting.hinge"
	Text    string
	PerPack int
	Price   float64 // of a pack
	Priced  bool
	Why     Why
}

// Banding is edge banding sold by the roll.
type Banding struct {
	Name      string // "banding.birch"
	Text      string
	Thickness Length
	Roll      Length
	Spare     Length  // cut longer than each edge
	Price     float64 // of a roll
	Priced    bool
	Why       Why
}

// Fitted is a count of one fitting for one use.
type Fitted struct {
	Fitting string // "fitting.hinge"; empty where the description names none
	Kind    string // "hinge", "slides", "shelf pin", "leg", "handle"
	Count   int
	Use     string // "doors of cabinet cups"
	Why     Why
}

// Sheet is a board sold by the piece. Its grain runs along its length.
type Sheet struct {
	Name      string // "sheet.birch"
	Text      string // what one asks for: `birch plywood 23/32 in, 8 ft x 4 ft`
	Length    Length
	Width     Length
	Thickness Length // as measured
	Batch     string // that it was measured on
	Grain     bool
	Density   float64 // kg/m3; 0 where not given
	Price     float64 // each; 0 with Priced false where not given
	Priced    bool
	Also      []SheetSize // further sizes on sale
	Offcuts   []Offcut    // pieces of it that are there already
	Why       Why
}

// SheetSize is a size in which a board is sold.
type SheetSize struct {
	Length, Width Length
	Price         float64 // each; 0 with Priced false where not given
	Priced        bool
}

// Offcut is a piece of a board that is there already, and how many there are of its size.
// Its edges need no trim.
type Offcut struct {
	Length, Width Length
	Count         int
}

// Sizes are all in which the board is sold, the first one first.
func (s *Sheet) Sizes() []SheetSize {
	return append([]SheetSize{{s.Length, s.Width, s.Price, s.Priced}}, s.Also...)
}

// Stick is lumber or flat bar sold in lengths.
type Stick struct {
	Name      string // "stick.two_by_four", "flat_bar.arm"
	Text      string
	Steel     bool
	Thickness Length
	Width     Length
	Lengths   []StickLength // rising
	Ends      Length        // taken off each end, its cut included
	Density   float64       // kg/m3
	Why       Why
}

// Usable is what a length of stick gives.
func (s *Stick) Usable(length Length) Length { return length - 2*s.Ends }

// StickLength is one length on sale.
type StickLength struct {
	Length Length
	Price  float64
	Priced bool
}

// SlabStock is what a counter or bar top is made of.
type SlabStock struct {
	Name      string // "slab.maple"
	Text      string
	Thickness Length
	Length    Length // the longest piece on sale; 0 where not given
	Width     Length
	Solid     bool // solid wood, grain along its length
	Density   float64
	Price     float64 // per square metre
	Priced    bool
	Why       Why
}

// Screw is a screw sold by the box.
type Screw struct {
	Name     string // "screw.wall"
	Text     string
	Diameter Length
	Length   Length
	PerBox   int
	Price    float64
	Priced   bool
	Why      Why
}

// Fastening is a count of one screw for one use.
type Fastening struct {
	Screw string // "screw.wall"
	Count int
	Use   string // "cabinet backs to wall studs"
	// Backing is that of the wall of the room that they go into; empty where they
	// go into none. A shim goes behind each.
	Backing string
	Steel   bool // they go through steel, which takes a hole for each
	Why     Why
}
