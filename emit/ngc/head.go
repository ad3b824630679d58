package ngc

import (
	"fmt"
	"strings"

	"barwright/compile/model"
)

// head returns the comments at the top of a program, below its title.
func head(p *model.Program, u units) []string {
	size := p.Shape.Bounds()
	plan, z := p.Reach()
	t := p.Tool
	out := []string{
		cuts(p),
		"Unit: " + u.short,
		fmt.Sprintf("Recess: X %s, Y %s, %s deep; %s", u.span(size.X), u.span(size.Y), u.number(p.Depth), openings(p, u)),
		fmt.Sprintf("Bit: T%d, flat end, diameter %s, %d flutes; spindle %d per minute",
			t.Number, u.number(t.Diameter), t.Flutes, t.RPM),
		fmt.Sprintf("Wood: X %s, Y %s, %s thick, lying flat", u.span(p.Stock.X), u.span(p.Stock.Y), u.number(p.Thick)),
		fmt.Sprintf("Zero: %s; %sZ0 is the top of the wood", p.Zero, zeroPlace(p, u.number(p.Mark))),
		fmt.Sprintf("Box of the moves of the bit's centre: X %s, Y %s, Z %s; at the end to X0 Y0",
			u.span(plan.X), u.span(plan.Y), u.span(z)),
	}
	if p.Setup > 1 && zeroOf(p) == inRecess {
		out = append(out, fmt.Sprintf("Setup: %d of this part; X0 is %s further to the right on it than in setup %d",
			p.Setup, u.number(p.MovedOn), p.Setup-1))
	}
	return append(out, saidOfAll(p.Moves, t, u)...)
}

// saidOfAll is what the head of every program says at its end.
func saidOfAll(moves []model.Move, t model.Tool, u units) []string {
	out := append(safety[:len(safety):len(safety)], fmt.Sprintf("The first move goes, fast, to Z %s from wherever the bit stands, down if it stands higher; "+
		"the next one across at that height. Park it clear of work and clamps.", u.number(firstHeight(moves, t))))
	return append(out, control(t.Dialect)...)
}

// safety is what every program says at its head. Common practice, not a standard.
var safety = [...]string{
	"CAUTION: this program is a proposal. The person at the machine decides; its manual comes first.",
	"Dry run first: spindle off, Z zero set well above the work.",
	"Hold the work against lift and shift. Keep clamps out of the box of the moves and of the bit's radius beyond it.",
	"Eye and ear protection; no gloves near a turning spindle; never leave it running alone.",
	"Stop the spindle and wait until it stands before reaching in.",
}

func cuts(p *model.Program) string {
	if p.Test {
		return fmt.Sprintf("Cuts: a test piece in scrap, as %s in part %s", p.Recess, p.PartLabel)
	}
	return fmt.Sprintf("Cuts: %s, in part %s; %s", p.Recess, p.PartLabel, p.RecessID)
}

// control says what a dialect has the control do beside moving.
func control(d model.Dialect) []string {
	var out []string
	if d.Change {
		out = append(out, "M6 has the control change the bit: it may move to do so, as its manual tells. Set Z zero again after it.")
	}
	if d.SpinUp > 0 {
		p := seconds(d.SpinUp)
		out = append(out, fmt.Sprintf("G4 P%s waits %s seconds for the spindle; a control that reads milliseconds needs another figure.",
			p, strings.TrimSuffix(p, ".")))
	} else {
		out = append(out, "Nothing waits for the spindle: the control must, as its manual tells.")
	}
	if len(d.Start)+len(d.End) == 0 {
		out = append(out, "No coolant is switched.")
	} else {
		out = append(out, "No coolant is switched but by lines of the control's own, if these do so.", fmt.Sprintf("Lines of the control's own: %d at the start, %d at the end. Its manual tells what they do.",
			len(d.Start), len(d.End)))
	}
	return out
}

// firstHeight is where the first move goes.
func firstHeight(moves []model.Move, t model.Tool) Length {
	if len(moves) == 0 {
		return t.Clearance
	}
	return moves[0].Z
}
