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

// unit is how a figure is shown: in a customary unit where the build's people reckon
// in inches, else in one of SI, each by its size.
type unit struct {
	customary float64
	word      string
	si        float64
	siWord    string
}

var (
	force    = unit{poundForce, "lb", 1, "N"}
	stress   = unit{psi, "psi", 1, "MPa"}
	pressure = unit{psf, "psf", 1, "Pa"}
	moment   = unit{poundFoot, "ft-lb", newtonM, "Nm"}
)

func (u unit) of(b *rule.Build, x float64) (float64, string) {
	if b.Source.Unit.Imperial() {
		return x / u.customary, u.word
	}
	return x / u.si, u.siWord
}

// show shows a figure whole from 100 on and with a decimal below; to its first digit
// where that would be 0.
func (u unit) show(b *rule.Build, x float64) string {
	x, word := u.of(b, x)
	decimals := 1
	if math.Abs(x) >= 100 {
		decimals = 0
	}
	if text := rounded(x, decimals); text != "0" || x == 0 {
		return text + " " + word
	}
	return strconv.FormatFloat(x, 'g', 1, 64) + " " + word
}

// both shows two figures of which one is more, with as many decimals as tell that.
func (u unit) both(b *rule.Build, x, y float64) (string, string) {
	one, other := u.show(b, x), u.show(b, y)
	for decimals := 1; one == other && decimals <= 3; decimals++ {
		fx, word := u.of(b, x)
		fy, _ := u.of(b, y)
		one, other = rounded(fx, decimals)+" "+word, rounded(fy, decimals)+" "+word
	}
	return one, other
}

func rounded(x float64, decimals int) string {
	by := math.Pow10(decimals)
	return strconv.FormatFloat(math.Round(x*by)/by, 'f', -1, 64)
}

// ofMM is a figure in millimetres as a length, at most what a length can be.
func ofMM(mm float64) geom.Length {
	return geom.Length(math.Round(min(mm, mostMM) * float64(length.Millimetre)))
}
