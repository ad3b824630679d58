package rule

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/values"
	"barwright/lang/finding"
	"barwright/lang/source"
)

var screws = []Rule{
	{"screw-comes-through", screwComesThrough},
	{"screw-near-face", screwNearFace},
	{"screw-too-short", screwTooShort},
	{"wide-head-shows", wideHeadShows},
	{"wide-head-in-the-way", wideHeadInTheWay},
	{"head-pulls-through", headPullsThrough},
	{"joint-screw-shows", jointScrewShows},
	{"joint-screw-in-bore", jointScrewInBore},
}

// lengthOf is how long the screw of a grip is.
func (b *Build) lengthOf(g *grip) geom.Length { return b.Length(g.screw, "length") }

// enters is how deep it goes into what holds it.
func (b *Build) enters(g *grip) geom.Length { return b.lengthOf(g) - g.before() }

// behindTip is what stays of what holds it behind its tip, negative where that comes
// out; more than anything where what holds it is deeper than any screw.
func (b *Build) behindTip(g *grip) geom.Length {
	if g.holds.thick == 0 {
		return math.MaxInt64
	}
	return g.holds.thick - b.enters(g)
}

// needs is how deep a screw of a diameter has to go into what holds it.
func (b *Build) needs(g *grip, diameter geom.Length) geom.Length {
	if g.bite == "plug" {
		return b.FieldLength(b.Limits, "bite", g.bite)
	}
	const most = 1e12 // 1000 m, as for any length
	return geom.Length(math.Round(min(float64(diameter)*b.diameters(g), most)))
}

// diameters is how many of its own a screw has to go in.
func (b *Build) diameters(g *grip) float64 {
	return values.NumberOf(b.Field(b.Limits, "bite", g.bite))
}

// eachScrew looks at what each place of the text names a screw for. Where joints
// there miss a limit, it has said what is wrong with the one that misses by most, and
// counts the others; nothing where say gives nothing.
func (b *Build) eachScrew(misses func(*grip) geom.Length, say func(worst *grip, failing, all []grip) *finding.Finding) {
	index := map[source.Range]int{} // lookup only
	var places [][]grip
	for _, g := range b.grips() {
		i, known := index[g.at]
		if !known {
			i = len(places)
			index[g.at] = i
			places = append(places, nil)
		}
		places[i] = append(places[i], g)
	}
	for _, all := range places {
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
		f := say(&failing[worst], failing, all)
		switch n := len(failing) - 1; {
		case f == nil || n == 0:
		case n == 1:
			f.Text += " So it is in another joint."
		default:
			f.Text += " So it is in " + strconv.Itoa(n) + " other joints."
		}
	}
}

func screwComesThrough(b *Build) {
	b.eachScrew(func(g *grip) geom.Length { return max(1-b.behindTip(g), 0) }, func(g *grip, _, all []grip) *finding.Finding {
		out := "comes out by " + b.Show(-b.behindTip(g))
		if b.behindTip(g) == 0 {
			out = "ends in the far face"
		}
		return b.tooLong("screw-comes-through", g, all, "The tip "+out+".")
	})
}

func screwNearFace(b *Build) {
	off := b.Length(b.Limits, "stand_off")
	b.eachScrew(func(g *grip) geom.Length {
		if b.behindTip(g) <= 0 {
			return 0
		}
		return off - b.behindTip(g)
	}, func(g *grip, _, all []grip) *finding.Finding {
		f := b.tooLong("screw-near-face", g, all, "The tip stops "+b.Show(b.behindTip(g))+" before the far face: "+b.Show(off-b.behindTip(g))+
			" nearer than the "+b.Show(off)+" that are to be left.")
		b.limitOf(f, "stand_off")
		return f
	})
}

// tooLong tells what a screw goes into, and then what is wrong.
func (b *Build) tooLong(slug string, g *grip, all []grip, wrong string) *finding.Finding {
	whole := append(slices.Clone(g.passes), g.holds)
	return b.Findings.Warnf(slug, g.at, b.anotherLength(all), "%s go through %s. %s", b.screwsOf(g), b.inWords(whole), wrong).
		Also(g.screw.Attr("length").Expr.At, "its length")
}

func screwTooShort(b *Build) {
	short := func(g *grip) geom.Length {
		return b.needs(g, b.Length(g.screw, "diameter")) - b.enters(g)
	}
	b.eachScrew(short, func(g *grip, _, all []grip) *finding.Finding {
		enters, least := "nothing", b.Show(b.needs(g, b.Length(g.screw, "diameter")))
		if b.enters(g) > 0 {
			enters = b.Show(b.enters(g))
		}
		if g.bite != "plug" {
			least = strconv.FormatFloat(b.diameters(g), 'f', -1, 64) + " diameters, " + least + ","
		}
		f := b.Findings.Warnf("screw-too-short", g.at, b.anotherLength(all), "%s pass %s: %s is left for %s. It takes %s to hold: they are %s too short.",
			b.screwsOf(g), b.inWords(g.passes), enters, g.holds.what, least, b.Show(short(g))).
			Also(g.screw.Attr("length").Expr.At, "its length")
		b.limitOf(f, "bite")
		return f
	})
}

// screwsOf begins a sentence with what a screw is for and how long it is.
func (b *Build) screwsOf(g *grip) string {
	return "The screws that " + g.does + " are " + b.Show(b.lengthOf(g)) + " long and"
}

// inWords lists layers with their thicknesses.
func (b *Build) inWords(layers []layer) string {
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
