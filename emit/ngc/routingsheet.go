package ngc

import (
	"fmt"
	"slices"

	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// The texts below are common practice of the trade, not a standard.

var beforeOther = [...]string{
	"The cautions above hold here too, but for one: these programs cut through the board where they say so.",
	"Lay a flat board that may be cut under the work wherever it is cut through, larger than the box of the moves. Nothing of metal lies, or holds, below a cut.",
	"Hold the blank at its corners and edges, outside of the box of the moves and of the bit's radius beyond it; hold what comes free too, by screws through what falls out, by vacuum or by double-sided tape. Tabs alone do not hold a small piece against a blunt bit.",
	"Measure the board's thickness: a thicker one is not cut through, and under a thinner one the bit goes deeper.",
	"Cut list, layouts and bill count panels, not blanks: lay the blanks out on the sheets by hand, with their larger sizes.",
	"Lay the grain as told: a turned blank fits too, and is wrong.",
}

var afterOther = [...]string{
	"Wait until the bit stands before anything is taken out. Lift the board with its waste.",
	"Cut the tabs with a fine saw or a chisel, from the face, across the tab and away from the hands; trim what is left with a flush bit or a block plane. Not by breaking them out: that tears the face.",
	"Check the first piece against its drawing before the next one is cut.",
}

// routings writes what one needs for other work than recesses.
func (s *sheet) routings() error {
	if len(s.model.Routings) == 0 {
		return nil
	}
	fmt.Fprintln(s.buf)
	s.text("OTHER WORK IN PANELS")
	s.section("Before each of these programs", beforeOther[:])
	var entries []entry
	for i := range s.model.Routings {
		r := &s.model.Routings[i]
		took, err := simulatedRouting(s.model.Build, r)
		if err != nil {
			return err
		}
		e := entry{title: fmt.Sprintf("Program %d of %d for other work: %s.ngc", i+1, len(s.model.Routings), r.Name), router: r.Tool.Router}
		s.routing(&e, r, s.parts[r.Part], took)
		entries = append(entries, e)
	}
	s.entries(entries)
	s.section("After each of these programs", afterOther[:])
	return nil
}

func (s *sheet) routing(e *entry, r *model.Routing, part *model.Part, took replay.Measures) {
	u, t := unitsOf(r.Tool.Dialect), r.Tool
	show := func(l Length) string { return s.both(l, u) }
	e.own("part", fmt.Sprintf("%s, %s of %s", r.PartLabel, part.Named(), part.Owner))
	var cuts []string
	for _, g := range gathered(r) {
		cuts = append(cuts, g.text(show))
	}
	e.own("cuts", cuts...)
	s.boardUnder(e, r, part, u)
	e.own("zero", r.Zero+"; Z0 is the top of the wood")
	if r.GoesThrough() {
		e.usual("under it", fmt.Sprintf("a board that may be cut: the bit goes %s into it", show(r.Under)))
	}
	s.tabs(e, r, u)
	if radius := sharpest(r); radius > 0 {
		corners := []string{fmt.Sprintf("the bit leaves inside corners with a radius of %s or more: square them by hand where something square goes in", show(radius))}
		if t.Relief == "diagonal" || t.Relief == "long_side" {
			corners = append(corners, "those of openings and notches that are sharp in the drawing are relieved by a bore of the bit's size")
		}
		e.usual("corners", corners...)
	}
	plan, z := r.Reach()
	s.bit(e, t, -z.Lo)
	if slices.ContainsFunc(r.Works, func(w model.Work) bool { return drilled(r, &w) }) {
		e.usual("drilling", "the bit goes straight down for holes of its width: only one that cuts at its centre may do that")
	}
	e.usual("cutting", "climb: clockwise round the part, counter-clockwise in all that is cut out; the first pass on each level is as wide as the bit")
	s.dialect(e, t)
	e.measures(plan, z, took, u)
}

// boardUnder tells what lies on the machine, and how.
func (s *sheet) boardUnder(e *entry, r *model.Routing, part *model.Part, u units) {
	size := fmt.Sprintf("%s in X, %s in Y, %s thick, of %s", s.both(r.Stock.X.Size(), u), s.both(r.Stock.Y.Size(), u), s.both(r.Thick, u), part.Stock)
	var board []string
	switch piece := r.Piece.Bounds(); {
	case r.Stock != piece:
		board = append(board, fmt.Sprintf("a blank, %s; the part lies in it %s from its left edge and %s from its lower one", size,
			s.both(piece.X.Lo-r.Stock.X.Lo, u), s.both(piece.Y.Lo-r.Stock.Y.Lo, u)))
	case part.Banded() != "":
		board = append(board, "the part, cut to size and not yet banded, "+size)
	default:
		board = append(board, "the part, cut to size, "+size)
	}
	switch part.Grain {
	case model.GrainX:
		board = append(board, "its face grain runs along X")
	case model.GrainY:
		board = append(board, "its face grain runs along Y")
	}
	e.own("board", board...)
	if r.Far {
		e.own("face up", fmt.Sprintf("the one behind that which is drawn (%s): turned over from left to right, the bottom edge stays at the bottom", part.Face))
	} else {
		e.own("face up", part.Face+", as it is drawn: its lower edge along X, its left edge along Y")
	}
}

// tabs tells where pieces hang.
func (s *sheet) tabs(e *entry, r *model.Routing, u units) {
	var tabs []string
	for i := range r.Works {
		w := &r.Works[i]
		if len(w.Tabs) == 0 {
			continue
		}
		text := fmt.Sprintf("%s: %s wide, %s high above the lower face, at", w.Name, s.both(w.Tabs[0].Width, u), s.both(w.Tabs[0].Height, u))
		for k, t := range w.Tabs {
			if k > 0 {
				text += ","
			}
			text += fmt.Sprintf(" X%s Y%s", u.number(t.At.X), u.number(t.At.Y))
		}
		tabs = append(tabs, text)
	}
	if len(tabs) > 0 {
		e.own("tabs", tabs...)
	}
}
