package router

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// entry is where the bit comes down to a level, on the path that clears it.
type entry struct {
	at     geom.Point
	ahead  geom.Point  // along the longer sides, into the recess
	length Length      // of the straight way there that the level's path clears
	room   Length      // for the bit's centre, straight ahead
	beside Length      // likewise to either side, at least
	side   model.Edge  // of rings: that it is nearest to
	corner int         // of passes: where it is
	air    *geom.Point // beyond an open side, straight from at; nil where there is none
}

// first returns the entry where the path begins: at an open side if there is
// one, so that the last level ends where the walls begin, if it can, and else at
// one across the longer sides rather than along them.
func (j *job) first() entry {
	end := j.rough.ends()
	along := model.Edge(after(int(end)))
	ends := []model.Edge{end, end.Opposite(), along, along.Opposite()}
	if j.passes != nil {
		return j.firstCorner(ends)
	}
	if j.line { // each level ends opposite to where it begins
		last := end
		if len(j.levels)%2 == 1 {
			last = end.Opposite()
		}
		switch {
		case j.wallAfter(int(last)):
			return j.atSide(end)
		case j.wallAfter(int(last.Opposite())):
			return j.atSide(end.Opposite())
		}
		ends = ends[:2]
	}
	for _, fits := range [...]func(side int) bool{j.wallAfter, j.isOpen} {
		for _, e := range ends {
			if fits(int(e)) {
				return j.atSide(e)
			}
		}
	}
	return j.atSide(end)
}

func (j *job) isOpen(side int) bool { return j.open[side] }

// firstCorner returns the entry where passes begin.
func (j *job) firstCorner(ends []model.Edge) entry {
	var open []int
	for _, e := range ends {
		if j.open[e] {
			open = append(open, int(e), after(int(e)))
		}
	}
	if len(open) == 0 {
		return j.atCorner(0)
	}
	for _, corner := range open {
		last := corner
		for range j.levels {
			last = j.across(last)
		}
		if j.wallAfter(before(last)) {
			return j.atCorner(corner)
		}
	}
	return j.atCorner(open[0])
}

// across returns the corner where passes end that begin at another one.
func (j *job) across(corner int) int {
	if j.gaps()%2 == 0 {
		return (corner + 2) % 4
	}
	if (heading[corner].X == 0) == j.passes.lies() {
		return after(corner)
	}
	return before(corner)
}

// gaps returns how many steps lie between the first pass and the last one.
func (j *job) gaps() Length {
	g := j.passes.rect
	return ceilDiv(min(g.X.Size(), g.Y.Size()), j.step)
}

// atSide returns the entry on the innermost ring at the middle of a side.
func (j *job) atSide(e model.Edge) entry { return j.atRing(e, false) }

// atRing returns the entry on the innermost ring: at the middle of a side or, on the
// last level, at its end if a wall begins there.
func (j *job) atRing(e model.Edge, last bool) entry {
	g := j.rings[0]
	at, ahead := g.sideMid(int(e)), heading[after(int(e))]
	if last && j.endsAtWall(int(e)) {
		at = g.corner(after(int(e)))
	}
	p := entry{at: at, ahead: ahead, side: e, length: g.rect.X.Size(), beside: j.rough.half()}
	if ahead.X == 0 {
		p.length = g.rect.Y.Size()
	}
	p.room = p.length + g.rect.X.Lo - j.rough.rect.X.Lo
	p.air = j.beyond(at, int(e))
	for _, aside := range [2]int{after(int(e)), before(int(e))} {
		if p.air == nil && j.line {
			p.air = j.beyond(at, aside)
		}
	}
	return p
}

// atCorner returns the entry at a corner of the passes.
func (j *job) atCorner(corner int) entry {
	g := *j.passes
	// Two sides meet at a corner: one along the passes, one at their ends.
	sideways, end := corner, before(corner)
	if (heading[corner].X == 0) == g.lies() {
		sideways, end = end, corner
	}
	p := entry{at: g.corner(corner), ahead: heading[after(end)], corner: corner, length: g.long(), beside: g.rect.X.Lo - j.rough.rect.X.Lo}
	p.room = p.length + p.beside
	for _, e := range [2]int{end, sideways} {
		if p.air == nil {
			p.air = j.beyond(p.at, e)
		}
	}
	return p
}

// beyond returns the point in the air straight beyond an open side, far enough
// from the wood to come down; nil where the side is closed.
func (j *job) beyond(p geom.Point, side int) *geom.Point {
	if !j.open[side] {
		return nil
	}
	p = j.air.onto(side, p)
	return &p
}

// enter brings the bit to an entry, down at z: from the air beside the wood, as
// a helix, or down a ramp.
func (j *job) enter(p *path, to entry, z Length) {
	helix := j.helix(to)
	switch {
	case to.air != nil:
		j.over(p, *to.air)
		p.rampTo(*to.air, z)
		p.lineTo(to.at)
	case j.tool.Entry == "helix" && helix > 0:
		j.onto(p, to.at)
		centre := along(to.at, to.ahead, helix)
		drop := p.z - z
		turns := ceilDiv(rampLength(drop, j.tool.RampDegrees), Length(math.Floor(2*math.Pi*float64(helix))))
		halves := [2]geom.Point{along(centre, to.ahead, helix), to.at}
		for i, top := Length(0), p.z; i < 2*turns; i++ {
			p.z = top - drop*(i+1)/(2*turns)
			p.arcTo(halves[i%2], centre)
		}
	default:
		j.onto(p, to.at)
		drop := p.z - z
		run := rampLength(drop, j.tool.RampDegrees)
		legs := 2 * ceilDiv(run, 2*to.length)
		far := along(to.at, to.ahead, ceilDiv(run, legs))
		for i, top := Length(0), p.z; i < legs; i++ {
			end := far
			if i%2 == 1 {
				end = to.at
			}
			p.rampTo(end, top-drop*(i+1)/legs)
		}
	}
}

// over brings the bit to a point: at the level before, or the first time through
// the air and down to just above the wood.
func (j *job) over(p *path, at geom.Point) {
	if len(p.moves) > 0 {
		p.lineTo(at)
		return
	}
	p.at = at
	p.add(model.Move{Kind: model.MoveRapid})
	p.rapidTo(approach)
}

// onto brings the bit to a point as over does, and then to just off the wood.
func (j *job) onto(p *path, at geom.Point) {
	j.over(p, at)
	if p.z > touch {
		p.rampTo(at, touch)
	}
}

// helix returns the radius of the circle that the bit's centre goes round: a
// path 50 to 90 % of the bit across, so that nothing stands in its middle, or 0
// where there is no room for one.
func (j *job) helix(at entry) Length {
	most := min(j.tool.Diameter*9/20, at.beside, at.room/2)
	if 4*most < j.tool.Diameter {
		return 0
	}
	return most
}
