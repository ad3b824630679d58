// Package revise tells what one build differs in from an older one: what the text
// says otherwise and what follows from it, which cut pieces live on, what the
// bill takes now (SPEC.md 12).
package revise

import (
	"slices"

	"barwright/compile/atonce"
	"barwright/compile/model"
	"barwright/compile/reuse"
)

// Options is what a comparison takes into account.
type Options struct {
	Within model.Length // what differs by no more counts as equal
	Cut    []Made       // the pieces that are there; nil where all of the old build are
}

// Made is a piece that has been cut.
type Made struct {
	Label string
	// X and Y are its size over all as measured, with its banding; 0 where it is as the
	// old build has it.
	X, Y model.Length
}

// Compare tells what differs between two sound builds. Both must have values and a
// bill, as compile.Priced gives.
func Compare(old, new *model.Model, o Options) *model.Revision {
	r := &model.Revision{Old: old, New: new, Cut: o.Cut != nil}
	pair := reuse.Open(old, new, o.Within)
	var w *ways
	var notes []string
	atonce.All( // values and parts do not need each other
		func() { r.Changes, w = changes(old, new) },
		func() { r.Fates, notes = fates(pair, o) },
	)
	if w == nil {
		r.Notes = append(r.Notes, keepsNoValues)
	}
	r.Notes = slices.Concat(r.Notes, pair.Remeasured(), notes)
	r.Findings = findings(old.Findings, new.Findings)
	r.Bill = billed(old.Bill, new.Bill)
	r.Again = again(r)
	reasons(r, w)
	return r
}
