// Package length holds the one measure of the project: whole nanometres. It
// reads lengths as a tape is read and prints them as a tape or a rule shows
// them.
//
// # Exactness
//
// The inch is 25.4 mm exactly and the foot 0.3048 m exactly (NIST SP 811,
// appendix B), so 1/64 in is 396 875 nm and 1 µm is 1000 nm: whatever a tape
// or a rule can show is a whole number. Reading, rounding and
// printing count in integers and exact fractions; only [FromFloat] meets the
// wide floats that a description's arithmetic ends in.
//
// # Reading
//
// [Parse] takes feet and inches, inches or one metric unit:
//
//	7ft 11 1/2in   7' 11 1/2"   7'-11 1/2"   7' 11-1/2   2 ft
//	19-1/2in       23/32 in     -1/4in       35.25"      5/4in
//	490mm          12.5cm       1.2m         36          3/4
//
//	length    = [ "-" ] term [ leftover ] .
//	term      = amount [ unit ] | whole foot [ "-" ] amount [ inch ] .
//	amount    = whole | decimal | fraction | whole ( space | "-" ) fraction .
//	leftover  = space ( "+" | "-" ) space decimal .
//
// Spaces between these are free, but none stands inside a number. A number
// without a unit takes the one that the caller names; after feet it counts
// inches. The sign in front holds for feet and inches together. Whatever
// falls between two nanometres, as 1/3in does, goes to the nearest one, halves
// away from zero.
//
// What two people could read in two ways is refused with a [SyntaxError] that
// tells the place, the reason and, where there is one, what to write instead.
//
// # Printing
//
// [Show] and [Number] print for people: inches and fractions, or millimetres
// in full; [Plain] and [PlainNumber] round what no tape shows to a decimal.
// [Length.Decimal] and [AppendDecimal] print for machines. [Parse] reads all of
// it back: exactly, or to the last digit shown.
package length

import "math/big"

// Length is a distance in nanometres. 1/64 in is 396 875 nm and 1 µm is
// 1000 nm, so both systems are exact.
type Length int64

// The inch is 25.4 mm exactly (NIST SP 811, appendix B).
const (
	Nanometre  Length = 1
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
)

// Max is the largest length that a description may state: far beyond any
// room, and small enough that sums never overflow.
const Max = 1000 * Metre

// Apart is how far two lengths differ.
func Apart(a, b Length) Length { return max(a-b, b-a) }

// MM returns the length in millimetres, for the last step of an emitter.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Unit is what a bare number means.
type Unit int

const (
	Millimetres Unit = iota
	Inches
	Centimetres
	Metres
	Feet
)

type unitInfo struct {
	word string
	size Length
}

var units = [...]unitInfo{
	Millimetres: {"mm", Millimetre},
	Inches:      {"in", Inch},
	Centimetres: {"cm", Centimetre},
	Metres:      {"m", Metre},
	Feet:        {"ft", Foot},
}

// Size returns the length of one unit.
func (u Unit) Size() Length { return units[u].size }

func (u Unit) String() string { return units[u].word }

// Imperial reports whether drawings in this unit show inches and fractions.
func (u Unit) Imperial() bool { return u == Inches || u == Feet }

// UnitNamed finds a unit by the word that a description uses for it.
func UnitNamed(word string) (Unit, bool) {
	for u, info := range units {
		if info.word == word {
			return Unit(u), true
		}
	}
	return 0, false
}

// FromFloat rounds a number of nanometres to the nearest whole one, halves
// away from zero. ok is false where the result is beyond Max.
func FromFloat(nm *big.Float) (l Length, ok bool) {
	if nm.IsInf() || nm.MantExp(nil) > 62 {
		return 0, false
	}
	// 256 bits swallow the noise that a 512-bit decimal fraction carries, so
	// that a true half is seen as one.
	x := new(big.Float).SetPrec(256).Set(nm)
	half := big.NewFloat(0.5)
	if x.Sign() < 0 {
		half.Neg(half)
	}
	n, _ := x.Add(x, half).Int64()
	l = Length(n)
	return l, l <= Max && l >= -Max
}
