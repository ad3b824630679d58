package loads

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/rule"
)

// barTopLoose tells of bar tops that nothing holds down: on framing alone they are
// weighed about its edge on the room's side, on steel it is only noted.
func barTopLoose(b *rule.Build) {
	var weights map[string]weight
	for _, t := range bars(b) {
		t.pieceOnFraming(b)
		switch {
		case b.Flag(t.block, "held") || t.overhang() <= 0 || t.supports != nil && b.Ref(t.supports, "top_screws") != nil:
		case t.supports != nil:
			f := b.Findings.Notef("bar-top-loose", t.supports.Head,
				"Nothing is said to hold bar top %s down on its supports.", t.top.Name)
			f.Mend = "top_screws = screw.NAME; or held = true in bar_top \"" + t.top.Name + "\", where adhesive or inserts hold it"
			f.Also(t.block.Head, "the bar top")
		default:
			if weights == nil {
				weights = weightsOf(b)
			}
			t.weighBare(b, weights[t.block.Key()])
		}
	}
}

// weighBare holds what a bar top on framing alone is tipped by to its own weight.
func (t *bar) weighBare(b *rule.Build, own weight) {
	face := t.wall.Framing.V.Lo
	beyond := face - t.top.Box.V.Mid()
	edge := b.FieldNumber(b.Limits, "bar_load", "edge")
	tips, holds := edge*t.overhang().MM(), max(0, own.about(face.MM()))
	if beyond <= 0 && tips <= holds*(1+1e-9) {
		return
	}
	weighs := "its own weight holds " + moment.show(b, holds)
	if own.unknown {
		weighs = "what it weighs is not stated"
	}
	text := fmt.Sprintf("%s on its edge tips bar top %s with %s, and %s: nothing is said to hold it down on knee wall %s.",
		force.show(b, edge), t.top.Name, moment.show(b, tips), weighs, t.wall.Name)
	if beyond > 0 {
		text = fmt.Sprintf("The middle of bar top %s lies %s beyond the framing of knee wall %s on the room's side, and nothing is said to hold it down: it falls off by its own weight.",
			t.top.Name, b.Show(beyond), t.wall.Name)
	}
	mend := "supports with top_screws under it"
	if t.overhang() <= b.FieldLength(b.Limits, "bare_overhang", classOf(b, t.slab)) {
		mend += "; or held = true, where screws from below or adhesive hold it"
	}
	f := b.Findings.Warnf("bar-top-loose", t.block.Attr("overhang").Expr.At, mend, "%s", text)
	f.Also(t.knee.Head, "the knee wall")
	if beyond <= 0 {
		b.LimitOf(f, "bar_load")
	}
}

// pieceOnFraming warns of the first piece of a top in pieces that lies on no steel,
// where others do.
func (t *bar) pieceOnFraming(b *rule.Build) {
	if b.Flag(t.block, "held") || t.overhang() <= 0 || len(t.plates) == 0 {
		return
	}
	ends := append(slices.Clone(t.top.Seams), t.top.Box.U.Hi)
	for i, from := range append([]geom.Length{t.top.Box.U.Lo}, t.top.Seams...) {
		piece := geom.Span{Lo: from, Hi: ends[i]}
		if slices.ContainsFunc(t.plates, func(p plate) bool { return p.Steel.U.Overlaps(piece) }) {
			continue
		}
		b.Findings.Warnf("bar-top-loose", t.block.Attr("seams").Expr.At, "seams that leave a support under each piece; or held = true, where screws from below or adhesive hold it",
			"The piece of bar top %s from %s to %s lies on no support: %s of it stand out over the room, and nothing is said to hold it down.",
			t.top.Name, b.Show(piece.Lo), b.Show(piece.Hi), b.Show(t.overhang())).
			Also(t.supports.Head, "the supports")
		return
	}
}
