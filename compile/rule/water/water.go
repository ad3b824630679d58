// Package water judges sinks, their drains and the pipes that serve them (SPEC.md 11.10).
package water

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "water-not-judged", Look: waterNotJudged},
	{Slug: "bowl-in-slab", Look: bowlInSlab},
	{Slug: "drain-into-water", Look: drainIntoWater},
	{Slug: "drain-too-flat", Look: drainTooFlat},
	{Slug: "trap-arm-falls-too-far", Look: trapArmFallsTooFar},
	{Slug: "trap-arm-too-long", Look: trapArmTooLong},
	{Slug: "trap-arm-too-short", Look: trapArmTooShort},
	{Slug: "sink-without-vent", Look: sinkWithoutVent},
	{Slug: "drain-narrows", Look: drainNarrows},
	{Slug: "trap-too-small", Look: trapTooSmall},
	{Slug: "stub-too-high", Look: stubTooHigh},
	{Slug: "stub-too-low", Look: stubTooLow},
	{Slug: "trap-meets", Look: trapMeets},
	{Slug: "drain-through-boards", Look: drainThroughBoards},
	{Slug: "drain-in-the-open", Look: drainInTheOpen},
	{Slug: "stubs-meet", Look: stubsMeet},
	{Slug: "sink-without-water", Look: sinkWithoutWater},
	{Slug: "sink-without-drain", Look: sinkWithoutDrain},
	{Slug: "tap-without-sink", Look: tapWithoutSink},
}

// basin is a sink, and where its bowl hangs in the frame of its run.
type basin struct {
	block *lang.Block
	run   *model.Run
	box   int         // the cabinet that it hangs in, an index into the run's boxes
	top   geom.Length // the slab's upper face, which the bowl's depth counts from
	bowl  geom.Box    // from the slab's underside to its own
}

func (s *basin) cabinet() *model.Box { return &s.run.Boxes[s.box] }

// basinsOf lists the sinks, in the order of the counters.
func basinsOf(b *rule.Build) []basin {
	var out []basin
	for i := range b.Slabs {
		slab := &b.Slabs[i]
		if slab.Kind != "counter" {
			continue
		}
		counter := b.Block("counter." + slab.Name)
		run := b.RunNamed(b.Ref(counter, "over").Name)
		for j := range slab.Cuts {
			if cut := &slab.Cuts[j]; cut.Kind == "sink" {
				block := b.Block("sink." + cut.Name)
				bottom := slab.Box.Z.Hi - b.Length(block, "bowl")
				out = append(out, basin{block, run, run.Cabinet(b.Ref(block, "in").Name), slab.Box.Z.Hi, cut.Box.With(geom.Z, geom.Span{Lo: bottom, Hi: slab.Box.Z.Lo})})
			}
		}
	}
	return out
}

// outflow is a drain as it is laid, and what of the text it follows from.
type outflow struct {
	*model.Drain
	way      *model.Way
	block    *lang.Block
	from     basin
	stub     *model.Stub
	stubText *lang.Block
	middle   geom.Point  // of the bowl, u and v
	drop     geom.Length // from under the bowl to the pipe's middle, at least
	slope    float64     // of its length; steeper than 1 counts as 1
}

// outflowsOf are the drains, in the order of the text, but for those into water.
func outflowsOf(b *rule.Build) []outflow {
	sinks := map[string]basin{} // lookup only
	for _, s := range basinsOf(b) {
		sinks[s.block.Name] = s
	}
	out := make([]outflow, len(b.Drains))
	for i := range b.Drains {
		d := &b.Drains[i]
		block, from := b.Block(d.Key()), sinks[d.Sink]
		out[i] = outflow{
			Drain: d, way: b.WayOf(d), block: block, from: from, stubText: b.Ref(block, "to"), middle: geom.Point{X: from.bowl.U.Mid(), Y: from.bowl.V.Mid()},
			drop: b.FieldLength(block, "trap", "drop"), slope: min(1, b.Number(block, "slope")),
		}
		_, out[i].stub = stubOf(b, out[i].stubText)
	}
	return out
}

// stubOf finds a stub of the text in its wall.
func stubOf(b *rule.Build, text *lang.Block) (*model.Wall, *model.Stub) {
	w := b.WallNamed(text.Parent.Name)
	return w, &w.Stubs[slices.IndexFunc(w.Stubs, func(s model.Stub) bool { return s.Name == text.Name })]
}

// stubAt is the place of where the stub stands.
func (o *outflow) stubAt() source.Range { return o.stubText.Attr("at").Expr.At }

// plumbed reports whether a code of plumbing holds.
func plumbed(b *rule.Build) bool { return b.Text(b.Limits, "plumbing") != "none" }

// limitsWater reports whether a limit holds: by a code, or since the text states it.
func limitsWater(b *rule.Build, limit string) bool { return plumbed(b) || b.LimitsSay(limit) }

// nearMark rounds what nobody measures so finely to the nearest mark; less than one stays.
func nearMark(b *rule.Build, l geom.Length) geom.Length {
	if l < b.Marks {
		return l
	}
	return length.Round(l, b.Marks)
}

// waterFrom tells whose limit it is.
func waterFrom(b *rule.Build, limit string) string {
	if b.LimitsSay(limit) {
		return "this build"
	}
	return map[string]string{"irc": "the IRC", "upc": "the UPC"}[b.Text(b.Limits, "plumbing")]
}

// waterNotJudged notes that no code is chosen, once.
func waterNotJudged(b *rule.Build) {
	drains := b.Source.Top("drain")
	if len(drains) == 0 || plumbed(b) || b.LimitsSay("plumbing") {
		return
	}
	b.Findings.Notef("water-not-judged", drains[0].Head, "%s is held to no code of plumbing: a build in millimetres names none.",
		finding.Capital(drains[0].Describe())).Mend = `limits { plumbing = "irc" } or "upc" to have it judged, "none" where that is meant`
}
