package standing

import (
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// leaf is what opens: a door, a drawer, the door of an appliance.
type leaf struct {
	slug      string
	box       *model.Box
	front     *model.Front // nil of an appliance
	solid                  // where it is while closed
	way, open []solid      // the pieces of what it sweeps, and of what it fills once open
	beside    *solid       // what it wants free at a wall; nil where it says nothing
	fails     string       // "cannot open to 90 degrees"
	at        source.Range // of the attribute that asks for it
}

// leavesOf lists what opens, run by run.
func leavesOf(b *rule.Build) []leaf {
	var out []leaf
	for i := range b.Runs {
		for j := range b.Runs[i].Boxes {
			box := &b.Runs[i].Boxes[j]
			for k := range box.Fronts {
				switch front := &box.Fronts[k]; front.Kind {
				case model.Door:
					out = append(out, doorLeaf(b, i, box, front))
				case model.Drawer:
					out = append(out, drawerLeaf(b, i, box, front))
				}
			}
			if box.Kind == model.Bay && b.Text(b.Block(box.Key()), "door") != "none" {
				out = append(out, applianceLeaf(b, i, box))
			}
		}
	}
	return out
}

func newLeaf(b *rule.Build, slug string, run int, box *model.Box, front *model.Front, attr string) leaf {
	what, of := frontOf(front, box), front.Part
	l := leaf{slug: slug, box: box, front: front, at: b.Block(box.Key()).Attr(attr).Expr.At}
	l.solid = inRun(b, run, frontSolid, of, what, front.Place, box.Why)
	return l
}

func (l *leaf) piece(what string, plan shape, z geom.Span) solid {
	s := l.solid
	s.what, s.plan, s.z = what, plan, z
	return s
}

// doorLeaf is a door that opens to 90 degrees. It is taken to turn about the edge of its
// face on the side that it hangs on, as on a concealed hinge: open, it stands before its own
// opening and only its handle looks out of it.
func doorLeaf(b *rule.Build, run int, box *model.Box, front *model.Front) leaf {
	l := newLeaf(b, "door-meets", run, box, front, "doors")
	l.fails = "cannot open to 90 degrees"
	place, f := front.Place, b.Runs[run].Frame
	l.swing(f, place.U, place.V.Hi, front.Hinged, place.V.Size())
	if handle, ok := handleOf(b, box, front); ok {
		turned := opened(place, front.Hinged, handle)
		s := l.piece("its handle", rectangle(f, turned.U, turned.V), handle.Z)
		l.way, l.open = append(l.way, s), append(l.open, s)
	}
	return l
}

// swing is the way of a leaf, thick as stated, about an end of a span along u.
func (l *leaf) swing(f geom.Frame, u geom.Span, face length.Length, hinged model.End, thick length.Length) {
	hinge, reach, stands := u.Lo, u.Size(), geom.Span{Lo: u.Lo, Hi: u.Lo + thick}
	if hinged == model.Right {
		hinge, reach, stands = u.Hi, -u.Size(), geom.Span{Lo: u.Hi - thick, Hi: u.Hi}
	}
	l.way = append(l.way, l.piece("it", quarter(f, hinge, face, reach), l.z))
	l.open = append(l.open, l.piece("it", rectangle(f, stands, geom.Span{Lo: face, Hi: face + u.Size()}), l.z))
}

// opened turns what stands on the face of a door with it by 90 degrees.
func opened(door geom.Box, hinged model.End, on geom.Box) geom.Box {
	face, out := door.V.Hi, on.V.Size()
	if hinged == model.Left {
		return geom.Box{
			U: geom.Span{Lo: door.U.Lo - out, Hi: door.U.Lo},
			V: geom.Span{Lo: face + on.U.Lo - door.U.Lo, Hi: face + on.U.Hi - door.U.Lo},
		}
	}
	return geom.Box{
		U: geom.Span{Lo: door.U.Hi, Hi: door.U.Hi + out},
		V: geom.Span{Lo: face + door.U.Hi - on.U.Hi, Hi: face + door.U.Hi - on.U.Lo},
	}
}

// drawerLeaf is a drawer that comes out by the length of its slides.
func drawerLeaf(b *rule.Build, run int, box *model.Box, front *model.Front) leaf {
	l := newLeaf(b, "drawer-meets", run, box, front, "drawers")
	f, place := b.Runs[run].Frame, front.Place
	face, slides := place.V.Hi, front.Box.V.Size()
	l.fails = "cannot come out by the " + b.Show(slides) + " of its slides"
	add := func(what string, u, z geom.Span, out length.Length) {
		l.way = append(l.way, l.piece(what, rectangle(f, u, geom.Span{Lo: face, Hi: face + out}), z))
	}
	add("it", place.U, place.Z, slides)
	add("its box", front.Box.U, front.Box.Z, slides-place.V.Size())
	if handle, ok := handleOf(b, box, front); ok {
		add("its handle", handle.U, handle.Z, slides+handle.V.Size())
	}
	l.open = l.way
	return l
}

// leafOfAppliance is how thick the door of an appliance is taken to be; its depth
// counts it already.
const leafOfAppliance = 25 * length.Millimetre

// applianceLeaf is the door of an appliance: it turns about the front corner on the
// side that it hangs on, comes out by the appliance's depth, or lets down by its height.
func applianceLeaf(b *rule.Build, run int, box *model.Box) leaf {
	block, f, body := b.Block(box.Key()), b.Runs[run].Frame, box.Appliance
	l := leaf{slug: "appliance-door-meets", box: box, at: block.Attr("door").Expr.At, fails: "cannot open to 90 degrees"}
	l.solid = inRun(b, run, applianceSolid, block.Key(), "the door of the appliance of bay "+box.Name, body, box.Why)
	door, face := b.Text(block, "door"), body.V.Hi
	switch door {
	case "drawer", "down":
		out := body.Z.Size()
		if door == "drawer" {
			out = body.V.Size()
			l.fails = "cannot come out by its depth, " + b.Show(out)
		}
		l.way = []solid{l.piece("it", rectangle(f, body.U, geom.Span{Lo: face, Hi: face + out}), body.Z)}
		l.open = l.way
		return l
	}
	hinged, room := model.Left, b.Length(b.Limits, "door_beside")
	side := geom.Span{Lo: body.U.Lo - room, Hi: body.U.Lo}
	if door == model.Right.String() {
		hinged, side = model.Right, geom.Span{Lo: body.U.Hi, Hi: body.U.Hi + room}
	}
	l.swing(f, body.U, face, hinged, leafOfAppliance)
	s := l.piece("it", rectangle(f, side, geom.Span{Lo: face, Hi: face + body.U.Size()}), body.Z)
	l.beside = &s
	return l
}

// stopped finds what a leaf runs into when it opens: the worst of it.
func (l *leaf) stopped(g *ground) (worst clash) {
	add := func(piece, o *solid, deep float64) {
		if deep > max(touching, worst.deep) {
			worst = clash{leaf: l, a: piece, b: o, deep: deep}
		}
	}
	pieces := l.way
	if l.beside != nil {
		pieces = append(slices.Clone(pieces), *l.beside)
	}
	for i := range pieces {
		for _, j := range g.near(&pieces[i]) {
			o := &g.solids[j]
			if o.of == l.of || i >= len(l.way) && o.run == l.run {
				continue
			}
			deep := pieces[i].into(o)
			add(&pieces[i], o, deep)
			for k := 0; o.wall != nil && deep > touching && k < len(pieces); k++ { // others may be all behind it
				add(&pieces[k], o, o.past(&pieces[k]))
			}
		}
	}
	if l.beside != nil && worst.a == &pieces[len(l.way)] {
		worst.a = l.beside
	}
	return worst
}

// leavesMeet tells of each box the leaf of one kind that misses by most. What does not open
// across an aisle that is too narrow is told with the aisle.
func leavesMeet(b *rule.Build, slug string) {
	g := groundOf(b)
	narrow := map[twoSides]bool{} // lookup only
	for _, c := range aislesOf(b) {
		narrow[sidesOf(c.of.run, c.to)] = true
	}
	var met clashes[*model.Box]
	leaves := leavesOf(b)
	for i := range leaves {
		if l := &leaves[i]; l.slug == slug {
			if c := l.stopped(g); c.leaf != nil && !(c.across() && narrow[sidesOf(l.run, c.b)]) {
				met.add(l.box, c)
			}
		}
	}
	for i := range met.list {
		c := &met.list[i]
		mend, nm := roomFor(b, g, c)
		by := up(b, nm)
		text := finding.Capital(c.leaf.what) + " " + c.leaf.fails + ": " + c.a.what + " would run into " + c.b.what + ", by " + b.Show(by) + "."
		if c.a == c.leaf.beside {
			room := b.Length(b.Limits, "door_beside")
			text = finding.Capital(c.leaf.what) + " wants " + b.Show(room) + " beside it, for hinge and handle; up to " + c.b.what + " " + b.Show(max(room-by, 0)) +
				" are there: " + b.Show(by) + " too little."
		}
		b.Findings.Warnf(slug, c.leaf.at, mend, "%s%s", text, c.more("front", " of this box")).Also(c.b.why.At, "what it meets")
	}
}

// roomFor is the edit that gives a leaf the room that it misses, and how much that is.
func roomFor(b *rule.Build, g *ground, c *clash) (edit string, by float64) {
	l, run := c.leaf, &b.Runs[c.leaf.run]
	if other, ok := hungOtherwise(b, l); ok && other.stopped(g).leaf == nil {
		return "hinged = \"" + other.front.Hinged.String() + "\"", c.deep
	}
	if c.across() {
		room := c.roomBefore(b)
		return b.Show(room) + " more room before it", float64(room)
	}
	by, end, most := c.besides()
	if most {
		return blindAt(b, g, c, end), c.deep
	}
	return fillerAt(b, run, l.box, end, up(b, by)), by
}

// besides is how far a leaf is to move along its run off what stands at an end of it; most,
// where that is more than half of the leaf.
func (c *clash) besides() (by float64, end model.End, most bool) {
	l := c.leaf
	sin, cos := l.turn.SinCos()
	lo, hi := c.a.plan.along(cos, sin)
	oLo, oHi := c.b.plan.along(cos, sin)
	ownLo, ownHi := l.plan.along(cos, sin)
	by, end = hi-oLo, model.Right
	if oLo+oHi < ownLo+ownHi {
		by, end = oHi-lo, model.Left
	}
	if c.b.wall != nil {
		lean, _ := (l.turn - c.b.turn).SinCos()
		by = c.deep / math.Abs(lean)
	}
	return by, end, by > (ownHi-ownLo)/2
}

// leastFront is the width of a box under which nobody closes it with a front of its own.
const leastFront = 150 * length.Millimetre

// blindAt is the edit that leaves an end of a box without a front, as wide as what stands
// before it, and the handle of a door that opens beside that, take.
func blindAt(b *rule.Build, g *ground, c *clash, end model.End) string {
	l := c.leaf
	if c.b.run == noRun {
		return "no front there: leave that end of the box blind"
	}
	sin, cos := l.turn.SinCos()
	hull := rectangle(b.Runs[l.run].Frame, l.box.Hull.U, l.box.Hull.V)
	lo, hi := hull.along(cos, sin)
	rear, _ := hull.along(-sin, cos)
	wide := 0.0
	for i := range g.solids {
		s := &g.solids[i]
		_, far := s.plan.along(-sin, cos)
		if s.run != c.b.run || s.kind == slabSolid || far < rear || !s.z.Overlaps(l.z) {
			continue
		}
		if sLo, sHi := s.plan.along(cos, sin); end == model.Right {
			wide = max(wide, hi-sLo)
		} else {
			wide = max(wide, sHi-lo)
		}
	}
	if l.front != nil && l.front.Kind == model.Door {
		if handle, ok := handleOf(b, l.box, l.front); ok {
			wide += float64(handle.V.Size())
		}
	}
	words, covers := l.box.Words(), "run "+b.Runs[c.b.run].Name+" stands before it"
	if hi-lo-wide < float64(leastFront) {
		return "no front on " + words + ": " + covers
	}
	return fmt.Sprintf("no front over the last %s at the %s of %s, where %s: a box or a filler of its own there", b.Show(up(b, wide)), end, words, covers)
}

// hungOtherwise is a single door, hung on the other side of its box.
func hungOtherwise(b *rule.Build, l *leaf) (leaf, bool) {
	if l.slug != "door-meets" || b.Count(b.Block(l.box.Key()), "doors") != 1 {
		return leaf{}, false
	}
	front := *l.front
	front.Hinged = model.Right - front.Hinged
	return doorLeaf(b, l.run, l.box, &front), true
}

// fillerAt is the edit that moves a box so far off what stands at an end of its run.
func fillerAt(b *rule.Build, run *model.Run, box *model.Box, end model.End, by length.Length) string {
	i := slices.IndexFunc(run.Boxes, func(o model.Box) bool { return o.Hull == box.Hull })
	step := 1
	if end == model.Left {
		step = -1
	}
	switch beside := i + step; {
	case beside < 0 || beside == len(run.Boxes):
		return "a filler " + b.Show(by) + " wide at the " + end.String() + " of the box"
	case run.Boxes[beside].Kind == model.Filler:
		next := &run.Boxes[beside]
		return "make filler " + next.Name + " " + b.Show(next.Hull.U.Size()+by) + " wide"
	}
	return b.Show(by) + " more room at the " + end.String() + " of the box"
}

// frontsCross looks at leaves of two runs in a corner: whether the one, open, stands in
// the way of the other, and the other in its own. Across an aisle pastOpen looks.
func frontsCross(b *rule.Build) {
	g := groundOf(b)
	leaves := slices.DeleteFunc(leavesOf(b), func(l leaf) bool { return l.stopped(g).leaf != nil })
	var ways []solid
	var of []int // of each way, its leaf
	for i := range leaves {
		for _, way := range leaves[i].way {
			ways, of = append(ways, way), append(of, i)
		}
	}
	g = newGround(ways)
	var met clashes[[2]int]
	for i := range leaves {
		l := &leaves[i]
		var near []int
		for k := range l.way {
			for _, j := range g.near(&l.way[k]) {
				near = append(near, of[j])
			}
		}
		slices.Sort(near)
		for _, j := range slices.Compact(near) {
			o := &leaves[j]
			if j >= i || o.run == l.run || faces(&l.solid, &o.solid) {
				continue
			}
			if deep := min(inside(l.way, o.open), inside(o.way, l.open)); deep > touching {
				met.add([2]int{o.run, l.run}, clash{leaf: l, b: &o.solid, deep: deep})
			}
		}
	}
	for i := range met.list {
		c := &met.list[i]
		b.Findings.Notef("fronts-cross", c.leaf.at, "%s and %s cannot be open at once: the one stands in the way of the other by %s.%s",
			finding.Capital(c.leaf.what), c.b.what, b.Show(up(b, c.deep)), c.more("pair", " of these two runs")).
			Also(c.b.why.At, "the other")
	}
}

// inside is how far pieces stand in others, at most.
func inside(pieces, others []solid) float64 {
	deep := 0.0
	for i := range pieces {
		for j := range others {
			deep = max(deep, pieces[i].into(&others[j]))
		}
	}
	return deep
}
