// Package screws judges the screw that the text names for each joint: its length and
// its head (SPEC.md 11.6).
package screws

import (
	"math"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "screw-comes-through", Look: screwComesThrough},
	{Slug: "screw-near-face", Look: screwNearFace},
	{Slug: "screw-too-short", Look: screwTooShort},
	{Slug: "screw-deep-in-stud", Look: screwDeepInStud},
	{Slug: "wide-head-shows", Look: wideHeadShows},
	{Slug: "wide-head-in-the-way", Look: wideHeadInTheWay},
	{Slug: "head-pulls-through", Look: headPullsThrough},
	{Slug: "joint-screw-shows", Look: jointScrewShows},
	{Slug: "joint-screw-in-bore", Look: jointScrewInBore},
}

// lengthOf is how long the screw of a grip is.
func lengthOf(b *rule.Build, g *grip) geom.Length { return b.Length(g.screw, "length") }

// entersBy is how deep it goes into what holds it.
func entersBy(b *rule.Build, g *grip) geom.Length { return lengthOf(b, g) - g.before() }

// behindTip is what stays of what holds it behind its tip, negative where that comes
// out; more than anything where what holds it is deeper than any screw.
func behindTip(b *rule.Build, g *grip) geom.Length {
	if g.holds.thick == 0 {
		return math.MaxInt64
	}
	return g.holds.thick - entersBy(b, g)
}

// needs is how deep a screw of a diameter has to go into what holds it.
func needs(b *rule.Build, g *grip, diameter geom.Length) geom.Length {
	if g.bite == "plug" {
		return b.FieldLength(b.Limits, "bite", g.bite)
	}
	const most = 1e12 // 1000 m, as for any length
	return geom.Length(math.Round(min(float64(diameter)*diameters(b, g), most)))
}

// diameters is how many of its own a screw has to go in.
func diameters(b *rule.Build, g *grip) float64 {
	return b.FieldNumber(b.Limits, "bite", g.bite)
}

// places are the grips of a build, gathered by the place of the text that names their
// screw.
type places [][]grip

func placesOf(b *rule.Build) places {
	index := map[source.Range]int{} // lookup only
	var out places
	for _, g := range gripsOf(b) {
		i, known := index[g.at]
		if !known {
			i = len(out)
			index[g.at] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], g)
	}
	return out
}

// eachScrew looks at what each place of the text names a screw for. Where joints
// there miss a limit, it has said what is wrong with the one that misses by most, and
// counts the others; nothing where say gives nothing.
func eachScrew(b *rule.Build, misses func(*grip) geom.Length, say func(worst *grip, failing, all []grip) *finding.Finding) {
	for _, all := range rule.Once(b, placesOf) {
		var failing []grip
		worst, by := 0, geom.Length(0)
		for i := range all {
			if m := misses(&all[i]); m > 0 {
				if m > by {
					worst, by = len(failing), m
				}
				failing = append(failing, all[i])
			}
		}
		if len(failing) == 0 {
			continue
		}
		if f := say(&failing[worst], failing, all); f != nil {
			f.Text += finding.Others(len(failing)-1, " The same is true in another place.", " The same is true in %d other places.")
		}
	}
}

func screwComesThrough(b *rule.Build) {
	eachScrew(b, func(g *grip) geom.Length { return max(1-behindTip(b, g), 0) }, func(g *grip, _, all []grip) *finding.Finding {
		out := "comes out by " + b.Show(-behindTip(b, g))
		if behindTip(b, g) == 0 {
			out = "ends in the far face"
		}
		return tooLong(b, "screw-comes-through", g, all, "The tip "+out+".")
	})
}

func screwNearFace(b *rule.Build) {
	off := b.Length(b.Limits, "stand_off")
	eachScrew(b, func(g *grip) geom.Length {
		if behindTip(b, g) <= 0 {
			return 0
		}
		return off - behindTip(b, g)
	}, func(g *grip, _, all []grip) *finding.Finding {
		f := tooLong(b, "screw-near-face", g, all, "The tip stops "+b.Show(behindTip(b, g))+" before the far face: "+b.Show(off-behindTip(b, g))+
			" nearer than the "+b.Show(off)+" that are to be left.")
		b.LimitOf(f, "stand_off")
		return f
	})
}

// tooLong tells what a screw goes into, and then what is wrong.
func tooLong(b *rule.Build, slug string, g *grip, all []grip, wrong string) *finding.Finding {
	whole := append(slices.Clone(g.passes), g.holds)
	return b.Findings.Warnf(slug, g.at, anotherLength(b, all), "%s go through %s. %s", screwsOf(b, g), inWords(b, whole), wrong).
		Also(g.screw.Attr("length").Expr.At, "its length")
}

func screwTooShort(b *rule.Build) {
	short := func(g *grip) geom.Length {
		return needs(b, g, b.Length(g.screw, "diameter")) - entersBy(b, g)
	}
	eachScrew(b, short, func(g *grip, _, all []grip) *finding.Finding {
		enters, least := "nothing", b.Show(needs(b, g, b.Length(g.screw, "diameter")))
		if entersBy(b, g) > 0 {
			enters = b.Show(entersBy(b, g))
		}
		if g.bite != "plug" {
			least = strconv.FormatFloat(diameters(b, g), 'f', -1, 64) + " diameters, " + least + ","
		}
		f := b.Findings.Warnf("screw-too-short", g.at, anotherLength(b, all), "%s pass %s: %s is left for %s. It takes %s to hold: they are %s too short.",
			screwsOf(b, g), inWords(b, g.passes), enters, g.holds.what, least, b.Show(short(g))).
			Also(g.screw.Attr("length").Expr.At, "its length")
		b.LimitOf(f, "bite")
		return f
	})
}

// screwDeepInStud looks for screws into studs of the room that go where cables may lie.
func screwDeepInStud(b *rule.Build) {
	most := b.Length(b.Limits, "stud_depth")
	eachScrew(b, func(g *grip) geom.Length {
		if g.holds != aStud {
			return 0
		}
		return entersBy(b, g) - most
	}, func(g *grip, _, all []grip) *finding.Finding {
		f := b.Findings.Notef("screw-deep-in-stud", g.at, "%s pass %s and go %s into a stud: %s deeper than the %s that cables keep from its face, or are plated.",
			screwsOf(b, g), inWords(b, g.passes), b.Show(entersBy(b, g)), b.Show(entersBy(b, g)-most), b.Show(most))
		f.Mend = anotherLength(b, all)
		f.Also(g.screw.Attr("length").Expr.At, "its length")
		b.LimitOf(f, "stud_depth")
		return f
	})
}

// screwsOf begins a sentence with what a screw is for and how long it is.
func screwsOf(b *rule.Build, g *grip) string {
	return "The screws that " + g.does + " are " + b.Show(lengthOf(b, g)) + " long and"
}

// inWords lists layers with their thicknesses.
func inWords(b *rule.Build, layers []layer) string {
	words := make([]string, len(layers))
	for i, l := range layers {
		words[i] = l.what + " (" + b.Show(l.thick) + ")"
	}
	return finding.Listed(words)
}
