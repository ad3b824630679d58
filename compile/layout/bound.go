package layout

import (
	"math/big"
	"slices"
)

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

// fewestSheets returns a lower bound for the sheets that hold the pieces, at least one: by
// area; and by those pieces that, turned as they may be, are wider than half a
// sheet, for these can only lie one after the other along it, and so fill it
// like sticks; and the same the other way. A kerf is counted at two sides of
// each piece and of the sheet.
func fewestSheets(pieces []piece, room size, kerf Length) int {
	x, y := room.x+kerf, room.y+kerf
	area, term := new(big.Int), new(big.Int)
	var alongX, alongY []Length
	for _, p := range pieces {
		area.Add(area, term.Mul(big.NewInt(int64(p.ways[0].x+kerf)), big.NewInt(int64(p.ways[0].y+kerf))))
		least := size{p.ways[0].x + kerf, p.ways[0].y + kerf}
		for _, w := range p.ways[1:] {
			least = size{min(least.x, w.x+kerf), min(least.y, w.y+kerf)}
		}
		if least.y > y-least.y {
			alongX = append(alongX, least.x)
		}
		if least.x > x-least.x {
			alongY = append(alongY, least.y)
		}
	}
	sheet := new(big.Int).Mul(big.NewInt(int64(x)), big.NewInt(int64(y)))
	area.Add(area, sheet).Sub(area, big.NewInt(1)).Quo(area, sheet)
	return max(1, int(area.Int64()), fewestBins(alongX, x), fewestBins(alongY, y))
}
