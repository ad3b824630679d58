package replay

import (
	"errors"
	"fmt"
	"math"
)

// farthest bounds every position, in mm.
const farthest = 20_000

// halfTurn is how much more than half a turn an arc may be: the last decimal of
// both ends of half a circle. Nothing that is written turns further, so that an
// arc the wrong way round is seen by its length.
const halfTurn = 0.05

// motion reads one move.
func (c *control) motion(line int, code string, args arguments) error {
	if err := c.ready(code, args); err != nil {
		return err
	}
	if f, ok := args['F']; ok {
		c.feed = f * c.unit
	}
	m := Motion{Line: line, Rapid: code == "G0", From: c.at, To: c.target(args), Spinning: c.spinning}
	if !m.Rapid {
		m.Feed = c.feed
	}
	switch {
	case max(math.Abs(m.To.X), math.Abs(m.To.Y), math.Abs(m.To.Z)) > farthest:
		return errors.New("a position beyond any machine")
	case c.spinning && len(c.end) < len(c.dialect.End):
		return errors.New("a motion after the control's own lines of the end")
	case !m.Rapid && m.Feed <= 0:
		return errors.New("a feed move without a feed")
	case !m.Rapid && c.waited < c.dialect.SpinUp-0.001:
		return fmt.Errorf("a feed move %.3f s after the spindle's start, which takes %.3f s", c.waited, c.dialect.SpinUp)
	}
	if code == "G2" || code == "G3" {
		if c.dialect.Chords {
			return errors.New("an arc, which the dialect writes as straight pieces")
		}
		if err := c.arc(&m, code == "G3", args); err != nil {
			return err
		}
	}
	if c.xyKnown {
		c.tape.Motions = append(c.tape.Motions, m)
	}
	c.at, c.xyKnown, c.zKnown = m.To, c.zKnown, true // the order that ready enforces
	return nil
}

// target returns the end of a move; axes that are not written stay.
func (c *control) target(args arguments) Point {
	to := c.at
	if v, ok := args['X']; ok {
		to.X = v * c.unit
	}
	if v, ok := args['Y']; ok {
		to.Y = v * c.unit
	}
	if v, ok := args['Z']; ok {
		to.Z = v * c.unit
	}
	return to
}

// ready checks that a motion may stand here: modes set, the first one a rapid
// in Z, the second one a rapid in X and Y, and each with an axis to move.
func (c *control) ready(code string, args arguments) error {
	for _, mode := range needed {
		if !c.modes[mode] {
			return fmt.Errorf("a motion before %s", mode)
		}
	}
	if c.unit == 0 {
		return errors.New("a motion before G20 or G21")
	}
	_, x := args['X']
	_, y := args['Y']
	_, z := args['Z']
	letters := "XYZ"
	switch code {
	case "G1":
		letters = "XYZF"
	case "G2", "G3":
		letters = "XYZIJF"
	}
	switch {
	case !args.only(letters):
		return fmt.Errorf("a word that %s does not take", code)
	case !x && !y && !z:
		return fmt.Errorf("%s without an axis", code)
	case !c.zKnown && !(code == "G0" && z && !x && !y):
		return errors.New("the first motion must lift the bit, and only that")
	case c.zKnown && !c.xyKnown && !(code == "G0" && x && y && !z):
		return errors.New("the second motion must be a rapid in X and Y")
	}
	return nil
}

// arc adds the centre. The radii at start and end may differ by 0.002 mm, or
// 0.0002 in (NISTIR 6556, arcs in centre format).
func (c *control) arc(m *Motion, ccw bool, args arguments) error {
	i, hasI := args['I']
	j, hasJ := args['J']
	_, hasX := args['X']
	_, hasY := args['Y']
	if !hasI || !hasJ || !hasX || !hasY {
		return errors.New("an arc needs X, Y, I and J")
	}
	m.Arc = true
	m.CX, m.CY = m.From.X+float64(i*c.unit), m.From.Y+float64(j*c.unit)
	start := math.Hypot(m.From.X-m.CX, m.From.Y-m.CY)
	end := math.Hypot(m.To.X-m.CX, m.To.Y-m.CY)
	slack := 0.002
	if c.tape.Inch {
		slack = 0.0002 * 25.4
	}
	switch {
	case start < 1e-6 || start > farthest:
		return errors.New("an arc of no radius, or beyond any machine")
	case math.Abs(start-end) > slack+1e-9:
		return fmt.Errorf("an arc that misses its circle by %.4f mm", math.Abs(start-end))
	case m.From.X == m.To.X && m.From.Y == m.To.Y:
		return errors.New("a full circle in one arc")
	}
	m.Sweep = math.Atan2(m.To.Y-m.CY, m.To.X-m.CX) - math.Atan2(m.From.Y-m.CY, m.From.X-m.CX)
	switch {
	case ccw && m.Sweep <= 0:
		m.Sweep += 2 * math.Pi
	case !ccw && m.Sweep >= 0:
		m.Sweep -= 2 * math.Pi
	}
	if math.Abs(m.Sweep) > math.Pi+halfTurn {
		return errors.New("an arc of more than half a turn")
	}
	return nil
}
