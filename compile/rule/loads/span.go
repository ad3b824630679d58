package loads

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// stretch is a part of a bar top's overhang that has no steel under it.
type stretch struct {
	words   string
	between bool // two supports; else past the last one
}

// widest is the stretch of a bar top that exceeds its limit most, with its span and
// that limit; nil where there are no supports. A cantilever counts twice.
func (t *bar) widest(b *rule.Build) (span geom.Length, where *stretch, most geom.Length) {
	last := len(t.plates) - 1
	if last < 0 || t.overhang() <= 0 || unpublished(b, t.slab) {
		return 0, nil, 0
	}
	for i := range t.plates[:last] {
		if clear := t.plates[i+1].Steel.U.Lo - t.plates[i].Steel.U.Hi; clear > span {
			span, where = clear, &stretch{fmt.Sprintf("between supports %d and %d", i+1, i+2), true}
		}
	}
	for i, end := range []geom.Length{t.plates[0].Steel.U.Lo - t.top.Box.U.Lo, t.top.Box.U.Hi - t.plates[last].Steel.U.Hi} {
		if 2*end > span {
			span, where = 2*end, &stretch{[...]string{"left of the first support", "right of the last support"}[i], false}
		}
	}
	return span, where, b.FieldLength(b.Limits, "bar_span", classOf(b, t.slab))
}

// barTopSpansTooFar judges what of a bar top's overhang has no steel under it,
// along the wall: as a span between two plates, and as a cantilever, which counts
// twice, past the last one.
func barTopSpansTooFar(b *rule.Build) {
	for _, t := range bars(b) {
		span, where, most := t.widest(b)
		if where == nil || span <= most {
			continue
		}
		have, may := span, most
		if !where.between {
			have, may = span/2, most/2
		}
		f := b.Findings.Warnf("bar-top-spans-too-far", t.supports.Said("at", "end", "count"), moreSupports(b, &t, most),
			"Bar top %s spans %s %s, and %s spans %s there at most: %s too far.",
			t.top.Name, b.Show(have), where.words, stuff(b, t.slab), b.Show(may), b.Show(have-may))
		f.Also(t.slab.Head, "the slab")
		b.LimitOf(f, "bar_span")
	}
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
	mend := fmt.Sprintf("count = %d", n)
	if bare := b.FieldLength(b.Limits, "bare_overhang", classOf(b, t.slab)); f.Lo-slab.Lo > bare || slab.Hi-f.Hi > bare {
		mend += ", and at most " + b.Show(bare) + " of overhang at the ends"
	}
	return mend
}

// counterSpansTooFar judges what of a stone counter has no box under it: over bays,
// one beside another.
func counterSpansTooFar(b *rule.Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		block := b.Block(s.Key())
		slab := b.Ref(block, "slab")
		if s.Kind != "counter" || b.Text(slab, "material") == "wood" || unpublished(b, slab) {
			continue
		}
		span, bay := widestBay(b, b.Ref(block, "over").Name)
		most := b.FieldLength(b.Limits, "bar_span", classOf(b, slab))
		if span <= most {
			continue
		}
		f := b.Findings.Warnf("counter-spans-too-far", slab.Attr("thickness").Expr.At, counterMend(b, slab, span),
			"%s spans %s over bay %s with nothing under it, and %s spans %s at most: %s too far.",
			finding.Capital(s.Words()), b.Show(span), bay, stuff(b, slab), b.Show(most), b.Show(span-most))
		f.Also(b.Block("bay."+bay).Head, "the bay")
		b.LimitOf(f, "bar_span")
	}
}

// counterMend is thicker stone, where that spans so far.
func counterMend(b *rule.Build, slab *lang.Block, span geom.Length) string {
	if classOf(b, slab) == "thin" && span <= b.FieldLength(b.Limits, "bar_span", "thick") {
		return "thickness = " + fmt.Sprintf("%q", b.Show(length.Up(thickStone, b.Marks))) + ", sold as 3 cm; or a narrower bay"
	}
	return "a narrower bay, or a cabinet between two"
}

// widestBay is the clear width of the widest bay of a run between what carries a
// counter there, neighbours taken together, and the first of them.
func widestBay(b *rule.Build, run string) (widest geom.Length, name string) {
	for i := range b.Runs {
		if b.Runs[i].Name != run {
			continue
		}
		var lo geom.Length
		first := ""
		for _, box := range b.Runs[i].Boxes {
			if box.Kind != model.Bay {
				first = ""
				continue
			}
			if first == "" {
				lo, first = box.Hull.U.Lo, box.Name
			}
			if clear := box.Hull.U.Hi - lo; clear > widest {
				widest, name = clear, first
			}
		}
	}
	return widest, name
}
