// Package reuse tells whether a piece that was cut for one build can serve as a part
// of another, and what is to be done to it (SPEC.md 12.2, 12.3). It looks at one piece
// and one part at a time, and does not choose.
package reuse

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Pair is two builds whose parts are compared: which of their stocks are one, and what
// counts as equal.
type Pair struct {
	Old, New *model.Model
	within   model.Length
}

// Open looks at the stock of two builds. What differs by at most within counts as equal.
func Open(old, new *model.Model, within model.Length) *Pair { return &Pair{old, new, within} }

// Remeasured lists the stocks of the new build that are taken for a board of the old
// one although their thicknesses differ, in words for a note.
func (p *Pair) Remeasured() []string { return nil }

// Board numbers what a part is cut from: pieces and parts of one kind, stock and
// thickness have one number, whichever build they are in.
func (p *Pair) Board(part *model.Part) int { return 0 }

// Key is the same for pieces and parts of one board that can serve for each other as
// they are, without any step; marks count, labels and places do not. It is exact: what
// differs by less than Open was told has other keys.
func (p *Pair) Key(part *model.Part) string { return "" }

// Fit is how a piece serves as a part.
type Fit struct {
	Kind           model.FateKind // Unchanged, Rework or Patch
	Lay            model.Lay
	Steps          []model.Step
	Missing, Spare []geom.Contour // as of a model.Fate
	Off            model.Length
	Waste          float64 // mm2 that are cut away
}

// Serve tells how the old piece can serve as the new part with the fewest steps; ok is
// false where it cannot. They need not be of one board: then it cannot.
func (p *Pair) Serve(old, new *model.Part) (fit Fit, ok bool) { return Fit{}, false }

// Rest lists the rectangles that are left of a piece beside a part cut out of it, or of
// all of it where part is nil, clear of all that is cut or drilled in it: on the piece's drawn face,
// kerf taken off, largest first. Those under 2 in (50 mm) either way are no use.
func (p *Pair) Rest(old *model.Part, part *model.Part, lay model.Lay, kerf model.Length) []geom.Rect {
	return nil
}

// Holds reports whether a part can be cut out of such a rectangle of the piece, and
// what is left of the rectangle then.
func (p *Pair) Holds(rest geom.Rect, old, new *model.Part, kerf model.Length) (left []geom.Rect, ok bool) {
	return nil, false
}
