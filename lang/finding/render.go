package finding

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"barwright/lang/source"
)

// Style is how findings are printed.
type Style struct {
	Color bool
	Width int // columns of text; 0 for 80
}

const (
	reset = "\x1b[0m"
	bold  = "\x1b[1m"
	dim   = "\x1b[2m"
)

var tint = [...]string{Note: "\x1b[36m", Warning: "\x1b[33m", Error: "\x1b[31m"}

// Render prints findings for a person: what was asked, what is, by how much it
// misses, the other thing with its place, the mend. The list must be sorted.
func Render(w io.Writer, l List, files source.Files, style Style) error {
	if style.Width == 0 {
		style.Width = 80
	}
	p := printer{files: files, style: style}
	for i, f := range l {
		if i > 0 {
			p.line("")
		}
		p.finding(f)
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

type printer struct {
	out   bytes.Buffer
	files source.Files
	style Style
}

func (p *printer) line(text string) { p.out.WriteString(strings.TrimRight(text, " ") + "\n") }

func (p *printer) paint(code, text string) string {
	if !p.style.Color {
		return text
	}
	return code + text + reset
}

func (p *printer) finding(f Finding) {
	p.line(p.paint(tint[f.Severity]+bold, f.Severity.String()+":") + " " + p.paint(bold, f.Slug))
	p.line("")
	if !f.At.IsZero() {
		p.snippet(f.At, f.Caret, tint[f.Severity], "")
	}
	p.wrapped("  ", f.Text)
	for _, r := range f.Related {
		p.line("")
		p.snippet(r.At, -1, dim, r.Text)
	}
	if f.Mend != "" {
		p.line("")
		p.wrapped("  Mend: ", f.Mend)
	}
}

// snippet prints the place, its line of text and a marker under the words that
// are meant. A caret over 0 marks that one byte; a negative one marks nothing.
func (p *printer) snippet(at source.Range, caret int, code, remark string) {
	place := fmt.Sprintf("  %s:%d  ", at.File, at.Start.Line)
	text, from := lineAt(p.files.Text(at.File), at.Start.Byte)
	// Leading blanks say nothing here, and cost a narrow screen its room.
	trimmed := strings.TrimLeft(text, " \t")
	from += len(text) - len(trimmed)
	shown, start := clip(trimmed, at.Start.Byte-from, p.style.Width-len(place))
	line := p.paint(dim, place) + shown
	if remark != "" {
		if used := len(place) + utf8.RuneCountInString(shown); used+len(remark)+5 <= p.style.Width {
			line += "   " + p.paint(code, "("+remark+")")
			remark = ""
		}
	}
	p.line(line)
	if caret >= 0 {
		length := min(at.End.Byte-at.Start.Byte, len(shown)-start)
		if at.End.Line != at.Start.Line {
			length = len(shown) - start
		}
		if caret > 0 {
			start, length = start+min(caret, max(length-1, 0)), 1
		}
		pad := utf8.RuneCountInString(place) + columns(shown, 0, start)
		p.line(strings.Repeat(" ", pad) + p.paint(code, strings.Repeat("^", max(1, columns(shown, start, start+length)))))
	}
	if remark != "" {
		p.wrapped("  ", "("+remark+")")
	}
}

func columns(text string, from, to int) int {
	from, to = min(max(from, 0), len(text)), min(max(to, 0), len(text))
	if to < from {
		return 0
	}
	return utf8.RuneCountInString(text[from:to])
}

// lineAt returns the line that holds a byte, and where it starts.
func lineAt(text []byte, at int) (string, int) {
	at = min(max(at, 0), len(text))
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	line := text[from:]
	if end := bytes.IndexByte(line, '\n'); end >= 0 {
		line = line[:end]
	}
	return strings.Map(printable, string(bytes.TrimRight(line, "\r"))), from
}

// printable keeps control characters of a hostile file off the terminal. Each
// is replaced by one of as many bytes, so that places stay true.
func printable(c rune) rune {
	switch {
	case c == utf8.RuneError:
		return '?'
	case c < ' ' || c == 0x7f:
		return ' '
	case c >= 0x80 && c < 0xa0:
		return '·'
	case c >= 0x202a && c <= 0x202e, c >= 0x2066 && c <= 0x2069: // turns of writing direction
		return '␣'
	}
	return c
}

// clip shortens a long line to the part round a place.
func clip(line string, at, room int) (string, int) {
	at = min(max(at, 0), len(line))
	room = max(room, 40)
	if len(line) <= room {
		return line, at
	}
	from := max(0, min(at-room/3, len(line)-room))
	for from > 0 && !utf8.RuneStart(line[from]) {
		from--
	}
	to := min(len(line), from+room)
	for to < len(line) && !utf8.RuneStart(line[to]) {
		to++
	}
	return line[from:to], at - from
}

// wrapped prints text under a first prefix, later lines indented alike.
func (p *printer) wrapped(prefix, text string) {
	indent := strings.Repeat(" ", len(prefix))
	line := prefix
	for paragraph := range strings.SplitSeq(strings.Map(keepBreaks, text), "\n") {
		for _, word := range strings.Fields(paragraph) {
			if len(strings.TrimSpace(line)) > 0 && line != prefix &&
				utf8.RuneCountInString(line)+utf8.RuneCountInString(word) > p.style.Width {
				p.line(line)
				line = indent
			}
			line += word + " "
		}
		p.line(line)
		line, prefix = indent, indent
	}
}

func keepBreaks(c rune) rune {
	if c == '\n' {
		return c
	}
	return printable(c)
}
