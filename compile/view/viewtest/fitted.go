package viewtest

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	mm   = length.Millimetre
	band = mm / 2
	gap  = inch / 8
)

// Fitted returns a fresh model of the same bar with all that finishes it: fronts,
// shelves on pins, an end panel, bored steel, openings bored by hand, outlets and
// skins of the knee wall, a slab in two pieces with a sink and a tap.
func Fitted() *model.Model {
	b := &bar{*Bar()}
	b.wall()
	for r := range b.Runs {
		run := &b.Runs[r]
		for i := range run.Boxes {
			if x := &run.Boxes[i]; x.Kind == model.Cabinet {
				b.fit(run.Frame, x)
			}
		}
	}
	front := &b.Runs[1]
	front.Free = []model.End{model.Right}
	end := b.panel("end_panel.end/panel", "END", "end panel", "end panel end", "outside", front.Frame, geom.Box{
		U: geom.Span{Lo: 72 * inch, Hi: 72*inch + ply}, V: geom.Span{Hi: depth + ply}, Z: geom.Span{Hi: height}}, back, up, right)
	end.Good = model.GoodDrawn
	b.boreSteel()
	b.finishKneeWall()
	b.slabPieces()
	return &b.Model
}

func (b *bar) part(id string) *model.Part {
	return &b.Parts[slices.IndexFunc(b.Parts, func(p model.Part) bool { return p.ID == id })]
}

func (b *bar) wall() {
	n, e := &b.Room.Walls[0], &b.Room.Walls[1]
	n.Outlets = append(n.Outlets, model.Outlet{Kind: "switch", Name: "lamp", Along: 100 * inch, Height: 48 * inch,
		Box: model.Size{Width: 2 * inch, Height: 3 * inch, Depth: 5 * inch / 2}})
	n.Base = model.Baseboard{Height: 4 * inch, Thickness: inch / 2, Along: geom.Span{Hi: n.Length}}
	e.Vents = []model.Vent{{Name: "air", Along: 20 * inch, Height: 6 * inch, Width: 10 * inch, Tall: 4 * inch}}
	k := b.part("cabinet.urn/back")
	k.Openings[0].Bit = inch / 2
	r := k.Openings[0].Shape.Bounds().Grow(-inch / 4)
	k.Openings[0].Corners = []geom.Point{{X: r.X.Lo, Y: r.Y.Lo}, {X: r.X.Hi, Y: r.Y.Lo}, {X: r.X.Hi, Y: r.Y.Hi}, {X: r.X.Lo, Y: r.Y.Hi}}
	k.Marks = []model.Mark{{Name: "stud 2", From: geom.Point{X: 61 * inch / 4}, To: geom.Point{X: 61 * inch / 4, Y: height}}}
}

// fit puts a pair of doors or one under a drawer or a false front before a box, two
// rows of pin holes into its sides, and two shelves on them.
func (b *bar) fit(f geom.Frame, x *model.Box) {
	name := x.Name
	for _, side := range [...]string{"left", "right"} {
		p := b.part("cabinet." + name + "/side-" + side)
		w, _ := p.Size()
		at := func(fromFront length.Length) length.Length {
			if side == "left" {
				return fromFront
			}
			return w - fromFront
		}
		for i := range length.Length(20) {
			y := 6*inch + i*32*mm
			for _, d := range [...]length.Length{37 * mm, w - 37*mm} {
				p.Bores = append(p.Bores, model.Bore{Name: "shelf pin", At: geom.Point{X: at(d), Y: y}, Diameter: 5 * mm, Depth: 12 * mm})
			}
		}
		for _, y := range [...]length.Length{229 * inch / 32, 24 * inch} {
			for _, off := range [...]length.Length{-16 * mm, 16 * mm} {
				p.Bores = append(p.Bores, model.Bore{Name: "hinge plate", At: geom.Point{X: at(50 * mm), Y: y + off}, Diameter: 5 * mm, Depth: 12 * mm})
			}
		}
		p.Bands = []model.Band{{Edge: model.LeftEdge, Stock: "banding.birch", Thickness: band}}
		if side == "right" {
			p.Bands[0].Edge = model.RightEdge
		}
		p.Good = model.GoodDrawn
	}
	for i := range 2 {
		z := length.Length(i+1) * 10 * inch
		s := b.panel(fmt.Sprintf("cabinet.%s/shelf-%d", name, i+1), fmt.Sprintf("%s-H%d", name, i+1), fmt.Sprintf("shelf %d", i+1), "cabinet "+name, "top", f,
			geom.Box{U: x.Hull.U.Grow(-ply - inch/16), V: geom.Span{Lo: skin, Hi: depth - inch/4}, Z: geom.Span{Lo: z, Hi: z + ply}}, right, back, up)
		s.Grain, s.Bands = model.GrainX, []model.Band{{Edge: model.Bottom, Stock: "banding.birch", Thickness: band}}
	}
	v := geom.Span{Lo: depth, Hi: depth + ply}
	upper := geom.Box{U: x.Hull.U.Grow(-gap / 2), V: v, Z: geom.Span{Lo: height - 6*inch, Hi: height - gap}}
	if name == "sink" {
		b.front(f, x, model.FalseFront, "false front", "FF", upper)
	} else {
		b.front(f, x, model.Drawer, "drawer 1", "D1", upper)
	}
	doors := upper
	doors.Z = geom.Span{Lo: 4 * inch, Hi: height - 6*inch - gap}
	if x.Hull.U.Size() <= 24*inch {
		b.front(f, x, model.Door, "door", "DO", doors)
		return
	}
	mid := doors.U.Mid()
	doors.U.Hi = mid - gap/2
	b.front(f, x, model.Door, "left door", "DL", doors)
	doors.U = geom.Span{Lo: mid + gap/2, Hi: upper.U.Hi}
	b.front(f, x, model.Door, "right door", "DR", doors)
}

func (b *bar) front(f geom.Frame, x *model.Box, kind model.FrontKind, name, code string, place geom.Box) {
	cut := place
	cut.U, cut.Z = cut.U.Grow(-band), cut.Z.Grow(-band)
	id := "cabinet." + x.Name + "/front-" + code
	p := b.panel(id, x.Name+"-"+code, name, "cabinet "+x.Name, "front", f, cut, right, up, front)
	p.Good = model.GoodBoth
	for e := model.Bottom; e <= model.LeftEdge; e++ {
		p.Bands = append(p.Bands, model.Band{Edge: e, Stock: "banding.birch", Thickness: band})
	}
	w, h := p.Size()
	fr := model.Front{Kind: kind, Name: name, Place: place, Part: id}
	bore := func(name string, at geom.Point, d, deep length.Length, far bool) {
		p.Bores = append(p.Bores, model.Bore{Name: name, At: at, Diameter: d, Depth: deep, Far: far})
	}
	switch kind {
	case model.Door:
		cup, handle := 45*mm/2-band, w-2*inch
		if code == "DR" {
			fr.Hinged, cup, handle = model.Right, w-cup, 2*inch
		}
		for _, z := range [...]length.Length{229 * inch / 32, 24 * inch} {
			fr.Hinges = append(fr.Hinges, z)
			bore("hinge cup", geom.Point{X: cup, Y: z - cut.Z.Lo}, 35*mm, 25*mm/2, true)
		}
		bore("handle", geom.Point{X: handle, Y: h - 2*inch}, 3*inch/16, 0, false)
		bore("handle", geom.Point{X: handle, Y: h - 2*inch - 96*mm}, 3*inch/16, 0, false)
	case model.Drawer:
		bore("handle", geom.Point{X: w/2 - 48*mm, Y: h - 2*inch}, 3*inch/16, 0, false)
		bore("handle", geom.Point{X: w/2 + 48*mm, Y: h - 2*inch}, 3*inch/16, 0, false)
	}
	x.Fronts = append(x.Fronts, fr)
}

// boreSteel gives each support two holes down into the plate and two slots up into
// the bar top.
func (b *bar) boreSteel() {
	for i := range b.KneeWalls[0].Supports {
		p := b.part(b.KneeWalls[0].Supports[i].Part)
		w, h := p.Size()
		for _, y := range [...]length.Length{inch, 5 * inch / 2} {
			p.Bores = append(p.Bores, model.Bore{Name: "screw down", At: geom.Point{X: w / 2, Y: y}, Diameter: 7 * inch / 32, Sink: 7 * inch / 16})
		}
		for _, y := range [...]length.Length{h - 5*inch, h - inch} {
			p.Bores = append(p.Bores, model.Bore{Name: "screw up", At: geom.Point{X: w / 2, Y: y}, Diameter: inch / 4, Slot: inch / 2, Across: true, Far: true, Sink: inch / 2})
		}
	}
}

// finishKneeWall sets an outlet into either face, and lays two skin panels on the
// room's side, battens and a cap on them, and a skin and a corner on the right end.
func (b *bar) finishKneeWall() {
	k := &b.KneeWalls[0]
	fr := k.Framing
	b.Parts = slices.DeleteFunc(b.Parts, func(p model.Part) bool { return p.ID == "knee_wall.bar/skin-room" })
	outlet := func(name, face string, u, z length.Length, out geom.Span, cover geom.Span) {
		o := model.KneeOutlet{Name: name, Face: face, ByRule: true}
		o.Box = geom.Box{U: geom.Span{Lo: u - inch, Hi: u + inch}, V: out, Z: geom.Span{Lo: z - 3*inch/2, Hi: z + 3*inch/2}}
		o.Clear = geom.Box{U: o.Box.U.Grow(inch / 16), V: out, Z: o.Box.Z.Grow(inch / 16)}
		o.Cover = geom.Box{U: geom.Span{Lo: u - 11*inch/8, Hi: u + 11*inch/8}, V: cover, Z: geom.Span{Lo: z - 9*inch/4, Hi: z + 9*inch/4}}
		k.Outlets = append(k.Outlets, o)
	}
	outlet("guests", "room", 20*inch, 24*inch, geom.Span{Lo: fr.V.Lo, Hi: fr.V.Lo + 5*inch/2}, geom.Span{Lo: fr.V.Lo - skin - inch/4, Hi: fr.V.Lo - skin})
	outlet("mixer", "work", 44*inch, 76*inch/2, geom.Span{Lo: fr.V.Hi - 5*inch/2, Hi: fr.V.Hi}, geom.Span{Lo: 0, Hi: inch / 4})
	z := geom.Span{Lo: inch / 4, Hi: 81*inch/2 - inch/16}
	onRoom := geom.Span{Lo: fr.V.Lo - skin, Hi: fr.V.Lo}
	over := geom.Span{Lo: onRoom.Lo - skin, Hi: onRoom.Lo}
	sheet := func(code, name string, u, v, z geom.Span, xs, out geom.Dir) *model.Part {
		p := b.panel("skin.bar/"+code, "bar-"+code, name, "skin bar", "room", k.Frame, geom.Box{U: u, V: v, Z: z}, xs, up, out)
		p.Stock, p.Good = "sheet.thin", model.GoodDrawn
		return p
	}
	p := sheet("RM1", "skin room, piece 1", geom.Span{Lo: 0, Hi: 48 * inch}, onRoom, z, left, back)
	opening(p, "outlet guests", geom.R(48*inch-20*inch-17*inch/16, 24*inch-z.Lo-25*inch/16, 48*inch-20*inch+17*inch/16, 24*inch-z.Lo+25*inch/16))
	sheet("RM2", "skin room, piece 2", geom.Span{Lo: 48 * inch, Hi: 72 * inch}, onRoom, z, left, back)
	sheet("RMC", "cap", geom.Span{Hi: 72 * inch}, over, geom.Span{Lo: z.Hi - 3*inch, Hi: z.Hi}, left, back)
	room := model.Skin{Name: "room", Face: "room", Box: geom.Box{U: fr.U, V: onRoom, Z: z}, Seams: []length.Length{48 * inch},
		Battens: []length.Length{inch, 24 * inch, 36 * inch, 48 * inch}}
	for i, u := range room.Battens {
		sheet(fmt.Sprintf("RB%d", i+1), fmt.Sprintf("batten %d", i+1), geom.Span{Lo: u - inch, Hi: u + inch}, over, geom.Span{Lo: z.Lo, Hi: z.Hi - 3*inch}, left, back)
	}
	atEnd := geom.Span{Lo: fr.U.Hi, Hi: fr.U.Hi + skin}
	endV := geom.Span{Lo: fr.V.Lo - skin, Hi: fr.V.Hi}
	sheet("EN1", "skin end", atEnd, endV, z, back, right)
	sheet("CR1", "corner, room", geom.Span{Lo: 70 * inch, Hi: atEnd.Hi + skin}, over, z, left, back)
	sheet("CR2", "corner, end", geom.Span{Lo: atEnd.Hi, Hi: atEnd.Hi + skin}, geom.Span{Lo: onRoom.Lo, Hi: onRoom.Lo + 2*inch}, z, back, right)
	work := geom.Box{U: fr.U, V: geom.Span{Lo: -skin, Hi: 0}, Z: geom.Span{Lo: 289 * inch / 8, Hi: 81 * inch / 2}}
	k.Skins = []model.Skin{room,
		{Name: "work", Face: "work", Box: work},
		{Name: "end", Face: "right", Box: geom.Box{U: atEnd, V: endV, Z: z}}}
	k.Lines = []model.ScrewLine{{Stud: 3, Box: "bins", FromLeft: 2*inch - ply, Z: geom.Span{Lo: 5 * inch, Hi: 33 * inch}}}
	k.Uneven = []model.Uneven{{What: "stud 3", By: "outlet guests", Off: -inch / 2}}
}

// slabPieces cuts the counter in two, with a sink and a tap in the left piece.
func (b *bar) slabPieces() {
	sl := &b.Slabs[0]
	for i, u := range [...]geom.Span{{Hi: 40 * inch}, {Lo: 40 * inch, Hi: 72 * inch}} {
		box := sl.Box
		box.U = u
		p := b.panel(fmt.Sprintf("counter.work/piece-%d", i+1), fmt.Sprintf("WORK-C%d", i+1), fmt.Sprintf("piece %d", i+1), "counter work", "top", sl.Frame, box, right, back, up)
		p.Kind, p.Stock, p.Grain, p.Good = model.SlabPiece, "slab.maple", model.GrainX, model.GoodDrawn
		sl.Parts = append(sl.Parts, p.ID)
		if i == 0 {
			sink := geom.RoundedContour(geom.R(5*inch, 3*inch, 25*inch, 18*inch), inch)
			p.Openings = append(p.Openings, model.Opening{Name: "sink wash", Shape: sink.Reversed()})
			p.Bores = append(p.Bores, model.Bore{Name: "tap wash", At: geom.Point{X: 15 * inch, Y: depth + inch - 5*inch/2}, Diameter: 35 * mm})
		}
	}
}
