package wiring

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/cordway"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func wiringNotJudged(b *rule.Build) {
	if b.WiredByCode() || b.LimitsSay("wiring", "ground_fault_within", "ground_fault_area") || len(outletsOf(b)) == 0 {
		return
	}
	for _, sink := range sinksOf(b) {
		b.Findings.Notef("wiring-not-judged", sink.Why.At,
			"There are outlets in a build with a sink, and a build in millimetres is held to nobody's rules of wiring unless it says to whose.").
			Mend = `limits { wiring = "none" } where that is meant, or limits { ground_fault_within = … } with the distance of the place`
		return
	}
}

// bowl is the sink of a counter.
type bowl struct {
	*model.SlabCut
	slab *model.Slab
}

func sinksOf(b *rule.Build) []bowl {
	var out []bowl
	for i := range b.Slabs {
		s := &b.Slabs[i]
		for j := range s.Cuts {
			if s.Cuts[j].Kind == "sink" {
				out = append(out, bowl{&s.Cuts[j], s})
			}
		}
	}
	return out
}

// rim is the upper edge of a bowl: that of its cut-out, just over the slab.
func (s *bowl) rim() []cordway.Edge {
	top := s.slab.Box.Z.Hi + 2*cordway.Sealed
	return cordway.Rim(s.slab.Frame, s.Box.With(geom.Z, geom.About(top, 0)))
}

// unprotected are the outlets that are not said to be protected against ground faults.
func unprotected(b *rule.Build) []device {
	return slices.DeleteFunc(outletsOf(b), func(d device) bool {
		return b.Flag(d.block, "ground_fault") || b.Flag(d.block.Parent, "ground_fault")
	})
}

func groundFaultMissing(b *rule.Build) {
	area := b.Flag(b.Limits, "ground_fault_area")
	if !b.WiredByCode() && !area && !b.LimitsSay("ground_fault_within") {
		return
	}
	sinks, bare := sinksOf(b), unprotected(b)
	if len(sinks) == 0 || len(bare) == 0 {
		return
	}
	if area {
		d := bare[0]
		f := b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend(b, bare),
			"%s does not say that it is protected against ground faults. The limits ask it of every outlet in an area with a sink where food or drink is made, and there is sink %q.",
			finding.Capital(d.block.Describe()), sinks[0].Name)
		alsoDevices(f, bare[1:])
		b.LimitOf(f.Also(sinks[0].Why.At, "the sink"), "ground_fault_area")
		return
	}
	near := nearSinks(b, sinks, bare)
	for len(near) > 0 {
		n := 1
		for n < len(near) && near[n].block.Parent == near[0].block.Parent {
			n++
		}
		tellNear(b, near[:n])
		near = near[n:]
	}
}

// groundFaultMend is the edit that says that outlets are protected: at their wall or knee
// wall, if there are several.
func groundFaultMend(b *rule.Build, bare []device) string {
	if len(bare) == 1 {
		return "ground_fault = true, once it is protected"
	}
	wall := bare[0].block.Parent
	if slices.ContainsFunc(bare, func(d device) bool { return d.block.Parent != wall }) {
		return "ground_fault = true of their walls, once the outlets are protected"
	}
	return "ground_fault = true of " + wall.Describe() + ", once its outlets are protected"
}

// groundFaultArea notes outlets that only newer codes ask to be protected.
func groundFaultArea(b *rule.Build) {
	sinks, bare := sinksOf(b), unprotected(b)
	if !b.WiredByCode() || b.LimitsSay("ground_fault_area") || len(sinks) == 0 || len(bare) == 0 {
		return
	}
	near := map[*lang.Block]bool{} // lookup only
	for _, n := range nearSinks(b, sinks, bare) {
		near[n.block] = true
	}
	far := slices.DeleteFunc(bare, func(d device) bool { return near[d.block] })
	if len(far) == 0 {
		return
	}
	f := b.Findings.Notef("ground-fault-area", far[0].block.Head,
		"%s is further than %s from a sink and is not said to be protected against ground faults. Codes from 2023 on ask that of every outlet in an area with a sink where food or drink is made.",
		finding.Capital(far[0].block.Describe()), inFeet(b, b.Length(b.Limits, "ground_fault_within")))
	f.Mend = groundFaultMend(b, far) + "; or limits { ground_fault_area = false }, where the code of the place does not ask it"
	alsoDevices(f, far[1:])
	f.Also(sinks[0].Why.At, "the sink")
}

// nearSink is an outlet in reach of a bowl, and the shortest way of a cord.
type nearSink struct {
	device
	sink bowl
	far  float64
	way  cordway.Way
}

// sealing is what the way off sealed barriers may be too long by: a hundredth of a
// millimetre, so that what is just on the limit is within it.
const sealing = 10_000

// nearSinks looks for outlets within a cord's reach of a bowl.
func nearSinks(b *rule.Build, sinks []bowl, bare []device) []nearSink {
	reach := b.Length(b.Limits, "ground_fault_within")
	barriers := cordBarriers(b)
	var out []nearSink
	for _, d := range bare {
		to := cordway.Rim(d.frame, d.off())
		slices.SortStableFunc(sinks, func(x, y bowl) int { return cmp.Compare(cordway.Least(x.rim(), to), cordway.Least(y.rim(), to)) })
		best, found := nearSink{device: d, far: float64(reach) + sealing}, false
		for _, sink := range sinks {
			from := sink.rim()
			if cordway.Least(from, to) > best.far {
				break
			}
			if w, ok := cordway.Shortest(from, to, cordway.Near(barriers, from, best.far), best.far); ok && (!found || w.Length() < best.far) {
				best.sink, best.far, best.way, found = sink, w.Length(), w, true
			}
		}
		if found {
			out = append(out, best)
		}
	}
	return out
}

// tellNear tells of the nearest of the outlets in one wall.
func tellNear(b *rule.Build, near []nearSink) {
	slices.SortStableFunc(near, func(x, y nearSink) int { return cmp.Compare(x.far, y.far) })
	all := make([]device, len(near))
	for i := range near {
		all[i] = near[i].device
	}
	d := &near[0]
	f := b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend(b, all),
		"A cord from the rim of sink %q reaches %s in %s, %s; within %s outlets are to be protected against ground faults.",
		d.sink.Name, d.block.Describe(), b.Show(toMark(b, d.far)), cordBends(&d.way), inFeet(b, b.Length(b.Limits, "ground_fault_within")))
	alsoDevices(f, all[1:])
	b.LimitOf(f.Also(d.sink.Why.At, "the sink"), "ground_fault_within")
}

// inFeet shows whole feet as such in a build of inches.
func inFeet(b *rule.Build, l geom.Length) string {
	if b.Source.Unit == length.Inches && l%length.Foot == 0 {
		return fmt.Sprintf("%d ft", l/length.Foot)
	}
	return b.Show(l)
}

// off is where a cord ends at a device: just before the face that it is used from.
func (d *device) off() geom.Box {
	out := 2 * cordway.Sealed
	if d.knee != nil && d.knee.Face == "room" {
		out = -out
	}
	return d.used.With(geom.V, d.used.V.Shift(out))
}

// toMark is a way as a tape shows it.
func toMark(b *rule.Build, nm float64) geom.Length {
	return geom.Length(nm/float64(b.Marks)+0.5) * b.Marks
}

// cordBends says how a way goes.
func cordBends(w *cordway.Way) string {
	if n := w.Bends(); n > 0 {
		return "round " + finding.Counted(n, "edge")
	}
	return "straight"
}

// cordBarriers lists what a cord does not pierce: the walls, the framing of knee walls,
// slabs, and the boards that stay where they are.
func cordBarriers(b *rule.Build) []cordway.Barrier {
	var out []cordway.Barrier
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		out = append(out, cordway.BarrierOf(w.Frame, geom.Box{U: geom.Span{Hi: w.Length}, V: geom.Span{Lo: -wallThickness}, Z: geom.Span{Lo: -1, Hi: wallHeight}}))
	}
	for i := range b.KneeWalls {
		out = append(out, cordway.BarrierOf(b.KneeWalls[i].Frame, b.KneeWalls[i].Framing))
	}
	for i := range b.Slabs {
		out = append(out, cordway.BarrierOf(b.Slabs[i].Frame, b.Slabs[i].Box))
	}
	for i := range b.Parts {
		p := &b.Parts[i]
		if p.Kind != model.Panel || !staysPut(p) {
			continue
		}
		box := p.Placement.Box
		if p.BlockKind() == "skin" && p.Placement.Out.Axis == geom.U {
			box.V.Hi = min(box.V.Hi, 0) // of one that is L-shaped, over the run too
		}
		out = append(out, cordway.BarrierOf(p.Placement.Frame, box))
	}
	return out
}

// A wall of the room is as thick as no way through it could use, and higher than
// any way over it could be worth.
const (
	wallThickness = 50 * length.Millimetre
	wallHeight    = 100 * length.Metre
)

// staysPut reports whether a board stays where it is: doors, drawers and shelves on
// pins do not, and strips on a skin are too thin to count.
func staysPut(p *model.Part) bool {
	_, own, _ := strings.Cut(p.ID, "/")
	for _, name := range []string{"door", "drawer", "shelf", "batten", "cap", "strip-room", "strip-end"} {
		if own == name || strings.HasPrefix(own, name+"-") {
			return false
		}
	}
	return true
}
