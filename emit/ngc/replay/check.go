package replay

import (
	"errors"
	"fmt"

	"barwright/compile/model"
)

// Check reads a recess program's text and cuts it. The error, if any, is the first
// thing that is wrong: text that is not understood, settings other than the
// Program's, more travel than the machine has, a rapid move through wood or below
// the clearance, a feed without the spindle or at another speed, a plunge or a ramp too steep, a bite
// too deep, a level that is not the Program's or none where one is, wood touched outside
// the recess or below its depth, wood left inside, or a wall followed the wrong way. The recess is Program.Shape, whose inside
// corners are as round as the bit leaves them, with Program.Reliefs.
//
// Nothing of this is sampled, beside how deep a bite is:
//
//   - A gouge is a place where the bit's centre, anywhere along a move below the
//     top, lies in the wood that must stay, or nearer to its border than the bit's
//     radius less sideSlack. The distance of two straight pieces is exact. Arcs, of
//     the path and of the border, are straight pieces that leave them by sag at most:
//     each takes sag off the 0.01 mm, so that no deeper gouge passes. What must stay
//     differs from one range of depths to the next; a ramp is parted where it passes
//     from one to the other.
//   - A remainder is looked for along rows, rowStep apart. What the bit covers of a
//     row, moving level at the floor, is a union of pieces whose ends are computed;
//     a gap of more than rowStep is refused. A disc of wood that is 0.036 mm across
//     has a row within half a step of its centre, which it meets over 0.0259 mm: it
//     is found wherever it lies. Beside walls leftBeside is not asked for, and sag is
//     lost on either side of an arc: all wood that is 0.05 mm wide, or stands 0.05 mm
//     beside a wall, is found. Along round walls whose arcs are written as straight
//     pieces, these may leave so much more wood as the dialect allows.
func Check(text []byte, p *model.Program) error {
	return new(Checker).Check(text, p)
}

// CheckRouting is Check for what a router cuts beside recesses. What must stay is the
// Piece, or the Shape of an outline, less what its Works have cut at a depth, and the
// tabs below their height. Beyond Check it refuses
//
//   - what is freed while more than its tabs hold it, or less: a line beside the cut's
//     wall, nearBy off it, is swept at full depth, but at a tab, where it is swept as deep
//     as the tab's top; straight across a tab all but its width and tabSlack is swept.
//     The tabs themselves are wood that must stay, but for tabSlack;
//   - what is freed without a tab: it would come loose under the bit;
//   - a plunge, but into a round hole that is as wide as the bit, by a step-down at a
//     time, from above the top each time.
func CheckRouting(text []byte, r *model.Routing) error {
	return new(Checker).CheckRouting(text, r)
}

// read reads a text, and judges what can be judged before anything is cut.
func (t *task) read(text []byte) (*Tape, error) {
	tape, err := Read(text, t.tool.Dialect)
	if err != nil {
		return nil, err
	}
	if err := sameSettings(tape, t.tool); err != nil {
		return nil, err
	}
	if err := tape.within(t.tool.Travel); err != nil {
		return nil, err
	}
	for _, w := range t.works {
		if b := w.rings[0].box; !t.stock.holds(b.low) || !t.stock.holds(b.high) {
			return nil, fmt.Errorf("%s leaves the wood", w.name)
		}
	}
	return tape, nil
}

// cut cuts what a text says.
func (t *task) cut(tape *Tape) error {
	c := newCutter(t)
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
	case t.Dialect.Comments != "none" && !tape.Cautions:
		return errors.New("no cautions stand at the head")
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
			out = append(out, Point{s.a.x, s.a.y, s.from})
		}
	}
	return out
}
