package screws

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/finding"
)

// missIf makes a miss of what is judged without a figure.
func missIf(wrong bool) geom.Length {
	if wrong {
		return 1
	}
	return 0
}

func headOf(b *rule.Build, g *grip) string { return b.Text(g.screw, "head") }

// aboutHead shows where a screw's head is said.
func aboutHead(f *finding.Finding, g *grip) *finding.Finding {
	if a := g.screw.Attr("head"); a != nil {
		return f.Also(a.Expr.At, "its head")
	}
	return f.Also(g.screw.Head, "its head is flat where nothing is said of it")
}

func wideHeadShows(b *rule.Build) {
	eachScrew(b, func(g *grip) geom.Length { return missIf(g.seen && headOf(b, g) == "wide") }, func(g *grip, failing, all []grip) *finding.Finding {
		if slices.ContainsFunc(all, func(other grip) bool { return other.meets != "" }) {
			return nil // they are wrong for more than that
		}
		atRear := g.attr == "wall_screws" || g.attr == "run_screws"
		if atRear { // the others keep theirs
			for i := range failing {
				failing[i].attr = "seen_screws"
			}
			all = failing
		}
		f := b.Findings.Notef("wide-head-shows", g.at, "The screws that %s have wide heads, and nothing hides them.", g.does)
		f.Mend = anotherHead(b, all, all[0].attr+" with a trim head", "trim", "flat")
		if atRear {
			f.Mend += " in the run"
		}
		return aboutHead(f, g)
	})
}

func wideHeadInTheWay(b *rule.Build) {
	eachScrew(b, func(g *grip) geom.Length { return missIf(g.meets != "" && headOf(b, g) == "wide") }, func(g *grip, _, all []grip) *finding.Finding {
		return aboutHead(b.Findings.Warnf("wide-head-in-the-way", g.at, anotherHead(b, all, all[0].attr+" with a flat head", "flat"),
			"The screws that %s have wide heads, which stay on the surface, and %s.", g.does, g.meets), g)
	})
}

func headPullsThrough(b *rule.Build) {
	least := func(g *grip) geom.Length { return b.FieldLength(b.Limits, "under_head", headOf(b, g)) }
	eachScrew(b, func(g *grip) geom.Length {
		if g.passes[0].kind != "panel" {
			return 0
		}
		return least(g) - underHead(g)
	}, func(g *grip, failing, _ []grip) *finding.Finding {
		f := b.Findings.Warnf("head-pulls-through", g.at, anotherHead(b, failing, "screws with a wide head, or a thicker board", "wide", "flat"),
			"The screws that %s have %s heads, and %s under them is %s thick: such a head takes %s, %s more.",
			g.does, headOf(b, g), g.passes[0].what, b.Show(underHead(g)), b.Show(least(g)), b.Show(least(g)-underHead(g)))
		b.LimitOf(f, "under_head")
		return aboutHead(f, g)
	})
}

// underHead is how thick the boards are that lie on one another under the head.
func underHead(g *grip) (thick geom.Length) {
	for _, l := range g.passes {
		if l.kind != "panel" {
			break
		}
		thick += l.thick
	}
	return thick
}

func jointScrewShows(b *rule.Build) {
	eachScrew(b, func(g *grip) geom.Length {
		return missIf(g.attr == "joint_screws" && g.seen && headOf(b, g) == "flat")
	}, func(g *grip, _, all []grip) *finding.Finding {
		f := b.Findings.Notef("joint-screw-shows", g.at, "The screws that %s show: no front hides them.", g.does)
		f.Mend = anotherHead(b, all, "joint_screws with a trim head, or a door on one of the two", "trim")
		return aboutHead(f, g)
	})
}
