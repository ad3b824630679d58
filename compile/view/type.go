package view

import (
	"strings"
	"unicode/utf8"
)

// lineHeight is what a line of type takes from its neighbours, in hundredths
// of the text height: the ascent and descent of the common sans faces, with a
// little air.
const lineHeight = 140

// Letters that the classes below do not name: those up to latinEnd are of
// Latin, those from wideFrom on fill a square.
const (
	latinEnd = 0x250
	wideFrom = 0x2e80
)

// maxRunes is as long as a name may be in a drawing. Titles hold all of it.
const maxRunes = 28

// TypeWidth estimates how wide a text is set. The page is drawn in whatever
// sans face the reader has, so each class of letters counts as wide as in the
// widest of the common ones.
func TypeWidth(text string, height Length) Length {
	hundredths := Length(0)
	for _, r := range text {
		hundredths += runeWidth(r)
	}
	return hundredths * height / 100
}

func runeWidth(r rune) Length {
	switch {
	case strings.ContainsRune(" .,:;'|!iIjlftr/()[]-", r):
		return 43
	case strings.ContainsRune("mMwW%@&+<>=~^#", r):
		return 100
	case 'A' <= r && r <= 'Z':
		return 80
	case r < utf8.RuneSelf:
		return 66
	case r < latinEnd:
		return 90
	case r >= wideFrom:
		return 105
	}
	return 120
}

// block is a text of one or more lines, set in the middle of one another.
type block struct {
	lines []string
	w, h  Length
}

func setBlock(lines []string, height Length) block {
	b := block{h: lineHeight * height / 100 * Length(len(lines))}
	for _, line := range lines {
		line = clip(line)
		b.lines = append(b.lines, line)
		b.w = max(b.w, TypeWidth(line, height))
	}
	return b
}

// clip shortens a long text and takes out what would break a line.
func clip(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if utf8.RuneCountInString(text) <= maxRunes {
		return text
	}
	runes := []rune(text)
	return string(runes[:maxRunes-1]) + "…"
}
