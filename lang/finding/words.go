package finding

import (
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

// Counted puts a number before a word: "1 layer", "2 layers".
func Counted(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return strconv.Itoa(n) + " " + word
}
