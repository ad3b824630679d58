package router

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	overrun  = 2 * length.Millimetre // of the bit's edge, beyond an open side
	approach = 2 * length.Millimetre // above the wood, where rapid moves end
)

// job is what a path is made from. The bit's centre stays in finish, and in
// rough until the finishing lap; both reach beyond the wood at open sides.
// They are convex, so that every straight move between two of their points
// stays inside too.
type job struct {
	tool   model.Tool
	open   sides
	shape  region // what will be cut
	finish region
	rough  region
	corner Length // radius left in inside corners, 0 where there is none
	levels []Length
	step   Length // between rings, at most
	slot   slot
}

// slot is the straight middle of the path, where the bit enters.
type slot struct {
	start, dir geom.Point
	length     Length
}

// path returns all moves: levels from the top down, then the walls.
func (j *job) path() []model.Move {
	p := &path{at: j.slot.start, z: j.tool.Clearance}
	p.add(model.Move{Kind: model.MoveRapid})
	p.rapidTo(approach)
	for i, depth := range j.levels {
		p.note = fmt.Sprintf("level %d of %d", i+1, len(j.levels))
		p.lineTo(j.slot.start)
		j.enter(p, -depth)
		j.clear(p)
	}
	if j.tool.Finish > 0 {
		j.finishWalls(p)
	}
	p.rapidTo(j.tool.Clearance)
	return p.moves
}

// enter ramps down along the slot and clears it, from its start back to its
// start. A slot that is too short for the ramp is run to and fro, in an odd
// number of legs, so that the last one ends at the far end.
func (j *job) enter(p *path, z Length) {
	start, far := j.slot.start, along(j.slot.start, j.slot.dir, j.slot.length)
	top := p.z
	need := rampLength(top-z, j.tool.RampDegrees)
	if need <= j.slot.length {
		p.rampTo(along(start, j.slot.dir, need), z)
	} else {
		legs := ceilDiv(need, j.slot.length) | 1
		for k := range legs {
			end := far
			if k%2 == 1 {
				end = start
			}
			p.rampTo(end, top-(top-z)*(k+1)/legs)
		}
	}
	p.lineTo(far)
	p.lineTo(start)
}

// clear widens the slot ring by ring, counter-clockwise: with a clockwise
// spindle the uncut wood is on the right of the moving bit (climb milling).
func (j *job) clear(p *path) {
	half := j.rough.half()
	rings := ceilDiv(half, j.step)
	for k := range rings {
		ring := j.rough.inset(half - half*(k+1)/rings)
		p.lineTo(ring.sideStart(0))
		for side := range 4 {
			p.side(ring, side)
			p.round(ring, side)
		}
	}
}

// finishWalls follows the closed walls at full depth.
func (j *job) finishWalls(p *path) {
	if j.open == (sides{}) {
		j.finishLap(p)
		return
	}
	first := true
	for i := range 4 {
		if j.open[i] || !j.open[before(i)] {
			continue
		}
		if first { // out into the air, then sideways
			p.lineTo(j.rough.corner(i))
		}
		p.note = "finish the walls"
		p.lineTo(j.finish.corner(i))
		for side := i; ; side = after(side) {
			p.side(j.finish, side)
			if j.open[after(side)] {
				break
			}
			p.round(j.finish, side)
		}
		first = false
	}
}

// finishLap goes once round a closed recess; quarter circles lead on to the
// wall and off it, so that the bit never stops there.
func (j *job) finishLap(p *path) {
	g := j.finish
	first := g.longSide()
	mid, ahead, inward := g.sideMid(first), heading[first], heading[after(first)]
	lead := max(j.tool.Finish, min(j.tool.Diameter/2, g.half()*2/3))
	centre := along(mid, inward, lead)

	p.lineTo(along(centre, ahead, -lead))
	p.note = "finish the walls"
	p.arcTo(mid, centre)
	for k := range 4 {
		side := (first + k) % 4
		p.side(g, side)
		p.round(g, side)
	}
	p.lineTo(mid)
	p.arcTo(along(centre, ahead, lead), centre)
}

// path collects moves. Moves that go nowhere are left out.
type path struct {
	moves []model.Move
	at    geom.Point
	z     Length
	note  string // for the next move
}

func (p *path) add(m model.Move) {
	m.X, m.Y, m.Z, m.Note = p.at.X, p.at.Y, p.z, p.note
	p.note = ""
	p.moves = append(p.moves, m)
}

func (p *path) rapidTo(z Length) {
	p.z = z
	p.add(model.Move{Kind: model.MoveRapid})
}

func (p *path) lineTo(to geom.Point) {
	if to == p.at {
		return
	}
	p.at = to
	p.add(model.Move{Kind: model.MoveLine})
}

func (p *path) rampTo(to geom.Point, z Length) {
	p.at, p.z = to, z
	p.add(model.Move{Kind: model.MoveRamp})
}

func (p *path) arcTo(to, centre geom.Point) {
	if to == p.at {
		return
	}
	p.at = to
	p.add(model.Move{Kind: model.MoveCCW, CX: centre.X, CY: centre.Y})
}

// side goes on to the end of the straight part of a side.
func (p *path) side(g region, side int) { p.lineTo(g.sideEnd(side)) }

// round goes round the corner at the end of a side.
func (p *path) round(g region, side int) {
	next := after(side)
	p.arcTo(g.sideStart(next), along(p.at, heading[next], g.round[next]))
}
