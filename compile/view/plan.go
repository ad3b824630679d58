package view

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// The plan shows the room as one looks down on it: the room's y runs down the
// page, so a room frame turns the other way, and its v is the view's -v.

func planFrame(f geom.Frame) geom.Frame {
	return geom.Frame{Origin: geom.Point{X: f.Origin.X, Y: -f.Origin.Y}, Turn: -f.Turn}
}

func planQuad(f geom.Frame, b geom.Box) quad {
	return quad{frame: planFrame(f), u: b.U, v: mirrored(b.V)}
}

func plan(m *model.Model, in framed, as Type) model.View {
	s := newSheet(m, planCore(m), as, roomShare)
	s.view.Note = "Seen from above. What lies under a slab is drawn as if the slab were clear; the slab's edge is the long-dashed line. " +
		"Outside a wall: where boxes and framing meet it, then where slabs do, then its length."
	for i := range m.Room.Walls {
		s.planWall(m.Room.Walls, i)
	}
	for i := range m.Runs {
		s.planRun(in.of(m.Runs[i].Frame), &m.Runs[i])
	}
	for i := range m.KneeWalls {
		s.planKneeWall(in.of(m.KneeWalls[i].Frame), &m.KneeWalls[i])
	}
	for i := range m.Slabs {
		sl := &m.Slabs[i]
		s.area(model.ShapeAbove, planQuad(sl.Frame, sl.Box).contour(), sl.Key(), sl.Words())
		s.planCuts(in.of(sl.Frame), sl)
	}
	for i := range m.Room.Walls {
		s.planSite(&m.Room.Walls[i])
	}
	for i := range m.Room.Walls {
		s.planWallDims(m, &m.Room.Walls[i])
	}
	for i := range m.Runs {
		s.planRunDims(m, &m.Runs[i])
	}
	s.planNames(m, in)
	return s.finish()
}

func planCore(m *model.Model) geom.Rect {
	var c geom.Contour
	for _, w := range m.Room.Walls {
		f := planFrame(w.Frame)
		c = append(c, geom.Vertex{Point: f.At(0, 0)}, geom.Vertex{Point: f.At(w.Length, 0)})
	}
	for i := range m.Runs {
		c = append(c, planQuad(m.Runs[i].Frame, runHull(&m.Runs[i])).contour()...)
	}
	return c.Bounds()
}

// wallBand is how thick a wall is drawn, in text heights: what is behind its
// face is not known.
const wallBand = 2

func (s *sheet) planWall(walls []model.Wall, i int) {
	w := &walls[i]
	f, band := planFrame(w.Frame), wallBand*s.h
	var before, after Length
	for j := range walls {
		if meetsAt(walls[j].Frame.At(walls[j].Length, 0), w.Frame.Origin) {
			before = mitre(walls[j].Corner, band)
		}
		if meetsAt(w.Frame.At(w.Length, 0), walls[j].Frame.Origin) {
			after = mitre(w.Corner, band)
		}
	}
	outline := geom.Contour{
		{Point: f.At(0, 0)}, {Point: f.At(w.Length, 0)},
		{Point: f.At(w.Length+after, band)}, {Point: f.At(-before, band)},
	}
	s.area(model.ShapeWall, outline, "wall."+w.Name, "wall "+w.Name+", "+w.Backing)
	s.solid.add(quad{f, geom.Span{Lo: -before, Hi: w.Length + after}, geom.Span{Hi: band}}.box())
	for _, u := range w.Studs {
		s.line(model.ShapeStud, "wall."+w.Name, "stud at "+s.num(u), f.At(u, 0), f.At(u, band))
	}
}

func meetsAt(p, q geom.Point) bool {
	d := p.Sub(q)
	return max(d.X, -d.X) < length.Millimetre && max(d.Y, -d.Y) < length.Millimetre
}

// mitre is how far a wall's outer face runs on beyond its corner.
func mitre(corner geom.Angle, band Length) Length {
	if corner <= 0 || corner >= 360*geom.Degree {
		return 0
	}
	sin, cos := (corner / 2).SinCos()
	return Length(float64(band) * cos / sin)
}

// boxesIn lists the outlets and switches of a wall, and its vents as boxes too.
func boxesIn(w *model.Wall) []model.Outlet {
	out := slices.Clone(w.Outlets)
	for _, v := range w.Vents {
		out = append(out, model.Outlet{
			Kind: "vent", Name: v.Name, Along: v.Along, Height: v.Height, Box: model.Size{Width: v.Width, Height: v.Tall}, StandsOut: v.StandsOut,
		})
	}
	return out
}

func (s *sheet) planSite(w *model.Wall) {
	f := planFrame(w.Frame)
	for _, o := range boxesIn(w) {
		half := max(o.Box.Width, s.h) / 2
		into := min(max(o.Box.Depth, s.h), wallBand*s.h)
		q := quad{f, geom.Span{Lo: o.Along - half, Hi: o.Along + half}, geom.Span{Lo: -o.StandsOut, Hi: into}}
		s.area(model.ShapeOutlet, q.contour(), o.Kind+"."+o.Name, o.Kind+" "+o.Name)
	}
	for _, p := range w.Stubs {
		half := max(p.Diameter, s.h/2) / 2
		q := quad{f, geom.Span{Lo: p.Along - half, Hi: p.Along + half}, geom.Span{Lo: -max(p.StandsOut, s.h), Hi: 0}}
		s.area(model.ShapeStub, q.contour(), "stub."+p.Name, "stub "+p.Name)
	}
}

func (s *sheet) planRun(m *model.Model, r *model.Run) {
	for i := range r.Boxes {
		b := &r.Boxes[i]
		s.area(model.ShapePanel, planQuad(r.Frame, b.Hull).contour(), b.Key(), s.boxTitle(b))
		if b.Kind == model.Bay {
			s.area(model.ShapeAppliance, planQuad(r.Frame, b.Appliance).contour(), b.Key(), "appliance in "+b.Name)
		}
		for _, f := range b.Fronts {
			s.area(model.ShapeFront, planQuad(r.Frame, f.Place).contour(), f.Part, f.Name+" of "+b.Name)
		}
	}
	for _, p := range endPanels(m, r) {
		s.area(model.ShapePanel, planQuad(r.Frame, p.Fitted()).contour(), p.ID, partTitle(p))
	}
}

// planKneeWall draws the framing as the plates show it, what they hide dashed.
func (s *sheet) planKneeWall(m *model.Model, k *model.KneeWall) {
	s.area(model.ShapeFraming, planQuad(k.Frame, k.Framing).contour(), kneeWallID(k), "knee wall "+k.Name)
	for _, p := range framingParts(m, k) {
		if upstanding(p.Placement.Box) {
			s.area(model.ShapeHidden, planQuad(k.Frame, p.Placement.Box).contour(), p.ID, partTitle(p))
		}
	}
	for _, sup := range k.Supports {
		s.area(model.ShapeSteel, planQuad(k.Frame, sup.Steel).contour(), sup.Part, "support at "+s.num(sup.Centre))
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Kind == model.Panel && p.Placement.Frame == k.Frame && p.Placement.Box.V.Mid() < 0 {
			s.area(model.ShapePanel, planQuad(k.Frame, p.Fitted()).contour(), p.ID, partTitle(p))
		}
	}
}

func (s *sheet) planNames(m *model.Model, in framed) {
	for i := range m.Room.Walls {
		s.stems(&m.Room.Walls[i])
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		for j := range r.Boxes {
			b := &r.Boxes[j]
			home, width := planQuad(r.Frame, b.Hull), s.num(b.Hull.U.Size())
			front := home // the back is where what is in the wall is called out
			front.v.Hi -= home.v.Size() / 4
			if !s.inside(front, b.Name, width) && !s.inside(home, b.Name, width) && !s.inside(home, b.Name+" "+width) {
				s.callout(home.centre(), b.Name+" "+width)
			}
		}
	}
	for i := range m.Room.Walls {
		w := &m.Room.Walls[i]
		f := planFrame(w.Frame)
		for _, o := range boxesIn(w) {
			s.onWall(f, f.At(o.Along, 0), o.Kind, o.Name)
		}
		for _, p := range w.Stubs {
			s.onWall(f, f.At(p.Along, -p.StandsOut/2), "stub", p.Name)
		}
		if w.Corner != 90*geom.Degree && w.Corner != 0 {
			s.callout(f.At(w.Length, 0), degrees(w.Corner)+"°")
		}
	}
	for i := range m.Slabs {
		sl := &m.Slabs[i]
		home, label := planQuad(sl.Frame, sl.Box), sl.Words()
		if !s.within(home, true, []string{label}) {
			s.callout(s.overhang(home), label)
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		home := planQuad(k.Frame, k.Framing)
		at := home.u.Mid()
		if len(k.Supports) > 1 {
			at = (k.Supports[0].Centre + k.Supports[1].Centre) / 2
		}
		s.callout(home.at(at, home.v.Mid()), "knee wall "+k.Name)
	}
	for i := range m.Slabs {
		s.planCutNames(in.of(m.Slabs[i].Frame), &m.Slabs[i])
	}
}

// onWall calls out what is in a wall or stands out of it, from the room's side and
// with a leader that stands off the wall; where there is no place, from beyond the
// dimensions.
func (s *sheet) onWall(wall geom.Frame, target geom.Point, kind, name string) {
	blocks := []block{setBlock([]string{kind + " " + name}, s.h), setBlock([]string{kind, name}, s.h)}
	u0, _ := wall.Local(target)
	inRoom := func(p *candidate) bool {
		u, v := wall.Local(p.from)
		for _, c := range p.text.corners() {
			if _, v := wall.Local(geom.Point{X: Length(c[0]), Y: Length(c[1])}); v > 0 {
				return false
			}
		}
		return -2*v >= max(u-u0, u0-u)
	}
	drawn := boxOfRect(s.view.Bounds)
	beyond := func(p *candidate) bool { return !p.text.meets(&drawn) }
	if !s.search(blocks, target, inRoom) && !s.search(blocks, target, beyond) {
		s.callout(target, kind+" "+name)
	}
}

// stems keeps the place before each thing on a wall free for its own leader.
func (s *sheet) stems(w *model.Wall) {
	f := planFrame(w.Frame)
	stem := func(along, out Length) {
		s.stem.add(segOf(f.At(along, -out), f.At(along, -out-3*s.h/2)))
	}
	for _, o := range boxesIn(w) {
		stem(o.Along, 0)
	}
	for _, p := range w.Stubs {
		stem(p.Along, p.StandsOut)
	}
}

// overhang is a point of a slab that lies over as little as possible: near the
// edge that is farthest from the back of the run, as near to the middle as
// nothing else is.
func (s *sheet) overhang(home quad) geom.Point {
	v := home.v.Lo + s.h/2
	if home.v.Hi > -home.v.Lo {
		v = home.v.Hi - s.h/2
	}
	for _, share := range [...]Length{50, 45, 55, 40, 60, 35, 65, 30, 70, 25, 75, 20, 80, 10, 90} {
		if at := home.at(home.u.Lo+home.u.Size()*share/100, v); !s.covered(at) {
			return at
		}
	}
	return home.at(home.u.Mid(), v)
}

// covered reports whether a thing lies at a point, or nearer than half a letter;
// what is above the plan's level does not count.
func (s *sheet) covered(at geom.Point) bool {
	here := boxAt(at, s.h, s.h, 0)
	for _, shape := range s.view.Shapes {
		if shape.Kind == model.ShapeAbove || !shape.Closed {
			continue
		}
		if there := boxOfRect(shape.Lines.Bounds()); there.meets(&here) {
			return true
		}
	}
	return false
}

// degrees writes an angle with the decimals that it has.
func degrees(a geom.Angle) string {
	text := strconv.FormatInt(int64(a/geom.Degree), 10)
	rest := strconv.FormatInt(int64(a%geom.Degree+geom.Degree), 10)[1:]
	if rest = strings.TrimRight(rest, "0"); rest != "" {
		text += "." + rest
	}
	return text
}
