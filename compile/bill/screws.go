package bill

import (
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// screws adds a line for each screw that is driven: the count and what is
// spared, begun boxes counted whole. A screw without a box is sold singly. A
// screw that the stock does not know comes last, by its name.
func (b *builder) screws() {
	stock := slices.Clone(b.Stock.Screws)
	for _, f := range b.Fastening {
		if !slices.ContainsFunc(stock, func(s model.Screw) bool { return s.Name == f.Screw }) {
			stock = append(stock, model.Screw{Name: f.Screw, Text: f.Screw})
		}
	}
	for _, s := range stock {
		driven, use := b.driven(s.Name)
		if driven == 0 {
			continue
		}
		all := withSpare(driven)
		line := model.BillLine{
			Section: "screws", Item: s.Name, Text: s.Text, Use: use, Unit: "piece", Quantity: float64(all),
			Needed: finding.Counted(driven, "screw") + " and " + strconv.Itoa(all-driven) + " to spare",
			Price:  s.Price, Priced: s.Priced,
		}
		if s.PerBox > 0 {
			line.Unit, line.Quantity = "box of "+strconv.Itoa(s.PerBox), float64(portions(all, s.PerBox))
		}
		b.add(line)
	}
}

func withSpare(n int) int { return n + portions(n*sparePercent, 100) }

// driven counts the screws of a name, and says how many go where.
func (b *builder) driven(screw string) (n int, use string) {
	var uses list
	counts := map[string]int{} // lookup only
	for _, f := range b.Fastening {
		if f.Screw == screw && f.Count > 0 {
			n += f.Count
			counts[f.Use] += f.Count
			uses.add(f.Use)
		}
	}
	for i, u := range uses.texts {
		uses.texts[i] = u + " " + strconv.Itoa(counts[u])
	}
	return n, uses.String()
}
