// Package model holds the solved build: every part with its features and its
// place, and all that the emitters print. It is made once, by the packages
// beside it, and never written afterwards. All slices have a defined order;
// lengths are whole nanometres.
package model

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Length is the measure of the model.
type Length = length.Length

// Model is one solved build.
type Model struct {
	Build     Build
	Givens    []Given
	Values    []Value // of the description, in its order; none that is in error or left out
	Stock     Stock
	Saw       Saw
	Table     Table
	Room      Room
	Runs      []Run
	KneeWalls []KneeWall
	Slabs     []Slab
	Drains    []Drain
	Parts     []Part
	Fastening []Fastening
	Fitted    []Fitted   // hinges, slides, pins, legs and handles
	Cuts      []Cut      // distinct cut sizes, in the order of the cut list
	Layouts   []Layout   // one per stock that is bought by the piece
	Bill      []BillLine // what to buy
	Programs  []Program  // one per recess that the router cuts
	Routings  []Routing  // what it cuts beside, one per face of a part
	Setting   Setting
	Templates []Template // for routers that are led by hand too
	Ways      []Way      // of cables, cords and drains
	Carry     Carry      // what all that is brought in must pass
	Rough     []Rough    // what is cut for that where it is bought
	Work      []Task     // in the order in which it is done
	Views     []View
	Sheets    []View       // as they are laid out, in the order of the layouts; not among Views
	Sticks    []View       // sticks and bars as they are cut, one of each stock
	Findings  finding.List // warnings and notes; a model has no errors
}

// Why says who asked for a thing: the block's path, and its place in the text.
type Why struct {
	Block string       // "run.back cabinet.urn"
	At    source.Range // of the block's head, or of the attribute
}

// Build is what the description says of itself.
type Build struct {
	Name     string
	Unit     length.Unit
	Marks    Length // what a site mark rounds to
	Revision string
	Paper    string // that drawings are printed on: "letter"; empty where no description says so
}

// Titled is the build with its revision, where it has one: "boat shed, revision A".
func (b Build) Titled() string {
	if b.Revision == "" {
		return b.Name
	}
	return b.Name + ", revision " + b.Revision
}

// Show prints a length as the build's people read it, and hides nothing: as tape
// fractions to the build's mark and what is over, or as millimetres in full.
func (b Build) Show(l Length) string { return length.Show(l, b.Unit, b.Marks) }

// Plain prints a length for sentences and tables: rounded where no tape shows it.
func (b Build) Plain(l Length) string { return length.Plain(l, b.Unit, b.Marks) }

// Near prints a length to the nearest mark, for what follows from the build and is set out by
// nobody: how far something slides, what is cut off at a station. What no mark shows is told
// as it is.
func (b Build) Near(l Length) string { return b.Plain(b.Nearest(l)) }

// Nearest is a length rounded to the nearest mark, unless nothing would be left of it.
func (b Build) Nearest(l Length) Length {
	if near := length.Round(l, b.Marks); near != 0 {
		return near
	}
	return l
}

// Rounding tells what a figure with a tilde before it is rounded to.
func (b Build) Rounding() string { return "A figure after ~ is rounded to " + b.Plain(b.Marks) + "." }

// Usable is a length rounded down to the mark, unless nothing would be left of it: of what is left
// over, no more than there is.
func (b Build) Usable(l Length) Length {
	if down := l - l%max(b.Marks, 1); down > 0 {
		return down
	}
	return l
}

// Metric reports whether a build in inches has a length that no inch rule shows and
// a metric one does, as sizes of fittings are: a multiple of step.
func (b Build) Metric(l, step Length) bool {
	return b.Unit.Imperial() && l%(length.Inch/64) != 0 && l%step == 0
}

// Given is a named input and its value as text in the build's unit.
type Given struct {
	Name, Value string
	Overridden  bool
	Why         Why
}

// Room is the room as measured.
type Room struct {
	Walls []Wall
	Floor Floor
}

// Wall is one wall; heights on it count from the datum, see [Floor]. Its frame starts at its left end as one stands facing it,
// u along it and v out into the room.
type Wall struct {
	Name    string
	Length  Length
	Corner  geom.Angle // interior angle to the next wall
	Backing string     // "studs", "masonry", "planks"
	Frame   geom.Frame
	Studs   []Length // centres
	Outlets []Outlet // switches too
	Stubs   []Stub
	Vents   []Vent
	Base    Baseboard
	Read    []WallReading // in the order of the description; none of a wall that is taken to be straight and plumb
	Why     Why
}

// Vent is an opening in a wall that air must reach. Along and Height give its
// centre.
type Vent struct {
	Name          string
	Along, Height Length
	Width, Tall   Length
	Clearance     Length
	StandsOut     Length
	Cut           Cutting
	Why           Why
}

// Baseboard runs along the foot of a wall; its Height is 0 where there is none.
type Baseboard struct {
	Height, Thickness Length
	Along             geom.Span
	Why               Why
}

// Cutting tells how panels let a thing through.
type Cutting struct {
	Way    string // "hole", "slot", "notch"
	OpenTo string // of a slot or notch: "bottom", "top", "rear", "front", "left", "right"
	Corner Length // radius of its corners
}

// Outlet is an electrical box in a wall. Along and Height give its centre.
type Outlet struct {
	Kind          string // "outlet", "switch"
	Name          string
	Along, Height Length
	Box           Size   // the box, Depth into the wall
	Cover         Size   // the cover plate, Depth its thickness
	Clearance     Length // all round the box in an opening
	StandsOut     Length // from the wall's face; 0 where flush
	Cut           Cutting
	Why           Why
}

// Plate is where the cover plate lies, as one faces the wall.
func (o *Outlet) Plate() geom.Rect {
	return geom.Rect{X: geom.About(o.Along, o.Cover.Width), Y: geom.About(o.Height, o.Cover.Height)}
}

// Stub is a pipe end that stands out of a wall.
type Stub struct {
	Name          string
	Along, Height Length
	Diameter      Length
	StandsOut     Length
	Clearance     Length // all round in an opening
	Cut           Cutting
	Why           Why
}

// Fixture is what stands in a wall, whatever it is.
type Fixture struct {
	Kind, Name string    // "outlet", "switch", "stub" or "vent"
	Face       geom.Rect // as one faces the wall: along it, and up
	Clearance  Length    // all round in an opening
	StandsOut  Length
	Out        geom.Span // from the wall's face on, over its straight plane
	Cut        Cutting
	Outlet     *Outlet // nil of a stub or a vent
	Why        Why
}

// Key is the key of the fixture's block: "outlet.kettle".
func (f *Fixture) Key() string { return f.Kind + "." + f.Name }

// Words name it: "outlet kettle".
func (f *Fixture) Words() string { return f.Kind + " " + f.Name }

// Fixtures lists what stands in the wall: outlets and switches, stubs, vents.
func (w *Wall) Fixtures() []Fixture {
	var out []Fixture
	face := func(along, height, wide, high Length) geom.Rect {
		return geom.Rect{X: geom.About(along, wide), Y: geom.About(height, high)}
	}
	for i := range w.Outlets {
		o := &w.Outlets[i]
		out = append(out, Fixture{Kind: o.Kind, Name: o.Name, Face: face(o.Along, o.Height, o.Box.Width, o.Box.Height), Clearance: o.Clearance, StandsOut: o.StandsOut, Cut: o.Cut, Outlet: o, Why: o.Why})
	}
	for _, o := range w.Stubs {
		out = append(out, Fixture{Kind: "stub", Name: o.Name, Face: face(o.Along, o.Height, o.Diameter, o.Diameter), Clearance: o.Clearance, StandsOut: o.StandsOut, Cut: o.Cut, Why: o.Why})
	}
	for _, o := range w.Vents {
		out = append(out, Fixture{Kind: "vent", Name: o.Name, Face: face(o.Along, o.Height, o.Width, o.Tall), Clearance: o.Clearance, StandsOut: o.StandsOut, Cut: o.Cut, Why: o.Why})
	}
	surface := w.Face()
	for i := range out {
		off, _ := surface.At(geom.Point{X: out[i].Face.X.Mid(), Y: out[i].Face.Y.Mid()})
		out[i].Out = geom.Span{Lo: off, Hi: off + out[i].StandsOut}
	}
	return out
}

// Size is width, height and depth as one faces the thing.
type Size struct{ Width, Height, Depth Length }

// Run is a row of boxes. Its frame starts at the back left as one faces it; u
// runs to the right, v out to the front.
type Run struct {
	Name   string
	Frame  geom.Frame
	Length Length
	Height Length // of its boxes, without a counter
	Depth  Length
	Wall   string // the wall that it stands along or out from
	Along  bool   // along that wall; otherwise out from it
	Free   []End  // ends that meet no wall
	Boxes  []Box
	Joints []Joint // of cabinets side by side, where a screw is named for them
	Why    Why
}

// Joint is where four screws join two cabinets side by side: two near the front and
// two near the rear, at the same two heights.
type Joint struct {
	Left, Right string // cabinets
	From        string // the one that they are driven from
	Plates      bool   // those near the front go in behind hinge plates
	Rear, Front Length // out from the rear of the boxes
	Low, High   Length // above the floor
}

// Foremost is where the foremost front of the run is, or its boxes where it has none.
func (r *Run) Foremost() Length {
	line := r.Depth
	for i := range r.Boxes {
		line = max(line, r.Boxes[i].Foremost())
	}
	return line
}

// FreeAt reports whether an end of the run meets no wall.
func (r *Run) FreeAt(e End) bool { return slices.Contains(r.Free, e) }

// Cabinet is the index of a cabinet among the run's boxes.
func (r *Run) Cabinet(name string) int {
	return slices.IndexFunc(r.Boxes, func(b Box) bool { return b.Kind == Cabinet && b.Name == name })
}

// End is an end of a run.
type End int

const (
	Left End = iota
	Right
)

func (e End) String() string { return [...]string{"left", "right"}[e] }

// Box is a cabinet, a bay or a filler of a run.
type Box struct {
	Kind        BoxKind
	Name        string
	Hull        geom.Box // outside, in the run's frame
	Inside      geom.Box // clear space; of a bay: what the appliance may fill
	Appliance   geom.Box // of a bay: where the appliance stands
	ToeHeight   Length
	ToeSetback  Length
	BlockHeight Length // of a bay: under the appliance
	Legs        []geom.Box
	Fronts      []Front // from the top down, then left to right
	Why         Why
}

// Key is the key of the box's block: "cabinet.urn".
func (b *Box) Key() string { return b.Kind.String() + "." + b.Name }

// Words name it: "cabinet urn".
func (b *Box) Words() string { return b.Kind.String() + " " + b.Name }

// ClosedAt reports whether a front stands before what is at a height; fronts leave no
// more than gaps between them.
func (b *Box) ClosedAt(z Length) bool {
	if len(b.Fronts) == 0 {
		return false
	}
	all := b.Fronts[0].Place.Z
	for _, f := range b.Fronts[1:] {
		all = all.Union(f.Place.Z)
	}
	return all.Holds(z)
}

// Foremost is how far the fronts of a box come out, 0 where it has none.
func (b *Box) Foremost() Length {
	v := Length(0)
	for i := range b.Fronts {
		v = max(v, b.Fronts[i].Place.V.Hi)
	}
	return v
}

// Front closes a part of a cabinet.
type Front struct {
	Kind   FrontKind
	Name   string   // "left door", "drawer 2"
	Place  geom.Box // with its banding
	Hinged End      // of a door: the side that it hangs on
	Hinges []Length // of a door: their heights above the floor
	Part   string   // ID
	Box    geom.Box // of a drawer: the box behind its front
}

// FrontKind tells what a front is.
type FrontKind int

const (
	Door FrontKind = iota
	Drawer
	FalseFront
)

func (k FrontKind) String() string { return [...]string{"door", "drawer", "false front"}[k] }

// BoxKind tells what stands in a run.
type BoxKind int

const (
	Cabinet BoxKind = iota
	Bay
	Filler
)

func (k BoxKind) String() string { return [...]string{"cabinet", "bay", "filler"}[k] }

// Slab is a counter or a bar top.
type Slab struct {
	Kind, Name string // "counter", "bar_top"
	Stock      string // "slab.maple"; empty where none is named
	Frame      geom.Frame
	Box        geom.Box
	Seams      []Length  // between its pieces, along the run
	Parts      []string  // IDs of its pieces, left to right
	Cuts       []SlabCut // sinks, then taps
	WeightKg   float64   // of all pieces, without what is cut out; 0 where unknown
	Why        Why
}

// Key is the key of the slab's block: "bar_top.bar".
func (s *Slab) Key() string { return s.Kind + "." + s.Name }

// Words name it: "bar top bar".
func (s *Slab) Words() string { return lang.KindWords(s.Kind) + " " + s.Name }

// SlabCut is the cut-out for a sink or the hole for a tap.
type SlabCut struct {
	Kind, Name string   // "sink", "tap"
	Box        geom.Box // through the slab, in its frame
	Radius     Length   // of its corners; of a hole, its own
	Part       string   // ID of the piece that it is cut out of
	Why        Why
}
