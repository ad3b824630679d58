package wiring

import (
	"slices"

	"barwright/compile/rule"
	"barwright/lang/finding"
)

// cableNearWater notes cables that come through a box that a sink hangs in.
func cableNearWater(b *rule.Build) {
	for _, sink := range sinksOf(b) {
		in := b.Ref(b.Block("sink."+sink.Name), "in")
		for i := range b.Ways {
			w := &b.Ways[i]
			if w.Kind != "cable" || !slices.Contains(w.Past, in.Key()) {
				continue
			}
			f := b.Findings.Notef("cable-near-water", w.Why.At, "%s comes through %s, under sink %q, where water drips when a trap or a tap is worked on.",
				finding.Capital(b.Block(w.Key()).Describe()), in.Describe(), sink.Name)
			f.Mend = "through = [ … ] with boxes that have no sink, or the knee wall"
			f.Also(sink.Why.At, "the sink")
		}
	}
}
