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

// plugWithoutRoom warns of outlets behind an appliance or a drawer that leaves no room
// for a plug. Of the outlet that an appliance itself hides and is plugged into,
// plug-out-of-reach speaks.
func plugWithoutRoom(b *rule.Build) {
	fixtures := fixturesOf(b)
	before, out, told := standingBefore(b), outOfPanels(b, fixtures), plugsTold(b)
	for _, v := range viewsOf(b, fixtures) {
		stands := seenFrom(v.wall.Frame, v.near(before, b.Length(b.Limits, "plug_room")+deepest(v.fixtures, out)))
		for _, f := range v.fixtures {
			if f.kind == "outlet" {
				plugBehind(b, f, max(f.out, out[f]), stands, told[f.name])
			}
		}
	}
}

// deepest is how far out of their wall the plates of fixtures lie at most.
func deepest(fixtures []*fixture, out map[*fixture]geom.Length) (most geom.Length) {
	for _, f := range fixtures {
		most = max(most, f.out, out[f])
	}
	return most
}

// standingBefore lists what may stand before a plug: appliances, and the boxes of drawers
// while they are shut.
func standingBefore(b *rule.Build) []body {
	var out []body
	for i := range b.Runs {
		for j := range b.Runs[i].Boxes {
			box := &b.Runs[i].Boxes[j]
			if box.Kind == model.Bay {
				out = append(out, body{"the appliance of " + box.Words(), box, box.Appliance, b.Runs[i].Frame, box.Why})
			}
			for _, front := range box.Fronts {
				if front.Kind == model.Drawer {
					out = append(out, body{front.Name + " of " + box.Words(), box, front.Box, b.Runs[i].Frame, box.Why})
				}
			}
		}
	}
	return out
}

// outOfPanels is how far out of its wall the plate of a fixture lies on the board of a
// cabinet.
func outOfPanels(b *rule.Build, fixtures []fixture) map[*fixture]geom.Length {
	out := map[*fixture]geom.Length{} // lookup only
	for _, l := range covers(b, fixtures) {
		face := seenFrom(l.of.wall.Frame, []body{{box: l.before(0), at: l.part.Placement.Frame}})
		if far, ok := face[0].before(l.of); ok {
			out[l.of] = max(out[l.of], far)
		}
	}
	return out
}

// plugsTold are the outlets that cords and bays name.
func plugsTold(b *rule.Build) map[string]bool {
	out := map[string]bool{} // lookup only
	for _, c := range b.Source.Top("cord") {
		out["outlet "+b.Ref(c, "to").Name] = true
	}
	for _, run := range b.Source.Top("run") {
		for _, bay := range run.Inner("bay") {
			if bay.Attr("plug") != nil {
				out["outlet "+b.Ref(bay, "plug").Name] = true
			}
		}
	}
	return out
}

// plugBehind tells of what leaves a plug the least room.
func plugBehind(b *rule.Build, f *fixture, out geom.Length, stands []seen, told bool) {
	limit := b.Length(b.Limits, "plug_room")
	var worst *seen
	least := limit
	for i := range stands {
		if far, ok := stands[i].before(f); ok && far-out < least {
			worst, least = &stands[i], far-out
		}
	}
	if worst == nil || told && worst.of.Kind == model.Bay && worst.holds(f) {
		return
	}
	leaves, mend := ", which leaves ", "an outlet in a cabinet beside the bay"
	if worst.of.Kind == model.Bay {
		gap := b.Length(b.Block(worst.of.Key()), "back_gap") + limit - least
		mend = fmt.Sprintf("back_gap = %q, or %s", b.Show(length.Up(gap, b.Marks)), mend)
	} else {
		leaves = ", which leaves, while it is shut, "
		mend = fmt.Sprintf("no slides over %s: drawer = { lengths = [ … ] } of its carcass; or an outlet in a cabinet without drawers",
			b.Show(length.Down(worst.box.V.Size()-limit+least, b.Marks)))
	}
	b.LimitOf(b.Findings.Warnf("plug-without-room", f.place(), mend,
		"%s lies behind %s%s%s before it. A plug and the bend of its cord want %s: %s too little.",
		finding.Capital(f.name), worst.name, leaves, b.Show(max(0, least)), b.Show(limit), b.Show(limit-least)).
		Also(worst.why.At, "what stands before it"), "plug_room")
}

// holds reports whether a fixture lies in the width of the box that something stands in.
func (s *seen) holds(f *fixture) bool {
	u, _ := s.at.Local(f.wall.Frame.At(f.face.X.Mid(), 0))
	return s.of.Hull.U.Holds(u)
}

// before is how far out of the wall a body begins that stands before a fixture.
func (s *seen) before(f *fixture) (geom.Length, bool) {
	if !s.box.Z.Overlaps(f.face.Y) || s.hi <= float64(f.face.X.Lo) || s.lo >= float64(f.face.X.Hi) {
		return 0, false
	}
	nearest, met := math.Inf(1), false
	for _, u := range []geom.Length{f.face.X.Lo + 1, f.face.X.Mid(), f.face.X.Hi - 1} {
		if far, ok := s.reaches(spot{float64(u), 0}, spot{0, 1}); ok {
			nearest, met = min(nearest, far), true
		}
	}
	return geom.Length(nearest), met
}
