package water

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/finding"
)

// patch is a piece of floor that a run or a knee wall covers, in its frame.
type patch struct {
	frame geom.Frame
	rect  geom.Rect // u, v
}

// coveredBy lists what runs and knee walls cover: what is between a run and its wall, or
// its knee wall, counts as covered.
func coveredBy(b *rule.Build) []patch {
	var out []patch
	for i := range b.Runs {
		run := &b.Runs[i]
		if len(run.Boxes) == 0 {
			continue
		}
		hull := run.Boxes[0].Hull
		for _, box := range run.Boxes[1:] {
			hull = hull.Union(box.Hull)
		}
		out = append(out, patch{run.Frame, geom.Rect{X: hull.U, Y: hull.V.Union(geom.Span{})}})
	}
	for i := range b.KneeWalls {
		k := &b.KneeWalls[i]
		hull := k.Framing
		for _, s := range k.Skins {
			hull = hull.Union(s.Box)
		}
		out = append(out, patch{k.Frame, geom.Rect{X: hull.U, Y: hull.V.Union(geom.Span{})}})
	}
	return out
}

// drainInTheOpen warns of a drain that leaves what stands there by more than it is across.
func drainInTheOpen(b *rule.Build) {
	drains := outflowsOf(b)
	if len(drains) == 0 {
		return
	}
	covered := coveredBy(b)
	for _, o := range drains {
		bare := o.outside(covered)
		if bare <= o.Diameter {
			continue
		}
		b.Findings.Warnf("drain-in-the-open", o.block.Said("to"), "a stub that ends in run "+o.from.run.Name,
			"On its way from %s to stub %q, %s lies in no run and no knee wall for %s, about %s %s, where people walk.",
			o.from.block.Describe(), o.stub.Name, o.block.Describe(), b.Show(nearMark(b, bare)), b.Show(nearMark(b, o.stub.Height)), b.Above()).
			Also(o.stub.Why.At, "it leads to here")
	}
}

// outside is how much of a drain's way lies in no patch.
func (o *outflow) outside(covered []patch) geom.Length {
	out := geom.Length(0)
	for i := 1; i < len(o.way.Points); i++ {
		from, to := o.way.Points[i-1], o.way.Points[i]
		out += bare(geom.Point{X: from.X, Y: from.Y}, geom.Point{X: to.X, Y: to.Y}, covered)
	}
	return out
}

// bare is how much of a straight way in the room lies in no patch.
func bare(from, to geom.Point, covered []patch) geom.Length {
	type part struct{ lo, hi float64 } // of the way, 0 to 1
	var in []part
	at := func(p geom.Point, f geom.Frame) geom.Point {
		u, v := f.Local(p)
		return geom.Point{X: u, Y: v}
	}
	for _, c := range covered {
		if lo, hi := within(at(from, c.frame), at(to, c.frame), c.rect); lo < hi {
			in = append(in, part{lo, hi})
		}
	}
	slices.SortFunc(in, func(a, b part) int { return cmp.Compare(a.lo, b.lo) })
	free, reached := 0.0, 0.0
	for _, p := range append(in, part{1, 1}) {
		free += max(0, p.lo-reached)
		reached = max(reached, p.hi)
	}
	return geom.Length(math.Round(free * math.Hypot(float64(to.X-from.X), float64(to.Y-from.Y))))
}

// within is the part of a straight way, 0 to 1, that lies in a rectangle; empty where
// lo is not under hi (Liang and Barsky).
func within(from, to geom.Point, r geom.Rect) (lo, hi float64) {
	lo, hi = 0, 1
	for _, axis := range []struct {
		from, to geom.Length
		in       geom.Span
	}{{from.X, to.X, r.X}, {from.Y, to.Y, r.Y}} {
		step := float64(axis.to - axis.from)
		if step == 0 {
			if !axis.in.Holds(axis.from) {
				return 1, 0
			}
			continue
		}
		a, b := float64(axis.in.Lo-axis.from)/step, float64(axis.in.Hi-axis.from)/step
		lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
	}
	return lo, hi
}

// drainIntoWater refuses a drain that ends where water comes up.
func drainIntoWater(b *rule.Build) {
	for _, d := range b.Source.Top("drain") {
		if stub := b.Ref(d, "to"); b.Text(stub, "carries") == "water" {
			b.Findings.Errorf("drain-into-water", d.Attr("to").Expr.At, "to = a stub that carries a drain",
				"%s leads into %s, which carries water.", finding.Capital(d.Describe()), stub.Describe()).
				Also(stub.Attr("carries").Expr.At, "it carries water")
		}
	}
}
