package bill

import (
	"math/big"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// slabs adds a line for each slab: its area in square metres, begun hundredths
// counted whole, for stock is priced by it. Cut-outs are paid for.
func (b *builder) slabs() {
	for _, s := range b.Slabs {
		kind := strings.ReplaceAll(s.Kind, "_", " ")
		line := model.BillLine{
			Section: "slabs", Item: s.Kind + "." + s.Name, Text: "slab, " + b.Build.Show(s.Box.Z.Size()) + " thick",
			Use: kind + " " + s.Name, Quantity: hundredths(s.Box.U.Size(), s.Box.V.Size()), Unit: "m2",
			Needed: b.slabSize(s), WeightKg: s.WeightKg,
		}
		for _, stock := range b.Stock.Slabs {
			if stock.Name != s.Stock {
				continue
			}
			line.Item, line.Text, line.Price, line.Priced = stock.Name, stock.Text, stock.Price, stock.Priced
			if line.WeightKg == 0 {
				area := float64(s.Box.U.Size().MM() * s.Box.V.Size().MM())
				line.WeightKg = float64(area*s.Box.Z.Size().MM()) / 1e9 * stock.Density
			}
		}
		b.add(line)
	}
}

func (b *builder) slabSize(s model.Slab) string {
	u, v := s.Box.U.Size(), s.Box.V.Size()
	size := b.Build.Show(u) + " x " + b.Build.Show(v) + " x " + b.Build.Show(s.Box.Z.Size())
	if !b.Build.Unit.Imperial() {
		return size
	}
	feet := float64(u.MM()*v.MM()) / (304.8 * 304.8)
	return size + ", " + strconv.FormatFloat(feet, 'f', 1, 64) + " sq ft"
}

// hundredths returns an area in square metres, rounded up to the next 0.01.
func hundredths(u, v model.Length) float64 {
	step := big.NewInt(1e16) // 0.01 m2 in nm2
	n := new(big.Int).Mul(big.NewInt(int64(u)), big.NewInt(int64(v)))
	n.Add(n, step).Sub(n, big.NewInt(1)).Quo(n, step)
	return float64(n.Int64()) / 100
}
