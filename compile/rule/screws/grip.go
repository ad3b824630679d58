package screws

import (
	"cmp"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/source"
)

// grip is a joint that screws of one length make: what each of them passes, from
// its head on, and what holds it.
type grip struct {
	screw  *lang.Block
	at     source.Range // where it is named
	attr   string       // by which attribute: "joint_screws"; "back" where a field of it does
	does   string       // "join cabinets cups and beans"
	passes []layer      // one at least
	holds  layer
	bite   string      // field of the limit: "structure", "box", "plug"
	seen   bool        // nothing hides the heads once all stands
	meets  string      // what is in the way of heads that are not sunk: "the counter lies on them"
	pulled bool        // they are pulled by what is borne: a thinner one holds less
	hit    hit         // of joint screws
	box    *lang.Block // of a back: the carcass that it is said in
}

// layer is one thing that a screw passes or holds in.
type layer struct {
	what  string      // "the rear stretcher"
	kind  string      // "panel", "lumber", "steel", "slab", "lining", "wall", "floor", "air", "shim"
	thick geom.Length // along the screw; 0 where it is deeper than any screw is long
}

// What is behind the face of a wall or a floor nobody measured.
var (
	theFloor  = layer{what: "the floor", kind: "floor"}
	aStud     = layer{what: "a stud", kind: "wall"}
	aPlug     = layer{what: "its plug", kind: "wall"}
	thePlanks = layer{what: "the planks", kind: "wall"}
)

// before is how much of the screw is in what it passes.
func (g *grip) before() (sum geom.Length) {
	for _, l := range g.passes {
		sum += l.thick
	}
	return sum
}

// gripper gathers grips.
type gripper struct {
	*rule.Build
	out    []grip
	behind map[string][]geom.Length // what was measured behind a box, by its key; lookup only
}

// gripsOf are those of all joints that a screw is named for and counted in.
func gripsOf(b *rule.Build) []grip {
	g := gripper{Build: b, behind: map[string][]geom.Length{}}
	for _, gap := range b.Setting.Gaps {
		g.behind[gap.Box] = append(g.behind[gap.Box], gap.Gap)
	}
	for i := range b.Runs {
		g.run(&b.Runs[i])
	}
	for i := range b.KneeWalls {
		g.kneeWall(&b.KneeWalls[i])
	}
	return g.out
}

// add adds a grip where the block names its screw. The last layer holds.
func (g *gripper) add(block *lang.Block, attr string, k grip, layers []layer) {
	if screw := g.Ref(block, attr); screw != nil {
		k.screw, k.at, k.attr = screw, block.Attr(attr).Expr.At, cmp.Or(k.attr, attr)
		g.put(k, layers)
	}
}

func (g *gripper) put(k grip, layers []layer) {
	last := len(layers) - 1
	k.passes, k.holds = layers[:last], layers[last]
	g.out = append(g.out, k)
}

// along are the parts that a screw meets on its way, and the air between them, and
// where the last one ends, counted on the way. A part that another is let into counts
// from where that one ends. All but the first and last may be missing in a build.
func (g *gripper) along(way geom.Dir, ids ...string) (layers []layer, end geom.Length) {
	type met struct {
		part *model.Part
		span geom.Span // growing on the way
	}
	var all []met
	for _, id := range ids {
		if p := g.Part(id); p != nil {
			s := p.Placement.Box.Along(way.Axis)
			if way.Neg {
				s = geom.Span{Lo: -s.Hi, Hi: -s.Lo}
			}
			all = append(all, met{p, s})
		}
	}
	slices.SortStableFunc(all, func(a, b met) int { return cmp.Compare(a.span.Hi, b.span.Hi) })
	for i, m := range all {
		if i > 0 {
			layers = airGap(layers, m.span.Lo-end)
			m.span.Lo = max(m.span.Lo, end)
		}
		name := strings.TrimRight(m.part.Name, " 0123456789")
		layers = append(layers, layer{"the " + name, m.part.Kind.String(), m.span.Size()})
		end = m.span.Hi
	}
	return layers, end
}

// airGap adds air where there is some.
func airGap(layers []layer, wide geom.Length) []layer {
	if wide > 0 {
		return append(layers, layer{"a gap", "air", wide})
	}
	return layers
}

var (
	toRight   = geom.Dir{Axis: geom.U}
	toFront   = geom.Dir{Axis: geom.V}
	toRear    = geom.Dir{Axis: geom.V, Neg: true}
	upwards   = geom.Dir{Axis: geom.Z}
	downwards = geom.Dir{Axis: geom.Z, Neg: true}
)

func (g *gripper) run(run *model.Run) {
	block := g.Block("run." + run.Name)
	for i := range run.Boxes {
		if box := &run.Boxes[i]; box.Kind == model.Cabinet {
			g.cabinet(run, i)
			if run.Along {
				g.toWall(block, run, box)
			}
		}
	}
	for i := range run.Joints {
		g.join(block, run, &run.Joints[i])
	}
	for _, anchor := range block.Inner("anchor") {
		g.anchor(anchor)
	}
}

// join is between two boxes, through the side of the one that it is driven from.
func (g *gripper) join(block *lang.Block, run *model.Run, j *model.Joint) {
	layers, _ := g.along(toRight, "cabinet."+j.Left+"/side-right", "cabinet."+j.Right+"/side-left")
	layers[0].what += " of " + j.Left
	layers[1].what += " of " + j.Right
	if j.From == j.Right {
		slices.Reverse(layers)
	}
	from := &run.Boxes[run.Cabinet(j.From)]
	joint := grip{
		does: "join cabinets " + j.Left + " and " + j.Right, bite: "box",
		seen: !from.ClosedAt(j.Low) || !from.ClosedAt(j.High),
	}
	if j.Plates {
		joint.meets = "hinge plates lie on those near the front"
	}
	g.add(block, "joint_screws", joint, layers)
	k := &g.out[len(g.out)-1]
	k.hit = g.hits(k, j)
}

// cabinet adds what makes one box: the boards that end at the left side, which
// stands for the right one, dividers, the base and the back.
func (g *gripper) cabinet(run *model.Run, at int) {
	box := &run.Boxes[at]
	of := func(part string) string { return box.Key() + "/" + part }
	c := g.CarcassOf(box)
	build := grip{does: "make cabinet " + box.Name, bite: "box"}
	add := func(k grip, way geom.Dir, through, into string) {
		if g.Part(of(through)) != nil && g.Part(of(into)) != nil {
			layers, _ := g.along(way, of(through), of(into))
			g.add(c, "screws", k, layers)
		}
	}
	side := build
	side.seen = g.Part(of("side-left")).Good == model.GoodBoth || g.Part(of("side-right")).Good == model.GoodBoth
	if at > 0 && run.Boxes[at-1].Kind == model.Cabinet || at+1 < len(run.Boxes) && run.Boxes[at+1].Kind == model.Cabinet {
		side.meets = "the next box stands against them"
	}
	ends := []string{"bottom", "top", "stretcher-front", "stretcher-rear", "fixed-shelf-1"}
	stands := g.Text(c, "stands_on")
	if stands == "sides" {
		ends = append(ends, "toe-kick")
	}
	for _, board := range ends {
		add(side, toRight, "side-left", board)
	}
	add(build, upwards, "bottom", "divider-1")
	add(build, downwards, "top", "divider-1")
	add(build, downwards, "stretcher-front", "divider-1")
	if stands == "base" {
		add(build, downwards, "bottom", "toe-kick")
		add(build, downwards, "bottom", "base-rear")
		add(build, toRear, "toe-kick", "base-left")
		add(build, toFront, "base-rear", "base-left")
	}
	g.back(c, box)
}

// back is screwed onto the rear edges, with screws of its own or those of the box.
func (g *gripper) back(c *lang.Block, box *model.Box) {
	if g.Field(c, "back", "fixed").Text == "captured" {
		return
	}
	layers, _ := g.along(toFront, box.Key()+"/back", box.Key()+"/side-left")
	hold := grip{does: "hold the back of cabinet " + box.Name, bite: "box", attr: "back", box: c}
	if hold.screw = g.FieldRef(c, "back", "screws"); hold.screw == nil {
		g.add(c, "screws", hold, layers)
		return
	}
	hold.at = g.Field(c, "back", "screws").At
	g.put(hold, layers)
}

// toWall goes into a wall of the room, over the least and the greatest gap behind the box.
func (g *gripper) toWall(block *lang.Block, run *model.Run, box *model.Box) {
	wall := g.WallNamed(run.Wall)
	if !g.catches(run, wall, box) {
		return
	}
	of := box.Key() + "/"
	layers, end := g.along(toRear, of+"stretcher-rear", of+"back")
	for _, gap := range g.gapsBehind(box, -end) {
		g.overGap(block, run, box, wall, airGap(slices.Clip(layers), gap))
	}
}

// gapsBehind are the least and the greatest gap where a box is screwed to a wall: as
// measured, or as they are where the wall is straight and plumb.
func (g *gripper) gapsBehind(box *model.Box, straight geom.Length) []geom.Length {
	all := g.behind[box.Key()]
	if len(all) == 0 {
		return []geom.Length{straight}
	}
	return slices.Compact([]geom.Length{slices.Min(all), slices.Max(all)})
}

// overGap adds the screws to a wall that pass some layers before it.
func (g *gripper) overGap(block *lang.Block, run *model.Run, box *model.Box, wall *model.Wall, layers []layer) {
	k := grip{does: "hold cabinet " + box.Name + " to the wall", bite: "structure"}
	switch wall.Backing {
	case "studs":
		if lining := g.Length(g.Block("wall."+wall.Name), "lining"); lining > 0 {
			layers = append(layers, layer{"the wall's lining", "lining", lining})
		}
		layers = append(layers, aStud)
	case "masonry":
		layers, k.bite = append(layers, aPlug), "plug"
	default:
		layers = append(layers, thePlanks)
	}
	g.atRear(block, "wall_screws", run, box, k, layers)
}

// atRear adds what goes through the rear of a box: with the screw that the block names,
// or where no front hides it with the one that the run has for that.
func (g *gripper) atRear(block *lang.Block, attr string, run *model.Run, box *model.Box, k grip, layers []layer) {
	z := g.Part(box.Key() + "/stretcher-rear").Placement.Box.Z
	k.seen = !box.ClosedAt(z.Mid())
	if own := g.Block("run." + run.Name); k.seen && g.Ref(block, attr) != nil && g.Ref(own, "seen_screws") != nil {
		block, attr = own, "seen_screws"
	}
	g.add(block, attr, k, layers)
}

// catches reports whether a wall holds screws of a box: anywhere, or where its
// studs are known in one behind the box.
func (g *gripper) catches(run *model.Run, wall *model.Wall, box *model.Box) bool {
	return wall.Backing != "studs" || len(wall.Studs) == 0 || slices.ContainsFunc(g.StudsBehind(run), box.Inside.U.Holds)
}

// anchor is held through the toe kick, which is seen.
func (g *gripper) anchor(block *lang.Block) {
	of := "anchor." + block.Name + "/block"
	layers, _ := g.along(toRear, g.Ref(block, "under").Key()+"/toe-kick", of)
	g.add(block, "screws", grip{does: "hold anchor " + block.Name, bite: "structure", seen: true}, layers)
	if g.Text(block, "fixed") == "screws" {
		g.intoFloor(block, "hold anchor "+block.Name+" to the floor", of)
	}
}

// intoFloor goes through a part, or through lower plates on one another, which count
// as one layer, and through the shims under it, where they are thickest.
func (g *gripper) intoFloor(block *lang.Block, does string, parts ...string) {
	layers, _ := g.along(downwards, parts...)
	whole := layers[0]
	for _, more := range layers[1:] {
		whole.what = "the lower plates"
		whole.thick += more.thick
	}
	layers = []layer{whole}
	if shims := g.shimsUnder(block.Key()); shims > 0 {
		layers = append(layers, layer{"the shims under it", "shim", shims})
	}
	g.add(block, "floor_screws", grip{does: does, bite: "structure"}, append(layers, theFloor))
}

// shimsUnder is how thick the thickest shim is under something; 0 where there is none.
func (g *gripper) shimsUnder(key string) (thick geom.Length) {
	for i := range g.Setting.Shims {
		if s := &g.Setting.Shims[i]; s.Of == key {
			thick = max(thick, s.Thick)
		}
	}
	return thick
}
