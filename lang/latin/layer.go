package latin

import (
	"fmt"
	"strings"
	"unicode"
)

// LongestLayer is how many characters the name of a layer of R12 has at most (published
// DXF reference).
const LongestLayer = 31

// Layer spells the name of a layer in cut files as every reader of the format takes it:
// A-Z, 0-9, $, _ and -, at most 31 of them. Letters are transliterated and written as
// capitals; one that has no counterpart is written as its number, U65E5, anything else as
// an underscore. A name with nothing in it gives the fallback.
func Layer(name, fallback string) string {
	var b strings.Builder
	for _, r := range strings.TrimSpace(name) {
		plain := ASCII(string(r))
		switch {
		case plain == "?" && r != '?':
			plain = fmt.Sprintf("u%04X", r)
		case plain == "" && unicode.IsSpace(r):
			plain = "_"
		}
		b.WriteString(strings.Map(inLayer, strings.ToUpper(plain)))
	}
	out := b.String()
	if out == "" {
		return fallback
	}
	return out[:min(len(out), LongestLayer)]
}

// inLayer is a character where R12 takes it, otherwise an underscore.
func inLayer(c rune) rune {
	if c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.ContainsRune("$_-", c) {
		return c
	}
	return '_'
}
