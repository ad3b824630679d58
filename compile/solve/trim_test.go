package solve

import (
	"fmt"
	"math"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// A rabbet 10 x 400 lies at the left edge of a side; areas are by the plain shapes.
func TestTrimRecesses(t *testing.T) {
	const mm = length.Millimetre
	rect := func(x0, y0, x1, y1 length.Length) geom.Contour {
		return geom.RectContour(geom.R(x0*mm, y0*mm, x1*mm, y1*mm))
	}
	for _, test := range []struct {
		name    string
		opening geom.Contour
		notch   bool
		areas   []float64 // mm²
		open    string
	}{
		{"clear of it", rect(50, 100, 90, 150).Reversed(), false, []float64{4000}, "[left top]"},
		{"touches it", rect(10, 100, 90, 150).Reversed(), false, []float64{4000}, "[left top]"},
		{"notch across it", rect(0, 100, 60, 150), true, []float64{1000, 2500}, "[left][left top]"},
		{"notch as deep", rect(0, 100, 10, 150), true, []float64{1000, 2500}, "[left][left top]"},
		{"notch half as deep", rect(0, 100, 5, 150), true, []float64{3750}, "[left top]"},
		{"notch at its end", rect(0, 350, 60, 400), true, []float64{3500}, "[left]"},
		{"notch over all of it", rect(0, 0, 60, 400), true, nil, ""},
		{"half a round hole", geom.CircleContour(geom.Point{X: 10 * mm, Y: 200 * mm}, 8*mm).Reversed(), false, []float64{4000 - 32*math.Pi}, "[left top]"},
		{"hole within it", geom.CircleContour(geom.Point{X: 5 * mm, Y: 200 * mm}, 3*mm).Reversed(), false, []float64{4000}, "[left top]"},
	} {
		part := &model.Part{
			Recesses: []model.Recess{{ID: "r", Shape: rect(0, 0, 10, 400), Open: []model.Edge{model.LeftEdge, model.Top}}},
			Openings: []model.Opening{{Shape: test.opening, Notch: test.notch}},
		}
		trimRecesses(part)
		open := ""
		for i, r := range part.Recesses {
			open += fmt.Sprint(r.Open)
			if i < len(test.areas) && math.Abs(r.Shape.Area()-test.areas[i]) > 0.15 { // what tangents take beside the round
				t.Errorf("%s: piece %d has %.2f mm², want %.2f", test.name, i, r.Shape.Area(), test.areas[i])
			}
		}
		if len(part.Recesses) != len(test.areas) || open != test.open {
			t.Errorf("%s: %d pieces open at %s, want %d at %s", test.name, len(part.Recesses), open, len(test.areas), test.open)
		}
	}
}

// What is left of a rabbet at a round opening keeps clear of it, so that no chords of the
// opening cross it, however few they are.
func TestTrimmedRecessKeepsClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string, from, to int) geom.Length {
			return geom.Length(rapid.IntRange(from, to).Draw(t, name))
		}
		r, centre := at("radius", 3_000_000, 60_000_000), geom.Point{X: at("x", 1_000_000, 80_000_000), Y: 200_000_000}
		part := &model.Part{
			Recesses: []model.Recess{{ID: "r", Shape: geom.RectContour(geom.R(0, 0, 10_000_000, 400_000_000))}},
			Openings: []model.Opening{{Shape: geom.CircleContour(centre, r).Reversed()}},
		}
		if centre.X-r < 0 { // open to the edge; only a notch may be
			t.Skip()
		}
		trimRecesses(part)
		for _, piece := range part.Recesses {
			shape := piece.Shape
			if len(shape) == 4 && centre.X+r < 10_000_000 {
				return // recessed wood all round
			}
			for i, v := range shape {
				w := shape[(i+1)%len(shape)]
				if off := fromLine(centre, v.Point, w.Point); off < float64(r)-2 {
					t.Fatalf("an edge is %f from the middle of an opening of %d", off, r)
				}
			}
		}
	})
}

// fromLine is how far a point is from a straight line between two others.
func fromLine(p, a, b geom.Point) float64 {
	d, q := b.Sub(a), p.Sub(a)
	dx, dy, qx, qy := float64(d.X), float64(d.Y), float64(q.X), float64(q.Y)
	along := max(0, min(1, (qx*dx+qy*dy)/(dx*dx+dy*dy)))
	return math.Hypot(qx-along*dx, qy-along*dy)
}
