package model

import "barwright/compile/geom"

// KneeWall is the framed wall behind a run, in that run's frame.
type KneeWall struct {
	Name     string
	Run      string
	Frame    geom.Frame
	Framing  geom.Box // bare framing
	Studs    []Length // centres, from the run's left end
	Supports []Support
	Outlets  []KneeOutlet
	Skins    []Skin
	Lines    []ScrewLine // of the studs, as seen from inside the boxes before them
	Uneven   []Uneven    // what forced gaps that differ from the rule
	BarTop   string      // the slab that it carries; empty where none
	Why      Why
}

// Support is a steel plate let into the top plate.
type Support struct {
	Centre Length // along the run
	Steel  geom.Box
	Part   string // ID of the steel
	Recess string // ID of the recess
}

// KneeOutlet is an electrical box in a knee wall.
type KneeOutlet struct {
	Name   string
	Face   string   // "work", "room"
	Box    geom.Box // from the face of the framing inwards
	Clear  geom.Box // what the skin leaves open for it
	Cover  geom.Box // its cover plate, on the skin; of no thickness
	ByRule bool     // its height follows from the rule
	Why    Why
}

// Skin is a finish panel on one face of a knee wall, and what lies over it.
type Skin struct {
	Name    string
	Face    string   // "work", "room", "left", "right"
	Box     geom.Box // all its pieces
	Seams   []Length // along the run, from the left as one faces the skin; of an end none
	Battens []Length // centres, likewise; numbered so
	Why     Why
}

// ScrewLine is where screws from inside a box find a stud of the knee wall
// behind it.
type ScrewLine struct {
	Stud     int    // from 1
	Box      string // the cabinet
	FromLeft Length // from the inner face of its left side
	Z        geom.Span
}

// LinesIn counts those in a box.
func (k *KneeWall) LinesIn(box string) int {
	n := 0
	for _, l := range k.Lines {
		if l.Box == box {
			n++
		}
	}
	return n
}

// Uneven is a gap that something forced to differ from the rule.
type Uneven struct {
	What string // "stud 3", "support 2"
	By   string // "outlet blender"
	Off  Length // from where the rule alone would put it; to the right positive
}

// KneeWallsBehind are the knee walls behind a run.
func (m *Model) KneeWallsBehind(r *Run) (behind []*KneeWall) {
	for i := range m.KneeWalls {
		if k := &m.KneeWalls[i]; k.Run == r.Name {
			behind = append(behind, k)
		}
	}
	return behind
}
