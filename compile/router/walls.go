package router

import (
	"math"

	"barwright/compile/geom"
)

// finishWalls follows the closed walls at full depth.
func (j *job) finishWalls(p *path) {
	if j.open == (sides{}) {
		j.finishLap(p)
		return
	}
	first := j.firstWall(p.at)
	for k := range 4 {
		i := (first + k) % 4
		if j.open[i] || !j.open[before(i)] {
			continue
		}
		if k == 0 { // out of the wood, then sideways
			p.lineTo(j.lead.corner(i))
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
	}
}

// firstWall returns the wall whose beginning, after an open side, is nearest.
func (j *job) firstWall(from geom.Point) int {
	best, nearest := 0, math.Inf(1)
	for i := range 4 {
		at := j.lead.corner(i)
		if d := norm(at.X-from.X, at.Y-from.Y); j.wallAfter(before(i)) && d < nearest {
			best, nearest = i, d
		}
	}
	return best
}

// finishLap goes once round a closed recess; quarter circles lead on to the
// wall and off it, so that the bit never stops there.
func (j *job) finishLap(p *path) {
	g := j.finish
	first := g.longSide()
	ahead, inward := heading[first], heading[after(first)]
	lead := max(j.tool.Finish, min(j.tool.Diameter/2, g.half()*2/3))
	start := g.sideMid(first)
	if room := distanceAlong(first, g.sideStart(first), start) - lead; room > 0 { // nearer to the bit
		start = along(start, ahead, max(-room, min(room, distanceAlong(first, start, p.at))))
	}
	centre := along(start, inward, lead)

	p.lineTo(along(centre, ahead, -lead))
	p.note = "finish the walls"
	p.arcTo(start, centre)
	for k := range 4 {
		side := (first + k) % 4
		p.side(g, side)
		p.round(g, side)
	}
	p.lineTo(start)
	p.arcTo(along(centre, ahead, lead), centre)
}
