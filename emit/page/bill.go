package page

import (
	"strconv"
	"strings"

	"barwright/compile/model"
)

var billColumns = []column{{"what", false}, {"for", false}, {"quantity", true}, {"used", false},
	{"weight, kg", true}, {"each", true}, {"cost", true}}

func (p writer) bill() {
	p.section("bill")
	if len(p.m.Bill) == 0 {
		p.none("Nothing to buy.")
		p.end()
		return
	}
	p.table("What to buy", billColumns)
	section := ""
	weight, unweighed := 0.0, 0
	for i := range p.m.Bill {
		l := &p.m.Bill[i]
		if l.Section != section {
			section = l.Section
			p.start("tr", "role", "row", "class", "group")
			p.el("th", section, "role", "rowheader", "scope", "rowgroup", "colspan", strconv.Itoa(len(billColumns)))
			p.end()
		}
		each, cost := "", ""
		if l.Priced {
			each, cost = money(l.Price), money(l.Cost())
		}
		what := l.Text
		if what == "" {
			what = l.Item
		}
		if l.WeightKg == 0 {
			unweighed++
		}
		weight += l.WeightKg
		p.row(billColumns, what, l.Use, pieces(l.Quantity, l.Unit), l.Needed, kilograms(l.WeightKg), each, cost)
	}
	cost, unpriced := model.Total(p.m.Bill)
	p.start("tr", "role", "row", "class", "sum")
	p.cells(billColumns, "together", remarks(unweighed, unpriced), "", "", kilograms(weight), "", money(cost))
	p.end()
	p.endTable()
	p.slabs()
	p.end()
}

// remarks says what a sum leaves out.
func remarks(unweighed, unpriced int) string {
	var out []string
	if unpriced > 0 {
		out = append(out, count(unpriced, "line")+" without a price")
	}
	if unweighed > 0 {
		out = append(out, count(unweighed, "line")+" without a weight")
	}
	return strings.Join(out, ", ")
}

var slabColumns = []column{{"slab", false}, {"size", true}, {"thick", true}, {"weight, kg", true}}

func (p writer) slabs() {
	if len(p.m.Slabs) == 0 {
		return
	}
	p.table("Slabs, each as it lies", slabColumns)
	for _, s := range p.m.Slabs {
		b := s.Box
		p.row(slabColumns, strings.ReplaceAll(s.Kind, "_", " ")+" "+s.Name,
			p.size(b.U.Size(), b.V.Size()), p.num(b.Z.Size()), kilograms(s.WeightKg))
	}
	p.endTable()
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

func money(x float64) string { return strconv.FormatFloat(x, 'f', 2, 64) }

// kilograms writes a weight, nothing where it is not known.
func kilograms(x float64) string {
	if x == 0 {
		return ""
	}
	return strconv.FormatFloat(x, 'f', 1, 64)
}

// pieces writes a quantity and its unit, which has no plural where it ends in
// a digit, as m2 does. Nothing stands for a quantity that is not known.
func pieces(x float64, unit string) string {
	switch {
	case x == 0:
		return ""
	case x == 1 || unit == "" || '0' <= unit[len(unit)-1] && unit[len(unit)-1] <= '9':
	case strings.HasSuffix(unit, "x"):
		unit += "es"
	default:
		unit += "s"
	}
	return amount(x) + " " + unit
}

// amount writes a quantity with as many of three decimals as it needs.
func amount(x float64) string {
	text := strconv.FormatFloat(x, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}
