// Package cutting judges how routers are told to cut: what each tooth takes, how fast it
// turns, how deep and wide it bites and how it comes down (SPEC.md 11.12).
package cutting

import (
	"fmt"
	"strconv"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "chip-too-thin", Look: chipTooThin},
	{Slug: "chip-too-thick", Look: chipTooThick},
	{Slug: "spindle-speed", Look: spindleSpeed},
	{Slug: "bite-too-deep", Look: biteTooDeep},
	{Slug: "bite-too-wide", Look: biteTooWide},
	{Slug: "plunge-too-fast", Look: plungeTooFast},
	{Slug: "ramp-steep", Look: rampSteep},
	{Slug: "steel-lies-low", Look: steelLiesLow},
	{Slug: "steel-loose", Look: steelLoose},
}

// machine is a block router and what it says, defaults included.
type machine struct {
	block *lang.Block
	tool  model.Tool
}

func machines(b *rule.Build) (all []machine) {
	for _, block := range b.Source.Top("router") {
		all = append(all, machine{block, solve.Tool(b.Values, block)})
	}
	return all
}

// place is where the text says something of a router, or its head where it is left out.
func (r machine) place(name string) source.Range {
	return r.block.Said(name)
}

func spindleSpeed(b *rule.Build) {
	least, most := b.Count(b.Limits, "rpm_least"), b.Count(b.Limits, "rpm_most")
	for _, r := range machines(b) {
		wanted, limit := most, "rpm_most"
		if r.tool.RPM < least {
			wanted, limit = least, "rpm_least"
		}
		if r.tool.RPM < least || r.tool.RPM > most {
			f := b.Findings.Warnf("spindle-speed", r.place("rpm"), fmt.Sprintf("rpm = %d", wanted),
				"The bit turns %d times in a minute; %d to %d are common in wood.", r.tool.RPM, least, most)
			b.LimitOf(f, limit)
		}
	}
}

func biteTooDeep(b *rule.Build) {
	for _, r := range machines(b) {
		r.over(b, "bite-too-deep", "stepdown", r.tool.Stepdown, r.tool.Diameter, "bite_deep",
			"Each level is %s deep, and the bit %s wide: it takes %s at most.")
	}
}

func biteTooWide(b *rule.Build) {
	for _, r := range machines(b) {
		if r.tool.Stepover <= r.tool.Diameter { // beyond: step-over-too-wide
			r.over(b, "bite-too-wide", "stepover", r.tool.Stepover, r.tool.Diameter, "bite_wide",
				"Each pass lies %s beside the one before, and the bit is %s wide: it clears %s at most.")
		}
	}
}

func plungeTooFast(b *rule.Build) {
	for _, r := range machines(b) {
		r.over(b, "plunge-too-fast", "plunge", r.tool.Plunge, r.tool.Feed, "plunge_share",
			"The bit comes down at %s in a minute, and its feed is %s: %s is the most on the way down.")
	}
}

// over warns of a figure that is more than the share of another that a limit states. The
// text takes the figure, the other one, and the most.
func (r machine) over(b *rule.Build, slug, attr string, have, of length.Length, limit, text string) {
	most := length.Length(b.Number(b.Limits, limit) * float64(of))
	if have <= most {
		return
	}
	f := b.Findings.Warnf(slug, r.place(attr), passes(b, attr, most), text, b.Show(have), b.Show(of), b.Show(most))
	b.LimitOf(f, limit)
}

// passes is the mend of a figure that may be no more than that.
func passes(b *rule.Build, attr string, most length.Length) string {
	if most = length.Down(most, step(b)); most == 0 {
		return ""
	}
	return fmt.Sprintf("%s = %q", attr, b.Show(most))
}

// step is what figures of mends are multiples of: what a build in inches or millimetres
// would be told.
func step(b *rule.Build) length.Length {
	if b.Source.Unit.Imperial() {
		return length.Inch / 64
	}
	return length.Millimetre / 10
}

func rampSteep(b *rule.Build) {
	most := b.Number(b.Limits, "ramp_most")
	for _, r := range machines(b) {
		if have := r.tool.RampDegrees; have > most && have <= 30 { // above: ramp-too-steep
			f := b.Findings.Warnf("ramp-steep", r.place("ramp"), "ramp = "+degrees(most),
				"%s comes down at %s degrees; %s is the most that is common for a flat bit.", finding.Capital(r.block.Describe()), degrees(have), degrees(most))
			b.LimitOf(f, "ramp_most")
		}
	}
}

func degrees(a float64) string { return strconv.FormatFloat(a, 'f', -1, 64) }
