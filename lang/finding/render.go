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
// misses, the other thing with its place, the mend, and where to read more. The
// list must be sorted.
func Render(w io.Writer, l List, files source.Files, style Style) error {
	p := newPrinter(files, style)
	for i, f := range l {
		if i > 0 {
			p.line("")
		}
		p.finding(f)
	}
	return p.to(w)
}

type printer struct {
	out   bytes.Buffer
	files source.Files
	style Style
}

func newPrinter(files source.Files, style Style) *printer {
	if style.Width == 0 {
		style.Width = 80
	}
	return &printer{files: files, style: style}
}

func (p *printer) to(w io.Writer) error {
	_, err := w.Write(p.out.Bytes())
	return err
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
		p.snippet(r.At, -1, dim, strings.Join(strings.Fields(Clean(r.Text)), " "))
	}
	p.line("")
	if f.Mend != "" {
		p.wrapped("  Mend: ", f.Mend)
	}
	p.line("  Why:  " + Why(f.Slug))
}

// Why is the command that explains a slug.
func Why(slug string) string { return "barwright explain " + slug }

// snippet prints the place, its line of text and a marker under the words that
// are meant. A caret over 0 marks that one byte; a negative one marks nothing.
func (p *printer) snippet(at source.Range, caret int, code, remark string) {
	place := Clean(fmt.Sprintf("  %s:%d  ", at.File, at.Start.Line))
	text, from := lineAt(p.files.Text(at.File), at.Start.Byte)
	start := min(max(at.Start.Byte-from, 0), len(text))
	end := start + max(at.End.Byte-at.Start.Byte, 0)
	if at.End.Line != at.Start.Line || end > len(text) {
		end = len(text)
	}
	if caret > 0 {
		start = min(start+caret, max(end-1, start))
		_, size := utf8.DecodeRuneInString(text[start:])
		end = start + size
	}
	shown, before := clip(text, start, p.style.Width-Columns(place))
	marked := text[start:min(end, start+len(strings.TrimSuffix(shown, ellipsis))-before)]
	line := p.paint(dim, place) + shown
	if remark != "" {
		if used := Columns(place) + Columns(shown); used+Columns(remark)+5 <= p.style.Width {
			line += "   " + p.paint(code, "("+remark+")")
			remark = ""
		}
	}
	p.line(line)
	if caret >= 0 {
		pad := Columns(place) + Columns(shown[:before])
		p.line(strings.Repeat(" ", pad) + p.paint(code, strings.Repeat("^", max(1, Columns(marked)))))
	}
	if remark != "" {
		p.wrapped("  ", "("+remark+")")
	}
}

// wrapped prints text under a first prefix, later lines indented alike.
func (p *printer) wrapped(prefix, text string) {
	indent := strings.Repeat(" ", len(prefix))
	line := prefix
	for paragraph := range strings.SplitSeq(Clean(text), "\n") {
		for _, word := range strings.Fields(paragraph) {
			if len(strings.TrimSpace(line)) > 0 && line != prefix &&
				Columns(line)+Columns(word) > p.style.Width {
				p.line(line)
				line = indent
			}
			line += word + " "
		}
		p.line(line)
		line, prefix = indent, indent
	}
}
