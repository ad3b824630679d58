package screws

import (
	"cmp"
	"math"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/length"
)

// lengthsFor are those of a screw of a diameter that serve all grips: from, and up
// to where the wood ends.
func lengthsFor(b *rule.Build, all []grip, diameter geom.Length) (from, to geom.Length) {
	to = math.MaxInt64
	for i := range all {
		g := &all[i]
		from = max(from, g.before()+needs(b, g, diameter))
		if g.holds.thick > 0 {
			to = min(to, g.before()+g.holds.thick-b.Length(b.Limits, "stand_off"))
		}
	}
	return from, to
}

// inStock is the screw with such a head that serves all grips and differs least from
// the one that is named, in diameter first; nil where the stock has none. It is no
// thinner where what it bears pulls it.
func inStock(b *rule.Build, all []grip, head string) (best *lang.Block) {
	var thicker, longer geom.Length // by how much the best differs
	for _, s := range b.Source.Top("screw") {
		thick, long := b.Length(s, "diameter"), b.Length(s, "length")
		from, to := lengthsFor(b, all, thick)
		if b.Text(s, "head") != head || long < from || long > to || all[0].pulled && thick < b.Length(all[0].screw, "diameter") {
			continue
		}
		d, l := length.Apart(thick, b.Length(all[0].screw, "diameter")), length.Apart(long, lengthOf(b, &all[0]))
		if best == nil || cmp.Or(cmp.Compare(d, thicker), cmp.Compare(l, longer)) < 0 {
			best, thicker, longer = s, d, l
		}
	}
	return best
}

// anotherLength is the mend of a screw that is too long or too short: one of the
// stock, or else how long it would have to be, in the steps that screws are sold in.
func anotherLength(b *rule.Build, all []grip) string {
	g := &all[0]
	if s := inStock(b, all, b.Text(g.screw, "head")); s != nil {
		return g.naming(s)
	}
	step := length.Millimetre
	if b.Source.Unit.Imperial() {
		step = length.Inch / 16
	}
	from, to := lengthsFor(b, all, b.Length(g.screw, "diameter"))
	from = (from + step - 1) / step * step
	switch {
	case to == math.MaxInt64:
		return "a screw of " + b.Show(from) + " or more"
	case from > to && g.pulled:
		return "more wood for it"
	case from > to:
		return "a thinner screw, or more wood for it"
	}
	return "a screw of " + b.Show(from) + " to " + b.Show(to/step*step)
}

// anotherHead is the mend of a head that will not do: the screw of the stock with the
// first of the heads that it has, or else words.
func anotherHead(b *rule.Build, all []grip, words string, heads ...string) string {
	for _, head := range heads {
		if s := inStock(b, all, head); s != nil {
			return all[0].naming(s)
		}
	}
	return words
}
