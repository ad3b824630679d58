package replay

import (
	"errors"
	"fmt"
	"slices"
)

// finished checks that the bit is up and that every work is done.
func (c *cutter) finished(tape *Tape) error {
	last := tape.Motions[len(tape.Motions)-1]
	if min(tape.Motions[0].From.Z, last.To.Z) < c.clearance-depthSlack {
		return errors.New("the program does not begin and end at the clearance")
	}
	for _, s := range c.sites {
		if err := c.done(s); err != nil {
			return err
		}
	}
	for _, s := range c.sites {
		if i := slices.Index(s.used, false); i >= 0 {
			return fmt.Errorf("%s is not cut at its level %.3f mm deep", s.name, s.levels[i])
		}
	}
	for _, piece := range c.against {
		if left, ok := piece.bare(c.climbed); ok {
			return fmt.Errorf("the wall beside X%.3f Y%.3f is followed the wrong way round", left.a.x, left.a.y)
		}
	}
	return nil
}

func (c *cutter) done(s *site) error {
	if s.freed {
		return c.severed(s)
	}
	covered := s.cut(s.depth)
	for _, rim := range c.layerAt(s.depth).border {
		for _, w := range rim.walls {
			if w.farther(s.reach.diagonal(), 0) {
				continue
			}
			r := leftBeside
			if w.round {
				r += c.chord
			}
			covered = append(covered, swath{w.stretch, r})
		}
	}
	for _, room := range s.rings {
		if err := remainder(room, c.piece, covered); err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
	}
	return nil
}

// cut returns what has been cut level as deep as told, or deeper.
func (s *site) cut(depth float64) []swath {
	var out []swath
	for i, swath := range s.level {
		if s.deep[i] >= depth-depthSlack {
			out = append(out, swath)
		}
	}
	return out
}

// layerAt returns the layer that a depth lies in.
func (c *cutter) layerAt(depth float64) *layer {
	i := 0
	for depth > c.layers[i].to {
		i++
	}
	return c.layers[i]
}

// remainder looks for wood of a piece inside a room that is not covered.
func remainder(room, piece ring, covered []swath) error {
	return rows(covered, room.box.low.y, room.box.high.y, rowStep, func(y float64, covered []interval) error {
		for _, part := range common(room.across(y), piece.across(y)) {
			if left := gap(part, covered); left.hi-left.lo > rowStep {
				return fmt.Errorf("wood is left inside, from X%.3f to X%.3f at Y%.3f", left.lo, left.hi, y)
			}
		}
		return nil
	})
}

// severed checks that what a cut frees hangs on its tabs and on nothing else.
func (c *cutter) severed(s *site) error {
	if len(s.tabs) == 0 {
		return fmt.Errorf("%s: no tab holds what it frees", s.name)
	}
	top, walls, middle := 0.0, s.cut(s.depth), s.cut(s.depth)
	for _, t := range s.tabs {
		top = max(top, t.top)
		for _, side := range t.ring.edges {
			walls = append(walls, swath{side.stretch, c.radius + tabSlack})
		}
		for _, piece := range t.middle {
			middle = append(middle, swath{piece, tabSlack})
		}
	}
	for _, at := range [...]struct {
		off     float64
		covered []swath
		where   string
	}{
		{nearBy, s.cut(top - tabSlack), "above its tabs"},
		{nearBy, walls, "beside its tabs"},
		{c.radius, middle, "between its tabs"},
	} {
		for _, piece := range c.line(s, at.off) {
			if left, ok := piece.bare(at.covered); ok {
				return fmt.Errorf("%s is not cut through %s, from X%.3f Y%.3f to X%.3f Y%.3f",
					s.name, at.where, left.a.x, left.a.y, left.b.x, left.b.y)
			}
		}
	}
	return nil
}

// line returns a line off the walls that a work leaves, on the side of its waste.
// Where these have gaps, as at the edges of the wood, it has them too.
func (c *cutter) line(s *site, off float64) []stretch {
	var out []stretch
	for _, rim := range c.layers[len(c.layers)-1].border {
		var before *wall
		for i, w := range rim.walls {
			if w.work != s.work {
				continue
			}
			d := off
			if w.round {
				d += c.chord
			}
			piece := w.shifted(s.waste() * d)
			if i == 0 {
				before = &rim.walls[len(rim.walls)-1]
			}
			if before != nil && before.b == w.a {
				out = append(out, stretch{before.shifted(s.waste() * off).b, piece.a})
			}
			out = append(out, piece)
			before = &rim.walls[i]
		}
	}
	return out
}

// bare returns the longest part of a stretch that the swaths do not cover; ok is false
// where they cover it.
func (s stretch) bare(covered []swath) (left stretch, ok bool) {
	l := s.length()
	if l <= shortest {
		return stretch{}, false
	}
	var in []interval
	for _, c := range covered {
		if s.farther(c.stretch, c.r) {
			continue
		}
		if part := c.on(s); part.lo <= part.hi {
			in = append(in, part)
		}
	}
	open := gap(interval{0, l}, joined(in))
	if open.hi-open.lo <= shortest {
		return stretch{}, false
	}
	return s.part(open.lo/l, open.hi/l), true
}
