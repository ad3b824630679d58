package standing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// applianceStandsOut compares each appliance with the fronts of its run.
func applianceStandsOut(b *rule.Build) {
	most := b.Length(b.Limits, "appliance_out")
	for i := range b.Runs {
		line := b.Runs[i].Foremost()
		for _, box := range b.Runs[i].Boxes {
			if out := box.Appliance.V.Hi - line; box.Kind == model.Bay && out > most {
				f := b.Findings.Notef("appliance-stands-out", b.Block(box.Key()).Attr("appliance").Expr.At,
					"The appliance of bay %s stands %s out of the fronts of its run: %s more than %s.",
					box.Name, b.Show(out), b.Show(out-most), b.Show(most))
				b.LimitOf(f, "appliance_out")
			}
		}
	}
}

// clearance is the way before something.
type clearance struct {
	of, to *solid
	wide   float64
}

// twoSides are what an aisle lies between: two runs, or a run and a wall.
type twoSides struct {
	a, b int // runs, rising; noRun for a wall
	wall *model.Wall
}

// sidesOf are the sides of the aisle between a run and what is opposite.
func sidesOf(run int, opposite *solid) twoSides {
	return twoSides{min(run, opposite.run), max(run, opposite.run), opposite.wall}
}

// before is the least way from a place along a run, and how far out it is, to what
// faces the run there, if it is under a limit; to is nil otherwise.
func before(b *rule.Build, g *ground, of *solid, u geom.Span, out float64, limit length.Length) clearance {
	f, from := b.Runs[of.run].Frame, length.Length(math.Round(out))
	strip := solid{plan: rectangle(f, u, geom.Span{Lo: from, Hi: from + limit})}
	least := clearance{of: of, wide: float64(limit) - touching}
	for _, j := range g.near(&strip) {
		o := &g.solids[j]
		if o.run == of.run || o.kind == handleSolid || o.kind == stubSolid || !faces(of, o) {
			continue
		}
		if lo, _, ok := o.plan.within(f, u.Grow(-length.Millimetre)); ok && lo-out > -touching && lo-out < least.wide {
			least.to, least.wide = o, lo-out
		}
	}
	return least
}

// faces reports whether a solid has a side towards the front of another: what stands
// across it, at an end of the aisle, narrows no way along.
func faces(s, o *solid) bool {
	_, cos := (s.turn - o.turn).SinCos()
	return alongside(s, o) && (o.wall == nil || cos < 0)
}

// aislesOf lists for each two runs, and each run and wall, the narrowest way between what
// stands out furthest on either side.
func aislesOf(b *rule.Build) []clearance { return rule.Once(b, narrowestWays) }

func narrowestWays(b *rule.Build) []clearance {
	g := groundOf(b)
	limit := b.Length(b.Limits, "aisle")
	var out []clearance
	at := map[twoSides]int{} // lookup only
	for i := range g.solids {
		s := &g.solids[i]
		if s.run == noRun || s.kind == handleSolid || s.kind == framingSolid {
			continue
		}
		u, v := spans(b, s)
		c := before(b, g, s, u, v, limit)
		if c.to == nil {
			continue
		}
		two := sidesOf(s.run, c.to)
		if k, ok := at[two]; !ok {
			at[two] = len(out)
			out = append(out, c)
		} else if c.wide < out[k].wide {
			out[k] = c
		}
	}
	return out
}

// spans are the extent of a solid along its run, and how far out it reaches.
func spans(b *rule.Build, s *solid) (u geom.Span, out float64) {
	f := b.Runs[s.run].Frame
	sin, cos := f.Turn.SinCos()
	lo, hi := s.plan.along(cos, sin)
	origin := shape{{float64(f.Origin.X), float64(f.Origin.Y)}}
	zero, _ := origin.along(cos, sin)
	_, far := s.plan.along(-sin, cos)
	rear, _ := origin.along(-sin, cos)
	return geom.Span{Lo: length.Length(math.Round(lo - zero)), Hi: length.Length(math.Round(hi - zero))}, far - rear
}

func aisleNarrow(b *rule.Build) {
	limit, aisles := b.Length(b.Limits, "aisle"), aislesOf(b)
	if len(aisles) == 0 {
		return
	}
	shut := stoppedAcross(b)
	for _, c := range aisles {
		wide, more := length.Down(length.Length(c.wide), b.Marks), ""
		by := limit - wide
		if s := shut[sidesOf(c.of.run, c.to)]; s.count > 0 {
			more, by = " It keeps "+finding.Counted(s.count, "front")+" from opening.", max(by, s.room)
		}
		f := b.Findings.Warnf("aisle-narrow", b.Runs[c.of.run].Why.At, widened(b, &c, by),
			"The way between %s and %s is %s wide: %s less than %s.%s", c.of.what, c.to.what, b.Show(wide), b.Show(limit-wide), b.Show(limit), more).
			Also(c.to.why.At, "what is opposite")
		b.LimitOf(f, "aisle")
	}
}

// shutLeaves is how many leaves do not open across an aisle, and how much more room the worst of
// them wants.
type shutLeaves struct {
	count int
	room  length.Length
}

// stoppedAcross counts what does not open across each aisle.
func stoppedAcross(b *rule.Build) map[twoSides]shutLeaves {
	out := map[twoSides]shutLeaves{} // lookup only
	g, leaves := groundOf(b), leavesOf(b)
	for i := range leaves {
		if c := leaves[i].stopped(g); c.leaf != nil && c.across() {
			at := sidesOf(c.leaf.run, c.b)
			out[at] = shutLeaves{out[at].count + 1, max(out[at].room, c.roomBefore(b))}
		}
	}
	return out
}

// across reports whether a leaf meets what its run faces.
func (c *clash) across() bool { return alongside(&c.leaf.solid, c.b) && c.b.run != c.leaf.run }

// roomBefore is how much more room a leaf wants to what its run faces.
func (c *clash) roomBefore(b *rule.Build) length.Length {
	sin, cos := c.leaf.turn.SinCos()
	_, far := c.a.plan.along(-sin, cos)
	near, _ := c.b.plan.along(-sin, cos)
	return up(b, far-near)
}

// widened is the edit that makes an aisle wider.
func widened(b *rule.Build, c *clearance, by length.Length) string {
	run := &b.Runs[c.of.run]
	if _, cos := (c.of.turn - c.to.turn).SinCos(); run.Along && c.to.run != noRun && cos < 0 {
		run = &b.Runs[c.to.run]
	}
	if run.Along {
		return b.Show(by) + " more between them"
	}
	block := b.Block("run." + run.Name)
	if b.Text(block, "faces") == "right" {
		by = -by
	}
	return "at = " + b.Show(b.Length(block, "at")+by) + " for run " + run.Name
}

// pastOpen looks at the way that is left beside what stands open. Where the aisle itself
// is too narrow, or a leaf does not open, other rules say so.
func pastOpen(b *rule.Build) {
	narrow := map[int]bool{} // runs; lookup only
	for _, c := range aislesOf(b) {
		narrow[c.of.run], narrow[c.to.run] = true, true
	}
	g, limit := groundOf(b), b.Length(b.Limits, "past_open")
	leaves := leavesOf(b)
	var met clashes[int]
	for i := range leaves {
		l := &leaves[i]
		if narrow[l.run] || l.stopped(g).leaf != nil {
			continue
		}
		if c := l.narrows(b, g, limit); c.to != nil {
			met.add(l.run, clash{leaf: l, a: c.of, b: c.to, deep: float64(limit) - c.wide})
		}
	}
	for i := range met.list {
		c := &met.list[i]
		wide := length.Down(limit-length.Length(math.Ceil(c.deep)), b.Marks)
		f := b.Findings.Notef("past-open", c.leaf.at, "While %s is open, %s are left to %s: %s less than lets somebody past, %s.%s",
			c.leaf.what, b.Show(wide), c.b.what, b.Show(limit-wide), b.Show(limit), c.more("front", " of this run")).
			Also(c.b.why.At, "what is opposite")
		b.LimitOf(f, "past_open")
	}
}

// narrows is the least way that a leaf leaves while it is open, if that is under a limit.
func (l *leaf) narrows(b *rule.Build, g *ground, limit length.Length) (least clearance) {
	for i := range l.open {
		u, out := spans(b, &l.open[i])
		if c := before(b, g, &l.open[i], u, out, limit); c.to != nil && (least.to == nil || c.wide < least.wide) {
			least = c
		}
	}
	return least
}
