package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

var billColumns = []markup.Column{markup.Words("what"), markup.Words("for"), markup.Figures("quantity"), markup.Words("used"),
	markup.Figures("weight, kg"), markup.Figures("each"), markup.Figures("cost")}

// noPrice stands where a price is not given.
const noPrice = "no price"

func (p writer) bill() {
	p.section("bill")
	if len(p.m.Bill) == 0 {
		p.none("Nothing to buy.")
		p.End()
		return
	}
	p.Table("What to buy", billColumns)
	section := ""
	weight, unweighed := 0.0, 0
	for i := range p.m.Bill {
		l := &p.m.Bill[i]
		if l.Section != section {
			section = l.Section
			p.group(i)
		}
		each, cost := "", noPrice
		if l.Priced {
			each, cost = Money(l.Price), Money(l.Cost())
		}
		if l.WeightKg == 0 {
			unweighed++
		}
		weight += l.WeightKg
		p.Start("tr", "role", "row", "data-stock", l.Item)
		p.Cells(billColumns, cmp.Or(l.Text, l.Item), l.Use, Pieces(l.Quantity, l.Unit), l.Needed, kilograms(l.WeightKg), each, cost)
		p.End()
	}
	cost, unpriced := model.Total(p.m.Bill)
	p.Start("tr", "role", "row", "class", "sum")
	p.Cells(billColumns, "together", remarks(unweighed, unpriced), "", p.pounds(weight), kilograms(weight), "", Money(cost))
	p.End()
	p.EndTable()
	p.slabs()
	p.End()
}

// group heads the lines of a section, the first of which is told, with what they come to.
func (p writer) group(first int) {
	lines := p.m.Bill[first:]
	if n := slices.IndexFunc(lines, func(l model.BillLine) bool { return l.Section != lines[0].Section }); n >= 0 {
		lines = lines[:n]
	}
	weight := 0.0
	for _, l := range lines {
		weight += l.WeightKg
	}
	cost, unpriced := model.Total(lines)
	money := noPrice
	if unpriced < len(lines) {
		money = Money(cost)
	}
	p.Start("tr", "role", "row", "class", "group")
	heading := lines[0].Section
	if unpriced > 0 && unpriced < len(lines) {
		heading += ": " + remarks(0, unpriced)
	}
	p.El("th", heading, "role", "rowheader", "scope", "rowgroup", "colspan", "4")
	p.Cells(billColumns[4:], kilograms(weight), "", money)
	p.End()
}

// remarks says what a sum leaves out.
func remarks(unweighed, unpriced int) string {
	var out []string
	if unpriced > 0 {
		out = append(out, finding.Counted(unpriced, "line")+" without a price")
	}
	if unweighed > 0 {
		out = append(out, finding.Counted(unweighed, "line")+" without a weight")
	}
	return strings.Join(out, ", ")
}

var slabColumns = []markup.Column{markup.Words("slab"), markup.Figures("size"), markup.Figures("thick"), markup.Figures("weight, kg")}

// pounds writes a weight in pounds where the build is in inches.
func (p writer) pounds(kg float64) string {
	if kg == 0 || !p.m.Build.Unit.Imperial() {
		return ""
	}
	return model.Pounds(kg)
}

func (p writer) slabs() {
	if len(p.m.Slabs) == 0 {
		return
	}
	p.Table("Slabs, each as it lies", slabColumns)
	for _, s := range p.m.Slabs {
		b := s.Box
		p.Row(slabColumns, s.Words(), p.size(b.U.Size(), b.V.Size()), p.num(b.Z.Size()), p.weight(s.WeightKg))
	}
	p.EndTable()
}

// Money writes a price.
func Money(x float64) string { return strconv.FormatFloat(x, 'f', 2, 64) }

// kilograms writes a weight, nothing where it is not known.
func kilograms(x float64) string {
	if x == 0 {
		return ""
	}
	return strconv.FormatFloat(x, 'f', 1, 64)
}

// Pieces writes a quantity and its unit, as "2 boxes of 100"; measures have no
// plural. Nothing stands for a quantity that is not known.
func Pieces(x float64, unit string) string {
	if x == 0 {
		return ""
	}
	noun, size, portions := strings.Cut(unit, " of ")
	switch {
	case x == 1 || slices.Contains([]string{"", "m2", "sq ft", "ft", "m"}, unit):
	case strings.HasSuffix(noun, "x"):
		noun += "es"
	default:
		noun += "s"
	}
	if portions {
		noun += " of " + size
	}
	return model.Thousandths(x) + " " + noun
}
