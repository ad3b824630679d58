package length

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// fail returns an error at a place in the text.
func (r *reader) fail(at int, mend, format string, args ...any) *SyntaxError {
	return &SyntaxError{Offset: at, Reason: fmt.Sprintf(format, args...), Mend: mend}
}

// mend returns the text with text[from:to] replaced, where that makes it a
// length, and nothing where it does not.
func (r *reader) mend(from, to int, with string) string {
	if !r.mends {
		return ""
	}
	text := strings.TrimSpace(r.text[:from] + with + r.text[to:])
	if _, err := parse(text, r.bare, false); err != nil {
		return ""
	}
	return text
}

func wasMeant(mend string) string {
	if mend == "" {
		return ""
	}
	return ": was " + mend + " meant?"
}

// lookalikes are characters that stand for what is written plainly here; lookup only.
var lookalikes = map[rune]string{
	'−': "-", '–': "-", '—': "-", '‐': "-", '‑': "-",
	'⁄': "/", '∕': "/",
	'½': "1/2", '¼': "1/4", '¾': "3/4", '⅓': "1/3", '⅔': "2/3",
	'⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
}

// stray refuses what comes next.
func (r *reader) stray() *SyntaxError {
	at := r.pos
	c, size := utf8.DecodeRuneInString(r.text[at:])
	plain, looksAlike := lookalikes[c]
	switch {
	case strings.TrimSpace(r.text) == "":
		return r.fail(at, "", "no length is written here")
	case size == 0:
		return r.fail(at, "", "a number is missing at the end")
	case looksAlike:
		return r.lookalike(c, size, plain)
	case c == '/' && at > 0 && r.text[at-1] == ' ':
		mend := r.mend(r.around(at, "/"))
		return r.fail(at, mend, "a fraction has no spaces around its line%s", wasMeant(mend))
	}
	mend := ""
	joins := at > 0 && digit(r.text, at-1) && digit(r.text, at+1)
	if strings.ContainsRune(".,;+", c) && !joins {
		mend = r.mend(at, at+size, "")
	}
	what := r.text[at : at+size]
	if word := r.word(); word != "" {
		what = word
	}
	if strings.Trim(r.text[:at], " -") == "" {
		return r.fail(at, mend, "a length starts with a number, not with %q", what)
	}
	return r.fail(at, mend, "%q does not belong here", what)
}

func (r *reader) lookalike(c rune, size int, plain string) *SyntaxError {
	with := plain
	if len(plain) > 1 && r.pos > 0 && digit(r.text, r.pos-1) {
		with = " " + plain
	}
	return r.fail(r.pos, r.mend(r.pos, r.pos+size, with), "write %s for %c", plain, c)
}

// around returns what mend takes to put with in the place of the character at
// that place and of the spaces on both sides of it.
func (r *reader) around(at int, with string) (from, to int, _ string) {
	from = len(strings.TrimRight(r.text[:at], " "))
	to = len(r.text) - len(strings.TrimLeft(r.text[at+1:], " "))
	return from, to, with
}

// twoNumbers refuses the number that comes next, after one without a unit.
func (r *reader) twoNumbers(first term) *SyntaxError {
	at := r.pos
	second := fractionAt(r.text, at)
	switch {
	case second && first.form == decimal:
		return r.fail(at, "", "a point and a fraction do not go together")
	case second:
		return r.fail(at, "", "two fractions do not go together")
	case first.form == whole && len(r.digits()) == 3:
		mend := r.mend(first.to, at, "")
		return r.fail(at, mend, "a number has no space inside%s", wasMeant(mend))
	}
	return r.fail(at, "", "two numbers in a row: give the first one its unit, as in 7ft 8in")
}

// comma refuses the comma that comes next, between digits.
func (r *reader) comma() *SyntaxError {
	at := r.pos
	r.pos++
	if len(r.digits()) == 3 {
		return r.fail(at, "", "a comma can stand for the point or for thousands: write the number without it")
	}
	mend := r.mend(at, at+1, ".")
	return r.fail(at, mend, "a comma is not a decimal point%s", wasMeant(mend))
}

// looseSign refuses the sign at that place, which is neither in front of the
// length, nor the hyphen of a fraction, nor before what is left over.
func (r *reader) looseSign(sign byte, at int) *SyntaxError {
	if sign == '+' {
		return r.fail(at, "", "lengths are not added up here: + takes a decimal under one, as in 39 5/8 in + 0.012")
	}
	from, to, space := r.around(at, " ")
	mend := ""
	if digit(r.text, to) {
		mend = r.mend(from, to, space)
	}
	return r.fail(at, mend, "this - can be read as joining or as taking away%s", wasMeant(mend))
}

// unknownUnit refuses the word of t.
func (r *reader) unknownUnit(t term) *SyntaxError {
	if near := nearestUnit(t.word); near != "" {
		return r.fail(t.at, r.mend(t.at, r.pos, near), "%q is not a unit: was %s meant?", t.word, near)
	}
	return r.fail(t.at, "", "%q is not a unit that is read here: write mm, cm, m, in or ft", t.word)
}
