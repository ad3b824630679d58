// Package model holds the solved build: every part with its features and its
// place, and all that the emitters print. It is made once, by the packages
// beside it, and never written afterwards. All slices have a defined order;
// lengths are whole nanometres.
package model

import (
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
