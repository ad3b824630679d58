// Package expr gives expressions their meaning. Syntax is HCL's; a value knows
// whether it is a length or a bare number, so that 2 * width is a length,
// width / 2in a number, and width * depth an error.
package expr

import (
	"math/big"

	"barwright/lang/length"
	"barwright/lang/source"
)

// Kind is the kind of a value.
type Kind int

const (
	Invalid Kind = iota // a finding has been reported; whatever uses it keeps silent
	Number
	Length
	Text
	Flag
	List
	Object
	Ref  // names a block
	Rest // the word rest
)

func (k Kind) String() string {
	return [...]string{"nothing", "a number", "a length", "a text", "true or false", "a list",
		"an object", "a reference", "rest"}[k]
}

// Scale tells what unit a bare number takes when it becomes a length.
type Scale int

const (
	Pure  Scale = iota // a count or a ratio: the unit of whatever meets it
	Bare               // that of the file where it was written
	Mixed              // numbers of files with different units met: unclear
)

// Value is the result of an expression. Numbers have the precision of HCL's
// own, 512 bits; a length is rounded to whole nanometres only where it becomes
// an attribute's value.
type Value struct {
	Kind  Kind
	Num   *big.Float // Number; Length in nanometres
	Scale Scale
	Unit  length.Unit // of a Bare number
	Text  string      // Text; Ref: "sheet.birch"
	Flag  bool
	Items []Value  // List; Object, beside Keys
	Keys  []string // Object
	KeyAt []source.Range
	At    source.Range // where it was written
	// Quoted is where a Text stands in its quotes, letter for letter; zero where
	// it does not.
	Quoted source.Range
	From   source.Range // the value that a name led to, where one did
}

// place is where to show a fault at a byte of a Text: its own quotes where it
// stands in some, else at. caret is the finding's.
func (v Value) place(offset int, at source.Range) (_ source.Range, caret int) {
	if v.Quoted.IsZero() {
		return at, 0
	}
	return v.Quoted, offset + 1 // past the opening quote
}

const precision = 512

// OfLength makes a length value.
func OfLength(l length.Length) Value {
	return Value{Kind: Length, Num: new(big.Float).SetPrec(precision).SetInt64(int64(l))}
}

// OfText makes a text.
func OfText(s string) Value { return Value{Kind: Text, Text: s} }

// OfRef makes a reference to a block by its key, "sheet.birch".
func OfRef(key string) Value { return Value{Kind: Ref, Text: key} }

// OfFlag makes a truth value.
func OfFlag(b bool) Value { return Value{Kind: Flag, Flag: b} }
