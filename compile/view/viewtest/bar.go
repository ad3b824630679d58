// Package viewtest holds a hand-built model for tests of what draws and writes
// models: a bar of two runs in a corner that is not square, with a knee wall,
// its supports, a bar top and a counter. Nothing in it is solved; positions
// are set down as a solver would leave them.
package viewtest

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

const (
	inch = length.Inch
	ply  = 23 * inch / 32
	skin = 3 * inch / 16
	wood = 3 * inch / 2

	height = 139 * inch / 4 // of boxes
	depth  = 93 * inch / 4
)

// bar builds the model piece by piece.
type bar struct{ model.Model }

// Bar returns a fresh model without views.
func Bar() *model.Model {
	b := &bar{}
	b.Build = model.Build{Name: "tool shed bar", Unit: length.Inches, Marks: inch / 32, Revision: "B"}
	b.Givens = []model.Given{{Name: "counter_top", Value: "36"}, {Name: "bar_top", Value: "43", Overridden: true}}
	north, east := b.room()
	back := geom.Frame{Origin: north.Frame.At(0, 0)}
	front := geom.Frame{Origin: east.Frame.At(62*inch+depth, 0), Turn: east.Frame.Turn + 90*geom.Degree}
	b.run("back", "north", true, back, []model.Box{
		{Kind: model.Cabinet, Name: "urn", Hull: at(0, 24*inch)},
		{Kind: model.Bay, Name: "cooler", Hull: at(24*inch, 97*inch/4)},
		{Kind: model.Cabinet, Name: "cups", Hull: at(193*inch/4, 36*inch)},
		{Kind: model.Cabinet, Name: "plates", Hull: at(337*inch/4, 75*inch/2)},
		{Kind: model.Filler, Name: "corner", Hull: at(487*inch/4, 3*inch/2)},
	})
	b.run("front", "east", false, front, []model.Box{
		{Kind: model.Cabinet, Name: "sink", Hull: at(0, 30*inch)},
		{Kind: model.Cabinet, Name: "bins", Hull: at(30*inch, 18*inch)},
		{Kind: model.Cabinet, Name: "kegs", Hull: at(48*inch, 24*inch)},
	})
	b.kneeWall(front)
	b.Slabs = []model.Slab{
		{Kind: "counter", Name: "work", Stock: "slab.maple", Frame: front, WeightKg: 36.2, Box: geom.Box{
			U: geom.Span{Hi: 72 * inch}, V: geom.Span{Hi: depth + inch}, Z: geom.Span{Lo: height, Hi: 36 * inch}}},
		{Kind: "bar_top", Name: "oak", Stock: "slab.oak", Frame: front, WeightKg: 41.75, Box: geom.Box{
			U: geom.Span{Hi: 145 * inch / 2}, V: geom.Span{Lo: -29 * inch / 2, Hi: inch}, Z: geom.Span{Lo: 81 * inch / 2, Hi: 42 * inch}}},
	}
	b.shop()
	b.findings()
	return &b.Model
}

func at(from, width length.Length) geom.Box {
	return geom.Box{U: geom.Span{Lo: from, Hi: from + width}, V: geom.Span{Hi: depth}, Z: geom.Span{Hi: height}}
}

func (b *bar) room() (north, east *model.Wall) {
	box := model.Size{Width: 2 * inch, Height: 3 * inch, Depth: 5 * inch / 2}
	n := model.Wall{Name: "north", Length: 493 * inch / 4, Corner: 90_400_000, Backing: "studs"}
	for u := 61 * inch / 4; u < n.Length; u += 16 * inch {
		n.Studs = append(n.Studs, u)
	}
	n.Outlets = []model.Outlet{
		{Kind: "outlet", Name: "urn", Along: 141 * inch / 8, Height: 31 * inch / 2, Box: box},
		{Kind: "outlet", Name: "cooler", Along: 40 * inch, Height: 31 * inch / 2, Box: box},
	}
	e := model.Wall{Name: "east", Length: 110 * inch, Corner: 90 * geom.Degree, Backing: "masonry",
		Frame: geom.Frame{Origin: n.Frame.At(n.Length, 0), Turn: 180*geom.Degree - n.Corner}}
	e.Stubs = []model.Stub{
		{Name: "cold", Along: 68 * inch, Height: 19 * inch, Diameter: 5 * inch / 8, StandsOut: 5 * inch / 2},
		{Name: "drain", Along: 74 * inch, Height: 13 * inch, Diameter: 19 * inch / 10, StandsOut: 3 * inch},
	}
	b.Room.Walls = []model.Wall{n, e}
	return &b.Room.Walls[0], &b.Room.Walls[1]
}

func (b *bar) run(name, wall string, along bool, f geom.Frame, boxes []model.Box) {
	r := model.Run{Name: name, Frame: f, Height: height, Depth: depth, Wall: wall, Along: along, Boxes: boxes}
	for i := range r.Boxes {
		x := &r.Boxes[i]
		r.Length = x.Hull.U.Hi
		switch x.Kind {
		case model.Cabinet:
			x.ToeHeight, x.ToeSetback = 4*inch, 3*inch
			b.cabinet(f, x)
		case model.Bay:
			x.BlockHeight = 5 * inch / 8
			x.Inside = x.Hull
			x.Appliance = geom.Box{U: x.Hull.U.Grow(-3 * inch / 8), V: geom.Span{Lo: inch / 2, Hi: 45 * inch / 2},
				Z: geom.Span{Lo: 5 * inch / 8, Hi: 5*inch/8 + 133*inch/4}}
			b.blocks(f, x)
		}
	}
	b.Runs = append(b.Runs, r)
}

// panel adds a rectangular part that lies in its box as the directions say.
func (b *bar) panel(id, label, name, owner, face string, f geom.Frame, box geom.Box, x, y, out geom.Dir) *model.Part {
	p := model.Part{ID: id, Label: label, Name: name, Owner: owner, Stock: "sheet.birch", Face: face, Grain: model.GrainY,
		Thickness: box.Along(out.Axis).Size(), Placement: geom.Placement{Frame: f, Box: box, X: x, Y: y, Out: out},
		Outline: geom.RectContour(geom.R(0, 0, box.Along(x.Axis).Size(), box.Along(y.Axis).Size()))}
	p.Why = model.Why{Block: owner, At: source.Range{File: "bar.hcl", Start: source.Pos{Line: 40 + len(b.Parts), Column: 3}}}
	b.Parts = append(b.Parts, p)
	return &b.Parts[len(b.Parts)-1]
}

var (
	right = geom.Dir{Axis: geom.U}
	left  = geom.Dir{Axis: geom.U, Neg: true}
	front = geom.Dir{Axis: geom.V}
	back  = geom.Dir{Axis: geom.V, Neg: true}
	up    = geom.Dir{Axis: geom.Z}
)

func (b *bar) cabinet(f geom.Frame, x *model.Box) {
	h, owner, id := x.Hull, "cabinet "+x.Name, "cabinet."+x.Name+"/"
	sides := geom.Box{V: geom.Span{Lo: skin, Hi: depth}, Z: h.Z}
	for i, u := range [...]geom.Span{{Lo: h.U.Lo, Hi: h.U.Lo + ply}, {Lo: h.U.Hi - ply, Hi: h.U.Hi}} {
		side, xs, out := "left", back, right
		if i == 1 {
			side, xs, out = "right", front, left
		}
		sides.U = u
		p := b.panel(id+"side-"+side, fmt.Sprintf("%s-%c", x.Name, side[0]), side+" side", owner, "inside", f, sides, xs, up, out)
		toeKick(p, i == 1)
	}
	within := geom.Span{Lo: h.U.Lo + ply, Hi: h.U.Hi - ply}
	part := func(name, label string, u, v, z geom.Span, xs, ys, out geom.Dir) *model.Part {
		return b.panel(id+name, x.Name+"-"+label, name, owner, "inside", f, geom.Box{U: u, V: v, Z: z}, xs, ys, out)
	}
	part("bottom", "B", within, sides.V, geom.Span{Lo: 4 * inch, Hi: 4*inch + ply}, right, front, up)
	part("stretcher-front", "SF", within, geom.Span{Lo: depth - 4*inch, Hi: depth}, geom.Span{Lo: height - ply, Hi: height}, right, front, up)
	part("stretcher-back", "SB", within, geom.Span{Lo: skin, Hi: skin + 4*inch}, geom.Span{Lo: height - ply, Hi: height}, right, front, up)
	part("toe-board", "T", within, geom.Span{Lo: depth - 3*inch - ply, Hi: depth - 3*inch}, geom.Span{Hi: 4 * inch}, right, up, front)
	p := part("back", "BK", h.U, geom.Span{Hi: skin}, h.Z, right, up, front)
	if x.Name == "urn" {
		opening(p, "outlet urn", geom.R(66*inch/4, 55*inch/4, 75*inch/4, 69*inch/4))
	}
}

func opening(p *model.Part, name string, r geom.Rect) {
	p.Openings = append(p.Openings, model.Opening{Name: name, Shape: geom.RectContour(r).Reversed()})
}

// blocks lays a strip under either side of an appliance; an eighth of an inch is
// left to pack.
func (b *bar) blocks(f geom.Frame, x *model.Box) {
	a := x.Appliance
	for i, u := range [...]geom.Span{{Lo: a.U.Lo, Hi: a.U.Lo + 5*inch/2}, {Lo: a.U.Hi - 5*inch/2, Hi: a.U.Hi}} {
		under := geom.Box{U: u, V: a.V, Z: geom.Span{Hi: inch / 2}}
		p := b.panel(fmt.Sprintf("bay.%s/block-%d", x.Name, i+1), fmt.Sprintf("%s-B%d", x.Name, i+1), "block", "bay "+x.Name, "top", f, under, right, front, up)
		p.Kind, p.Stock = model.Lumber, "stick.batten"
	}
}

// toeKick notches a side at its front, which is at the drawing's right or left.
func toeKick(p *model.Part, atRight bool) {
	w, _ := p.Size()
	x0, x1 := length.Length(0), 3*inch
	if atRight {
		x0, x1 = w-3*inch, w
	}
	notch := geom.R(x0, 0, x1, 4*inch)
	p.Openings = append(p.Openings, model.Opening{Name: "toe kick", Notch: true, Shape: geom.RectContour(notch)})
	pts := []geom.Point{{X: 0, Y: 4 * inch}, {X: x1, Y: 4 * inch}, {X: x1}, {X: w}, {X: w, Y: height}, {Y: height}}
	if atRight {
		pts = []geom.Point{{}, {X: x0}, {X: x0, Y: 4 * inch}, {X: w, Y: 4 * inch}, {X: w, Y: height}, {Y: height}}
	}
	p.Outline = nil
	for _, q := range pts {
		p.Outline = append(p.Outline, geom.Vertex{Point: q})
	}
	groove := geom.R(0, 4*inch, w, 4*inch+ply)
	p.Recesses = append(p.Recesses, model.Recess{ID: p.ID + "/bottom", Name: "groove for the bottom", Shape: geom.RectContour(groove),
		Depth: inch / 4, Open: []model.Edge{model.LeftEdge, model.RightEdge}})
}
