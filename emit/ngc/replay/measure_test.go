package replay_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// workedExample is that of the project's G-code reference, section 8, and of its
// tool's self-test: a recess of 100 x 40 x 6.3 mm, a bit of 6 mm, three levels,
// rings 2.5 mm apart.
func workedExample() (*model.Program, []byte) {
	const half = 17.0
	var b strings.Builder
	b.WriteString("G17 G21 G40 G49 G54 G80 G90 G94\nT1\nS18000 M3\nG0 Z15.\nG0 X50. Y50.\nG0 Z2.\nG1 Z0. F800.\n")
	for _, z := range []string{"-2.1", "-4.2", "-6.3"} {
		fmt.Fprintf(&b, "G1 X110. Z%s F800.\nG1 X50. F2400.\n", z)
		for k := 0.0; k < half; {
			k = min(half, k+2.5)
			fmt.Fprintf(&b, "G1 X%.1f Y%.1f\nG1 X%.1f\nG1 Y%.1f\nG1 X%.1f\nG1 Y%.1f\n", 50-k, 50-k, 110+k, 50+k, 50-k, 50-k)
		}
		b.WriteString("G1 X50. Y50.\n")
	}
	b.WriteString("G0 Z15.\nM5\nM30\n")
	return &model.Program{
		Stock: geom.R(0, 0, 200*mm, 100*mm),
		Tool:  model.Tool{Diameter: 6 * mm, Rapid: 6000 * mm, Accelerate: 500, Dialect: model.Dialect{Decimals: 1}},
	}, []byte(b.String())
}

// TestMeasureWorkedExample has the reference's figures: 4694.36 mm at feed, 136.2 s
// where every move starts and ends at rest and 126.8 s without acceleration. The
// volume is (100·40 − (4 − π)·9)·6.3 mm³.
func TestMeasureWorkedExample(t *testing.T) {
	p, text := workedExample()
	got, err := replay.Measure(text, p)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cut", got.Cut, 4694.36, 0.005)
	near(t, "air", got.Air, 34.3, 1e-9)
	near(t, "seconds", got.Seconds, 136.2, 0.05)
	near(t, "removed", got.Removed, (100*40-(4-math.Pi)*9)*6.3, 0.5)

	p.Tool.Accelerate = 0
	if got, err = replay.Measure(text, p); err != nil {
		t.Fatal(err)
	}
	near(t, "seconds without acceleration", got.Seconds, 126.8, 0.05)
}

// TestMeasureSlowsInArcs: on a circle of 1 mm, with 500 mm/s², the bit goes at
// 22.4 mm/s at most (the same section). Half of it takes 3.14/22.36 + 22.36/500 s.
// A turn of a helix is as long as it is steep.
func TestMeasureSlowsInArcs(t *testing.T) {
	p, _ := workedExample()
	const head = "G17 G21 G40 G49 G54 G80 G90 G94\nT1\nS18000 M3\nG4 P3.\nG0 Z15.\nG0 X1. Y0.\n"
	for _, c := range []struct {
		arc          string
		cut, seconds float64
	}{
		{"G3 X-1. Y0. I-1. J0. F3000.\n", math.Pi, 3 + math.Pi/math.Sqrt(500) + math.Sqrt(500)/500},
		{"G3 X-1. Y0. Z12. I-1. J0. F300.\n", math.Hypot(math.Pi, 3), 3 + math.Hypot(math.Pi, 3)/5 + 5.0/500},
	} {
		got, err := replay.Measure([]byte(head+c.arc+"M5\nM30\n"), p)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.arc+"cut", got.Cut, c.cut, 1e-9)
		near(t, c.arc+"seconds", got.Seconds, c.seconds, 1e-9)
	}
}

// TestMeasureRouting: the panel's volumes are, by hand, those of two holes; of the groove
// up to the outline's cut, which takes the rest; of the cuts round the opening and the
// outline, 6 mm wide: 4 mm of them all round, and 2 mm down to the board's lower face
// without the tabs, whose ends are as round as the bit.
func TestMeasureRouting(t *testing.T) {
	got, err := replay.MeasureRouting([]byte(panelText()), panel())
	if err != nil {
		t.Fatal(err)
	}
	const (
		holes   = 9*math.Pi*5 + 16*math.Pi*4
		slot    = (27*6 + 9*math.Pi/2) * 3
		tabs    = 2 * (14*6 - 9*math.Pi)
		opening = 50*40 - (4-math.Pi)*9 - 38*28
		outline = 2*(120+80)*6 + 36*math.Pi
	)
	near(t, "removed", got.Removed, holes+slot+6*(opening+outline)-2*2*tabs, 3)
}

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if math.Abs(got-want) > by {
		t.Errorf("%s: %.4f, want %.4f", what, got, want)
	}
}
