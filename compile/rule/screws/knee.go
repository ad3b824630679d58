package screws

import (
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
)

// kneeWall adds one end of a stud above and below, plates on one another, the lowest
// of them on the floor, a stud behind each box, and the steel.
func (g *gripper) kneeWall(k *model.KneeWall) {
	block, stud := g.Block("knee_wall."+k.Name), "knee_wall."+k.Name+"/stud-1"
	frame := grip{does: "frame knee wall " + k.Name, bite: "structure", meets: "floor and bar top lie against the plates"}
	lower, upper := g.plates(k, "lower", k.Studs[0]), g.plates(k, "upper", k.Studs[0])
	intoStud, _ := g.along(upwards, lower[len(lower)-1], stud)
	g.add(block, "screws", frame, intoStud)
	intoStud, _ = g.along(downwards, upper[0], stud)
	g.add(block, "screws", frame, intoStud)
	for _, plates := range [][]string{lower, upper} {
		if len(plates) > 1 {
			two, _ := g.along(downwards, plates[1], plates[0])
			two[1].thick = 0 // the tip may come out, into the floor or between the studs
			g.add(block, "screws", frame, two)
		}
	}
	g.intoFloor(block, "hold knee wall "+k.Name+" to the floor", lower[0])
	g.fromBoxes(block, k)
	if len(k.Supports) > 0 {
		for _, inner := range block.Inner("supports") {
			g.supports(inner, k)
		}
	}
}

// plates are the lower or the upper ones at a place along the run, from the floor up.
func (g *gripper) plates(k *model.KneeWall, which string, u geom.Length) []string {
	var out []string
	above := geom.Length(-1)
	for _, p := range g.PartsOf("knee_wall." + k.Name) {
		box := p.Placement.Box
		if p.Is("knee_wall", "plate-"+which) && box.U.Holds(u) && box.Z.Lo > above {
			out = append(out, p.ID)
			above = box.Z.Lo
		}
	}
	return out
}

// fromBoxes goes from inside the boxes into the studs, through the rear stretcher, or
// through the back alone where no stud stands so high.
func (g *gripper) fromBoxes(block *lang.Block, k *model.KneeWall) {
	run := g.RunNamed(k.Run)
	last := ""
	for _, line := range k.Lines { // those of one box follow one another
		if line.Box == last {
			continue
		}
		last = line.Box
		of := "cabinet." + last + "/"
		ids := []string{of + "back", "knee_wall." + k.Name + "/stud-" + strconv.Itoa(line.Stud)}
		if g.Part(of + "stretcher-rear").Placement.Box.Z.Overlaps(line.Z) {
			ids = append(ids, of+"stretcher-rear")
		}
		layers, _ := g.along(toRear, ids...)
		g.atRear(block, "run_screws", run, &run.Boxes[run.Cabinet(last)], grip{does: "hold cabinet " + last + " to knee wall " + k.Name, bite: "structure"}, layers)
	}
}

// supports adds one of the steel plates, which are alike. Plates on one another hold
// its screws together.
func (g *gripper) supports(inner *lang.Block, k *model.KneeWall) {
	s := &k.Supports[0]
	into, _ := g.along(downwards, append(g.plates(k, "upper", s.Centre), s.Part)...)
	for _, more := range into[2:] {
		into[1].thick += more.thick
	}
	sunk := "the steel is sunk for flat ones"
	g.add(inner, "screws", grip{does: "go down through the support plates", bite: "box", meets: sunk}, into[:2])
	for i := range g.Slabs {
		if top := &g.Slabs[i]; top.Kind == "bar_top" && top.Name == k.BarTop {
			g.intoTop(inner, s, top, sunk)
		}
	}
}

// intoTop goes into the piece of the bar top over a support.
func (g *gripper) intoTop(inner *lang.Block, s *model.Support, top *model.Slab, sunk string) {
	for _, piece := range top.Parts {
		if g.Part(piece).Placement.Box.U.Holds(s.Centre) {
			layers, _ := g.along(upwards, s.Part, piece)
			g.add(inner, "top_screws", grip{does: "go up through the support plates into the bar top", bite: "box", meets: sunk}, layers)
			return
		}
	}
}
