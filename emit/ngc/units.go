package ngc

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Length is the measure of the model.
type Length = length.Length

// units is how a dialect writes lengths: in whole steps of its last decimal.
type units struct {
	code, short string
	unit        length.Unit
	size        Length // of one unit
	decimals    int
	perUnit     Length  // steps
	arcSlack    float64 // how much the two radii of an arc may differ, in units
}

// The slack is that of NISTIR 6556 for arcs in centre format.
func unitsOf(d model.Dialect) units {
	u := units{code: "G21", unit: length.Millimetres, decimals: d.Decimals, perUnit: 1, arcSlack: 0.002}
	if d.Inch {
		u.code, u.unit, u.arcSlack = "G20", length.Inches, 0.0002
	}
	u.short, u.size = u.unit.String(), u.unit.Size()
	for range u.decimals {
		u.perUnit *= 10
	}
	return u
}

// steps rounds a length to the last decimal, halves away from zero.
func (u units) steps(l Length) Length {
	twice := 2 * l * u.perUnit
	if l < 0 {
		return (twice - u.size) / (2 * u.size)
	}
	return (twice + u.size) / (2 * u.size)
}

// text writes steps as a number that always has a decimal point, as some
// controls take a number without one for a count of smallest units.
func (u units) text(steps Length) string {
	sign := ""
	if steps < 0 {
		sign, steps = "-", -steps
	}
	whole, part := steps/u.perUnit, steps%u.perUnit
	digits := strconv.FormatInt(int64(part+u.perUnit), 10)[1:]
	return sign + strconv.FormatInt(int64(whole), 10) + "." + strings.TrimRight(digits, "0")
}

// step is the last decimal in nanometres.
func (u units) step() float64 { return float64(u.size) / float64(u.perUnit) }

// number writes a length for people, in the dialect's unit and decimals.
func (u units) number(l Length) string { return l.Decimal(u.unit, u.decimals) }

// exact writes a length for people, with its unit.
func (u units) exact(l Length) string { return u.number(l) + " " + u.short }

func (u units) span(s geom.Span) string { return u.number(s.Lo) + " to " + u.number(s.Hi) }

// rate writes a feed, as the F word does.
func (u units) rate(perMinute Length) string { return perMinute.Decimal(u.unit, rateDecimals) }

// of returns millimetres in the dialect's unit.
func (u units) of(mm float64) float64 { return mm * 1e6 / float64(u.size) }

// volume writes mm³ as cubic inches or, in metric dialects, as cm³.
func (u units) volume(mm3 float64) string {
	if u.unit.Imperial() {
		return fmt.Sprintf("%.2f cubic in", u.of(u.of(u.of(mm3))))
	}
	return fmt.Sprintf("%.1f cubic cm", mm3/1000)
}
