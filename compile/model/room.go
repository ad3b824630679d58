package model

import (
	"barwright/compile/geom"
)

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
