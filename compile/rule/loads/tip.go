package loads

import (
	"fmt"
	"math"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// woodOfFloor is the specific gravity of a floor's wood: spruce, pine or fir.
const woodOfFloor = 0.42

// weight is that of the parts of a block: how heavy, and that times how far out
// their middles stand in the run's frame, for moments.
type weight struct {
	newtons, moment float64
	unknown         bool // of one at least no density is stated
}

func (w weight) add(o weight) weight {
	return weight{w.newtons + o.newtons, w.moment + o.moment, w.unknown || o.unknown}
}

// about is the moment of a weight about a line at v, in newton millimetres: what
// stands on the side of the run is positive.
func (w weight) about(v float64) float64 { return w.moment - float64(w.newtons*v) }

// weightsOf weighs the parts of each block, by its key.
func weightsOf(b *rule.Build) map[string]weight {
	out := map[string]weight{} // lookup only
	for i := range b.Parts {
		p := &b.Parts[i]
		w := weight{newtons: b.Mass(p) * gravity}
		if math.IsNaN(w.newtons) {
			w = weight{unknown: true}
		}
		w.moment = w.newtons * p.Placement.Box.V.Mid().MM()
		out[p.Block()] = out[p.Block()].add(w)
	}
	return out
}

func kneeWallTips(b *rule.Build) {
	var weights map[string]weight
	for _, t := range bars(b) {
		floor, run := b.Ref(t.knee, "floor_screws"), b.Ref(t.knee, "run_screws")
		switch {
		case t.overhang() <= 0:
			continue
		case floor == nil && run == nil:
			b.Findings.Warnf("knee-wall-tips", t.knee.Head, "run_screws = screw.NAME, from the boxes into the studs, and floor_screws = screw.NAME",
				"Nothing fixes knee wall %s, and bar top %s stands out %s over the room: who leans on it tips it over.",
				t.wall.Name, t.top.Name, b.Show(t.overhang())).
				Also(t.block.Head, "the bar top")
			continue
		case weights == nil:
			weights = weightsOf(b)
		}
		tips, holds := toppling(b, &t, weights, t.overhang())
		if tips <= holds*(1+1e-9) {
			continue
		}
		at := t.knee.Attr("floor_screws")
		if run != nil {
			at = t.knee.Attr("run_screws")
		}
		load, fixing := moment.both(b, tips, holds)
		f := b.Findings.Warnf("knee-wall-tips", at.Expr.At, tipsLess(b, &t, weights),
			"Load on bar top %s, which stands out %s, tips knee wall %s with %s, and its fixing holds %s: %s too little.",
			t.top.Name, b.Show(t.overhang()), t.wall.Name, load, fixing, moment.show(b, tips-holds))
		f.Also(t.block.Head, "the bar top")
		b.LimitOf(f, "bar_load")
		b.LimitOf(f, "floor_wood")
	}
}

// floorScrewsMissing notes walls under a bar top that only boxes hold.
func floorScrewsMissing(b *rule.Build) {
	for _, t := range bars(b) {
		if b.Ref(t.knee, "floor_screws") != nil || b.Ref(t.knee, "run_screws") == nil {
			continue
		}
		f := b.Findings.Notef("floor-screws-missing", t.knee.Head,
			"Nothing fixes the lower plate of knee wall %s to the floor: feet and knees push it out from under bar top %s.", t.wall.Name, t.top.Name)
		f.Mend = "floor_screws = screw.NAME"
	}
}

// tipsLess is the mend for a wall that tips: the overhang with which it does not.
func tipsLess(b *rule.Build, t *bar, weights map[string]weight) string {
	const step = length.Millimetre
	lo, hi := geom.Length(0), t.overhang()
	for hi-lo > step {
		mid := (lo + hi) / 2
		if tips, holds := toppling(b, t, weights, mid); tips > holds {
			hi = mid
		} else {
			lo = mid
		}
	}
	text := fmt.Sprintf("room = %q in the overhang of the bar top, or less", b.Show(length.Down(lo, b.Marks)))
	if lo == 0 {
		text = "less overhang on the room's side, with heavier boxes or more screws"
	}
	if b.Ref(t.knee, "run_screws") == nil {
		return "run_screws = screw.NAME, from the boxes into the studs; or " + text
	}
	return text + "; an end that is anchored is not reckoned"
}

// toppling is what tips the wall of a bar about the room-side edge of its lower
// plate and what holds it, in newton millimetres, under the load for which these
// are worst, were the top cut back on the room's side so that it stands out so far.
// Its steel is weighed as it is.
func toppling(b *rule.Build, t *bar, weights map[string]weight, overhang geom.Length) (tips, holds float64) {
	edge, out := t.wall.Framing.V.Lo.MM(), overhang.MM()
	top := weights[t.block.Key()]
	cut := top.newtons * (t.overhang() - overhang).MM() / t.top.Box.V.Size().MM()
	top = top.add(weight{-cut, -cut * (t.top.Box.V.Lo + (t.overhang()-overhang)/2).MM(), false})
	own := weights[t.knee.Key()].add(top).about(edge)
	boxes := boxesBefore(b, t, weights)
	floor, run := floorHolds(b, t), runHolds(b, t)
	live := [2]float64{
		atEdge: b.FieldNumber(b.Limits, "bar_load", "edge") * out,
		spread: b.FieldNumber(b.Limits, "bar_load", "area") / 1e6 * t.top.Box.U.Size().MM() * out * out / 2,
	}
	for by, duration := range [2]float64{atEdge: b.FieldNumber(b.Limits, "bar_load", "duration"), spread: 1} {
		fixed := run * duration
		if !boxes.unknown {
			fixed = min(fixed, boxes.about(edge))
		}
		fixed = max(fixed, floor*duration)
		tipping, holding := live[by]+max(-own, 0), fixed+max(own, 0)
		if by == atEdge || tipping*holds > tips*holding {
			tips, holds = tipping, holding
		}
	}
	return tips, holds
}

// boxesBefore weighs the boxes before a wall, with their counter.
func boxesBefore(b *rule.Build, t *bar, weights map[string]weight) (all weight) {
	for _, box := range b.RunNamed(t.wall.Run).Boxes {
		all = all.add(weights[box.Key()])
	}
	for i := range b.Slabs {
		if s := &b.Slabs[i]; s.Kind == "counter" && b.Ref(b.Block("counter."+s.Name), "over").Name == t.wall.Run {
			all = all.add(weights["counter."+s.Name])
		}
	}
	return all
}

// floorHolds is the moment that the screws into the floor hold about the wall's
// edge, were it a lasting one. They stand along the middle of the plate.
func floorHolds(b *rule.Build, t *bar) float64 {
	screw, lumber := b.Ref(t.knee, "floor_screws"), b.Ref(t.knee, "lumber")
	if screw == nil {
		return 0
	}
	plates := length.Length(b.Count(t.knee, "bottom_plates")) * b.Length(lumber, "thickness")
	thread := max(0, min(b.Length(screw, "length")-plates, b.Length(b.Limits, "floor_wood")))
	count := 0
	for _, f := range b.Fastening {
		if f.Why.Block == t.wall.Why.Block && strings.HasSuffix(f.Use, "to the floor") {
			count += f.Count
		}
	}
	return float64(count) * withdrawal(woodOfFloor, b.Length(screw, "diameter")) * thread.MM() * t.wall.Framing.V.Size().MM() / 2
}

// runHolds is likewise what the screws from the boxes hold, two on the line of
// each stud, taken at its middle. They go through the rear stretcher, where the box
// has one, the back and the gap behind it.
func runHolds(b *rule.Build, t *bar) (total float64) {
	screw, lumber := b.Ref(t.knee, "run_screws"), b.Ref(t.knee, "lumber")
	if screw == nil {
		return 0
	}
	backs := map[string]geom.Length{} // where the screws of each box begin; lookup only
	for _, box := range b.RunNamed(t.wall.Run).Boxes {
		backs[box.Name] = box.Inside.V.Lo
		if p := b.Part(box.Key() + "/stretcher-rear"); p != nil {
			backs[box.Name] = max(backs[box.Name], p.Placement.Box.V.Hi)
		}
	}
	each := 2 * withdrawal(b.Number(lumber, "gravity"), b.Length(screw, "diameter"))
	for _, line := range t.wall.Lines {
		before := backs[line.Box] - t.wall.Framing.V.Hi
		thread := max(0, min(b.Length(screw, "length")-before, t.wall.Framing.V.Size()))
		total += float64(each * thread.MM() * line.Z.Mid().MM())
	}
	return total
}
