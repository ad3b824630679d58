package dxf

import (
	"strings"

	"barwright/lang/latin"
)

// maxText is how many bytes a string of the format holds at most (published DXF reference).
const maxText = 255

// ascii transliterates a text to printable ASCII of at most 255 bytes, for a
// reader that knows no code page. The characters that start an escape in a text
// of the format (^, \ and %%) lose that meaning.
func ascii(s string) string {
	s = latin.ASCII(s)
	b := make([]byte, 0, min(len(s), maxText))
	for i := 0; i < len(s) && len(b) < maxText; i++ {
		switch c := s[i]; {
		case c == '%' && i > 0 && s[i-1] == '%':
		case c == '^':
			b = append(b, '?')
		case c == '\\':
			b = append(b, '/')
		default:
			b = append(b, c)
		}
	}
	return strings.TrimRight(string(b), " ")
}
