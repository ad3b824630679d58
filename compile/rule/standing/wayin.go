package standing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// wayInNarrow looks at the way past the one free end of a run that stands out from a wall:
// where it is the way in behind the run, somebody must get through. What the end touches
// closes it on purpose.
func wayInNarrow(b *rule.Build) {
	limit := b.Length(b.Limits, "way_in")
	g := groundOf(b)
	ofRun := make([][]*solid, len(b.Runs))
	for i := range g.solids {
		if s := &g.solids[i]; s.run != noRun && s.kind != handleSolid {
			ofRun[s.run] = append(ofRun[s.run], s)
		}
	}
	told := map[twoSides]bool{} // lookup only
	for i := range b.Runs {
		run := &b.Runs[i]
		if run.Along || len(run.Free) != 1 {
			continue
		}
		c := pastEnd(g, ofRun[i], run.Free[0], run.Frame, limit)
		if c.to == nil || c.wide <= touching || told[sidesOf(i, c.to)] {
			continue
		}
		told[sidesOf(i, c.to)] = true
		tellWayIn(b, run, &c, limit)
	}
}

// pastEnd is the least way from a free end of a run, whose solids and frame these are,
// straight on to what stands in line with it, if it is under a limit; to is nil otherwise.
func pastEnd(g *ground, solids []*solid, end model.End, f geom.Frame, limit length.Length) clearance {
	f.Turn += 90 * geom.Degree // so that v goes on beyond the end
	if end == model.Right {
		f.Turn -= 180 * geom.Degree
	}
	sin, cos := f.Turn.SinCos()
	origin := shape{sightOf(f).origin}
	zero, _ := origin.along(cos, sin)
	rear, _ := origin.along(-sin, cos)
	least := clearance{wide: float64(limit) - touching}
	for _, s := range solids {
		lo, hi := s.plan.along(cos, sin)
		_, far := s.plan.along(-sin, cos)
		u := geom.Span{Lo: length.Length(math.Round(lo - zero)), Hi: length.Length(math.Round(hi - zero))}
		out := far - rear
		from := length.Length(math.Round(out))
		strip := solid{plan: rectangle(f, u, geom.Span{Lo: from, Hi: from + limit})}
		for _, j := range g.near(&strip) {
			o := &g.solids[j]
			if o.run == s.run || o.kind == handleSolid || o.kind == stubSolid {
				continue
			}
			if lo, _, ok := o.plan.within(f, u.Grow(-length.Millimetre)); ok && lo-out > -touching && lo-out < least.wide {
				least = clearance{of: s, to: o, wide: lo - out}
			}
		}
	}
	return least
}

// filled is the widest gap that is meant to be closed.
const filled = 100 * length.Millimetre

func tellWayIn(b *rule.Build, run *model.Run, c *clearance, limit length.Length) {
	wide := length.Down(length.Length(c.wide), b.Marks)
	end := run.Free[0].String()
	mend := "make run " + run.Name + " " + b.Show(limit-wide) + " shorter at its " + end + " end; or limits { way_in = 0 }, where there is another way in"
	if wide < filled {
		mend = "close the gap, or " + mend
	}
	f := b.Findings.Notef("way-in-narrow", run.Why.At, "Between %s and %s, at the %s end of run %s, %s are left. Who goes in behind the run there takes %s: %s too few.",
		c.of.what, c.to.what, end, run.Name, b.Show(wide), b.Show(limit), b.Show(limit-wide))
	f.Mend = mend
	b.LimitOf(f.Also(c.to.why.At, "what is opposite"), "way_in")
}
