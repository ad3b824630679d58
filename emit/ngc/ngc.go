// Package ngc writes router programs: RS274/NGC text (NISTIR 6556, version 3)
// in a small subset that most controls read, and the setup sheet for the
// person at the machine. It formats a model.Program and computes no path.
//
// The subset: G0 G1 G2 G3 G4 G17 G20 G21 G40 G49 G54 G80 G90 G94, M3 M5 M30,
// T S F; comments on lines of their own; one motion a line, each with its G
// word; arcs in centre format, less than a full circle.
package ngc

import (
	"bufio"
	"fmt"
	"io"

	"barwright/compile/model"
)

// spinUp is how long the spindle may take to come up to speed, in seconds.
const spinUp = "3."

// Write writes one program. It fails where the dialect's decimals are too few
// for an arc to end on its circle, and where w fails.
func Write(w io.Writer, p *model.Program) error {
	buf := bufio.NewWriter(w)
	u := unitsOf(p.Tool.Dialect)
	pen := &pen{buf: buf, units: u}
	if p.Tool.Dialect.Percent {
		fmt.Fprintln(buf, "%")
	}
	for _, line := range head(p, u) {
		pen.comment(line)
	}
	fmt.Fprintf(buf, "G17 %s G40 G49 G54 G80 G90 G94\n", u.code)
	fmt.Fprintf(buf, "T%d\nS%d M3\nG4 P%s\n", p.Tool.Number, p.Tool.RPM, spinUp)
	for _, m := range p.Moves {
		if err := pen.move(m, p.Tool); err != nil {
			return fmt.Errorf("program %s: %w", p.Name, err)
		}
	}
	fmt.Fprint(buf, "M5\nG0 X0. Y0.\nM30\n")
	if p.Tool.Dialect.Percent {
		fmt.Fprintln(buf, "%")
	}
	return buf.Flush()
}

// firstHeight is where the first move goes.
func firstHeight(p *model.Program) Length {
	if len(p.Moves) == 0 {
		return p.Tool.Clearance
	}
	return p.Moves[0].Z
}

// head returns the comments at the top of a program.
func head(p *model.Program, u units) []string {
	size := p.Shape.Bounds()
	plan, z := p.Reach()
	t := p.Tool
	return []string{
		p.Name,
		fmt.Sprintf("Cuts: %s, in part %s; %s", p.Recess, p.PartLabel, p.RecessID),
		"Unit: " + u.short,
		fmt.Sprintf("Recess: X %s, Y %s, %s deep; %s", u.span(size.X), u.span(size.Y), u.number(p.Depth), openings(p, u)),
		fmt.Sprintf("Bit: T%d, flat end, diameter %s, %d flutes; spindle %d per minute",
			t.Number, u.number(t.Diameter), t.Flutes, t.RPM),
		fmt.Sprintf("Wood: X %s, Y %s, %s thick, lying flat", u.span(p.Stock.X), u.span(p.Stock.Y), u.number(p.Thick)),
		fmt.Sprintf("Zero: %s; the mark of X0 is %s from the left end; Z0 is the top of the wood", p.Zero, u.number(p.Mark)),
		fmt.Sprintf("Box of the moves of the bit's centre: X %s, Y %s, Z %s; at the end to X0 Y0",
			u.span(plan.X), u.span(plan.Y), u.span(z)),
		"CAUTION: this program is a proposal. The person at the machine decides; its manual comes first.",
		fmt.Sprintf("The first move goes, fast, to Z %s from wherever the bit stands, down if it stands higher; "+
			"the next one across at that height. Park it clear of work and clamps.", u.number(firstHeight(p))),
		"Dry run first: spindle off, Z zero set well above the work.",
		"Hold the work against lift and shift. Keep clamps out of the box of the moves and of the bit's radius beyond it.",
		"Eye and ear protection; no gloves near a turning spindle; never leave it running alone.",
		"Stop the spindle and wait until it stands before reaching in.",
		"G4 P3. waits 3 seconds for the spindle; a control that reads milliseconds needs another figure.",
	}
}
