package solve

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/ways"
	"barwright/lang"
	"barwright/lang/length"
)

// plugging is a cord that leads from the appliance of a bay to an outlet in another box of
// its run.
type plugging struct {
	cord     *lang.Block
	run      *model.Run
	bay, in  *model.Box
	from, to ways.Spot // the middle of the foot of the appliance's rear, and that of the outlet
	wide     length.Length
	high     length.Length
}

// cord leads a cord to an outlet that is used from inside a cabinet of its run, and cuts
// what its plug goes through. Any other cord is only judged.
func (w *laying) cord(c *lang.Block) {
	p, ok := w.plugging(c)
	if !ok {
		return
	}
	keep := w.keepOff(max(p.wide, p.high))
	keep.bare = true
	scene := w.scene(p.run, &keep, c)
	w.standAside(scene, &p, &keep)
	way, found := scene.Find(ways.Ask{From: []ways.Spot{p.from}, To: []ways.Spot{p.to}})
	if !found {
		w.Findings.Warnf("cord-finds-no-way", c.Head, "another outlet, or other boxes between them",
			"The plug of %s, %s by %s, finds no place to go through from bay %q to %s: %s.", c.Describe(), w.Show(p.wide), w.Show(p.high),
			p.bay.Name, w.Ref(c, "to").Describe(), scene.inTheWay(w, c, &way)).
			Also(p.in.Why.At, "the box with the outlet")
		return
	}
	out := model.Way{
		Kind: "cord", Name: c.Name, From: p.bay.Key(), To: w.Ref(c, "to").Key(), Diameter: max(p.wide, p.high),
		Length: way.Length, Need: way.Length + w.Length(c, "slack"), Past: w.past(p.run, way.Spots), Why: why(c),
	}
	for _, spot := range way.Spots {
		out.Points = append(out.Points, inRoom(p.run.Frame, spot))
	}
	for _, h := range way.Holes {
		part := scene.parts[h.Board]
		at := on(&w.m.Parts[part], h.At[0], h.At[1], h.At[2])
		w.open(part, &thing{kind: "cord", name: "cord " + c.Name, cut: model.Cutting{Way: "hole"}, why: why(c)}, around(at.X, at.Y, p.wide, p.high))
		out.Holes = append(out.Holes, model.WayHole{Part: w.m.Parts[part].ID, At: inRoom(p.run.Frame, h.At), Wide: p.wide, High: p.high})
	}
	w.m.Ways = append(w.m.Ways, out)
}

// plugging finds what a cord joins; ok is false where its outlet is not used from inside a
// cabinet of the bay's run.
func (w *laying) plugging(c *lang.Block) (p plugging, ok bool) {
	bay, outlet := w.Ref(c, "of"), w.Ref(c, "to")
	if outlet.Parent.Spec.Kind != "wall" {
		return p, false
	}
	p = plugging{cord: c, wide: w.FieldLength(c, "plug", "width"), high: w.FieldLength(c, "plug", "height")}
	p.run = w.runNamed(bay.Parent.Name)
	wall := w.wall(outlet.Parent.Name)
	o := &wall.Outlets[slices.IndexFunc(wall.Outlets, func(o model.Outlet) bool { return o.Kind == "outlet" && o.Name == outlet.Name })]
	u, v := p.run.Frame.Local(wall.Frame.At(o.Along, w.faceAt(wall, o.Along, o.Height)+o.StandsOut))
	for j := range p.run.Boxes {
		box := &p.run.Boxes[j]
		switch {
		case box.Kind == model.Bay && box.Name == bay.Name:
			p.bay = box
		case box.Kind == model.Cabinet && box.Inside.U.Holds(u) && box.Inside.Z.Holds(o.Height) && -standsAgainst <= v && v <= p.run.Depth:
			p.in = box
		}
	}
	if p.in == nil {
		return p, false
	}
	a := p.bay.Appliance
	p.from, p.to = ways.Spot{a.U.Mid(), a.V.Lo, a.Z.Lo}, ways.Spot{u, max(v, p.in.Inside.V.Lo), o.Height}
	return p, true
}

// standAside makes way for a cord: its plug goes through the sides before the appliance
// stands, behind which the cord then lies, and into the outlet.
func (w *laying) standAside(s *wayScene, p *plugging, keep *keepOff) {
	own := []string{"the appliance of " + p.bay.Words(), "outlet " + w.Ref(p.cord, "to").Name}
	s.Solids = slices.DeleteFunc(s.Solids, func(solid ways.Solid) bool {
		return slices.Contains(own, solid.What) || strings.HasSuffix(solid.What, " of "+p.bay.Words())
	})
	s.shutBeside(keep)
	s.Solids = append(s.Solids, ways.Solid{Box: p.bay.Appliance, What: own[0]})
	s.Lanes = append(s.Lanes, p.bay.Hull.With(geom.V, geom.Span{Lo: p.from[1], Hi: p.from[1]}))
	s.beforeShut(geom.Between(p.from[0], p.to[0]))
}

// shutBeside shuts boards where a shelf, a drawer or whatever else beside them would stand
// before a hole.
func (s *wayScene) shutBeside(keep *keepOff) {
	for i := range s.Boards {
		b := &s.Boards[i]
		near := b.Box.With(b.Normal, b.Box.Along(b.Normal).Grow(2*keep.half))
		for _, solid := range s.Solids {
			if solid.Box.Overlaps(near) {
				s.shut(i, keep.off(solid.Box, 0), solid.What)
			}
		}
	}
}

// beforeShut adds lanes further out, before what is shut of the sides in a stretch of a
// run: the holes of shelf pins leave no room for a plug behind them.
func (s *wayScene) beforeShut(u geom.Span) {
	lane := s.Lanes[0]
	for _, b := range s.Boards {
		for _, shut := range b.Shut {
			v := shut.V.Hi
			known := slices.ContainsFunc(s.Lanes, func(l geom.Box) bool { return l.V.Lo == v })
			if b.Normal == geom.U && b.Box.U.Overlaps(u) && b.Rim.V.Holds(v) && !known {
				s.Lanes = append(s.Lanes, lane.With(geom.V, geom.Span{Lo: v, Hi: v}))
			}
		}
	}
}
