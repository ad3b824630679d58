package seats

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/compile/rule/ruletest"
	"barwright/lang/length"
)

// The published worked example: a bar of 96 in seats floor(96/24) = 4 (planning
// guideline 9, trade-facts 3 and example 34).
func TestSeatsOfABar(t *testing.T) {
	for n := 1; n <= 6; n++ {
		// 96 - (108 - 7/32) in: the top ends before the run does.
		found := ruletest.Judged(t, []rule.Rule{{Look: seatsTooNarrow}}, ruletest.Example(t, "boatshed",
			`width = 27
    doors = 2`, `width = "13 7/32in"
    doors = 2`, "right = 2 }", fmt.Sprintf("right = 2 }\n  seats = %d", n)))
		if got, want := len(found) == 0, n <= 4; got != want {
			t.Errorf("%d at 96 in: %v", n, found)
		}
	}
}

// Depths at the three published heights (planning guideline 9, trade-facts 3), and
// between them half an inch less for each inch of height.
func TestKneeDepth(t *testing.T) {
	depth := func(height float64) float64 {
		in := func(x float64) geom.Length { return geom.Length(math.Round(x * float64(length.Inch))) }
		return float64(kneeDepthAt(in(height), in(18), in(15), in(12))) / float64(length.Inch)
	}
	for height, want := range map[float64]float64{28: 18, 30: 18, 36: 15, 42: 12, 46: 12} {
		if got := depth(height); got != want {
			t.Errorf("at %v in: %v in, want %v", height, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(30, 42).Draw(t, "height")
		if got, want := depth(h), 18-(h-30)/2; math.Abs(got-want) > 1e-6 {
			t.Errorf("at %v in: %v in, want %v", h, got, want)
		}
	})
}

// nearest against points taken all along the outline.
func TestNearestBehind(t *testing.T) {
	const mm = length.Millimetre
	rapid.Check(t, func(t *rapid.T) {
		coord := rapid.Int64Range(-4000, 4000)
		at := func(name string) geom.Point {
			return geom.Point{X: geom.Length(coord.Draw(t, name)) * mm, Y: geom.Length(coord.Draw(t, name)) * mm}
		}
		frame := geom.Frame{Origin: at("origin"), Turn: geom.Angle(rapid.IntRange(0, 359).Draw(t, "turn")) * geom.Degree}
		outline := []geom.Point{at("a"), at("b"), at("c")}
		along := geom.Span{Hi: geom.Length(rapid.IntRange(300, 3000).Draw(t, "long")) * mm}
		v, ok := nearest(outline, frame, along)
		best, found := math.Inf(-1), false
		const steps = 20000
		for i, p := range outline {
			au, av := frame.Local(p)
			bu, bv := frame.Local(outline[(i+1)%3])
			for k := range steps + 1 {
				share := float64(k) / steps
				u := float64(au) + share*float64(bu-au)
				if u >= float64(along.Lo+pastEnd) && u <= float64(along.Hi-pastEnd) {
					best, found = max(best, float64(av)+share*float64(bv-av)), true
				}
			}
		}
		if found && !ok {
			t.Fatalf("nothing is found, but points lie behind")
		}
		// A step is at most 11.4 m / 20000; along a steep line so much of v too.
		if found && (float64(v) < best-2 || float64(v) > best+float64(mm)) {
			t.Fatalf("%v, by points %v", v, best)
		}
	})
}
