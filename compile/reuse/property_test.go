package reuse_test

import (
	"math"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"

	"pgregory.net/rapid"
)

// drawnBores adds bores that lie clear of one another, on a grid of 10 mm.
func drawnBores(t *rapid.T, p *model.Part, wide, high int) {
	seen := make(map[geom.Point]bool) // lookup only
	for range rapid.IntRange(0, 4).Draw(t, "bores") {
		b := model.Bore{Name: "pin", Diameter: rapid.SampledFrom([]reuse.Length{4 * mm, 5 * mm}).Draw(t, "diameter")}
		b.At = at(reuse.Length(10*rapid.IntRange(1, wide-1).Draw(t, "x"))*mm, reuse.Length(10*rapid.IntRange(1, high-1).Draw(t, "y"))*mm)
		if seen[b.At] {
			continue
		}
		seen[b.At] = true
		b.Depth = reuse.Length(rapid.IntRange(0, 2).Draw(t, "depth")) * mm
		b.Far = rapid.Bool().Draw(t, "far")
		if b.Depth == 0 && rapid.Bool().Draw(t, "sunk") {
			b.Sink = 7 * mm
		}
		if rapid.IntRange(0, 3).Draw(t, "slot") == 0 {
			b.Slot, b.Across = 2*mm, rapid.Bool().Draw(t, "across")
		}
		p.Bores = append(p.Bores, b)
	}
}

// TestKeyIsThatOfAnyLay draws parts with bores, lays them anyhow: the key stays, and they
// serve for one another without a step. Another part of the same size has that key
// exactly where it serves both ways without one.
func TestKeyIsThatOfAnyLay(t *testing.T) {
	same, others := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		wide, high := rapid.IntRange(2, 4).Draw(t, "wide"), rapid.IntRange(2, 4).Draw(t, "high")
		draw := func() *model.Part {
			p := panel(reuse.Length(10*wide)*mm, reuse.Length(10*high)*mm, thick(4*mm), faced(rapid.SampledFrom([]model.Good{model.GoodNone, model.GoodNone, model.GoodDrawn, model.GoodBoth}).Draw(t, "good")))
			p.Grain = rapid.SampledFrom([]model.Grain{model.GrainNone, model.GrainX, model.GrainY}).Draw(t, "grain")
			if rapid.IntRange(0, 2).Draw(t, "banded") == 0 {
				p.Bands = []model.Band{{Edge: model.Edge(rapid.IntRange(0, 3).Draw(t, "edge")), Stock: "banding.birch"}}
			}
			drawnBores(t, p, wide, high)
			return p
		}
		a, b := draw(), draw()
		p := pair(a, b, 0)
		l := model.Lay{Over: rapid.Bool().Draw(t, "over"), Quarters: rapid.IntRange(0, 3).Draw(t, "quarters")}
		turned := laidPart(a, l)
		if fit, ok := p.Serve(a, turned); !ok || fit.Kind != model.Unchanged || p.Key(a) != p.Key(turned) {
			t.Fatalf("laid %+v: %v %v, keys equal: %v\n%+v\n%+v", l, fit, ok, p.Key(a) == p.Key(turned), a, turned)
		}
		if rapid.Bool().Draw(t, "the other is this one, the better faces aside") {
			good := b.Good
			b = laidPart(a, model.Lay{Quarters: rapid.IntRange(0, 3).Draw(t, "its quarters"), Over: rapid.Bool().Draw(t, "it is over")})
			b.Good = good
		}
		to, ok := p.Serve(a, b)
		from, back := p.Serve(b, a)
		alike := ok && back && to.Kind == model.Unchanged && from.Kind == model.Unchanged
		if alike != (p.Key(a) == p.Key(b)) {
			t.Fatalf("%v %v, keys equal: %v\n%+v\n%+v", to, from, !alike, a, b)
		}
		if alike {
			same++
		} else {
			others++
		}
	})
	if same == 0 || others == 0 {
		t.Errorf("%d alike, %d not: one of these was never tried", same, others)
	}
}

// TestTransitive: what serves for what serves for a third serves for that.
func TestTransitive(t *testing.T) {
	chains := 0
	rapid.Check(t, func(t *rapid.T) {
		var parts [3]*model.Part
		for i := range parts {
			// Half of them are the one before with one cut more, so that chains are many.
			if i > 0 && rapid.Bool().Draw(t, "made of the one before") {
				q := *parts[i-1]
				x, y := q.Size()
				q.Recesses = slices.Clip(q.Recesses)
				recessed("recess", 0, 0, x, y/2/mm*mm, mm)(&q)
				parts[i] = &q
				continue
			}
			parts[i], _ = drawnPart(t, "part", false, model.GrainNone, model.GrainY)
		}
		serves := func(i, j int) bool {
			fit, ok := pair(parts[i], parts[j], 0).Serve(parts[i], parts[j])
			return ok && fit.Kind != model.Patch
		}
		if serves(0, 1) && serves(1, 2) {
			chains++
			if !serves(0, 2) {
				t.Fatalf("%+v\n%+v\n%+v", parts[0], parts[1], parts[2])
			}
		}
	})
	if chains == 0 {
		t.Error("no chain was tried")
	}
}

// removed reports whether a part lacks a point at a depth: by its definition, shape by
// shape.
func removed(p *model.Part, q geom.Point, deep float64) bool {
	if !p.Outline.Bounds().Contains(geom.R(q.X, q.Y, q.X, q.Y)) {
		return true
	}
	for _, b := range p.Bores {
		m := b.Middles()
		x := math.Max(0, math.Max(float64(m[0].X-q.X), float64(q.X-m[1].X)))
		y := math.Max(0, math.Max(float64(m[0].Y-q.Y), float64(q.Y-m[1].Y)))
		from, to := 0.0, b.Depth.MM()
		if b.Through() {
			to = p.Thickness.MM()
		} else if b.Far {
			from, to = p.Thickness.MM()-b.Depth.MM(), p.Thickness.MM()
		}
		if math.Hypot(x, y) < float64(b.Diameter)/2 && from < deep && deep < to {
			return true
		}
	}
	for _, o := range p.Openings {
		if c, r, ok := o.Shape.Circle(); ok {
			if math.Hypot(float64(c.X-q.X), float64(c.Y-q.Y)) < float64(r) {
				return true
			}
		} else if b := o.Shape.Bounds(); b.X.Lo < q.X && q.X < b.X.Hi && b.Y.Lo < q.Y && q.Y < b.Y.Hi {
			return true
		}
	}
	return false
}

// TestRoundCutsBySampling looks at points of a part: what serves lacks none that the
// part has, and of what does not, some point tells.
func TestRoundCutsBySampling(t *testing.T) {
	const step = mm / 2
	served, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func() *model.Part {
			p := panel(20*mm, 30*mm, thick(8*mm), faced(model.GoodNone)) // depths differ by more than does no harm
			for range rapid.IntRange(0, 2).Draw(t, "bores") {
				b := model.Bore{Name: "pin", Diameter: reuse.Length(2*rapid.IntRange(1, 5).Draw(t, "radius")) * mm, Depth: reuse.Length(2*rapid.IntRange(0, 3).Draw(t, "depth")) * mm}
				b.At, b.Far = at(reuse.Length(rapid.IntRange(7, 12).Draw(t, "x"))*mm, reuse.Length(rapid.IntRange(9, 12).Draw(t, "y"))*mm), rapid.Bool().Draw(t, "far")
				if rapid.Bool().Draw(t, "slot") {
					b.Slot, b.Across = 2*mm, rapid.Bool().Draw(t, "across")
				}
				p.Bores = append(p.Bores, b)
			}
			if rapid.IntRange(0, 1).Draw(t, "opening") == 0 {
				opened("hole", 4*mm, 4*mm, reuse.Length(rapid.IntRange(8, 16).Draw(t, "to x"))*mm, reuse.Length(rapid.IntRange(8, 20).Draw(t, "to y"))*mm)(p)
			}
			return p
		}
		old, new := draw(), draw()
		// Two bores that run into one another could make up for a third: SPEC.md
		// 12.2 asks for one that holds it, or for openings that do.
		fit, ok := pair(old, new, 0).Serve(old, new)
		ok = ok && fit.Kind != model.Patch
		fits := func(l model.Lay) bool {
			laid := laidPart(old, l)
			var points []geom.Point
			// Points just inside the round edges tell of slivers.
			for _, b := range laid.Bores {
				for _, m := range b.Middles() {
					for i := range 720 {
						sin, cos := math.Sincos(float64(i) * math.Pi / 360)
						r := float64(b.Diameter/2 - mm/1000)
						points = append(points, m.Add(at(reuse.Length(r*cos), reuse.Length(r*sin))))
					}
				}
			}
			for x := step / 2; x < 20*mm; x += step {
				for y := step / 2; y < 30*mm; y += step {
					points = append(points, at(x, y))
				}
			}
			for _, q := range points {
				for _, deep := range [...]float64{1, 3, 5, 7} {
					if removed(laid, q, deep) && !removed(new, q, deep) {
						return false
					}
				}
			}
			return true
		}
		if ok {
			served++
			if !fits(fit.Lay) {
				t.Fatalf("%+v\n%+v\n%+v", fit, old, new)
			}
			return
		}
		refused++
		if len(new.Bores) > 1 || len(new.Bores)+len(new.Openings) > 1 {
			return
		}
		for _, l := range []model.Lay{{}, {Quarters: 2}, {Over: true}, {Over: true, Quarters: 2}} {
			if fits(l) {
				t.Fatalf("it would serve, laid %+v\n%+v\n%+v", l, old, new)
			}
		}
	})
	if served == 0 || refused == 0 {
		t.Errorf("%d serve, %d do not: one of these was never tried", served, refused)
	}
}

// TestWithinIsWhatCounts moves each measure of a part by a little less and a little more
// than what counts as equal.
func TestWithinIsWhatCounts(t *testing.T) {
	const within = 400_000
	rapid.Check(t, func(t *rapid.T) {
		off := reuse.Length(rapid.Int64Range(-2*within, 2*within).Draw(t, "off"))
		size := reuse.Length(max(off, -off))
		for _, c := range []struct {
			what string
			new  *model.Part
		}{
			{"width", panel(200*mm+off, 300*mm)},
			{"bore", panel(200*mm, 300*mm, bored(plate, at(40*mm+off, 50*mm)))},
			{"depth", panel(200*mm, 300*mm, recessed("hinge", 40*mm, 50*mm, 60*mm, 70*mm, 12*mm+off))},
			{"bore's depth", panel(200*mm, 300*mm, bored(model.Bore{Name: "pin", Diameter: 5 * mm, Depth: 12*mm + off}, at(40*mm, 50*mm)))},
			{"opening", panel(200*mm, 300*mm, opened("outlet urn", 40*mm, 50*mm, 90*mm+off, 80*mm))},
			{"hole", panel(200*mm, 300*mm, hole("stub drain", 60*mm, 60*mm, 20*mm+off))},
		} {
			old := *c.new
			switch c.what {
			case "width":
				old = *panel(200*mm, 300*mm)
			case "bore":
				old = *panel(200*mm, 300*mm, bored(plate, at(40*mm, 50*mm)))
			case "depth":
				old = *panel(200*mm, 300*mm, recessed("hinge", 40*mm, 50*mm, 60*mm, 70*mm, 12*mm))
			case "bore's depth": // deeper does no harm, see TestADeeperBore
				if off < -within {
					continue
				}
				old = *panel(200*mm, 300*mm, bored(model.Bore{Name: "pin", Diameter: 5 * mm, Depth: 12 * mm}, at(40*mm, 50*mm)))
			case "opening":
				old = *panel(200*mm, 300*mm, opened("outlet urn", 40*mm, 50*mm, 90*mm, 80*mm))
			case "hole":
				old = *panel(200*mm, 300*mm, hole("stub drain", 60*mm, 60*mm, 20*mm))
			}
			fit, ok := pair(&old, c.new, within).Serve(&old, c.new)
			got := ok && fit.Kind == model.Unchanged
			if got != (size <= within) || got && fit.Off != size {
				t.Errorf("%s off by %d: %+v %v", c.what, off, fit, ok)
			}
		}
	})
}
