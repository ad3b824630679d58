package loads

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	inchMM = 25.4              // mm
	lbIn   = poundForce * 25.4 // N mm
)

// fourDigits wants a figure as a worked example prints it: four digits.
func fourDigits(t *testing.T, what string, have, want float64) {
	t.Helper()
	four := func(x float64) string { return strconv.FormatFloat(x, 'e', 3, 64) }
	if four(have) != four(want) {
		t.Errorf("%s is %v, want %v", what, have, want)
	}
}

// TestBeamExamples holds the cantilever to worked examples of beam formulas that
// handbooks print: P L^3 / 3EI and w L^4 / 8EI, W = b t^2 / 6, recomputed by hand.
// 29e6 psi is the E of AISC 360.
func TestBeamExamples(t *testing.T) {
	bar := cantilever{reach: 10 * inchMM, edge: 10 * inchMM, width: 2.5 * inchMM, thick: inchMM / 2, modulus: 29e6 * psi}
	tip := load{point: 200 * poundForce}
	fourDigits(t, "M of 200 lb at 10 in, lb-in", bar.moment(tip, 0)/lbIn, 2000)
	fourDigits(t, "its stress, psi", bar.stress(tip, 0, 0)/psi, 19200)
	fourDigits(t, "its deflection, in", bar.sag(tip)/inchMM, 0.08828)
	granite := load{spread: 2.765 * poundForce / inchMM} // 16.59 psf on 24 in
	fourDigits(t, "M of granite, lb-in", bar.moment(granite, 0)/lbIn, 138.25)
	fourDigits(t, "its stress, psi", bar.stress(granite, 0, 0)/psi, 1327.2)
	fourDigits(t, "its deflection, in", bar.sag(granite)/inchMM, 0.004577)

	thin := cantilever{reach: 9 * inchMM, edge: 9 * inchMM, width: 3 * inchMM, thick: inchMM * 3 / 8, modulus: 29e6 * psi}
	fourDigits(t, "stress of 3/8 x 3, psi", thin.stress(tip, 0, 0)/psi, 25600)
	fourDigits(t, "its deflection, in", thin.sag(tip)/inchMM, 0.1271)

	metric := cantilever{reach: 300, edge: 300, width: 60, thick: 10, modulus: 200e3}
	fourDigits(t, "stress of 60 x 10, MPa", metric.stress(load{point: 400}, 0, 0), 120)
	fourDigits(t, "its deflection, mm", metric.sag(load{point: 400}), 3.6)
}

// TestRowsOfHoles: 400 N at the tip of 60 x 10, 300 long. Two holes of 20 mm, 30
// from the face, leave 20 of the width: 400 x 270 / (20 x 100 / 6) = 324 MPa; 280
// from it 24, less than the 120 at the face. Holes in the tail weaken nothing.
func TestRowsOfHoles(t *testing.T) {
	mm := length.Millimetre
	for at, want := range map[length.Length]float64{130 * mm: 324, 380 * mm: 120, 50 * mm: 120} {
		part := &model.Part{}
		for _, x := range []length.Length{15 * mm, 45 * mm} {
			part.Bores = append(part.Bores, model.Bore{At: geom.Point{X: x, Y: at}, Diameter: 20 * mm})
		}
		p := plate{
			Support: &model.Support{Steel: geom.Box{V: geom.Span{Lo: -389 * mm, Hi: 11 * mm}}}, part: part,
			beam: cantilever{reach: 300, edge: 300, width: 60, thick: 10, modulus: 200e3},
		}
		fourDigits(t, "the stress with holes at "+at.Decimal(length.Millimetres, 0), p.stress(load{point: 400}), want)
	}
}

// TestWithdrawalExamples holds a screw's grip to worked examples of NDS 12.2.2,
// pounds for an inch of thread. The third is printed as 109 by a civil engineering
// handbook.
func TestWithdrawalExamples(t *testing.T) {
	eight, ten := length.Inch*164/1000, length.Inch*190/1000
	of := func(g float64, d length.Length) float64 { return withdrawal(g, d) / poundForce * inchMM }
	fourDigits(t, "#8 in G 0.50", of(0.50, eight), 116.9)
	fourDigits(t, "#8 in G 0.50, 1.25 in", of(0.50, eight)*1.25, 146.1)
	fourDigits(t, "#10 in G 0.42", of(0.42, ten), 95.52)
	fourDigits(t, "#10 in G 0.45", of(0.45, ten), 109.7)

	// 2000 lb-in on screws 4 in behind the face, 1.5 in of thread: 500 lb in all, and
	// four of them hold 143.3 each.
	holds := of(0.42, ten) * 1.5
	fourDigits(t, "#10 in G 0.42, 1.5 in", holds, 143.3)
	if three, four := pull(2000, []float64{4, 4, 4}), pull(2000, []float64{4, 4, 4, 4}); three <= holds || four > holds || four != 125 {
		t.Errorf("three are pulled by %v, four by %v", three, four)
	}
}

// TestStoneExamples: the natural stone trade manual's smaller of 10 in and a third
// of the depth, for 3 cm.
func TestStoneExamples(t *testing.T) {
	for depth, want := range map[length.Length]length.Length{
		length.Inch * 51 / 2: length.Inch * 17 / 2, 18 * length.Inch: 6 * length.Inch, 36 * length.Inch: 10 * length.Inch,
	} {
		if have := (bare{across: depth, most: 10 * length.Inch}).ofStone().most; have != want {
			t.Errorf("of %v deep %v may stand out, want %v", depth, have, want)
		}
	}
}

func drawBeam(t *rapid.T) (cantilever, load) {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	c := cantilever{reach: f("reach", 50, 600), width: f("width", 20, 150), thick: f("thick", 4, 30), modulus: f("modulus", 60e3, 220e3)}
	c.edge = c.reach + f("beyond", 0, 200)
	return c, load{point: f("point", 0, 3000), spread: f("spread", 0.01, 10)}
}

// momentBySlices adds up what lies further out than x, slice by slice.
func momentBySlices(c cantilever, l load, x float64) float64 {
	const slices = 400
	sum, step := l.point*(c.edge-x), (c.edge-x)/slices
	for i := range slices {
		sum += l.spread * step * (float64(i) + 0.5) * step
	}
	return sum
}

// sagByIntegration bends the bar by Runge-Kutta on y” = M/EI, and goes straight on
// beyond its tip.
func sagByIntegration(c cantilever, l load) float64 {
	const steps = 200
	ei := c.modulus * c.width * math.Pow(c.thick, 3) / 12
	bend := func(x float64) float64 { return momentBySlices(c, l, x) / ei }
	y, slope, h := 0.0, 0.0, c.reach/steps
	for i := range steps {
		x := float64(i) * h
		a, m, b := bend(x), bend(x+h/2), bend(x+h)
		y += h*slope + h*h*(a+2*m)/6
		slope += h * (a + 4*m + b) / 6
	}
	return y + slope*(c.edge-c.reach)
}

func TestBeamAgainstIntegration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, l := drawBeam(t)
		near := func(what string, have, want float64) {
			if math.Abs(have-want) > 1e-6*math.Abs(want) {
				t.Fatalf("%s is %v, integrated %v", what, have, want)
			}
		}
		x := c.reach * rapid.Float64Range(0, 1).Draw(t, "x")
		near("the moment", c.moment(l, x), momentBySlices(c, l, x))
		near("the sag", c.sag(l), sagByIntegration(c, l))
		// the fibre stress whose moment over the section is M: the sum of sigma (2y/h) y dA
		const layers = 2000
		sum, lost := 0.0, c.width/3
		for i := range layers {
			y := c.thick * ((float64(i)+0.5)/layers - 0.5)
			sum += c.stress(l, x, lost) * (2 * y / c.thick) * y * (c.width - lost) * c.thick / layers
		}
		near("the moment of the stresses", sum, c.moment(l, x))
	})
}

// TestPullAgainstEquilibrium turns a stiff plate about its edge on springs until
// they hold the moment, by halving.
func TestPullAgainstEquilibrium(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arms := rapid.SliceOfN(rapid.Float64Range(1, 200), 1, 12).Draw(t, "arms")
		moment := rapid.Float64Range(1, 1e6).Draw(t, "moment")
		spring := rapid.Float64Range(0.1, 1000).Draw(t, "spring")
		held := func(turn float64) (sum, most float64) {
			for _, y := range arms {
				force := spring * turn * y
				sum += force * y
				most = max(most, force)
			}
			return sum, most
		}
		lo, hi := 0.0, 1e7 // the weakest spring at the shortest arm would hold any moment drawn
		for range 200 {
			if sum, _ := held((lo + hi) / 2); sum < moment {
				lo = (lo + hi) / 2
			} else {
				hi = (lo + hi) / 2
			}
		}
		_, want := held(hi)
		if have := pull(moment, arms); math.Abs(have-want) > 1e-9*want {
			t.Fatalf("pulled by %v, want %v", have, want)
		}
	})
}
