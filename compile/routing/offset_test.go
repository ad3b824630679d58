package routing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

const mm = length.Millimetre

func rect(x0, y0, x1, y1 Length) geom.Rect { return geom.R(x0*mm, y0*mm, x1*mm, y1*mm) }

// notched is a rectangle of 100 x 60 mm that lacks one of 30 x 20 at its upper right corner.
var notched = geom.Cut(rect(0, 0, 100, 60), []geom.Rect{rect(70, 40, 100, 60)})[0]

// Lengths by hand: round convex corners an outer way has a full circle in all, less a
// quarter for each inside corner, where it is shorter by the distance on both edges.
func TestOffset(t *testing.T) {
	quarter := math.Pi / 2 * 5
	for _, test := range []struct {
		name    string
		contour geom.Contour
		box     geom.Rect
		long    float64 // mm
	}{
		{"round a rectangle", geom.RectContour(rect(0, 0, 100, 60)).Reversed(), rect(-5, -5, 105, 65), 320 + 4*quarter},
		{"in a rectangle", geom.RectContour(rect(0, 0, 100, 60)), rect(5, 5, 95, 55), 2*90 + 2*50},
		{"round a notched one", notched.Reversed(), rect(-5, -5, 105, 65), 320 - 10 + 5*quarter},
		{"in a notched one", notched, rect(5, 5, 95, 55), 2*90 + 2*50 - 2*5 + quarter},
		{"round a rounded one", geom.RoundedContour(rect(0, 0, 100, 60), 10*mm).Reversed(), rect(-5, -5, 105, 65), 2*80 + 2*40 + 2*math.Pi*15},
		{"in a rounded one", geom.RoundedContour(rect(0, 0, 100, 60), 10*mm), rect(5, 5, 95, 55), 2*80 + 2*40 + 2*math.Pi*5},
		{"in a circle", geom.CircleContour(geom.Point{X: 50 * mm, Y: 30 * mm}, 30*mm), rect(25, 5, 75, 55), 2 * math.Pi * 25},
	} {
		w, ok := offset(test.contour, 5*mm, 0, nil)
		if !ok {
			t.Errorf("%s: none", test.name)
			continue
		}
		var c geom.Contour
		for _, p := range w.pieces {
			c = append(c, geom.Vertex{Point: p.from, Bulge: math.Tan(p.turn / 4)})
		}
		if got := c.Bounds(); got != test.box || math.Abs(w.total/1e6-test.long) > 1e-4 {
			t.Errorf("%s: %.4f mm in %v, want %.4f in %v", test.name, w.total/1e6, got, test.long, test.box)
		}
	}
}

// A bit that does not fit finds no way.
func TestOffsetRefused(t *testing.T) {
	slot := geom.Cut(rect(0, 0, 100, 60), []geom.Rect{rect(40, 20, 48, 60)})[0]
	neck := geom.Cut(rect(0, 0, 100, 60), []geom.Rect{rect(40, 0, 60, 26), rect(40, 34, 60, 60)})[0]
	for name, c := range map[string]geom.Contour{
		"a notch of 8":        slot.Reversed(),
		"an opening of 8":     geom.RectContour(rect(0, 0, 100, 8)),
		"an opening's neck":   neck,
		"a circle of 8":       geom.CircleContour(geom.Point{}, 4*mm),
		"corners of radius 4": geom.RoundedContour(rect(0, 0, 100, 60), 4*mm),
	} {
		if _, ok := offset(c, 5*mm, 0, nil); ok {
			t.Errorf("%s: a bit of 10 mm goes in", name)
		}
	}
	if _, ok := offset(sharpened(geom.RoundedContour(rect(0, 0, 100, 60), 4*mm), 5*mm), 5*mm, 0, nil); !ok {
		t.Error("corners that the bit leaves rounder than drawn stop it")
	}
}

// What a bit leaves of a contour is what it can reach: the area by hand.
func TestFilleted(t *testing.T) {
	const corner = 25 - math.Pi*25/4 // what a bit of radius 5 leaves in a square corner
	for _, test := range []struct {
		name string
		got  geom.Contour
		area float64
	}{
		{"opening", filleted(geom.RectContour(rect(0, 0, 100, 60)), 5*mm, nil), 6000 - 4*corner},
		{"outline", filleted(notched.Reversed(), 5*mm, nil), -(5400 + corner)},
		{"tight corners", filleted(sharpened(geom.RoundedContour(rect(0, 0, 100, 60), 2*mm), 5*mm), 5*mm, nil), 6000 - 4*corner},
		{"wide corners", filleted(sharpened(geom.RoundedContour(rect(0, 0, 100, 60), 8*mm), 5*mm), 5*mm, nil), 6000 - (4-math.Pi)*64},
	} {
		if area := test.got.Area(); math.Abs(area-test.area) > 1e-3 {
			t.Errorf("%s: %.4f mm2, want %.4f", test.name, area, test.area)
		}
	}
}

// A way never comes nearer to its contour than it should, by points along both.
func TestOffsetKeepsClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		span := func(name string, low, high Length) Length {
			return Length(rapid.Int64Range(int64(low*mm), int64(high*mm)).Draw(t, name))
		}
		blank := geom.R(0, 0, span("w", 60, 300), span("h", 60, 300))
		var cuts []geom.Rect
		for range rapid.IntRange(0, 3).Draw(t, "notches") {
			x, y := span("x", 0, 250), span("y", 0, 40)
			cuts = append(cuts, geom.R(x, -mm, x+span("wide", 1, 60), y))
		}
		all := geom.Cut(blank, cuts)
		if len(all) == 0 {
			return
		}
		c, d := all[0], span("d", 1, 10)
		if rapid.Bool().Draw(t, "outside") {
			c = c.Reversed()
		}
		chord := rapid.SampledFrom([]Length{0, mm / 100}).Draw(t, "chord")
		w, ok := offset(c, d, chord, nil)
		if !ok {
			return
		}
		border := bars(c)
		for s := 0.0; s < w.total; s += 0.5e6 {
			p, nearest := w.at(s), math.Inf(1)
			for i := range border {
				nearest = min(nearest, border[i].from(float64(p.X), float64(p.Y)))
			}
			if nearest < float64(d)-nearer || nearest > float64(d)*math.Sqrt2+nearer {
				t.Fatalf("at %v the way is %.6f mm off, and should be %.6f", p, nearest/1e6, d.MM())
			}
		}
	})
}
