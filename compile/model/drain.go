package model

import "barwright/compile/geom"

// Drain is the pipe from a sink to its stub, as it is to be laid. Heights are above the
// floor's datum; whoever is licensed to plumb decides.
type Drain struct {
	Name     string
	Sink     string
	Stub     string
	Run      string      // the sink's
	Vent     string      // "wall", "island", "valve"; empty where nothing tells
	Diameter Length      // of the pipe, outside
	Size     Length      // that it is sold as
	TrapSize Length      // likewise
	Seal     Length      // depth of the water that stands in the trap
	Bowl     Length      // underside of the bowl
	Weir     Length      // over which water leaves the trap
	Under    Length      // underside of the trap
	Arm      Length      // of the pipe from the trap to the face of the stub's wall
	Fall     Length      // over the arm
	Points   []geom.Spot // of its middle, in the run's frame: from the trap to the end of the stub
	Pipe     Length      // to be cut, from the trap to the end of the stub
	Elbows   int         // of 90 degrees; a bend within that of the trap is the trap's own
	Straight bool        // it meets the stub end on
	Hangers  int
	Holes    []PipeHole
	Stops    []Stop // what no hole leads it through
	Why      Why
}

// PipeHole is a round hole for a pipe, through the middle of a board.
type PipeHole struct {
	Part     string // ID
	At       geom.Spot
	Diameter Length
}

// Stop is what stands in the way of a pipe.
type Stop struct {
	Name string // "drawer 1 of cabinet bins"
	Why  Why
}

// Key is the key of the drain's block: "drain.waste".
func (d *Drain) Key() string { return "drain." + d.Name }

// Words name it: "drain waste".
func (d *Drain) Words() string { return "drain " + d.Name }

// Outlet is the height of the pipe's middle where it leaves the trap.
func (d *Drain) Outlet() Length { return d.Points[0].Z }

// End is the height of the pipe's middle at the end of the stub.
func (d *Drain) End() Length { return d.Points[len(d.Points)-1].Z }
