package rule

import (
	"math"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

var standing = []Rule{
	{"solids-meet", solidsMeet},
	{"through-wall", throughWall},
	{"door-meets", func(b *Build) { b.leavesMeet("door-meets") }},
	{"drawer-meets", func(b *Build) { b.leavesMeet("drawer-meets") }},
	{"appliance-door-meets", func(b *Build) { b.leavesMeet("appliance-door-meets") }},
	{"fronts-cross", frontsCross},
	{"appliance-stands-out", applianceStandsOut},
	{"aisle-narrow", aisleNarrow},
	{"past-open", pastOpen},
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

func (c *clashes[K]) add(cause K, new clash) {
	if c.at == nil {
		c.at = map[K]int{}
	}
	i, ok := c.at[cause]
	if !ok {
		c.at[cause] = len(c.list)
		c.list = append(c.list, new)
		return
	}
	worst := &c.list[i]
	new.others = worst.others + 1
	if new.deep <= worst.deep {
		new.leaf, new.a, new.b, new.deep = worst.leaf, worst.a, worst.b, worst.deep
	}
	*worst = new
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
func solidsMeet(b *Build) {
	g := newGround(b.solids())
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
		by := b.Show(b.up(c.deep))
		b.Findings.Errorf("solids-meet", c.a.why.At, "move one of them by "+by+", or make it so much smaller there",
			"%s and %s stand %s in one another.%s", finding.Capital(c.a.what), c.b.what, by, c.more("pair", " of these two runs")).
			Also(c.b.why.At, "the other")
	}
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
func throughWall(b *Build) {
	g := newGround(b.solids())
	var met clashes[[2]int]
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
				if past := w.past(s); past > float64(b.Marks) {
					met.add([2]int{s.run, i}, clash{a: s, b: w, deep: past})
				}
			}
		}
	}
	for i := range met.list {
		b.sayThroughWall(&met.list[i])
	}
}

func (b *Build) sayThroughWall(c *clash) {
	run := &b.Runs[c.a.run]
	what, mend := finding.Capital(c.a.what), b.awayFrom(run, c.b, c.deep)
	far := b.Show(b.up(c.deep)) + " behind the face of " + c.b.what + "." + c.more("thing", " of the run")
	if sin, _ := (run.Frame.Turn - c.b.turn).SinCos(); c.a.kind == slabSolid && math.Abs(sin) > math.Sqrt2/2 {
		b.Findings.Warnf("through-wall", c.a.why.At, mend, "%s is to be cut to the wall: it would reach %s", what, far).Also(c.b.why.At, "the wall")
		return
	}
	b.Findings.Errorf("through-wall", c.a.why.At, mend, "%s would reach %s", what, far).Also(c.b.why.At, "the wall")
}

// awayFrom is the edit that takes a run a way off a wall that it reaches into.
func (b *Build) awayFrom(run *model.Run, wall *solid, deep float64) string {
	block := b.Block("run." + run.Name)
	sin, cos := (run.Frame.Turn - wall.turn).SinCos()
	if math.Abs(cos) > math.Abs(sin) {
		by := b.up(deep / math.Abs(cos))
		if run.Along {
			return "a carcass that is " + b.Show(by) + " less deep"
		}
		if (cos < 0) == (b.Text(block, "faces") == "left") {
			return "at = " + b.Show(b.Length(block, "at")+by)
		}
		return "at = " + b.Show(b.Length(block, "at")-by)
	}
	by, end := deep/math.Abs(sin), model.Left
	if sin < 0 {
		end = model.Right
	}
	if run.Along && b.Text(block, "from") == end.String() {
		return "start = " + b.Show(b.up(float64(b.startOf(block, end))+by))
	}
	return "make run " + run.Name + " " + b.Show(b.up(by)) + " shorter at its " + end.String() + " end"
}

// startOf is how far an end of a run along a wall stands from that end of the wall.
func (b *Build) startOf(run *lang.Block, end model.End) length.Length {
	wall := b.Ref(run, "along")
	from, to, _ := b.Stretch(run, wall)
	if end == model.Right {
		return b.Length(wall, "length") - to
	}
	return from
}
