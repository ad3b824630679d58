package solve

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/survey"
	"barwright/lang"
	"barwright/lang/length"
)

// scribing is an edge of an upright part that is cut on site to what it meets there.
type scribing struct {
	edge   model.Edge
	wall   *model.Wall   // nil of the floor
	over   length.Length // of the floor: the gap that is kept under the part
	beyond length.Length // what the blank has beyond the furthest that it is cut at
}

// toCut is a scribing of a part that has been made.
type toCut struct {
	part int
	scribing
}

// toWall is how an edge is cut to the wall that its run meets at an end; nothing where that
// end is free, or the wall is taken to be straight and plumb.
func (s *solver) toWall(run *model.Run, b *lang.Block, end model.End, c scribing) []scribing {
	if c.wall = s.wallAt(run, b, end); c.wall == nil || len(c.wall.Read) == 0 {
		return nil
	}
	return []scribing{c}
}

// toFloor is how a lower edge is cut to the floor, where there are readings of that.
func (s *solver) toFloor(over, beyond length.Length) []scribing {
	if len(s.m.Room.Floor.Readings) == 0 {
		return nil
	}
	return []scribing{{edge: model.Bottom, over: over, beyond: beyond}}
}

// toScribe makes the box of a part that is about to be made large enough for what is cut
// off it on site, and has its lines drawn once all else is cut.
func (s *solver) toScribe(frame geom.Frame, box geom.Box, out geom.Dir, all []scribing) geom.Box {
	for _, c := range all {
		s.toCut = append(s.toCut, toCut{len(s.m.Parts), c})
		box = s.blankFor(geom.Place(frame, box, out), c)
	}
	for i := range all { // each line is longer by what the other edge gained
		box = s.blankFor(geom.Place(frame, box, out), all[i])
	}
	return box
}

// blankFor is the box of a part whose scribed edge lies as far beyond its line as is asked
// for, or on the line's furthest point.
func (s *solver) blankFor(at geom.Placement, c scribing) geom.Box {
	line := s.lineOf(at, c, wholeEdge(at, c.edge))
	if len(line) == 0 {
		return at.Box
	}
	blank := at.Blank()
	axis, span := at.X, at.Box.Along(at.X.Axis)
	if c.edge == model.Bottom {
		axis, span = at.Y, at.Box.Along(at.Y.Axis)
	}
	high := c.edge == model.RightEdge
	grow := length.Length(math.MinInt64)
	for _, p := range line {
		switch c.edge {
		case model.RightEdge:
			grow = max(grow, p.X-blank.X.Hi)
		case model.LeftEdge:
			grow = max(grow, -p.X)
		default:
			grow = max(grow, -p.Y)
		}
	}
	grow += c.beyond
	if high != axis.Neg {
		span.Hi += grow
	} else {
		span.Lo -= grow
	}
	return at.Box.With(axis.Axis, span)
}

// wholeEdge is the whole extent of a part's edge.
func wholeEdge(at geom.Placement, edge model.Edge) geom.Span {
	if edge == model.Bottom {
		return at.Blank().X
	}
	return at.Blank().Y
}

// lineOf is where a part meets the floor or a wall, on its drawn face: along a stretch of
// its lower edge, or up a stretch of one beside it.
func (s *solver) lineOf(at geom.Placement, c scribing, stretch geom.Span) []geom.Point {
	if c.wall == nil {
		return s.floorLine(at, c.over, stretch)
	}
	return wallLine(at, c.wall, s.faceOf(c.wall), stretch)
}

// planOf is where a place of a part's drawn face is in the room's plan, x from its left.
func planOf(at geom.Placement, x length.Length) geom.Point {
	side, face := at.Box.Along(at.X.Axis), at.Box.Along(at.Out.Axis)
	on, off := side.Lo+x, face.Hi
	if at.X.Neg {
		on = side.Hi - x
	}
	if at.Out.Neg {
		off = face.Lo
	}
	if at.X.Axis == geom.U {
		return at.Frame.At(on, off)
	}
	return at.Frame.At(off, on)
}

// faceX is the other way round.
func faceX(at geom.Placement, p geom.Point) length.Length {
	on, v := at.Frame.Local(p)
	if at.X.Axis == geom.V {
		on = v
	}
	if side := at.Box.Along(at.X.Axis); at.X.Neg {
		return side.Hi - on
	} else {
		return on - side.Lo
	}
}

func (s *solver) floorLine(at geom.Placement, over length.Length, stretch geom.Span) []geom.Point {
	var line []geom.Point
	for _, r := range s.ground.Along(planOf(at, stretch.Lo), planOf(at, stretch.Hi)) {
		x := min(max(faceX(at, r.At), stretch.Lo), stretch.Hi) // the way round by the room's plan rounds
		line = append(line, geom.Point{X: x, Y: r.Value + over - at.Box.Z.Lo})
	}
	return line
}

// wallLine is where the drawn face of a part cuts a wall's face. Where the part is square
// to the wall that is straight up the wall, otherwise it wanders with the wall's face.
func wallLine(at geom.Placement, wall *model.Wall, face survey.Surface, stretch geom.Span) []geom.Point {
	const metre = length.Metre
	a0, o0 := wall.Frame.Local(planOf(at, 0))
	a1, o1 := wall.Frame.Local(planOf(at, metre))
	aside, outward := float64(a1-a0)/float64(metre), float64(o1-o0)/float64(metre)
	if math.Abs(outward) < 0.1 {
		return nil // the part lies along the wall
	}
	placeOn := func(x length.Length) length.Length { return a0 + length.Length(math.Round(float64(aside*float64(x)))) }
	meets := func(z length.Length) geom.Point {
		x := length.Length(math.Round(-float64(o0) / outward))
		for range settled {
			off, _ := face.At(geom.Point{X: placeOn(x), Y: z})
			x = length.Length(math.Round(float64(off-o0) / outward))
		}
		return geom.Point{X: x, Y: z - at.Box.Z.Lo}
	}
	line := []geom.Point{meets(stretch.Lo + at.Box.Z.Lo), meets(stretch.Hi + at.Box.Z.Lo)}
	for range settled {
		var bent []geom.Point
		for i, p := range line[1:] {
			q := line[i]
			for _, r := range face.Along(geom.Point{X: placeOn(q.X), Y: q.Y + at.Box.Z.Lo}, geom.Point{X: placeOn(p.X), Y: p.Y + at.Box.Z.Lo}) {
				if m := meets(r.At.Y); len(bent) == 0 || m.Y > bent[len(bent)-1].Y {
					bent = append(bent, m)
				}
			}
		}
		line = straightened(bent)
	}
	return line
}

// settled is how often a place on a wall that leans from square is found anew: each time
// what is missing is at most a twentieth of what was.
const settled = 4

// straightened leaves out what lies within two nanometres on the line between its
// neighbours; y rises along the line.
func straightened(line []geom.Point) []geom.Point {
	var out []geom.Point
	for _, p := range line {
		for len(out) > 1 {
			a, b := out[len(out)-2], out[len(out)-1]
			x := float64(a.X) + float64(float64(p.X-a.X)*(float64(b.Y-a.Y)/float64(p.Y-a.Y)))
			if math.Abs(x-float64(b.X)) > 2 {
				break
			}
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	return out
}

// scribe draws the lines of all edges that are cut on site.
func (s *solver) scribe() {
	for _, c := range s.toCut {
		part := &s.m.Parts[c.part]
		edge := c.edgeOf(part)
		line := s.lineOf(part.Placement, c.scribing, edge)
		if len(line) < 2 {
			continue
		}
		drawn := model.Scribe{Edge: c.edge, To: model.ToFloor, Line: line}
		if c.wall != nil {
			drawn.To = "wall." + c.wall.Name
		}
		if !s.leavesWood(part, &drawn) {
			continue
		}
		drawn.From = s.tapeFrom(&c)
		drawn.Stations = s.stations(part, &drawn)
		part.Scribes = append(part.Scribes, drawn)
		for i, p := range line[1:] {
			part.Marks = append(part.Marks, model.Mark{Name: drawn.Name(), From: line[i], To: p, Why: part.Why})
		}
	}
}

// edgeOf is as much of a part's scribed edge as is left by what is cut out of the part.
func (c *toCut) edgeOf(part *model.Part) geom.Span {
	blank := part.Placement.Blank()
	on := geom.Span{Lo: length.Max, Hi: -length.Max}
	for _, v := range part.Outline {
		switch {
		case c.edge == model.Bottom && v.Y == blank.Y.Lo:
			on = on.Union(geom.Span{Lo: v.X, Hi: v.X})
		case c.edge == model.LeftEdge && v.X == blank.X.Lo, c.edge == model.RightEdge && v.X == blank.X.Hi:
			on = on.Union(geom.Span{Lo: v.Y, Hi: v.Y})
		}
	}
	return on
}

// leavesWood refuses a part that what it is cut to takes away somewhere over its whole width.
func (s *solver) leavesWood(part *model.Part, c *model.Scribe) bool {
	_, keep := c.Cut(part, c.Line[0])
	for _, p := range c.Line[1:] {
		_, left := c.Cut(part, p)
		keep = min(keep, left)
	}
	if keep > 0 {
		return true
	}
	to := "The floor"
	if c.To != model.ToFloor {
		to = "The face of " + s.Block(c.To).Describe()
	}
	s.Findings.Errorf("scribe-takes-all", part.Why.At, "move it off there, or make it wider",
		"%s comes where %s of %s would be, by %s: nothing is left of it there.", to, part.Named(), part.Owner, s.Show(-keep))
	return false
}

// tapeFrom is the edge that the stations of a scribe are counted from: the one on the
// left or below, or the one across where that is scribed too.
func (s *solver) tapeFrom(c *toCut) model.Edge {
	from := model.Bottom
	if c.edge == model.Bottom {
		from = model.LeftEdge
	}
	for _, o := range s.toCut {
		if o.part == c.part && o.edge == from {
			return from.Opposite()
		}
	}
	return from
}

// stations measures a scribe's line at its ends, at each bend, and at least every 6 in or
// 150 mm.
func (s *solver) stations(part *model.Part, c *model.Scribe) []model.Station {
	step := model.StationStep(s.Source.Unit)
	line := c.Line
	if c.From == model.RightEdge || c.From == model.Top {
		line = slices.Clone(line)
		slices.Reverse(line)
	}
	place := func(p geom.Point) length.Length {
		blank := part.Placement.Blank()
		switch c.From {
		case model.LeftEdge:
			return p.X
		case model.RightEdge:
			return blank.X.Hi - p.X
		case model.Bottom:
			return p.Y
		}
		return blank.Y.Hi - p.Y
	}
	var out []model.Station
	measure := func(p geom.Point) {
		cut, _ := c.Cut(part, p)
		out = append(out, model.Station{Along: place(p), Cut: cut, Keep: c.Left(part, p)})
	}
	measure(line[0])
	for i, p := range line[1:] {
		q := line[i]
		for at := (place(q)/step + 1) * step; at < place(p); at += step {
			measure(partWay(q, p, float64(at-place(q))/float64(place(p)-place(q))))
		}
		measure(p)
	}
	return out
}

// partWay is the point of a line from p to q at a share of its length.
func partWay(p, q geom.Point, share float64) geom.Point {
	return geom.Point{
		X: p.X + length.Length(math.Round(float64(share*float64(q.X-p.X)))),
		Y: p.Y + length.Length(math.Round(float64(share*float64(q.Y-p.Y)))),
	}
}

// wallAt is the wall that an end of a run meets; nil of a free end.
func (s *solver) wallAt(run *model.Run, b *lang.Block, end model.End) *model.Wall {
	wall := s.Ref(b, "along")
	switch {
	case run.FreeAt(end):
		return nil
	case wall == nil:
		return s.wall(run.Wall)
	case end == model.Left:
		return s.wall(s.WallBefore(wall).Name)
	}
	return s.wall(s.WallAfter(wall).Name)
}
