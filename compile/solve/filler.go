package solve

import (
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/length"
)

// filler closes a run against a wall: a strip flush with the fronts, wider by
// its scribe towards the end that it closes, and by what the gap opens towards
// the front where that wall leans away. The free end of a run that stands out
// closes against nothing.
func (s *solver) filler(run *model.Run, b *lang.Block, hull geom.Box) {
	run.Boxes = append(run.Boxes, model.Box{Kind: model.Filler, Name: b.Name, Hull: hull, Inside: hull, Why: why(b)})
	if !s.feetFit(run, b.Parent, b) {
		return
	}
	board := s.Ref(b, "board")
	if board == nil {
		board = s.Ref(s.Ref(b.Parent, "carcass"), "board")
	}
	t, scribe := s.Length(board, "thickness"), s.Length(b, "scribe")
	u, opens := hull.U, length.Length(0)
	closes := func(end model.End) bool { return run.Along || !run.FreeAt(end) }
	var cut []scribing
	switch {
	case u.Lo == 0 && closes(model.Left):
		opens = s.opensBy(run, b, model.Left, run.Depth)
		u.Lo -= opens + scribe
		cut = s.toWall(run, b.Parent, model.Left, scribing{edge: model.LeftEdge, beyond: scribe})
	case u.Hi == run.Length && closes(model.Right):
		opens = s.opensBy(run, b, model.Right, run.Depth)
		u.Hi += opens + scribe
		cut = s.toWall(run, b.Parent, model.Right, scribing{edge: model.RightEdge, beyond: scribe})
	}
	toe, _ := s.toeKick(b.Parent)
	box := s.toScribe(run.Frame, geom.Box{U: u, V: geom.Span{Lo: run.Depth - t, Hi: run.Depth}, Z: geom.Span{Lo: toe, Hi: run.Height}}, front, cut)
	at := len(s.m.Parts)
	s.cabinets = append(s.cabinets, cabinet{run: len(s.m.Runs), box: len(run.Boxes) - 1, block: b, first: at, last: at + 1})
	s.scribes[at] = max(box.U.Size()-hull.U.Size(), 0)
	strip := s.panel(b, board, run.Frame, box,
		piece{id: "strip", code: "F", name: "filler strip", out: front, face: "front", grain: model.GrainY})
	if opens > 0 {
		s.bevelled(run, b, strip, hull.U, scribe, len(cut) > 0)
	}
}

// feetFit refuses a strip, an end panel or a skin over the run's end that the
// recess for the feet leaves nothing of. Where a cabinet of the same carcass says
// so, once is enough.
func (s *solver) feetFit(run *model.Run, of, b *lang.Block) bool {
	high, deep := s.toeKick(of)
	if high < run.Height && deep < run.Depth {
		return true
	}
	if !slices.ContainsFunc(of.Inner("cabinet"), func(box *lang.Block) bool { return s.Ref(box, "carcass") == nil }) {
		s.Findings.Errorf("box-too-small", b.Head, "", "The run of %s is %s high and %s deep, but the recess for the feet takes up %s and %s.",
			b.Describe(), s.Show(run.Height), s.Show(run.Depth), s.Show(high), s.Show(deep)).
			Also(s.Ref(of, "carcass").Head, "the carcass")
	}
	return false
}

// opensBy is how much further from an end of a run the wall that it meets stands
// at a depth than at the rear: nothing unless it leans away.
func (s *solver) opensBy(run *model.Run, b *lang.Block, end model.End, depth length.Length) length.Length {
	lean := s.lean(run, b, end)
	if lean <= 0 {
		return 0
	}
	sin, cos := lean.SinCos()
	deep := depth + s.stands[len(s.m.Runs)].back.Y
	return length.Length(min(math.Ceil(float64(deep)*sin/cos), float64(length.Max)))
}

// lean is the angle by which the wall at an end of a run leans away from square; 0 where
// there is none.
func (s *solver) lean(run *model.Run, b *lang.Block, end model.End) geom.Angle {
	wall := s.Ref(b.Parent, "along")
	if wall == nil || run.FreeAt(end) {
		return 0
	}
	if end == model.Left {
		wall = s.WallBefore(wall)
	}
	return values.AngleOf(s.Value(wall, "corner")) - 90*geom.Degree
}

// bevelled tells how wide the gap of a filler is before and behind its strip,
// and marks on the strip where the wall is to be expected, unless readings tell more.
func (s *solver) bevelled(run *model.Run, b *lang.Block, strip *model.Part, gap geom.Span, scribe length.Length, surveyed bool) {
	box := strip.Placement.Box
	end, x := model.Right, box.U.Size()-scribe
	if gap.Lo == 0 && box.U.Lo < 0 {
		end, x = model.Left, scribe
	}
	before := gap.Size() + s.opensBy(run, b, end, box.V.Hi)
	behind := gap.Size() + s.opensBy(run, b, end, box.V.Lo)
	bevel := math.Round(s.lean(run, b, end).Degrees()*10) / 10
	if !surveyed {
		strip.Marks = append(strip.Marks, model.Mark{
			Name: fmt.Sprintf("scribe to the wall, edge bevelled %g degrees, wider at the front face", bevel), From: geom.Point{X: x}, To: geom.Point{X: x, Y: box.Z.Size()}, Why: why(b),
		})
	}
	s.Findings.Notef("filler-bevelled", b.Head,
		"The wall beside %s leans away from the front: the gap is %s wide at the strip's front face and %s at its rear face. The strip is cut that much wider, with its scribe; its edge is bevelled to the wall.",
		b.Describe(), s.Show(before), s.Show(behind))
}
