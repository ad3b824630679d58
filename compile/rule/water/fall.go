package water

import (
	"fmt"
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// leastSlope is the least fall of a pipe of a size in its length (IRC P3005.3: 1/4 in
// to the foot up to 2 1/2 in, 1/8 in over, rounded down to four places).
func leastSlope(b *rule.Build, size geom.Length) float64 {
	switch {
	case b.LimitsSay("drain_slope"):
		return min(1, b.Number(b.Limits, "drain_slope"))
	case size <= length.Inch*5/2:
		return 0.0208
	}
	return 0.0104
}

// trapArms are the longest ways from a trap of a size to its vent, in inches: IRC
// table P3105.1 and UPC table 1002.2.
var trapArms = []struct{ size, irc, upc geom.Length }{
	{length.Inch * 5 / 4, 60, 30},
	{length.Inch * 3 / 2, 72, 42},
	{length.Inch * 2, 96, 60},
	{length.Inch * 3, 144, 72},
}

// longestArm is how far a trap may be from its vent. A size between two of the
// table is held to the smaller one.
func longestArm(b *rule.Build, trap geom.Length) geom.Length {
	if b.LimitsSay("trap_arm") {
		return b.Length(b.Limits, "trap_arm")
	}
	row := trapArms[0]
	for _, r := range trapArms {
		if r.size <= trap {
			row = r
		}
	}
	if b.Text(b.Limits, "plumbing") == "upc" {
		return row.upc * length.Inch
	}
	return row.irc * length.Inch
}

// slopeWords are a fall as it is written, and as people say it.
func slopeWords(b *rule.Build, slope float64) string {
	per, of := length.Foot, "to the foot"
	if !b.Source.Unit.Imperial() {
		per, of = 1000*length.Millimetre, "to the metre"
	}
	return fmt.Sprintf("%s, %s %s", strconv.FormatFloat(slope, 'g', 4, 64), b.Show(geom.Length(math.Round(slope*float64(per)))), of)
}

func drainTooFlat(b *rule.Build) {
	if !limitsWater(b, "drain_slope") {
		return
	}
	for _, o := range outflowsOf(b) {
		least := leastSlope(b, o.Size)
		if o.slope >= least {
			continue
		}
		falls := "does not fall"
		if o.slope > 0 {
			falls = "falls by " + slopeWords(b, o.slope)
		}
		lack := geom.Length(math.Round((least - o.slope) * float64(o.Arm)))
		f := b.Findings.Warnf("drain-too-flat", o.block.Said("slope"), "slope = "+strconv.FormatFloat(least, 'g', -1, 64),
			"%s %s; a pipe of %s needs %s: %s too little over the %s from its trap to the wall.",
			finding.Capital(o.block.Describe()), falls, b.Show(o.Size), slopeWords(b, least), b.Show(nearMark(b, lack)), b.Show(nearMark(b, o.Arm)))
		b.LimitOf(f, "drain_slope")
	}
}

func trapArmFallsTooFar(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if o.Vent != "wall" || !plumbed(b) || o.Fall <= o.Size {
			continue
		}
		mend := "a sink nearer to the stub"
		if steepest := math.Floor(10000*float64(o.Size)/float64(o.Arm)) / 10000; steepest >= leastSlope(b, o.Size) {
			mend = "slope = " + strconv.FormatFloat(steepest, 'g', -1, 64)
		} else if armTooLong(b, &o) {
			continue // that is the cause
		}
		b.Findings.Warnf("trap-arm-falls-too-far", o.block.Said("slope"), mend,
			"From its trap to the wall at stub %q, over %s, %s falls %s. A trap arm may fall by its own size, %s: %s too far, and the trap is sucked empty.",
			o.stub.Name, b.Show(o.Arm), o.block.Describe(), b.Show(o.Fall), b.Show(o.Size), b.Show(o.Fall-o.Size)).
			Also(o.stub.Why.At, "it falls to here")
	}
}

// armTooLong reports whether the vent in the wall is too far from the trap.
func armTooLong(b *rule.Build, o *outflow) bool {
	return o.Vent == "wall" && limitsWater(b, "trap_arm") && o.Arm > longestArm(b, o.TrapSize)
}

func trapArmTooLong(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if !armTooLong(b, &o) {
			continue
		}
		longest := longestArm(b, o.TrapSize)
		f := b.Findings.Warnf("trap-arm-too-long", o.block.Said("vent", "to"), `a vent nearer to the trap: vent = "valve" or "island", where the place allows it`,
			"From its trap to the vent in the wall at stub %q, %s runs %s. %s allows %s with a trap of %s: %s too long.",
			o.stub.Name, o.block.Describe(), b.Show(o.Arm), finding.Capital(waterFrom(b, "trap_arm")), b.Show(longest), b.Show(o.TrapSize), b.Show(o.Arm-longest)).
			Also(o.stub.Why.At, "it runs to here")
		b.LimitOf(f, "trap_arm")
	}
}

func trapArmTooShort(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if o.Vent != "wall" || !plumbed(b) || o.Arm >= 2*o.Size {
			continue
		}
		b.Findings.Warnf("trap-arm-too-short", o.stubAt(), "the stub, or the sink, "+b.Show(2*o.Size-o.Arm)+" further away",
			"From its trap to the vent in the wall at stub %q, %s runs %s. A trap arm is twice its size long, %s, at least: %s too short.",
			o.stub.Name, o.block.Describe(), b.Show(o.Arm), b.Show(2*o.Size), b.Show(2*o.Size-o.Arm)).
			Also(o.block.Head, "it drains through this")
	}
}

func sinkWithoutVent(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if o.Vent != "" || !limitsWater(b, "trap_arm") {
			continue
		}
		longest, far := longestArm(b, o.TrapSize), "within"
		if o.Arm > longest {
			far = "over"
		}
		f := b.Findings.Warnf("sink-without-vent", o.block.Head, `vent = "wall" where a vent goes up in that wall, or "island" or "valve"`,
			"%s hangs in run %q, which stands out from its wall: nothing tells what lets air in behind its trap. To the wall at stub %q are %s, %s the %s that %s allows a trap of %s.",
			finding.Capital(o.from.block.Describe()), o.from.run.Name, o.stub.Name, b.Show(o.Arm), far, b.Show(longest), waterFrom(b, "trap_arm"), b.Show(o.TrapSize)).
			Also(o.from.block.Head, "the sink hangs here")
		b.LimitOf(f, "trap_arm")
	}
}
