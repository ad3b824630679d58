package finding

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// mostLine bounds what is looked at of a line on either side of a place, in
// bytes: far more than is shown, and little where a line holds a whole file.
const mostLine = 4096

// lineAt returns the line that holds a byte, clean and without the blanks that
// it begins with, which say nothing here and cost a narrow screen its room. It
// also returns where that begins. Of a very long line it is the part round the
// byte.
func lineAt(text []byte, at int) (line string, from int) {
	at = min(max(at, 0), len(text))
	from = max(bytes.LastIndexByte(text[:at], '\n')+1, at-mostLine)
	for from < at && !utf8.RuneStart(text[from]) {
		from++
	}
	rest, _, _ := bytes.Cut(text[from:min(len(text), at+mostLine)], []byte("\n"))
	whole := Clean(string(bytes.TrimRight(rest, "\r")))
	line = strings.TrimLeft(whole, " ")
	return line, from + len(whole) - len(line)
}

// Clean keeps control characters of a hostile file off the terminal. Each is
// replaced by one of as many bytes, so that places stay true; new lines stay.
func Clean(text string) string {
	var out strings.Builder
	for len(text) > 0 {
		c, size := utf8.DecodeRuneInString(text)
		switch {
		case c == utf8.RuneError && size == 1:
			out.WriteByte('?')
		case c != '\n' && c < ' ' || c == 0x7f:
			out.WriteByte(' ')
		case unicode.Is(unicode.Cc, c) && c != '\n':
			out.WriteString("·")
		case unicode.Is(unicode.Bidi_Control, c) && size == len("␣"):
			out.WriteString("␣")
		case unicode.Is(unicode.Bidi_Control, c):
			out.WriteString("·")
		default:
			out.WriteString(text[:size])
		}
		text = text[size:]
	}
	return out.String()
}

// OneLine does so, and makes one line of it, with single blanks.
func OneLine(text string) string { return strings.Join(strings.Fields(Clean(text)), " ") }

// Columns is how wide a text stands on a terminal.
func Columns(text string) int {
	n := 0
	for _, c := range text {
		switch kind := width.LookupRune(c).Kind(); {
		case unicode.In(c, unicode.Mn, unicode.Me, unicode.Cf):
		case kind == width.EastAsianWide || kind == width.EastAsianFullwidth:
			n += 2
		default:
			n++
		}
	}
	return n
}

// ellipsis stands where a line was shortened.
const ellipsis = "…"

// clip shortens a long line to the part round a place; it returns where in
// what is shown the place is.
func clip(line string, at, room int) (shown string, place int) {
	room = max(room, 40)
	if Columns(line) <= room {
		return line, at
	}
	room -= 2 * Columns(ellipsis)
	from := back(line, at, room/3)
	to := from
	for to < len(line) {
		_, size := utf8.DecodeRuneInString(line[to:])
		if Columns(line[from:to+size]) > room {
			break
		}
		to += size
	}
	if to == len(line) {
		from = back(line, to, room)
	}
	shown, place = line[from:to], at-from
	if from > 0 {
		shown, place = ellipsis+shown, place+len(ellipsis)
	}
	if to < len(line) {
		shown += ellipsis
	}
	return shown, place
}

// back goes back from a place in a line by at most so many columns.
func back(line string, from, most int) int {
	end := from
	for from > 0 {
		_, size := utf8.DecodeLastRuneInString(line[:from])
		if Columns(line[from-size:end]) > most {
			break
		}
		from -= size
	}
	return from
}
