// Package ngc writes router programs: RS274/NGC text (NISTIR 6556, version 3)
// in a small subset that most controls read, and the setup sheet for the
// person at the machine. It formats a model.Program or model.Routing
// and computes no path.
//
// The subset: G0 G1 G2 G3 G4 G17 G20 G21 G40 G49 G54 G80 G90 G94, M3 M5 M6 M30,
// N T S F; comments on lines of their own; one motion a line, each with its G
// word; arcs in centre format, less than a full circle. What else there is stands
// in the dialect: lines of the control's own.
package ngc

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// Write writes one program of a build. It fails where the dialect's decimals are too
// few for an arc to end on its circle, or for straight pieces to stay by it, and
// where w fails.
func Write(w io.Writer, b model.Build, p *model.Program) error {
	return write(w, []string{p.Name, b.Titled()}, head(p, unitsOf(p.Tool.Dialect)), &p.Tool, p.Moves)
}

// WriteRouting writes a program for other work than recesses, as Write does.
func WriteRouting(w io.Writer, b model.Build, r *model.Routing) error {
	return write(w, []string{r.Name, b.Titled()}, routingHead(r, unitsOf(r.Tool.Dialect)), &r.Tool, r.Moves)
}

// write writes moves below comments; the first line of the title names the program.
func write(w io.Writer, title, head []string, t *model.Tool, moves []model.Move) error {
	buf := bufio.NewWriter(w)
	u, d := unitsOf(t.Dialect), t.Dialect
	name, pen := title[0], &pen{buf: buf, dialect: d, units: u}
	if d.Chords && float64(d.Chord) < 2*u.step() {
		return fmt.Errorf("program %s: %d decimals are too few for straight pieces within %d nm of an arc", name, u.decimals, d.Chord)
	}
	if d.Percent {
		pen.line("%")
	}
	for _, line := range append(title, head...) {
		pen.comment(line)
	}
	pen.block("G17 " + u.code + " G40 G49 G54 G80 G90 G94")
	pen.own(d.Start)
	pen.block(bitWords(*t))
	pen.block(fmt.Sprintf("S%d M3", t.RPM))
	if d.SpinUp > 0 {
		pen.block("G4 P" + seconds(d.SpinUp))
	}
	for _, m := range moves {
		if err := pen.move(m, *t); err != nil {
			return fmt.Errorf("program %s: %w", name, err)
		}
	}
	pen.own(d.End)
	pen.block("M5")
	pen.block("G0 X0. Y0.")
	pen.block("M30")
	if d.Percent {
		pen.line("%")
	}
	return buf.Flush()
}

// bitWords names the bit, and has the control change to it where it does that.
func bitWords(t model.Tool) string {
	words := "T" + strconv.Itoa(t.Number)
	if t.Dialect.Change {
		words += " M6"
	}
	return words
}

// seconds writes a time to a thousandth, with a decimal point.
func seconds(s float64) string { return strings.TrimRight(strconv.FormatFloat(s, 'f', 3, 64), "0") }
