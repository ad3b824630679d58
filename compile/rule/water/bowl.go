package water

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// bowlInSlab refuses a bowl that ends in the slab that it hangs in.
func bowlInSlab(b *rule.Build) {
	for _, s := range basinsOf(b) {
		if s.bowl.Z.Lo < s.bowl.Z.Hi {
			continue
		}
		thick := s.top - s.bowl.Z.Hi
		b.Findings.Errorf("bowl-in-slab", s.block.Said("bowl"), "a bowl of "+b.Show(length.Down(thick, b.Marks)+b.Marks)+" or more",
			"The bowl of %s is %s deep from the upper face of the slab, which is %s thick: nothing of it hangs under the slab.",
			s.block.Describe(), b.Show(s.top-s.bowl.Z.Lo), b.Show(thick))
	}
}

// tapWithoutSink looks at each counter: where no sink is, its first tap is noted,
// otherwise the one that is furthest from all, with a count of others that are too far.
func tapWithoutSink(b *rule.Build) {
	for i := range b.Slabs {
		slab := &b.Slabs[i]
		if slab.Kind != "counter" {
			continue
		}
		counter := b.Block("counter." + slab.Name)
		taps := counter.Inner("tap")
		if len(taps) > 0 && len(counter.Inner("sink")) == 0 {
			b.Findings.Notef("tap-without-sink", taps[0].Head, "%s stands in a counter that has no sink: what drips from it runs over the slab.",
				finding.Capital(taps[0].Describe()))
			continue
		}
		tapsTooFar(b, counter.Describe(), slab.Cuts)
	}
}

// tapsTooFar notes the tap of a counter that is furthest from its sinks, where that is
// further than a spout reaches.
func tapsTooFar(b *rule.Build, counter string, cuts []model.SlabCut) {
	reach := b.Length(b.Limits, "tap_reach")
	var worst, sink *model.SlabCut
	far, others := reach, -1
	for i := range cuts {
		tap := &cuts[i]
		if tap.Kind != "tap" {
			continue
		}
		near, off := nearestSink(tap, cuts)
		if off > reach {
			others++
		}
		if off > far {
			worst, sink, far = tap, near, off
		}
	}
	if worst == nil {
		return
	}
	block := b.Block("tap." + worst.Name)
	text := fmt.Sprintf("%s stands %s from sink %q, the nearest of %s; the spout of a tap reaches %s: %s too far, and what runs from it runs over the slab.",
		finding.Capital(block.Describe()), b.Show(nearMark(b, far)), sink.Name, counter, b.Show(reach), b.Show(nearMark(b, far-reach)))
	text += finding.Others(others, " Another tap is too far off as well.", " %d other taps are too far off as well.")
	f := b.Findings.Notef("tap-without-sink", block.Said("from_left", "behind"), "%s", text)
	f.Mend = "behind = sink." + sink.Name + " in place of from_left"
	b.LimitOf(f, "tap_reach")
}

// nearestSink is the sink whose rim is nearest to the middle of a tap, and how far.
func nearestSink(tap *model.SlabCut, cuts []model.SlabCut) (near *model.SlabCut, off geom.Length) {
	u, v := tap.Box.U.Mid(), tap.Box.V.Mid()
	off = math.MaxInt64
	for i := range cuts {
		if s := &cuts[i]; s.Kind == "sink" {
			along, across := max(s.Box.U.Lo-u, u-s.Box.U.Hi, 0), max(s.Box.V.Lo-v, v-s.Box.V.Hi, 0)
			if d := geom.Length(math.Round(math.Hypot(float64(along), float64(across)))); d < off {
				near, off = s, d
			}
		}
	}
	return near, off
}
