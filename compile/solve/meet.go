package solve

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// checkMeets refuses what would stand in one another: runs in runs, slabs in
// walls, bar tops in what lies under them, and what stands out of a wall in what
// nothing can be cut out of. SPEC.md says what is not looked at.
func (s *solver) checkMeets(things []thing) {
	s.runsMeet()
	s.slabsMeet()
	for i, near := range s.thingsBy(things) {
		solids := s.solids(&s.m.Runs[i])
		for _, j := range near {
			s.inTheWay(&things[j], &s.stands[i], solids)
		}
	}
}

// touching is how far rounding may push two neighbours into one another.
const touching = float64(100 * length.Micrometre)

// runsMeet compares the runs, seen from above, with their end panels.
func (s *solver) runsMeet() {
	feet, covers := make([][]geom.Rect, len(s.m.Runs)), make([]geom.Rect, len(s.m.Runs))
	for i := range s.m.Runs {
		feet[i], covers[i] = s.footprints(&s.m.Runs[i]), s.covers(&s.m.Runs[i])
		for j := range s.m.Runs[:i] {
			if !covers[j].Overlaps(covers[i].Grow(nearby)) {
				continue
			}
			a, b := &s.m.Runs[j], &s.m.Runs[i]
			deep := length.Length(0)
			for _, over := range feet[j] {
				for _, under := range feet[i] {
					deep = max(deep, overlap(a.Frame, over, b.Frame, under))
				}
			}
			if float64(deep) > touching {
				s.Findings.Errorf("runs-meet", b.Why.At, "move one of them, or make one shorter",
					"Run %q and run %q overlap by %s.", a.Name, b.Name, s.Show(s.marked(deep))).Also(a.Why.At, "the other run")
			}
		}
	}
}

// footprints are what a run covers of the floor: its boxes as one, and its end
// panels, without what is cut off them along the wall.
func (s *solver) footprints(run *model.Run) []geom.Rect {
	out := []geom.Rect{{X: geom.Span{Hi: run.Length}, Y: geom.Span{Hi: run.Depth}}}
	for _, p := range s.endPanelsOf(run) {
		box := p.Placement.Box
		out = append(out, geom.Rect{X: box.U, Y: geom.Span{Hi: box.V.Hi}})
	}
	return out
}

func (s *solver) endPanelsOf(run *model.Run) []*model.Part {
	var out []*model.Part
	for _, i := range s.partsIn(run.Frame) {
		if p := &s.m.Parts[i]; p.BlockKind() == "end_panel" {
			out = append(out, p)
		}
	}
	return out
}

// overlap is how far two rectangles of the floor run into one another: over
// lies in one frame, under in another.
func overlap(from geom.Frame, over geom.Rect, to geom.Frame, under geom.Rect) length.Length {
	quad := make([]plan, 0, 4)
	for _, c := range geom.RectContour(over) {
		u, v := to.Local(from.At(c.X, c.Y))
		quad = append(quad, plan{float64(u), float64(v)})
	}
	shared := clipped(quad, geom.Box{U: under.X, V: under.Y})
	if len(shared) == 0 {
		return 0
	}
	return min(extent(shared, geom.U).Size(), extent(shared, geom.V).Size())
}

// clipped is the part of a plan polygon inside a box.
func clipped(poly []plan, box geom.Box) []plan {
	for _, axis := range []geom.Axis{geom.U, geom.V} {
		poly = clip(poly, axis, float64(box.Along(axis).Lo), 1)
		poly = clip(poly, axis, float64(box.Along(axis).Hi), -1)
	}
	return poly
}

// slabsMeet looks at ends of slabs that meet a wall, and at bar tops above the
// counter and the boxes of their run.
func (s *solver) slabsMeet() {
	for i := range s.m.Slabs {
		slab := &s.m.Slabs[i]
		for j := range s.m.Runs {
			if run := &s.m.Runs[j]; run.Frame == slab.Frame {
				s.slabInWall(slab, run)
				if slab.Kind == "bar_top" {
					s.barTopMeets(slab, run)
				}
			}
		}
	}
}

func (s *solver) slabInWall(slab *model.Slab, run *model.Run) {
	for _, end := range []struct {
		end  model.End
		past length.Length
	}{{model.Left, -slab.Box.U.Lo}, {model.Right, slab.Box.U.Hi - run.Length}} {
		if end.past > 0 && !run.FreeAt(end.end) {
			s.Findings.Errorf("slab-in-wall", slab.Why.At, "overhang = { "+end.end.String()+" = 0 } on that side",
				"The %s end of %s would run into the wall that run %q meets there, by %s.", end.end, slab.Words(), run.Name, s.Show(end.past)).
				Also(run.Why.At, "the run")
		}
	}
}

func (s *solver) barTopMeets(top *model.Slab, run *model.Run) {
	for i := range s.m.Slabs {
		if counter := &s.m.Slabs[i]; counter.Kind == "counter" && counter.Frame == top.Frame && counter.Box.Overlaps(top.Box) {
			s.tooLow(top, counter.Box.Z.Hi, counter.Words()).Also(counter.Why.At, "the counter")
			return
		}
	}
	for i := range run.Boxes {
		if box := &run.Boxes[i]; box.Hull.Overlaps(top.Box) {
			s.tooLow(top, box.Hull.Z.Hi, box.Words()).Also(box.Why.At, "the box")
			return
		}
	}
	for _, p := range s.endPanelsOf(run) {
		if box := p.Placement.Box; box.Overlaps(top.Box) {
			s.tooLow(top, box.Z.Hi, p.Owner).Also(p.Why.At, "the panel")
			return
		}
	}
}

func (s *solver) tooLow(top *model.Slab, above length.Length, what string) *finding.Finding {
	return s.Findings.Errorf("slabs-meet", top.Why.At, "a bar top whose underside is at "+s.Show(above)+" or higher",
		"The underside of %s is at %s, but %s under it reaches to %s: %s too low.",
		top.Words(), s.Show(top.Box.Z.Lo), what, s.Show(above), s.Show(above-top.Box.Z.Lo))
}

// inTheWay refuses a thing that stands out of its wall into an appliance, a
// front or a drawer, a block, framing or steel.
func (s *solver) inTheWay(t *thing, at *stand, solids []solid) {
	if t.out == 0 {
		return
	}
	p := pass(t, at, 0, t.out)
	var met []source.Range // blocks that were named: one finding for each
	for i := range solids {
		if why := solids[i].why; p.hits(solids[i].box) && !slices.Contains(met, why.At) {
			met = append(met, why.At)
			s.stopped(t, solids[i].name, why)
		}
	}
}

// solid is what stands in the way of others, its clearance counted, in the frame
// of its run.
type solid struct {
	name string
	box  geom.Box
	why  model.Why
}

// solids lists a run's appliances, legs, fronts and drawers, and the lumber and
// steel in its frame.
func (s *solver) solids(run *model.Run) []solid {
	var out []solid
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind == model.Bay {
			out = append(out, solid{"the appliance of bay " + box.Name, box.Appliance, box.Why})
		}
		for _, front := range box.Fronts {
			of := front.Name + " of cabinet " + box.Name
			out = append(out, solid{"the " + of, front.Place, box.Why})
			if front.Kind == model.Drawer {
				out = append(out, solid{"the box of " + of, front.Box, box.Why})
			}
		}
		for _, leg := range box.Legs {
			out = append(out, solid{"a leg of cabinet " + box.Name, leg, box.Why})
		}
	}
	for _, i := range s.partsIn(run.Frame) {
		if part := &s.m.Parts[i]; !letsThrough(part) {
			out = append(out, solid{part.Label + ", " + part.Named() + " of " + part.Owner, part.Placement.Box, part.Why})
		}
	}
	return out
}

func (s *solver) stopped(t *thing, by string, why model.Why) {
	if t.kind == baseboard {
		s.Findings.Errorf("thing-in-the-way", t.why.At, "take it off there: from, to; or move the other",
			"The baseboard of wall %q stands out %s and would run into %s.", t.wall.Name, s.Show(t.out), by).Also(why.At, "what it meets")
		return
	}
	s.Findings.Errorf("thing-in-the-way", t.why.At, "move one of them",
		"%s reaches %s out of its wall, its clearance counted, and would run into %s.", finding.Capital(t.name), s.Show(t.out), by).Also(why.At, "what it meets")
}

// hits reports whether a passage and a box share more than rounding.
func (p *passage) hits(box geom.Box) bool {
	if !p.z.Overlaps(box.Z) {
		return false
	}
	over := clipped([]plan{p.near[0], p.near[1], p.far[1], p.far[0]}, box)
	return len(over) > 0 && math.Min(float64(extent(over, geom.U).Size()), float64(extent(over, geom.V).Size())) > touching
}
