package model

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Rear is where the rear of a run's boxes stands because of readings of its wall.
type Rear struct {
	Run, Wall string
	Off       Length     // out from the wall's straight plane, negative behind it
	At        geom.Point // on the wall, where its face stands out most: along, height
}

// Gap is the room between a cabinet and its wall on a line of screws.
type Gap struct {
	Run, Box string // "back", "cabinet.urn"
	Along    Length // of the line, along the wall
	Height   Length // of the middle of the rear stretcher
	Gap      Length // from the back to the wall's face, never negative
	Behind   Length // of that, what the face lies behind the rear of the boxes
	Shim     Length // what is packed there: the gap, rounded to what shims do
	Why      Why
}

// Scribe is an edge of a part that is cut on site, to the floor or to a wall.
type Scribe struct {
	Edge     Edge
	To       string       // "floor", "wall.north"
	Line     []geom.Point // on the drawn face, left to right or from below up
	From     Edge         // the edge that stations count from
	Stations []Station    // from that edge on
}

// Name is what its line on the face is called: "scribe to the floor", "scribe to the wall".
func (s *Scribe) Name() string {
	if s.To == ToFloor {
		return "scribe to the floor"
	}
	return "scribe to the wall"
}

// ToFloor is what a scribe to the floor is cut to.
const ToFloor = "floor"

// Station is where a scribe's line is measured.
type Station struct {
	Along Length // from the edge that stations count from
	Cut   Length // off the scribed edge of the blank
	Keep  Length // from the part's edge across to the line
}

// Cut is what a point of a scribe's line lies off the scribed edge of the blank, and off
// the blank's edge across.
func (s *Scribe) Cut(p *Part, at geom.Point) (cut, keep Length) {
	blank := p.Placement.Blank()
	switch s.Edge {
	case Bottom:
		cut, keep = at.Y, blank.Y.Hi-at.Y
	case Top:
		cut, keep = blank.Y.Hi-at.Y, at.Y
	case LeftEdge:
		cut, keep = at.X, blank.X.Hi-at.X
	default:
		cut, keep = blank.X.Hi-at.X, at.X
	}
	return cut, keep
}

// Left is what a point of a scribe's line lies off the part's edge across as a tape finds
// it: at a notch or a step, that of the notch or the step.
func (s *Scribe) Left(p *Part, at geom.Point) Length {
	_, keep := s.Cut(p, at)
	across, end := [...]geom.Point{Bottom: {Y: keep}, RightEdge: {X: -keep}, Top: {Y: -keep}, LeftEdge: {X: keep}}[s.Edge], keep
	if within := p.Outline.Clip(at, at.Add(across)); len(within) > 0 {
		off := within[0][1].Sub(at)
		end = max(off.X, -off.X, off.Y, -off.Y)
	}
	return end
}

// StationStep is how far stations lie apart at most: 6 in, or 150 mm.
func StationStep(unit length.Unit) Length {
	if unit.Imperial() {
		return 6 * length.Inch
	}
	return 150 * length.Millimetre
}

// Fitted is the extent of a part as it stands, once its edges are cut to what they meet: to
// the furthest point of each line.
func (p *Part) Fitted() geom.Box {
	box := p.Placement.Box
	for i := range p.Scribes {
		s := &p.Scribes[i]
		least := s.Stations[0].Cut
		for _, at := range s.Stations {
			least = min(least, at.Cut)
		}
		inward := [...]geom.Dir{Bottom: p.Placement.Y, RightEdge: p.Placement.X.Opposite(), Top: p.Placement.Y.Opposite(), LeftEdge: p.Placement.X}[s.Edge]
		box = box.Onward(inward.Opposite(), -least)
	}
	return box
}

// ScribedAt reports whether an edge of a part is cut to what was read.
func (p *Part) ScribedAt(edge Edge) bool {
	return slices.ContainsFunc(p.Scribes, func(s Scribe) bool { return s.Edge == edge })
}
