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
	if last.To.X != 0 || last.To.Y != 0 {
		return errors.New("the program does not end at X0 Y0")
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
	covered := s.cut(s.depth - depthSlack)
	for _, rim := range c.layerAt(s.depth).border {
		if rim.box.apart(s.reach) {
			continue
		}
		for _, w := range rim.walls {
			r := leftBeside
			if w.round {
				r += c.chord
			}
			covered = append(covered, straight(w.stretch, r))
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
		if s.deep[i] >= depth {
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
	var inRoom, inPiece, within []interval
	return rows(covered, room.box.low.y, room.box.high.y, rowStep, func(y float64, covered []interval) error {
		inRoom, inPiece = room.across(y, inRoom[:0]), piece.across(y, inPiece[:0])
		within = common(inRoom, inPiece, within[:0])
		for _, part := range within {
			if left := gap(part, covered); left.hi-left.lo > rowStep {
				return fmt.Errorf("wood is left inside, from X%.3f to X%.3f at Y%.3f", left.lo, left.hi, y)
			}
		}
		return nil
	})
}

// severed checks that what a cut frees hangs on its tabs and on nothing else: all along
// the walls it goes through, but where a tab is above half the bit, and there as deep as
// the tab's top. From where the bit is raised to where it comes down again, straight, it
// goes through but for the tab.
func (c *cutter) severed(s *site) error {
	if len(s.tabs) == 0 {
		return fmt.Errorf("%s: no tab holds what it frees", s.name)
	}
	through := s.cut(s.depth - depthSlack)
	above := make([][]swath, len(s.tabs))
	for i, t := range s.tabs {
		above[i] = s.cut(t.top - tabSlack)
	}
	seams := c.seams(s)
	for _, at := range seams {
		for i, t := range s.tabs {
			if part := t.on(at.middle, c.radius+tabSlack); part.lo <= part.hi {
				if err := s.through(at.wall, part, above[i]); err != nil {
					return err
				}
			}
		}
		for _, part := range beside(at.middle, s.tabs, c.radius+tabSlack) {
			if err := s.through(at.wall, part, through); err != nil {
				return err
			}
		}
	}
	for _, t := range s.tabs {
		line, ok := t.raised(seams, c.radius)
		if !ok {
			return fmt.Errorf("%s: the cut does not pass the tab at X%.3f Y%.3f", s.name, t.out.a.x, t.out.a.y)
		}
		for _, part := range beside(line, []tab{t}, tabSlack) {
			if err := s.through(line, part, through); err != nil {
				return err
			}
		}
	}
	return nil
}

// through checks that part of a line is covered.
func (s *site) through(line stretch, part interval, covered []swath) error {
	if left, ok := line.part(part.lo, part.hi).bare(covered); ok {
		return fmt.Errorf("%s is not cut through from X%.3f Y%.3f to X%.3f Y%.3f", s.name, left.a.x, left.a.y, left.b.x, left.b.y)
	}
	return nil
}

// seam is a piece of two lines beside a wall, on the side of the waste: nearBy off it, and
// in the middle of the cut.
type seam struct{ wall, middle stretch }

// seams returns the lines beside the walls that a work leaves. Where these have gaps, as at
// the edges of the wood, they have them too.
func (c *cutter) seams(s *site) []seam {
	var out []seam
	for _, rim := range c.layers[len(c.layers)-1].border {
		for i, w := range rim.walls {
			if w.work != s.work {
				continue
			}
			at := c.seam(w)
			before := rim.walls[(i+len(rim.walls)-1)%len(rim.walls)]
			if (stretch{before.b, w.a}).length() < shortest {
				last := c.seam(before)
				out = append(out, seam{stretch{last.wall.b, at.wall.a}, stretch{last.middle.b, at.middle.a}})
			}
			out = append(out, at)
		}
	}
	return out
}

func (c *cutter) seam(w wall) seam {
	off := nearBy
	if w.round {
		off += c.chord
	}
	return seam{w.shifted(w.work.waste() * off), w.shifted(w.work.waste() * c.radius)}
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
		if !c.box().diagonal().farther(s, shortest) {
			in = c.on(s, in)
		}
	}
	open := gap(interval{0, l}, joined(in))
	if open.hi-open.lo <= shortest {
		return stretch{}, false
	}
	return s.part(open.lo/l, open.hi/l), true
}
