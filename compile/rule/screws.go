package rule

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/lang"
	"barwright/lang/length"
)

var screws = []Rule{
	{"screw-comes-through", screwComesThrough},
	{"screw-near-face", screwNearFace},
	{"screw-too-short", screwTooShort},
}

// screwed is a grip and the screw in it.
type screwed struct {
	grip
	length geom.Length
	enters geom.Length // what holds it, to its tip
}

// left is what stays of what holds the screw behind its tip, negative where it comes
// out; never little where that is deeper than any screw.
func (s *screwed) left() geom.Length {
	if s.holds.thick == 0 {
		return math.MaxInt64
	}
	return s.holds.thick - s.enters
}

// perName gathers the grips that one attribute names the screw for.
func (b *Build) perName() [][]screwed {
	at := map[*lang.Attr]int{} // lookup only
	var out [][]screwed
	for _, g := range b.grips() {
		name := g.block.Attr(g.attr)
		if _, known := at[name]; !known {
			at[name] = len(out)
			out = append(out, nil)
		}
		l := b.Length(g.screw(b), "length")
		out[at[name]] = append(out[at[name]], screwed{g, l, l - g.before()})
	}
	return out
}

// worstGrip tells of the joint of one attribute that misses by most, and counts the others.
func (b *Build) worstGrip(slug string, misses func(*screwed) geom.Length, say func(s *screwed, by geom.Length) string) {
	for _, all := range b.perName() {
		var most *screwed
		var by geom.Length
		failing := 0
		for i := range all {
			m := misses(&all[i])
			if m <= 0 {
				continue
			}
			failing++
			if m > by {
				most, by = &all[i], m
			}
		}
		if most == nil {
			continue
		}
		text := say(most, by)
		switch failing - 1 {
		case 0:
		case 1:
			text += " So it is in another joint."
		default:
			text += " So it is in " + strconv.Itoa(failing-1) + " other joints."
		}
		f := b.Findings.Warnf(slug, most.block.Attr(most.attr).Expr.At, b.longEnough(all), "%s", text).
			Also(most.screw(b).Attr("length").Expr.At, "its length")
		if slug == "screw-near-face" {
			b.limitOf(f, "stand_off")
		}
		if slug == "screw-too-short" {
			b.limitOf(f, "bite")
		}
	}
}

func screwComesThrough(b *Build) {
	b.worstGrip("screw-comes-through", func(s *screwed) geom.Length {
		if s.left() > 0 {
			return 0
		}
		return 1 - s.left() // flush with the far face counts
	}, func(s *screwed, by geom.Length) string {
		way := "ends in the far face"
		if by > 1 {
			way = "comes out " + b.Show(by-1)
		}
		return b.screwsPass(s) + " " + b.layers(append(slices.Clone(s.passes), s.holds)) + ": the tip " + way + "."
	})
}

func screwNearFace(b *Build) {
	off := b.Length(b.Limits, "stand_off")
	b.worstGrip("screw-near-face", func(s *screwed) geom.Length {
		if s.left() <= 0 {
			return 0
		}
		return off - s.left()
	}, func(s *screwed, by geom.Length) string {
		return b.screwsPass(s) + " " + b.layers(append(slices.Clone(s.passes), s.holds)) + ": the tip stops " + b.Show(s.left()) +
			" before the far face, where " + b.Show(off) + " is to be left."
	})
}

func screwTooShort(b *Build) {
	need := func(s *screwed) geom.Length { return s.need(b, b.Length(s.screw(b), "diameter")) }
	b.worstGrip("screw-too-short", func(s *screwed) geom.Length { return need(s) - s.enters }, func(s *screwed, by geom.Length) string {
		deep := "that leaves " + b.Show(s.enters) + " for " + s.holds.what
		if s.enters <= 0 {
			deep = "it does not reach " + s.holds.what
		}
		least := b.Show(need(s)) + ", "
		if s.bite == "plug" {
			least += "as a plug"
		} else {
			least += strconv.FormatFloat(b.diameters(s.bite), 'f', -1, 64) + " diameters"
		}
		return b.screwsPass(s) + " " + b.layers(s.passes) + ": " + deep + ", which takes " + least + ", to hold. It is " + b.Show(by) + " too short."
	})
}

// screwsPass begins a sentence: what the screw is for, its length and that it passes.
func (b *Build) screwsPass(s *screwed) string {
	return "The screws that " + s.does + " are " + b.Show(s.length) + " long and pass"
}

// layers lists them with their thicknesses.
func (b *Build) layers(layers []layer) string {
	words := make([]string, len(layers))
	for i, l := range layers {
		words[i] = l.what + " (" + b.Show(l.thick) + ")"
	}
	last := len(words) - 1
	if last == 0 {
		return words[0]
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// lengthsFor are those of a screw of a diameter that serve all grips: from, and to where
// anything ends the wood.
func (b *Build) lengthsFor(all []screwed, diameter geom.Length) (from, to geom.Length) {
	to = math.MaxInt64
	for i := range all {
		g := &all[i]
		from = max(from, g.before()+g.need(b, diameter))
		if g.holds.thick > 0 {
			to = min(to, g.before()+g.holds.thick-b.Length(b.Limits, "stand_off"))
		}
	}
	return from, to
}

// longEnough is the mend: the screw of the stock that serves all grips and differs
// least, else what one would have to be, in steps in that screws are sold.
func (b *Build) longEnough(all []screwed) string {
	attr, now := all[0].attr, all[0].screw(b)
	thick, long := b.Length(now, "diameter"), all[0].length
	var best *lang.Block
	differs := func(s *lang.Block) (geom.Length, geom.Length) {
		return distance(b.Length(s, "diameter"), thick), distance(b.Length(s, "length"), long)
	}
	for _, s := range b.Source.Top("screw") {
		from, to := b.lengthsFor(all, b.Length(s, "diameter"))
		if l := b.Length(s, "length"); l < from || l > to || b.Text(s, "head") != b.Text(now, "head") {
			continue
		}
		if best == nil {
			best = s
			continue
		}
		d, l := differs(s)
		d0, l0 := differs(best)
		if cmp.Or(cmp.Compare(d, d0), cmp.Compare(l, l0)) < 0 {
			best = s
		}
	}
	if best != nil {
		return attr + " = " + best.Key()
	}
	step := length.Millimetre
	if b.Source.Unit.Imperial() {
		step = length.Inch / 16
	}
	from, to := b.lengthsFor(all, thick)
	from = (from + step - 1) / step * step
	switch {
	case to == math.MaxInt64:
		return "a screw of " + b.Show(from) + " or more"
	case to/step*step < from:
		return "a thinner screw, or more wood for it"
	}
	return "a screw of " + b.Show(from) + " to " + b.Show(to/step*step)
}

func distance(a, b geom.Length) geom.Length { return max(a-b, b-a) }
