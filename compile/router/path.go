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
		last := i == len(j.levels)-1 && j.tool.Finish > 0
		if last && !j.line && j.passes == nil {
			at = j.atRing(at.side, last)
		}
		j.enter(p, at, -depth)
		at = j.clear(p, at, last)
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
// may come down to the next one: nearby. On the last level before the walls it
// ends where they begin, where it can.
//
// Rings are followed counter-clockwise: with a clockwise spindle the uncut wood
// is on the right of the moving bit (climb milling).
func (j *job) clear(p *path, from entry, last bool) entry {
	rings := j.rings
	if j.passes != nil {
		corner := j.sweep(p, from.corner)
		for _, g := range rings {
			j.ring(p, g, corner, g.sideStart(corner))
		}
		return j.atCorner(corner)
	}
	side := int(from.side)
	if j.line {
		if !j.open[side] {
			j.end(p, side)
		}
		side = int(from.side.Opposite())
		p.lineTo(rings[0].sideMid(side))
		j.end(p, side)
		rings = rings[1:]
	}
	for i, g := range rings {
		if last && j.endsAtWall(side) {
			j.ring(p, g, after(side), g.corner(after(side)))
			continue
		}
		j.ring(p, g, side, g.sideMid(side))
		j.close(p, g, side, i == len(rings)-1 && !j.open[side])
	}
	return j.atSide(model.Edge(side))
}

// wallAfter reports whether a wall begins where an open side ends.
func (j *job) wallAfter(side int) bool { return j.open[side] && !j.open[after(side)] }

// endsAtWall reports whether rings that begin on an open side had better begin at its
// end on the last level, where a wall begins: it saves the way there in the end, and
// costs each of them 1.8 radii across what the bit has come in by.
func (j *job) endsAtWall(side int) bool {
	way := distanceAlong(side, j.rough.sideMid(side), j.rough.corner(after(side)))
	return j.wallAfter(side) && Length(len(j.rings))*j.radius*9/5 < way
}

// ring goes once round a region from a point on one of its sides, or the corner where
// that begins, to that corner. Where a wall begins there it starts from its end.
func (j *job) ring(p *path, g region, first int, start geom.Point) {
	fromEnd := g == j.rough && j.mouth(first) && !j.open[first] && start == g.corner(first)
	if fromEnd {
		start = j.aside[first][0]
	}
	p.lineTo(start)
	for k := range 4 {
		side := (first + k) % 4
		j.turnIn(p, g, side)
		if k == 3 && fromEnd {
			p.side(g, side)
			return
		}
		j.follow(p, g, side)
	}
}

// close ends a ring that began in the middle of a side. Where more wood is cut
// beyond it, be it by the next ring, and at open sides, where there is none, the
// bit stops short by 0.9 of its radius: the cusps beside are 0.1 of it deep.
func (j *job) close(p *path, g region, side int, wholly bool) {
	j.turnIn(p, g, side)
	to := g.sideMid(side)
	if !wholly {
		to = along(to, heading[side], -min(j.radius*9/10, distanceAlong(side, p.at, to)))
	}
	p.lineTo(to)
}

// follow goes to the end of a side of a region, round the corner there if it is
// round, and aside where it must. It does not come back from the end of a wall: the next side
// begins straight from there.
func (j *job) follow(p *path, g region, side int) {
	next := after(side)
	if g != j.rough || !j.mouth(next) {
		p.side(g, side)
		j.bore(p, g, next)
		p.round(g, side)
		return
	}
	if j.open[side] {
		p.lineTo(along(g.corner(next), heading[side], -j.slant(side)))
	}
	p.lineTo(j.aside[next][0])
}

// turnIn goes on from the end of a wall to the open side that begins there.
func (j *job) turnIn(p *path, g region, side int) {
	if g == j.rough && j.open[side] && j.mouth(side) && p.at == j.aside[side][0] {
		p.lineTo(along(g.corner(side), heading[side], j.slant(side)))
	}
}

// mouth reports whether a corner lies between a wall and an open side.
func (j *job) mouth(corner int) bool { return len(j.aside[corner]) == 1 }

// slant is how far along an open side the bit goes as it leaves it for the end of
// a wall: 0.7 of its radius, at most half of the side.
func (j *job) slant(side int) Length {
	return min(j.radius*7/10, distanceAlong(side, j.rough.corner(side), j.rough.sideMid(side)))
}

// bore goes aside to the bore at a corner of the outermost ring, and back.
func (j *job) bore(p *path, g region, corner int) {
	if g != j.rough || j.bores[corner] == nil {
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

// end goes on from the end of a line that no ring follows: out of an open side, or
// to the corners and back.
func (j *job) end(p *path, side int) {
	if len(j.rings) > 1 {
		return
	}
	if j.open[side] {
		p.lineTo(j.shape.extended(j.open, mouth).onto(side, p.at))
		return
	}
	back := p.at
	for _, corner := range [2]int{side, after(side)} {
		if len(j.aside[corner]) == 0 {
			continue
		}
		p.lineTo(j.rough.corner(corner))
		j.bore(p, j.rough, corner)
		if j.mouth(corner) {
			p.lineTo(j.aside[corner][0])
		}
	}
	p.lineTo(back)
}

// sweep goes to and fro in passes along the longer sides, from a corner to the
// other side, and returns the corner where it ends. Of two passes one is climb
// milling, and one is not. The first and the last one reach out of open ends; the
// bit has come in there.
func (j *job) sweep(p *path, corner int) int {
	g := *j.passes
	a, b := g.corner(corner), g.corner((corner+2)%4)
	across := b.Y - a.Y
	if !g.lies() {
		across = b.X - a.X
	}
	n := j.gaps()
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
		for k, at := range [2]geom.Point{from, to} {
			if i == 0 || i == n {
				corner = g.cornerAt(at)
			}
			if out := j.aside[corner]; g == j.rough && (i == n || i == 0 && k == 1) && len(out) == 1 {
				at = out[0]
			}
			p.lineTo(at)
		}
	}
	return corner
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
