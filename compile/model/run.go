package model

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang"
)

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
