// Package loads judges what carries a bar top: steel, screws, the knee wall and the slab
// itself (SPEC.md 11.7).
package loads

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "steel-too-weak", Look: steelTooWeak},
	{Slug: "steel-bends-too-far", Look: steelBendsTooFar},
	{Slug: "screws-pulled", Look: screwsPulled},
	{Slug: "knee-wall-tips", Look: kneeWallTips},
	{Slug: "floor-screws-missing", Look: floorScrewsMissing},
	{Slug: "bar-top-loose", Look: barTopLoose},
	{Slug: "bar-top-spans-too-far", Look: barTopSpansTooFar},
	{Slug: "counter-spans-too-far", Look: counterSpansTooFar},
	{Slug: "seam-between-plates", Look: seamBetweenPlates},
	{Slug: "stone-overhang", Look: stoneOverhang},
	{Slug: "wood-overhang", Look: woodOverhang},
	{Slug: "stone-thin", Look: thinStoneStandsOut},
	{Slug: "stone-screwed", Look: stoneScrewed},
	{Slug: "solid-top-held", Look: solidTopHeld},
	{Slug: "recess-takes-half", Look: recessTakesHalf},
}

// gravity is standard gravity in m/s2.
const gravity = 9.80665

// bar is a knee wall, the top that it carries and the steel between them.
type bar struct {
	wall            *model.KneeWall
	top             *model.Slab
	block, slab     *lang.Block // the bar top and what it is made of
	knee            *lang.Block
	supports, steel *lang.Block // nil where there are none
	plates          []plate     // from the left
}

// plate is one support, and how much of the top it carries. Lengths are in
// millimetres, loads in newtons and millimetres.
type plate struct {
	*model.Support
	part   *model.Part
	number int // from 1
	beam   cantilever
	loads  [2]load // that it bears beside dead: at the edge, and spread
	dead   load
}

// overhang is how far the top stands out over the room from the bare framing.
func (t *bar) overhang() geom.Length { return t.wall.Framing.V.Lo - t.top.Box.V.Lo }

// bars lists the knee walls that carry a top.
func bars(b *rule.Build) []bar {
	tops := map[string]*model.Slab{} // lookup only
	for i := range b.Slabs {
		if s := &b.Slabs[i]; s.Kind == "bar_top" {
			tops[s.Name] = s
		}
	}
	var out []bar
	for i := range b.KneeWalls {
		wall := &b.KneeWalls[i]
		top := tops[wall.BarTop]
		if top == nil {
			continue
		}
		t := bar{wall: wall, top: top, block: b.Block("bar_top." + top.Name), knee: b.Block("knee_wall." + wall.Name)}
		t.slab = b.Ref(t.block, "slab")
		if inner := t.knee.Inner("supports"); len(inner) > 0 {
			t.supports, t.steel = inner[0], b.Ref(inner[0], "plate")
		}
		for j := range wall.Supports {
			t.plates = append(t.plates, plateOf(b, &t, j, b.Part(wall.Supports[j].Part)))
		}
		out = append(out, t)
	}
	return out
}

// plateOf works out what support n of a bar is and carries: the top from halfway
// to each neighbour, or to its end.
func plateOf(b *rule.Build, t *bar, n int, part *model.Part) plate {
	all := t.wall.Supports
	carried := t.top.Box.U
	if n > 0 {
		carried.Lo = (all[n-1].Centre + all[n].Centre) / 2
	}
	if n+1 < len(all) {
		carried.Hi = (all[n].Centre + all[n+1].Centre) / 2
	}
	width := carried.Size().MM()
	own := b.Number(t.slab, "density") * gravity * t.top.Box.Z.Size().MM() / 1000 // Pa
	return plate{
		Support: &all[n], part: part, number: n + 1,
		beam: cantilever{
			reach: (t.wall.Framing.V.Lo - all[n].Steel.V.Lo).MM(), edge: t.overhang().MM(),
			width: all[n].Steel.U.Size().MM(), thick: all[n].Steel.Z.Size().MM(), modulus: b.Number(t.steel, "stiffness") * 1000,
		},
		loads: [2]load{
			atEdge: {point: shareOf(b, t, n) * b.FieldNumber(b.Limits, "bar_load", "edge")},
			spread: {spread: b.FieldNumber(b.Limits, "bar_load", "area") / 1e6 * width},
		},
		dead: load{spread: own / 1e6 * width},
	}
}

// shareOf is how much support n takes of a force that may stand anywhere along the
// edge: what is stated where that is between two supports; past the last one the
// slab's end is a lever over it and the one before.
func shareOf(b *rule.Build, t *bar, n int) float64 {
	all, last := t.wall.Supports, len(t.wall.Supports)-1
	most := b.FieldNumber(b.Limits, "bar_load", "share")
	stated := b.Field(b.Limits, "bar_load", "end_share")
	switch {
	case last == 0:
		return 1
	case n > 0 && n < last:
		return most
	case stated.Num != nil:
		return values.NumberOf(stated)
	}
	if n == 0 {
		most = max(most, lever(all[1].Centre, all[0].Centre, t.top.Box.U.Lo))
	}
	if n == last {
		most = max(most, lever(all[last-1].Centre, all[last].Centre, t.top.Box.U.Hi))
	}
	return most
}

// lever is how much of a force at an end the last of two supports bears, where the
// one before holds down the other end of the slab.
func lever(before, last, end geom.Length) float64 {
	return (end - before).MM() / (last - before).MM()
}

// worst is the plate and the load by which a figure exceeds its limit most.
type worst struct {
	plate      *plate
	by         int // the load: atEdge or spread
	have, most float64
	failing    int // plates in all
}

// judge holds a figure of each plate to its limit under each load. All that is on
// the limit is within it, whatever floats make of the last digits.
func (t *bar) judge(figure func(p *plate, by int) (have, most float64)) (w worst, fails bool) {
	for i := range t.plates {
		p, over := &t.plates[i], false
		for by := range p.loads {
			have, most := figure(p, by)
			over = over || have > most*(1+1e-9)
			if w.plate == nil || have*w.most > w.have*most {
				w.plate, w.by, w.have, w.most = p, by, have, most
			}
		}
		if over {
			w.failing++
		}
	}
	return w, w.failing > 0
}

// others says how many other plates fail likewise.
func (w worst) others() string {
	switch w.failing {
	case 1:
		return ""
	case 2:
		return " One other support is no better."
	}
	return " " + finding.Counted(w.failing-1, "other support") + " are no better."
}

// weakest is the support whose steel bears most, in MPa.
func (t *bar) weakest(b *rule.Build) (worst, bool) {
	if t.steel == nil {
		return worst{}, false
	}
	most := b.Number(b.Limits, "steel_stress") * b.Number(t.steel, "yield")
	return t.judge(func(p *plate, by int) (have, may float64) { return p.stress(p.loads[by].add(p.dead)), most })
}

// lowest is the support where the edge goes down most, in millimetres.
func (t *bar) lowest(b *rule.Build) (worst, bool) {
	live, total := b.FieldNumber(b.Limits, "bar_sag", "live"), b.FieldNumber(b.Limits, "bar_sag", "total")
	return t.judge(func(p *plate, by int) (have, most float64) {
		own, all := p.beam.sag(p.loads[by]), p.beam.sag(p.loads[by].add(p.dead))
		span := 2 * p.beam.edge
		if all*total > own*live {
			return all, span / total
		}
		return own, span / live
	})
}

func steelTooWeak(b *rule.Build) {
	for _, t := range bars(b) {
		w, fails := t.weakest(b)
		if !fails {
			continue
		}
		have, most := stress.both(b, w.have, w.most)
		f := b.Findings.Warnf("steel-too-weak", t.supports.Attr("plate").Expr.At, stouter(b, &t),
			"%s the steel of support %d bears %s, and %s are allowed: %s too much.%s",
			under(b, &t, w), w.plate.number, have, most, stress.show(b, w.have-w.most), w.others())
		f.Also(t.steel.Attr("width").Expr.At, "its width")
		b.LimitOf(f, "bar_load")
		b.LimitOf(f, "steel_stress")
	}
}

// stress is the greatest in the steel, in MPa: where it leaves the wall, or where
// holes weaken it further out.
func (p *plate) stress(l load) float64 {
	most := p.beam.stress(l, 0, 0)
	for i, bore := range p.part.Bores {
		x := bore.At.Y.MM() - (p.Steel.V.Size().MM() - p.beam.reach)
		if x <= 0 {
			continue
		}
		lost := 0.0
		for _, other := range p.part.Bores[i:] { // one row of holes stands at one height
			if other.At.Y == bore.At.Y {
				lost += other.Diameter.MM()
			}
		}
		most = max(most, p.beam.stress(l, max(0, x-bore.Slot.MM()/2), lost))
	}
	return most
}

func steelBendsTooFar(b *rule.Build) {
	for _, t := range bars(b) {
		w, fails := t.lowest(b)
		if !fails {
			continue
		}
		f := b.Findings.Warnf("steel-bends-too-far", t.supports.Attr("plate").Expr.At, stouter(b, &t),
			"%s the edge goes down by %s at support %d, and %s is the most for an overhang of %s: %s too far.%s",
			under(b, &t, w), b.Show(ofMM(w.have)), w.plate.number, b.Show(ofMM(w.most)), b.Show(t.overhang()), b.Show(ofMM(w.have-w.most)), w.others())
		f.Also(t.steel.Attr("width").Expr.At, "its width")
		b.LimitOf(f, "bar_load")
		b.LimitOf(f, "bar_sag")
	}
}

// under says what load a finding speaks of.
func under(b *rule.Build, t *bar, w worst) string {
	if w.by == spread {
		return "With " + pressure.show(b, b.FieldNumber(b.Limits, "bar_load", "area")) + " on bar top " + t.top.Name
	}
	text := "With " + force.show(b, b.FieldNumber(b.Limits, "bar_load", "edge")) + " on the edge of bar top " + t.top.Name
	if own := w.plate.loads[atEdge].point; len(t.plates) > 1 {
		text += ", " + force.show(b, own) + " of it on one plate,"
	}
	return text
}
