package boards

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/expr"
	"barwright/lang/length"
)

// start is the nearest start of the run with which each of its boxes catches enough studs,
// with room for a driver beside each, and what is in the wall stays behind the box that it is
// behind, with the same room. ok is false where the run cannot be shifted, or none is found
// within a spacing.
func (c *catching) start() (start length.Length, ok bool) {
	block := c.Block("run." + c.run.Name)
	now, right := c.Length(block, "start"), c.Text(block, "from") == "right"
	begin, end, _ := c.Stretch(block, c.Block("wall."+c.wall.Name))
	if at, _ := c.wall.Frame.Local(c.run.Frame.Origin); right && at+c.run.Length != c.wall.Length-now || !right && at != now {
		return 0, false // a wall that leans in says where it starts
	}
	spare, rest := end-begin-c.run.Length, -1
	for i := range c.run.Boxes {
		box := &c.run.Boxes[i]
		if block.Attr("length") != nil || box.Kind == model.Bay || c.Value(c.Block(box.Key()), "width").Kind == expr.Length {
			continue
		}
		if rest >= 0 {
			return 0, false // two rests share what is left
		}
		rest, spare = i, box.Inside.U.Size()/2
	}
	c.inWall = c.thingsInWall()
	step := length.Up(6*length.Millimetre, c.Marks)
	for far := step; far < min(c.usual, length.Metre); far += step {
		for _, by := range []length.Length{far, -far} {
			if by <= spare && now+by >= 0 && c.holdsAll(by, rest, right) {
				return now + by, true
			}
		}
	}
	return 0, false
}

// holdsAll tries a start that is larger by so much. The box that takes the rest, if any,
// becomes narrower by it, and those beyond stay.
func (c *catching) holdsAll(by length.Length, rest int, right bool) bool {
	for i := range c.run.Boxes {
		box := &c.run.Boxes[i]
		u := c.shifted(i, box.Inside.U, by, rest, right)
		have, _ := c.caught(u.Grow(-driverRoom))
		if _, need := c.caught(box.Inside.U); box.Kind == model.Cabinet && have < need {
			return false
		}
		for _, thing := range c.inWall {
			if box.Inside.U.Overlaps(thing) && !u.Contains(thing.Grow(driverRoom)) {
				return false
			}
		}
	}
	return true
}

// shifted is where a stretch of a box comes to lie then.
func (c *catching) shifted(i int, u geom.Span, by length.Length, rest int, right bool) geom.Span {
	move := geom.Span{Lo: by, Hi: by}
	switch beyond := rest >= 0 && (i > rest) != right; {
	case i == rest && right:
		move.Lo = 0
	case i == rest:
		move.Hi = 0
	case beyond:
		move = geom.Span{}
	}
	if right {
		move = geom.Span{Lo: -move.Lo, Hi: -move.Hi}
	}
	return geom.Span{Lo: u.Lo + move.Lo, Hi: u.Hi + move.Hi}
}

// thingsInWall is what the boxes stand before, along the run: cover plates, pipes and vents.
func (c *catching) thingsInWall() (out []geom.Span) {
	add := func(along, wide length.Length) {
		u, _ := c.run.Frame.Local(c.wall.Frame.At(along, 0))
		out = append(out, geom.About(u, wide))
	}
	for _, o := range c.wall.Outlets {
		add(o.Along, o.Cover.Width)
	}
	for _, s := range c.wall.Stubs {
		add(s.Along, s.Diameter)
	}
	for _, v := range c.wall.Vents {
		add(v.Along, v.Width)
	}
	return out
}
