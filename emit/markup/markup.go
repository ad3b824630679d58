// Package markup writes HTML and SVG for pages that need no other file: elements,
// tables that become cards on a narrow screen, outlines as path data, and the look that
// pages share. What goes into a text or an attribute can be nothing else.
package markup

import (
	"bufio"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"io"
	"strings"
	"unicode/utf8"
)

// Look is the style sheet.
//
//go:embed look.css
var Look string

// Writer writes elements, one within another. Whatever goes into an attribute
// or a text is escaped here and nowhere else; tags and attribute names are
// constants of whoever calls. Write errors stick until Close.
type Writer struct {
	w    *bufio.Writer
	open []string
}

// New writes to w.
func New(w io.Writer) *Writer { return &Writer{w: bufio.NewWriter(w)} }

// Policy is what a page may do beside showing itself. The zero Policy lets it do nothing.
type Policy struct {
	Scripts []string // the texts of those that it runs
	Asks    bool     // its scripts may ask the server that it came from
}

// String is the policy as browsers keep to it: Content-Security-Policy.
func (p Policy) String() string {
	out := "default-src 'none'; style-src 'unsafe-inline'"
	for i, script := range p.Scripts {
		if i == 0 {
			out += "; script-src"
		}
		sum := sha256.Sum256([]byte(script))
		out += " 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	if p.Asks {
		out += "; connect-src 'self'"
	}
	return out
}

// Head opens a page, up to its body. The scripts that it may run are written into it by
// the caller. The generator is the command that writes the page.
func (m *Writer) Head(generator, title, style string, may Policy) {
	m.Raw("<!DOCTYPE html>\n")
	m.Start("html", "lang", "en")
	m.Start("head")
	m.Void("meta", "charset", "utf-8")
	m.Void("meta", "name", "generator", "content", generator)
	m.Void("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
	m.Void("meta", "name", "color-scheme", "content", "light dark")
	m.Void("meta", "http-equiv", "Content-Security-Policy", "content", may.String())
	m.El("title", title)
	m.Start("style")
	m.Raw(style)
	m.End()
	m.End()
}

// Start opens an element; attrs are names and values in turn.
func (m *Writer) Start(tag string, attrs ...string) {
	m.tag(tag, attrs)
	m.open = append(m.open, tag)
}

// End closes the element opened last.
func (m *Writer) End() {
	last := len(m.open) - 1
	m.Raw("</" + m.open[last] + ">\n")
	m.open = m.open[:last]
}

// El writes an element that holds a text.
func (m *Writer) El(tag, text string, attrs ...string) {
	m.tag(tag, attrs)
	m.Text(text)
	m.Raw("</" + tag + ">")
}

// Void writes an element that has no end tag.
func (m *Writer) Void(tag string, attrs ...string) { m.tag(tag, attrs) }

func (m *Writer) tag(tag string, attrs []string) {
	m.Raw("<" + tag)
	for i := 0; i+1 < len(attrs); i += 2 {
		m.Raw(" " + attrs[i] + `="`)
		m.Text(attrs[i+1])
		m.Raw(`"`)
	}
	m.Raw(">")
}

// Raw writes what the program wrote itself; the error waits in the writer.
func (m *Writer) Raw(s string) { _, _ = m.w.WriteString(s) }

// Text writes text so that it can be nothing else.
func (m *Writer) Text(s string) {
	from := 0
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		if sub, ok := escaped(r, size); ok {
			m.Raw(s[from:i])
			m.Raw(sub)
			from = i + size
		}
		i += size
	}
	m.Raw(s[from:])
}

// escaped returns what stands for a rune that must not be written as it is:
// markup, what HTML forbids, and signs that turn the direction of a line.
func escaped(r rune, size int) (string, bool) {
	switch {
	case r == '&':
		return "&amp;", true
	case r == '<':
		return "&lt;", true
	case r == '>':
		return "&gt;", true
	case r == '"':
		return "&#34;", true
	case r == '\'':
		return "&#39;", true
	case ' ' <= r && r < 0x7f:
		return "", false // most of any text
	case r == utf8.RuneError && size == 1:
		return "\uFFFD", true
	case r < ' ', 0x7f <= r && r < 0xa0, r&0xfffe == 0xfffe, 0xfdd0 <= r && r <= 0xfdef:
		return " ", true
	case strings.ContainsRune("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069", r):
		return "", true
	}
	return "", false
}

// Close ends what is open and returns the first error of all writing.
func (m *Writer) Close() error {
	for len(m.open) > 0 {
		m.End()
	}
	return m.w.Flush()
}
