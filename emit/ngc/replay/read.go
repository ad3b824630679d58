// Package replay reads router programs back and cuts them in a model of the
// wood. It is the check that every program passes before it is written, and
// shares no code with the planner or the writer: it knows what the text says,
// and what a recess, the wood around it and a bit are.
//
// The reader takes the writer's subset of RS274/NGC (NISTIR 6556, version 3), as
// the dialect of the control has it, and nothing else; the Program's own moves are
// never looked at.
package replay

import (
	"bytes"
	"fmt"

	"barwright/compile/model"
)

// Tape is a program as read. Positions are millimetres, speeds mm/min, whatever
// the units of the text.
type Tape struct {
	Cautions bool // stand before the units
	Inch     bool
	Percent  bool // percent lines round the program
	Tool     int
	Changed  bool // by M6
	RPM      int
	Dwell    float64 // seconds
	Motions  []Motion
}

// Motion is one move of the bit's centre, at its lower end: straight, or an arc in
// plan that rises or sinks evenly.
type Motion struct {
	Line     int // of the text, from 1
	Rapid    bool
	From, To Point
	Arc      bool
	CX, CY   float64 // centre of the arc
	Sweep    float64 // radians, positive counter-clockwise
	Feed     float64
	Spinning bool
}

// Point is a position in mm.
type Point struct{ X, Y, Z float64 }

// Limits of the text; a longer one is refused before it is read.
const (
	maxBytes = 4 << 20
	maxLine  = 256 // NISTIR 6556, line format
)

// Read reads a program that is written in a dialect. The error names the line. The
// dialect's own lines are taken where they must stand, and not obeyed.
func Read(text []byte, d model.Dialect) (*Tape, error) {
	if len(text) > maxBytes {
		return nil, fmt.Errorf("the program has %d bytes, more than %d", len(text), maxBytes)
	}
	rows := bytes.Split(text, []byte("\n"))
	if last := len(rows) - 1; len(rows[last]) > 0 {
		return nil, fmt.Errorf("line %d: not ended by a newline", last+1)
	}
	c := newControl(d)
	for i, row := range rows[:len(rows)-1] {
		if err := c.row(i+1, row); err != nil {
			return nil, fmt.Errorf("line %d: %w", i+1, err)
		}
	}
	if err := c.finished(); err != nil {
		return nil, err
	}
	return &c.tape, nil
}

// word is a letter and its number, in the text's units.
type word struct {
	letter   byte
	value    float64
	point    bool // written with a decimal point
	decimals int
}

// words splits a row into words, one blank between them.
func words(row []byte) ([]word, error) {
	var out []word
	for _, field := range bytes.Split(row, []byte(" ")) {
		if len(field) == 0 {
			return nil, fmt.Errorf("a blank too many")
		}
		w, err := readWord(field)
		if err != nil {
			return nil, err
		}
		for _, before := range out {
			if before.letter == w.letter && w.letter != 'G' {
				return nil, fmt.Errorf("two %c words", w.letter)
			}
		}
		out = append(out, w)
	}
	return out, nil
}

// readWord reads a letter, a sign, digits and at most one decimal point.
func readWord(field []byte) (word, error) {
	w := word{letter: field[0]}
	digits := field[1:]
	sign := 1.0
	if len(digits) > 0 && digits[0] == '-' {
		sign, digits = -1, digits[1:]
	}
	if w.letter < 'A' || w.letter > 'Z' || len(digits) == 0 || len(digits) > 14 || digits[0] == '.' {
		return w, fmt.Errorf("%q is not a word", field)
	}
	number, scale := 0.0, 1.0
	for _, d := range digits {
		switch {
		case d >= '0' && d <= '9':
			number = float64(number*10) + float64(d-'0')
			if w.point {
				scale *= 10
				w.decimals++
			}
		case d == '.' && !w.point:
			w.point = true
		default:
			return w, fmt.Errorf("%q is not a word", field)
		}
	}
	w.value = sign * number / scale
	return w, nil
}
