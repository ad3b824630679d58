package finding

import (
	"fmt"

	"github.com/agext/levenshtein"
)

// Nearest returns the candidate that a misspelt name most likely meant, empty
// where none is near. Of equals the first wins.
func Nearest(name string, candidates []string) string {
	best, bestDistance := "", 1+max(1, (len(name)+1)/3)
	for _, c := range candidates {
		if d := levenshtein.Distance(name, c, nil); d < bestDistance && d < len(c) {
			best, bestDistance = c, d
		}
	}
	return best
}

// Suggest is the mend for an unknown name: the nearest known one, or the list
// where it is short.
func Suggest(name string, candidates []string) string {
	if near := Nearest(name, candidates); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	if len(candidates) == 0 {
		return ""
	}
	return "known here: " + enumerate(candidates, 12)
}

func enumerate(words []string, most int) string {
	out := ""
	for i, w := range words {
		switch {
		case i == most:
			return out + ", …"
		case i > 0:
			out += ", "
		}
		out += w
	}
	return out
}
