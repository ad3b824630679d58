package bill

import (
	"cmp"
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// pin is the kind of fitting of which some are spared.
const pin = "shelf pin"

// fittings adds a line for each fitting that the build takes, begun packs
// counted whole. Pins are lost as screws are, and as many are spared; of the
// rest, each is missed at once when it fails to arrive, and none is (common
// practice). Where the description names no fitting, a line per kind comes
// last, for somebody to choose.
func (b *builder) fittings() {
	stock := slices.Clone(b.Stock.Fittings)
	for _, f := range b.Fitted {
		name := cmp.Or(f.Fitting, f.Kind)
		if !slices.ContainsFunc(stock, func(s model.Fitting) bool { return s.Name == name }) {
			stock = append(stock, model.Fitting{Name: name, Text: name + ", to be chosen", PerPack: 1})
		}
	}
	for _, s := range stock {
		n := b.fitted(s.Name)
		if n.count == 0 {
			continue
		}
		line := model.BillLine{
			Section: "fittings", Item: s.Name, Text: s.Text, Use: n.use.String(),
			Quantity: float64(n.count + n.spare), Unit: "piece", Needed: n.words,
			Price: s.Price, Priced: s.Priced,
		}
		switch {
		case s.PerPack > 1:
			line.Unit, line.Quantity = "pack of "+strconv.Itoa(s.PerPack), float64(portions(n.count+n.spare, s.PerPack))
		case n.kind == "slides":
			line.Unit = "pair"
		}
		b.add(line)
	}
}

// need is how many of a fitting are used, by kind and use.
type need struct {
	count, spare int
	kind, words  string // "hinge", "8 hinges"
	use          list
}

// fitted gathers what is used of one fitting, or of one kind where none is
// named.
func (b *builder) fitted(name string) need {
	var n need
	uses, kinds := map[string]int{}, map[string]int{} // lookup only
	var useOrder, kindOrder list
	for _, f := range b.Fitted {
		if cmp.Or(f.Fitting, f.Kind) == name && f.Count > 0 {
			n.count += f.Count
			uses[f.Use] += f.Count
			kinds[f.Kind] += f.Count
			useOrder.add(f.Use)
			kindOrder.add(f.Kind)
		}
	}
	for _, u := range useOrder.texts {
		n.use.add(u + " " + strconv.Itoa(uses[u]))
	}
	for i, k := range kindOrder.texts {
		if i > 0 {
			n.words += ", "
		}
		n.kind = k
		n.words += countedKind(kinds[k], k)
	}
	if pins := kinds[pin]; pins > 0 {
		n.spare = withSpare(pins) - pins
		n.words += " and " + strconv.Itoa(n.spare) + " to spare"
	}
	return n
}

// countedKind counts a kind of fitting; slides come in pairs.
func countedKind(n int, kind string) string {
	if kind == "slides" {
		return finding.Counted(n, "pair") + " of slides"
	}
	return finding.Counted(n, kind)
}
