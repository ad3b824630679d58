package model

import "slices"

// Drain is what a pipe that is laid from a sink to its stub comes to; where it lies is
// among the ways. Heights are above the datum, of the middle of the pipe unless they say
// otherwise. It is proposed: whoever is licensed to plumb decides.
type Drain struct {
	Name     string
	Sink     string
	Stub     string
	Vent     string // "wall", "island", "valve"; empty where nothing tells
	Diameter Length // of the pipe, outside
	Size     Length // that it is sold as
	TrapSize Length // likewise
	Seal     Length // depth of the water that stands in the trap
	Bowl     Length // underside of the bowl
	Outlet   Length // where the pipe leaves the trap
	Weir     Length // over which water leaves the trap
	Under    Length // underside of the trap
	End      Length // at the end of the stub
	Arm      Length // of the pipe from the trap to the face of the stub's wall
	Fall     Length // over the arm
	Elbows   int    // of 90 degrees; a bend within that of the trap is the trap's own
	Straight bool   // it meets the stub end on
	Stops    []Stop // what no hole leads it through
	StubBy   Length // how much higher the stub would be where nothing stops it; 0 where nothing does, or no such height is known
	Why      Why
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

// WayOf is where a drain's pipe lies.
func (m *Model) WayOf(d *Drain) *Way {
	return &m.Ways[slices.IndexFunc(m.Ways, func(w Way) bool { return w.Key() == d.Key() })]
}
