package boards

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/expr"
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

// studsCaught looks for boxes with too few studs behind their clear width.
func studsCaught(b *rule.Build) {
	screwedToStuds(b, func(run *model.Run, wall *model.Wall) {
		studs := b.StudsBehind(run)
		for i := range run.Boxes {
			if run.Boxes[i].Kind == model.Cabinet && len(studs) > 0 {
				boxCatches(b, wall, run, i, studs)
			}
		}
	})
}

// caught counts the studs behind a stretch of a run, and those that it needs: one
// will do for a stretch narrower than a gap between two studs that it reaches into.
func caught(studs []length.Length, u geom.Span, wanted int) (have, need int) {
	need = wanted
	for i, at := range studs {
		if u.Holds(at) {
			have++
		}
		if i > 0 && u.Overlaps(geom.Span{Lo: studs[i-1], Hi: at}) && u.Size() < at-studs[i-1] {
			need = min(need, 1)
		}
	}
	return have, need
}

func boxCatches(b *rule.Build, wall *model.Wall, run *model.Run, i int, studs []length.Length) {
	box, wanted := &run.Boxes[i], b.Count(b.Limits, "studs_each")
	have, need := caught(studs, box.Inside.U, wanted)
	if have >= need {
		return
	}
	cabinet := b.Block(box.Key())
	from, _ := wall.Frame.Local(run.Frame.At(box.Inside.U.Lo, 0))
	place := fmt.Sprintf("Between the sides of %s, from %s to %s along wall %q, there is", cabinet.Describe(),
		b.Show(from), b.Show(from+box.Inside.U.Size()), wall.Name)
	wider, at := "", cabinet.Attr("width").Expr.At
	if wide := widenedToStuds(b, run, i, studs, wanted); wide > 0 {
		wider = fmt.Sprintf("width = %q, which reaches enough of them; or ", b.Show(wide))
	}
	var f *finding.Finding
	if have == 0 {
		f = b.Findings.Warnf("studs-caught", at, wider+"a rail screwed to the studs on either side, and the box to the rail", "%s no stud; wanted: %d.", place, need)
	} else {
		f = b.Findings.Notef("studs-caught", at, "%s %s; wanted: %d.", place, finding.Counted(have, "stud"), need)
		f.Mend = fmt.Sprintf("%sanchors for hollow walls beside it, then limits { studs_each = %d }", wider, have)
	}
	f.Also(b.Block("wall."+wall.Name).Attr("studs").Expr.At, "the studs")
	b.LimitOf(f, "studs_each")
}

// widenedToStuds is the least width, on a mark, with which a box catches enough studs, where
// it has a width of its own and only the boxes after it give way; else 0.
func widenedToStuds(b *rule.Build, run *model.Run, i int, studs []length.Length, wanted int) length.Length {
	box, fromRight := &run.Boxes[i], b.Text(b.Block("run."+run.Name), "from") == "right"
	before := run.Boxes[:i+1]
	if fromRight {
		before = run.Boxes[i:]
	}
	for _, other := range before {
		if block := b.Block(other.Key()); other.Kind != model.Bay && b.Value(block, "width").Kind != expr.Length {
			return 0
		}
	}
	for k := range studs {
		u, at := box.Inside.U, studs[k]
		if fromRight {
			at = studs[len(studs)-1-k]
			u.Lo = min(u.Lo, at-driverRoom)
		} else {
			u.Hi = max(u.Hi, at+driverRoom)
		}
		if u == box.Inside.U {
			continue
		}
		if have, need := caught(studs, u, wanted); have >= need {
			return length.Up(box.Hull.U.Size()+u.Size()-box.Inside.U.Size(), b.Marks)
		}
	}
	return 0
}
