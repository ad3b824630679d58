package model

import "barwright/compile/geom"

// Task is a step of the work. A model's tasks stand in an order in which nothing waits for
// what comes later.
type Task struct {
	Key      string   // stable: "set.cabinet.urn"
	Phase    string   // that it belongs to: "on site: boxes"
	Title    string   // what is done, in plain words
	Way      string   // by which slides something is set: "in from the front, then 2 in to the left"; empty where none was looked for
	About    []string // keys of blocks
	Parts    []string // labels of what is taken in hand
	After    []Before // what must be done before it
	Checks   []Check  // what is held against the description, each with a box to tick
	Tools    []string
	Screws   []Driven
	WeightKg float64 // of the heaviest piece that is lifted in it; 0 where it is not known, or nothing is heavy
	Lifted   string  // that piece: "cabinet urn, without fronts and loose shelves"
	People   int     // at least
	Hold     string  // who looks at it before one goes on; empty where nobody does
	Cure     float64 // hours until it may be loaded; 0: at once
	Cautions []string
}

// Before is a task that comes first, and why.
type Before struct{ Key, Why string }

// Check is a figure to be held against what is there.
type Check struct{ What, Figure string }

// Driven is a count of one screw that a task takes.
type Driven struct {
	Screw string // "screw.wall"
	Text  string // what it is sold as
	Count int
	Use   string // "to hold cabinet urn to the wall"
}

// Carry is what all that is brought in has to pass; a length is 0 where nothing is said.
type Carry struct {
	CarLength, CarWidth     Length // the longest and the widest flat piece that lies in it
	Doorway                 Length // its height: a piece goes through on edge
	StairLength, StairWidth Length // the longest and the widest piece that goes round it
}

// Rough is a sheet or a stick that is cut where it is bought, so that its pieces can be
// brought in.
type Rough struct {
	Stock  string
	Blank  int // of its layout, from 1
	Cuts   []RoughCut
	Pieces []geom.Rect // what is carried, on the blank as it is laid out
}

// RoughCut goes from edge to edge of the piece that it parts.
type RoughCut struct {
	Along bool      // along the length of the blank, otherwise across it
	At    Length    // the near side of the saw's cut: from the lower edge, or from the left end, of the blank
	Free  Length    // how wide the strip without a part is that it lies in
	Of    geom.Rect // the piece that is parted
}
