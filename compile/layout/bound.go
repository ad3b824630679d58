package layout

import "slices"

// fewestBins returns a lower bound for the bins of a size that hold the sizes,
// each of which is in 0..bin.
//
// It says more than a bound of what sticks cost, where some cost less than others, and of more
// kinds than are searched by a linear program.
//
// It is the bound L2 of Martello and Toth, "Lower bounds and reduction
// procedures for the bin packing problem", Discrete Applied Mathematics 28
// (1990): for each k up to half a bin, what is longer than bin-k lies alone,
// what is longer than half a bin lies in a bin of its own, and the room left
// in these takes what it can of the rest that is not shorter than k.
func fewestBins(sizes []Length, bin Length) int {
	sizes = slices.Sorted(slices.Values(sizes))
	sums := make([]Length, len(sizes)+1) // of the first so many
	for i, s := range sizes {
		sums[i+1] = sums[i] + s
	}
	upTo := func(l Length) int { n, _ := slices.BinarySearch(sizes, l+1); return n }
	half, best := upTo(bin/2), 0
	for i, k := range append([]Length{0}, sizes[:half]...) {
		from, most := max(0, i-1), upTo(bin-k)
		bins := len(sizes) - half
		room := Length(most-half)*bin - (sums[most] - sums[half])
		if over := sums[half] - sums[from] - room; over > 0 {
			bins += int((over + bin - 1) / bin)
		}
		best = max(best, bins)
	}
	return best
}
