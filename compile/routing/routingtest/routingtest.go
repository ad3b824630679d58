// Package routingtest makes panels for tests of what plans other work of a router, and of
// what follows it.
package routingtest

import (
	"fmt"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router/routertest"
	"barwright/compile/routing"
	"barwright/lang/length"
)

const mm = length.Millimetre

// Job is a panel and what a router is asked for in it.
type Job struct {
	Part    model.Part
	Request routing.Request
}

// Side is the left side of a cabinet with all kinds of work, for a bit of 6 mm.
func Side() Job {
	j := Job{Part: panel(geom.RectContour(geom.R(0, 0, 360*mm, 300*mm))), Request: All()}
	p := &j.Part
	p.Outline = geom.Cut(geom.R(0, 0, 360*mm, 300*mm), []geom.Rect{geom.R(0, 0, 60*mm, 80*mm)})[0]
	p.Openings = []model.Opening{
		{Name: "toe kick", Notch: true, Shape: geom.RectContour(geom.R(0, 0, 60*mm, 80*mm))},
		{Name: "outlet urn", Shape: geom.RectContour(geom.R(120*mm, 60*mm, 220*mm, 120*mm)).Reversed()},
		{Name: "stub drain", Shape: geom.CircleContour(geom.Point{X: 290 * mm, Y: 80 * mm}, 12*mm).Reversed()},
	}
	p.Recesses = []model.Recess{{
		Name: "groove for the back", Shape: geom.RectContour(geom.R(330*mm, 0, 340*mm, 300*mm)), Depth: 7 * mm,
		Open: []model.Edge{model.Bottom, model.Top},
	}}
	p.Bores = []model.Bore{
		{Name: "hinge cup", At: geom.Point{X: 40 * mm, Y: 240 * mm}, Diameter: 35 * mm, Depth: 13 * mm},
		{Name: "shelf pin", At: geom.Point{X: 100 * mm, Y: 200 * mm}, Diameter: 6 * mm, Depth: 12 * mm},
		{Name: "shelf pin", At: geom.Point{X: 132 * mm, Y: 200 * mm}, Diameter: 7 * mm, Depth: 12 * mm},
		{Name: "shelf pin", At: geom.Point{X: 164 * mm, Y: 200 * mm}, Diameter: 5 * mm, Depth: 12 * mm},
		{Name: "shelf pin", At: geom.Point{X: 200 * mm, Y: 216 * mm}, Diameter: 7 * mm, Depth: 5 * mm, Far: true},
	}
	return j
}

func panel(outline geom.Contour) model.Part {
	return model.Part{
		ID: "cabinet.urn/side-left", Label: "URN-L", Name: "left side", Owner: "cabinet urn", Stock: "sheet.birch",
		Thickness: 18 * mm, Face: "inside", Outline: outline,
	}
}

// All asks for everything, by a bit of 6 mm.
func All() routing.Request {
	t := routertest.Tool(false)
	t.Diameter, t.Stepdown, t.Stepover = 6*mm, 3*mm, 2*mm
	return routing.Request{Tool: t, Show: func(l length.Length) string { return length.Show(l, length.Millimetres, 0) }, Also: model.Also{
		Openings: true, Outlines: true, Cups: true, Pins: true, Grooves: true,
		Under: mm / 2, Room: 10 * mm, Tabs: model.Tabs{Width: 10 * mm, Height: 3 * mm, Spacing: 200 * mm, Least: 4},
	}}
}

// Jobs draws panels and bits: notches and slanting corners, openings of all forms, bores
// from both faces, grooves.
func Jobs() *rapid.Generator[Job] { return rapid.Custom(draw) }

// The panel's middle is parted into cells, with one work each.
const (
	columns, rows = 3, 2
	rim           = 70 * mm
	cell          = 110 * mm
)

func draw(t *rapid.T) Job {
	j := Job{Request: request(t)}
	blank := geom.R(0, 0, 2*rim+columns*cell, 2*rim+rows*cell)
	var cuts []geom.Contour
	notch := func(r geom.Rect) {
		cuts = append(cuts, geom.RectContour(r))
		j.Part.Openings = append(j.Part.Openings, model.Opening{Notch: true, Shape: geom.RectContour(r)})
	}
	if flag(t, "corner notched") {
		notch(geom.R(0, 0, span(t, "x", 5*mm, 60*mm), span(t, "y", 5*mm, 60*mm)))
	}
	if flag(t, "edge notched") {
		x := span(t, "x", 120*mm, 200*mm)
		notch(geom.R(x, 0, x+span(t, "wide", 2*mm, 80*mm), span(t, "deep", 5*mm, 60*mm)))
	}
	if flag(t, "slanting") {
		x, y := blank.X.Hi, blank.Y.Hi
		a, b := span(t, "a", 5*mm, 60*mm), span(t, "b", 5*mm, 60*mm)
		cuts = append(cuts, geom.Contour{
			{Point: geom.Point{X: x - a, Y: y}}, {Point: geom.Point{X: x, Y: y - b}}, {Point: geom.Point{X: x, Y: y}},
		})
	}
	openings := j.Part.Openings
	outline, ok := geom.Difference(geom.RectContour(blank), cuts)
	if !ok || len(outline) != 1 {
		t.Fatal("no outline")
	}
	j.Part = panel(outline[0])
	j.Part.Openings, j.Part.Thickness = openings, span(t, "thick", 6*mm, 25*mm)
	for i := range columns * rows {
		work(t, &j, geom.Point{
			X: rim + cell*length.Length(i%columns) + cell/2, Y: rim + cell*length.Length(i/columns) + cell/2,
		}, i)
	}
	return j
}

// work draws the work round the middle of a cell.
func work(t *rapid.T, j *Job, at geom.Point, i int) {
	p := &j.Part
	wide, tall := span(t, "wide", 4*mm, 100*mm), span(t, "tall", 4*mm, 100*mm)
	r := geom.Rect{X: geom.About(at.X, wide), Y: geom.About(at.Y, tall)}
	open := func(c geom.Contour) {
		p.Openings = append(p.Openings, model.Opening{Name: fmt.Sprint("number ", i+1), Shape: c.Reversed()})
	}
	bore := func(name string, diameter length.Length) {
		p.Bores = append(p.Bores, model.Bore{
			Name: name, At: at, Diameter: diameter, Depth: span(t, "depth", mm, p.Thickness-mm), Far: flag(t, "far"),
		})
	}
	switch rapid.IntRange(0, 7).Draw(t, "kind") {
	case 0:
		open(geom.RectContour(r))
	case 1:
		open(geom.RoundedContour(r, span(t, "round", mm, min(wide, tall)/2)))
	case 2:
		open(geom.CircleContour(at, wide/2))
	case 3: // slanting, with a step in it
		a := span(t, "lean", 0, 20*mm)
		open(geom.Contour{
			{Point: geom.Point{X: at.X - 50*mm, Y: at.Y - 50*mm}}, {Point: geom.Point{X: at.X + 50*mm, Y: at.Y - 50*mm + a}},
			{Point: geom.Point{X: at.X + 50*mm, Y: at.Y}}, {Point: geom.Point{X: at.X, Y: at.Y}},
			{Point: geom.Point{X: at.X, Y: at.Y + 50*mm}}, {Point: geom.Point{X: at.X - 50*mm, Y: at.Y + 50*mm - a}},
		})
	case 4:
		bore("hinge cup", span(t, "diameter", 4*mm, 60*mm))
	case 5:
		bore("shelf pin", j.Request.Tool.Diameter+span(t, "wider", -mm, 4*mm))
	case 6:
		bore("shelf pin", j.Request.Tool.Diameter)
	case 7:
		p.Recesses = append(p.Recesses, model.Recess{Name: "groove", Shape: geom.RectContour(r), Depth: span(t, "depth", mm, p.Thickness-mm)})
	}
}

func request(t *rapid.T) routing.Request {
	r := All()
	bit := rapid.SampledFrom([]length.Length{length.Inch / 8, 5 * mm, 6 * mm, length.Inch / 4, 8 * mm, length.Inch / 2}).Draw(t, "bit")
	r.Tool.Diameter, r.Tool.Stepover = bit, bit*2/5
	r.Tool.Stepdown = span(t, "stepdown", bit/4, bit)
	r.Tool.Finish = rapid.SampledFrom([]length.Length{0, mm / 5, mm * 3 / 10}).Draw(t, "finish")
	r.Tool.RampDegrees = rapid.SampledFrom([]float64{2, 3, 5, 10}).Draw(t, "ramp")
	r.Tool.Relief = rapid.SampledFrom([]string{"none", "diagonal", "long_side"}).Draw(t, "relief")
	r.Tool.Entry = rapid.SampledFrom([]string{"ramp", "helix"}).Draw(t, "entry")
	r.Tool.Passes = rapid.SampledFrom([]string{"rings", "parallel"}).Draw(t, "passes")
	r.Tool.Dialect.Chords = flag(t, "chords")
	if flag(t, "inches") {
		r.Tool.Dialect.Inch, r.Tool.Dialect.Decimals = true, 5
	}
	r.Also.Outlines = flag(t, "outlines")
	return r
}

func flag(t *rapid.T, label string) bool { return rapid.Bool().Draw(t, label) }

// span draws a length to a hundredth of a millimetre.
func span(t *rapid.T, label string, low, high length.Length) length.Length {
	const step = mm / 100
	return low + step*length.Length(rapid.Int64Range(0, int64((high-low)/step)).Draw(t, label))
}
