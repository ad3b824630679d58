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
	n := 0
	for end := stretch.Lo; stretch.Hi-end > most; n++ {
		next := end
		for _, x := range at {
			if x <= end+most {
				next = max(next, x)
			}
		}
		if next == end {
			return nil, false
		}
		end = next
	}
	if n == 0 {
		return nil, true
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
