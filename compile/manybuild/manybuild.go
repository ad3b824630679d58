// Package manybuild writes descriptions of many cabinets, for benchmarks and tests of size. What
// it describes could be built: alcoves side by side, each with runs along its walls and a bar in
// the middle, with outlets, doors, drawers, shelves, supports and a sink.
package manybuild

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"

	"barwright/lang/source"
)

const (
	perAlcove = 60 // cabinets of a full alcove: 10 000 cabinets stand within 1000 m
	perFile   = 40 // full alcoves in a file: about half of what a file may hold
)

// Files describes n cabinets, no two alike, in "in" or "mm". The same arguments give the same
// text, and each cabinet has about 15 parts.
func Files(n int, unit string, seed uint64) source.Files {
	w := &writer{unit: unit, chance: rand.New(rand.NewPCG(seed, 0)), made: map[string]bool{}}
	w.stock()
	files := source.Files{w.file("stock.hcl")}
	alcoves := max(1, (n+perAlcove-1)/perAlcove)
	for first := 0; first < alcoves; first += perFile {
		for i := first; i < min(first+perFile, alcoves); i++ {
			w.alcove(i, n*(i+1)/alcoves-n*i/alcoves)
		}
		files = append(files, w.file(fmt.Sprintf("hall%03d.hcl", first/perFile)))
	}
	w.room()
	return append(files, w.file("room.hcl"))
}

// writer writes one file after the other; walls and readings of the floor wait for the last.
type writer struct {
	unit        string
	chance      *rand.Rand
	made        map[string]bool // cabinets as they are written, lookup only
	cabinets    int
	text        strings.Builder
	walls, hall strings.Builder
}

// file takes what was written since the last one.
func (w *writer) file(name string) source.File {
	f := source.File{Name: name, Text: []byte(w.text.String())}
	w.text.Reset()
	return f
}

func (w *writer) printf(format string, args ...any) { fmt.Fprintf(&w.text, format, args...) }

// number is a length in the build's unit.
type number float64

func (n number) String() string {
	return strconv.FormatFloat(math.Round(float64(n)*1e4)/1e4, 'f', -1, 64)
}

// size is about so many inches: whole millimetres, or tenths of what is less than an inch.
func (w *writer) size(inches float64) number {
	switch {
	case w.unit == "in":
		return number(inches)
	case math.Abs(inches) < 1:
		return number(math.Round(inches*254) / 10)
	default:
		return number(math.Round(inches * 25.4))
	}
}

// between draws a length between two of whole inches, in steps of 1/32 in or a millimetre.
func (w *writer) between(least, most int) number {
	steps := (most - least) * 32
	return w.size(float64(least) + float64(w.chance.IntN(steps+1))/32)
}
