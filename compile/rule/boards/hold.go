package boards

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// driverRoom is kept beside a side for what drives a screw; common practice.
const driverRoom = length.Inch

// screwedToStuds calls for each run whose boxes are to be screwed to studs.
func screwedToStuds(b *rule.Build, look func(*model.Run, *model.Wall)) {
	for i := range b.Runs {
		run := &b.Runs[i]
		if wall := b.WallNamed(run.Wall); run.Along && wall.Backing == "studs" && b.Ref(b.Block("run."+run.Name), "wall_screws") != nil {
			look(run, wall)
		}
	}
}

// studsUnknown notes walls that boxes are screwed to, and nothing says where.
func studsUnknown(b *rule.Build) {
	screwedToStuds(b, func(run *model.Run, wall *model.Wall) {
		if len(wall.Studs) == 0 {
			f := b.Findings.Notef("studs-unknown", wall.Why.At, "Run %q is screwed to this wall, but nothing says where its studs are, nor so how many each box catches.", run.Name)
			f.Mend = `studs = [ … ], as they are found; or backing = "masonry" or "planks"`
			f.Also(b.Block("run."+run.Name).Attr("wall_screws").Expr.At, "its screws")
		}
	})
}

// studsCaught looks for boxes with too few studs behind their clear width, and tells of
// the one of each run that lacks most.
func studsCaught(b *rule.Build) {
	screwedToStuds(b, func(run *model.Run, wall *model.Wall) {
		c := catching{Build: b, run: run, wall: wall, studs: b.StudsBehind(run), wanted: b.Count(b.Limits, "studs_each"), usual: usualSpacing(wall.Studs)}
		if len(c.studs) > 0 {
			c.judge()
		}
	})
}

// catching is a run, and the studs of its wall as places along it.
type catching struct {
	*rule.Build
	run    *model.Run
	wall   *model.Wall
	studs  []length.Length
	usual  length.Length // from stud to stud; 0 where there is one
	wanted int           // for each box
	inWall []geom.Span   // what the boxes stand before
}

// usualSpacing is the middle one of the gaps between the studs of a wall.
func usualSpacing(studs []length.Length) length.Length {
	var gaps []length.Length
	studs = slices.Sorted(slices.Values(studs))
	for i := 1; i < len(studs); i++ {
		gaps = append(gaps, studs[i]-studs[i-1])
	}
	if len(gaps) == 0 {
		return 0
	}
	slices.Sort(gaps)
	return gaps[len(gaps)/2]
}

// caught counts the studs behind a stretch of the run, and those that it needs: as many as
// such a stretch has wherever it stands, one at least.
func (c *catching) caught(u geom.Span) (have, need int) {
	for _, at := range c.studs {
		if u.Holds(at) {
			have++
		}
	}
	need = 1
	if c.usual > 0 {
		need = max(need, min(c.wanted, int(u.Size()/c.usual)))
	}
	return have, need
}

func (c *catching) judge() {
	var worst *model.Box
	has, needs, others := 0, 0, -1
	for i := range c.run.Boxes {
		box := &c.run.Boxes[i]
		have, need := c.caught(box.Inside.U)
		if box.Kind != model.Cabinet || have >= need {
			continue
		}
		others++
		if worst == nil || have < has {
			worst, has, needs = box, have, need
		}
	}
	if worst != nil {
		c.tell(worst, has, needs, others)
	}
}

func (c *catching) tell(box *model.Box, have, need, others int) {
	cabinet := c.Block(box.Key())
	from, _ := c.wall.Frame.Local(c.run.Frame.At(box.Inside.U.Lo, 0))
	text := fmt.Sprintf("Between the sides of %s, from %s to %s along wall %q, there is %s; wanted: %d.", cabinet.Describe(),
		c.Show(from), c.Show(from+box.Inside.U.Size()), c.wall.Name, finding.Counted(have, "stud"), need)
	if have == 0 {
		text = strings.Replace(text, "0 studs", "no stud", 1)
	}
	switch {
	case others == 1:
		text += " Another box of the run lacks some too."
	case others > 1:
		text += fmt.Sprintf(" %d other boxes of the run lack some too.", others)
	}
	mend := "a rail screwed to the studs on either side, and the box to the rail"
	if have > 0 {
		mend = fmt.Sprintf("anchors for hollow walls beside it, then limits { studs_each = %d }", have)
	}
	if start, ok := c.start(); ok {
		mend = fmt.Sprintf("start = %q in run %s, where each box catches enough; or %s", c.Show(start), c.run.Name, mend)
	}
	at := cabinet.Attr("width").Expr.At
	var f *finding.Finding
	if have == 0 {
		f = c.Findings.Warnf("studs-caught", at, mend, "%s", text)
	} else {
		f = c.Findings.Notef("studs-caught", at, "%s", text)
		f.Mend = mend
	}
	f.Also(c.Block("wall."+c.wall.Name).Attr("studs").Expr.At, "the studs")
	c.LimitOf(f, "studs_each")
}
