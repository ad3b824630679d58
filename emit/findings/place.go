package findings

import (
	"bytes"
	"net/url"
	"path"
	"unicode/utf8"

	"barwright/lang/source"
)

// spot is a place in a text: line and column start at 1, and the column counts
// code points. source.Pos counts characters as a reader sees them, which
// programs do not.
type spot struct{ line, column int }

func spotAt(text []byte, p source.Pos) spot {
	if p.Byte > len(text) {
		return spot{p.Line, p.Column}
	}
	before := text[:p.Byte]
	from := bytes.LastIndexByte(before, '\n') + 1
	return spot{1 + bytes.Count(before, []byte("\n")), 1 + utf8.RuneCount(before[from:])}
}

// lineOf returns the line of text that holds a place.
func lineOf(text []byte, p source.Pos) string {
	at := min(p.Byte, len(text))
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	line, _, _ := bytes.Cut(text[from:], []byte("\n"))
	return string(line)
}

// uri is the reference to a file (RFC 3986): relative as the path is.
func uri(file string) string {
	u := url.URL{Path: file}
	if path.IsAbs(file) {
		u.Scheme = "file"
	}
	return u.String()
}
