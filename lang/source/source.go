// Package source holds what the text of a description is known by: its files,
// and ranges in them. Positions travel with every value, part and feature, so
// that a finding can point at the words that asked for it.
package source

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// Pos is a place in a file. Line and Column start at 1, Byte at 0; Column
// counts characters as a reader sees them (grapheme clusters).
type Pos struct{ Line, Column, Byte int }

// Range is a stretch of a file, End exclusive. The zero Range is no place.
type Range struct {
	File       string
	Start, End Pos
}

// Start is the place where a file begins.
func Start(file string) Range {
	p := Pos{Line: 1, Column: 1}
	return Range{File: file, Start: p, End: p}
}

// IsZero reports whether the range points nowhere.
func (r Range) IsZero() bool { return r == Range{} }

// Place names where a range begins, for people: "bar.hcl:70"; empty of the zero Range.
func (r Range) Place() string {
	if r.IsZero() {
		return ""
	}
	return r.File + ":" + strconv.Itoa(r.Start.Line)
}

// Compare orders ranges by file, then by place.
func (r Range) Compare(o Range) int {
	return cmp.Or(cmp.Compare(r.File, o.File),
		cmp.Compare(r.Start.Byte, o.Start.Byte),
		cmp.Compare(r.End.Byte, o.End.Byte))
}

// File is one file of a description: its name as the user would write it,
// with forward slashes, and its bytes.
type File struct {
	Name string
	Text []byte
}

// Files is a set of files, for lookup by name.
type Files []File

// Sort orders the files by name.
func (fs Files) Sort() {
	slices.SortFunc(fs, func(a, b File) int { return strings.Compare(a.Name, b.Name) })
}

// Has reports whether the set has a file of that name.
func (fs Files) Has(name string) bool {
	return slices.ContainsFunc(fs, func(f File) bool { return f.Name == name })
}

// Text returns the bytes of a file, nil where the set has none of that name.
func (fs Files) Text(name string) []byte {
	for _, f := range fs {
		if f.Name == name {
			return f.Text
		}
	}
	return nil
}
