package page

import (
	"bufio"
	"io"
	"strings"
	"unicode/utf8"
)

// markup writes elements, one within another. Whatever goes into an attribute
// or a text is escaped here and nowhere else; tags and attribute names are
// constants of this package. Write errors stick until close.
type markup struct {
	w    *bufio.Writer
	open []string
}

func newMarkup(w io.Writer) *markup { return &markup{w: bufio.NewWriterSize(w, 1<<16)} }

// start opens an element; attrs are names and values in turn.
func (m *markup) start(tag string, attrs ...string) {
	m.tag(tag, attrs)
	m.open = append(m.open, tag)
}

// end closes the element opened last.
func (m *markup) end() {
	last := len(m.open) - 1
	m.raw("</" + m.open[last] + ">\n")
	m.open = m.open[:last]
}

// el writes an element that holds a text.
func (m *markup) el(tag, text string, attrs ...string) {
	m.tag(tag, attrs)
	m.text(text)
	m.raw("</" + tag + ">")
}

// void writes an element that has no end tag.
func (m *markup) void(tag string, attrs ...string) { m.tag(tag, attrs) }

func (m *markup) tag(tag string, attrs []string) {
	m.raw("<" + tag)
	for i := 0; i+1 < len(attrs); i += 2 {
		m.raw(" " + attrs[i] + `="`)
		m.text(attrs[i+1])
		m.raw(`"`)
	}
	m.raw(">")
}

// raw writes what this package wrote itself; the error waits in the writer.
func (m *markup) raw(s string) { _, _ = m.w.WriteString(s) }

// text writes text so that it can be nothing else.
func (m *markup) text(s string) {
	from := 0
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		if sub, ok := escaped(r, size); ok {
			m.raw(s[from:i])
			m.raw(sub)
			from = i + size
		}
		i += size
	}
	m.raw(s[from:])
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
	case r == utf8.RuneError && size == 1:
		return "\uFFFD", true
	case r < ' ', 0x7f <= r && r < 0xa0, r&0xfffe == 0xfffe, 0xfdd0 <= r && r <= 0xfdef:
		return " ", true
	case strings.ContainsRune("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069", r):
		return "", true
	}
	return "", false
}

// close ends what is open and returns the first error of all writing.
func (m *markup) close() error {
	for len(m.open) > 0 {
		m.end()
	}
	return m.w.Flush()
}
