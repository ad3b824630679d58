package bill

import (
	"math/big"
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// squareFoot in square metres, and a tenth of it and a hundredth of a square
// metre in square nanometres; all exact (NIST SP 811, appendix B).
const (
	squareFoot           = 0.09290304
	tenthSquareFoot      = 9_290_304_000_000_000
	hundredthSquareMetre = 10_000_000_000_000_000
)

// slabs adds a line for each slab: its area in square metres, begun hundredths
// counted whole, for stock is priced by it; in builds in inches its area in square
// feet, begun tenths counted whole, at the price of one. Cut-outs are paid for.
func (b *builder) slabs() {
	for _, s := range b.Slabs {
		line := model.BillLine{
			Section: "slabs", Item: s.Key(), Text: "slab, " + b.Build.Plain(s.Box.Z.Size()) + " thick",
			Use: s.Words(), Quantity: steps(s.Box.U.Size(), s.Box.V.Size(), hundredthSquareMetre) / 100, Unit: "m2",
			Needed: b.slabSize(s), WeightKg: s.WeightKg,
		}
		perUnit := 1.0
		if b.Build.Unit.Imperial() {
			perUnit = squareFoot
			line.Quantity, line.Unit = steps(s.Box.U.Size(), s.Box.V.Size(), tenthSquareFoot)/10, "sq ft"
		}
		for _, stock := range b.Stock.Slabs {
			if stock.Name != s.Stock {
				continue
			}
			line.Item, line.Text, line.Price, line.Priced = stock.Name, stock.Text, stock.Price*perUnit, stock.Priced
			if stock.Priced && perUnit != 1 {
				line.Needed += "; priced at " + strconv.FormatFloat(stock.Price, 'f', 2, 64) + " a square metre"
			}
			if line.WeightKg == 0 {
				area := float64(s.Box.U.Size().MM() * s.Box.V.Size().MM())
				line.WeightKg = float64(area*s.Box.Z.Size().MM()) / 1e9 * stock.Density
			}
		}
		b.add(line)
	}
}

// ordered is a slab of which only some pieces are ordered, as long as these together;
// any is false where none is. What they weigh follows from their size, cut-outs and all.
func ordered(s model.Slab, parts []model.Part) (some model.Slab, any bool) {
	var pieces []string
	long := model.Length(0)
	for i := range parts {
		if p := &parts[i]; slices.Contains(s.Parts, p.ID) {
			pieces = append(pieces, p.ID)
			long += p.Placement.Box.U.Size()
		}
	}
	if len(pieces) < len(s.Parts) {
		s.Parts, s.Box.U.Hi, s.WeightKg = pieces, s.Box.U.Lo+long, 0
	}
	return s, len(pieces) > 0
}

func (b *builder) slabSize(s model.Slab) string {
	show := b.Build.Plain
	size := show(s.Box.U.Size()) + " x " + show(s.Box.V.Size()) + " x " + show(s.Box.Z.Size())
	if n := len(s.Parts); n > 1 {
		size += " in " + finding.Counted(n, "piece")
	}
	return size
}

// steps returns how many begun steps of an area in square nanometres a rectangle
// has.
func steps(u, v model.Length, step int64) float64 {
	n := new(big.Int).Mul(big.NewInt(int64(u)), big.NewInt(int64(v)))
	s := big.NewInt(step)
	n.Add(n, s).Sub(n, big.NewInt(1)).Quo(n, s)
	return float64(n.Int64())
}
