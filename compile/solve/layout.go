package solve

import (
	"cmp"
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// boxes lists what stands in a run, in the order written.
func boxes(run *lang.Block) []*lang.Block {
	var out []*lang.Block
	for _, b := range run.Blocks {
		if isBox(b) {
			out = append(out, b)
		}
	}
	return out
}

func isBox(b *lang.Block) bool {
	return b.Spec.Kind == "cabinet" || b.Spec.Kind == "bay" || b.Spec.Kind == "filler"
}

// ownWidth is the width that a box states for itself: kind Rest where it takes
// what is left.
func (v *values) ownWidth(b *lang.Block) expr.Value {
	if b.Spec.Kind != "bay" {
		return v.value(b, "width")
	}
	gap := v.value(b, "gap")
	return sum(v.field(b, "appliance", "width"), gap, gap)
}

// boxWidth is a box's width; boxes that take the rest share it evenly.
func (v *values) boxWidth(b *lang.Block) expr.Value {
	own := v.ownWidth(b)
	if own.Kind != expr.Rest {
		return own
	}
	left := v.rest(b.Parent)
	if left.Kind != expr.Length {
		return left
	}
	sharers := v.sharers[b.Parent]
	return expr.OfLength(spacing.Share(lengthOf(left), len(sharers), sharers[b]))
}

// rest is what a run has left for the boxes that take the rest. It notes which
// ones they are, and their order.
func (v *values) rest(run *lang.Block) expr.Value {
	return v.memo(cellKey{run, "rest", true}, run.Head, func() expr.Value {
		left, sharers := v.runLength(run), map[*lang.Block]int{}
		for _, b := range boxes(run) {
			if w := v.ownWidth(b); w.Kind == expr.Rest {
				sharers[b] = len(sharers)
			} else {
				left = sum(left, minus(w))
			}
		}
		v.sharers[run] = sharers
		if left.Kind == expr.Length && lengthOf(left) <= 0 {
			v.noRest(run, lengthOf(left))
			return expr.Value{}
		}
		return left
	})
}

// noRest says that nothing is left to share.
func (v *values) noRest(run *lang.Block, left length.Length) {
	long := lengthOf(v.runLength(run))
	text := fmt.Sprintf("The boxes of fixed width in %s take up all of its %s", run.Describe(), v.show(long))
	if left < 0 {
		text += " and " + v.show(-left) + " more"
	}
	mend := cmp.Or(v.inMillimetres(run, 1-left), "make the other boxes narrower, or leave one out")
	f := v.findings.Errorf("run-too-long", run.Head, mend, "%s: nothing is left for width = rest.", text)
	for _, b := range boxes(run) {
		if v.ownWidth(b).Kind == expr.Rest {
			f.Also(b.Attr("width").Expr.At, "this takes the rest")
			break
		}
	}
	if wall := v.blocks[v.value(run, "along").Text]; wall != nil && run.Attr("length") == nil {
		f.Also(wall.Attr("length").Expr.At, "the wall's length")
	}
}

func (v *values) boxLeft(b *lang.Block) expr.Value {
	if left := v.neighbour[b]; left != nil {
		return v.solved(left, "right")
	}
	return expr.OfLength(0)
}

func (v *values) boxRight(b *lang.Block) expr.Value {
	return sum(v.solved(b, "left"), v.solved(b, "width"))
}

// runLength is what a run states, or what its wall gives where a box takes the
// rest, or the sum of its boxes.
func (v *values) runLength(run *lang.Block) expr.Value {
	if run.Attr("length") != nil {
		return v.value(run, "length")
	}
	total := expr.OfLength(0)
	for _, b := range boxes(run) {
		w := v.ownWidth(b)
		if w.Kind == expr.Rest {
			return v.available(run, b)
		}
		total = sum(total, w)
	}
	return total
}

// fillable names the length that a run can fill, beside its own length.
const fillable = "fillable"

// available is the length that a run along a wall can fill. rest is the box
// that asks.
func (v *values) available(run, rest *lang.Block) expr.Value {
	return v.memo(cellKey{run, fillable, true}, run.Head, func() expr.Value {
		if run.Attr("along") == nil {
			v.findings.Errorf("rest-without-end", rest.Attr("width").Expr.At, "length = … in the run, or a width here",
				"%s has no far end: what is left of it is unknown.", finding.Capital(run.Describe()))
			return expr.Value{}
		}
		wall := v.value(run, "along")
		if wall.Kind != expr.Ref {
			return expr.Value{}
		}
		begin, end, ok := v.stretch(run, v.blocks[wall.Text])
		if !ok {
			return expr.Value{}
		}
		if end <= begin {
			v.findings.Errorf("run-too-long", run.Head, "a smaller start, or another wall", "%s has no length left on its wall: it would begin at %s and end at %s.",
				finding.Capital(run.Describe()), v.show(begin), v.show(end)).Also(v.blocks[wall.Text].Attr("length").Expr.At, "the wall's length")
			return expr.Value{}
		}
		return expr.OfLength(end - begin)
	})
}

// stretch is the part of a wall, from its left end, that a run along it may
// fill: less its start, and less what a corner under 90 degrees takes from its
// front.
func (v *values) stretch(run, wall *lang.Block) (begin, end length.Length, ok bool) {
	long, start := v.value(wall, "length"), v.value(run, "start")
	left, lok := v.leansIn(run, v.wallBefore(wall), wall)
	right, rok := v.leansIn(run, wall, v.wallAfter(wall))
	if long.Kind != expr.Length || start.Kind != expr.Length || !lok || !rok {
		return 0, 0, false
	}
	begin, end = left, lengthOf(long)-right
	if v.text(run, "from") == "right" {
		return begin, min(end, lengthOf(long)-lengthOf(start)), true
	}
	return max(begin, lengthOf(start)), end, true
}

// leansIn is how far the wall at the corner between a and b leans into a run
// at its front. There is no corner where either is missing. A corner that is
// nearly closed leaves no room at all.
func (v *values) leansIn(run, a, b *lang.Block) (length.Length, bool) {
	if a == nil || b == nil {
		return 0, true
	}
	corner, depth := v.value(a, "corner"), v.solved(run, "depth")
	if corner.Kind != expr.Number || depth.Kind != expr.Length {
		return 0, false
	}
	return v.leansBy(a, lengthOf(depth)), true
}

// leansBy is how far the wall after a corner under 90 degrees leans in, at a
// distance from the wall before it.
func (v *values) leansBy(wall *lang.Block, depth length.Length) length.Length {
	angle := angleOf(v.value(wall, "corner"))
	if angle >= 90*geom.Degree {
		return 0
	}
	sin, cos := angle.SinCos()
	return length.Length(min(math.Ceil(float64(depth)*cos/sin), float64(length.Max)))
}

func angleOf(x expr.Value) geom.Angle {
	return geom.Angle(math.Round(numberOf(x) * float64(geom.Degree)))
}

func (v *values) wallBefore(wall *lang.Block) *lang.Block { return v.wallBeside(wall, -1) }
func (v *values) wallAfter(wall *lang.Block) *lang.Block  { return v.wallBeside(wall, 1) }

// wallBeside is the next wall in that direction, nil at the end of a room that
// is not described all round. Four walls or more close a room.
func (v *values) wallBeside(wall *lang.Block, step int) *lang.Block {
	walls := wall.Parent.Inner("wall")
	for i, w := range walls {
		if w != wall {
			continue
		}
		j := i + step
		if len(walls) >= closedRoom {
			return walls[(j+len(walls))%len(walls)]
		}
		if j >= 0 && j < len(walls) {
			return walls[j]
		}
	}
	return nil
}

// closedRoom is the number of walls from which on the last one meets the first.
const closedRoom = 4
