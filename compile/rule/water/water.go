// Package water judges sinks, their drains and the pipes that serve them (SPEC.md 11.10).
package water

import (
	"math"
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
	{Slug: "stubs-meet", Look: stubsMeet},
	{Slug: "sink-without-water", Look: sinkWithoutWater},
	{Slug: "sink-without-drain", Look: sinkWithoutDrain},
	{Slug: "tap-without-sink", Look: tapWithoutSink},
}

// basin is a sink, and where its bowl hangs in the frame of its run.
type basin struct {
	block *lang.Block
	run   *model.Run
	box   int      // the cabinet that it hangs in, an index into the run's boxes
	bowl  geom.Box // from the slab's underside to its own
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
				out = append(out, basin{block, run, run.Cabinet(b.Ref(block, "in").Name), cut.Box.With(geom.Z, geom.Span{Lo: bottom, Hi: slab.Box.Z.Lo})})
			}
		}
	}
	return out
}

// outflow is a drain as it is laid from under the middle of its sink's bowl to its
// stub: at right angles, first as far from the wall as the stub ends, then along.
type outflow struct {
	block    *lang.Block
	from     basin
	stub     *model.Stub
	stubText *lang.Block
	middle   geom.Point // of the bowl, u and v
	end      geom.Point // of the stub, likewise
	diameter geom.Length
	size     geom.Length // nominal, as is that of the trap
	trap     geom.Length
	seal     geom.Length
	drop     geom.Length // from under the bowl to the pipe's middle, at least
	slope    float64     // of its length; steeper than 1 counts as 1
	arm      geom.Length // from the trap to the wall's face at the stub
	fall     geom.Length // over the arm
	vent     string      // "wall", "island", "valve"; empty where it is not known
}

// trapTakes is how much of the way the bend of a trap takes, in sizes of it: a
// bend's radius is about one and a half (common practice, from memory).
const trapTakes = 3

// outflowsOf lays out the drains, in the order of the text.
func outflowsOf(b *rule.Build) []outflow {
	sinks := map[*lang.Block]basin{} // lookup only
	for _, s := range basinsOf(b) {
		sinks[s.block] = s
	}
	var out []outflow
	for _, d := range b.Source.Top("drain") {
		from := sinks[b.Ref(d, "from")]
		o := outflow{
			block: d, from: from, stubText: b.Ref(d, "to"),
			middle:   geom.Point{X: from.bowl.U.Mid(), Y: from.bowl.V.Mid()},
			diameter: b.Length(d, "diameter"), size: b.Length(d, "size"), slope: min(1, b.Number(d, "slope")), vent: b.Text(d, "vent"),
			trap: b.FieldLength(d, "trap", "size"), seal: b.FieldLength(d, "trap", "seal"), drop: b.FieldLength(d, "trap", "drop"),
		}
		if o.size == 0 {
			o.size = soldAs(o.diameter)
		}
		if o.trap == 0 {
			o.trap = o.size
		}
		if o.vent == "" && from.run.Along {
			o.vent = "wall"
		}
		var wall *model.Wall
		wall, o.stub = stubOf(b, o.stubText)
		o.end.X, o.end.Y = from.run.Frame.Local(wall.Frame.At(o.stub.Along, o.stub.StandsOut))
		way := length.Apart(o.end.X, o.middle.X) + length.Apart(o.end.Y, o.middle.Y)
		o.arm = max(0, way+o.stub.StandsOut-trapTakes*o.trap)
		o.fall = geom.Length(math.Round(o.slope * float64(o.arm)))
		out = append(out, o)
	}
	return out
}

// stubOf finds a stub of the text in its wall.
func stubOf(b *rule.Build, text *lang.Block) (*model.Wall, *model.Stub) {
	w := b.WallNamed(text.Parent.Name)
	return w, &w.Stubs[slices.IndexFunc(w.Stubs, func(s model.Stub) bool { return s.Name == text.Name })]
}

// pipes are outside diameters and what they are sold as (ASTM D1785, table 1).
var pipes = []struct{ outside, size geom.Length }{
	{length.Inch * 1660 / 1000, length.Inch * 5 / 4},
	{length.Inch * 1900 / 1000, length.Inch * 3 / 2},
	{length.Inch * 2375 / 1000, length.Inch * 2},
}

// soldAs is the size that pipe of an outside diameter is sold as: that of the
// table, told to a fifth of a millimetre, or tube, which is sold by its diameter
// (common practice, from memory).
func soldAs(outside geom.Length) geom.Length {
	for _, p := range pipes {
		if length.Apart(outside, p.outside) <= length.Millimetre/5 {
			return p.size
		}
	}
	return outside
}

// axis is the height of the pipe's middle where it leaves the trap. On its way to a
// vent in the wall it only falls; to another stub it may drop, and then the trap
// hangs as high as it can.
func (o *outflow) axis() geom.Length {
	if o.vent == "wall" {
		return o.stub.Height + o.fall
	}
	return max(o.stub.Height+o.fall, o.from.bowl.Z.Lo-o.drop)
}

// weir is the height over which water leaves the trap: the bottom of its bore.
func (o *outflow) weir() geom.Length { return o.axis() - o.trap/2 }

// bottom is the underside of the trap.
func (o *outflow) bottom() geom.Length { return o.weir() - o.seal - o.diameter }

// stubAt is the place of where the stub stands.
func (o *outflow) stubAt() source.Range { return o.stubText.Attr("at").Expr.At }

// plumbed reports whether a code of plumbing holds.
func plumbed(b *rule.Build) bool { return b.Text(b.Limits, "plumbing") != "none" }

// limitsWater reports whether a limit holds: by a code, or since the text states it.
func limitsWater(b *rule.Build, limit string) bool { return plumbed(b) || b.Limits.Attr(limit) != nil }

// waterFrom tells whose limit it is.
func waterFrom(b *rule.Build, limit string) string {
	if b.Limits.Attr(limit) != nil {
		return "this build"
	}
	return map[string]string{"irc": "the IRC", "upc": "the UPC"}[b.Text(b.Limits, "plumbing")]
}

// waterNotJudged notes that no code is chosen, once.
func waterNotJudged(b *rule.Build) {
	drains := b.Source.Top("drain")
	if len(drains) == 0 || plumbed(b) || b.Limits.Attr("plumbing") != nil {
		return
	}
	b.Findings.Notef("water-not-judged", drains[0].Head, "%s is held to no code of plumbing: a build in millimetres names none.",
		finding.Capital(drains[0].Describe())).Mend = `limits { plumbing = "irc" } or "upc" to have it judged, "none" where that is meant`
}
