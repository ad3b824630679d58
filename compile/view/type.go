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

// A stacked fraction, in hundredths of the text height: type of its figures against that of the
// line, and the air beside it.
const (
	stacked    = 70
	stackedAir = 30
)

// width estimates how wide a line is set. On paper a fraction at its end has its numerator over its
// denominator.
func (s *sheet) width(text string) Length {
	before, fraction := cutFraction(text)
	if !s.paper || fraction == "" {
		return TypeWidth(text, s.h)
	}
	over, under, _ := strings.Cut(fraction, "/")
	wide := max(TypeWidth(over, s.h), TypeWidth(under, s.h)) * stacked / 100
	return TypeWidth(strings.TrimSuffix(before, " "), s.h) + wide + stackedAir*s.h/100
}

// cutFraction parts a fraction of figures from the end of a line, where it follows a space or a
// tilde or stands alone.
func cutFraction(text string) (before, fraction string) {
	at := strings.LastIndexAny(text, " ~") + 1
	over, under, ok := strings.Cut(text[at:], "/")
	if !ok || !figures(over) || !figures(under) {
		return text, ""
	}
	return text[:at], text[at:]
}

// figures reports whether a text is a number of up to three figures.
func figures(text string) bool {
	return len(text) > 0 && len(text) <= 3 && strings.Trim(text, "0123456789") == ""
}

func runeWidth(r rune) Length {
	switch r {
	case ' ', '.', ',', ':', ';', '\'', '|', '!', 'i', 'I', 'j', 'l', 'f', 't', 'r', '/', '(', ')', '[', ']', '-':
		return 43
	case 'm', 'M', 'w', 'W', '%', '@', '&', '+', '<', '>', '=', '~', '^', '#':
		return 100
	}
	switch {
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
