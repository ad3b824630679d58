package length

import "strings"

// The marks of feet and inches: the typewriter's, the primes, and what a word
// processor makes of the first.
const (
	footMarks = "'′’"
	inchMarks = `"″”“`
)

// unitWords are the ways to write each unit, in the order in which they are
// suggested.
var unitWords = [...][]string{
	Millimetres: {"mm", "millimetre", "millimetres", "millimeter", "millimeters"},
	Inches:      {"in", "inch", "inches"},
	Centimetres: {"cm", "centimetre", "centimetres", "centimeter", "centimeters"},
	Metres:      {"m", "metre", "metres", "meter", "meters"},
	Feet:        {"ft", "foot", "feet"},
}

// unitWritten finds the unit of a word or mark.
func unitWritten(word string) (Unit, bool) {
	switch {
	case word == "":
		return 0, false
	case strings.Contains(footMarks, word):
		return Feet, true
	case strings.Contains(inchMarks, word):
		return Inches, true
	}
	for u, words := range unitWords {
		for _, w := range words {
			if w == word {
				return Unit(u), true
			}
		}
	}
	return 0, false
}

// nearestUnit returns the unit word that is written most like word, or nothing
// where none is close, or where words of two units are equally so.
func nearestUnit(word string) string {
	word = strings.ToLower(word)
	near, unit, least := "", Unit(-1), (len(word)+1)/3+1
	for u, words := range unitWords {
		for _, w := range words {
			switch d := distance(word, w); {
			case d < least:
				near, unit, least = w, Unit(u), d
			case d == least && Unit(u) != unit:
				near = ""
			}
		}
	}
	return near
}

// distance counts the letters to put in, take out or replace between a and b
// (Levenshtein).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			replaced := diagonal
			if a[i] != b[j] {
				replaced++
			}
			diagonal = row[j+1]
			row[j+1] = min(replaced, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
