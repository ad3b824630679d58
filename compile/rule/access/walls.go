package access

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/rule"
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
