package loads

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// thickStone is the thickness from which stone carries itself further: 3 cm.
const thickStone = 30 * length.Millimetre

// classOf is the field of a limit that holds for a slab.
func classOf(b *rule.Build, slab *lang.Block) string {
	switch {
	case b.Text(slab, "material") == "wood":
		return "wood"
	case b.Length(slab, "thickness") < thickStone:
		return "thin"
	}
	return "thick"
}

// barTopSpansTooFar judges what of a bar top's overhang has no steel under it,
// along the wall: as a span between two plates, and as a cantilever, which counts
// twice, past the last one.
func barTopSpansTooFar(b *rule.Build) {
	for _, t := range bars(b) {
		if len(t.plates) == 0 || t.overhang() <= 0 {
			continue
		}
		most := b.FieldLength(b.Limits, "bar_span", classOf(b, t.slab))
		last := len(t.plates) - 1
		span, share, where := geom.Length(0), geom.Length(1), ""
		for i := range t.plates[:last] {
			if clear := t.plates[i+1].Steel.U.Lo - t.plates[i].Steel.U.Hi; clear > span {
				span, where = clear, fmt.Sprintf("between supports %d and %d", i+1, i+2)
			}
		}
		for i, end := range []geom.Length{t.plates[0].Steel.U.Lo - t.top.Box.U.Lo, t.top.Box.U.Hi - t.plates[last].Steel.U.Hi} {
			if 2*end > span {
				span, share, where = 2*end, 2, [...]string{"left of the first support", "right of the last support"}[i]
			}
		}
		if span <= most {
			continue
		}
		have, may := span/share, most/share
		f := b.Findings.Warnf("bar-top-spans-too-far", t.spacedBy(), moreSupports(b, &t, most),
			"Bar top %s spans %s %s, and %s spans %s there at most: %s too far.",
			t.top.Name, b.Show(have), where, stuff(b, t.slab), b.Show(may), b.Show(have-may))
		f.Also(t.slab.Head, "the slab")
		b.LimitOf(f, "bar_span")
	}
}

// spacedBy is what says where the supports stand.
func (t *bar) spacedBy() source.Range {
	for _, name := range []string{"at", "end", "count"} {
		if a := t.supports.Attr(name); a != nil {
			return a.Expr.At
		}
	}
	return t.supports.Head
}

// moreSupports is the mend for a top that spans too far: how many plates do,
// where they stand by rule.
func moreSupports(b *rule.Build, t *bar, most geom.Length) string {
	if t.supports.Attr("at") != nil || t.supports.Attr("end") != nil {
		return "supports closer together, or nearer to the ends"
	}
	f, slab, wide := t.wall.Framing.U, t.top.Box.U, t.plates[0].Steel.U.Size()
	n := length.Length(len(t.plates) + 1)
	for f.Size()/n-wide > most || 2*(f.Size()/(2*n)-wide/2+max(f.Lo-slab.Lo, slab.Hi-f.Hi)) > most {
		if n++; n*wide > f.Size() {
			return "less overhang at the ends"
		}
	}
	return fmt.Sprintf("count = %d", n)
}

// stuff names what a slab is made of, as far as limits tell it apart.
func stuff(b *rule.Build, slab *lang.Block) string {
	if classOf(b, slab) == "wood" {
		return "wood"
	}
	return b.Text(slab, "material") + " " + b.Show(b.Length(slab, "thickness")) + " thick"
}

func seamBetweenPlates(b *rule.Build) {
	most := b.Length(b.Limits, "seam_off_plate")
	for _, t := range bars(b) {
		if len(t.plates) == 0 || t.overhang() <= 0 {
			continue
		}
		var worst, at geom.Length
		var nearest *plate
		failing := 0
		for _, seam := range t.top.Seams {
			p := t.nearest(seam)
			off := p.off(seam)
			if off > most {
				failing++
			}
			if nearest == nil || off > worst {
				worst, at, nearest = off, seam, p
			}
		}
		if failing == 0 {
			continue
		}
		origin := t.wall.Framing.U.Lo
		more := ""
		if failing > 1 {
			more = fmt.Sprintf(" Of its seams %d are too far off.", failing)
		}
		f := b.Findings.Warnf("seam-between-plates", t.block.Attr("seams").Expr.At,
			"a seam over it, at "+b.Show(nearest.Centre-origin)+", or a support at the seam",
			"The seam of bar top %s at %s is %s beside support %d, the nearest, and %s is the most: %s too far.%s",
			t.top.Name, b.Show(at-origin), b.Show(worst), nearest.number, b.Show(most), b.Show(worst-most), more)
		f.Also(t.supports.Head, "the supports")
		b.LimitOf(f, "seam_off_plate")
	}
}

// off is how far a place along the run is beside the steel.
func (p *plate) off(u geom.Length) geom.Length {
	return max(0, p.Steel.U.Lo-u, u-p.Steel.U.Hi)
}

// nearest is the plate that is nearest to a place along the run.
func (t *bar) nearest(u geom.Length) *plate {
	best := &t.plates[0]
	for i := range t.plates {
		if t.plates[i].off(u) < best.off(u) {
			best = &t.plates[i]
		}
	}
	return best
}

func stoneOverhang(b *rule.Build) { bareOverhangs(b, "stone-overhang", false) }

func woodOverhang(b *rule.Build) { bareOverhangs(b, "wood-overhang", true) }

// bareOverhangs judges how far slabs stand out with nothing under them: beyond
// boxes, framing, or the tips of steel.
func bareOverhangs(b *rule.Build, slug string, wood bool) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		block := b.Block(s.Key())
		slab := b.Ref(block, "slab")
		if (classOf(b, slab) == "wood") != wood || block.Attr("overhang") == nil {
			continue
		}
		var o bare
		for _, side := range sidesOf(b, block, s) {
			side.most = b.FieldLength(b.Limits, "bare_overhang", classOf(b, slab))
			if !wood {
				side = side.ofStone()
			}
			if o.name == "" || side.out-side.most > o.out-o.most {
				o = side
			}
		}
		if o.out <= o.most {
			continue
		}
		why := stuff(b, slab) + " may stand out "
		if o.third {
			why = "stone may stand out a third of its " + b.Show(o.across) + ", "
		}
		f := b.Findings.Warnf(slug, block.Attr("overhang").Expr.At, o.mend(b),
			"%s stands out %s beyond %s with nothing under it, and %s%s at most: %s too far.",
			finding.Capital(s.Words()), b.Show(o.out), o.past, why, b.Show(o.most), b.Show(o.out-o.most))
		f.Also(slab.Head, "the slab")
		b.LimitOf(f, "bare_overhang")
	}
}

// bare is a side of a slab that has nothing under it.
type bare struct {
	name   string // the field of overhang: "room"
	past   string // what it stands out beyond: "the boxes"
	out    geom.Length
	across geom.Length // the whole slab that way
	reach  geom.Length // of the steel under it; 0 where there is none
	most   geom.Length // that it may stand out
	third  bool        // because it is a third of the whole
}

// ofStone holds a side to a third of the whole as well.
func (o bare) ofStone() bare {
	if third := o.across / 3; third < o.most {
		o.most, o.third = third, true
	}
	return o
}

// mend takes off overhang, and with it a part of the whole that a third is taken of.
func (o bare) mend(b *rule.Build) string {
	if o.third {
		o.most = (o.across - o.out) / 2
	}
	text := fmt.Sprintf("%s = %q in its overhang, or less", o.name, b.Show(length.Down(o.reach+o.most, b.Marks)))
	switch {
	case o.reach > 0:
		text += "; or steel that reaches further"
	case o.name == "room":
		text += "; or supports under it"
	}
	return text
}

// sidesOf are the sides of a slab that overhang.
func sidesOf(b *rule.Build, block *lang.Block, s *model.Slab) []bare {
	past, names := "the boxes", []string{"front", "left", "right"}
	if s.Kind == "bar_top" {
		past, names = "the framing", []string{"room", "work", "left", "right"}
	}
	out := make([]bare, len(names))
	for i, name := range names {
		out[i] = bare{name: name, past: past, out: b.FieldLength(block, "overhang", name), across: s.Box.V.Size()}
		if name == "left" || name == "right" {
			out[i].across = s.Box.U.Size()
		}
	}
	if s.Kind == "bar_top" {
		for _, supports := range b.Ref(block, "over").Inner("supports") {
			room := &out[0]
			room.reach, room.past = b.Length(supports, "reach"), "the steel"
			room.out -= room.reach
		}
	}
	return out
}

func solidTopHeld(b *rule.Build) {
	for _, t := range bars(b) {
		if len(t.plates) == 0 || !b.Flag(t.slab, "solid") || b.Ref(t.supports, "top_screws") == nil {
			continue
		}
		across, slot := t.plates[0].topScrews()
		moves := ofMM(across.MM() * b.Number(t.slab, "swell") * b.Number(b.Limits, "moisture"))
		if moves <= slot/2 {
			continue
		}
		attr := t.supports.Attr("movement")
		if attr == nil {
			attr = t.supports.Attr("top_screws")
		}
		f := b.Findings.Warnf("solid-top-held", attr.Expr.At, fmt.Sprintf("movement = %q", b.Show(length.Up(moves, b.Marks))),
			"Bar top %s is solid wood and moves by %s over the %s from its first screws to its last, and their slots let it move %s either way: %s too little.",
			t.top.Name, b.Show(moves), b.Show(across), b.Show(slot/2), b.Show(moves-slot/2))
		f.Also(t.slab.Head, "the slab")
		b.LimitOf(f, "moisture")
	}
}

// topScrews are how far the screws into the top stand apart across its grain, and
// how long their slots are, as the solver bores them.
func (p *plate) topScrews() (across, slot geom.Length) {
	var at geom.Span
	for _, bore := range p.part.Bores {
		if bore.Name != "screw up" {
			continue
		}
		here := geom.About(bore.At.Y, 0)
		if slot == 0 {
			at = here
		}
		at, slot = at.Union(here), bore.Slot
	}
	return at.Size(), slot
}

func recessTakesHalf(b *rule.Build) {
	share := b.Number(b.Limits, "recess_share")
	for _, t := range bars(b) {
		if len(t.plates) == 0 {
			continue
		}
		lumber := b.Ref(t.knee, "lumber")
		wood := b.Length(lumber, "thickness")
		deep := t.wall.Framing.Z.Hi - t.plates[0].Steel.Z.Lo
		most := ofMM(wood.MM() * share)
		if deep <= most {
			continue
		}
		low := b.Length(b.Ref(t.knee, "router"), "low")
		f := b.Findings.Warnf("recess-takes-half", t.supports.Attr("plate").Expr.At,
			"flat bar at most "+b.Show(length.Down(max(0, most-low), b.Marks))+" thick, or thicker lumber",
			"The recesses for the steel are %s deep in an upper plate of %s, and %s is the most: %s too deep.",
			b.Show(deep), b.Show(wood), b.Show(most), b.Show(deep-most))
		f.Also(lumber.Attr("thickness").Expr.At, "the lumber")
		b.LimitOf(f, "recess_share")
	}
}
