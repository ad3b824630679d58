package view

import (
	"cmp"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// site is something on a wall, as a run hides it: its box in the run's frame.
type site struct {
	kind     model.ShapeKind
	id, name string // "outlet.urn", "outlet urn"
	at       geom.Box
	u, z     Length // of its centre
	round    bool
	behind   bool // on the wall behind the run, not on one at its end
}

// runElevation shows a run from the front, the knee wall behind it, and what is in
// the wall behind.
func runElevation(m *model.Model, r *model.Run, as Type) model.View {
	hull := runHull(r)
	behind := m.KneeWallsBehind(r)
	slabs := slabsOver(m, r.Frame, hull)
	core := rectUZ(hull).Union(geom.R(0, 0, 0, 0))
	for _, k := range behind {
		core = core.Union(rectUZ(k.Framing))
		for _, sl := range slabsOver(m, k.Frame, k.Framing) {
			if !slices.Contains(slabs, sl) {
				slabs = append(slabs, sl)
			}
		}
	}
	for _, sl := range slabs {
		core = core.Union(rectUZ(sl.Box))
	}
	parts := append(runParts(m, r), endPanels(m, r)...)
	for _, p := range parts {
		core = core.Union(rectUZ(p.Fitted()))
	}
	s := newSheet(m, core, as, roomShare)
	s.view.Note = "Seen from the front. Below: widths. Above and at the left: centres of what is in the wall behind, " +
		"counted from the run's left end and from " + m.Room.Floor.Zero() + "."
	if len(behind) > 0 {
		s.view.Note += " Over the counter the knee wall is seen behind it."
	}
	cuts := s.endWalls(m, r)
	line := hull.Z.Hi
	for _, sl := range slabs {
		if sl.Kind == "counter" {
			line = max(line, sl.Box.Z.Hi)
		}
	}
	for _, k := range behind {
		s.kneeWallBehind(m, k, hull.U, line)
	}
	s.runBoxes(r, parts)
	for _, sl := range slabs {
		s.rect(model.ShapeSlab, rectUZ(sl.Box), sl.Key(), sl.Words())
	}
	s.floor(m, underRun(r))
	sites := s.sites(m, r, hull)
	for i := range sites {
		s.siteShape(&sites[i])
	}
	s.runNames(m, r)
	s.siteDims(sites)
	for _, c := range cuts {
		s.nameWall(c)
	}
	s.runHeights(r, hull, slabs)
	for i := range sites {
		kind, name, _ := strings.Cut(sites[i].name, " ")
		s.callout(geom.Point{X: sites[i].u, Y: sites[i].z}, kind, name)
	}
	for _, sl := range slabs {
		s.name(upright(rectUZ(sl.Box)), sl.Words())
	}
	s.nameFloor()
	return s.finish()
}

// runHeights lays the heights at the right: of the boxes and of the slabs over
// them, one on the other, and then of each slab's top from the floor.
func (s *sheet) runHeights(r *model.Run, hull geom.Box, slabs []*model.Slab) {
	heights := []Length{0}
	for i := range r.Boxes {
		if b := &r.Boxes[i]; b.Kind == model.Cabinet && b.ToeHeight > 0 {
			heights = append(heights, b.Hull.Z.Lo+b.ToeHeight)
			break
		}
	}
	heights = append(heights, hull.Z.Lo, hull.Z.Hi)
	tops := []Length{0, hull.Z.Hi}
	for _, sl := range slabs {
		heights = append(heights, sl.Box.Z.Lo, sl.Box.Z.Hi)
		tops = append(tops, sl.Box.Z.Hi)
	}
	heights, tops = distinct(heights, s.core.Y.Hi), distinct(tops, s.core.Y.Hi)
	if len(slabs) > 0 {
		tops = slices.DeleteFunc(tops, func(z Length) bool { return z == hull.Z.Hi })
	}
	if len(heights) < 2 {
		return
	}
	sd := s.right()
	if len(heights) > 2 {
		sd.ends = geom.Span{Lo: heights[0], Hi: heights[len(heights)-1]}
	}
	s.chain(sd, across, heights, stretches(heights, s.num))
	if len(heights) == 2 {
		return
	}
	if len(tops) > 2 { // the lower ones' extension lines would run through the figures
		sd.foot = sd.depth
	}
	for _, top := range tops[1:] {
		s.chain(sd, across, []Length{0, top}, []string{s.num(top)})
	}
}

// runBoxes draws the boxes and the parts in them, from back to front.
func (s *sheet) runBoxes(r *model.Run, parts []*model.Part) {
	for i := range r.Boxes {
		b := &r.Boxes[i]
		kind := model.ShapePanel
		if b.Kind == model.Bay {
			kind = model.ShapeBeyond
		}
		s.rect(kind, rectUZ(b.Hull), b.Key(), s.boxTitle(b))
	}
	for _, p := range parts {
		s.rect(partKind(p), rectUZ(p.Fitted()), p.ID, partTitle(p))
	}
	for i := range r.Boxes {
		if b := &r.Boxes[i]; b.Kind == model.Bay {
			s.rect(model.ShapeAppliance, rectUZ(b.Appliance), b.Key(), "appliance in "+b.Name)
		}
	}
}

// blockStack is how high the blocks under an appliance lie; 0 where there are none.
func blockStack(m *model.Model, b *model.Box) Length {
	high := Length(0)
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Kind == model.Lumber && p.Block() == b.Key() {
			high = max(high, p.Placement.Box.Z.Hi)
		}
	}
	return high
}

// runParts returns the parts of a run's boxes, those at the back first.
func runParts(m *model.Model, r *model.Run) []*model.Part {
	var found []*model.Part
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Placement.Frame != r.Frame || p.Placement.Box.V.Mid() < 0 || isFront(r, p) {
			continue
		}
		if slices.ContainsFunc(r.Boxes, func(b model.Box) bool { return b.Hull.Overlaps(p.Placement.Box) }) {
			found = append(found, p)
		}
	}
	slices.SortStableFunc(found, func(a, b *model.Part) int {
		return cmp.Compare(a.Placement.Box.V.Hi, b.Placement.Box.V.Hi)
	})
	return found
}

// runNames writes names into the boxes, lays the chain of widths below, and
// puts a name that finds no room into the chain.
func (s *sheet) runNames(m *model.Model, r *model.Run) {
	var marks []Length
	var widths []string
	for i := range r.Boxes {
		b := &r.Boxes[i]
		width := s.num(b.Hull.U.Size())
		if !s.boxName(m, b) {
			width = clip(b.Name) + " " + width
		}
		marks = append(marks, b.Hull.U.Lo)
		widths = append(widths, width)
		if i+1 == len(r.Boxes) {
			marks = append(marks, b.Hull.U.Hi)
		}
	}
	if len(marks) == 0 {
		return
	}
	s.chainAndSum(s.below(), along, marks, widths)
}

func (s *sheet) boxName(m *model.Model, b *model.Box) bool {
	home := upright(rectUZ(b.Hull))
	if b.Kind != model.Bay {
		return s.inside(home, b.Name)
	}
	a := upright(rectUZ(b.Appliance))
	size := s.num(a.u.Size()) + " × " + s.num(a.v.Size())
	lines := []string{b.Name, size}
	narrow := lines
	if stack := blockStack(m, b); stack > 0 {
		on, of, left := "on "+s.num(stack), "of blocks", b.Appliance.Z.Lo-stack
		var pack []string
		if left > 0 {
			of, pack = of+",", []string{s.num(left) + " to pack"}
		}
		narrow = slices.Concat(lines, []string{on, of}, pack)
		lines = slices.Concat(lines, []string{on + " " + of}, pack)
	}
	return s.inside(a, lines...) || s.inside(a, narrow...) || s.inside(a, b.Name)
}

// sites finds what is on the walls within the run's reach.
func (s *sheet) sites(m *model.Model, r *model.Run, hull geom.Box) []site {
	var found []site
	reach := geom.Box{U: hull.U.Grow(s.h), V: geom.Span{Lo: -4 * s.h, Hi: hull.V.Hi}, Z: hull.Z.Grow(s.h)}
	for i := range m.Room.Walls {
		w := &m.Room.Walls[i]
		behind := (w.Frame.Turn-r.Frame.Turn)%(360*geom.Degree) == 0
		for _, o := range boxesIn(w) {
			t := site{kind: model.ShapeOutlet, id: o.Kind + "." + o.Name, name: o.Kind + " " + o.Name, z: o.Height, behind: behind}
			s.locate(&t, w, r, o.Along, o.Box.Width, o.Box.Height, o.StandsOut)
			if t.at.Overlaps(reach) {
				found = append(found, t)
			}
		}
		for _, p := range w.Stubs {
			t := site{kind: model.ShapeStub, id: "stub." + p.Name, name: "stub " + p.Name, z: p.Height, behind: behind, round: behind}
			s.locate(&t, w, r, p.Along, p.Diameter, p.Diameter, p.StandsOut)
			if t.at.Overlaps(reach) {
				found = append(found, t)
			}
		}
	}
	return found
}

// locate puts a site into the run's frame. What has no size is drawn as large
// as a letter.
func (s *sheet) locate(t *site, w *model.Wall, r *model.Run, along, width, height, out Length) {
	width, height, out = max(width, s.h), max(height, s.h), max(out, s.h/2)
	lo := r.Frame
	u0, v0 := lo.Local(w.Frame.At(along-width/2, 0))
	u1, v1 := lo.Local(w.Frame.At(along+width/2, out))
	t.at = geom.Box{
		U: geom.Span{Lo: min(u0, u1), Hi: max(u0, u1)},
		V: geom.Span{Lo: min(v0, v1), Hi: max(v0, v1)},
		Z: geom.Span{Lo: t.z - height/2, Hi: t.z + height/2},
	}
	u, _ := lo.Local(w.Frame.At(along, 0))
	t.u = u
	if !t.behind {
		t.u = t.at.U.Mid()
	}
}

func (s *sheet) siteShape(t *site) {
	title := t.name + ", behind"
	if t.round {
		s.area(t.kind, geom.CircleContour(geom.Point{X: t.u, Y: t.z}, t.at.Z.Size()/2), t.id, title)
	} else {
		s.rect(t.kind, rectUZ(t.at), t.id, title)
	}
	if t.behind {
		s.line(model.ShapeCentre, t.id, title, geom.Point{X: t.u, Y: t.at.Z.Hi}, geom.Point{X: t.u, Y: s.core.Y.Hi})
	}
	s.line(model.ShapeCentre, t.id, title, geom.Point{X: s.core.X.Lo, Y: t.z}, geom.Point{X: t.at.U.Lo, Y: t.z})
}

// siteDims counts along above the drawing, and up at its left.
func (s *sheet) siteDims(sites []site) {
	var us, zs []Length
	for i := range sites {
		if sites[i].behind {
			us = append(us, sites[i].u)
		}
		zs = append(zs, sites[i].z)
	}
	s.count(s.above(), 0, us, s.mark)
	s.count(s.left(), 0, zs, s.mark)
}

// count lays running dimensions to distinct marks on either side of from.
func (s *sheet) count(sd *side, from Length, marks []Length, write func(Length) string) {
	slices.Sort(marks)
	marks = slices.Compact(marks)
	marks = slices.DeleteFunc(marks, func(u Length) bool { return u == from })
	var texts []string
	for _, u := range marks {
		texts = append(texts, write(u-from))
	}
	s.running(sd, from, marks, texts)
}
