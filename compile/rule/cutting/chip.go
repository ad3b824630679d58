package cutting

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// chip is the thickness of what a tooth takes with a bit of a width: the common range.
type chip struct{ bit, least, most length.Length }

const (
	thou    = length.Inch / 1000
	eighth  = length.Inch / 8
	quarter = length.Inch / 4
	half    = length.Inch / 2
)

// light are the ranges of a light machine, whatever the wood: from memory.
var light = []chip{{eighth, 3 * thou, 5 * thou}, {quarter, 4 * thou, 8 * thou}, {half, 8 * thou, 12 * thou}}

// rigid are those of a rigid one, by wood; with a bit of 1/4 in they are published, and
// "about half" of them for 1/8 in.
var rigid = []struct {
	wood string
	of   []chip
}{
	{"softwood", []chip{{eighth, 5 * thou, 10 * thou}, {quarter, 10 * thou, 20 * thou}}},
	{"plywood", []chip{{eighth, 5 * thou, 9 * thou}, {quarter, 10 * thou, 18 * thou}}},
	{"hardwood", []chip{{eighth, 5 * thou / 2, 5 * thou}, {quarter, 5 * thou, 10 * thou}}},
	{"mdf", []chip{{eighth, 15 * thou / 2, 25 * thou / 2}, {quarter, 15 * thou, 25 * thou}}},
}

// common is the range of a tool, and where it holds, in words. Between the listed bits it
// is taken evenly. A wider bit takes more, and nobody says how much: its most is 0, for
// not known. Of a bit that is narrower than those nothing is known.
func common(t model.Tool) (c chip, where string) {
	list, where := light, "a light machine"
	if t.Machine == "rigid" {
		for _, r := range rigid {
			if r.wood == t.Wood {
				list, where = r.of, "a rigid machine in "+r.wood
			}
		}
	}
	switch last := list[len(list)-1]; {
	case t.Diameter < list[0].bit:
		return chip{}, where
	case t.Diameter > last.bit:
		return chip{t.Diameter, last.least, 0}, where
	}
	for i := 1; i < len(list); i++ {
		if a, z := list[i-1], list[i]; t.Diameter <= z.bit {
			on := func(a0, z0 length.Length) length.Length {
				return a0 + (z0-a0)*(t.Diameter-a.bit)/(z.bit-a.bit)
			}
			return chip{t.Diameter, on(a.least, z.least), on(a.most, z.most)}, where
		}
	}
	panic("no range between bits")
}

// asked is the range that holds for a router, the common one or what the limits state,
// and where each end of it holds, in words.
func asked(b *rule.Build, r machine) (c chip, least, most string) {
	c, where := common(r.tool)
	least, most = " on "+where, " on "+where
	if own := b.FieldLength(b.Limits, "chip_load", "least"); own > 0 {
		c.least, least = own, ", as the limits say"
	}
	if own := b.FieldLength(b.Limits, "chip_load", "most"); own > 0 {
		c.most, most = own, ", as the limits say"
	}
	return c, least, most
}

func (r machine) teeth() length.Length { return length.Length(r.tool.RPM * r.tool.Flutes) }

func chipTooThin(b *rule.Build) {
	for _, r := range machines(b) {
		c, where, _ := asked(b, r)
		if r.tool.Feed >= c.least*r.teeth() {
			continue
		}
		var mends []string
		if faster := length.Up(c.least*r.teeth(), wholeFeed(b)); faster <= router.FastestFeed {
			mends = append(mends, feed(b, faster))
		}
		slower := int(r.tool.Feed/c.least) / r.tool.Flutes / 100 * 100
		if slower >= b.Count(b.Limits, "rpm_least") {
			mends = append(mends, fmt.Sprintf("rpm = %d", slower))
		}
		f := b.Findings.Warnf("chip-too-thin", r.place("feed"), strings.Join(mends, ", or "),
			"%s A bit of %s takes %s at least%s; thinner, it rubs and burns the wood.", r.bites(b), b.Show(r.tool.Diameter), showChip(b, c.least), where)
		r.chipFrom(b, f)
	}
}

func chipTooThick(b *rule.Build) {
	for _, r := range machines(b) {
		c, _, where := asked(b, r)
		if c.most == 0 || r.tool.Feed <= c.most*r.teeth() {
			continue
		}
		f := b.Findings.Warnf("chip-too-thick", r.place("feed"), feed(b, length.Down(c.most*r.teeth(), wholeFeed(b))),
			"%s A bit of %s takes %s at most%s; more breaks the bit or tears the wood.", r.bites(b), b.Show(r.tool.Diameter), showChip(b, c.most), where)
		r.chipFrom(b, f)
	}
}

// bites says what each tooth takes.
func (r machine) bites(b *rule.Build) string {
	t := r.tool
	return fmt.Sprintf("Each tooth takes %s: %s in a minute, %d turns, %s.",
		showChip(b, t.Feed/r.teeth()), b.Show(t.Feed), t.RPM, finding.Counted(t.Flutes, "flute"))
}

// chipFrom shows what else the thickness of chips follows from.
func (r machine) chipFrom(b *rule.Build, f *finding.Finding) {
	if a := r.block.Attr("rpm"); a != nil {
		f.Also(a.Expr.At, "the turns")
	}
	b.LimitOf(f, "chip_load")
}

func feed(b *rule.Build, l length.Length) string { return fmt.Sprintf("feed = %q", b.Show(l)) }

// wholeFeed is what a feed is rounded to.
func wholeFeed(b *rule.Build) length.Length {
	if b.Source.Unit.Imperial() {
		return length.Inch
	}
	return 10 * length.Millimetre
}

// showChip prints what a tooth takes: hundredths of a thousandth of an inch, or tenths of a micrometre.
func showChip(b *rule.Build, l length.Length) string {
	if b.Source.Unit.Imperial() {
		return l.Decimal(length.Inches, 5) + " in"
	}
	return l.Decimal(length.Millimetres, 4) + " mm"
}
