package loads

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// thinStone and thickStone are the thicknesses from which stone passes as 2 cm and
// as 3 cm: what is sold as these is a little less.
const (
	thinStone  = 11 * length.Inch / 16
	thickStone = 9 * length.Inch / 8
)

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

// unpublished reports whether a slab is of stone thinner than any of which it is
// published what it carries.
func unpublished(b *rule.Build, slab *lang.Block) bool {
	return b.Text(slab, "material") != "wood" && b.Length(slab, "thickness") < thinStone
}

// thinStoneStandsOut notes stone that is too thin to be judged, where it carries
// itself.
func thinStoneStandsOut(b *rule.Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		block := b.Block(s.Key())
		slab := b.Ref(block, "slab")
		a := block.Attr("overhang")
		if a == nil || !unpublished(b, slab) {
			continue
		}
		f := b.Findings.Notef("stone-thin", a.Expr.At,
			"%s is %s, and stands out beyond what carries it: what stone under 2 cm carries is not published, so it is not judged. Who makes it decides.",
			finding.Capital(s.Words()), stuff(b, slab))
		f.Mend = "a board or steel under all of it, or a slab of 2 cm"
		f.Also(slab.Attr("thickness").Expr.At, "its thickness")
	}
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
	past := map[string]bool{} // bar tops that span too far past their last support; lookup only
	for _, t := range bars(b) {
		span, where, most := t.widest(b)
		past[t.top.Name] = span > most && where != nil && !where.between
	}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		block := b.Block(s.Key())
		slab := b.Ref(block, "slab")
		if (classOf(b, slab) == "wood") != wood || block.Attr("overhang") == nil || unpublished(b, slab) {
			continue
		}
		var over []bare
		for _, side := range sidesOf(b, block, s) {
			if past[s.Name] && (side.name == "left" || side.name == "right") {
				continue // said as a span past the last support
			}
			side.most = b.FieldLength(b.Limits, "bare_overhang", classOf(b, slab))
			if !wood {
				side = side.ofStone()
			}
			if side.out > side.most {
				over = append(over, side)
			}
		}
		if len(over) == 0 {
			continue
		}
		slices.SortStableFunc(over, func(x, y bare) int { return cmp.Compare(y.out-y.most, x.out-x.most) })
		o, more, mends := over[0], "", []string{over[0].mend(b)}
		for _, side := range over[1:] {
			more += fmt.Sprintf(" So it is at the %s: %s beyond %s, %s too far.", side.name, b.Show(side.out), side.past, b.Show(side.out-side.most))
			mends = append(mends, side.mend(b))
		}
		why := stuff(b, slab) + " may stand out "
		if o.third {
			why = "stone may stand out a third of its " + b.Show(o.across) + ", "
		}
		f := b.Findings.Warnf(slug, block.Attr("overhang").Expr.At, strings.Join(mends, "; and "),
			"%s stands out %s beyond %s with nothing under it, and %s%s at most: %s too far.%s",
			finding.Capital(s.Words()), b.Show(o.out), o.past, why, b.Show(o.most), b.Show(o.out-o.most), more)
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
		supports := b.Ref(block, "over").Inner("supports")
		if len(supports) == 0 && !b.Flag(block, "held") {
			return out[1:] // how far it stands out over the room is weighed: barTopLoose
		}
		for _, supports := range supports {
			room := &out[0]
			room.reach, room.past = b.Length(supports, "reach"), "the steel"
			room.out -= room.reach
		}
	}
	return out
}

// stoneScrewed tells of screws that are to hold in stone.
func stoneScrewed(b *rule.Build) {
	for _, t := range bars(b) {
		if len(t.plates) == 0 || b.Text(t.slab, "material") == "wood" || b.Ref(t.supports, "top_screws") == nil {
			continue
		}
		b.Findings.Warnf("stone-screwed", t.supports.Attr("top_screws").Expr.At, "no top_screws, and held = true in bar_top \""+t.top.Name+"\": adhesive, or inserts that who makes the slab sets",
			"The screws that go up through the supports would hold in bar top %s, which is %s: wood screws do not.",
			t.top.Name, b.Text(t.slab, "material")).
			Also(t.slab.Head, "the slab")
	}
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

// recess is how deep those for the steel of a bar are.
func (t *bar) recess() geom.Length { return t.wall.Framing.Z.Hi - t.plates[0].Steel.Z.Lo }

// mostRecess is how deep they may be.
func (t *bar) mostRecess(b *rule.Build) geom.Length {
	return ofMM(b.Length(b.Ref(t.knee, "lumber"), "thickness").MM() * b.Number(b.Limits, "recess_share"))
}

// shallower is how recesses that are deep come to be no deeper than most: by what they
// are deeper than the steel, where that is more than usual, and by thinner steel.
func (t *bar) shallower(b *rule.Build, deep, most geom.Length) string {
	low, usual := b.Length(b.Ref(t.knee, "router"), "low"), b.SchemaLength("router", "low")
	thinner := func(low geom.Length) string {
		return "flat bar at most " + b.Show(length.Down(max(0, most-low), b.Marks)) + " thick, or thicker lumber"
	}
	if low <= usual {
		return thinner(low)
	}
	mend := fmt.Sprintf("low = %q in the router", b.Show(usual))
	if deep-low+usual > most {
		mend += ", and " + thinner(usual)
	}
	return mend
}

func recessTakesHalf(b *rule.Build) {
	for _, t := range bars(b) {
		if len(t.plates) == 0 {
			continue
		}
		lumber := b.Ref(t.knee, "lumber")
		wood := b.Length(lumber, "thickness")
		deep, most := t.recess(), t.mostRecess(b)
		if deep <= most {
			continue
		}
		f := b.Findings.Warnf("recess-takes-half", t.supports.Attr("plate").Expr.At, t.shallower(b, deep, most),
			"The recesses for the steel are %s deep in an upper plate of %s, and %s is the most: %s too deep.",
			b.Show(deep), b.Show(wood), b.Show(most), b.Show(deep-most))
		f.Also(lumber.Attr("thickness").Expr.At, "the lumber")
		b.LimitOf(f, "recess_share")
	}
}
