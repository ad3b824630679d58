package ngc

import "strings"

// commentWidth is what fits a control's screen; RS274/NGC takes 256
// characters a line.
const commentWidth = 76

// comment writes a text as comment lines, or nothing in a dialect without any.
func (p *pen) comment(text string) {
	for _, line := range wrap(plain(text), commentWidth) {
		switch p.dialect.Comments {
		case "semicolon":
			p.line("; " + line)
		case "none":
		default:
			p.line("(" + line + ")")
		}
	}
}

// plain keeps printable ASCII; brackets stand for parentheses, which do not
// nest, and a question mark for any other character.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '(':
			return '['
		case r == ')':
			return ']'
		case r == '\n' || r == '\t':
			return ' '
		case r < ' ' || r > '~':
			return '?'
		}
		return r
	}, text)
}

// wrap breaks a text at blanks into lines of at most width characters; a
// longer word is broken where it must be.
func wrap(text string, width int) []string {
	var lines []string
	var line []rune
	for _, field := range strings.Fields(text) {
		word := []rune(field)
		if len(line) > 0 && len(line)+1+len(word) > width {
			lines, line = append(lines, string(line)), nil
		}
		if len(line) > 0 {
			line = append(line, ' ')
		}
		line = append(line, word...)
		for len(line) > width {
			lines, line = append(lines, string(line[:width])), line[width:]
		}
	}
	if len(line) > 0 {
		lines = append(lines, string(line))
	}
	return lines
}
