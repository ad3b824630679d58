package water

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// stubsMeet looks along each wall: of two stubs that meet, the fittings cannot both
// be turned on.
func stubsMeet(b *rule.Build) {
	for i := range b.Room.Walls {
		stubs := slices.Clone(b.Room.Walls[i].Stubs)
		slices.SortStableFunc(stubs, func(a, b model.Stub) int { return cmp.Compare(a.Along, b.Along) })
		widest := geom.Length(0)
		for j := range stubs {
			widest = max(widest, stubs[j].Diameter)
			for k := j - 1; k >= 0 && stubs[j].Along-stubs[k].Along < widest; k-- {
				pairOfStubs(b, &stubs[k], &stubs[j])
			}
		}
	}
}

func pairOfStubs(b *rule.Build, one, other *model.Stub) {
	need := (one.Diameter + other.Diameter) / 2
	have := geom.Length(math.Round(math.Hypot(float64(other.Along-one.Along), float64(other.Height-one.Height))))
	if have >= need {
		return
	}
	b.Findings.Warnf("stubs-meet", b.Block("stub."+other.Name).Attr("at").Expr.At, "the two "+b.Show(need-have)+" further apart",
		"Stubs %q and %q are %s apart from middle to middle. Their widest fittings need %s: %s too near.",
		one.Name, other.Name, b.Show(have), b.Show(need), b.Show(need-have)).
		Also(one.Why.At, "the other one")
}

// carrying are the stubs of which the text says that they carry a thing.
func carrying(b *rule.Build, what string) map[string]*lang.Block {
	out := map[string]*lang.Block{} // lookup only
	for _, room := range b.Source.Top("room") {
		for _, wall := range room.Inner("wall") {
			for _, s := range wall.Inner("stub") {
				if b.Text(s, "carries") == what {
					out[s.Name] = s
				}
			}
		}
	}
	return out
}

func sinkWithoutWater(b *rule.Build) {
	water := carrying(b, "water")
	if len(water) == 0 {
		return
	}
	sinks := basinsOf(b)
	for i, all := range inTheWay(b, sinks) {
		s := &sinks[i]
		if slices.ContainsFunc(all, func(o blocker) bool { return o.stub != nil && water[o.stub.Name] != nil && s.reachable(o.box) }) {
			continue
		}
		b.Findings.Notef("sink-without-water", s.block.Head, "No stub that carries water ends in cabinet %q, in which %s hangs, or in a box beside it.",
			s.cabinet().Name, s.block.Describe())
	}
}

// reachable reports whether a stub reaches into the sink's cabinet or a box beside it.
func (s *basin) reachable(stub geom.Box) bool {
	for i := max(0, s.box-1); i <= min(s.box+1, len(s.run.Boxes)-1); i++ {
		if s.run.Boxes[i].Hull.Overlaps(stub) {
			return true
		}
	}
	return false
}

// sinkWithoutDrain is silent where the text tells of no drain at all.
func sinkWithoutDrain(b *rule.Build) {
	drains := b.Source.Top("drain")
	if len(drains) == 0 && len(carrying(b, "drain")) == 0 {
		return
	}
	drained := map[*lang.Block]bool{} // lookup only
	for _, d := range drains {
		drained[b.Ref(d, "from")] = true
	}
	for _, s := range basinsOf(b) {
		if !drained[s.block] {
			b.Findings.Notef("sink-without-drain", s.block.Head, "No drain leads from %s.", s.block.Describe())
		}
	}
}

func tapWithoutSink(b *rule.Build) {
	for _, counter := range b.Source.Top("counter") {
		if taps := counter.Inner("tap"); len(taps) > 0 && len(counter.Inner("sink")) == 0 {
			b.Findings.Notef("tap-without-sink", taps[0].Head, "%s stands in a counter that has no sink: what drips from it runs over the slab.",
				finding.Capital(taps[0].Describe()))
		}
	}
	for i := range b.Slabs {
		tapsFarFromSinks(b, &b.Slabs[i])
	}
}

// tapsFarFromSinks looks for taps whose spout reaches no bowl of their counter.
func tapsFarFromSinks(b *rule.Build, s *model.Slab) {
	reach := b.Length(b.Limits, "tap_reach")
	for _, tap := range s.Cuts {
		nearest := geom.Length(math.MaxInt64)
		for _, sink := range s.Cuts {
			if tap.Kind == "tap" && sink.Kind == "sink" {
				nearest = min(nearest, toBowl(tap.Box, sink.Box))
			}
		}
		if nearest <= reach || nearest == math.MaxInt64 {
			continue
		}
		nearest = length.Up(nearest, b.Marks)
		b.LimitOf(b.Findings.Notef("tap-without-sink", tap.Why.At, "Tap %q stands %s from the cut-out of the nearest sink of its counter; a spout reaches %s at most: %s too far.",
			tap.Name, b.Show(nearest), b.Show(reach), b.Show(nearest-reach)), "tap_reach")
	}
}

// toBowl is how far the middle of a tap is from a cut-out, seen from above.
func toBowl(tap, cut geom.Box) geom.Length {
	u, v := tap.U.Mid(), tap.V.Mid()
	du, dv := max(cut.U.Lo-u, u-cut.U.Hi, 0), max(cut.V.Lo-v, v-cut.V.Hi, 0)
	return geom.Length(math.Round(math.Hypot(float64(du), float64(dv))))
}
