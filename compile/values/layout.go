package values

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

// Boxes lists what stands in a run, in the order written.
func Boxes(run *lang.Block) []*lang.Block {
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
func (v *Values) ownWidth(b *lang.Block) expr.Value {
	if b.Spec.Kind != "bay" {
		return v.Value(b, "width")
	}
	gap := v.Value(b, "gap")
	return sum(v.Field(b, "appliance", "width"), gap, gap)
}

// boxWidth is a box's width; boxes that take the rest share it evenly.
func (v *Values) boxWidth(b *lang.Block) expr.Value {
	own := v.ownWidth(b)
	if own.Kind != expr.Rest {
		return own
	}
	left := v.rest(b.Parent)
	if left.Kind != expr.Length {
		return left
	}
	sharers := v.sharers[b.Parent]
	return expr.OfLength(spacing.Share(LengthOf(left), len(sharers), sharers[b]))
}

// rest is what a run has left for the boxes that take the rest. It notes which
// ones they are, and their order.
func (v *Values) rest(run *lang.Block) expr.Value {
	return v.memo(cellKey{run, "rest", true}, run.Head, func() expr.Value {
		left, sharers := v.RunLength(run), map[*lang.Block]int{}
		for _, b := range Boxes(run) {
			if w := v.ownWidth(b); w.Kind == expr.Rest {
				sharers[b] = len(sharers)
			} else {
				left = sum(left, minus(w))
			}
		}
		v.sharers[run] = sharers
		if left.Kind == expr.Length && LengthOf(left) <= 0 {
			v.noRest(run, LengthOf(left))
			return expr.Value{}
		}
		return left
	})
}

// noRest says that nothing is left to share.
func (v *Values) noRest(run *lang.Block, left length.Length) {
	long := LengthOf(v.RunLength(run))
	text := fmt.Sprintf("The boxes of fixed width in %s take up all of its %s", run.Describe(), v.Show(long))
	if left < 0 {
		text += " and " + v.Show(-left) + " more"
	}
	mend := cmp.Or(v.inMillimetres(run, 1-left), "make the other boxes narrower, or leave one out")
	f := v.Findings.Errorf("run-too-long", run.Head, mend, "%s: nothing is left for width = rest.", text)
	for _, b := range Boxes(run) {
		if v.ownWidth(b).Kind == expr.Rest {
			f.Also(b.Attr("width").Expr.At, "this takes the rest")
			break
		}
	}
	if wall := v.blocks[v.Value(run, "along").Text]; wall != nil && run.Attr("length") == nil {
		f.Also(wall.Attr("length").Expr.At, "the wall's length")
	}
}

func (v *Values) boxLeft(b *lang.Block) expr.Value {
	if left := v.neighbour[b]; left != nil {
		return v.solved(left, "right")
	}
	return expr.OfLength(0)
}

func (v *Values) boxRight(b *lang.Block) expr.Value {
	return sum(v.solved(b, "left"), v.solved(b, "width"))
}

// RunLength is what a run states, or what its wall gives where a box takes the
// rest, or the sum of its boxes.
func (v *Values) RunLength(run *lang.Block) expr.Value {
	if run.Attr("length") != nil {
		return v.Value(run, "length")
	}
	total := expr.OfLength(0)
	for _, b := range Boxes(run) {
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
func (v *Values) available(run, rest *lang.Block) expr.Value {
	return v.memo(cellKey{run, fillable, true}, run.Head, func() expr.Value {
		if run.Attr("along") == nil {
			v.Findings.Errorf("rest-without-end", rest.Attr("width").Expr.At, "length = … in the run, or a width here",
				"%s has no far end: what is left of it is unknown.", finding.Capital(run.Describe()))
			return expr.Value{}
		}
		wall := v.Value(run, "along")
		if wall.Kind != expr.Ref {
			return expr.Value{}
		}
		begin, end, ok := v.Stretch(run, v.blocks[wall.Text])
		if !ok {
			return expr.Value{}
		}
		if end <= begin {
			v.Findings.Errorf("run-too-long", run.Head, "a smaller start, or another wall", "%s has no length left on its wall: it would begin at %s and end at %s.",
				finding.Capital(run.Describe()), v.Show(begin), v.Show(end)).Also(v.blocks[wall.Text].Attr("length").Expr.At, "the wall's length")
			return expr.Value{}
		}
		return expr.OfLength(end - begin)
	})
}

// Stretch is the part of a wall, from its left end, that a run along it may
// fill: less its start, and less what a corner under 90 degrees takes from its
// front.
func (v *Values) Stretch(run, wall *lang.Block) (begin, end length.Length, ok bool) {
	long, start := v.Value(wall, "length"), v.Value(run, "start")
	left, lok := v.LeansIn(run, v.WallBefore(wall), wall)
	right, rok := v.LeansIn(run, wall, v.WallAfter(wall))
	if long.Kind != expr.Length || start.Kind != expr.Length || !lok || !rok {
		return 0, 0, false
	}
	begin, end = left, LengthOf(long)-right
	if v.Text(run, "from") == "right" {
		return begin, min(end, LengthOf(long)-LengthOf(start)), true
	}
	return max(begin, LengthOf(start)), end, true
}

// LeansIn is how far the wall at the corner between a and b leans into a run
// at its front. There is no corner where either is missing. A corner that is
// nearly closed leaves no room at all.
func (v *Values) LeansIn(run, a, b *lang.Block) (length.Length, bool) {
	if a == nil || b == nil {
		return 0, true
	}
	corner, depth := v.Value(a, "corner"), v.solved(run, "depth")
	if corner.Kind != expr.Number || depth.Kind != expr.Length {
		return 0, false
	}
	return v.LeansBy(a, LengthOf(depth)), true
}

// LeansBy is how far the wall after a corner under 90 degrees leans in, at a
// distance from the wall before it.
func (v *Values) LeansBy(wall *lang.Block, depth length.Length) length.Length {
	angle := AngleOf(v.Value(wall, "corner"))
	if angle >= 90*geom.Degree {
		return 0
	}
	sin, cos := angle.SinCos()
	return length.Length(min(math.Ceil(float64(depth)*cos/sin), float64(length.Max)))
}

// AngleOf returns a number of degrees as an angle.
func AngleOf(x expr.Value) geom.Angle {
	return geom.Angle(math.Round(NumberOf(x) * float64(geom.Degree)))
}

// WallBefore and WallAfter are the walls at the left and the right end of one,
// nil where there is none.
func (v *Values) WallBefore(wall *lang.Block) *lang.Block { return v.wallBeside(wall, -1) }
func (v *Values) WallAfter(wall *lang.Block) *lang.Block  { return v.wallBeside(wall, 1) }

// wallBeside is the next wall in that direction, nil at the end of a room that
// is not described all round. Four walls or more close a room.
func (v *Values) wallBeside(wall *lang.Block, step int) *lang.Block {
	walls := wall.Parent.Inner("wall")
	for i, w := range walls {
		if w != wall {
			continue
		}
		j := i + step
		if len(walls) >= ClosedRoom {
			return walls[(j+len(walls))%len(walls)]
		}
		if j >= 0 && j < len(walls) {
			return walls[j]
		}
	}
	return nil
}

// ClosedRoom is the number of walls from which on the last one meets the first.
const ClosedRoom = 4
