// Package standing judges what stands in the room (SPEC.md 11.2): what is in one
// another or in a wall, what cannot open, and ways that are too narrow.
package standing

import (
	"math"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "solids-meet", Look: solidsMeet},
	{Slug: "through-wall", Look: throughWall},
	{Slug: "door-meets", Look: func(b *rule.Build) { leavesMeet(b, "door-meets") }},
	{Slug: "drawer-meets", Look: func(b *rule.Build) { leavesMeet(b, "drawer-meets") }},
	{Slug: "appliance-door-meets", Look: func(b *rule.Build) { leavesMeet(b, "appliance-door-meets") }},
	{Slug: "fronts-cross", Look: frontsCross},
	{Slug: "appliance-stands-out", Look: applianceStandsOut},
	{Slug: "aisle-narrow", Look: aisleNarrow},
	{Slug: "past-open", Look: pastOpen},
	{Slug: "way-in-narrow", Look: wayInNarrow},
}

// clash is one cause of a finding: two things, how far they are in one another or miss
// what is needed, and how many others the same cause has.
type clash struct {
	leaf   *leaf // whose way a is a piece of; nil where nothing moves
	a, b   *solid
	deep   float64 // nanometres
	others int
}

// clashes keeps of each cause the worst, in the order in which they are met.
type clashes[K comparable] struct {
	at   map[K]int // lookup only
	list []clash
}

func (c *clashes[K]) add(cause K, met clash) {
	if c.at == nil {
		c.at = map[K]int{}
	}
	i, ok := c.at[cause]
	if !ok {
		c.at[cause] = len(c.list)
		c.list = append(c.list, met)
		return
	}
	worst := &c.list[i]
	met.others = worst.others + 1
	if met.deep <= worst.deep {
		met.leaf, met.a, met.b, met.deep = worst.leaf, worst.a, worst.b, worst.deep
	}
	*worst = met
}

// more says how many others a cause has.
func (c *clash) more(what, of string) string {
	if c.others == 0 {
		return ""
	}
	return " So it is with " + finding.Counted(c.others, "other "+what) + of + "."
}

// solidsMeet compares what belongs to different runs: fronts with their handles, appliances,
// slabs, knee walls and what covers them, with one another and with boxes.
func solidsMeet(b *rule.Build) {
	g := groundOf(b)
	var met clashes[[2]int]
	for i := range g.solids {
		s := &g.solids[i]
		for _, j := range g.near(s) {
			o := &g.solids[j]
			if j >= i || !fits(s, o) {
				continue
			}
			if deep := s.into(o); deep > touching {
				met.add([2]int{o.run, s.run}, clash{a: s, b: o, deep: deep})
			}
		}
	}
	for i := range met.list {
		c := &met.list[i]
		b.Findings.Errorf("solids-meet", c.a.why.At, apart(b, c)+shutIn(b, g, c), "%s and %s overlap by %s.%s",
			finding.Capital(c.a.what), c.b.what, b.Show(up(b, c.deep)), c.more("pair", " of these two runs")).
			Also(c.b.why.At, "the other")
	}
}

// shutIn adds what is to become of a front in the corner that two solids stand in: that
// they are apart lets it in, but not open.
func shutIn(b *rule.Build, g *ground, c *clash) string {
	leaves := leavesOf(b)
	for i := range leaves {
		met := leaves[i].stopped(g)
		if met.leaf == nil || met.across() || min(met.leaf.run, met.b.run) != min(c.a.run, c.b.run) || max(met.leaf.run, met.b.run) != max(c.a.run, c.b.run) {
			continue
		}
		if _, end, most := met.besides(); most {
			return "; and " + blindAt(b, g, &met, end)
		}
	}
	return ""
}

// apart is the edit that parts two solids.
func apart(b *rule.Build, c *clash) string {
	if edit, ok := startClearOf(b, c.a, c.b, c.deep); ok {
		return edit
	}
	if edit, ok := startClearOf(b, c.b, c.a, c.deep); ok {
		return edit
	}
	return "move one of them by " + b.Show(up(b, c.deep)) + ", or make it so much smaller there"
}

// startClearOf is the edit that lets the run of a solid, along a wall, start behind
// another solid; ok is false where to move it so is not the least way.
func startClearOf(b *rule.Build, s, o *solid, deep float64) (edit string, ok bool) {
	if s.run == noRun || !b.Runs[s.run].Along {
		return "", false
	}
	run := &b.Runs[s.run]
	block, end := b.Block("run."+run.Name), model.Left
	sin, cos := s.turn.SinCos()
	lo, hi := s.plan.along(cos, sin)
	oLo, oHi := o.plan.along(cos, sin)
	by := oHi - lo
	if b.Text(block, "from") == model.Right.String() {
		by, end = hi-oLo, model.Right
	}
	start := up(b, float64(startOf(b, block, end))+by)
	return "start = " + b.Show(start) + " for run " + run.Name, by < deep+touching
}

// fits reports whether nobody else has compared two solids: those of one run are made
// for one another, and solve has refused boxes and end panels that meet and what stands out
// of a wall into anything but a handle.
func fits(s, o *solid) bool {
	switch {
	case s.run == o.run || s.wall != nil || o.wall != nil:
		return false
	case s.run == noRun:
		return o.kind == handleSolid
	case o.run == noRun:
		return s.kind == handleSolid
	}
	return !(s.footing() && o.footing())
}

// footing reports whether a solid is one of those that solve compares from run to run.
func (s *solid) footing() bool { return s.kind == hullSolid || s.kind == endSolid }

// throughWall looks for what reaches behind the face of a wall, by more than a mark: no
// wall is measured more closely.
func throughWall(b *rule.Build) {
	g := groundOf(b)
	var met, cut clashes[[2]int]
	for i := range g.solids {
		w := &g.solids[i]
		if w.wall == nil {
			continue
		}
		crossed := map[int]bool{} // runs; lookup only
		for _, j := range g.near(w) {
			if s := &g.solids[j]; s.run != noRun && s.into(w) > touching {
				crossed[s.run] = true
			}
		}
		if len(crossed) == 0 {
			continue
		}
		for j := range g.solids { // what is all behind it too
			if s := &g.solids[j]; crossed[s.run] {
				c := clash{a: s, b: w, deep: w.past(s)}
				switch at := [2]int{s.run, i}; {
				case c.deep <= float64(b.Marks) || leansIn(b, s, w.wall):
				case s.kind == slabSolid && !alongside(s, w):
					cut.add(at, c)
				default:
					met.add(at, c)
				}
			}
		}
	}
	for _, c := range met.list {
		b.Findings.Errorf("through-wall", c.a.why.At, awayFrom(b, &c), "%s would reach %s behind the face of %s.%s",
			finding.Capital(c.a.what), b.Show(exact(c.deep)), c.b.what, c.more("thing", " of the run")).Also(c.b.why.At, "the wall")
	}
	for _, c := range cut.list {
		if !slices.ContainsFunc(met.list, func(o clash) bool { return o.b == c.b && o.a.run == c.a.run }) {
			b.Findings.Warnf("through-wall", c.a.why.At, awayFrom(b, &c), "%s is to be cut to the wall: it would reach %s behind the face of %s.",
				finding.Capital(c.a.what), b.Show(exact(c.deep)), c.b.what).Also(c.b.why.At, "the wall")
		}
	}
}

// exact is nanometres that no tape shows.
func exact(nm float64) length.Length { return length.Length(math.Round(nm)) }

// leansIn reports whether a solid is a counter in a corner whose wall leans in over it:
// slab-in-corner judges that.
func leansIn(b *rule.Build, s *solid, w *model.Wall) bool {
	along := b.Ref(b.Block("run."+b.Runs[s.run].Name), "along")
	if along == nil || !strings.HasPrefix(s.of, "counter.") {
		return false
	}
	_, out := spans(b, s)
	if before := b.WallBefore(along); before != nil && before.Name == w.Name {
		return b.LeansBy(before, exact(out)) != 0
	}
	after := b.WallAfter(along)
	return after != nil && after.Name == w.Name && b.LeansBy(along, exact(out)) != 0
}

// alongside reports whether two solids run the same way, within 45 degrees.
func alongside(s, o *solid) bool {
	sin, cos := (s.turn - o.turn).SinCos()
	return math.Abs(cos) > math.Abs(sin)
}

// awayFrom is the edit that takes a run a way off a wall that it reaches into.
func awayFrom(b *rule.Build, c *clash) string {
	run := &b.Runs[c.a.run]
	block := b.Block("run." + run.Name)
	sin, cos := (c.a.turn - c.b.turn).SinCos()
	if alongside(c.a, c.b) {
		by := up(b, c.deep/math.Abs(cos))
		if run.Along {
			return "a carcass that is " + b.Show(by) + " less deep"
		}
		if (cos < 0) == (b.Text(block, "faces") == "left") {
			return "at = " + b.Show(b.Length(block, "at")+by)
		}
		return "at = " + b.Show(b.Length(block, "at")-by)
	}
	by, end := c.deep/math.Abs(sin), model.Left
	if sin < 0 {
		end = model.Right
	}
	if run.Along && b.Text(block, "from") == end.String() {
		return "start = " + b.Show(up(b, float64(startOf(b, block, end))+by))
	}
	return "make run " + run.Name + " " + b.Show(up(b, by)) + " shorter at its " + end.String() + " end"
}

// startOf is how far an end of a run along a wall stands from that end of the wall.
func startOf(b *rule.Build, run *lang.Block, end model.End) length.Length {
	wall := b.Ref(run, "along")
	from, to, _ := b.Stretch(run, wall)
	if end == model.Right {
		return b.Length(wall, "length") - to
	}
	return from
}
