package viewtest

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

func (b *bar) kneeWall(f geom.Frame) {
	k := model.KneeWall{Name: "bar", Run: "front", Frame: f, BarTop: "oak", Framing: geom.Box{
		U: geom.Span{Hi: 72 * inch}, V: geom.Span{Lo: -skin - 7*inch/2, Hi: -skin}, Z: geom.Span{Hi: 81 * inch / 2}}}
	lumber := func(id, label, name, face string, box geom.Box, x, y, out geom.Dir) *model.Part {
		p := b.panel("knee_wall.bar/"+id, label, name, "knee wall bar", face, f, box, x, y, out)
		p.Kind, p.Stock = model.Lumber, "stick.two_by_four"
		return p
	}
	box := k.Framing
	box.Z = geom.Span{Hi: wood}
	lumber("plate-bottom", "K1", "bottom plate", "top", box, right, front, up)
	box.Z = geom.Span{Lo: 81*inch/2 - wood, Hi: 81 * inch / 2}
	top := *lumber("plate-top", "K2", "top plate", "top", box, right, front, up)
	box.Z = geom.Span{Lo: wood, Hi: 81*inch/2 - wood}
	for i, u := range [...]length.Length{wood / 2, 16 * inch, 32 * inch, 48 * inch, 64 * inch, 72*inch - wood/2} {
		k.Studs = append(k.Studs, u)
		box.U = geom.Span{Lo: u - wood/2, Hi: u + wood/2}
		lumber(fmt.Sprintf("stud-%d", i+1), fmt.Sprintf("K-S%d", i+1), "stud", "front", box, right, up, front)
	}
	for i, u := range [...]length.Length{8 * inch, 24 * inch, 40 * inch, 60 * inch} {
		steel := geom.Box{U: geom.Span{Lo: u - inch, Hi: u + inch}, V: geom.Span{Lo: k.Framing.V.Lo - 9*inch, Hi: k.Framing.V.Hi},
			Z: geom.Span{Lo: 81*inch/2 - inch/4, Hi: 81 * inch / 2}}
		id := fmt.Sprintf("knee_wall.bar/support-%d", i+1)
		p := b.panel(id, fmt.Sprintf("K-P%d", i+1), "support plate", "knee wall bar", "top", f, steel, right, front, up)
		p.Kind, p.Stock = model.Steel, "flat_bar.arm"
		recess := model.Recess{ID: id + "/recess", Name: fmt.Sprintf("support %d", i+1), Depth: inch / 4, Routed: true, Fit: inch / 64,
			Shape: geom.RectContour(geom.R(u-65*inch/64, 0, u+65*inch/64, 7*inch/2)), Open: []model.Edge{model.Bottom, model.Top}}
		top.Recesses = append(top.Recesses, recess)
		k.Supports = append(k.Supports, model.Support{Centre: u, Steel: steel, Part: id, Recess: recess.ID})
		b.Programs = append(b.Programs, model.Program{Name: fmt.Sprintf("bar-support-%d", i+1), Part: top.ID, PartLabel: "K2",
			Recess: recess.Name, RecessID: recess.ID, Zero: "at the pencil mark, on the edge that faces the room", Mark: u - 2*inch,
			Thick: wood, Depth: inch / 4, Seconds: 205.4, CutLength: 90 * inch, Levels: []length.Length{inch / 8, inch / 4},
			Tool: model.Tool{Router: "bench", Number: 1, Diameter: inch / 4, Flutes: 2, RPM: 18000, Feed: 60 * inch}})
	}
	for i := range b.Parts {
		if b.Parts[i].ID == top.ID {
			b.Parts[i] = top
		}
	}
	work := b.panel("knee_wall.bar/skin-work", "K4", "skin, work side", "knee wall bar", "work", f, geom.Box{
		U: k.Framing.U, V: geom.Span{Lo: -skin, Hi: 0}, Z: geom.Span{Lo: 289 * inch / 8, Hi: 81 * inch / 2}}, right, up, front)
	work.Grain = model.GrainX
	opening(work, "outlet blender", geom.R(12*inch, inch/2, 31*inch/2, 5*inch/2))
	work.Openings = append(work.Openings, model.Opening{Name: "cord", Shape: geom.CircleContour(geom.Point{X: 50 * inch, Y: 2 * inch}, 17*inch/16).Reversed()})
	b.panel("knee_wall.bar/skin-room", "K5", "skin, room side", "knee wall bar", "room", f, geom.Box{
		U: k.Framing.U, V: geom.Span{Lo: k.Framing.V.Lo - skin, Hi: k.Framing.V.Lo}, Z: geom.Span{Hi: 81 * inch / 2}}, left, up, back)
	b.KneeWalls = append(b.KneeWalls, k)
}

// shop sets down the lists, shortened: their sums need not be those of the parts.
func (b *bar) shop() {
	for i := range b.Parts {
		p := &b.Parts[i]
		x, y := p.Size()
		b.Cuts = append(b.Cuts, model.Cut{Parts: []string{p.Label}, Name: p.Name, Stock: p.Stock, Kind: p.Kind, Count: 1,
			Length: max(x, y), Width: min(x, y), Thickness: p.Thickness, Grain: p.Grain, Where: []string{p.Owner}})
	}
	b.Layouts = []model.Layout{
		{Stock: "sheet.birch", Kind: model.Panel, Pieces: 43, Length: 96 * inch, Width: 48 * inch, Bought: 6, AtLeast: 5, Waste: 0.218,
			Blanks: slices.Repeat([]model.Blank{{Length: 96 * inch, Width: 48 * inch}}, 6)},
		{Stock: "stick.two_by_four", Kind: model.Lumber, Pieces: 8, Length: 120 * inch, Bought: 5, AtLeast: 4, Waste: 0.0625,
			Blanks: append(slices.Repeat([]model.Blank{{Length: 120 * inch}}, 2), slices.Repeat([]model.Blank{{Length: 96 * inch}}, 3)...)},
	}
	b.Bill = []model.BillLine{
		{Section: "sheets", Item: "sheet.birch", Text: "birch plywood 23/32 in, 8 ft x 4 ft", Use: "carcasses", Quantity: 6, Unit: "sheet", Needed: "43 pieces", WeightKg: 121.4, Price: 68.5, Priced: true},
		{Section: "sticks", Item: "stick.two_by_four", Text: "softwood 1 1/2 x 3 1/2 in, 8 ft", Use: "knee wall", Quantity: 5, Unit: "stick", Needed: "31 ft 4 in", WeightKg: 19.25, Price: 4.2, Priced: true},
		{Section: "slabs", Item: "slab.oak", Text: "oak 1 1/2 in", Use: "bar top oak", Quantity: 7.8, Unit: "sq ft", Needed: "1 piece; 92.0 lb", WeightKg: 41.75},
		{Section: "screws", Item: "screw.wall", Text: "no. 10 x 3 in", Use: "cabinet backs to wall studs", Quantity: 2, Unit: "box of 50", Needed: "28 screws, as many as the backs meet studs, and as many again for the shims that stand behind them at each of the walls", Price: 9.9, Priced: true},
		{Section: "consumables", Item: "nail plates", Text: "nail plates", Use: "cables through studs", Unit: "piece", Needed: "not known"},
	}
}

func (b *bar) findings() {
	place := func(line int) source.Range {
		return source.Range{File: "bar.hcl", Start: source.Pos{Line: line, Column: 5}}
	}
	var l finding.List
	l.Warnf("few-studs", place(61), "width = 36", "Cabinet \"plates\" meets one stud; two are wanted.").Also(place(12), "the studs come from here")
	l.Notef("floor-flat-beyond", place(30), "Beyond the last reading the floor is taken as flat.")
	b.Findings = l
}
