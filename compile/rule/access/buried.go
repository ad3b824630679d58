package access

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// buriedBehindBoards warns of what lies in a wall behind something that nothing opens.
func buriedBehindBoards(b *rule.Build) {
	fixtures := fixturesOf(b)
	reached := fixturesReached(b, fixtures)
	for _, v := range viewsOf(b, fixtures) {
		for _, f := range v.fixtures {
			if reached[f] || told(b, f, "buried-behind-boards") {
				continue
			}
			if before := v.sight(f); before != nil {
				at, lies, mend := f.place(), "lies behind "+before.name+wherein(b, f, before), whereReached(b, f, before)
				if gap, out, ok := v.tooShort(f, before); ok {
					at, lies = f.block.Said("stands_out", "at"), "ends "+b.Show(gap)+" before "+before.name
					mend = "stands_out = " + b.Show(length.Up(out, b.Marks)) + " or more, so that it comes out in " + before.name
				}
				b.Findings.Warnf("buried-behind-boards", at, mend, "%s %s, and nothing opens to it.", finding.Capital(f.name), lies).
					Also(before.why.At, "what stands before it")
			}
		}
	}
}

// hides reports whether a body that stands before a fixture keeps one from it: an
// appliance is pulled out for a plug or a pipe, but for no switch.
func (b *body) hides(f *fixture) bool {
	return b.of == nil || b.of.Kind != model.Bay || f.kind == "switch" && b.of.Appliance.Z.Overlaps(f.face.Y)
}

// fixturesReached are the fixtures that an opening lets into the clear inside of a cabinet.
func fixturesReached(b *rule.Build, fixtures []fixture) map[*fixture]bool {
	clear := map[string]geom.Span{} // lookup only
	for _, box := range b.Boxes(model.Cabinet) {
		clear[box.Key()] = box.Inside.Z
	}
	out := map[*fixture]bool{}
	for _, l := range lets(b, fixtures) {
		if z, ok := clear[l.part.Block()]; ok && z.Overlaps(l.of.face.Y) {
			out[l.of] = true
		}
	}
	return out
}

// tooShort is how far a pipe ends before a cabinet in whose clear inside it would come
// out if it were longer, and how far it would then stand out of its wall.
func (v *view) tooShort(f *fixture, before *body) (gap, out geom.Length, ok bool) {
	if f.kind != "stub" || before.of == nil || before.of.Kind != model.Cabinet || !before.of.Inside.Z.Contains(f.face.Y) {
		return 0, 0, false
	}
	inside := *before
	inside.box = before.of.Inside
	end, ahead := spot{float64(f.face.X.Mid()), float64(f.out)}, spot{0, 1}
	seen := seenFrom(v.wall.Frame, []body{*before, inside})
	near, _ := seen[0].reaches(end, ahead)
	far, ok := seen[1].reaches(end, ahead)
	return geom.Length(math.Round(near)), f.out + geom.Length(math.Round(far)), ok
}

// wherein tells more of what stands before a fixture, where it is a cabinet.
func wherein(b *rule.Build, f *fixture, before *body) string {
	if before.of == nil || before.of.Kind != model.Cabinet {
		return ""
	}
	switch in := before.of.Inside.Z; {
	case f.face.Y.Hi <= in.Lo:
		return fmt.Sprintf(", %s under its clear inside, which begins %s %s", b.Show(in.Lo-f.face.Y.Hi), b.Show(in.Lo), b.Above())
	case f.face.Y.Lo >= in.Hi:
		return fmt.Sprintf(", %s over its clear inside, which ends %s %s", b.Show(f.face.Y.Lo-in.Hi), b.Show(in.Hi), b.Above())
	}
	return ""
}

// whereReached is how high a fixture is to be so that the cabinet before it has an
// opening for it.
func whereReached(b *rule.Build, f *fixture, before *body) string {
	if wherein(b, f, before) == "" {
		return "move the " + f.kind + ", or the boxes, so that it lies in a cabinet or open to the room"
	}
	half := max(f.face.Y.Size()-f.face.Y.Size()/2+f.clearance+b.Length(b.Limits, "opening_edge"), f.cover.Y.Size()-f.cover.Y.Size()/2)
	in := before.of.Inside.Z
	if f.face.Y.Hi <= in.Lo {
		return "its centre at " + b.Measured(f.wall, f.face.X.Mid(), in.Lo+half, true) + ", or higher"
	}
	return "its centre at " + b.Measured(f.wall, f.face.X.Mid(), in.Hi-half, false) + ", or lower"
}
