package water

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// blocker is a board or a stub that may be where a bowl or a trap must be.
type blocker struct {
	name string
	box  geom.Box
	why  model.Why
	stub *model.Stub // nil of a board
	last bool        // the bottom of a box, under which nothing can go
}

// pipeEnds are all stubs as they stand before a run, in its frame.
func pipeEnds(b *rule.Build, run *model.Run) []blocker {
	var out []blocker
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		face := w.Face()
		for j := range w.Stubs {
			s := &w.Stubs[j]
			off, _ := face.At(geom.Point{X: s.Along, Y: s.Height})
			u0, v0 := run.Frame.Local(w.Frame.At(s.Along, off))
			u1, v1 := run.Frame.Local(w.Frame.At(s.Along, off+s.StandsOut))
			box := geom.Box{U: geom.Between(u0, u1), V: geom.Between(v0, v1), Z: geom.About(s.Height, s.Diameter)}
			if box.U.Size() < box.V.Size() {
				box.U = box.U.Grow(s.Diameter / 2)
			} else {
				box.V = box.V.Grow(s.Diameter / 2)
			}
			out = append(out, blocker{name: "stub " + strconv.Quote(s.Name), box: box, why: s.Why, stub: s})
		}
	}
	return out
}

// boardsOf are the boards of a box, but for those of its drawers.
func boardsOf(b *rule.Build, box *model.Box) []blocker {
	var out []blocker
	for _, p := range b.PartsOf(box.Key()) {
		if p.Kind == model.Panel && !p.Is("cabinet", "drawer") {
			out = append(out, blocker{name: p.Named() + " of " + p.Owner, box: p.Placement.Box, why: p.Why, last: p.Is("cabinet", "bottom")})
		}
	}
	return out
}

// drawersOf are the drawers of a box with all that they hold.
func drawersOf(box *model.Box) []blocker {
	var out []blocker
	for _, f := range box.Fronts {
		if f.Kind == model.Drawer {
			out = append(out, blocker{name: f.Name + " of cabinet " + box.Name, box: f.Box, why: box.Why})
		}
	}
	return out
}

// inTheWay lists, for each sink, the boards and drawers of its cabinet and the stubs
// before its run.
func inTheWay(b *rule.Build, sinks []basin) [][]blocker {
	ends := map[*model.Run][]blocker{} // lookup only
	out := make([][]blocker, len(sinks))
	for i, s := range sinks {
		if _, known := ends[s.run]; !known {
			ends[s.run] = pipeEnds(b, s.run)
		}
		out[i] = slices.Concat(boardsOf(b, s.cabinet()), drawersOf(s.cabinet()), ends[s.run])
	}
	return out
}

func trapMeets(b *rule.Build) {
	drains := map[string]outflow{} // by sink; lookup only
	for _, o := range outflowsOf(b) {
		drains[o.from.block.Name] = o
	}
	sinks := basinsOf(b)
	for i, all := range inTheWay(b, sinks) {
		s := &sinks[i]
		d, known := drains[s.block.Name]
		drained := known && d.lacks() <= 0
		low := s.bowl.Z.Lo
		if drained {
			low = d.column().Z.Lo
		}
		told := b.Findings.Has("cut-out-over-board", s.block.Said("from_front", "cut"))
		what := "The bowl of " + s.block.Describe() + " hangs down to " + b.Show(nearMark(b, s.bowl.Z.Lo))
		if reaches(b, s, what, s.bowl, low, all, func(o blocker) bool {
			return o.stub != nil || !told && !(o.last && known && !drained) // that is stub-too-high
		}) || !drained {
			continue
		}
		what = "Under " + s.block.Describe() + ", tailpiece and trap of " + d.block.Describe() + " reach down to " + b.Show(nearMark(b, low))
		reaches(b, s, what, d.column(), low, all, func(o blocker) bool {
			return o.stub != nil && o.stub != d.stub || o.stub == nil && !(told && o.box.Overlaps(s.bowl))
		})
	}
}

// column is the room under the bowl for tailpiece and trap. On its way to a vent in
// the wall the trap that would stand in the bottom is another matter: stub-too-low.
func (o *outflow) column() geom.Box {
	low := o.Under
	if o.Vent == "wall" {
		low = max(low, o.from.cabinet().Inside.Z.Lo)
	}
	return geom.Box{U: geom.About(o.middle.X, o.Diameter), V: geom.About(o.middle.Y, o.Diameter), Z: geom.Span{Lo: low, Hi: o.from.bowl.Z.Lo}}
}

// reaches warns of what stands in a box under a sink, of all that counts what reaches
// in furthest; down to low is free where nothing does. It reports whether something does.
func reaches(b *rule.Build, s *basin, what string, box geom.Box, low geom.Length, all []blocker, counts func(blocker) bool) bool {
	var worst blocker
	by, sideways, others := geom.Length(0), false, -1
	for _, o := range all {
		if !o.box.Overlaps(box) || !counts(o) {
			continue
		}
		others++
		if in, axis := overlapOf(o.box, box); in > by {
			worst, by, sideways = o, in, axis != geom.Z
		}
	}
	if others < 0 {
		return false
	}
	low, side := length.Down(low, b.Marks), ""
	if sideways {
		side = " sideways"
	}
	text := what + ", " + b.Show(nearMark(b, by)) + side + " into " + worst.name
	if others > 0 {
		text += " and " + finding.Counted(others, "other thing")
	}
	mend := "nothing there above " + b.Show(low) + ", or another place for the sink"
	if worst.last {
		mend = "a bowl " + b.Show(length.Down(s.top-s.bowl.Z.Lo-(worst.box.Z.Hi-box.Z.Lo), b.Marks)) + " deep at most"
	}
	b.Findings.Warnf("trap-meets", s.block.Said("bowl", "in"), mend, "%s.", text).Also(worst.why.At, "it stands in the way")
	return true
}

// overlapOf is how far two boxes that overlap reach into one another, along the axis
// where that is least.
func overlapOf(a, b geom.Box) (least geom.Length, along geom.Axis) {
	least = math.MaxInt64
	for _, axis := range []geom.Axis{geom.Z, geom.U, geom.V} {
		s, t := a.Along(axis), b.Along(axis)
		if in := min(s.Hi-t.Lo, t.Hi-s.Lo); in < least {
			least, along = in, axis
		}
	}
	return least, along
}

// mostNamed is how many boards a finding names before it counts the others.
const mostNamed = 6

// drainThroughBoards warns of what a drain's pipe meets on its way that no hole leads it
// through.
func drainThroughBoards(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if len(o.Stops) == 0 {
			continue
		}
		var names []string
		for _, stop := range o.Stops[:min(mostNamed, len(o.Stops))] {
			names = append(names, stop.Name)
		}
		if more := len(o.Stops) - mostNamed; more > 0 {
			names = append(names, finding.Counted(more, "other thing"))
		}
		z := b.Show(nearMark(b, o.End))
		if top := nearMark(b, o.Outlet); top > nearMark(b, o.End) {
			z = "from " + z + " to " + b.Show(top)
		}
		b.Findings.Warnf("drain-through-boards", o.block.Said("from_back", "to"), o.freed(b),
			"On its way from sink %q to stub %q, the pipe of %s meets %s, where it lies %s %s. No hole leads it through.",
			o.Sink, o.stub.Name, o.block.Describe(), strings.Join(names, ", "), z, b.Above()).
			Also(o.Stops[0].Why.At, "it is in the way").
			Also(o.stub.Why.At, "it leads to here")
	}
}

// freed is how a pipe that is stopped gets by.
func (o *outflow) freed(b *rule.Build) string {
	if o.block.Attr("from_back") != nil {
		return "from_back left out, so that a way is looked for"
	}
	if o.StubBy != 0 {
		return "the stub at " + o.stubAs(b, o.stub.Height+o.StubBy, o.StubBy > 0) + ", where nothing stops the pipe"
	}
	return "a stub in the sink's cabinet, or the stub or what is in the way at another height"
}
