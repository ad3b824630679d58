package onsite

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Move is a step of the order of setting with how it comes to its place, seen from above.
type Move struct {
	Number string // of the task that does it in the order of work; empty where there is none
	Step   *model.SettingStep
	Frame  geom.Frame   // of the run or the wall that it belongs to
	Place  geom.Box     // where it stands
	Path   []geom.Point // of its middle, in the room's plan, from first to last; empty where it does not slide level
}

// Moves lists the steps of setting that set a cabinet, an appliance, a filler or a knee wall, in
// their order: what comes over or before these is told in words alone.
func Moves(m *model.Model) []Move {
	var out []Move
	for i := range m.Setting.Steps {
		step := &m.Setting.Steps[i]
		mv := Move{Number: Number(m, step), Step: step}
		if mv.stand(m) {
			mv.slide()
			out = append(out, mv)
		}
	}
	return out
}

// Number is that of a step of setting in the order of work, from 1; empty where no task does it.
func Number(m *model.Model, step *model.SettingStep) string {
	for _, key := range step.Tasks() {
		if i := slices.IndexFunc(m.Work, func(t model.Task) bool { return t.Key == key }); i >= 0 {
			return strconv.Itoa(i + 1)
		}
	}
	return ""
}

// stand finds where a step's thing stands.
func (mv *Move) stand(m *model.Model) bool {
	for i := range m.Runs {
		for k := range m.Runs[i].Boxes {
			if b := &m.Runs[i].Boxes[k]; b.Key() == mv.Step.Block && !strings.HasPrefix(mv.Step.What, "blocks ") {
				mv.Frame, mv.Place = m.Runs[i].Frame, b.Hull
				if b.Kind == model.Bay {
					mv.Place = b.Appliance
				}
				return true
			}
		}
	}
	for i := range m.KneeWalls {
		if k := &m.KneeWalls[i]; "knee_wall."+k.Name == mv.Step.Block {
			mv.Frame, mv.Place = k.Frame, k.Framing
			return true
		}
	}
	return false
}

// away is the direction that something comes from. For lookup only.
var away = map[string]geom.Spot{
	"to the left": {U: 1}, "to the right": {U: -1}, "to the rear": {V: 1}, "to the front": {V: -1},
}

// slide goes back from its place by the slides, the last of them first. The first of all, which
// has no beginning, is as long as half the thing.
func (mv *Move) slide() {
	if mv.Step.Does == model.FramedInPlace || mv.Step.Does == model.LaidInPlace {
		return
	}
	at := geom.Spot{U: mv.Place.U.Mid(), V: mv.Place.V.Mid()}
	back := []geom.Point{mv.Frame.At(at.U, at.V)}
	for i, s := range slices.Backward(mv.Step.Slides) {
		d, level := away[s.To]
		if !level {
			continue
		}
		by := s.By
		if i == 0 && !mv.Step.Door {
			by = max(mv.Place.U.Size(), mv.Place.V.Size()) / 2
			if len(back) == 1 { // from outside its place on
				by *= 2
			}
		}
		at.U, at.V = at.U+d.U*by, at.V+d.V*by
		back = append(back, mv.Frame.At(at.U, at.V))
	}
	if len(back) < 2 {
		return
	}
	slices.Reverse(back)
	mv.Path = back
}
