package bill

import (
	"strconv"

	"barwright/compile/model"
	"barwright/lang/finding"
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

// drilling is what the screws of one size need drilled.
type drilling struct {
	diameter    length.Length // of the thickest
	wood, steel int           // holes to pass through either
	screws      list
	through     list // those of them that pass through steel
}

// drillings groups the screws that are driven by how their size is called.
func (b *builder) drillings() (order list, of map[string]*drilling) {
	of = map[string]*drilling{} // lookup only
	for _, s := range b.Stock.Screws {
		if n, _ := b.driven(s.Name); n == 0 || s.Diameter <= 0 {
			continue
		}
		size := b.screwSize(s.Diameter)
		order.add(size)
		if of[size] == nil {
			of[size] = new(drilling)
		}
		d := of[size]
		d.diameter = max(d.diameter, s.Diameter)
		d.screws.add(s.Name)
		for _, f := range b.Fastening {
			switch {
			case f.Screw != s.Name || f.Count <= 0:
			case f.Steel:
				d.steel += f.Count
				d.through.add(s.Name)
			default:
				d.wood += f.Count
			}
		}
	}
	return order, of
}

// screwSize names a size as its drills are looked for.
func (b *builder) screwSize(d length.Length) string {
	if g, known := gaugeOf(d); known && b.Build.Unit.Imperial() {
		return "#" + strconv.Itoa(g.number)
	}
	return b.Build.Plain(d)
}

// drillBits adds the bits for the screws that are driven, once for each size: by
// the chart in inches, and otherwise by the rule that the chart follows. Screws
// that pass through steel have a pilot in the wood behind it, and their clearance
// in the steel.
func (b *builder) drillBits() {
	order, of := b.drillings()
	for _, size := range order.texts {
		text, bits := b.woodDrills(size, of[size])
		b.add(model.BillLine{
			Section: "consumables", Item: "drill bits", Text: text, Use: "holes for " + of[size].screws.String(),
			Quantity: float64(bits), Unit: "bit", Needed: "try them in scrap first",
		})
	}
	holes := 0
	var screws list
	for _, size := range order.texts {
		d := of[size]
		if d.steel == 0 {
			continue
		}
		holes += d.steel
		for _, name := range d.through.texts {
			screws.add(name)
		}
		drill, more := b.steelDrill(d.diameter)
		b.add(model.BillLine{
			Section: "consumables", Item: "drill bit for steel", Text: "twist drill for metal, " + drill,
			Use: "holes in steel for " + d.through.String(), Quantity: 1, Unit: "bit",
			Needed: finding.Counted(d.steel, "hole") + ", about " + more + " wider than the thread of " + b.Build.Plain(d.diameter) +
				"; measure a screw first; clamp the steel and protect the eyes",
		})
	}
	if holes > 0 {
		b.steelFinish(holes, screws)
	}
}

// woodDrills says which bits the screws of a size need, and how many they are.
func (b *builder) woodDrills(size string, d *drilling) (text string, bits int) {
	text = "drill bits for " + size + " screws: pilot "
	clearance := "about as thick as their shank"
	if g, known := gaugeOf(d.diameter); known && b.Build.Unit.Imperial() {
		show := func(l length.Length) string { return length.Show(l, length.Inches, sixtyFourth) }
		clearance = show(g.clearance)
		text, bits = text+show(g.softwood)+" (softwood)", 1
		if g.hardwood > 0 {
			text, bits = text+", "+show(g.hardwood)+" (hardwood)", 2
		}
	} else {
		text, bits = text+"as thick as their core in hardwood, about 15 % thinner in softwood", 2
	}
	switch {
	case d.wood == 0:
		return text, bits
	case d.steel > 0:
		clearance += " (in wood only)"
	}
	return text + "; clearance " + clearance, bits + 1
}

// steelDrill returns the drill for a clearance hole in steel, and how much wider
// than the thread that is at least: a 64th of an inch, the next one begun, or
// 0.5 mm, the next tenth begun (common practice; near the medium fit of ISO 273,
// which has 4.5 for 4 mm and 5.5 for 5 mm, from memory).
func (b *builder) steelDrill(d length.Length) (drill, more string) {
	if b.Build.Unit.Imperial() {
		return length.Show(length.Up(d+sixtyFourth, sixtyFourth), length.Inches, sixtyFourth), "1/64 in"
	}
	return b.Build.Plain(length.Up(d+length.Millimetre/2, length.Millimetre/10)), "0.5 mm"
}

// steelFinish adds what else holes in steel ask for. The angles of heads are
// those in common use (from memory).
func (b *builder) steelFinish(holes int, screws list) {
	b.add(model.BillLine{
		Section: "consumables", Item: "countersink", Text: "countersink for metal, to the angle of the heads",
		Use: "heads flush with the steel, " + screws.String(), Quantity: 1, Unit: "piece",
		Needed: "for flat heads only: commonly 82 degrees on inch screws, 90 on metric ones; try it with one screw",
	})
	b.add(model.BillLine{
		Section: "consumables", Item: "cutting oil", Text: "cutting oil, a small can",
		Use: "drilling steel", Quantity: 1, Unit: "can", Needed: "some on each of " + finding.Counted(holes, "hole"),
	})
}
