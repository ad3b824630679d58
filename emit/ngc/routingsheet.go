package ngc

import (
	"bytes"
	"fmt"

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
	parts := map[string]*model.Part{} // by ID; lookup only
	for i := range s.model.Parts {
		parts[s.model.Parts[i].ID] = &s.model.Parts[i]
	}
	fmt.Fprintln(s.buf)
	s.text("OTHER WORK IN PANELS")
	s.section("Before each of these programs", beforeOther[:])
	for i := range s.model.Routings {
		r := &s.model.Routings[i]
		took, err := simulatedRouting(s.model.Build, r)
		if err != nil {
			return err
		}
		fmt.Fprintf(s.buf, "\nProgram %d of %d for other work: %s.ngc\n", i+1, len(s.model.Routings), r.Name)
		s.routing(r, parts[r.Part], took)
	}
	s.section("After each of these programs", afterOther[:])
	return nil
}

// simulatedRouting writes a program and has the text read back and measured.
func simulatedRouting(b model.Build, r *model.Routing) (replay.Measures, error) {
	var text bytes.Buffer
	if err := WriteRouting(&text, b, r); err != nil {
		return replay.Measures{}, err
	}
	took, err := replay.MeasureRouting(text.Bytes(), r)
	if err != nil {
		return took, fmt.Errorf("program %s: %w", r.Name, err)
	}
	return took, nil
}

func (s *sheet) routing(r *model.Routing, part *model.Part, took replay.Measures) {
	u, t := unitsOf(r.Tool.Dialect), r.Tool
	show := func(l Length) string { return s.both(l, u) }
	s.row("part", fmt.Sprintf("%s, %s of %s", r.PartLabel, part.Named(), part.Owner))
	label := "cuts"
	for _, g := range gathered(r) {
		s.row(label, g.text(show))
		label = ""
	}
	s.boardUnder(r, part, u)
	s.row("zero", r.Zero+"; Z0 is the top of the wood")
	if r.GoesThrough() {
		s.row("under it", fmt.Sprintf("a board that may be cut: the bit goes %s into it", show(r.Under)))
	}
	s.tabs(r, u)
	if radius := sharpest(r); radius > 0 {
		s.row("corners", fmt.Sprintf("the bit leaves inside corners with a radius of %s or more: square them by hand where something square goes in", show(radius)))
		if t.Relief == "diagonal" || t.Relief == "long_side" {
			s.row("", "those of openings and notches that are sharp in the drawing are relieved by a bore of the bit's size")
		}
	}
	_, z := r.Reach()
	s.row("bit", fmt.Sprintf("T%d: flat end, diameter %s, %d flutes; cutting length and stick-out above %s",
		t.Number, show(t.Diameter), t.Flutes, show(-z.Lo)))
	for i := range r.Works {
		if drilled(r, &r.Works[i]) {
			s.row("", "it goes straight down for holes of its width: only a bit that cuts at its centre may do that")
			break
		}
	}
	s.row("speeds", fmt.Sprintf("spindle %d per minute, clockwise; feed %s, ramps %s %s a minute",
		t.RPM, u.rate(t.Feed), u.rate(t.Plunge), u.short))
	s.row("cutting", "climb: clockwise round the part, counter-clockwise in all that is cut out; the first pass on each level is as wide as the bit")
	s.dialect(t)
	s.row("clearance", show(t.Clearance)+" above the wood")
	plan, z := r.Reach()
	s.row("moves", fmt.Sprintf("box of the bit's centre: X %s, Y %s, Z %s %s; lowest Z %s; at the end to X0 Y0",
		u.span(plan.X), u.span(plan.Y), u.span(z), u.short, u.number(z.Lo)))
	s.row("time", fmt.Sprintf("about %s as simulated, the wait for the spindle with it; each move starts and ends at rest", duration(took.Seconds)))
	s.row("path", fmt.Sprintf("%.0f %s at feed, %.0f %s through the air", u.of(took.Cut), u.short, u.of(took.Air), u.short))
	s.row("wood removed", u.volume(took.Removed))
}

// boardUnder tells what lies on the machine, and how.
func (s *sheet) boardUnder(r *model.Routing, part *model.Part, u units) {
	size := fmt.Sprintf("%s in X, %s in Y, %s thick, of %s", s.both(r.Stock.X.Size(), u), s.both(r.Stock.Y.Size(), u), s.both(r.Thick, u), part.Stock)
	piece := r.Piece.Bounds()
	switch {
	case r.Stock != piece:
		s.row("board", fmt.Sprintf("a blank, %s; the part lies in it %s from its left edge and %s from its lower one", size,
			s.both(piece.X.Lo-r.Stock.X.Lo, u), s.both(piece.Y.Lo-r.Stock.Y.Lo, u)))
	case part.Banded() != "":
		s.row("board", "the part, cut to size and not yet banded, "+size)
	default:
		s.row("board", "the part, cut to size, "+size)
	}
	switch part.Grain {
	case model.GrainX:
		s.row("", "its face grain runs along X")
	case model.GrainY:
		s.row("", "its face grain runs along Y")
	}
	if r.Far {
		s.row("face up", fmt.Sprintf("the one behind that which is drawn (%s): turned over from left to right, the bottom edge stays at the bottom", part.Face))
	} else {
		s.row("face up", part.Face+", as it is drawn: its lower edge along X, its left edge along Y")
	}
}

// tabs tells where pieces hang.
func (s *sheet) tabs(r *model.Routing, u units) {
	label := "tabs"
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
		s.row(label, text)
		label = ""
	}
}
