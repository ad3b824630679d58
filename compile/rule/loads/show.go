package loads

import (
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// One of each in SI: a pound of force is that of 0.45359237 kg.
const (
	poundForce = 0.45359237 * gravity                    // N
	psi        = poundForce / (25.4 * 25.4)              // MPa
	psf        = poundForce / (0.3048 * 0.3048)          // Pa
	poundFoot  = poundForce * 304.8                      // N mm
	newtonM    = 1000                                    // N mm
	mostMM     = float64(length.Max / length.Millimetre) // that any length shows
)

// showForce shows newtons as the build's people reckon.
func showForce(b *rule.Build, n float64) string { return showIn(b, n, poundForce, "lb", 1, "N") }

// showStress shows MPa.
func showStress(b *rule.Build, mpa float64) string { return showIn(b, mpa, psi, "psi", 1, "MPa") }

// showPressure shows what is spread, in Pa.
func showPressure(b *rule.Build, pa float64) string { return showIn(b, pa, psf, "psf", 1, "Pa") }

// showMoment shows a moment, in N mm.
func showMoment(b *rule.Build, nmm float64) string {
	return showIn(b, nmm, poundFoot, "ft-lb", newtonM, "Nm")
}

// showIn shows a figure in one of two units, whole from 100 on and with a
// decimal below; to its first digit where that would be 0.
func showIn(b *rule.Build, x, customary float64, customaryUnit string, si float64, siUnit string) string {
	of, unit := si, siUnit
	if b.Source.Unit.Imperial() {
		of, unit = customary, customaryUnit
	}
	x /= of
	round := 10.0
	if math.Abs(x) >= 100 {
		round = 1
	}
	if near := math.Round(x*round) / round; near != 0 || x == 0 {
		return strconv.FormatFloat(near, 'f', -1, 64) + " " + unit
	}
	return strconv.FormatFloat(x, 'g', 1, 64) + " " + unit
}

// ofMM is a figure in millimetres as a length, at most what a length can be.
func ofMM(mm float64) geom.Length {
	return geom.Length(math.Round(min(mm, mostMM) * float64(length.Millimetre)))
}
