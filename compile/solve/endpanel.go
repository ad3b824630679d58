package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// endPanels covers the free ends of runs.
func (s *solver) endPanels() {
	for i, b := range s.Source.Top("run") {
		for _, panel := range s.once("place-taken", b.Inner("end_panel"), "end", func(panel *lang.Block) string {
			return "stand at the " + s.Text(panel, "end") + " end of " + b.Describe()
		}) {
			s.endPanel(b, panel, i)
		}
	}
}

func endNamed(word string) model.End {
	if word == model.Left.String() {
		return model.Left
	}
	return model.Right
}

// endPanel is a board outside the boxes, over a free end of their run.
func (s *solver) endPanel(b, panel *lang.Block, index int) {
	run, sheet := &s.m.Runs[index], s.Ref(panel, "board")
	t := s.Length(sheet, "thickness")
	end := endNamed(s.Text(panel, "end"))
	box := geom.Box{
		U: geom.Span{Lo: run.Length, Hi: run.Length + t},
		V: geom.Span{Hi: run.Depth + s.Length(panel, "to_front")},
		Z: geom.Span{Hi: run.Height},
	}
	if end == model.Left {
		box.U = geom.Span{Lo: -t}
	}
	if !s.feetFit(run, b, panel) || !s.roomForEnd(b, panel, index, end, box) {
		return
	}
	scribe := length.Length(0)
	if run.Along {
		scribe = s.Length(panel, "scribe")
		box.V.Lo = -scribe
	}
	out := geom.Dir{Axis: geom.U, Neg: end == model.Left}
	cut := s.toFloor(0, s.Length(panel, "scribe"))
	if wall := s.wall(run.Wall); run.Along && len(wall.Read) > 0 {
		at := geom.Place(run.Frame, box, out)
		cut = append(cut, scribing{edge: edgeAt(&at, rearward), wall: wall, beyond: scribe})
	}
	box = s.toScribe(run.Frame, box, out, cut)
	p := piece{
		id: "panel", code: "E", name: end.String() + " end panel", out: out, face: "outside",
		grain: model.GrainY, good: model.GoodDrawn,
	}
	if s.Flag(panel, "toe_kick") {
		high, deep := s.toeKick(b)
		p.cuts = []geom.Box{{U: box.U, V: geom.Span{Lo: run.Depth - deep, Hi: box.V.Hi}, Z: geom.Span{Lo: min(box.Z.Lo, 0), Hi: high}}}
	}
	s.scribes[len(s.m.Parts)] = max(-box.V.Lo, 0)
	s.panel(panel, sheet, run.Frame, box, p)
}

// roomForEnd refuses an end panel where the run meets a wall, or would then.
func (s *solver) roomForEnd(b, panel *lang.Block, index int, end model.End, box geom.Box) bool {
	run, at := &s.m.Runs[index], panel.Attr("end").Expr.At
	if !run.FreeAt(end) {
		s.Findings.Errorf("end-meets-wall", at, "leave it out, or close the end with a filler",
			"The %s end of %s meets a wall: there is no end to cover.", end, b.Describe()).Also(b.Head, "the run")
		return false
	}
	if !run.Along {
		return true
	}
	// The room beside the run: to the wall's end, and no further than to where
	// the next wall stands at the panel's front.
	wall, deep := s.Ref(b, "along"), box.V.Hi
	begin := s.stands[index].back.X
	before, after := s.WallBefore(wall), s.WallAfter(wall)
	left, next := before, wall
	free := begin
	if end == model.Right {
		left, next = wall, after
		free = s.wall(wall.Name).Length - begin - run.Length
	}
	if !s.closes(left, next) {
		return true
	}
	free -= s.LeansBy(left, deep)
	if miss := box.U.Size() - max(free, 0); miss > 0 {
		s.Findings.Errorf("end-meets-wall", at, "let the run stand further from that corner, or leave the panel out",
			"%s is %s thick, but beside the %s end of %s there are %s to the wall: %s too few.",
			finding.Capital(panel.Describe()), s.Show(box.U.Size()), end, b.Describe(), s.Show(max(free, 0)), s.Show(miss)).
			Also(b.Head, "the run")
		return false
	}
	return true
}
