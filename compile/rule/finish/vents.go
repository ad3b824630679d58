package finish

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
	"fmt"
)

// reached is how far off its wall a box may stand that a vent opens into.
const reached = 50 * length.Millimetre

// ventCovered looks for vents that open into boxes that are closed. Another vent of
// the same box is a way for the air too.
func ventCovered(b *rule.Build) {
	type into struct {
		vent *model.Vent
		box  *model.Box
	}
	var all []into
	vents := map[*model.Box]float64{} // square millimetres in all; lookup only
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		for j := range w.Vents {
			v := &w.Vents[j]
			if box := boxBefore(b, w.Frame.At(v.Along, 0), v.Height); box != nil && len(box.Fronts) > 0 {
				all = append(all, into{v, box})
				vents[box] += ventArea(v)
			}
		}
	}
	for _, x := range all {
		ventInto(b, x.vent, x.box, openFront(x.box)+(vents[x.box]-ventArea(x.vent)))
	}
}

func ventArea(v *model.Vent) float64 { return float64(v.Width.MM() * v.Tall.MM()) }

// boxBefore is the cabinet whose inside is before a point of a wall, nil where
// there is none.
func boxBefore(b *rule.Build, p geom.Point, z geom.Length) *model.Box {
	for i := range b.Runs {
		run := &b.Runs[i]
		u, v := run.Frame.Local(p)
		if v < -reached || v > run.Depth+reached || u < -reached || u > run.Length+reached {
			continue
		}
		u = min(max(u, 0), run.Length)
		for j := range run.Boxes {
			if box := &run.Boxes[j]; box.Kind == model.Cabinet && box.Hull.U.Holds(u) && box.Inside.Z.Holds(z) {
				return box
			}
		}
	}
	return nil
}

// ventInto compares the area of a vent, in square millimetres, with what is open of
// the box that it opens into.
func ventInto(b *rule.Build, v *model.Vent, box *model.Box, free float64) {
	need := float64(ventArea(v) * b.Number(b.Limits, "vent_free"))
	if free >= need {
		return
	}
	b.LimitOf(b.Findings.Warnf("vent-covered", v.Why.At, "leave the fronts of cabinet "+box.Name+" out, or cut openings into them",
		"Vent %q opens into cabinet %s, which is otherwise open by %s; it takes %s: %s too little.",
		v.Name, box.Name, showArea(b, free), showArea(b, need), showArea(b, need-free)).
		Also(box.Why.At, "the cabinet"), "vent_free")
}

// openFront is what the fronts of a box leave open before its inside, in square
// millimetres.
func openFront(box *model.Box) float64 {
	inside := geom.Rect{X: box.Inside.U, Y: box.Inside.Z}
	if board := box.Inside.U.Lo - box.Hull.U.Lo; inside.Y.Hi > box.Hull.Z.Hi-board {
		inside.Y.Hi = box.Hull.Z.Hi - board // behind the stretcher
	}
	free := square(inside)
	for i := range box.Fronts {
		free -= square(inside.Intersect(geom.Rect{X: box.Fronts[i].Place.U, Y: box.Fronts[i].Place.Z}))
	}
	return free
}

func square(r geom.Rect) float64 {
	return float64(max(r.X.Size(), 0).MM() * max(r.Y.Size(), 0).MM())
}

// showArea shows square millimetres in square inches, or square centimetres.
func showArea(b *rule.Build, mm2 float64) string {
	if b.Source.Unit.Imperial() {
		return fmt.Sprintf("%.2f sq in", mm2/(25.4*25.4))
	}
	return fmt.Sprintf("%.1f sq cm", mm2/100)
}
