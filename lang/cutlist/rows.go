package cutlist

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"barwright/lang/source"
)

// row is a line of the file in its cells. Cells never run over the end of a line.
type row struct {
	from, to int // bytes of the file
	cells    []cell
}

// cell is what one cell holds, without quotes and blanks round it, and where it stands.
type cell struct {
	text     string
	from, to int  // bytes of the file, quotes included
	open     bool // its quotes do not end on the line
}

// rows parts a text into lines and cells and leaves out those that hold nothing. It tells what parts
// the cells too.
func rows(text []byte) (out []row, comma byte) {
	for from := 0; from < len(text); {
		to := len(text)
		if n := bytes.IndexAny(text[from:], "\r\n"); n >= 0 {
			to = from + n
		}
		line := text[from:to]
		if len(bytes.Trim(line, " \t,;")) > 0 {
			if comma == 0 {
				comma = separator(line)
			}
			out = append(out, row{from, to, cells(line, from, comma)})
		}
		from = to + 1
	}
	return out, comma
}

// separator is what the first line has most of.
func separator(line []byte) byte {
	best := byte(',')
	for _, c := range []byte{';', '\t'} {
		if bytes.Count(line, []byte{c}) > bytes.Count(line, []byte{best}) {
			best = c
		}
	}
	return best
}

// cells parts one line that begins at a byte of the file. A cell that begins with a quotation mark
// ends with one, and holds doubled ones for one (RFC 4180); in any other they stand for themselves,
// as for inches.
func cells(line []byte, start int, comma byte) (out []cell) {
	for at := 0; ; at++ {
		for at < len(line) && line[at] != comma && (line[at] == ' ' || line[at] == '\t') {
			at++
		}
		c := cell{from: start + at}
		if at < len(line) && line[at] == '"' {
			c.text, at, c.open = quoted(line, at)
		}
		from := at
		for at < len(line) && line[at] != comma {
			at++
		}
		c.text = strings.TrimSpace(c.text + string(line[from:at]))
		c.to = max(c.from, start+len(bytes.TrimRight(line[:at], " \t")))
		out = append(out, c)
		if at >= len(line) {
			return out
		}
	}
}

// quoted reads what stands in quotes from a place in a line, and returns the place behind them.
func quoted(line []byte, at int) (text string, end int, open bool) {
	var b strings.Builder
	for at++; at < len(line); at++ {
		if line[at] != '"' {
			b.WriteByte(line[at])
			continue
		}
		if at+1 == len(line) || line[at+1] != '"' {
			return b.String(), at + 1, false
		}
		b.WriteByte('"')
		at++
	}
	return b.String(), at, true
}

// at is a range of the file between two bytes of one line.
func (r *reader) at(from, to int) source.Range {
	return source.Range{File: r.file.Name, Start: r.pos(from), End: r.pos(to)}
}

// pos counts lines from the last place asked for, as rows come one after the other.
func (r *reader) pos(at int) source.Pos {
	if at < r.line.from {
		r.line = lineStart{}
	}
	text := r.file.Text
	for i := r.line.from; i < at; i++ {
		if text[i] == '\n' || text[i] == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			r.line = lineStart{r.line.before + 1, i + 1}
		}
	}
	return source.Pos{Line: r.line.before + 1, Column: utf8.RuneCount(text[r.line.from:at]) + 1, Byte: at}
}

// lineStart is where a line begins, and how many are before it.
type lineStart struct{ before, from int }
