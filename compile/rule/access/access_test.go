package access

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/rule/ruletest"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
)

const mm = length.Millimetre

// point is a place on a face in millimetres.
type point struct{ x, y float64 }

// outlinePoints walks along a contour and stops at least every half millimetre: a
// way of measuring that knows nothing of voids.
func outlinePoints(c geom.Contour) []point {
	const step = 0.5
	var out []point
	for i, v := range c {
		w := c[(i+1)%len(c)]
		x, y, dx, dy := v.X.MM(), v.Y.MM(), (w.X - v.X).MM(), (w.Y - v.Y).MM()
		if v.Bulge == 0 {
			n := math.Ceil(math.Hypot(dx, dy)/step) + 1
			for k := range int(n) {
				out = append(out, point{x + dx*float64(k)/n, y + dy*float64(k)/n})
			}
			continue
		}
		a := geom.ArcOf(v, w.Point)
		n := math.Ceil(math.Abs(a.Turn)*a.R/1e6/step) + 1
		for k := range int(n) {
			at := a.Start + a.Turn*float64(k)/n
			out = append(out, point{(a.CX + a.R*math.Cos(at)) / 1e6, (a.CY + a.R*math.Sin(at)) / 1e6})
		}
	}
	return out
}

func distanceOf(a, b []point) float64 {
	least := math.Inf(1)
	for _, p := range a {
		for _, q := range b {
			least = min(least, math.Hypot(p.x-q.x, p.y-q.y))
		}
	}
	return least
}

// contains counts how often a line to the right leaves a ring of points.
func contains(ring []point, p point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

// raster is the squares of a millimetre whose middles lie in a contour.
func raster(c geom.Contour) map[[2]int]bool {
	ring, over := outlinePoints(c), c.Bounds()
	out := map[[2]int]bool{}
	for x := int(over.X.Lo / mm); x <= int(over.X.Hi/mm); x++ {
		for y := int(over.Y.Lo / mm); y <= int(over.Y.Hi/mm); y++ {
			if contains(ring, point{float64(x) + 0.5, float64(y) + 0.5}) {
				out[[2]int{x, y}] = true
			}
		}
	}
	return out
}

func drawShape(t *rapid.T) geom.Contour {
	at := func(name string, lo, hi int) length.Length {
		return length.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	x, y, w, h := at("x", 10, 90), at("y", 10, 90), at("w", 4, 50), at("h", 4, 50)
	r := geom.R(x, y, x+w, y+h)
	switch rapid.IntRange(0, 2).Draw(t, "shape") {
	case 0:
		return geom.RectContour(r).Reversed()
	case 1:
		return geom.RoundedContour(r, min(w, h)/length.Length(rapid.IntRange(2, 6).Draw(t, "share"))).Reversed()
	}
	return geom.CircleContour(geom.Point{X: x, Y: y}, min(x, y, w)).Reversed()
}

// TestApartAgainstARaster compares the wood between two openings with that between
// points on their outlines; openings that share a square of a raster run into one
// another.
func TestApartAgainstARaster(t *testing.T) {
	blank := geom.R(0, 0, 220*mm, 220*mm)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawShape(t), drawShape(t)
		left := apart(voidOf(a, blank), voidOf(b, blank))
		ringA, ringB := outlinePoints(a), outlinePoints(b)
		shared, inB := false, raster(b)
		for square := range raster(a) {
			shared = shared || inB[square]
		}
		switch measured := distanceOf(ringA, ringB); {
		case shared && left >= 0:
			t.Fatalf("%v and %v share a square, but are %d apart", a, b, left)
		case left >= 0 && (measured < left.MM()-1e-5 || measured > left.MM()+0.5):
			t.Fatalf("%v and %v: apart %.6f mm, measured %.6f", a, b, left.MM(), measured)
		case !shared && left < 0 && measured > 0.5:
			t.Fatalf("%v and %v share nothing and measure %.6f mm, but are said to overlap", a, b, measured)
		}
	})
}

// TestOutlineAgainstPoints measures from holes to the outline of a side with the
// recess for the feet, a notch whose corner is round, and a slot with a round end.
func TestOutlineAgainstPoints(t *testing.T) {
	at := func(x, y int, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: length.Length(x) * mm, Y: length.Length(y) * mm}, Bulge: bulge}
	}
	side := geom.Contour{
		at(0, 40, 0), at(30, 40, 0), at(30, 0, 0), at(120, 0, 0), at(120, 60, -1), at(140, 60, 0), at(140, 0, 0),
		at(220, 0, 0), at(220, 150, 0), at(200, 150, -geom.QuarterBulge), at(190, 160, 0), at(190, 220, 0), at(0, 220, 0),
	}
	ring := outlinePoints(side)
	measured := 0
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.IntRange(0, 220).Draw(t, "x"), rapid.IntRange(0, 220).Draw(t, "y")
		if !contains(ring, point{float64(x) + 0.25, float64(y) + 0.25}) {
			return
		}
		centre := geom.Point{X: length.Length(x)*mm + mm/4, Y: length.Length(y)*mm + mm/4}
		hole := geom.CircleContour(centre, mm/8).Reversed()
		least := length.Length(math.MaxInt64)
		for _, v := range outlineVoids(side) {
			least = min(least, apart(voidOf(hole, geom.R(0, 0, 220*mm, 220*mm)), v))
		}
		if want := distanceOf([]point{{centre.X.MM(), centre.Y.MM()}}, ring) - 0.125; want > 0.5 {
			measured++
			if math.Abs(least.MM()-want) > 0.1 {
				t.Fatalf("from %v to the outline: %.6f mm, measured %.6f", centre, least.MM(), want)
			}
		}
	})
	if measured < 20 {
		t.Fatalf("only %d holes were measured", measured)
	}
}

// TestReachesAgainstSteps walks along a line until it is in a body.
func TestReachesAgainstSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, lo, hi int) length.Length {
			return length.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
		}
		frame := geom.Frame{Origin: geom.Point{X: n("x", -80, 80), Y: n("y", -80, 80)}, Turn: geom.Angle(rapid.IntRange(0, 359).Draw(t, "turn")) * geom.Degree}
		s := seenFrom(geom.Frame{}, []body{{box: geom.Box{U: geom.Span{Hi: n("w", 5, 60)}, V: geom.Span{Hi: n("d", 5, 60)}}, at: frame}})[0]
		sin, cos := (geom.Angle(rapid.IntRange(-80, 80).Draw(t, "look")) * geom.Degree).SinCos()
		const step = 0.25
		walked, met := 0.0, false
		for ; walked < 300 && !met; walked += step {
			u, v := frame.Local(geom.Point{X: length.Length(walked * sin * 1e6), Y: length.Length(walked * cos * 1e6)})
			met = s.box.U.Lo <= u && u <= s.box.U.Hi && s.box.V.Lo <= v && v <= s.box.V.Hi
		}
		far, ok := s.reaches(spot{}, spot{sin, cos})
		if met && (!ok || far/1e6 > walked || far/1e6 < walked-2*step-0.01) {
			t.Fatalf("walked %.2f mm to it, reaches %.2f, %t", walked, far/1e6, ok)
		}
		// Where it is said to begin there is its edge: a line that cuts a corner may be stepped over.
		if ok {
			u, v := frame.Local(geom.Point{X: length.Length(far * sin), Y: length.Length(far * cos)})
			if !s.box.U.Grow(length.Micrometre).Holds(u) || !s.box.V.Grow(length.Micrometre).Holds(v) {
				t.Fatalf("%.2f mm off, where it should begin, it is not", far/1e6)
			}
		}
	})
}

// TestLoweredOpeningIsCovered: a single plate, 2 3/4 by 4 1/2 in (ANSI/NEMA WD 6; trade
// facts, section 5), over the usual single box, 2 1/4 by 3 3/4 in with 1/16 in round it
// (common practice), still covers an opening that is cut 1/8 in too low, and no
// longer one that is cut 3/8 in too low.
func TestLoweredOpeningIsCovered(t *testing.T) {
	const in = length.Inch
	cover := geom.Rect{X: geom.About(0, 2*in+3*in/4), Y: geom.About(0, 4*in+in/2)}
	opening := geom.Rect{X: geom.About(0, 2*in+in/4), Y: geom.About(0, 3*in+3*in/4)}.Grow(in / 16)
	for lower, want := range map[length.Length]length.Length{0: 3 * in / 16, in / 8: 3 * in / 16, 3 * in / 16: in / 8, 3 * in / 8: -in / 16} {
		if have := lap(cover, opening.Shift(geom.Point{Y: -lower})); have != want {
			t.Errorf("cut %d lower: a lap of %d, want %d", lower, have, want)
		}
	}
}

// TestLapIsWhatMayBeOff: an opening that is cut off by no more than the lap lies under
// the plate, and one that is off by more in the worst direction does not.
func TestLapIsWhatMayBeOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, lo, hi int) length.Length {
			return length.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		cover := geom.Rect{X: geom.About(0, n("wide", 50, 200)), Y: geom.About(0, n("high", 50, 200))}
		opening := geom.Rect{X: geom.About(0, n("w", 10, 50)), Y: geom.About(0, n("h", 10, 50))}
		may := lap(cover, opening)
		off := geom.Point{X: n("x", -int(may), int(may)), Y: n("y", -int(may), int(may))}
		if !cover.Contains(opening.Shift(off)) {
			t.Fatalf("%v moved by %v is not under %v", opening, off, cover)
		}
		bare := 0
		for _, way := range []geom.Point{{X: may + 1}, {X: -may - 1}, {Y: may + 1}, {Y: -may - 1}} {
			if !cover.Contains(opening.Shift(way)) {
				bare++
			}
		}
		if bare == 0 {
			t.Fatalf("%v may be off by more than %d under %v", opening, may, cover)
		}
	})
}

// TestPublishedLimits holds the defaults to trade facts, sections 1 and 5: NEC 314.21
// (1/8 in, 3 mm) and PS 20 (a 2x is 1 1/2 in, 38 mm).
func TestPublishedLimits(t *testing.T) {
	limits := schema.Kind(schema.Root(), "limits")
	for name, want := range map[string][2]string{"box_gap": {"1/8in", "3mm"}, "stud_thickness": {"1 1/2in", "38mm"}} {
		if a := limits.Attr(name); a.Default != want[0] || a.Metric != want[1] {
			t.Errorf("%s is %s and %s, published are %s and %s", name, a.Default, a.Metric, want[0], want[1])
		}
	}
}

// TestDeadCorner puts an outlet into the corner between two runs. Where their
// front corners touch nothing opens to it; where they stand a foot apart one
// sees and reaches it through the gap.
func TestDeadCorner(t *testing.T) {
	for start, want := range map[string]bool{"24": true, "36": false} {
		if have := slugsOf(t, deadCorner(start))["buried-behind-boards"]; have != want {
			t.Errorf("with the next run %s in from the corner: buried %t, want %t", start, have, want)
		}
	}
}

func deadCorner(start string) string {
	return `build "bar" { unit = "in" }
room {
  wall "north" {
    length = 120
    outlet "lamp" { at = [108, 20] }
  }
  wall "east" { length = 120 }
}
sheet "ply" {
  size = [96, 48]
  thickness = 0.75
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = 48 }
  cabinet "b" { width = 48 }
}
run "side" {
  along   = wall.east
  carcass = carcass.base
  start   = ` + start + `
  cabinet "c" { width = 40 }
}
`
}

// slugsOf judges a text and lists what is found.
func slugsOf(t *testing.T, text string) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	for _, f := range ruletest.Judged(t, Rules, ruletest.Bar(text)) {
		if f.Severity > finding.Warning {
			t.Errorf("%s: %s", f.Slug, f.Text)
		}
		out[f.Slug] = true
	}
	return out
}
