package replay

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// What is let through, in mm.
const (
	sideSlack   = 0.01 - 2*sag // into a wall
	depthSlack  = 0.01         // the last decimal of the text
	leftBeside  = 0.012        // of a wall: wood closer to it is not asked for
	rowStep     = 0.025        // between rows, and the longest gap in one
	rampStep    = 0.05         // height of the level pieces that stand for a ramp
	aboveWood   = 0.5          // where a rapid move down must end
	travelSlack = 0.01         // the last decimal of the text
	aroundBit   = 5.0          // how far the bit may leave the recess, beyond its diameter
)

// Check reads a program's text and cuts it. The error, if any, is the first
// thing that is wrong: text that is not understood, settings other than the
// Program's, more travel than the machine has, a rapid move through wood or below
// the clearance, a feed without the spindle, a plunge or a ramp too steep, a bite
// too deep, a level that is not the Program's, wood touched outside the recess or
// below its depth, or wood left inside. The recess is Program.Shape, whose inside
// corners are as round as the bit leaves them, with Program.Reliefs.
//
// Nothing of this is sampled, beside how deep a bite is:
//
//   - A gouge is a place where the bit's centre, anywhere along a move below the
//     top, lies in the wood that must stay, or nearer to its border than the bit's
//     radius less sideSlack. The distance of two straight pieces is exact. Arcs, of
//     the path and of the border, are straight pieces that leave them by sag at most:
//     each takes sag off the 0.01 mm, so that no deeper gouge passes.
//   - A remainder is looked for along rows, rowStep apart. What the bit covers of a
//     row, moving level at the floor, is a union of pieces whose ends are computed;
//     a gap of more than rowStep is refused. A disc of wood that is 0.036 mm across
//     has a row within half a step of its centre, which it meets over 0.0259 mm: it
//     is found wherever it lies. Beside walls leftBeside is not asked for, and sag is
//     lost on either side of an arc: all wood that is 0.05 mm wide, or stands 0.05 mm
//     beside a wall, is found. Along round walls whose arcs are written as straight
//     pieces, these may leave so much more wood as the dialect allows.
func Check(text []byte, p *model.Program) error {
	if err := check(text, p); err != nil {
		return fmt.Errorf("program %s: %w", p.Name, err)
	}
	return nil
}

func check(text []byte, p *model.Program) error {
	tape, err := Read(text, p.Tool.Dialect)
	if err != nil {
		return err
	}
	if err := sameSettings(tape, p.Tool); err != nil {
		return err
	}
	if err := tape.within(p.Tool.Travel); err != nil {
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

// sameSettings compares what the text sets with the tool.
func sameSettings(tape *Tape, t model.Tool) error {
	switch {
	case tape.Inch != t.Dialect.Inch:
		return errors.New("the units are not those of the dialect")
	case tape.Percent != t.Dialect.Percent:
		return errors.New("the percent lines are not as the dialect wants them")
	case tape.Tool != t.Number:
		return fmt.Errorf("bit T%d instead of T%d", tape.Tool, t.Number)
	case tape.Changed != t.Dialect.Change:
		return errors.New("the bit is not changed as the dialect has it")
	case tape.RPM != t.RPM:
		return fmt.Errorf("spindle speed %d instead of %d", tape.RPM, t.RPM)
	case len(tape.Motions) == 0:
		return errors.New("nothing moves")
	}
	return nil
}

// within checks that the box of all positions is no larger than the travel. Where in its
// travel the machine is when zero is set, nobody knows here.
func (t *Tape) within(travel model.Travel) error {
	low, high := t.Motions[0].From, t.Motions[0].From
	for _, m := range t.Motions {
		for _, q := range m.corners() {
			low = Point{min(low.X, q.X), min(low.Y, q.Y), min(low.Z, q.Z)}
			high = Point{max(high.X, q.X), max(high.Y, q.Y), max(high.Z, q.Z)}
		}
	}
	for _, axis := range [...]struct {
		name       string
		have, most float64
	}{
		{"X", high.X - low.X, travel.X.MM()},
		{"Y", high.Y - low.Y, travel.Y.MM()},
		{"Z", high.Z - low.Z, travel.Z.MM()},
	} {
		if axis.most > 0 && axis.have > axis.most+travelSlack {
			return fmt.Errorf("moves over %.3f mm in %s; the machine's travel is %.3f mm", axis.have, axis.name, axis.most)
		}
	}
	return nil
}

// corners returns points whose box holds a move.
func (m Motion) corners() []Point {
	out := []Point{m.From, m.To}
	if m.Arc {
		for _, s := range path(m) {
			out = append(out, Point{s.a.x, s.a.y, m.To.Z})
		}
	}
	return out
}

// cutter is the bit, and the wood that it has not yet cut.
type cutter struct {
	wood            *wood
	grid            *grid
	floor           []swath   // cut level, at the depth of the recess
	levels          []float64 // heights where the bit may cut level
	chord           float64   // how far a straight piece may leave an arc
	radius          float64
	depth, stepdown float64
	clearance       float64
	feed, plunge    float64
	steepest        float64 // tangent of the ramp angle
	last            float64 // one step of the text's last decimal, which heights and runs may miss by
	low, high       spot    // corners of where the bit's centre may be
}

func newCutter(p *model.Program) *cutter {
	t := p.Tool
	w := woodOf(p)
	reach := p.Shape.Bounds().Union(geom.Rect{})
	margin := t.Diameter.MM() + aroundBit
	c := &cutter{
		wood: w,
		// Roughing leaves the allowance, half as much again where it is a line through
		// the middle, and √2 of that in a square corner.
		grid:      newGrid(w, 1.5*math.Sqrt2*t.Finish.MM()+leftBeside),
		radius:    t.Diameter.MM() / 2,
		depth:     p.Depth.MM(),
		stepdown:  t.Stepdown.MM(),
		clearance: t.Clearance.MM(),
		feed:      t.Feed.MM(),
		plunge:    t.Plunge.MM(),
		steepest:  math.Tan((t.RampDegrees + 0.05) * math.Pi / 180),
		last:      lastDecimal(t.Dialect),
		low:       spot{reach.X.Lo.MM() - margin, reach.Y.Lo.MM() - margin},
		high:      spot{reach.X.Hi.MM() + margin, reach.Y.Hi.MM() + margin},
	}
	if t.Dialect.Chords {
		c.chord = t.Dialect.Chord.MM()
	}
	for _, l := range p.Levels {
		c.levels = append(c.levels, -l.MM())
	}
	return c
}

// lastDecimal returns one step of the last decimal that a dialect writes, in mm.
func lastDecimal(d model.Dialect) float64 {
	unit := 1.0
	if d.Inch {
		unit = 25.4
	}
	return unit / math.Pow10(d.Decimals)
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
	case m.Sweep < 0:
		return errors.New("an arc clockwise, which leaves the wood on the wrong side")
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
	if m.From.Z == m.To.Z && !slices.ContainsFunc(c.levels, func(z float64) bool { return math.Abs(z-m.To.Z) <= depthSlack }) {
		return fmt.Errorf("cuts level at Z%.3f, which is none of the levels", m.To.Z)
	}
	if err := c.touches(plan); err != nil {
		return err
	}
	if max(m.From.Z, m.To.Z) <= -c.depth+depthSlack {
		c.floor = append(c.floor, swaths(plan, c.radius)...)
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
			if piece.farther(border.stretch, reach) {
				continue
			}
			if d := piece.distance(border.stretch); d < reach {
				return fmt.Errorf("the bit cuts %.3f mm into wood that must stay, near X%.3f Y%.3f",
					c.radius-d, border.a.x, border.a.y)
			}
		}
	}
	return nil
}

// swaths returns what a bit sweeps along pieces.
func swaths(plan []stretch, radius float64) []swath {
	out := make([]swath, len(plan))
	for i, piece := range plan {
		out[i] = swath{piece, radius}
	}
	return out
}

// cut lowers the samples under a move. A ramp is cut as short level pieces, at
// the lower end of each.
func (c *cutter) cut(m Motion, plan []stretch) error {
	run := 0.0
	for _, piece := range plan {
		run += piece.length()
	}
	drop := m.From.Z - m.To.Z
	bite, deepest, gone, z := 0.0, 0.0, 0.0, m.From.Z
	for _, piece := range plan {
		from := z
		gone += piece.length()
		if z = m.To.Z; gone < run {
			z = m.From.Z - float64(drop*gone/run)
		}
		n := max(1, math.Ceil(math.Abs(from-z)/rampStep))
		for k := 0.0; k < n; k++ {
			low := min(from-(from-z)*k/n, from-(from-z)*(k+1)/n)
			c.grid.near(swath{stretch{piece.along(k / n), piece.along((k + 1) / n)}, c.radius}, func(from, to int) {
				b, d := c.grid.lower(from, to, low)
				bite, deepest = max(bite, b), max(deepest, d)
			})
		}
	}
	switch {
	case bite > depthSlack && drop > 0 && drop-c.last > (run+c.last)*c.steepest:
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
	covered := slices.Clone(c.floor)
	for _, b := range c.wood.border {
		r := leftBeside
		if b.round {
			r += c.chord
		}
		covered = append(covered, swath{b.stretch, r})
	}
	for _, room := range c.wood.rooms {
		if err := remainder(room, covered); err != nil {
			return err
		}
	}
	return nil
}

// remainder looks for wood inside a closed border that is not covered.
func remainder(room []stretch, covered []swath) error {
	low, high := extent(room)
	return rows(covered, low, high, rowStep, func(y float64, covered []interval) error {
		for _, piece := range across(room, y) {
			if left := gap(piece, covered); left.hi-left.lo > rowStep {
				return fmt.Errorf("wood is left inside the recess, from X%.3f to X%.3f at Y%.3f", left.lo, left.hi, y)
			}
		}
		return nil
	})
}
