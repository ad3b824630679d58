// Package finish judges slabs, skins and what closes cabinets (SPEC.md 11.4).
package finish

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "slab-stuck", Look: slabStuck},
	{Slug: "slab-in-corner", Look: slabInCorner},
	{Slug: "slab-over-cover", Look: slabOverCover},
	{Slug: "seam-shows", Look: seamShows},
	{Slug: "seam-unsupported", Look: seamUnsupported},
	{Slug: "sliver", Look: sliver},
	{Slug: "finish-not-flush", Look: finishNotFlush},
	{Slug: "skin-past-top", Look: skinPastTop},
	{Slug: "front-past-counter", Look: frontPastCounter},
	{Slug: "no-scribe", Look: noScribe},
	{Slug: "hinge-meets-shelf", Look: hingeMeetsShelf},
	{Slug: "hinged-unused", Look: hingedUnused},
	{Slug: "vent-covered", Look: ventCovered},
}

// finishNotFlush looks at insets of framing that are written, and at end panels
// that are to cover the edges of doors.
func finishNotFlush(b *rule.Build) {
	for i := range b.KneeWalls {
		for _, end := range []model.End{model.Left, model.Right} {
			endSkinFlush(b, &b.KneeWalls[i], end)
		}
	}
	for i := range b.Runs {
		for _, panel := range b.Block("run." + b.Runs[i].Name).Inner("end_panel") {
			if parts := b.PartsOf(panel.Key()); len(parts) > 0 && len(b.Runs[i].Boxes) > 0 {
				endPanelCovers(b, &b.Runs[i], panel, parts[0])
			}
		}
	}
}

// endSkinFlush compares the outer face of a skin on an end of the framing with the
// run's end, or that of the end panel there.
func endSkinFlush(b *rule.Build, w *model.KneeWall, end model.End) {
	knee, run := b.Block("knee_wall."+w.Name), b.Block("run."+w.Run)
	skin, inset := b.SkinOn(knee, end.String()), knee.Attr(end.String()+"_inset")
	if skin == nil || inset == nil || b.Flag(skin, "over_run") {
		return
	}
	thick := func(of *lang.Block) geom.Length { return b.Length(b.Ref(of, "board"), "thickness") }
	flush, what := thick(skin), "the end of "+run.Describe()
	if panel := b.EndPanelAt(run, end.String()); panel != nil {
		flush, what = flush-thick(panel), panel.Describe()
	}
	off, way := flush-b.Length(knee, inset.Name), "beyond"
	if off < 0 {
		off, way = -off, "back from"
	}
	if off <= b.Length(b.Limits, "flush") {
		return
	}
	b.LimitOf(b.Findings.Warnf("finish-not-flush", inset.Expr.At, inset.Name+" = "+quoted(b.Exact(flush))+", or leave it out",
		"The face of %s would lie %s %s %s.", skin.Describe(), b.Show(off), way, what).Also(skin.Head, "the skin"), "flush")
}

func quoted(s string) string { return `"` + s + `"` }

// endPanelCovers looks whether an end panel that reaches beyond the carcass does
// so by the thickness of the fronts beside it.
func endPanelCovers(b *rule.Build, run *model.Run, panel *lang.Block, part *model.Part) {
	box := &run.Boxes[0]
	if b.Text(panel, "end") == model.Right.String() {
		box = &run.Boxes[len(run.Boxes)-1]
	}
	fronts := box.Foremost()
	reach, lack := b.Length(panel, "to_front"), fronts-part.Placement.Box.V.Hi
	if reach == 0 || lack <= b.Length(b.Limits, "flush") {
		return
	}
	b.LimitOf(b.Findings.Warnf("finish-not-flush", panel.Attr("to_front").Expr.At, "to_front = "+quoted(b.Exact(fronts-run.Depth)),
		"%s reaches %s beyond the carcass, and the fronts of %s beside it stand %s before it: %s of their edges shows.",
		finding.Capital(panel.Describe()), b.Show(reach), box.Words(), b.Show(fronts-run.Depth), b.Show(lack)).
		Also(box.Why.At, "the fronts"), "flush")
}

// past is how far something reaches beyond one side of a bar top.
type past struct {
	side string
	by   geom.Length
	part *model.Part
}

// skinPastTop looks for skins, battens, caps and corners that come out from under
// the edge of their bar top.
func skinPastTop(b *rule.Build) {
	tops, worst := slabsByFrame(b, "bar_top"), map[geom.Frame][]past{} // lookup only
	for i := range b.Parts {
		p := &b.Parts[i]
		top := tops[p.Placement.Frame]
		if kind := p.BlockKind(); top == nil || kind != "skin" && kind != "corner" {
			continue
		}
		box := p.Fitted()
		var sides []past
		if !slices.ContainsFunc(p.Scribes, func(s model.Scribe) bool { return s.To != model.ToFloor }) { // what ends on a wall has no side there
			sides = []past{{"left", top.Box.U.Lo - box.U.Lo, p}, {"right", box.U.Hi - top.Box.U.Hi, p}}
		}
		if p.Placement.Out.Axis == geom.V { // what lies on an end may go on along the run, under the top
			sides = append(sides, past{"room", top.Box.V.Lo - box.V.Lo, p}, past{"work", box.V.Hi - top.Box.V.Hi, p})
		}
		for _, s := range sides {
			worst[top.Frame] = further(worst[top.Frame], s)
		}
	}
	for i := range b.Slabs {
		top := &b.Slabs[i]
		found := worst[top.Frame]
		if top.Kind != "bar_top" || len(found) == 0 {
			continue
		}
		slices.SortStableFunc(found, func(x, y past) int { return cmp.Compare(y.by, x.by) })
		pastTop(b, top, found)
	}
}

// further keeps of each side what reaches furthest beyond the top.
func further(found []past, s past) []past {
	i := slices.IndexFunc(found, func(f past) bool { return f.side == s.side })
	switch {
	case s.by <= 0:
	case i < 0:
		found = append(found, s)
	case s.by > found[i].by:
		found[i] = s
	}
	return found
}

// pastTop tells of all sides at once, the worst first.
func pastTop(b *rule.Build, top *model.Slab, found []past) {
	block, worst := b.Block("bar_top."+top.Name), found[0]
	more, mend := "", ""
	for i, s := range found {
		if i > 0 {
			more += fmt.Sprintf(" On the %s side it is %s.", s.side, b.Show(s.by))
			mend += ", "
		}
		mend += s.side + " = " + quoted(b.Exact(b.FieldLength(block, "overhang", s.side)+s.by))
	}
	b.Findings.Warnf("skin-past-top", block.Said("overhang"), mend+" or more in its overhang",
		"%s, %s of %s, comes out %s from under %s on the %s side.%s", worst.part.Label, worst.part.Named(), worst.part.Owner, b.Show(worst.by), block.Describe(), worst.side, more).
		Also(worst.part.Why.At, "it is asked for here")
}

// frontPastCounter looks for fronts that come out further than the counter over
// them.
func frontPastCounter(b *rule.Build) {
	counters := slabsByFrame(b, "counter")
	for i := range b.Runs {
		run := &b.Runs[i]
		counter := counters[run.Frame]
		if counter == nil {
			continue
		}
		var worst *model.Box
		others := -1
		for j := range run.Boxes {
			if box := &run.Boxes[j]; box.Foremost() > counter.Box.V.Hi {
				others++
				if worst == nil || box.Foremost() > worst.Foremost() {
					worst = box
				}
			}
		}
		if worst == nil {
			continue
		}
		block, more := b.Block("counter."+counter.Name), ""
		if others > 0 {
			more = ", and so do those of " + finding.Counted(others, "other")
		}
		f := b.Findings.Notef("front-past-counter", block.Said("overhang"), "The fronts of cabinet %s come out %s beyond the front edge of %s%s: what is spilt runs onto them.",
			worst.Name, b.Show(worst.Foremost()-counter.Box.V.Hi), block.Describe(), more)
		f.Mend = "front = " + quoted(b.Exact(worst.Foremost()-run.Depth)) + " or more in its overhang"
		f.Also(worst.Why.At, "the cabinet")
	}
}

// slabsByFrame finds the counter or the bar top in the frame of a run; lookup only.
func slabsByFrame(b *rule.Build, kind string) map[geom.Frame]*model.Slab {
	out := map[geom.Frame]*model.Slab{}
	for i := range b.Slabs {
		if s := &b.Slabs[i]; s.Kind == kind {
			out[s.Frame] = s
		}
	}
	return out
}

// noScribe looks for boxes that are caught between two walls.
func noScribe(b *rule.Build) {
	need := b.Length(b.Limits, "wall_play")
	for i := range b.Runs {
		run := &b.Runs[i]
		block := b.Block("run." + run.Name)
		wall := b.Ref(block, "along")
		if wall == nil || len(run.Boxes) == 0 || run.Boxes[0].Kind == model.Filler || run.Boxes[len(run.Boxes)-1].Kind == model.Filler {
			continue
		}
		before, after := b.WallBefore(wall), b.WallAfter(wall)
		if !closes(b, before) || after == nil || !closes(b, wall) {
			continue
		}
		play := b.Length(wall, "length") - b.LeansBy(before, run.Depth) - b.LeansBy(wall, run.Depth) - run.Length
		if play >= need {
			continue
		}
		long := "as long as"
		if play > 0 {
			long = b.Show(play) + " shorter than"
		}
		b.LimitOf(b.Findings.Warnf("no-scribe", block.Head, "a filler at one end, as wide as can be spared",
			"%s stands between two walls and has no filler; it is %s the place between them, and walls that are not straight and plumb take %s: %s too little.",
			finding.Capital(block.Describe()), long, b.Show(need), b.Show(need-play)).
			Also(wall.Attr("length").Expr.At, "the wall's length"), "wall_play")
	}
}

// closes reports whether a wall ends in a corner that stops a run.
func closes(b *rule.Build, wall *lang.Block) bool {
	return wall != nil && b.Number(wall, "corner") < 180
}
