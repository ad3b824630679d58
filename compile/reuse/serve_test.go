package reuse_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang/length"
)

const (
	inch = length.Inch
	mm   = length.Millimetre
)

var builds = model.Build{Unit: length.Inches, Marks: inch / 16}

// pair opens two builds that have one part each.
func pair(old, new *model.Part, within reuse.Length) *reuse.Pair {
	return reuse.Open(&model.Model{Build: builds, Parts: []model.Part{*old}}, &model.Model{Build: builds, Parts: []model.Part{*new}}, within)
}

func rect(x, y, x1, y1 reuse.Length) geom.Contour { return geom.RectContour(geom.R(x, y, x1, y1)) }

// panel is of birch, its grain up, drawn from the inside: its front edge is the left one.
func panel(x, y reuse.Length, also ...func(*model.Part)) *model.Part {
	p := &model.Part{
		ID: "cabinet.urn/side-left", Label: "URN-L", Name: "left side", Kind: model.Panel,
		Stock: "sheet.birch", Material: "birch plywood", Thickness: 23 * inch / 32, Face: "inside", Good: model.GoodDrawn,
		Outline: rect(0, 0, x, y), Grain: model.GrainY,
		Placement: geom.Placement{X: geom.Dir{Axis: geom.V, Neg: true}, Y: geom.Dir{Axis: geom.Z}, Out: geom.Dir{Axis: geom.U}},
	}
	for _, f := range also {
		f(p)
	}
	return p
}

func as(id, face string) func(*model.Part) {
	return func(p *model.Part) {
		p.ID, p.Face = id, face
		p.Placement.X = geom.Dir{Axis: geom.U}
	}
}

func opened(name string, x, y, x1, y1 reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		p.Openings = append(p.Openings, model.Opening{Name: name, Shape: rect(x, y, x1, y1).Reversed()})
	}
}

func hole(name string, x, y, r reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		p.Openings = append(p.Openings, model.Opening{Name: name, Shape: geom.CircleContour(geom.Point{X: x, Y: y}, r).Reversed()})
	}
}

func recessed(name string, x, y, x1, y1, deep reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		p.Recesses = append(p.Recesses, model.Recess{Name: name, Shape: rect(x, y, x1, y1), Depth: deep})
	}
}

// pocket is open at the upper edge of lumber 3 1/2 in wide; its two inner corners are round.
func pocket(x, deep, radius reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		c := geom.RoundedContour(geom.R(x, inch/2, x+3*inch, 7*inch/2), radius)
		c[3] = geom.Vertex{Point: at(x+3*inch, 7*inch/2)}
		c[4] = geom.Vertex{Point: at(x, 7*inch/2)}
		c = slices.Delete(c, 5, 7)
		p.Recesses = append(p.Recesses, model.Recess{Name: "support 2", Shape: c, Depth: deep, Open: []model.Edge{model.Top}})
	}
}

func bored(b model.Bore, at ...geom.Point) func(*model.Part) {
	return func(p *model.Part) {
		for _, q := range at {
			b.At = q
			p.Bores = append(p.Bores, b)
		}
	}
}

func banded(edges ...model.Edge) func(*model.Part) {
	return func(p *model.Part) {
		for _, e := range edges {
			p.Bands = append(p.Bands, model.Band{Edge: e, Stock: "banding.birch", Thickness: inch / 50})
		}
	}
}

func lipped(t reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		p.Bands = append(p.Bands, model.Band{Edge: model.LeftEdge, Stock: "banding.oak", Thickness: t})
	}
}

func otherBand(p *model.Part) { p.Bands[0].Stock = "banding.oak" }

func marked(x reuse.Length) func(*model.Part) {
	return func(p *model.Part) {
		p.Marks = append(p.Marks, model.Mark{Name: "stud 1", From: geom.Point{X: x}, To: geom.Point{X: x, Y: 20 * inch}})
	}
}

func steel(p *model.Part) {
	p.Kind, p.Stock, p.Grain, p.Good = model.Steel, "flat_bar.arm", model.GrainNone, model.GoodNone
}

func slab(p *model.Part) {
	p.Kind, p.Stock, p.Grain, p.ID = model.SlabPiece, "slab.oak", model.GrainX, "counter.work/piece-1"
	p.Placement = geom.Placement{}
}

func thick(t reuse.Length) func(*model.Part) { return func(p *model.Part) { p.Thickness = t } }

func outlined(c geom.Contour) func(*model.Part) { return func(p *model.Part) { p.Outline = c } }

func faced(good model.Good) func(*model.Part) { return func(p *model.Part) { p.Good = good } }

// lumber is a length of two by four; x by y is the face that is drawn.
func lumber(x, y, t reuse.Length, also ...func(*model.Part)) *model.Part {
	p := &model.Part{
		ID: "knee_wall.bar/stud-1", Name: "stud 1", Kind: model.Lumber, Stock: "stick.two", Material: "two by four", Thickness: t,
		Face: "work side", Outline: rect(0, 0, x, y), Grain: model.GrainY, Placement: geom.Placement{X: geom.Dir{Axis: geom.U}, Y: geom.Dir{Axis: geom.Z}},
	}
	if x > y {
		p.Grain = model.GrainX
	}
	for _, f := range also {
		f(p)
	}
	return p
}

func at(x, y reuse.Length) geom.Point { return geom.Point{X: x, Y: y} }

var (
	cup    = model.Bore{Name: "hinge cup", Diameter: 35 * mm, Depth: 25 * mm / 2}
	handle = model.Bore{Name: "handle", Diameter: 3 * inch / 16}
	plate  = model.Bore{Name: "hinge plate", Diameter: 5 * mm, Depth: 12 * mm}
)

// TestADeeperBore: blind ones may be 1.6 mm deeper than wanted, where that meets nothing.
func TestADeeperBore(t *testing.T) {
	pin := func(deep reuse.Length, behind bool) func(*model.Part) {
		return bored(model.Bore{Name: "shelf pin", Diameter: 5 * mm, Depth: deep, Far: behind}, at(40*mm, 50*mm), at(40*mm, 80*mm))
	}
	for _, c := range []struct {
		name     string
		old, new []func(*model.Part)
		want     model.FateKind
	}{
		{"at its place", []func(*model.Part){pin(10*mm, false)}, []func(*model.Part){pin(84*mm/10, false)}, model.Unchanged},
		{"from the other face", []func(*model.Part){pin(10*mm, true)}, []func(*model.Part){pin(84*mm/10, true)}, model.Unchanged},
		{"by a little more", []func(*model.Part){pin(10*mm, false)}, []func(*model.Part){pin(84*mm/10-1, false)}, model.Patch},
		{"by a little more, from the other face", []func(*model.Part){pin(10*mm, true)}, []func(*model.Part){pin(84*mm/10-1, true)}, model.Patch},
		{"wanted deeper", []func(*model.Part){pin(84*mm/10, false)}, []func(*model.Part){pin(10*mm, false)}, model.Rework},
		{"not wanted, and no deeper than that", []func(*model.Part){pin(mm, false)}, nil, model.Patch},
		{"through", []func(*model.Part){pin(0, false)}, []func(*model.Part){pin(17*mm, false)}, model.Patch},
		{
			"into a recess on the other face", []func(*model.Part){pin(9*mm, true), recessed("groove", 30*mm, 0, 45*mm, 300*mm, 95*mm/10)},
			[]func(*model.Part){pin(8*mm, true), recessed("groove", 30*mm, 0, 45*mm, 300*mm, 95*mm/10)}, model.Patch,
		},
		{
			"near a recess on the other face", []func(*model.Part){pin(9*mm, true), recessed("groove", 30*mm, 0, 45*mm, 300*mm, 9*mm)},
			[]func(*model.Part){pin(8*mm, true), recessed("groove", 30*mm, 0, 45*mm, 300*mm, 9*mm)}, model.Unchanged,
		},
	} {
		piece, part := panel(200*mm, 300*mm, append(c.old, thick(18*mm), faced(model.GoodNone))...), panel(200*mm, 300*mm, append(c.new, thick(18*mm), faced(model.GoodNone))...)
		if fit, ok := pair(piece, part, inch/64).Serve(piece, part); !ok || fit.Kind != c.want {
			t.Errorf("%s: %v %+v, want %v", c.name, ok, fit, c.want)
		}
	}
}

// TestServe takes pieces and parts whose answer is worked out by hand.
func TestServe(t *testing.T) {
	notched := geom.Cut(geom.R(0, 0, 24*inch, 34*inch), []geom.Rect{geom.R(0, 0, 3*inch, 4*inch)})[0]
	deeper := geom.Cut(geom.R(0, 0, 24*inch, 34*inch), []geom.Rect{geom.R(0, 0, 7*inch/2, 4*inch)})[0]
	for _, c := range []struct {
		name     string
		old, new *model.Part
		want     string // kind, and the steps; empty where it cannot serve
	}{
		{"the same", panel(24*inch, 34*inch), panel(24*inch, 34*inch), "unchanged"},
		{"within a little", panel(24*inch, 34*inch), panel(24*inch+inch/100, 34*inch), "unchanged"},
		{"trimmed", panel(24*inch, 34*inch), panel(24*inch, 34*inch-inch/4), "rework\ntrim: trim 1/4 in off the top edge (to 33 3/4 in)"},
		{
			"a notch keeps its corner", panel(24*inch, 34*inch, outlined(notched)), panel(24*inch-inch, 34*inch, outlined(geom.Cut(geom.R(0, 0, 23*inch, 34*inch), []geom.Rect{geom.R(0, 0, 3*inch, 4*inch)})[0])),
			"rework\ntrim: trim 1 in off the rear edge (to 23 in)",
		},
		{"a larger notch", panel(24*inch, 34*inch, outlined(notched)), panel(24*inch, 34*inch, outlined(deeper)), "rework\nenlarge: enlarge the notch at the lower left corner by 1/2 in to the right"},
		{
			"a smaller notch", panel(24*inch, 34*inch, outlined(deeper)), panel(24*inch, 34*inch, outlined(notched)),
			"patch\nfill: fill the notch at the lower left corner by 1/2 in on the right; it would show on the inside, a seen face",
		},
		{"an outlet", panel(24*inch, 34*inch), panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), "rework\ncut: cut the opening for outlet urn"},
		{
			"an outlet moved", panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), panel(24*inch, 34*inch, opened("outlet urn", 12*inch, 4*inch, 15*inch, 8*inch)),
			"patch\nfill: fill the old opening for outlet urn, 3 x 4 in; it would show on the inside, a seen face\ncut: cut the opening for outlet urn",
		},
		{
			"an outlet moved a little", panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), panel(24*inch, 34*inch, opened("outlet urn", 9*inch/2, 4*inch, 15*inch/2, 8*inch)),
			"patch\nfill: fill the opening for outlet urn by 1/2 in on the left; it would show on the inside, a seen face\nenlarge: enlarge the opening for outlet urn by 1/2 in to the right",
		},
		{
			"an outlet smaller, seen from neither face", panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch), faced(model.GoodNone)),
			panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 15*inch/2), faced(model.GoodNone)),
			"patch\nfill: fill the opening for outlet urn by 1/2 in above; it would show on no face that is to be seen",
		},
		{
			"more than a quarter to fill", panel(24*inch, 34*inch, opened("vent", 2*inch, 2*inch, 22*inch, 32*inch)), panel(24*inch, 34*inch), "",
		},
		{
			"a plug in steel", panel(5*inch, 12*inch, bored(handle, at(2*inch, 3*inch)), steel), panel(5*inch, 12*inch, steel), "",
		},
		{
			"a hole more in steel", panel(5*inch, 12*inch, steel), panel(5*inch, 12*inch, bored(handle, at(2*inch, 3*inch)), steel), "rework\ndrill: drill 1 handle bore of 3/16 in",
		},
		{
			"bores that are alike are one step", panel(35*inch, 10*inch, bored(handle, at(15*inch, 9*inch), at(19*inch, 9*inch)), recessed("groove", 0, inch/2, 35*inch, 3*inch/4, inch/4)),
			panel(35*inch, 7*inch, bored(handle, at(15*inch, 6*inch), at(19*inch, 6*inch)), recessed("groove", 0, inch/2, 35*inch, 3*inch/4, inch/4)),
			"rework\ntrim: trim 3 in off the top edge (to 7 in)\ndrill: drill 2 handle bores of 3/16 in",
		},
		{
			"a slab too short", panel(60*inch, 24*inch, slab), panel(61*inch, 24*inch, slab), "",
		},
		{
			"a slab cut to length and width", panel(61*inch, 25*inch, slab), panel(60*inch, 24*inch, slab),
			"rework\ntrim: cut to length, 60 in: 1 in off the right end\ntrim: trim 1 in off the top edge (to 24 in)",
		},
		{
			"a plug in lumber", lumber(60*inch, 7*inch/2, 3*inch/2, bored(handle, at(20*inch, inch))), lumber(60*inch, 7*inch/2, 3*inch/2),
			"patch\nplug: plug 1 handle bore of 3/16 in; it would show on no face that is to be seen",
		},
		{
			"a recess to fill in lumber", lumber(60*inch, 7*inch/2, 3*inch/2, recessed("support 2", 20*inch, 0, 25*inch, 7*inch/2, inch/2)),
			lumber(60*inch, 7*inch/2, 3*inch/2), "",
		},
		{
			"a recess that a bit left deepened in lumber", lumber(60*inch, 7*inch/2, 3*inch/2, pocket(20*inch, inch/2, inch/8)),
			lumber(60*inch, 7*inch/2, 3*inch/2, pocket(20*inch, 5*inch/8, inch/8)), "rework\ndeepen: deepen the recess support 2 by 1/8 in",
		},
		{
			"a recess with rounder corners", lumber(60*inch, 7*inch/2, 3*inch/2, pocket(20*inch, inch/2, inch/8)),
			lumber(60*inch, 7*inch/2, 3*inch/2, pocket(20*inch, inch/2, inch/2)), "",
		},
		{
			"a countersink", panel(5*inch, 12*inch, bored(handle, at(2*inch, 3*inch))), panel(5*inch, 12*inch, bored(model.Bore{Name: "handle", Diameter: 3 * inch / 16, Sink: inch / 2}, at(2*inch, 3*inch))),
			"rework\ndrill: countersink 1 handle bore of 3/16 in to 1/2 in",
		},
		{
			"a bore where a cone is to be", panel(5*inch, 12*inch, bored(model.Bore{Name: "pin", Diameter: inch / 2, Depth: inch / 8}, at(2*inch, 3*inch))),
			panel(5*inch, 12*inch, bored(model.Bore{Name: "handle", Diameter: inch / 8, Sink: inch / 2}, at(2*inch, 3*inch))),
			"patch\nplug: plug 1 pin bore of 1/2 in; it would show on the inside, a seen face\ndrill: drill 1 handle bore of 1/8 in; it runs into what is made up",
		},
		{
			"thicker banding", panel(24*inch, 34*inch, banded(model.LeftEdge)),
			panel(24*inch, 34*inch, banded(model.LeftEdge), func(p *model.Part) { p.Bands[0].Thickness = inch / 10 }), "rework\npeel: take the banding off the front edge\nband: band the front edge anew",
		},
		{
			"a toe kick too low", panel(24*inch, 4*inch, as("cabinet.urn/toe-kick", "front")), panel(24*inch, 9*inch/2, as("cabinet.urn/toe-kick", "front")),
			"patch\nextend: a strip 1/2 in wide is missing along the top edge; it would show on the front face, a seen face",
		},
		{
			"a larger hole", panel(24*inch, 34*inch, hole("stub drain", 5*inch, 5*inch, inch)), panel(24*inch, 34*inch, hole("stub drain", 5*inch, 5*inch, inch+inch/8)),
			"rework\nenlarge: enlarge the opening for stub drain by 1/8 in all round",
		},
		{
			"an opening wider to the left", panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), panel(24*inch, 34*inch, opened("outlet urn", 4*inch-inch/8, 4*inch, 7*inch, 8*inch)),
			"rework\nenlarge: enlarge the opening for outlet urn by 1/8 in to the left",
		},
		{
			"a deeper recess", lumber(60*inch, 7*inch/2, 3*inch/2, recessed("support 2", 20*inch, 0, 25*inch, 7*inch/2, inch/2)),
			lumber(60*inch, 7*inch/2, 3*inch/2, recessed("support 2", 20*inch, 0, 25*inch, 7*inch/2, 9*inch/16)),
			"rework\ndeepen: deepen the recess support 2 by 1/16 in",
		},
		{
			"bores", panel(24*inch, 34*inch), panel(24*inch, 34*inch, bored(plate, at(2*inch, 3*inch), at(2*inch, 5*inch), at(2*inch, 30*inch), at(2*inch, 32*inch))),
			"rework\ndrill: drill 4 hinge plate bores of 5 mm, 12 mm deep",
		},
		{
			"a bore moved by less than itself", panel(24*inch, 34*inch, bored(plate, at(2*inch, 3*inch))), panel(24*inch, 34*inch, bored(plate, at(2*inch+3*mm, 3*inch))),
			"patch\nplug: plug 1 hinge plate bore of 5 mm; it would show on the inside, a seen face\ndrill: drill 1 hinge plate bore of 5 mm, 12 mm deep; it runs into what is made up",
		},
		{"banding stays", panel(24*inch, 34*inch, banded(model.LeftEdge)), panel(23*inch, 34*inch, banded(model.LeftEdge)), "rework\ntrim: trim 1 in off the rear edge (to 23.02 in)"},
		{
			"banding on both", panel(24*inch, 34*inch, banded(model.LeftEdge, model.RightEdge)), panel(23*inch, 34*inch, banded(model.LeftEdge, model.RightEdge)),
			"rework\ntrim: trim 1.02 in off the banded rear edge (to 23.02 in)\nband: band the rear edge anew",
		},
		{
			"a little too large, with something cut in the middle", panel(24*inch+inch/32, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)),
			panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), "rework\ntrim: trim 1/32 in off the rear edge (to 24 in)",
		},
		{
			"the outlet in the middle of both", panel(24*inch+inch/32, 34*inch, opened("outlet urn", 4*inch+inch/64, 4*inch, 7*inch+inch/64, 8*inch)),
			panel(24*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)), "rework\ntrim: trim 1/32 in off the rear edge (to 24 in)",
		},
		{
			"a skin a little too small", panel(24*inch-inch/32, 34*inch, as("skin.room/piece-1", "outside"), opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)),
			panel(24*inch, 34*inch, as("skin.room/piece-1", "outside"), opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)),
			"patch\nextend: a strip 1/32 in wide is missing along the right edge; it would show on the outside, a seen face",
		},
		{"as large with its banding", panel(24*inch-inch/50, 34*inch, banded(model.LeftEdge)), panel(24*inch, 34*inch), "unchanged"},
		{
			"as large with banding all round, a bore counted from its edge",
			panel(15*inch-inch/25, 30*inch-inch/25, banded(model.LeftEdge, model.RightEdge, model.Top, model.Bottom), bored(cup, at(inch-inch/50, 4*inch-inch/50))),
			panel(15*inch, 30*inch, bored(cup, at(inch, 4*inch))), "unchanged",
		},
		{"too large by its banding", panel(24*inch, 34*inch, banded(model.LeftEdge)), panel(24*inch, 34*inch), "rework\npeel: take the banding off the front edge"},
		{
			"too large by more than its banding", panel(24*inch, 34*inch, banded(model.RightEdge)), panel(23*inch, 34*inch, opened("outlet urn", 4*inch, 4*inch, 7*inch, 8*inch)),
			"rework\ntrim: trim 1.02 in off the banded rear edge (to 23 in)\ncut: cut the opening for outlet urn",
		},
		{"to be banded", panel(24*inch, 34*inch), panel(24*inch-inch/50, 34*inch, banded(model.LeftEdge)), "rework\ntrim: trim 0.02 in off the front edge (to 23.98 in)\nband: band the front edge"},
		{
			"to be banded all round", panel(24*inch, 34*inch), panel(24*inch-inch/100, 34*inch-inch/100, banded(model.LeftEdge, model.Bottom)),
			"rework\nband: band the bottom edge\nband: band the front edge",
		},
		{"a thick band planed", panel(24*inch, 34*inch, lipped(inch/2)), panel(24*inch+inch/4, 34*inch), "rework\ntrim: trim 1/4 in off the banded front edge (to 24 1/4 in)"},
		{"other banding", panel(24*inch, 34*inch, banded(model.LeftEdge)), panel(24*inch, 34*inch, banded(model.LeftEdge), otherBand), "rework\npeel: take the banding off the front edge\nband: band the front edge anew"},
		{
			"narrower, banded on the edge to trim", panel(24*inch, 34*inch, banded(model.LeftEdge), bored(plate, at(20*inch, 3*inch))), panel(47*inch/2, 34*inch, banded(model.LeftEdge), bored(plate, at(39*inch/2, 3*inch))),
			"rework\ntrim: trim 0.52 in off the banded front edge (to 23 1/2 in)\nband: band the front edge anew",
		},
		{
			"half an inch off either end", panel(24*inch, 34*inch, bored(handle, at(12*inch, 3*inch))), panel(23*inch, 34*inch, bored(handle, at(23*inch/2, 3*inch))),
			"rework\ntrim: trim 1/2 in off the rear edge (to 23 1/2 in)\ntrim: trim 1/2 in off the front edge (to 23 in)",
		},
		{"banding off", panel(24*inch, 34*inch, banded(model.LeftEdge, model.Top)), panel(24*inch, 34*inch, banded(model.LeftEdge)), "rework\npeel: take the banding off the top edge"},
		{"marks", panel(24*inch, 34*inch, marked(3*inch)), panel(24*inch, 34*inch, marked(4*inch)), "rework\nmark: draw the marks anew"},
		{"marks cut off with the board", panel(24*inch, 20*inch, marked(3*inch)), panel(24*inch, 18*inch, marked(3*inch), func(p *model.Part) { p.Marks[0].To.Y = 18 * inch }), "rework\ntrim: trim 2 in off the top edge (to 18 in)"},
		{"no marks", panel(24*inch, 34*inch, marked(3*inch)), panel(24*inch, 34*inch), "rework\nmark: rub out the marks, which hold no longer"},
		{
			"a door turned to hang on the other side", panel(15*inch, 30*inch, bored(cup, at(inch, 4*inch), at(inch, 26*inch)), faced(model.GoodFar)),
			panel(15*inch, 30*inch, bored(cup, at(14*inch, 4*inch), at(14*inch, 26*inch)), faced(model.GoodFar)), "unchanged",
		},
		{
			"a recess on the other face", panel(15*inch, 30*inch, recessed("groove", inch, 0, 2*inch, 30*inch, inch/4)),
			panel(15*inch, 30*inch, recessed("groove", 2*inch, 0, 4*inch, 30*inch, inch/4), faced(model.GoodNone)), "patch",
		},
		{
			"a shelf out of a longer shelf", panel(28*inch, 12*inch, as("cabinet.urn/shelf-1", "top"), func(p *model.Part) { p.Grain = model.GrainX }),
			panel(20*inch, 12*inch, as("cabinet.urn/shelf-1", "top"), func(p *model.Part) { p.Grain = model.GrainX }), "rework\ntrim: trim 8 in off the right edge (to 20 in)",
		},
		{
			"a back measured anew", panel(24*inch, 34*inch, as("cabinet.urn/back", "inside")),
			panel(24*inch, 34*inch, as("cabinet.urn/back", "inside"), thick(7*inch/10)), "unchanged",
		},
		{"too thin", panel(24*inch, 34*inch), panel(24*inch, 34*inch, thick(inch/2)), ""},
		{"another board", panel(24*inch, 34*inch), panel(24*inch, 34*inch, func(p *model.Part) { p.Material = "oak plywood" }), ""},
		{"across the grain", panel(34*inch, 24*inch), panel(24*inch, 34*inch), ""},
		{"a side too short", panel(24*inch, 34*inch), panel(24*inch, 35*inch), ""},
		{
			"a back too short", panel(24*inch, 34*inch, as("cabinet.urn/back", "inside")), panel(24*inch, 35*inch, as("cabinet.urn/back", "inside")),
			"patch\nextend: a strip 1 in wide is missing along the top edge; it would show on the inside, a seen face",
		},
		{"a back much too short", panel(24*inch, 34*inch, as("cabinet.urn/back", "inside")), panel(24*inch, 50*inch, as("cabinet.urn/back", "inside")), ""},
		{"a face that was not seen", panel(24*inch, 34*inch, faced(model.GoodNone)), panel(24*inch, 34*inch), "rework\nlook: look whether the inside is good enough to be seen"},
		{"a stud lengthened", lumber(3*inch/2, 36*inch, 7*inch/2), lumber(3*inch/2, 37*inch, 7*inch/2), ""},
		{"a stud shortened", lumber(3*inch/2, 38*inch, 7*inch/2), lumber(3*inch/2, 36*inch, 7*inch/2), "rework\ntrim: cut to length, 36 in: 2 in off the top end"},
		{"a block out of a stud", lumber(3*inch/2, 38*inch, 7*inch/2), lumber(19*inch, 7*inch/2, 3*inch/2), "rework\ntrim: cut to length, 19 in: 19 in off the right end"},
		{"lumber turned to another face", lumber(3*inch/2, 38*inch, 7*inch/2), lumber(38*inch, 7*inch/2, 3*inch/2), "unchanged"},
		{
			"a plate for a stud", lumber(38*inch, 7*inch/2, 3*inch/2, recessed("support 1", 9*inch, 0, 11*inch, 7*inch/2, inch/2)),
			lumber(38*inch, 7*inch/2, 3*inch/2), "",
		},
	} {
		fit, ok := pair(c.old, c.new, inch/64).Serve(c.old, c.new)
		got := ""
		if ok {
			got = fit.Kind.String()
			for _, s := range fit.Steps {
				got += "\n" + s.Kind.String() + ": " + s.Text
				n := 1
				if s.Kind == model.Plug || s.Kind == model.Drill {
					fmt.Sscan(strings.Fields(s.Text)[1], &n) // "plug 4 hinge plate bores"
				}
				if s.Count != n {
					t.Errorf("%q is done to %d", s.Text, s.Count)
				}
			}
		}
		if got != c.want && !(c.want == "patch" && strings.HasPrefix(got, "patch")) {
			t.Errorf("%s:\n got  %s\n want %s", c.name, got, c.want)
		}
	}
}
