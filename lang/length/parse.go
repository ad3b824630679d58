package length

import (
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxText is the longest text that Parse looks at, in bytes.
const maxText = 64

// SyntaxError tells what keeps a text from being a length, in words for a
// person who holds a tape.
type SyntaxError struct {
	Offset int    // of the wrong character, in bytes; the text's length where something is missing
	Reason string // "a fraction cannot have 0 below the line"
	Mend   string // the text as it was probably meant, which Parse accepts; empty where no guess is safe
}

func (e *SyntaxError) Error() string { return e.Reason }

// Sentence is the reason, which may be a question, with what ends a sentence.
func (e *SyntaxError) Sentence() string {
	if strings.HasSuffix(e.Reason, "?") {
		return e.Reason
	}
	return e.Reason + "."
}

// Parse reads a length as a tape is read; the package comment has the grammar.
// An amount without a unit is counted in bare. The result is rounded to the
// nearest nanometre, halves away from zero, and is within [Max] of zero.
func Parse(text string, bare Unit) (Length, *SyntaxError) {
	return parse(text, bare, true)
}

// parse is Parse; mend says whether an error may look for its mend, which it
// does by parsing the mended text.
func parse(text string, bare Unit, mend bool) (Length, *SyntaxError) {
	r := &reader{text: text, bare: bare, mends: mend}
	if len(text) > maxText {
		at := maxText
		for at > 0 && !utf8.RuneStart(text[at]) {
			at--
		}
		return 0, r.fail(at, "", "a length has at most %d characters", maxText)
	}
	exact, err := r.length()
	if err != nil {
		return 0, err
	}
	l, ok := roundExact(exact)
	if !ok {
		r.pos = 0
		r.spaces()
		return 0, r.fail(r.pos, "", "longer than the %s m that a length may have", Max.Decimal(Metres, 0))
	}
	return l, nil
}

// roundExact rounds nanometres to whole ones, halves away from zero. ok is false
// beyond Max.
func roundExact(exact *big.Rat) (l Length, ok bool) {
	double := new(big.Int).Lsh(exact.Denom(), 1)
	n := new(big.Int).Lsh(new(big.Int).Abs(exact.Num()), 1)
	n.Add(n, exact.Denom()).Quo(n, double)
	if !n.IsInt64() || n.Int64() > int64(Max) {
		return 0, false
	}
	return Length(n.Int64() * int64(exact.Sign())), true
}

// reader walks over one text.
type reader struct {
	text  string
	pos   int
	bare  Unit
	mends bool
}

// term is an amount and its unit.
type term struct {
	amount
	unit Unit
	word string // the unit as written, empty where there is none
	at   int    // where word stands
	end  int
}

// length reads the whole text and returns nanometres.
func (r *reader) length() (*big.Rat, *SyntaxError) {
	r.spaces()
	minus := r.skip('-')
	r.spaces()
	last, err := r.term(r.bare)
	if err != nil {
		return nil, err
	}
	sum := last.nanometres()
	for r.startsTerm() {
		if last, err = r.after(last); err != nil {
			return nil, err
		}
		sum.Add(sum, last.nanometres())
	}
	if minus {
		sum.Neg(sum)
	}
	r.spaces()
	if next := r.peek(); next == '+' || next == '-' {
		rest, err := r.leftover(last)
		if err != nil {
			return nil, err
		}
		sum.Add(sum, rest)
	}
	if r.spaces(); r.pos < len(r.text) {
		return nil, r.stray()
	}
	return sum, nil
}

// term reads an amount and its unit; without one it counts in bare.
func (r *reader) term(bare Unit) (term, *SyntaxError) {
	a, err := r.amount()
	if err != nil {
		return term{}, err
	}
	t := term{amount: a, unit: bare, end: r.pos}
	r.spaces()
	t.at = r.pos
	if t.word = r.word(); t.word == "" {
		r.pos = t.end
		return t, nil
	}
	unit, ok := unitWritten(t.word)
	if !ok {
		return term{}, r.unknownUnit(t)
	}
	t.unit, t.end = unit, r.pos
	if mark := r.mark(); unit == Feet && mark == t.word {
		mend := r.mend(t.at, r.pos+len(mark), "in")
		return term{}, r.fail(t.at, mend, "two foot marks do not make an inch mark%s", wasMeant(mend))
	}
	return t, nil
}

func (t term) nanometres() *big.Rat {
	size := new(big.Rat).SetInt64(int64(t.unit.Size()))
	return size.Mul(size, t.value)
}

// startsTerm steps up to the amount of one more term where one follows: next
// to the term before, behind spaces, or behind a hyphen that touches both.
func (r *reader) startsTerm() bool {
	from := r.pos
	if !r.skip('-') {
		r.spaces()
	}
	if digit(r.text, r.pos) || r.peek() == '.' && digit(r.text, r.pos+1) {
		return true
	}
	r.pos = from
	return false
}

// after reads the inches that follow feet, or tells why nothing can follow.
func (r *reader) after(first term) (term, *SyntaxError) {
	if first.word == "" {
		return term{}, r.twoNumbers(first)
	}
	t, err := r.term(Inches)
	if err != nil {
		return term{}, err
	}
	switch {
	case first.unit == Inches && t.unit == Inches && first.form == whole && t.form == fraction:
		mend := r.mend(first.to, t.end, " "+r.text[t.from:t.to]+first.word)
		return t, r.fail(t.from, mend, "the fraction comes before the unit")
	case first.unit != Feet && t.word == "":
		return t, r.fail(t.from, "", "a number without a unit can follow feet only, where it counts inches")
	case first.unit.Imperial() != t.unit.Imperial():
		return t, r.fail(t.from, "", "%s and %s do not mix in one length", first.unit, t.unit)
	case !t.unit.Imperial():
		return t, r.fail(t.from, "", "a metric length has one number and one unit, as in 1.2m")
	case first.unit == t.unit:
		return t, r.fail(t.from, "", "%s is given twice", t.unit)
	case first.unit == Inches:
		mend := r.mend(first.from, t.end, r.text[t.from:t.end]+" "+r.text[first.from:first.end])
		return t, r.fail(t.from, mend, "feet come before inches")
	case first.form != whole:
		return t, r.fail(first.from, "", "feet in front of inches are a whole number")
	case t.value.Cmp(twelve) >= 0:
		return t, r.fail(t.from, "", "inches after feet stay under 12")
	}
	return t, nil
}

var twelve = big.NewRat(int64(Foot/Inch), 1)

// leftover reads the signed decimal with which Show says what is not on its
// step; it counts in the unit of the last term.
func (r *reader) leftover(last term) (*big.Rat, *SyntaxError) {
	at := r.pos
	sign := r.text[at]
	before := strings.TrimRightFunc(r.text[:at], unicode.IsSpace) != r.text[:at]
	r.pos++
	behind := r.run(unicode.IsSpace) != ""
	t, err := r.term(last.unit)
	switch {
	case err != nil || !before || !behind || t.form != decimal || t.value.Cmp(one) >= 0:
		return nil, r.looseSign(sign, at)
	case t.word != "":
		return nil, r.fail(t.at, r.mend(t.to, t.end, ""), "what is left over has no unit of its own")
	case last.unit == Feet:
		return nil, r.fail(at, "", "write the inches too before what is left over, as in 2 ft 0 in + 0.012")
	}
	rest := t.nanometres()
	if sign == '-' {
		rest.Neg(rest)
	}
	return rest, nil
}

var one = big.NewRat(1, 1)

// peek returns the next byte, 0 at the end.
func (r *reader) peek() byte {
	if r.pos == len(r.text) {
		return 0
	}
	return r.text[r.pos]
}

// skip steps over c where it comes next.
func (r *reader) skip(c byte) bool {
	found := r.peek() == c
	if found {
		r.pos++
	}
	return found
}

func (r *reader) spaces() { r.run(unicode.IsSpace) }

// digits reads none or more digits.
func (r *reader) digits() string {
	return r.run(func(c rune) bool { return '0' <= c && c <= '9' })
}

// word reads a word of letters or one mark; it may be empty.
func (r *reader) word() string {
	if mark := r.mark(); mark != "" {
		r.pos += len(mark)
		return mark
	}
	return r.run(unicode.IsLetter)
}

// run reads none or more characters of a kind.
func (r *reader) run(kind func(rune) bool) string {
	rest := r.text[r.pos:]
	n := len(rest) - len(strings.TrimLeftFunc(rest, kind))
	r.pos += n
	return rest[:n]
}

// mark returns the foot or inch mark that comes next, or nothing.
func (r *reader) mark() string {
	c, size := utf8.DecodeRuneInString(r.text[r.pos:])
	if !strings.ContainsRune(footMarks+inchMarks, c) {
		return ""
	}
	return r.text[r.pos : r.pos+size]
}
