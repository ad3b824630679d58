package bill

import (
	"strconv"

	"barwright/compile/model"
	"barwright/lang/length"
)

// gauge is a wood screw of ASME B18.6.1 and the drills for it, from a shop
// chart of pilot holes. A chart that says nothing has 0.
type gauge struct {
	number             int
	diameter           length.Length
	softwood, hardwood length.Length // pilot
	clearance          length.Length
}

const sixtyFourth = length.Inch / 64

var gauges = [...]gauge{
	{6, 138 * length.Inch / 1000, 4 * sixtyFourth, 0, 9 * sixtyFourth},
	{8, 164 * length.Inch / 1000, 5 * sixtyFourth, 7 * sixtyFourth, 11 * sixtyFourth},
	{10, 190 * length.Inch / 1000, 6 * sixtyFourth, 8 * sixtyFourth, 12 * sixtyFourth},
}

// gaugeOf finds the gauge of a diameter, to within less than half the step
// from one gauge to the next, 0.013 in.
func gaugeOf(diameter length.Length) (gauge, bool) {
	const near = 6 * length.Inch / 1000
	for _, g := range gauges {
		if d := diameter - g.diameter; d <= near && d >= -near {
			return g, true
		}
	}
	return gauge{}, false
}

// drillBits adds the bits for the screws that are driven, once for all screws
// that take the same: by the chart in inches, and otherwise by the rule that
// the chart follows.
func (b *builder) drillBits() {
	var order list
	bits, screws := map[string]int{}, map[string]*list{} // by text
	for _, s := range b.Stock.Screws {
		if n, _ := b.driven(s.Name); n == 0 || s.Diameter <= 0 {
			continue
		}
		text, n := b.drills(s.Diameter)
		order.add(text)
		bits[text] = n
		if screws[text] == nil {
			screws[text] = new(list)
		}
		screws[text].add(s.Name)
	}
	for _, text := range order {
		b.add(model.BillLine{
			Section: "consumables", Item: "drill bits", Text: text, Use: "holes for " + screws[text].String(),
			Quantity: float64(bits[text]), Unit: "bit", Needed: "try them in scrap first",
		})
	}
}

// drills says which bits a screw needs, and how many they are.
func (b *builder) drills(d length.Length) (text string, bits int) {
	g, known := gaugeOf(d)
	if !known || !b.Build.Unit.Imperial() {
		return "drill bits for " + b.Build.Show(d) + " screws: pilot as thick as the screw's core in hardwood, " +
			"about 15 % thinner in softwood; clearance as thick as its shank", 3
	}
	show := func(l length.Length) string { return length.Show(l, length.Inches, sixtyFourth) }
	text = "drill bits for #" + strconv.Itoa(g.number) + " screws: pilot " + show(g.softwood) + " (softwood)"
	if g.hardwood == 0 {
		return text + "; clearance " + show(g.clearance), 2
	}
	return text + ", " + show(g.hardwood) + " (hardwood); clearance " + show(g.clearance), 3
}
