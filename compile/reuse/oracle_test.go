package reuse_test

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"

	"pgregory.net/rapid"
)

// The oracle takes parts apart into cubes of 1 mm: slow, and without a thought.
const (
	most   = 12 // cubes each way
	layers = 3
)

type cubes struct {
	wide, high int
	full       [layers][most][most]bool // depth, y, x
}

// drawnPart is a part on a grid of millimetres, and its cubes. Its cuts lie apart, or
// anyhow.
func drawnPart(t *rapid.T, name string, apart bool, grains ...model.Grain) (*model.Part, cubes) {
	draw := func(what string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name+" "+what) }
	c := cubes{wide: draw("wide", 2, most), high: draw("high", 2, most)}
	for d := range c.full {
		for y := range c.high {
			for x := range c.wide {
				c.full[d][y][x] = true
			}
		}
	}
	var taken []geom.Rect
	take := func(r geom.Rect, deep int) {
		taken = append(taken, r)
		for d := range deep {
			for y := max(r.Y.Lo/mm, 0); y < min(r.Y.Hi/mm, reuse.Length(c.high)); y++ {
				for x := max(r.X.Lo/mm, 0); x < min(r.X.Hi/mm, reuse.Length(c.wide)); x++ {
					c.full[d][y][x] = false
				}
			}
		}
	}
	part := panel(reuse.Length(c.wide)*mm, reuse.Length(c.high)*mm, thick(layers*mm), faced(model.GoodNone))
	part.Grain = rapid.SampledFrom(grains).Draw(t, name+" grain")
	if draw("notched", 0, 3) == 0 {
		n := geom.R(0, 0, reuse.Length(draw("notch x", 1, c.wide-1))*mm, reuse.Length(draw("notch y", 1, c.high-1))*mm)
		if draw("at the right", 0, 1) == 1 {
			n = n.Shift(geom.Point{X: reuse.Length(c.wide)*mm - n.X.Hi})
		}
		part.Outline = geom.Cut(geom.R(0, 0, reuse.Length(c.wide)*mm, reuse.Length(c.high)*mm), []geom.Rect{n})[0]
		take(n, layers)
	}
	for range draw("cuts", 0, 3) {
		deep, in := draw("depth", 1, layers), 0
		if deep == layers {
			in = 1 // an opening reaches no edge, or it would be a notch
		}
		if min(c.wide, c.high) <= 2*in {
			continue
		}
		x, y := draw("x", in, c.wide-1-in), draw("y", in, c.high-1-in)
		r := geom.R(reuse.Length(x)*mm, reuse.Length(y)*mm, reuse.Length(draw("to x", x+1, c.wide-in))*mm, reuse.Length(draw("to y", y+1, c.high-in))*mm)
		if apart && slices.ContainsFunc(taken, r.Overlaps) {
			continue
		}
		take(r, deep)
		if deep == layers {
			part.Openings = append(part.Openings, model.Opening{Name: "hole", Shape: geom.RectContour(r).Reversed()})
		} else {
			part.Recesses = append(part.Recesses, model.Recess{Name: "recess", Shape: geom.RectContour(r), Depth: reuse.Length(deep) * mm})
		}
	}
	return part, c
}

// laid turns cubes over about their y axis, then by quarters.
func (c cubes) laid(over bool, quarters int) cubes {
	if over {
		was := c
		for d := range c.full {
			for y := range c.high {
				for x := range c.wide {
					c.full[d][y][x] = was.full[layers-1-d][y][c.wide-1-x]
				}
			}
		}
	}
	for range quarters {
		was := c
		c = cubes{wide: was.high, high: was.wide}
		for d := range c.full {
			for y := range was.high {
				for x := range was.wide {
					c.full[d][x][was.high-1-y] = was.full[d][y][x]
				}
			}
		}
	}
	return c
}

// holds reports whether a part lies in cubes that are moved.
func (c cubes) holds(part cubes, dx, dy int) bool {
	for d := range part.full {
		for y := range part.high {
			for x := range part.wide {
				px, py := x-dx, y-dy
				if part.full[d][y][x] && (px < 0 || py < 0 || px >= c.wide || py >= c.high || !c.full[d][py][px]) {
					return false
				}
			}
		}
	}
	return true
}

// serves tries each lay and each move: whether the piece has all of the part, and
// whether it is the part.
func (c cubes) serves(part cubes, grains [2]model.Grain) (has, is bool) {
	for lay := range 8 {
		if along := grains[0]; grains[1] != model.GrainNone {
			if lay%2 == 1 && along != model.GrainNone {
				along = model.GrainX + model.GrainY - along
			}
			if along != grains[1] {
				continue
			}
		}
		laid := c.laid(lay >= 4, lay%4)
		for dx := -most; dx <= most; dx++ {
			for dy := -most; dy <= most; dy++ {
				if laid.holds(part, dx, dy) {
					has = true
				}
			}
		}
		if laid == part {
			is = true
		}
	}
	return has, is
}

// TestAgainstCubes compares what serves with the oracle, both ways round.
func TestAgainstCubes(t *testing.T) {
	served, refused, alike := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		old, piece := drawnPart(t, "piece", false, model.GrainNone, model.GrainX, model.GrainY)
		new, part := drawnPart(t, "part", false, model.GrainNone, model.GrainX, model.GrainY)
		if rapid.IntRange(0, 3).Draw(t, "the same, laid otherwise") == 0 {
			over, quarters := rapid.Bool().Draw(t, "over"), rapid.IntRange(0, 3).Draw(t, "quarters")
			if !over || len(old.Recesses) == 0 {
				l := model.Lay{Over: over, Quarters: quarters}
				new, part = laidPart(old, l), piece.laid(over, quarters)
			}
		}
		has, is := piece.serves(part, [2]model.Grain{old.Grain, new.Grain})
		fit, ok := pair(old, new, 0).Serve(old, new)
		if got := ok && fit.Kind != model.Patch; got != has {
			t.Fatalf("the oracle says %v, Serve %v %v\n%v\n%v", has, ok, fit, old, new)
		}
		if got := ok && fit.Kind == model.Unchanged; got != is {
			t.Fatalf("alike: the oracle says %v, Serve %v\n%v\n%v", is, fit, old, new)
		}
		if is && old.Grain == new.Grain {
			alike++
		}
		if has {
			served++
		} else {
			refused++
		}
	})
	t.Logf("%d serve, %d of them as they are; %d do not", served, alike, refused)
	if served == 0 || refused == 0 || alike == 0 {
		t.Errorf("%d serve, %d of them as they are; %d do not: one of these was never tried", served, alike, refused)
	}
}

// lacking counts the places of the part where some of its cubes are not in the piece,
// which is moved, and those where the piece has some that the part lacks.
func (c cubes) lacking(part cubes, dx, dy int) (missing, spare float64) {
	for y := -2 * most; y < 2*most; y++ {
		for x := -2 * most; x < 2*most; x++ {
			lacks, over := false, false
			for d := range layers {
				px, py := x-dx, y-dy
				has := px >= 0 && py >= 0 && px < c.wide && py < c.high && c.full[d][py][px]
				wants := x >= 0 && y >= 0 && x < part.wide && y < part.high && part.full[d][y][x]
				lacks, over = lacks || wants && !has, over || has && !wants
			}
			if lacks {
				missing++
			}
			if over {
				spare++
			}
		}
	}
	return missing, spare
}

// TestAreasAgainstCubes: what is missing and what is spare are drawn as large as they are.
func TestAreasAgainstCubes(t *testing.T) {
	patched, reworked := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		old, piece := drawnPart(t, "piece", true, model.GrainNone)
		new, part := drawnPart(t, "part", true, model.GrainNone)
		old.ID, new.ID = "skin.room/piece-1", "skin.room/piece-1"
		fit, ok := pair(old, new, 0).Serve(old, new)
		if !ok {
			return
		}
		low := fit.Lay.Contour(old.Outline).Bounds()
		if low.X.Lo%mm != 0 || low.Y.Lo%mm != 0 {
			return // middles brought into line, off the grid of the cubes
		}
		missing, spare := piece.laid(fit.Lay.Over, fit.Lay.Quarters).lacking(part, int(low.X.Lo/mm), int(low.Y.Lo/mm))
		sum := func(contours []geom.Contour) (area float64) {
			for _, c := range contours {
				area += c.Area()
			}
			return area
		}
		if sum(fit.Missing) != missing || sum(fit.Spare) != spare {
			t.Fatalf("missing %v, in cubes %v; spare %v, in cubes %v\n%+v\n%+v\n%+v", sum(fit.Missing), missing, sum(fit.Spare), spare, fit, old, new)
		}
		if len(fit.Missing) > 0 != (fit.Kind == model.Patch) {
			t.Fatalf("%+v", fit)
		}
		if fit.Kind == model.Patch {
			patched++
		} else if fit.Kind == model.Rework {
			reworked++
		}
	})
	if patched == 0 || reworked == 0 {
		t.Errorf("%d patched, %d reworked: one of these was never tried", patched, reworked)
	}
}

// laidPart draws a part as a lay puts it, its lower left at the origin.
func laidPart(p *model.Part, l model.Lay) *model.Part {
	l.Move = geom.Point{}
	b := l.Contour(p.Outline).Bounds()
	l.Move = geom.Point{X: -b.X.Lo, Y: -b.Y.Lo}
	q := *p
	q.Outline, q.Openings, q.Recesses, q.Bores = l.Contour(p.Outline), nil, nil, nil
	for _, o := range p.Openings {
		o.Shape = l.Contour(o.Shape)
		q.Openings = append(q.Openings, o)
	}
	for _, r := range p.Recesses {
		r.Shape = l.Contour(r.Shape)
		q.Recesses = append(q.Recesses, r)
	}
	for _, b := range p.Bores {
		b.At = l.Point(b.At)
		b.Far = b.Far != l.Over
		b.Across = b.Across != (l.Quarters%2 == 1)
		q.Bores = append(q.Bores, b)
	}
	q.Bands = nil
	for _, b := range p.Bands {
		middles := [...]geom.Point{model.Bottom: {Y: -1}, model.RightEdge: {X: 1}, model.Top: {Y: 1}, model.LeftEdge: {X: -1}}
		out := model.Lay{Over: l.Over, Quarters: l.Quarters}.Point(middles[b.Edge])
		b.Edge = model.Edge(slices.Index(middles[:], out))
		q.Bands = append(q.Bands, b)
	}
	if l.Over {
		q.Good = map[model.Good]model.Good{model.GoodNone: model.GoodNone, model.GoodDrawn: model.GoodFar, model.GoodFar: model.GoodDrawn, model.GoodBoth: model.GoodBoth}[p.Good]
	}
	if q.Grain != model.GrainNone && l.Quarters%2 == 1 {
		q.Grain = model.GrainX + model.GrainY - q.Grain
	}
	return &q
}
