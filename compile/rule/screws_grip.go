package rule

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
)

// grip is a joint that screws of one length make: what each of them passes, from
// its head on, and what holds it.
type grip struct {
	block  *lang.Block // that names the screw
	attr   string
	does   string  // "join cabinets cups and beans"
	passes []layer // one at least
	holds  layer
	bite   string // field of the limit: "structure", "box", "plug"
}

// layer is one thing that a screw passes or holds in.
type layer struct {
	what     string      // "the rear stretcher"
	material string      // "panel", "lumber", "steel", "slab", "lining", "wall", "floor", "air"
	thick    geom.Length // along the screw; 0 where it is deeper than any screw is long
}

// The grips of a wall or a floor: what is in it nobody measured.
var (
	theFloor = layer{what: "the floor", material: "floor"}
	aStud    = layer{what: "a stud", material: "wall"}
	aPlug    = layer{what: "its plug", material: "wall"}
	planks   = layer{what: "the planks", material: "wall"}
)

// before is how much of the screw is in what it passes.
func (g *grip) before() (sum geom.Length) {
	for _, l := range g.passes {
		sum += l.thick
	}
	return sum
}

func (g *grip) screw(b *Build) *lang.Block { return b.Ref(g.block, g.attr) }

// need is how deep a screw of a diameter has to go into what holds it.
func (g *grip) need(b *Build, diameter geom.Length) geom.Length {
	if g.bite == "plug" {
		return b.FieldLength(b.Limits, "bite", g.bite)
	}
	return geom.Length(math.Round(float64(diameter) * b.diameters(g.bite)))
}

// gripper gathers grips.
type gripper struct {
	*Build
	parts map[string]*model.Part   // by ID; lookup only
	own   map[string][]*model.Part // by block; lookup only
	out   []grip
}

// grips are those of all joints that a screw is named for and counted in.
func (b *Build) grips() []grip {
	g := gripper{Build: b, parts: map[string]*model.Part{}, own: map[string][]*model.Part{}}
	for i := range b.Parts {
		p := &b.Parts[i]
		g.parts[p.ID], g.own[p.Block()] = p, append(g.own[p.Block()], p)
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
func (g *gripper) add(block *lang.Block, attr, does, bite string, layers []layer) {
	if g.Ref(block, attr) == nil || len(layers) < 2 {
		return
	}
	last := len(layers) - 1
	g.out = append(g.out, grip{block: block, attr: attr, does: does, passes: layers[:last], holds: layers[last], bite: bite})
}

// along are the parts that a screw meets on its way, and the air between them. A
// part that another is let into counts from where that one ends. Parts that the
// build has not are passed over.
func (g *gripper) along(way geom.Dir, ids ...string) (layers []layer, end geom.Length) {
	type met struct {
		part *model.Part
		span geom.Span // growing on the way
	}
	var all []met
	for _, id := range ids {
		if p := g.parts[id]; p != nil {
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
			layers = gap(layers, m.span.Lo-end)
			m.span.Lo = max(m.span.Lo, end)
		}
		layers = append(layers, layer{"the " + m.part.Name, m.part.Kind.String(), m.span.Size()})
		end = m.span.Hi
	}
	return layers, end
}

// gap adds air where there is some.
func gap(layers []layer, wide geom.Length) []layer {
	if wide > 0 {
		return append(layers, layer{"a gap", "air", wide})
	}
	return layers
}

var (
	rightward = geom.Dir{Axis: geom.U}
	frontward = geom.Dir{Axis: geom.V}
	rearward  = geom.Dir{Axis: geom.V, Neg: true}
	upward    = geom.Dir{Axis: geom.Z}
	downward  = geom.Dir{Axis: geom.Z, Neg: true}
)

func (g *gripper) run(run *model.Run) {
	block := g.Block("run." + run.Name)
	var last *model.Box
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind != model.Cabinet {
			last = nil
			continue
		}
		g.cabinet(box)
		if last != nil {
			g.join(block, last, box)
		}
		if run.Along {
			g.toWall(block, run, box)
		}
		last = box
	}
	for _, anchor := range block.Inner("anchor") {
		g.anchor(anchor)
	}
}

// join is between two boxes, driven through the thinner side.
func (g *gripper) join(block *lang.Block, left, right *model.Box) {
	layers, _ := g.along(rightward, "cabinet."+left.Name+"/side-right", "cabinet."+right.Name+"/side-left")
	if layers[0].thick > layers[1].thick {
		slices.Reverse(layers)
	}
	g.add(block, "joint_screws", "join cabinets "+left.Name+" and "+right.Name, "box", layers)
}

// cabinet adds what makes one box: all boards that end at the left side, which
// stands for the right one, dividers, the base and the back.
func (g *gripper) cabinet(box *model.Box) {
	of := func(part string) string { return "cabinet." + box.Name + "/" + part }
	c := g.Ref(g.Block("cabinet."+box.Name), "carcass")
	if c == nil {
		c = g.Ref(g.Block("cabinet."+box.Name).Parent, "carcass")
	}
	add := func(way geom.Dir, through, into string) {
		if g.parts[of(through)] != nil && g.parts[of(into)] != nil {
			layers, _ := g.along(way, of(through), of(into))
			g.add(c, "screws", "make cabinet "+box.Name, "box", layers)
		}
	}
	ends := []string{"bottom", "top", "stretcher-front", "stretcher-rear", "fixed-shelf-1"}
	stands := g.Text(c, "stands_on")
	if stands == "sides" {
		ends = append(ends, "toe-kick")
	}
	for _, board := range ends {
		add(rightward, "side-left", board)
	}
	add(upward, "bottom", "divider-1")
	add(downward, "top", "divider-1")
	add(downward, "stretcher-front", "divider-1")
	if stands == "base" {
		add(downward, "bottom", "toe-kick")
		add(downward, "bottom", "base-rear")
		add(rearward, "toe-kick", "base-left")
		add(frontward, "base-rear", "base-left")
	}
	if g.Field(c, "back", "fixed").Text != "captured" {
		add(frontward, "back", "side-left")
	}
}

// behind are the boards at the rear of a box that screws into what stands behind
// it pass, and where they end: the rear stretcher and the back.
func (g *gripper) behind(box *model.Box) ([]layer, geom.Length) {
	of := "cabinet." + box.Name + "/"
	layers, end := g.along(rearward, of+"stretcher-rear", of+"back")
	return layers, -end
}

// toWall goes into a wall of the room, whose face is v = 0.
func (g *gripper) toWall(block *lang.Block, run *model.Run, box *model.Box) {
	wall := g.wall(run.Wall)
	if !catches(run, wall, box) {
		return
	}
	layers, rear := g.behind(box)
	layers = gap(layers, rear)
	bite := "structure"
	switch wall.Backing {
	case "studs":
		if lining := g.Length(g.Block("wall."+wall.Name), "lining"); lining > 0 {
			layers = append(layers, layer{"the wall's lining", "lining", lining})
		}
		layers = append(layers, aStud)
	case "masonry":
		layers, bite = append(layers, aPlug), "plug"
	default:
		layers = append(layers, planks)
	}
	g.add(block, "wall_screws", "hold cabinet "+box.Name+" to the wall", bite, layers)
}

// catches reports whether a wall holds screws of a box: anywhere, or where its
// studs are known in one behind the box.
func catches(run *model.Run, wall *model.Wall, box *model.Box) bool {
	if wall.Backing != "studs" || len(wall.Studs) == 0 {
		return true
	}
	return slices.ContainsFunc(wall.Studs, func(at geom.Length) bool {
		u, _ := run.Frame.Local(wall.Frame.At(at, 0))
		return box.Inside.U.Contains(geom.Span{Lo: u, Hi: u})
	})
}

func (g *gripper) wall(name string) *model.Wall {
	i := slices.IndexFunc(g.Room.Walls, func(w model.Wall) bool { return w.Name == name })
	return &g.Room.Walls[i]
}

func (g *gripper) anchor(block *lang.Block) {
	of := "anchor." + block.Name + "/block"
	under := g.Ref(block, "under")
	layers, _ := g.along(rearward, under.Key()+"/toe-kick", of)
	g.add(block, "screws", "hold anchor "+block.Name, "structure", layers)
	if g.Text(block, "fixed") == "screws" {
		g.intoFloor(block, "hold anchor "+block.Name+" to the floor", of)
	}
}

func (g *gripper) intoFloor(block *lang.Block, does, part string) {
	layers, _ := g.along(downward, part)
	g.add(block, "floor_screws", does, "structure", append(layers, theFloor))
}

// kneeWall adds one end of a stud above and below, the lowest plate on the floor,
// a stud behind each box, and the steel.
func (g *gripper) kneeWall(k *model.KneeWall) {
	block, of := g.Block("knee_wall."+k.Name), "knee_wall."+k.Name+"/"
	frame := "frame knee wall " + k.Name
	for _, end := range []struct {
		way    geom.Dir
		plates []string
	}{{upward, g.plates(k, "lower", k.Studs[0])}, {downward, g.plates(k, "upper", k.Studs[0])}} {
		next := end.plates[len(end.plates)-1]
		if end.way.Neg {
			next = end.plates[0]
		}
		layers, _ := g.along(end.way, next, of+"stud-1")
		g.add(block, "screws", frame, "structure", layers)
		if len(end.plates) > 1 { // the tip may come out between the studs
			layers, _ = g.along(end.way, end.plates[0], end.plates[1])
			layers[1].thick = 0
			g.add(block, "screws", frame, "structure", layers)
		}
	}
	g.intoFloor(block, "hold knee wall "+k.Name+" to the floor", g.plates(k, "lower", k.Studs[0])[0])
	g.toKneeWall(block, k)
	for _, inner := range block.Inner("supports") {
		g.supports(inner, k)
	}
}

// plates are the lower or the upper ones at a place along the run, from the floor up.
func (g *gripper) plates(k *model.KneeWall, which string, u geom.Length) []string {
	var out []string
	for _, p := range g.own["knee_wall."+k.Name] {
		if p.Is("knee_wall", "plate-"+which) && p.Placement.Box.U.Contains(geom.Span{Lo: u, Hi: u}) {
			if n := len(out); n > 0 && g.parts[out[n-1]].Placement.Box.Z == p.Placement.Box.Z {
				continue // the next piece of the same plate
			}
			out = append(out, p.ID)
		}
	}
	return out
}

// toKneeWall goes from inside the boxes into the studs, at the height of the rear
// stretcher, or through the back alone where no stud stands so high.
func (g *gripper) toKneeWall(block *lang.Block, k *model.KneeWall) {
	box := ""
	for _, line := range k.Lines {
		if line.Box == box {
			continue
		}
		box = line.Box
		of := "cabinet." + box + "/"
		ids := []string{of + "back", "knee_wall." + k.Name + "/stud-" + strconv.Itoa(line.Stud)}
		if g.parts[of+"stretcher-rear"].Placement.Box.Z.Overlaps(line.Z) {
			ids = append(ids, of+"stretcher-rear")
		}
		layers, _ := g.along(rearward, ids...)
		g.add(block, "run_screws", "hold cabinet "+box+" to knee wall "+k.Name, "structure", layers)
	}
}

// supports adds one of the steel plates, which are alike.
func (g *gripper) supports(inner *lang.Block, k *model.KneeWall) {
	if len(k.Supports) == 0 {
		return
	}
	s := &k.Supports[0]
	down, _ := g.along(downward, append(g.plates(k, "upper", s.Centre), s.Part)...)
	if n := len(down); n > 2 { // plates on one another hold together
		for _, l := range down[2:] {
			down[1].thick += l.thick
		}
		down = down[:2]
	}
	g.add(inner, "screws", "go down through the support plates", "box", down)
	for i := range g.Slabs {
		if slab := &g.Slabs[i]; slab.Kind == "bar_top" && slab.Name == k.BarTop {
			piece := slices.IndexFunc(slab.Parts, func(id string) bool {
				return g.parts[id].Placement.Box.U.Contains(geom.Span{Lo: s.Centre, Hi: s.Centre})
			})
			if piece >= 0 {
				up, _ := g.along(upward, s.Part, slab.Parts[piece])
				g.add(inner, "top_screws", "go up through the support plates into bar top "+slab.Name, "box", up)
			}
		}
	}
}

// diameters is a limit of bite that counts in diameters of the screw.
func (b *Build) diameters(bite string) float64 {
	return values.NumberOf(b.Field(b.Limits, "bite", bite))
}
