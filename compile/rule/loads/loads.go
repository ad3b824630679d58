// Package loads judges what carries a bar top: steel, screws, the knee wall and the slab
// itself (SPEC.md 11.7).
package loads

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "steel-too-weak", Look: steelTooWeak},
	{Slug: "steel-bends-too-far", Look: steelBendsTooFar},
	{Slug: "screws-pulled", Look: screwsPulled},
	{Slug: "knee-wall-tips", Look: kneeWallTips},
	{Slug: "bar-top-spans-too-far", Look: barTopSpansTooFar},
	{Slug: "seam-between-plates", Look: seamBetweenPlates},
	{Slug: "stone-overhang", Look: stoneOverhang},
	{Slug: "wood-overhang", Look: woodOverhang},
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
	share := 1.0
	if len(all) > 1 {
		share = b.FieldNumber(b.Limits, "bar_load", "share")
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
			atEdge: {point: share * b.FieldNumber(b.Limits, "bar_load", "edge")},
			spread: {spread: b.FieldNumber(b.Limits, "bar_load", "area") / 1e6 * width},
		},
		dead: load{spread: own / 1e6 * width},
	}
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
		return " One other plate is no better."
	}
	return " " + finding.Counted(w.failing-1, "other plate") + " are no better."
}

func steelTooWeak(b *rule.Build) {
	share := b.Number(b.Limits, "steel_stress")
	for _, t := range bars(b) {
		w, fails := t.judge(func(p *plate, by int) (have, most float64) {
			return p.stress(p.loads[by].add(p.dead)), share * b.Number(t.steel, "yield")
		})
		if !fails {
			continue
		}
		f := b.Findings.Warnf("steel-too-weak", t.supports.Attr("plate").Expr.At, stouter(b, w, 2),
			"%s the steel of support %d bears %s, and %s are allowed: %s too much.%s",
			under(b, &t, w), w.plate.number, showStress(b, w.have), showStress(b, w.most), showStress(b, w.have-w.most), w.others())
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
	live, total := b.FieldNumber(b.Limits, "bar_sag", "live"), b.FieldNumber(b.Limits, "bar_sag", "total")
	for _, t := range bars(b) {
		w, fails := t.judge(func(p *plate, by int) (have, most float64) {
			own, all := p.beam.sag(p.loads[by]), p.beam.sag(p.loads[by].add(p.dead))
			span := 2 * p.beam.edge
			if all*total > own*live {
				return all, span / total
			}
			return own, span / live
		})
		if !fails {
			continue
		}
		f := b.Findings.Warnf("steel-bends-too-far", t.supports.Attr("plate").Expr.At, stouter(b, w, 3),
			"%s the edge goes down by %s at support %d, and %s is the most for an overhang of %s: %s too far.%s",
			under(b, &t, w), b.Show(ofMM(w.have)), w.plate.number, b.Show(ofMM(w.most)), b.Show(t.overhang()), b.Show(ofMM(w.have-w.most)), w.others())
		f.Also(t.steel.Attr("width").Expr.At, "its width")
		b.LimitOf(f, "bar_load")
		b.LimitOf(f, "bar_sag")
	}
}

// mostThick bounds the flat bar that a mend asks for.
const mostThick = 2 * length.Inch

// stouter is the mend for steel that does too little: wider in proportion, or
// thicker, which tells by a power.
func stouter(b *rule.Build, w worst, power int) string {
	wide, thick := 5*length.Millimetre, length.Millimetre // steps that bars are sold in
	if b.Source.Unit.Imperial() {
		wide, thick = length.Inch/4, length.Inch/16
	}
	over, beam := w.have/w.most, &w.plate.beam
	text := "flat bar that is " + b.Show(length.Up(ofMM(beam.width*over), wide)) + " wide"
	for t := length.Up(ofMM(beam.thick), thick); t <= mostThick; t += thick {
		left := over
		for range power {
			left *= beam.thick / t.MM()
		}
		if left <= 1 {
			return text + ", or one that is " + b.Show(t) + " thick"
		}
	}
	return text
}

// under says what load a finding speaks of.
func under(b *rule.Build, t *bar, w worst) string {
	if w.by == spread {
		return "With " + showPressure(b, b.FieldNumber(b.Limits, "bar_load", "area")) + " on bar top " + t.top.Name
	}
	text := "With " + showForce(b, b.FieldNumber(b.Limits, "bar_load", "edge")) + " on the edge of bar top " + t.top.Name
	if own := w.plate.loads[atEdge].point; len(t.plates) > 1 {
		text += ", " + showForce(b, own) + " of it on one plate,"
	}
	return text
}
