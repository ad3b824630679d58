package replay

import (
	"errors"
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// What is let through, in mm: the last decimal of the text and the straight
// pieces that stand for arcs.
const (
	sideSlack  = 0.01 // into a wall
	depthSlack = 0.01
	leftBeside = 0.05 // a wall: samples closer to it are not asked for
	rampStep   = 0.05 // height of the level pieces that stand for a ramp
	aboveWood  = 0.5  // where a rapid move down must end
	aroundBit  = 5.0  // how far the bit may leave the recess, beyond its diameter
)

// Check reads a program's text and cuts it. The error, if any, is the first
// thing that is wrong: text that is not understood, settings other than the
// Program's, a rapid move through wood or below the clearance, a feed without
// the spindle, a plunge or a ramp too steep or a bite too deep, wood touched
// outside the recess or below its depth, or wood left inside. The recess is
// Program.Shape, whose inside corners are as round as the bit leaves them.
func Check(text []byte, p *model.Program) error {
	if err := check(text, p); err != nil {
		return fmt.Errorf("program %s: %w", p.Name, err)
	}
	return nil
}

func check(text []byte, p *model.Program) error {
	tape, err := Read(text)
	if err != nil {
		return err
	}
	if err := sameSettings(tape, p); err != nil {
		return err
	}
	c := newCutter(p)
	for _, m := range tape.Motions {
		if err := c.motion(m); err != nil {
			return fmt.Errorf("line %d: %w", m.Line, err)
		}
	}
	return c.finished(tape)
}

// sameSettings compares what the text sets with the Program.
func sameSettings(tape *Tape, p *model.Program) error {
	switch t := p.Tool; {
	case tape.Inch != t.Dialect.Inch:
		return errors.New("the units are not those of the dialect")
	case tape.Percent != t.Dialect.Percent:
		return errors.New("the percent lines are not as the dialect wants them")
	case tape.Tool != t.Number:
		return fmt.Errorf("bit T%d instead of T%d", tape.Tool, t.Number)
	case tape.RPM != t.RPM:
		return fmt.Errorf("spindle speed %d instead of %d", tape.RPM, t.RPM)
	case len(tape.Motions) == 0:
		return errors.New("nothing moves")
	}
	return nil
}

// cutter is the bit, and the wood that it has not yet cut.
type cutter struct {
	wood            *wood
	grid            *grid
	radius          float64
	depth, stepdown float64
	clearance       float64
	feed, plunge    float64
	steepest        float64 // tangent of the ramp angle
	low, high       spot    // corners of where the bit's centre may be
}

func newCutter(p *model.Program) *cutter {
	t := p.Tool
	w := woodOf(p)
	reach := p.Shape.Bounds().Union(geom.Rect{})
	margin := t.Diameter.MM() + aroundBit
	return &cutter{
		wood: w,
		// In a square corner roughing leaves √2 of the allowance.
		grid:      newGrid(w, leftBeside, 1.5*t.Finish.MM()+leftBeside),
		radius:    t.Diameter.MM() / 2,
		depth:     p.Depth.MM(),
		stepdown:  t.Stepdown.MM(),
		clearance: t.Clearance.MM(),
		feed:      t.Feed.MM(),
		plunge:    t.Plunge.MM(),
		steepest:  math.Tan((t.RampDegrees + 0.05) * math.Pi / 180),
		low:       spot{reach.X.Lo.MM() - margin, reach.Y.Lo.MM() - margin},
		high:      spot{reach.X.Hi.MM() + margin, reach.Y.Hi.MM() + margin},
	}
}

// motion judges a move and takes away the wood.
func (c *cutter) motion(m Motion) error {
	plan := path(m)
	for _, piece := range plan {
		if c.away(piece.a) || c.away(piece.b) {
			return errors.New("the bit travels far from the recess")
		}
	}
	switch {
	case max(m.From.Z, m.To.Z) > c.clearance+depthSlack:
		return errors.New("the bit rises above the clearance")
	case m.To.Z < -c.depth-depthSlack:
		return fmt.Errorf("%.3f mm below the floor of the recess", -c.depth-m.To.Z)
	}
	if m.Rapid {
		return c.rapid(m)
	}
	if !m.Spinning {
		return errors.New("a feed move while the spindle stands")
	}
	limit := c.feed
	if m.To.Z < m.From.Z {
		limit = max(limit, c.plunge)
	}
	if m.Feed > limit*1.001 {
		return fmt.Errorf("feed %.1f mm/min, above %.1f", m.Feed, limit)
	}
	if min(m.From.Z, m.To.Z) >= -depthSlack {
		return nil
	}
	if err := c.touches(plan); err != nil {
		return err
	}
	return c.cut(m, plan)
}

// away reports whether a point is farther from the recess than any move of the
// bit's centre needs to be.
func (c *cutter) away(p spot) bool {
	return p.x < c.low.x || p.x > c.high.x || p.y < c.low.y || p.y > c.high.y
}

// rapid lets the bit up anywhere, down to above the wood, and sideways at the
// clearance only.
func (c *cutter) rapid(m Motion) error {
	switch sideways := m.From.X != m.To.X || m.From.Y != m.To.Y; {
	case sideways && min(m.From.Z, m.To.Z) < c.clearance-depthSlack:
		return errors.New("a rapid move sideways, below the clearance")
	case m.To.Z < m.From.Z && m.To.Z < aboveWood:
		return errors.New("a rapid move down into the wood")
	case m.To.Z < m.From.Z && !m.Spinning:
		return errors.New("a rapid move down while the spindle stands")
	}
	return nil
}

// path returns a move in plan, as straight pieces.
func path(m Motion) []stretch {
	from, to := spot{m.From.X, m.From.Y}, spot{m.To.X, m.To.Y}
	if m.Arc {
		return chords(from, to, m.CX, m.CY, m.Sweep)
	}
	return []stretch{{from, to}}
}

// touches reports wood that must stay and that the bit comes into. This is
// exact: the bit meets it if its centre is in it, or nearer to its border than
// the bit's radius.
func (c *cutter) touches(plan []stretch) error {
	reach := c.radius - sideSlack
	for _, piece := range plan {
		if c.wood.holds(piece.a) {
			return fmt.Errorf("the bit is in the wood outside the recess, at X%.3f Y%.3f", piece.a.x, piece.a.y)
		}
		for _, border := range c.wood.border {
			if piece.farther(border, reach) {
				continue
			}
			if d := piece.distance(border); d < reach {
				return fmt.Errorf("the bit cuts %.3f mm into wood that must stay, near X%.3f Y%.3f",
					c.radius-d, border.a.x, border.a.y)
			}
		}
	}
	return nil
}

// cut lowers the samples under a move. A ramp is cut as short level pieces, at
// the lower end of each.
func (c *cutter) cut(m Motion, plan []stretch) error {
	drop := m.From.Z - m.To.Z
	n := max(1, math.Ceil(math.Abs(drop)/rampStep))
	bite, deepest := 0.0, 0.0
	for _, piece := range plan {
		for k := 0.0; k < n; k++ {
			z := min(m.From.Z-drop*k/n, m.From.Z-drop*(k+1)/n)
			part := stretch{piece.along(k / n), piece.along((k + 1) / n)}
			c.grid.near(part, c.radius, func(from, to int) {
				b, d := c.grid.lower(from, to, z)
				bite, deepest = max(bite, b), max(deepest, d)
			})
		}
	}
	run := math.Hypot(m.To.X-m.From.X, m.To.Y-m.From.Y)
	switch {
	case bite > depthSlack && drop > 0 && drop > run*c.steepest:
		return fmt.Errorf("comes down into the wood by %.3f mm over a run of %.3f mm: too steep", drop, run)
	case bite > depthSlack && drop > 0 && m.Feed > c.plunge*1.001:
		return fmt.Errorf("ramps down at %.1f mm/min, above %.1f", m.Feed, c.plunge)
	case deepest > c.stepdown+rampStep+depthSlack:
		return fmt.Errorf("takes %.3f mm at once; the step-down is %.3f mm", deepest, c.stepdown)
	}
	return nil
}

// finished checks that the bit is up and that all of the recess is cut.
func (c *cutter) finished(tape *Tape) error {
	last := tape.Motions[len(tape.Motions)-1]
	if min(tape.Motions[0].From.Z, last.To.Z) < c.clearance-depthSlack {
		return errors.New("the program does not begin and end at the clearance")
	}
	asked := 0
	for i, in := range c.grid.inside {
		if !in {
			continue
		}
		asked++
		if left := c.grid.height[i] + c.depth; left > depthSlack {
			at := c.grid.at(i)
			return fmt.Errorf("%.3f mm of wood is left inside the recess, near X%.3f Y%.3f", left, at.x, at.y)
		}
	}
	if asked == 0 {
		return errors.New("the recess is too small to be checked")
	}
	return nil
}

// along returns the point of a stretch at a share of its length.
func (s stretch) along(t float64) spot {
	return spot{s.a.x + t*(s.b.x-s.a.x), s.a.y + t*(s.b.y-s.a.y)}
}
