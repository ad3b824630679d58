package ngc

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
)

// likeWorks are works of a routing that differ in nothing but where they are.
type likeWorks struct {
	count         int
	kind, name    string
	wide, long    Length // of a round one both are its diameter
	round         bool
	depth         Length // 0: through
	levels, tabs  int
	cleared, drew bool
}

// gathered lists the works of a routing in their order, those that are alike together.
func gathered(r *model.Routing) []likeWorks {
	var out []likeWorks
	known := map[likeWorks]int{} // index in out; lookup only
	for i := range r.Works {
		w := &r.Works[i]
		box := w.Shape.Bounds()
		_, _, round := w.Shape.Circle()
		g := likeWorks{
			kind: w.Kind, name: w.Name, wide: box.X.Size(), long: box.Y.Size(), round: round,
			depth: w.Depth, levels: len(w.Levels), tabs: len(w.Tabs), cleared: !w.Freed, drew: drilled(r, w),
		}
		at, ok := known[g]
		if !ok {
			at = len(out)
			known[g], out = at, append(out, g)
		}
		out[at].count++
	}
	return out
}

// drilled reports whether a work is made straight down: the bit is as wide.
func drilled(r *model.Routing, w *model.Work) bool {
	_, radius, round := w.Shape.Circle()
	return round && 2*radius <= r.Tool.Diameter+1
}

// text says what is cut and how; show writes a length.
func (g *likeWorks) text(show func(Length) string) string {
	what := g.name
	switch {
	case g.kind == "opening":
		what = "opening " + g.name
	case g.kind == "pin":
		what = "hole for a " + g.name
	}
	if g.count > 1 {
		what = fmt.Sprintf("%d times: %s", g.count, what)
	}
	size := fmt.Sprintf("%s in X, %s in Y", show(g.wide), show(g.long))
	if g.round {
		size = show(g.wide) + " wide"
	}
	depth := "through"
	if g.depth > 0 {
		depth = show(g.depth) + " deep"
	}
	how := finding.Counted(g.levels, "level")
	switch {
	case g.drew:
		how = "straight down"
	case g.round && g.levels == 1 && g.cleared:
		how = "round a helix"
	}
	if g.tabs > 0 {
		how += ", " + finding.Counted(g.tabs, "tab")
	}
	return fmt.Sprintf("%s, %s, %s; %s", what, size, depth, how)
}

// sharpest returns the least radius of the inside corners of openings, grooves and notches;
// 0 where there are none.
func sharpest(r *model.Routing) Length {
	least := Length(0)
	for i := range r.Works {
		w := &r.Works[i]
		sense := 1.0
		if w.Kind == "outline" {
			sense = -1
		}
		if _, _, round := w.Shape.Circle(); round {
			continue
		}
		for k, v := range w.Shape {
			if v.Bulge*sense <= 0 {
				continue
			}
			arc := geom.ArcOf(v, w.Shape[(k+1)%len(w.Shape)].Point)
			if radius := Length(math.Round(arc.R)); least == 0 || radius < least {
				least = radius
			}
		}
	}
	return least
}
