package replay

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// control is the state of the machine while a program is read.
type control struct {
	dialect  model.Dialect
	start    []string // the dialect's own lines that are still to come
	end      []string
	tape     Tape
	modes    map[string]bool // codes that were set; for lookup only
	unit     float64         // mm; 0 before G20 or G21
	at       Point
	zKnown   bool
	xyKnown  bool
	feed     float64 // mm/min
	rpm      float64
	waited   float64 // seconds, since the spindle was started
	spinning bool
	started  bool // the spindle, once
	number   int  // of the last numbered line
	rows     int  // that are not blank
	ended    bool // by M30
	closed   bool // by the second percent line
}

func newControl(d model.Dialect) *control {
	return &control{dialect: d, start: d.Start, end: d.End, modes: map[string]bool{}}
}

// needed are the modes that a motion relies on.
var needed = [...]string{"G17", "G40", "G49", "G54", "G80", "G90", "G94"}

// row takes one line of the text.
func (c *control) row(line int, row []byte) error {
	if len(row) > maxLine {
		return fmt.Errorf("longer than %d characters", maxLine)
	}
	for _, b := range row {
		if b < ' ' || b > '~' {
			return fmt.Errorf("a character that is not printable ASCII")
		}
	}
	if len(row) == 0 {
		return nil
	}
	c.rows++
	switch {
	case string(row) == "%":
		return c.percent()
	case c.closed:
		return errors.New("text after the end of the program")
	}
	if row[0] == '(' || row[0] == ';' {
		if c.own(row) {
			return nil
		}
		return c.comment(row)
	}
	row, err := c.unnumbered(row)
	switch {
	case err != nil:
		return err
	case c.own(row):
		return nil
	case c.ended:
		return errors.New("a line after M30")
	}
	ws, err := words(row)
	if err != nil {
		return err
	}
	return c.block(line, ws)
}

func (c *control) percent() error {
	switch {
	case c.rows == 1:
		c.tape.Percent = true
	case !c.tape.Percent || !c.ended || c.closed:
		return errors.New("a percent line that neither begins nor ends the program")
	default:
		c.closed = true
	}
	return nil
}

// lastNumber is the highest line number; N has at most five digits (NISTIR 6556, line
// number). Lines behind it have none.
const lastNumber = 99_990

// unnumbered takes the line number off a row, where the dialect has them: N10, N20 and
// so on.
func (c *control) unnumbered(row []byte) ([]byte, error) {
	if !c.dialect.Numbers || c.number == lastNumber {
		if row[0] == 'N' {
			return nil, errors.New("a line number that is not wanted")
		}
		return row, nil
	}
	c.number += 10
	rest, found := bytes.CutPrefix(row, fmt.Appendf(nil, "N%d ", c.number))
	if !found || len(rest) == 0 {
		return nil, fmt.Errorf("the line number is not N%d", c.number)
	}
	return rest, nil
}

// own takes a line of the control's own: those of the start between the units and
// the spindle's start, those of the end between the last motion and M5.
func (c *control) own(row []byte) bool {
	var lines *[]string
	switch {
	case c.unit != 0 && !c.spinning && !c.zKnown:
		lines = &c.start
	case c.spinning && c.xyKnown:
		lines = &c.end
	default:
		return false
	}
	if len(*lines) == 0 || string(row) != (*lines)[0] {
		return false
	}
	*lines = (*lines)[1:]
	return true
}

func (c *control) comment(row []byte) error {
	open := byte('(')
	switch c.dialect.Comments {
	case "none":
		return errors.New("a comment, which the dialect leaves out")
	case "semicolon":
		open = ';'
	}
	switch i := bytes.IndexAny(row[1:], "()"); {
	case row[0] != open:
		return errors.New("a comment that is not written as in the dialect")
	case open == '(' && (i < 0 || i+2 != len(row)):
		return errors.New("a comment must fill its line, without parentheses inside")
	}
	c.tape.Cautions = c.tape.Cautions || c.unit == 0 && bytes.Contains(row, []byte("CAUTION"))
	return nil
}

// finished checks what can only be missed at the end.
func (c *control) finished() error {
	switch {
	case !c.ended:
		return errors.New("the program has no M30")
	case c.tape.Percent && !c.closed:
		return errors.New("the percent line at the end is missing")
	case c.spinning:
		return errors.New("the spindle is never stopped")
	case len(c.start)+len(c.end) > 0:
		return errors.New("lines of the control's own are missing")
	}
	return nil
}

// block obeys one line of words: settings, or one motion, or one action.
func (c *control) block(line int, ws []word) error {
	codes, args, err := split(ws)
	if err != nil {
		return err
	}
	for _, w := range ws {
		if most := c.decimals(w.letter); w.decimals > most {
			return fmt.Errorf("the number after %c has more than %d decimals", w.letter, most)
		}
	}
	switch first := firstOf(codes); first {
	case "G0", "G1", "G2", "G3":
		if len(codes) > 1 {
			return fmt.Errorf("%s shares its line", first)
		}
		return c.motion(line, first, args)
	case "G4":
		return c.dwell(codes, args)
	case "M3", "M5", "M30":
		return c.action(first, codes, args)
	}
	return c.settings(codes, args)
}

// decimals is how many a number may have behind its letter.
func (c *control) decimals(letter byte) int {
	if letter == 'F' || letter == 'P' {
		return 3
	}
	return c.dialect.Decimals
}

// arguments are the numbers of a line, by letter.
type arguments map[byte]float64

// only reports whether no letter but these is there.
func (a arguments) only(letters string) bool {
	n := 0
	for i := range len(letters) {
		if _, ok := a[letters[i]]; ok {
			n++
		}
	}
	return n == len(a)
}

// split parts the codes (G and M words) from the rest. Codes, T and S are whole
// and written without a point; all other numbers have one.
func split(ws []word) (codes []string, args arguments, err error) {
	args = arguments{}
	for _, w := range ws {
		switch w.letter {
		case 'G', 'M':
			codes = append(codes, string(strconv.AppendFloat([]byte{w.letter}, w.value, 'f', 0, 64)))
		case 'T', 'S', 'F', 'P', 'X', 'Y', 'Z', 'I', 'J':
			args[w.letter] = w.value
		default:
			return nil, nil, fmt.Errorf("the letter %c is not used here", w.letter)
		}
		whole := strings.IndexByte("GMTS", w.letter) >= 0
		if whole == w.point || whole && w.value < 0 {
			return nil, nil, fmt.Errorf("the number after %c is not as it should be", w.letter)
		}
	}
	return codes, args, nil
}

// firstOf returns the code that decides what a line is: the first that is no mode.
func firstOf(codes []string) string {
	for _, code := range codes {
		switch code {
		case "G0", "G1", "G2", "G3", "G4", "M3", "M5", "M30":
			return code
		}
	}
	return ""
}

func (c *control) dwell(codes []string, args arguments) error {
	p, ok := args['P']
	if len(codes) > 1 || !ok || !args.only("P") || p < 0 || p > 60 {
		return errors.New("G4 takes a P of at most 60 seconds, and nothing else")
	}
	if !c.spinning || c.zKnown {
		return errors.New("a wait elsewhere than behind the spindle's start")
	}
	c.tape.Dwell += p
	c.waited += p
	return nil
}

func (c *control) action(code string, codes []string, args arguments) error {
	if len(codes) > 1 || !args.only("S") {
		return fmt.Errorf("%s shares its line", code)
	}
	if s, ok := args['S']; ok {
		c.rpm = s
	}
	switch code {
	case "M3":
		switch {
		case c.rpm <= 0:
			return errors.New("the spindle is started without a speed")
		case c.started:
			return errors.New("the spindle is started twice")
		}
		c.tape.RPM = int(c.rpm)
		c.spinning, c.started = true, true
	case "M5":
		c.spinning = false
	case "M30":
		c.ended = true
	}
	return nil
}

func (c *control) settings(codes []string, args arguments) error {
	if !args.only("T") || len(codes) == 0 && len(args) == 0 {
		return errors.New("words that do nothing")
	}
	if t, ok := args['T']; ok {
		if c.tape.Tool != 0 {
			return errors.New("the bit is named twice")
		}
		c.tape.Tool = int(t)
	}
	for _, code := range codes {
		if c.modes[code] {
			return fmt.Errorf("%s is set twice", code)
		}
		c.modes[code] = true
		switch code {
		case "M6":
			if c.tape.Tool == 0 || c.spinning || c.zKnown {
				return errors.New("M6 without a bit, or after the spindle or the bit moved")
			}
			c.tape.Changed = true
		case "G20", "G21":
			if c.unit != 0 {
				return errors.New("units are set twice")
			}
			c.tape.Inch, c.unit = code == "G20", 1
			if c.tape.Inch {
				c.unit = 25.4
			}
		case "G17", "G40", "G49", "G54", "G80", "G90", "G94":
		default:
			return fmt.Errorf("%s is not used here", code)
		}
	}
	return nil
}
