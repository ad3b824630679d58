package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
)

// soundSkin refuses a skin that says what is for other faces, that the walls of
// the room or the run leave no place, or that has no height.
func (s *solver) soundSkin(f *face) bool {
	if a := f.unused(); a != nil {
		s.Findings.Errorf("attribute-unused", a.NameAt, "leave it out", "%s is nothing for a skin with face = %q.", a.Spec.Name, f.word)
		return false
	}
	if f.out.Axis == geom.U && !s.soundEndSkin(f) {
		return false
	}
	if f.box.Z.Size() <= 0 {
		s.Findings.Errorf("skin-without-height", f.block.Head, "a taller knee wall, or smaller gaps under and over the skin",
			"%s would begin at %s above the floor and end at %s.", finding.Capital(f.block.Describe()), s.Show(f.box.Z.Lo), s.Show(f.box.Z.Hi)).
			Also(f.knee.Head, "the knee wall")
		return false
	}
	return true
}

// unused is the first attribute that says nothing of a skin on its face.
func (f *face) unused() *lang.Attr {
	for _, name := range map[string][]string{ // lookup only
		"work": {"above_floor", "over_run", "clearance"}, "room": {"above_counter", "over_run"},
		"left": {"above_counter", "clearance", "seams", "battens", "cap"}, "right": {"above_counter", "clearance", "seams", "battens", "cap"},
	}[f.word] {
		if a := f.block.Attr(name); a != nil {
			return a
		}
	}
	return nil
}

func (s *solver) soundEndSkin(f *face) bool {
	run, end, inset := s.runNamed(f.wall.Run), endNamed(f.word), f.wall.Framing.U.Lo
	if end == model.Right {
		inset = run.Length - f.wall.Framing.U.Hi
	}
	if !run.FreeAt(end) {
		s.Findings.Errorf("skin-at-wall", f.block.Attr("face").Expr.At, "leave it out, or put it on the free end",
			"The %s end of run %q meets wall %q: there is no place for a skin.", f.word, run.Name, run.Wall).
			Also(run.Why.At, "the run")
		return false
	}
	if !s.Flag(f.block, "over_run") {
		return true
	}
	at := f.block.Attr("over_run").Expr.At
	if inset != 0 {
		s.Findings.Errorf("skin-off-framing", at, f.word+"_inset = 0 in the knee wall, or leave it out",
			"A skin that reaches over the end of the run lies on run and framing, but the framing is inset by %s there.", s.Show(inset)).
			Also(f.knee.Said(f.word+"_inset"), "the inset")
		return false
	}
	panel := s.EndPanelAt(s.Block("run."+run.Name), f.word)
	if panel != nil {
		s.Findings.Errorf("skin-over-end-panel", at, "leave one of the two out",
			"%s covers that end of the run already.", finding.Capital(panel.Describe())).
			Also(panel.Head, "the end panel")
	}
	// A cabinet at that end has its own recess, and room for it.
	return len(run.Boxes) == 0 || endBox(run, end).Kind == model.Cabinet || s.feetFit(run, s.Block("run."+run.Name), f.block)
}
