package dxf

import (
	"strings"

	"barwright/lang/latin"
)

// A string of the format holds at most 255 bytes, a symbol's name of R12 at
// most 31 characters (published DXF reference).
const (
	maxText   = 255
	maxSymbol = 31
)

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

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// symbol turns a name into one that R12 takes: A-Z, 0-9, $, _ and -, at most
// 31 of them. A name with nothing in it gives the fallback.
func symbol(name, fallback string) string {
	b := []byte(strings.ToUpper(ascii(name)))
	for i, c := range b {
		if !isDigit(c) && (c < 'A' || c > 'Z') && strings.IndexByte("$_-", c) < 0 {
			b[i] = '_'
		}
	}
	if len(b) == 0 {
		return fallback
	}
	return string(b[:min(len(b), maxSymbol)])
}
