// Package reuse tells whether a piece that was cut for one build can serve as a part
// of another, and what is to be done to it (SPEC.md 12.2, 12.3). It looks at one piece
// and one part at a time, and does not choose.
//
// Pieces and parts are compared as solids: a body, the rectangle over all, and what is
// cut out of it, each with its depth. A piece serves where all that it lacks lies in
// what the part lacks, or outside the part.
package reuse

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Length is the measure of all that is compared.
type Length = model.Length

// Pair is two builds whose parts are compared: which of their stocks are one, and what
// counts as equal.
type Pair struct {
	Old, New *model.Model
	within   Length
	boards   map[stock]int // lookup only
	notes    []string
	bases    map[string]bool // cabinets of the new build whose toe kick bears them; lookup only
}

// Open looks at the stock of two builds. What differs by at most within counts as equal.
func Open(old, new *model.Model, within Length) *Pair {
	p := &Pair{Old: old, New: new, within: max(within, 0), boards: make(map[stock]int), bases: make(map[string]bool)}
	p.pairStocks()
	for i := range new.Parts {
		if part := &new.Parts[i]; part.Is("cabinet", "base-rear") {
			p.bases[part.Block()] = true
		}
	}
	return p
}

// Remeasured lists the stocks of the new build that are taken for a board of the old
// one although their thicknesses differ, in words for a note.
func (p *Pair) Remeasured() []string { return p.notes }

// Board numbers what a part is cut from: pieces and parts of one kind, stock and
// thickness have one number, whichever build they are in; -1 of a part of neither.
// Lumber has one number per stock, since it is drawn on whichever face suits.
func (p *Pair) Board(part *model.Part) int {
	if n, ok := p.boards[stockOf(part)]; ok {
		return n
	}
	return -1
}

// Fit is how a piece serves as a part.
type Fit struct {
	Kind           model.FateKind // Unchanged, Rework or Patch
	Lay            model.Lay
	Steps          []model.Step
	Missing, Spare []geom.Contour // as of a model.Fate
	Off            Length
	Waste          float64 // mm2 that are cut away
}

// Serve tells how the old piece can serve as the new part with the fewest steps; ok is
// false where it cannot. They need not be of one board: then it cannot.
func (p *Pair) Serve(old, new *model.Part) (fit Fit, ok bool) {
	board := p.Board(old)
	if board < 0 || board != p.Board(new) {
		return Fit{}, false
	}
	best, ok := p.search(old, new)
	if !ok {
		return Fit{}, false
	}
	return best.fit(p), true
}
