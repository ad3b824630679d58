package access

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// boxInStud warns of boxes that lie in a stud of their wall, as both were measured.
func boxInStud(b *rule.Build) {
	fixtures := fixturesOf(b)
	thick, limit := b.Length(b.Limits, "stud_thickness"), b.Length(b.Limits, "box_stud")
	for i := range fixtures {
		f := &fixtures[i]
		if !f.electrical() || f.wall.Backing != "studs" || f.out >= f.depth {
			continue
		}
		for _, centre := range f.wall.Studs {
			stud := geom.About(centre, thick)
			deep := f.face.X.Intersect(stud).Size()
			if deep <= limit {
				continue
			}
			b.LimitOf(b.Findings.Warnf("box-in-stud", f.place(), besideStud(b, f, stud),
				"The box of %s is %s wide and would lie from %s to %s along wall %s, but a stud stands from %s to %s: %s of the box are in it. "+
					"One of the two was measured wrong, or to something else than its centre.",
				f.name, b.Show(f.face.X.Size()), b.Show(f.face.X.Lo), b.Show(f.face.X.Hi), f.wall.Name, b.Show(stud.Lo), b.Show(stud.Hi), b.Show(deep)).
				Also(f.wall.Why.At, "the wall and its studs"), "box_stud")
			break
		}
	}
}

// besideStud is where the box stands against the nearer side of the stud.
func besideStud(b *rule.Build, f *fixture, stud geom.Span) string {
	half := f.face.X.Size() - f.face.X.Size()/2
	return fmt.Sprintf("measure again: a box against this stud has its centre at %s or %s",
		b.Show(length.Down(stud.Lo-half, b.Marks)), b.Show(length.Up(stud.Hi+half, b.Marks)))
}

// plugWithoutRoom warns of outlets behind an appliance that leaves no room for a plug.
func plugWithoutRoom(b *rule.Build) {
	limit := b.Length(b.Limits, "plug_room")
	var appliances []body
	for run, bay := range b.Boxes(model.Bay) {
		appliances = append(appliances, body{bay.Name, bay, bay.Appliance, run.Frame, bay.Why})
	}
	for _, v := range viewsOf(b, fixturesOf(b)) {
		machines := seenFrom(v.wall.Frame, appliances)
		for _, f := range v.fixtures {
			if f.kind == "outlet" {
				plugBehind(b, f, machines, limit)
			}
		}
	}
}

func plugBehind(b *rule.Build, f *fixture, machines []seen, limit geom.Length) {
	for i := range machines {
		s := &machines[i]
		room, ok := s.before(f)
		if !ok || room >= limit {
			continue
		}
		need := b.Show(length.Up(b.Length(b.Block(s.of.Key()), "back_gap")+limit-room, b.Marks))
		b.LimitOf(b.Findings.Warnf("plug-without-room", f.place(),
			fmt.Sprintf("back_gap = %q, or an outlet in a cabinet beside the bay", need),
			"%s lies behind the appliance of bay %s, which leaves %s before it. A plug and the bend of its cord want %s: %s too little.",
			finding.Capital(f.name), s.name, b.Show(max(0, room)), b.Show(limit), b.Show(limit-room)).
			Also(s.why.At, "the bay"), "plug_room")
		return
	}
}

// before is what an appliance leaves free before a fixture, where it stands before it.
func (s *seen) before(f *fixture) (geom.Length, bool) {
	if !s.box.Z.Overlaps(f.face.Y) {
		return 0, false
	}
	nearest, met := geom.Length(0), false
	for _, u := range []geom.Length{f.face.X.Lo + 1, f.face.X.Mid(), f.face.X.Hi - 1} {
		if far, ok := s.reaches(spot{float64(u), 0}, spot{0, 1}); ok && (!met || geom.Length(far)-f.out < nearest) {
			nearest, met = geom.Length(far)-f.out, true
		}
	}
	return nearest, met
}
