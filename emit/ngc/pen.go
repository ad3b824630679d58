package ngc

import (
	"bufio"
	"errors"
	"fmt"

	"barwright/compile/model"
)

// pen writes lines and moves, and remembers, in steps, where the written text
// has put the bit.
type pen struct {
	buf     *bufio.Writer
	dialect model.Dialect
	units   units
	number  int // of the last numbered line
	started bool
	x, y, z Length
	feed    Length
	last    model.Move
}

// line writes a line as it is.
func (p *pen) line(text string) { fmt.Fprintln(p.buf, text) }

// What RS274/NGC numbers lines with, at most; lines beyond go without.
const (
	lineStep = 10
	lastLine = 99_999
)

// block writes words, behind a line number where the dialect wants one.
func (p *pen) block(words string) {
	if p.dialect.Numbers && p.number+lineStep <= lastLine {
		p.number += lineStep
		words = fmt.Sprintf("N%d %s", p.number, words)
	}
	p.line(words)
}

// own writes lines of the control's own, comments among them.
func (p *pen) own(lines []string) {
	for _, line := range lines {
		if line[0] == '(' || line[0] == ';' {
			p.line(line)
		} else {
			p.block(line)
		}
	}
}

// move writes a move, or nothing where it is shorter than the last decimal.
func (p *pen) move(m model.Move, t model.Tool) error {
	if m.Note != "" {
		p.comment(m.Note)
	}
	from := p.last
	p.last = m
	switch {
	case m.Kind == model.MoveRapid:
		p.rapid(m)
	case !p.started:
		return errors.New("the first move must be a rapid one, to a safe height")
	case m.Kind == model.MoveLine:
		p.straight(m, t.Feed)
	case m.Kind == model.MoveRamp:
		p.straight(m, t.Plunge)
	case m.Z < from.Z:
		return p.arc(from, m, t.Plunge)
	default:
		return p.arc(from, m, t.Feed)
	}
	return nil
}

// rapid goes up before it goes sideways, and sideways before it goes down.
// The first one lifts the bit from where nobody knows.
func (p *pen) rapid(m model.Move) {
	u := p.units
	x, y, z := u.steps(m.X), u.steps(m.Y), u.steps(m.Z)
	if !p.started {
		p.block("G0 Z" + u.text(z))
		p.block("G0 X" + u.text(x) + " Y" + u.text(y))
		p.started, p.x, p.y, p.z = true, x, y, z
		return
	}
	if z > p.z {
		p.words("G0", p.x, p.y, z, 0)
	}
	p.words("G0", x, y, p.z, 0)
	p.words("G0", x, y, z, 0)
}

func (p *pen) straight(m model.Move, feed Length) {
	u := p.units
	p.words("G1", u.steps(m.X), u.steps(m.Y), u.steps(m.Z), feed)
}

// words writes a straight motion: its G word, the axes that change, and the
// feed where it is not 0 and changes.
func (p *pen) words(code string, x, y, z, feed Length) {
	line := code
	for _, axis := range [...]struct {
		letter   string
		from, to Length
	}{{"X", p.x, x}, {"Y", p.y, y}, {"Z", p.z, z}} {
		if axis.to != axis.from {
			line += " " + axis.letter + p.units.text(axis.to)
		}
	}
	if line == code {
		return
	}
	p.x, p.y, p.z = x, y, z
	p.block(line + p.feedWord(feed))
}

// rateDecimals are plenty for a feed.
const rateDecimals = 3

// feedWord returns the F word where the feed changes.
func (p *pen) feedWord(feed Length) string {
	if feed == p.feed || feed == 0 {
		return ""
	}
	p.feed = feed
	u := p.units
	u.decimals, u.perUnit = rateDecimals, 1000
	return " F" + u.text(u.steps(feed))
}
