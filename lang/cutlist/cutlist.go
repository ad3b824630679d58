// Package cutlist reads a plain cut list from anywhere: a CSV file whose first line names the
// columns. It takes bytes and gives lines with their places, or findings that say what is wrong
// and where; it lays nothing out.
//
// Columns are piece, pieces, along_grain, across_grain and may_turn, in any order (SPEC.md 15.1).
// Cells are parted by commas, semicolons or tabs, whichever the first line has most of. A byte
// order mark and any ends of lines are taken.
package cutlist

import (
	"bytes"
	"unicode/utf8"

	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// MaxPieces is how many pieces a list may have, and how many lines.
const MaxPieces = 20_000

// Line is so many equal pieces. Across is 0 where only lengths are asked for. More is what further
// columns say of it.
type Line struct {
	Piece         string
	Pieces        int
	Along, Across length.Length
	Turn          Turn
	More          string
	At            source.Range // the line
	AlongAt       source.Range
	AcrossAt      source.Range
	TurnAt        source.Range // the cell of may_turn, empty where the list has none
}

// Turn tells whether a piece may lie across the grain.
type Turn int

const (
	Unsaid Turn = iota
	MayTurn
	Fixed
)

// Form is how a list is read.
type Form struct {
	Unit    length.Unit // of bare numbers
	Lengths bool        // pieces of sticks: they have no size across
}

// List is what was read; Lines are whole only where no finding is an error.
type List struct {
	File     source.File // the text without its byte order mark, which the findings point into
	Lines    []Line
	Findings finding.List // sorted
}

// Read reads a list. The text is at most lang.MaxFileBytes long.
func Read(file source.File, form Form) List {
	file.Text = bytes.TrimPrefix(file.Text, []byte("\ufeff"))
	r := &reader{Form: form, file: file}
	switch bad := badByte(file.Text); {
	case len(file.Text) > lang.MaxFileBytes:
		r.findings.Errorf("file-too-large", source.Start(file.Name),
			"split the list", "The list is larger than %d bytes, which is the most that is read.", lang.MaxFileBytes)
	case bad >= 0:
		r.findings.Errorf("not-utf8", r.at(bad, bad+1), "save the list as UTF-8", "The byte here is not UTF-8 text.")
	default:
		r.list()
	}
	r.findings.Sort()
	return List{File: file, Lines: r.lines, Findings: r.findings}
}

// badByte is where a text is not UTF-8, or holds a byte 0 as other encodings do; -1 where it is.
func badByte(text []byte) int {
	for i := 0; i < len(text); {
		c, size := utf8.DecodeRune(text[i:])
		if c == utf8.RuneError && size == 1 || c == 0 {
			return i
		}
		i += size
	}
	return -1
}
