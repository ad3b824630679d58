package spacing

import (
	"slices"

	"barwright/compile/geom"
)

// Split returns where to part a stretch into the fewest pieces of at most a
// length, the places taken from some that rise, so that the pieces are as even
// as can be. It returns false where there is no such choice.
func Split(stretch geom.Span, most Length, at []Length) ([]Length, bool) {
	at = slices.DeleteFunc(slices.Clone(at), func(x Length) bool { return x <= stretch.Lo || x >= stretch.Hi })
	longest, ok := SplitFromLeft(stretch, most, at)
	n := len(longest)
	if n == 0 {
		return nil, ok
	}
	r := row{n: n, least: 1, most: most, weight: 1}
	r.first = func(x Length) area { return r.gap(x-stretch.Lo, 1) }
	r.last = func(x Length) area { return r.gap(stretch.Hi-x, 1) }
	places := make([][]Length, n)
	for i := range places {
		places[i] = at
	}
	return r.best(places), true
}

// SplitFromLeft parts a stretch into the fewest pieces as Split does, each as
// long as can be, the last one what is left.
func SplitFromLeft(stretch geom.Span, most Length, at []Length) ([]Length, bool) {
	var out []Length
	for end := stretch.Lo; stretch.Hi-end > most; {
		next := end
		for _, x := range at {
			if x <= end+most {
				next = max(next, x)
			}
		}
		if next == end {
			return nil, false
		}
		out, end = append(out, next), next
	}
	return out, true
}

// Pieces returns what a stretch is parted into at some rising places.
func Pieces(stretch geom.Span, at []Length) []geom.Span {
	out := make([]geom.Span, 0, len(at)+1)
	for _, x := range at {
		out = append(out, geom.Span{Lo: stretch.Lo, Hi: x})
		stretch.Lo = x
	}
	return append(out, stretch)
}

// Share is what the ith of n gets where they share a length evenly, to the
// nanometre: what does not divide goes to the first ones.
func Share(total Length, n, i int) Length {
	share := total / Length(n)
	if Length(i) < total%Length(n) {
		share++
	}
	return share
}
