package wiring

import (
	"cmp"
	"slices"
	"strings"

	"barwright/compile/cordway"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func wiringNotJudged(b *rule.Build) {
	if nec(b) || limitsSay(b, "wiring", "ground_fault_within", "ground_fault_area") || len(outletsOf(b)) == 0 {
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

func groundFaultMissing(b *rule.Build) {
	area := b.Flag(b.Limits, "ground_fault_area")
	if !nec(b) && !area && !limitsSay(b, "ground_fault_within") {
		return
	}
	sinks := sinksOf(b)
	bare := slices.DeleteFunc(outletsOf(b), func(d device) bool {
		return b.Flag(d.block, "ground_fault") || b.Flag(d.block.Parent, "ground_fault")
	})
	if len(sinks) == 0 || len(bare) == 0 {
		return
	}
	if area {
		d := bare[0]
		f := b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend,
			"%s does not say that it is protected against ground faults. The limits ask it of every outlet in an area with a sink where food or drink is made, and there is sink %q.",
			finding.Capital(d.block.Describe()), sinks[0].Name)
		alsoDevices(f, bare[1:])
		b.LimitOf(f.Also(sinks[0].Why.At, "the sink"), "ground_fault_area")
		return
	}
	groundFaultReach(b, sinks, bare)
}

const groundFaultMend = "ground_fault = true, once it is protected"

// sealing is what the way off sealed barriers may be too long by: a hundredth of a
// millimetre, so that what is just on the limit is within it.
const sealing = 10_000

// groundFaultReach looks for outlets within a cord's reach of a bowl.
func groundFaultReach(b *rule.Build, sinks []bowl, bare []device) {
	reach := b.Length(b.Limits, "ground_fault_within")
	barriers := cordBarriers(b)
	for _, d := range bare {
		to := cordway.Rim(d.frame, d.off())
		slices.SortStableFunc(sinks, func(x, y bowl) int { return cmp.Compare(cordway.Least(x.rim(), to), cordway.Least(y.rim(), to)) })
		best, nearest := float64(reach)+sealing, -1
		var shortest cordway.Way
		for i := range sinks {
			from := sinks[i].rim()
			if cordway.Least(from, to) > best {
				break
			}
			if w, ok := cordway.Shortest(from, to, cordway.Near(barriers, from, best), best); ok && (nearest < 0 || w.Length() < best) {
				best, nearest, shortest = w.Length(), i, w
			}
		}
		if nearest < 0 {
			continue
		}
		sink, far := sinks[nearest], toMark(b, best)
		b.LimitOf(b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend,
			"A cord from the rim of sink %q reaches %s in %s, %s. Outlets within %s are protected against ground faults; this one, %s, does not say so.",
			sink.Name, d.block.Describe(), b.Show(far), cordBends(&shortest), b.Show(reach), nearerBy(b, reach-far)).
			Also(sink.Why.At, "the sink"), "ground_fault_within")
	}
}

// off is where a cord ends at a device: just before the face that it is used from.
func (d *device) off() geom.Box {
	out := 2 * cordway.Sealed
	if d.knee != nil && d.knee.Face == "room" {
		out = -out
	}
	return d.used.With(geom.V, d.used.V.Shift(out))
}

// nearerBy says how far within a reach something is.
func nearerBy(b *rule.Build, by geom.Length) string {
	if by <= 0 {
		return "just as near"
	}
	return b.Show(by) + " nearer"
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
