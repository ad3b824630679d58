package ngc

import (
	"bufio"
	"errors"
	"fmt"
	"math"

	"barwright/compile/model"
)

// pen writes moves and remembers, in steps, where the written text has put
// the bit.
type pen struct {
	buf     *bufio.Writer
	units   units
	started bool
	x, y, z Length
	feed    Length
	last    model.Move
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
		p.line(m, t.Feed)
	case m.Kind == model.MoveRamp:
		p.line(m, t.Plunge)
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
		fmt.Fprintf(p.buf, "G0 Z%s\nG0 X%s Y%s\n", u.text(z), u.text(x), u.text(y))
		p.started, p.x, p.y, p.z = true, x, y, z
		return
	}
	if z > p.z {
		p.words("G0", p.x, p.y, z, 0)
	}
	p.words("G0", x, y, p.z, 0)
	p.words("G0", x, y, z, 0)
}

func (p *pen) line(m model.Move, feed Length) {
	u := p.units
	p.words("G1", u.steps(m.X), u.steps(m.Y), u.steps(m.Z), feed)
}

// arc writes the centre as increments from the start as written. An arc whose
// ends round to one point would read as a full circle: it is left out. A full
// circle is written as two halves.
func (p *pen) arc(from, m model.Move, feed Length) error {
	u := p.units
	code := "G3"
	if m.Kind == model.MoveCW {
		code = "G2"
	}
	if m.Z != from.Z {
		return fmt.Errorf("an arc from Z %s to Z %s: helices are not written", u.text(p.z), u.text(u.steps(m.Z)))
	}
	x, y := u.steps(m.X), u.steps(m.Y)
	i, j := u.steps(m.CX)-p.x, u.steps(m.CY)-p.y
	if x == p.x && y == p.y {
		if m.X != from.X || m.Y != from.Y {
			return nil
		}
		p.arcWords(code, x+2*i, y+2*j, i, j, feed)
		i, j = -i, -j
	}
	start, end := radius(i, j), radius(p.x+i-x, p.y+j-y)
	if math.Abs(start-end) > float64(u.arcSlack*float64(u.perUnit))+1e-6 {
		return fmt.Errorf("%d decimals are too few: an arc at X%s Y%s would miss its circle", u.decimals, u.text(x), u.text(y))
	}
	p.arcWords(code, x, y, i, j, feed)
	return nil
}

func (p *pen) arcWords(code string, x, y, i, j, feed Length) {
	u := p.units
	fmt.Fprintf(p.buf, "%s X%s Y%s I%s J%s%s\n", code, u.text(x), u.text(y), u.text(i), u.text(j), p.feedWord(feed))
	p.x, p.y = x, y
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
	fmt.Fprintln(p.buf, line+p.feedWord(feed))
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

func radius(i, j Length) float64 {
	return math.Sqrt(float64(float64(i)*float64(i)) + float64(float64(j)*float64(j)))
}
