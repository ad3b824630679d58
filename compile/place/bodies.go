package place

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/setting"
)

// body is a setting.Body with what it is made of.
type body struct {
	setting.Body
	block string   // the key of its block
	whys  []string // of On, one by one
	frame geom.Frame
	hull  geom.Box
	parts []*model.Part
	early model.Doing // FramedInPlace, LaidInPlace: on the bare floor, before all else where that leaves a way for it
	apart bool        // it is carried piece by piece
	// fixedTo is a body that it is set after wherever the order leaves that open. Boards that do not come in past
	// it as one are fixed one by one.
	fixedTo string
}

// lift is the heaviest thing that is lifted when it is set. Two people see to what is stood up
// as a frame, and to an appliance, whose weight is on its maker's sheet (common practice).
func (o *body) lift(b *rule.Build) (l rule.Lift) {
	size := max(o.hull.U.Size(), o.hull.V.Size(), o.hull.Z.Size())
	switch {
	case o.parts == nil:
		l.People = 2
	case o.early == model.FramedInPlace:
		l.People = 2
		wood := slices.DeleteFunc(slices.Clone(o.parts), func(p *model.Part) bool { return p.Kind == model.Steel })
		b.LiftWhole(&l, b.Together(wood), 0, "the framing, screwed together")
	case o.apart:
		b.LiftPieces(&l, o.parts)
	case strings.HasPrefix(o.Name, "cabinet "):
		b.LiftWhole(&l, b.Together(o.parts), size, o.Name+", without fronts and loose shelves")
	default:
		b.LiftWhole(&l, b.Together(o.parts), size, o.Name)
	}
	l.People = max(l.People, 1)
	return l
}

// goesOn has the body set after another.
func (o *body) goesOn(name, why string) {
	o.On, o.whys = append(o.On, name), append(o.whys, why)
}

// site gathers what is set, in the order in which that is common: run by run what is framed
// behind it, what stands on the floor under its boxes, its boxes, its fillers and end panels,
// the blocks of its bays; then skins and the strips on them; counters; bar tops; appliances.
type site struct {
	*rule.Build
	bodies   []body
	inFrame  map[geom.Frame][]int // bodies, by their frame; lookup only
	standing []setting.Solid      // what stands out of the walls
}

func (s *site) gather() {
	for i := range s.Runs {
		run := &s.Runs[i]
		behind := s.framing(run)
		s.under(run)
		for k := range run.Boxes {
			if box := &run.Boxes[k]; box.Kind == model.Cabinet {
				s.cabinet(run, box, behind)
			}
		}
		s.beside(run)
		for k := range run.Boxes {
			if box := &run.Boxes[k]; box.Kind == model.Bay {
				s.add(body{Body: setting.Body{Name: "blocks of " + box.Words(), Stands: s.stands(box)}, block: box.Key(), parts: s.PartsOf(box.Key()), apart: true})
			}
		}
	}
	s.covers()
	s.slabs("counter")
	s.slabs("bar_top")
	for run, bay := range s.Boxes(model.Bay) {
		s.appliance(run, bay)
	}
}

// framing adds the knee wall behind a run with the steel in it, and returns its name.
func (s *site) framing(run *model.Run) string {
	for i := range s.KneeWalls {
		if w := &s.KneeWalls[i]; w.Run == run.Name {
			name := "knee wall " + w.Name
			s.add(body{Body: setting.Body{Name: name}, block: "knee_wall." + w.Name, early: model.FramedInPlace, parts: s.PartsOf("knee_wall." + w.Name)})
			return name
		}
	}
	return ""
}

// add adds a body of its parts, or of the solids that it has already.
func (s *site) add(o body) {
	if o.Solids == nil {
		for _, p := range o.parts {
			o.Solids = append(o.Solids, solids(p)...)
		}
	}
	s.cutToWalls(&o)
	for i := range o.Solids {
		z := &o.Solids[i].Box.Z
		z.Lo = max(z.Lo, 0) // what reaches to a lower floor, which counts as level here
	}
	o.Solids = slices.DeleteFunc(o.Solids, func(s setting.Solid) bool {
		return min(s.Box.U.Size(), s.Box.V.Size(), s.Box.Z.Size()) <= 0
	})
	if len(o.Solids) == 0 {
		return
	}
	o.frame, o.hull = o.Solids[0].Frame, hull(o.Solids)
	if s.inFrame == nil {
		s.inFrame = map[geom.Frame][]int{}
	}
	s.inFrame[o.frame] = append(s.inFrame[o.frame], len(s.bodies))
	s.bodies = append(s.bodies, o)
}

// cutToWalls cuts solids to the walls that they reach into together.
func (s *site) cutToWalls(o *body) {
	if len(o.Solids) == 0 {
		return
	}
	f, around := o.Solids[0].Frame, hull(o.Solids)
	mid, far := f.At(around.U.Mid(), around.V.Mid()), around.U.Size()+around.V.Size()
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		if farFrom(w, mid, far) || !goesInto(f, around, w) {
			continue
		}
		for k := range o.Solids {
			o.Solids[k].Box = cutTo(o.Solids[k].Frame, o.Solids[k].Box, w)
		}
	}
}

// has reports whether there is a body of that name.
func (s *site) has(name string) bool {
	return slices.ContainsFunc(s.bodies, func(o body) bool { return o.Name == name })
}

// under adds what stands on the floor before boxes come over it or onto it: bases and anchors.
func (s *site) under(run *model.Run) {
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind == model.Cabinet {
			s.add(body{Body: setting.Body{Name: "base of " + box.Words(), Stands: s.stands(box)}, block: box.Key(), parts: base(s.PartsOf(box.Key()))})
		}
	}
	for _, anchor := range s.Block("run." + run.Name).Inner("anchor") {
		under := &run.Boxes[run.Cabinet(s.Ref(anchor, "under").Name)]
		s.add(body{Body: setting.Body{Name: "anchor " + anchor.Name, Stands: s.stands(under)}, block: anchor.Key(), parts: s.PartsOf(anchor.Key()), early: model.LaidInPlace})
	}
}

func (s *site) stands(box *model.Box) bool { return s.Flag(s.Block(box.Key()), "stands") }

// base lists the parts of a base that a cabinet stands on, its toe kick among them.
func base(parts []*model.Part) []*model.Part {
	onBase := func(p *model.Part) bool { return p.Is("cabinet", "base") }
	if !slices.ContainsFunc(parts, onBase) {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(parts), func(p *model.Part) bool { return !onBase(p) && !p.Is("cabinet", "toe-kick") })
}

// cabinet adds a box as it leaves the bench: its fronts, drawers and loose shelves are off,
// and so is the toe kick of one on legs, which is clipped to them.
func (s *site) cabinet(run *model.Run, box *model.Box, behind string) {
	parts := s.FastIn(box.Key())
	under := base(parts)
	parts = slices.DeleteFunc(parts, func(p *model.Part) bool {
		return slices.Contains(under, p) || len(box.Legs) > 0 && p.Is("cabinet", "toe-kick")
	})
	o := body{Body: setting.Body{Name: box.Words(), Stands: s.stands(box)}, block: box.Key(), parts: parts}
	for _, p := range parts {
		o.Solids = append(o.Solids, solids(p)...)
	}
	for _, leg := range box.Legs {
		o.Solids = append(o.Solids, setting.Solid{Name: "a leg", Frame: run.Frame, Box: leg})
	}
	if behind != "" {
		o.goesOn(behind, "it is fixed to it")
	}
	if under != nil {
		o.goesOn("base of "+box.Words(), "it stands on it")
	}
	for _, anchor := range s.Block("run." + run.Name).Inner("anchor") {
		if s.Ref(anchor, "under").Name == box.Name {
			o.goesOn("anchor "+anchor.Name, "it goes over it")
		}
	}
	s.add(o)
}

// beside adds what closes a run: fillers as they are once they are cut to their wall, and
// end panels.
func (s *site) beside(run *model.Run) {
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind != model.Filler {
			continue
		}
		o := body{Body: setting.Body{Name: box.Words()}, block: box.Key(), parts: s.PartsOf(box.Key()), apart: true}
		s.screwedTo(&o, run, box.Hull.U)
		s.add(o)
	}
	for _, panel := range s.Block("run." + run.Name).Inner("end_panel") {
		o := body{Body: setting.Body{Name: "end panel " + panel.Name}, block: panel.Key(), parts: s.PartsOf(panel.Key()), apart: true}
		for _, p := range o.parts {
			s.screwedTo(&o, run, p.Placement.Box.U)
		}
		s.add(o)
	}
}

// everywhere is more than any room.
var everywhere = geom.Span{Lo: -2 * setting.Far, Hi: 2 * setting.Far}

// screwedTo has a body set after the cabinets of a run that lie within a stretch of it, or
// touch it.
func (s *site) screwedTo(o *body, run *model.Run, u geom.Span) {
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind == model.Cabinet && box.Hull.U.Lo <= u.Hi && box.Hull.U.Hi >= u.Lo {
			o.goesOn(box.Words(), "it is fixed to it")
		}
	}
}

// slabs adds the pieces of counters or bar tops. A counter lies on the boxes, end panels and
// fillers under it, a bar top on what is framed.
func (s *site) slabs(kind string) {
	for i := range s.Slabs {
		slab := &s.Slabs[i]
		if slab.Kind != kind {
			continue
		}
		parts := s.PartsOf(slab.Key())
		for n, p := range parts {
			o := body{Body: setting.Body{Name: slab.Words()}, block: slab.Key(), parts: []*model.Part{p}, apart: true}
			if len(parts) > 1 {
				o.Name += ", piece " + strconv.Itoa(n+1)
			}
			for _, i := range s.inFrame[slab.Frame] {
				if under := &s.bodies[i]; lies(p.Placement.Box, under.hull) {
					o.goesOn(under.Name, "it lies on it")
				}
			}
			s.add(o)
		}
	}
}

// lies reports whether a box lies on another.
func lies(b, on geom.Box) bool {
	return b.Z.Lo == on.Z.Hi && b.U.Overlaps(on.U) && b.V.Overlaps(on.V)
}

// covers adds skins, each with its battens and cap, and the strips over corners.
func (s *site) covers() {
	for i := range s.KneeWalls {
		name := s.KneeWalls[i].Name
		wall := s.Block("knee_wall." + name)
		for _, skin := range wall.Inner("skin") {
			s.add(body{Body: setting.Body{Name: "skin " + skin.Name}, block: skin.Key(), parts: s.PartsOf(skin.Key()), apart: true, fixedTo: "knee wall " + name})
		}
		for _, corner := range wall.Inner("corner") {
			o := body{Body: setting.Body{Name: "corner " + corner.Name}, block: corner.Key(), parts: s.PartsOf(corner.Key()), apart: true}
			for _, skin := range wall.Inner("skin") {
				if face := s.Text(skin, "face"); face == "room" || face == s.Text(corner, "end") {
					o.goesOn("skin "+skin.Name, "it covers its edge")
				}
			}
			s.add(o)
		}
	}
}

// appliance adds that of a bay, which comes last: where a counter lies over it, it slides in
// under that.
func (s *site) appliance(run *model.Run, bay *model.Box) {
	o := body{Body: setting.Body{Name: "appliance of " + bay.Words(), Stands: s.stands(bay)}, block: bay.Key()}
	if blocks := "blocks of " + bay.Words(); s.has(blocks) {
		o.goesOn(blocks, "it stands on them")
	}
	o.Solids = []setting.Solid{{Name: "the appliance", Frame: run.Frame, Box: bay.Appliance}}
	s.add(o)
}
