package replay

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// relieve takes bores of a radius, in mm, out of the wood that must stay. The border
// loses what lies in a bore, and gains what of the bore's rim lies in the wood.
func (w *wood) relieve(centres []geom.Point, radius float64) {
	for _, c := range centres {
		bore := bored(mm(c), radius)
		kept := make([]wall, 0, len(w.border)+len(bore))
		for _, b := range w.border {
			for _, s := range outside(b.stretch, bore) {
				kept = append(kept, wall{s, b.round})
			}
		}
		rim := bore
		for _, room := range w.rooms {
			var left []stretch
			for _, s := range rim {
				left = append(left, outside(s, room)...)
			}
			rim = left
		}
		for _, s := range rim {
			kept = append(kept, wall{s, true})
		}
		w.rooms, w.border = append(w.rooms, bore), kept
	}
}

// bored returns the border of a bore, as straight pieces.
func bored(c spot, r float64) []stretch {
	east, west := spot{c.x + r, c.y}, spot{c.x - r, c.y}
	return append(chords(east, west, c.x, c.y, math.Pi), chords(west, east, c.x, c.y, math.Pi)...)
}

// shortest is how long a piece of a border is at least, in mm: no bit goes through a
// gap as wide.
const shortest = 1e-6

// outside returns the parts of a stretch that do not lie inside a closed border.
func outside(s stretch, border []stretch) []stretch {
	at := []float64{0, 1}
	for _, b := range border {
		from, to := s.side(b.a), s.side(b.b)
		if (from <= 0) == (to <= 0) {
			continue
		}
		if t := s.share(b.along(from / (from - to))); t > 0 && t < 1 {
			at = append(at, t)
		}
	}
	slices.Sort(at)
	var out []stretch
	for i := range at[1:] {
		piece := stretch{s.along(at[i]), s.along(at[i+1])}
		if piece.length() > shortest && !inside(border, piece.along(0.5)) {
			out = append(out, piece)
		}
	}
	return out
}
