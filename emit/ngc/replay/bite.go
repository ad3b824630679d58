package replay

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// rounding is how much lower than told a piece may end, in mm: the last decimal of both
// its ends, where four of an inch are written.
const rounding = 0.00254

// atRim is how much of the bit's rim takes no bite, in mm: pieces that stand for one arc,
// parted otherwise, differ by less; where the text has chords for them, by chord more.
const atRim = 0.005

// cut lowers the samples under a move, and judges what it takes.
func (c *cutter) cut(m Motion, plan []slope, at []*site) error {
	run, bite, deepest := 0.0, 0.0, 0.0
	for _, piece := range plan {
		run += piece.length()
	}
	for _, under := range c.unders(m, plan) {
		for _, s := range c.sites {
			if under.box().apart(s.grid.box) {
				continue
			}
			b, d := s.grid.cut(&under.swath, atRim+c.chord, under.low)
			bite, deepest = max(bite, b), max(deepest, d)
		}
	}
	if bite > depthSlack && m.From.Z > m.To.Z {
		if err := c.comesDown(m, plan, at, run); err != nil {
			return err
		}
	}
	if deepest > c.stepdown+rampStep+depthSlack {
		return fmt.Errorf("takes %.3f mm at once; the step-down is %.3f mm", deepest, c.stepdown)
	}
	return nil
}

// lowered is what the bit sweeps, and its height.
type lowered struct {
	swath
	low float64
}

// unders returns what a move sweeps. A ramp is cut as short level pieces, at the lower end
// of each.
func (c *cutter) unders(m Motion, plan []slope) []lowered {
	var out []lowered
	if m.From.Z == m.To.Z {
		for _, s := range m.level(c.radius) {
			out = append(out, lowered{s, m.To.Z})
		}
		return out
	}
	for _, piece := range plan {
		n := max(1, math.Ceil(math.Abs(piece.from-piece.to)/rampStep))
		if piece.a == piece.b {
			n = 1
		}
		drop := piece.from - piece.to
		for k := 0.0; k < n; k++ {
			low := min(piece.from-drop*k/n, piece.from-drop*(k+1)/n)
			out = append(out, lowered{straight(piece.part(k/n, (k+1)/n), c.radius), low})
		}
	}
	return out
}

// comesDown judges a way down into wood: on a ramp, or straight down where a bit as
// wide as its hole bores, from above the top each time.
func (c *cutter) comesDown(m Motion, plan []slope, at []*site, run float64) error {
	drop := m.From.Z - m.To.Z
	bores := run == 0 && slices.ContainsFunc(at, func(s *site) bool { return s.straight && s.rings[0].inside(plan[0].a) })
	switch {
	case !bores && drop > float64(run*c.steepest)+rounding:
		return fmt.Errorf("comes down into the wood by %.3f mm over a run of %.3f mm: too steep", drop, run)
	case bores && !c.risen:
		return errors.New("bores on without having been above the top")
	}
	if bores {
		c.risen = false
		c.levelled(at, plan, -m.To.Z)
	}
	return nil
}
