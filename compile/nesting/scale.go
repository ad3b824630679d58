package nesting

import "slices"

// scale gives a length of up to whole a value from 0 to 1. All are superadditive: of lengths in
// a row, the value is no less than theirs together. They are dual feasible functions as
// surveyed by Clautiaux, Alves and Valério de Carvalho, "A survey of dual-feasible and
// superadditive functions", Annals of Operations Research 179 (2010).
type scale struct {
	kind  int
	whole Length
	by    Length
}

const (
	// large counts what is longer than whole-by as whole, and what is shorter than by not at
	// all: U of Fekete and Schepers.
	large = iota
	// steps counts up by whole/by, save what is a multiple of whole/(by+1): u of theirs.
	steps
	// halves counts how often by fits, up to half of the whole, and what is left of the whole
	// above: f2 of Carlier, Clautiaux and Moukrim, "New reduction procedures and lower bounds
	// for the two-dimensional bin packing problem with fixed orientation", Computers &
	// Operations Research 34 (2007).
	halves
)

func (f scale) of(v Length) float64 {
	whole := float64(f.whole)
	switch f.kind {
	case large:
		if v > f.whole-f.by {
			return 1
		}
		if v < f.by {
			return 0
		}
	case steps:
		if q := v * (f.by + 1); q%f.whole != 0 {
			return float64(q/f.whole) / float64(f.by)
		}
	case halves:
		full := float64(f.whole / f.by)
		switch {
		case 2*v > f.whole:
			return 1 - float64((f.whole-v)/f.by)/full
		case 2*v == f.whole:
			return 0.5
		}
		return float64(v/f.by) / full
	}
	return float64(v) / whole
}

// enough is how many lengths of a demand scales are made of.
const enough = 40

// scales are those that lengths give.
func scales(lengths []Length, whole Length) (out []scale) {
	lengths = slices.Compact(slices.Sorted(slices.Values(lengths)))
	half, _ := slices.BinarySearch(lengths, whole/2+1)
	lengths = lengths[:half]
	out = append(out, scale{large, whole, 0})
	for by := Length(1); by <= 12; by++ {
		out = append(out, scale{steps, whole, by})
	}
	add := func(by Length) {
		out = append(out, scale{large, whole, by}, scale{halves, whole, by})
	}
	add((whole + 1) / 2)
	n := min(len(lengths), enough)
	for i := range n {
		add(lengths[i*len(lengths)/n])
	}
	return out
}
