package dxf

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Options say how a file is written. The zero value is R12 in millimetres with the
// default layers, its unit stated, everything in it, and no notes.
type Options struct {
	Version Version
	Layers  Layers
	Text    bool // write the notes

	// Unitless leaves $INSUNITS out of an R12 file, for a reader that refuses
	// the variable. R2000 defines it and always has it.
	Unitless bool

	Inch     bool          // otherwise millimetres
	Without  model.Written // kinds of work that are left out
	Depths   bool          // the depth stands in the name of a layer of blind work
	Mirrored bool          // the drawn face lies down
	Origin   Origin
	Flatten  length.Length              // how far chords may leave an arc; 0: arcs stay arcs. Round bores always do
	Relieve  func(*model.Part) Relieved // clears the corners for a bit of the diameter Bit; nil where they stay
	Bit      length.Length              // of the table; 0 where it is not known
	Overrun  length.Length              // how far recesses go on where they run out over an edge
	Small    length.Length              // pieces smaller than a square of it are flagged; 0: none

	// Said in notes: the build and its revision.
	Build string

	// Said in the note of one piece: the batch that its board was measured on,
	// and the labels of all pieces that the file is for, where it is for several.
	Batch string
	Like  []string

	// Turned is true of a piece that lies turned on its sheet: its own x runs up the
	// sheet's Y.
	Turned bool
}

// Relieved is a part with its inside corners cleared for the bit, how many of them, and
// the names of recesses whose corners stay, for their ends are too narrow.
type Relieved struct {
	Part                        *model.Part
	Outline, Openings, Recesses int
	Narrow                      []string
}

// quarters is how often the first view of a piece is turned, counter-clockwise by a
// quarter, as it lies on its sheet.
func (o *Options) quarters() int {
	switch {
	case !o.Turned:
		return 0
	case o.Mirrored:
		return -1
	}
	return 1
}

// Origin is where a file has 0, 0: a corner of the part, or of the sheet, as it lies.
type Origin int

const (
	LowerLeft Origin = iota
	LowerRight
	UpperLeft
	UpperRight
	Middle
)

var originWords = [...]string{"lower left", "lower right", "upper left", "upper right", "middle"}

func (o Origin) String() string { return originWords[o] }

// OriginNamed is the origin of a word as descriptions have it: "lower_left". It panics at
// any other.
func OriginNamed(word string) Origin {
	at := slices.Index(originWords[:], strings.ReplaceAll(word, "_", " "))
	if at < 0 {
		panic("no origin is named " + word)
	}
	return Origin(at)
}

// turnedOver is where the corner lies after the piece is turned over from left to right.
func (o Origin) turnedOver() Origin {
	return [...]Origin{LowerRight, LowerLeft, UpperRight, UpperLeft, Middle}[o]
}

// turned is where the corner lies after quarter turns counter-clockwise.
func (o Origin) turned(quarters int) Origin {
	round := [...]Origin{LowerLeft, LowerRight, UpperRight, UpperLeft}
	at := slices.Index(round[:], o)
	if at < 0 {
		return o
	}
	return round[(at+quarters+4)%4]
}

// of returns the point of a box that the file has at 0, 0.
func (o Origin) of(box geom.Rect) geom.Point {
	at := geom.Point{X: box.X.Lo, Y: box.Y.Lo}
	switch o {
	case LowerRight, UpperRight:
		at.X = box.X.Hi
	case Middle:
		return geom.Point{X: box.X.Mid(), Y: box.Y.Mid()}
	}
	if o == UpperLeft || o == UpperRight {
		at.Y = box.Y.Hi
	}
	return at
}

// show prints a length for people in the unit of the file: to a hundredth of a
// millimetre, or a ten-thousandth of an inch.
func (o *Options) show(l length.Length) string {
	if o.Inch {
		return l.Decimal(length.Inches, 4)
	}
	return l.Decimal(length.Millimetres, 2)
}

func (o *Options) unit() string {
	if o.Inch {
		return "UNITS IN"
	}
	return "UNITS MM"
}
