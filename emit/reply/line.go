package reply

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	columns    = 80
	leftColumn = 44   // at most, so that what stands right of it has room
	mostText   = 60   // characters of an expression
	mostValue  = 2000 // characters of a value
)

// row is a line of two columns.
type row struct{ left, right string }

// aligned prints rows so that their right sides stand under one another, and
// breaks those that are too long for a line; a long left side pushes its own
// to the right.
func aligned(rows []row) []string {
	width := 0
	for _, r := range rows {
		if n := utf8.RuneCountInString(r.left); n <= leftColumn {
			width = max(width, n)
		}
	}
	var out []string
	for _, r := range rows {
		indent := width + 4
		if utf8.RuneCountInString(r.left) > width {
			indent = 6
		}
		out = append(out, wrapped("  "+pad(r.left, width)+"  "+r.right, indent)...)
	}
	return out
}

func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}

// joined puts what is not empty side by side.
func joined(texts ...string) string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, t)
		}
	}
	return strings.Join(out, "  ")
}

// oneLine shortens an expression to what a line can hold.
func oneLine(text string) string {
	first, _, more := strings.Cut(text, "\n")
	if more {
		first = strings.TrimRight(first, " \r") + " …"
	}
	return shortened(first, mostText)
}

func shortened(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return strings.TrimRight(string(runes[:most]), " …") + " …"
	}
	return text
}

// wrapped breaks a text at spaces, inside a length only where there are no
// others; later lines are indented.
func wrapped(text string, indent int) []string {
	var out []string
	for line := []rune(text); ; {
		at := breakAt(line, indent)
		if at < 0 {
			return append(out, string(line))
		}
		out = append(out, string(line[:at]))
		line = []rune(strings.Repeat(" ", indent) + strings.TrimLeft(string(line[at:]), " "))
	}
}

// breakAt is where a line ends that is too long, -1 where it does not.
func breakAt(line []rune, indent int) int {
	if len(line) <= columns {
		return -1
	}
	blank := -1
	for at := columns; at > indent; at-- {
		if line[at] != ' ' || strings.TrimSpace(string(line[:at])) == "" {
			continue
		}
		if !insideLength(line, at) {
			return at
		}
		blank = max(blank, at)
	}
	return blank
}

// insideLength reports whether a space parts a length, as in "1/2 in + 0.003".
func insideLength(line []rune, at int) bool {
	isSign := func(i int) bool {
		return i > 0 && i+2 < len(line) && strings.ContainsRune("+-…", line[i]) && line[i+1] == ' ' && unicode.IsDigit(line[i+2])
	}
	return at > 0 && unicode.IsDigit(line[at-1]) || isSign(at+1) || isSign(at-1)
}

// parted splits the last word from a name.
func parted(name string) (above, word string) {
	dot := strings.LastIndexByte(name, '.')
	return name[:max(dot, 0)], name[dot+1:]
}
