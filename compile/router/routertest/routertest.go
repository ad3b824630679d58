// Package routertest makes recesses for tests of the planner and of what
// follows it.
package routertest

import (
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang/length"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
)

// Support is the recess of one support plate: across a 2x4 that lies flat,
// open at its front edge.
func Support() router.Request {
	half := inch + inch/64
	return router.Request{
		Name: "bar-support-1", Part: "knee_wall.bar/top-plate", PartLabel: "K1-TP",
		Recess: "support 1", RecessID: "knee_wall.bar/top-plate/support-1",
		Zero:  "X0 at the pencil mark of support 1, Y0 at the front edge of the plate",
		Mark:  12*inch + inch/4,
		Shape: geom.R(-half, 0, half, 3*inch), Open: []model.Edge{model.Bottom},
		Stock: geom.R(-12*inch-inch/4, 0, 60*inch, 3*inch+inch/2),
		Thick: inch + inch/2, Depth: 3 * inch / 8,
		Tool: Tool(false),
	}
}

// Tool is a quarter-inch bit for a program in mm or in inches.
func Tool(inches bool) model.Tool {
	t := model.Tool{
		Router: "router.small", Number: 1, Diameter: inch / 4, Flutes: 2, RPM: 18000,
		Feed: 2400 * mm, Plunge: 800 * mm, Stepdown: inch / 8, Stepover: inch / 10,
		RampDegrees: 3, Finish: mm / 4, Clearance: 15 * mm,
		Rapid: 6000 * mm, Accelerate: 500,
		Dialect: model.Dialect{Decimals: 4, Percent: true, Chord: mm / 100, Comments: "brackets", SpinUp: 3},
	}
	if inches {
		t.Dialect.Inch, t.Dialect.Decimals, t.Dialect.Percent = true, 5, false
	}
	return t
}

// Requests draws recesses that can be cut: every choice of open sides, narrow
// ones, rounded ones, in mm and inches.
func Requests() *rapid.Generator[router.Request] { return rapid.Custom(draw) }

func draw(t *rapid.T) router.Request {
	r := Support()
	r.Tool = drawTool(t)
	bit := (r.Tool.Diameter+1)/2*2 + 2*r.Tool.Finish
	width := bit + span(t, "width", 0, 60*mm)
	height := bit + span(t, "height", 0, 90*mm)
	if rapid.IntRange(0, 2).Draw(t, "narrow") == 0 {
		width = bit + span(t, "more than the bit", 0, r.Tool.Diameter/5)
	}
	open := rapid.SampledFrom([][]model.Edge{
		nil, {model.Bottom}, {model.Top}, {model.LeftEdge}, {model.Bottom, model.Top},
		{model.RightEdge, model.LeftEdge}, {model.Bottom, model.LeftEdge}, {model.RightEdge, model.Top, model.LeftEdge},
	}).Draw(t, "open")
	if len(open) == 0 && max(width, height) < bit+r.Tool.Diameter {
		height = bit + r.Tool.Diameter // room to ramp
	}
	x, y := span(t, "x", -70*mm, 0), span(t, "y", 0, 20*mm)
	r.Shape, r.Open = geom.R(x, y, x+width, y+height), open
	wall := mm
	if r.Tool.Relief != "none" {
		wall += r.Tool.Diameter / 2
	}
	r.Stock = Around(r.Shape, span(t, "wall", wall, 200*mm), open)
	r.Corner = rapid.SampledFrom([]router.Length{0, 0, r.Tool.Diameter/2 + mm/10, r.Tool.Diameter, min(width, height) / 2}).Draw(t, "corner")
	r.Corner = min(r.Corner, width/2, height/2)
	r.Depth = span(t, "depth", mm, 12*mm)
	return r
}

// Around is the wood about a recess, so much wider on its closed sides; the open ones lie on its edge.
func Around(shape geom.Rect, wall router.Length, open []model.Edge) geom.Rect {
	stock := shape.Grow(wall)
	for _, e := range open {
		stock = e.Onward(stock, -wall)
	}
	return stock
}

func drawTool(t *rapid.T) model.Tool {
	tool := Tool(rapid.Bool().Draw(t, "inches"))
	tool.Diameter = rapid.SampledFrom([]router.Length{3 * mm, 6 * mm, inch / 8, inch / 4, 3 * inch / 8, inch / 2, 6_351_237}).Draw(t, "bit")
	tool.Finish = rapid.SampledFrom([]router.Length{0, mm / 5, mm / 4, inch / 64}).Draw(t, "finish")
	tool.Stepover = tool.Diameter * router.Length(rapid.IntRange(30, 100).Draw(t, "step-over, %")) / 100
	tool.Stepdown = span(t, "step-down", mm, 6*mm)
	tool.Plunge = mm * router.Length(rapid.IntRange(300, 3000).Draw(t, "plunge, mm/min"))
	tool.Clearance = span(t, "clearance", 5*mm, 25*mm)
	tool.Entry = rapid.SampledFrom([]string{"ramp", "helix"}).Draw(t, "entry")
	tool.Passes = rapid.SampledFrom([]string{"rings", "parallel"}).Draw(t, "passes")
	tool.Relief = rapid.SampledFrom([]string{"none", "none", "diagonal", "long_side"}).Draw(t, "relief")
	tool.RampDegrees = float64(rapid.IntRange(15, 300).Draw(t, "ramp, tenths")) / 10
	return tool
}

// span draws a length in whole 1/64 in or tenths of a millimetre.
func span(t *rapid.T, name string, lo, hi router.Length) router.Length {
	grain := rapid.SampledFrom([]router.Length{inch / 64, mm / 10}).Draw(t, name+": grain")
	return lo + grain*router.Length(rapid.IntRange(0, int((hi-lo)/grain)).Draw(t, name))
}
