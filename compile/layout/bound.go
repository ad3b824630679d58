package layout

import "slices"

// fewestBins returns a lower bound for the bins of a size that hold the sizes,
// each of which is in 0..bin.
//
// It is the bound L2 of Martello and Toth, "Lower bounds and reduction
// procedures for the bin packing problem", Discrete Applied Mathematics 28
// (1990): for each k up to half a bin, what is longer than bin-k lies alone,
// what is longer than half a bin lies in a bin of its own, and the room left
// in these takes what it can of the rest that is not shorter than k.
func fewestBins(sizes []Length, bin Length) int {
	cuts := []Length{0}
	for _, s := range sizes {
		if s <= bin/2 {
			cuts = append(cuts, s)
		}
	}
	slices.Sort(cuts)
	best := 0
	for _, k := range slices.Compact(cuts) {
		alone, halves := 0, 0
		var inHalves, small Length
		for _, s := range sizes {
			switch {
			case s > bin-k:
				alone++
			case s > bin-s:
				halves++
				inHalves += s
			case s >= k:
				small += s
			}
		}
		bins := alone + halves
		if over := small - (Length(halves)*bin - inHalves); over > 0 {
			bins += int((over + bin - 1) / bin)
		}
		best = max(best, bins)
	}
	return best
}
