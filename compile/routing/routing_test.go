package routing_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/routing"
	"barwright/compile/routing/routingtest"
	"barwright/lang/length"
)

const mm = length.Millimetre

// The side of a cabinet, with all that there is in it: in which program, in which order,
// where, and at which levels. The margin of its blank is 6 + 0.25 + 10 mm.
func TestPlan(t *testing.T) {
	j := routingtest.Side()
	all, _ := routing.Plan(&j.Part, &j.Request)
	var got []string
	for _, r := range all {
		got = append(got, fmt.Sprintf("%s %v far %v", r.Name, r.Stock, r.Far))
		for _, w := range r.Works {
			b := w.Shape.Bounds()
			got = append(got, fmt.Sprintf("%s %s: %.2f %.2f to %.2f %.2f, %d levels, %d tabs", w.Kind, w.Name,
				b.X.Lo.MM(), b.Y.Lo.MM(), b.X.Hi.MM(), b.Y.Hi.MM(), len(w.Levels), len(w.Tabs)))
		}
	}
	want := []string{
		"URN-L {{0 392500000} {0 332500000}} far false",
		"groove groove for the back: 346.25 10.25 to 356.25 322.25, 3 levels, 0 tabs",
		"cup hinge cup: 38.75 238.75 to 73.75 273.75, 5 levels, 0 tabs",
		"pin shelf pin: 113.25 213.25 to 119.25 219.25, 4 levels, 0 tabs", // 12 mm in pecks of 3
		"pin shelf pin: 144.75 212.75 to 151.75 219.75, 1 levels, 0 tabs",
		"opening outlet urn: 136.25 76.25 to 236.25 136.25, 7 levels, 4 tabs", // 15 in 5, 3.5 in 2
		"opening stub drain: 294.25 84.25 to 318.25 108.25, 7 levels, 0 tabs", // 18.5
		"outline outline: 16.25 16.25 to 376.25 316.25, 7 levels, 7 tabs",     // 300 1.5, 220 1, 360 2, 300 2 spacings, 60 and 80 none
		"URN-L-far {{0 360000000} {0 300000000}} far true",
		"pin shelf pin: 156.50 212.50 to 163.50 219.50, 1 levels, 0 tabs", // 360 - 200 = 160
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	for _, r := range all {
		for i, w := range r.Works {
			if m := r.Moves[w.First]; m.Kind != model.MoveRapid || m.Z != r.Tool.Clearance || m.Note == "" {
				t.Errorf("%s: work %d begins with %+v", r.Name, i, m)
			}
		}
	}
}

// What is not asked for is not cut.
func TestNothingAskedFor(t *testing.T) {
	j := routingtest.Side()
	j.Request.Also = model.Also{}
	if all, left := routing.Plan(&j.Part, &j.Request); len(all)+len(left) > 0 {
		t.Errorf("%d programs, %d left", len(all), len(left))
	}
}

// What does not fit is left out and told with its figures; the rest is cut.
func TestLeft(t *testing.T) {
	slit := func(j *routingtest.Job) {
		j.Part.Outline = geom.Cut(geom.R(0, 0, 360*mm, 300*mm), []geom.Rect{geom.R(60*mm, 0, 65*mm, 30*mm)})[0]
	}
	for _, test := range []struct {
		name    string
		change  func(j *routingtest.Job)
		cause   string
		figures []string
	}{
		{"a bit too wide for the groove", func(j *routingtest.Job) { j.Request.Tool.Diameter = 12 * mm }, "groove bit-too-wide", []string{"10 mm", "12 mm"}},
		{"a notch too narrow", slit, "outline narrow", []string{"6.5 mm"}},
		{"little travel in X", func(j *routingtest.Job) { j.Request.Tool.Travel.X = 350 * mm }, "outline travel", []string{"350 mm", "in X"}},
		{"little travel in Z", func(j *routingtest.Job) { j.Request.Tool.Travel.Z = 30 * mm }, "outline travel", []string{"30 mm", "in Z"}},
		{"long tabs", func(j *routingtest.Job) {
			j.Request.Also.Tabs = model.Tabs{Width: 400 * mm, Height: 3 * mm, Spacing: 200 * mm, Least: 4}
		},
			"outline tabs", []string{"4 tabs", "400 mm", "412 mm"}},
		{"an odd opening", func(j *routingtest.Job) {
			j.Part.Openings[2].Shape = geom.Contour{{Point: geom.Point{X: 280 * mm, Y: 80 * mm}}, {Point: geom.Point{X: 290 * mm, Y: 90 * mm}}, {Point: geom.Point{X: 300 * mm, Y: 80 * mm}}}
		}, "opening shape", nil},
		{"a relief that meets a bore", func(j *routingtest.Job) {
			j.Request.Tool.Relief = "diagonal"
			j.Part.Bores[3].At = geom.Point{X: 118200 * mm / 1000, Y: 58200 * mm / 1000}
		}, "opening relief", []string{"6 mm"}},
		{"a hole through the board", func(j *routingtest.Job) { j.Part.Bores[1].Depth = 18 * mm }, "pin deep", []string{"18 mm"}},
		{"a slow ramp", func(j *routingtest.Job) { j.Request.Tool.RampDegrees = 0.0001 }, "outline long", []string{"50000"}},
	} {
		j := routingtest.Side()
		test.change(&j)
		all, left := routing.Plan(&j.Part, &j.Request)
		i := slices.IndexFunc(left, func(l routing.Left) bool { return l.Cause == test.cause })
		if i < 0 {
			t.Errorf("%s: %q is not among %+v", test.name, test.cause, left)
			continue
		}
		for _, figure := range append(test.figures, "URN-L, the left side of cabinet urn,") {
			if !strings.Contains(left[i].Text, figure) {
				t.Errorf("%s: %q does not tell %s", test.name, left[i].Text, figure)
			}
		}
		if test.name != "a slow ramp" && len(all) == 0 {
			t.Errorf("%s: nothing is cut", test.name)
		}
	}
}

// A panel whose outline is left out lies on the machine as cut to size.
func TestOutlineLeftOut(t *testing.T) {
	j := routingtest.Side()
	j.Request.Tool.Travel.X = 365 * mm
	all, _ := routing.Plan(&j.Part, &j.Request)
	if want := geom.R(0, 0, 360*mm, 300*mm); all[0].Stock != want {
		t.Errorf("the board is %v, want %v", all[0].Stock, want)
	}
	if open := all[0].Works[0].Open; len(open) != 2 {
		t.Errorf("the groove is open at %v", open)
	}
}

func BenchmarkPlan(b *testing.B) {
	j := routingtest.Side()
	for b.Loop() {
		routing.Plan(&j.Part, &j.Request)
	}
}
