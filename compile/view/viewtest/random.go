package viewtest

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// draws makes what a random bar is made of.
type draws struct{ *rapid.T }

const eighth = length.Inch / 8

func (d draws) inches(lo, hi int, what string) length.Length {
	return length.Length(rapid.IntRange(8*lo, 8*hi).Draw(d.T, what)) * eighth
}

func (d draws) name(what string) string {
	return rapid.StringMatching(`[a-zA-ZäßМ木 0-9]{0,14}|W{40}|<i>&"`).Draw(d.T, what)
}

func (d draws) count(hi int, what string) int { return rapid.IntRange(0, hi).Draw(d.T, what) }

// Random draws a bar without views: what is in it may be anywhere, and be called anything.
func Random(t *rapid.T) *model.Model {
	d := draws{t}
	m := &model.Model{Build: model.Build{
		Unit:  rapid.SampledFrom([]length.Unit{length.Inches, length.Millimetres, length.Feet}).Draw(t, "unit"),
		Marks: length.Inch / 32}}
	back := d.run("w", true)
	corner := geom.Angle(rapid.IntRange(50_000_000, 310_000_000).Draw(t, "corner"))
	w := model.Wall{Name: "w", Length: back.Length + d.inches(0, 30, "spare"), Corner: corner}
	w.Frame.Turn = geom.Angle(rapid.IntRange(-180_000_000, 180_000_000).Draw(t, "turn"))
	back.Frame = w.Frame
	for range d.count(6, "sites") {
		w.Outlets = append(w.Outlets, model.Outlet{Kind: "outlet", Name: d.name("outlet"), Along: d.inches(1, 60, "along"), Height: d.inches(4, 30, "at")})
		w.Stubs = append(w.Stubs, model.Stub{Name: d.name("stub"), Along: d.inches(1, 60, "along"), Height: d.inches(4, 30, "at"),
			Diameter: eighth, StandsOut: d.inches(0, 4, "out")})
	}
	side := model.Wall{Name: "side", Length: d.inches(40, 120, "side"), Corner: 90 * geom.Degree,
		Frame: geom.Frame{Origin: w.Frame.At(w.Length, 0), Turn: w.Frame.Turn + 180*geom.Degree - corner}}
	front := d.run("side", false)
	front.Frame = geom.Frame{Origin: side.Frame.At(d.inches(30, 60, "place")+front.Depth, 0), Turn: side.Frame.Turn + 90*geom.Degree}
	m.Room.Walls = []model.Wall{w, side}
	m.Runs = []model.Run{back, front}
	d.kneeWall(m, &m.Runs[1])
	m.Parts = append(m.Parts, d.part())
	return m
}

func (d draws) run(wall string, along bool) model.Run {
	r := model.Run{Name: d.name("run"), Wall: wall, Along: along, Height: d.inches(20, 40, "height"), Depth: d.inches(10, 30, "depth")}
	for i := range 1 + d.count(11, "boxes") {
		b := model.Box{Kind: rapid.SampledFrom([]model.BoxKind{model.Cabinet, model.Bay, model.Filler}).Draw(d.T, "kind"), Name: d.name("name")}
		width := d.inches(1, 40, "width")
		if i%3 == 2 {
			width = length.Length(1+d.count(15, "narrow")) * eighth
		}
		b.Hull = geom.Box{U: geom.Span{Lo: r.Length, Hi: r.Length + width}, V: geom.Span{Hi: r.Depth}, Z: geom.Span{Hi: r.Height}}
		if b.Kind == model.Cabinet {
			b.Fronts = d.fronts(b.Hull)
		}
		if b.Kind == model.Bay {
			b.BlockHeight = d.inches(0, 2, "block")
			b.Appliance = geom.Box{U: b.Hull.U, V: b.Hull.V, Z: geom.Span{Lo: b.BlockHeight, Hi: r.Height}}
		} else {
			b.ToeHeight = d.inches(0, 5, "toe")
		}
		r.Length += width
		r.Boxes = append(r.Boxes, b)
	}
	return r
}

func (d draws) kneeWall(m *model.Model, r *model.Run) {
	top := r.Height + d.inches(2, 12, "bar")
	k := model.KneeWall{Name: "k", Run: r.Name, Frame: r.Frame, Framing: geom.Box{
		U: geom.Span{Hi: r.Length}, V: geom.Span{Lo: -4 * length.Inch, Hi: -eighth}, Z: geom.Span{Hi: top}}}
	for u := d.inches(1, 3, "first"); u < r.Length; u += d.inches(1, 20, "step") {
		k.Studs = append(k.Studs, u)
		steel := geom.Box{U: geom.Span{Lo: u - length.Inch, Hi: u + length.Inch},
			V: geom.Span{Lo: -d.inches(5, 15, "reach"), Hi: k.Framing.V.Hi}, Z: geom.Span{Lo: top - 2*eighth, Hi: top}}
		k.Supports = append(k.Supports, model.Support{Centre: u, Steel: steel})
	}
	for i := range d.count(3, "outlets") {
		at := length.Length(rapid.Int64Range(0, int64(r.Length-length.Inch)).Draw(d.T, "outlet")) / eighth * eighth
		box := geom.Box{U: geom.Span{Lo: at}, V: k.Framing.V, Z: geom.Span{Lo: d.inches(1, 30, "outlet")}}
		box.U.Hi, box.Z.Hi = box.U.Lo+2*length.Inch, box.Z.Lo+3*length.Inch
		k.Outlets = append(k.Outlets, model.KneeOutlet{Name: d.name("outlet"), Face: [...]string{"room", "work"}[i%2], Box: box, Clear: box, Cover: box})
	}
	for _, face := range [...]string{"room", "work", "left", "right"} {
		skin := model.Skin{Face: face, Box: k.Framing}
		for u := length.Length(0); u < r.Length && rapid.Bool().Draw(d.T, "more"); u += d.inches(1, 20, "step") {
			skin.Battens, skin.Seams = append(skin.Battens, u), append(skin.Seams, u+eighth)
		}
		k.Skins = append(k.Skins, skin)
	}
	m.KneeWalls = []model.KneeWall{k}
	m.Slabs = []model.Slab{
		{Kind: "counter", Name: d.name("slab"), Frame: r.Frame, Box: geom.Box{U: geom.Span{Hi: r.Length},
			V: geom.Span{Hi: r.Depth + d.inches(0, 2, "over")}, Z: geom.Span{Lo: r.Height, Hi: r.Height + length.Inch}}},
		{Kind: "bar_top", Name: "b", Frame: r.Frame, Box: geom.Box{U: geom.Span{Hi: r.Length},
			V: geom.Span{Lo: -d.inches(5, 20, "over"), Hi: d.inches(0, 2, "over")}, Z: geom.Span{Lo: top, Hi: top + d.inches(1, 3, "thick")}}},
	}
}

// fronts are up to four, over one another.
func (d draws) fronts(hull geom.Box) (all []model.Front) {
	n := d.count(4, "fronts")
	step := hull.Z.Size() / length.Length(max(n, 1))
	for i := range length.Length(n) {
		f := model.Front{Kind: model.FrontKind(d.count(2, "front")), Name: d.name("front"), Hinged: model.End(d.count(1, "hinged")), Place: hull}
		f.Place.Z = geom.Span{Lo: hull.Z.Lo + i*step, Hi: hull.Z.Lo + (i+1)*step}
		all = append(all, f)
	}
	return all
}

// bored adds rows of bores and single ones, marks and banded edges.
func (d draws) bored(p *model.Part, w, h length.Length) {
	for range d.count(3, "kinds of bores") {
		b := model.Bore{Name: d.name("bore"), Diameter: eighth, Depth: length.Length(d.count(1, "deep")) * eighth, Far: rapid.Bool().Draw(d.T, "far")}
		b.At = geom.Point{X: length.Length(rapid.Int64Range(0, int64(w)).Draw(d.T, "x")), Y: length.Length(rapid.Int64Range(0, int64(h)).Draw(d.T, "y"))}
		step := geom.Point{X: d.inches(1, 5, "pitch")}
		if rapid.Bool().Draw(d.T, "up") {
			step = geom.Point{Y: 32 * length.Millimetre}
		}
		for range 1 + d.count(9, "bores") {
			if b.At.X <= w && b.At.Y <= h {
				p.Bores = append(p.Bores, b)
			}
			b.At = b.At.Add(step)
		}
	}
	for range d.count(2, "marks") {
		x := length.Length(rapid.Int64Range(0, int64(w)).Draw(d.T, "x"))
		p.Marks = append(p.Marks, model.Mark{Name: d.name("mark"), From: geom.Point{X: x}, To: geom.Point{X: x, Y: h}})
	}
	for e := range d.count(4, "bands") {
		p.Bands = append(p.Bands, model.Band{Edge: model.Edge(e)})
	}
}

// part has up to ten features anywhere, over one another too.
func (d draws) part() model.Part {
	w, h := d.inches(2, 96, "part width"), d.inches(2, 48, "part height")
	p := model.Part{ID: "part", Label: d.name("label"), Outline: geom.RectContour(geom.R(0, 0, w, h))}
	for range 1 + d.count(9, "features") {
		x := length.Length(rapid.Int64Range(0, int64(w-eighth)).Draw(d.T, "x"))
		y := length.Length(rapid.Int64Range(0, int64(h-eighth)).Draw(d.T, "y"))
		shape := geom.RectContour(geom.R(x, y, min(x+d.inches(1, 20, "size"), w), min(y+d.inches(1, 20, "size"), h)))
		switch d.count(2, "feature") {
		case 0:
			p.Openings = append(p.Openings, model.Opening{Name: d.name("opening"), Shape: shape.Reversed()})
		case 1:
			r := min(x, y, w-x, h-y) + eighth
			p.Openings = append(p.Openings, model.Opening{Name: d.name("hole"), Shape: geom.CircleContour(geom.Point{X: x, Y: y}, r)})
		default:
			p.Recesses = append(p.Recesses, model.Recess{Name: d.name("recess"), Shape: shape, Depth: eighth})
		}
	}
	d.bored(&p, w, h)
	return p
}
