package screws

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
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
		if g.holds == aStud {
			to = min(to, g.before()+b.Length(b.Limits, "stud_depth"))
		}
	}
	return from, to
}

// naming is how the text would name a screw for a grip. What else a back says stays.
func naming(b *rule.Build, g *grip, s *lang.Block) string {
	if g.box == nil {
		return g.attr + " = " + s.Key()
	}
	back, fields := b.Value(g.box, "back"), []string(nil)
	for i, name := range back.Keys {
		at := back.Items[i].At
		if isDefault := at.IsZero() || at == g.box.Attr("back").Expr.At; name != "screws" && !isDefault {
			fields = append(fields, name+" = "+written(b, at))
		}
	}
	return "back = { " + strings.Join(append(fields, "screws = "+s.Key()), ", ") + " }"
}

// written is the text of a range; empty where nothing is written.
func written(b *rule.Build, at source.Range) string {
	if text := b.Source.Files.Text(at.File); text != nil {
		return string(text[at.Start.Byte:at.End.Byte])
	}
	return ""
}

// inStock is the screw with one of some heads that serves all grips and differs least
// from the one that is named, in diameter first; nil where the stock has none. It is no
// thinner where what it bears pulls it.
func inStock(b *rule.Build, all []grip, heads ...string) (best *lang.Block) {
	var thicker, longer geom.Length // by how much the best differs
	for _, s := range b.Source.Top("screw") {
		thick, long := b.Length(s, "diameter"), b.Length(s, "length")
		from, to := lengthsFor(b, all, thick)
		if !slices.Contains(heads, b.Text(s, "head")) || long < from || long > to || all[0].pulled && thick < b.Length(all[0].screw, "diameter") {
			continue
		}
		d, l := length.Apart(thick, b.Length(all[0].screw, "diameter")), length.Apart(long, lengthOf(b, &all[0]))
		if best == nil || cmp.Or(cmp.Compare(d, thicker), cmp.Compare(l, longer)) < 0 {
			best, thicker, longer = s, d, l
		}
	}
	return best
}

// otherHeads are the heads that do in all grips, where boards hold one another: what holds
// to a wall or a floor keeps the head that it has.
func otherHeads(b *rule.Build, all []grip) (heads []string) {
	if all[0].bite != "box" {
		return nil
	}
	for _, head := range []string{"flat", "trim", "wide"} {
		unfit := func(g grip) bool {
			if head == "wide" {
				return g.seen || g.meets != ""
			}
			shows := head == "flat" && g.attr == "joint_screws" && g.seen
			return shows || g.passes[0].kind == "panel" && underHead(&g) < b.FieldLength(b.Limits, "under_head", head)
		}
		if !slices.ContainsFunc(all, unfit) {
			heads = append(heads, head)
		}
	}
	return heads
}

// anotherLength is the mend of a screw that is too long or too short: one of the
// stock, with such a head before one with another, or else how long it would have to be, in
// the steps that screws are sold in. Where none is sold so long, what else would do.
func anotherLength(b *rule.Build, all []grip) string {
	g := &all[0]
	s := inStock(b, all, b.Text(g.screw, "head"))
	if s == nil {
		s = inStock(b, all, otherHeads(b, all)...)
	}
	if s != nil {
		return naming(b, g, s) + packed(b, all)
	}
	step := 5 * length.Millimetre
	if b.Source.Unit.Imperial() {
		step = length.Inch / 4
	}
	from, to := lengthsFor(b, all, b.Length(g.screw, "diameter"))
	from = length.Up(from, step)
	switch {
	case to == math.MaxInt64:
		return "a screw of " + b.Show(from) + " or more" + packed(b, all)
	case from > to && g.pulled:
		return "more wood for it"
	case from > to:
		return noneSold(b, all, length.Down(to, step))
	case from == length.Down(to, step):
		return "a screw of " + b.Show(from) + packed(b, all)
	}
	return "a screw of " + b.Show(from) + " to " + b.Show(length.Down(to, step)) + packed(b, all)
}

// noneSold is the mend where no screw of the diameter serves: a thinner one of a length that
// does not come too far, where one of some 3 mm or #4 at least can hold.
func noneSold(b *rule.Build, all []grip, long geom.Length) string {
	thick := geom.Length(math.MaxInt64)
	for i := range all {
		g := &all[i]
		switch left := long - g.before(); {
		case g.bite != "plug":
			thick = min(thick, geom.Length(float64(max(left, 0))/diameters(b, g)))
		case left < needs(b, g, 0):
			thick = 0
		}
	}
	if thick < 112*length.Inch/1000 {
		return "thicker boards, or another joint"
	}
	return "a screw of " + b.Show(long) + " that is " + b.Show(length.Down(thick, length.Inch/1000)) + " thick or less, or thicker boards"
}

// packed asks for wood where a screw to a wall would hang in the air behind a box, by
// more than a shim; common practice.
func packed(b *rule.Build, all []grip) string {
	var wide geom.Length
	for i := range all {
		for _, l := range all[i].passes {
			if l.kind == "air" && all[i].bite == "structure" {
				wide = max(wide, l.thick)
			}
		}
	}
	if wide <= 3*length.Millimetre {
		return ""
	}
	return "; and pack the gap solid round each, " + b.Show(wide) + " thick"
}

// anotherHead is the mend of a head that will not do: the screw of the stock with the
// first of the heads that it has, or else words.
func anotherHead(b *rule.Build, all []grip, words string, heads ...string) string {
	for _, head := range heads {
		if s := inStock(b, all, head); s != nil {
			return naming(b, &all[0], s)
		}
	}
	return words
}
