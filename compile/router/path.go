package router

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// path returns all moves: levels from the top down, then the walls. finish is
// the index of the first one that finishes the floor or the walls.
func (j *job) path() (moves []model.Move, finish int) {
	rough := len(j.levels)
	if j.tool.Floor > 0 {
		rough--
	}
	p := &path{z: j.tool.Clearance}
	at := j.first()
	for i, depth := range j.levels {
		p.note = fmt.Sprintf("level %d of %d", i+1, len(j.levels))
		if i == rough {
			p.note, finish = "finish the floor", len(p.moves)
		}
		j.enter(p, at, -depth)
		at = j.clear(p, at)
	}
	if j.tool.Floor == 0 {
		finish = len(p.moves)
	}
	if j.tool.Finish > 0 {
		j.finishWalls(p)
	}
	p.rapidTo(j.tool.Clearance)
	return p.moves, finish
}

// clear clears a level from where the bit has come down, and returns where it
// may come down to the next one: nearby.
//
// Rings are followed counter-clockwise: with a clockwise spindle the uncut wood
// is on the right of the moving bit (climb milling).
func (j *job) clear(p *path, from entry) entry {
	rings := j.rings
	if j.passes != nil {
		corner := j.sweep(p, from.corner)
		for _, g := range rings {
			j.ring(p, g, corner, g.sideStart(corner))
		}
		return j.atCorner(corner)
	}
	if j.line {
		j.ends(p, from.side)
		from.side = from.side.Opposite()
		p.lineTo(rings[0].sideMid(int(from.side)))
		j.ends(p, from.side)
		rings = rings[1:]
	}
	for _, g := range rings {
		j.ring(p, g, int(from.side), g.sideMid(int(from.side)))
	}
	return j.atSide(from.side)
}

// ring goes once round a region from a point on one of its sides.
func (j *job) ring(p *path, g region, first int, start geom.Point) {
	p.lineTo(start)
	for k := range 4 {
		side := (first + k) % 4
		p.side(g, side)
		j.visit(p, g, after(side))
		p.round(g, side)
	}
	p.lineTo(start)
}

// visit goes aside at a corner of the outermost ring or pass, and back.
func (j *job) visit(p *path, g region, corner int) {
	if g != j.rough {
		return
	}
	back := p.at
	for _, q := range j.aside[corner] {
		p.lineTo(q)
	}
	for _, q := range slices.Backward(j.aside[corner]) {
		p.lineTo(q)
	}
	p.lineTo(back)
}

// ends visits the corners at an end of a line that no ring follows.
func (j *job) ends(p *path, side model.Edge) {
	if len(j.rings) > 1 {
		return
	}
	back := p.at
	for _, corner := range [2]int{int(side), after(int(side))} {
		if len(j.aside[corner]) > 0 {
			p.lineTo(j.rough.corner(corner))
			j.visit(p, j.rough, corner)
		}
	}
	p.lineTo(back)
}

// sweep goes to and fro in passes along the longer sides, from a corner to the
// other side, and returns the corner where it ends. Of two passes one is climb
// milling, and one is not.
func (j *job) sweep(p *path, corner int) int {
	g := *j.passes
	a, b := g.corner(corner), g.corner((corner+2)%4)
	across := b.Y - a.Y
	if !g.lies() {
		across = b.X - a.X
	}
	n := ceilDiv(max(across, -across), j.step) // gaps between passes
	for i := range n + 1 {
		from, to := a, b
		if i%2 == 1 {
			from, to = b, a
		}
		aside := across
		if n > 0 {
			aside = across * i / n
		}
		if g.lies() {
			from.Y, to.Y = a.Y+aside, a.Y+aside
		} else {
			from.X, to.X = a.X+aside, a.X+aside
		}
		for _, end := range [2]geom.Point{from, to} {
			p.lineTo(end)
			if i == 0 || i == n {
				j.visit(p, g, g.cornerAt(end))
			}
		}
	}
	return g.cornerAt(p.at)
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
