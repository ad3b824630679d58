package replay_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
	"barwright/lang/length"
)

// circle cuts round a circle of a radius in 6 mm of wood, inside or outside of it, with a bit
// of 6 mm. Tabs of 2 mm stand at angles on it; the bit is raised to their tops where its
// centre is less than half, in mm, from the line through the tab's middle and the centre.
func circle(radius float64, outside bool, tabs []float64, half float64) string {
	way, turn := radius-3, 1.0
	if outside {
		way, turn = radius+3, -1
	}
	at := func(s float64) (x, y float64) { return way * math.Cos(turn*s), way * math.Sin(turn*s) }
	var b strings.Builder
	arc := func(from, to, z, feed float64) {
		code := "G2"
		if turn*(to-from) > 0 {
			code = "G3"
		}
		x, y := at(from)
		u, v := at(to)
		fmt.Fprintf(&b, "%s X%.4f Y%.4f Z%.4f I%.4f J%.4f F%.1f\n", code, u, v, z, -x, -y, feed)
	}
	lift := math.Asin(half / way)
	s := tabs[0] + lift
	x, y := at(s)
	fmt.Fprintf(&b, "%sG0 X%.4f Y%.4f\nG0 Z2.\nG1 Z0. F600.\n", begin, x, y)
	arc(s, s+math.Pi, -4, 600)
	arc(s+math.Pi, s+2*math.Pi, -4, 2000)
	arc(s, s+math.Pi, -4, 2000)
	arc(s+math.Pi, s+2*math.Pi, -4, 2000)
	for _, next := range append(tabs[1:], tabs[0]+2*math.Pi) {
		end := next - lift
		middle := (s + end) / 2
		arc(s, middle, -6.4, 600)
		arc(middle, s, -6.4, 2000)
		arc(s, middle, -6.4, 2000)
		arc(middle, end, -6.4, 2000)
		b.WriteString("G1 Z-4.\n")
		s = next + lift
		arc(end, s, -4, 2000)
	}
	return b.String() + "G0 Z10.\n" + end
}

// TestCheckRoutingMeasuresTabsOnCurves: tabs of 8 mm, straight across the cut, on circles:
// the bit may be raised within 4 mm and its radius of their middle, but for 0.05 mm.
func TestCheckRoutingMeasuresTabsOnCurves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(28, 40).Draw(t, "radius")
		outside := rapid.Bool().Draw(t, "outside")
		turned := rapid.Float64Range(0, 1).Draw(t, "turned")
		tabs := []float64{turned, turned + 2, turned + 4}
		r := panel()
		kind, turn := "opening", 1.0
		if outside {
			kind, turn = "outline", -1
		}
		w := model.Work{Kind: kind, Shape: geom.CircleContour(geom.Point{}, length.Length(radius*1e6)), Freed: true, Levels: r.Works[3].Levels[1:]}
		for _, a := range tabs {
			w.Tabs = append(w.Tabs, model.Tab{Width: 8 * mm, Height: 2 * mm, At: geom.Point{
				X: length.Length(radius * math.Cos(turn*a) * 1e6), Y: length.Length(radius * math.Sin(turn*a) * 1e6),
			}})
		}
		r.Works, r.Tool.Stepdown = []model.Work{w}, 4*mm
		r.Stock = geom.R(-60*mm, -60*mm, 60*mm, 60*mm)
		if r.Piece = geom.RectContour(r.Stock); outside {
			r.Piece = w.Shape
		}
		if err := replay.CheckRouting([]byte(circle(radius, outside, slices.Clone(tabs), 7)), r); err != nil {
			t.Fatal(err)
		}
		for _, half := range []float64{6.94, 7.06} {
			if replay.CheckRouting([]byte(circle(radius, outside, slices.Clone(tabs), half)), r) == nil {
				t.Fatalf("passes where it is raised over %v mm", half)
			}
		}
	})
}
