package solve

import (
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
)

// joints places the screws between cabinets side by side, where the run names them.
func (s *solver) joints(b *lang.Block, run *model.Run) []model.Joint {
	if s.Ref(b, "joint_screws") == nil {
		return nil
	}
	var out []model.Joint
	for i := range run.Boxes[:max(len(run.Boxes)-1, 0)] {
		if left, right := &run.Boxes[i], &run.Boxes[i+1]; left.Kind == model.Cabinet && right.Kind == model.Cabinet {
			out = append(out, s.joint(left, right))
		}
	}
	return out
}

// joint drives the screws from the box whose door hangs beside the joint, at its
// outer hinges, where their plates hide those near the front. Where none does, it
// drives them from a box with fronts before them, or else from the left one, at
// places that common practice takes.
func (s *solver) joint(left, right *model.Box) model.Joint {
	in := left.Inside
	edge := min(s.practice(2*length.Inch, 50*length.Millimetre), in.V.Size()/3)
	end := min(s.practice(3*length.Inch, 75*length.Millimetre), in.Z.Size()/3)
	j := model.Joint{
		Left: left.Name, Right: right.Name, From: left.Name, Rear: in.V.Lo + edge, Front: left.Hull.V.Hi - edge,
		Low: in.Z.Lo + end, High: in.Z.Hi - end,
	}
	for _, side := range []struct {
		box *model.Box
		end model.End
	}{{left, model.Right}, {right, model.Left}} {
		for _, f := range side.box.Fronts {
			if f.Kind == model.Door && f.Hinged == side.end && len(f.Hinges) > 0 {
				j.From, j.Plates = side.box.Name, true
				j.Front = s.plateLine(side.box)
				j.Low, j.High = f.Hinges[0], f.Hinges[len(f.Hinges)-1]
				return j
			}
		}
	}
	if !left.ClosedAt(j.Low) || !left.ClosedAt(j.High) {
		if right.ClosedAt(j.Low) && right.ClosedAt(j.High) {
			j.From = right.Name
		}
	}
	return j
}
