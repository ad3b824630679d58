package finding

import (
	"fmt"
	"strconv"
	"strings"
)

// Capital is a text with its first letter, which is ASCII, made a capital.
func Capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// Others tells of n more things of the same kind: nothing, what is said of one, or what
// is said of more, with their number in it: " So are %d other shelves."
func Others(n int, one, more string) string {
	switch n {
	case 0:
		return ""
	case 1:
		return one
	}
	return fmt.Sprintf(more, n)
}

// Counted puts a number before a word: "1 layer", "2 layers".
func Counted(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return strconv.Itoa(n) + " " + word
}

// Listed joins words: "battens, caps and corners".
func Listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}
