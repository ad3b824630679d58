package ngc

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// cutting says which way the bit goes.
func cutting(p *model.Program) string {
	if p.Tool.Passes != "parallel" {
		return "climb: counter-clockwise round the recess; the first pass on each level is as wide as the bit"
	}
	text := "to and fro: of two passes one is climb milling, the other has the uncut wood on its left and pulls the other way; " +
		"the first pass on each level is as wide as the bit"
	if p.Tool.Finish > 0 {
		text += "; the last pass along the walls is climb, counter-clockwise"
	}
	return text
}

// wayDown says how the bit comes down: levels of a recess may differ in it.
func wayDown(p *model.Program) string {
	var air, ramp, circle bool
	var at model.Move
	for i, m := range p.Moves {
		switch down := i > 0 && m.Z < at.Z; {
		case !down || m.Z >= 0:
		case m.Kind == model.MoveCW || m.Kind == model.MoveCCW:
			circle = true
		case m.Kind == model.MoveRamp && m.X == at.X && m.Y == at.Y:
			air = true
		case m.Kind == model.MoveRamp:
			ramp = true
		}
		at = m
	}
	var ways []string
	if air {
		ways = append(ways, "in the air, beside the wood at an open side, and goes in from there at feed")
	}
	if circle {
		ways = append(ways, "round a circle in the recess, at most "+degrees(p.Tool.RampDegrees))
	}
	if ramp {
		ways = append(ways, "to and fro in the recess, at most "+degrees(p.Tool.RampDegrees))
	}
	return strings.Join(ways, "; on other levels ")
}

func degrees(d float64) string { return fmt.Sprintf("%g degrees steep", d) }

// reliefs says what is bored at the corners, and that square steel goes in.
func (s *sheet) reliefs(p *model.Program, recess model.Recess, u units) string {
	at := make([]string, len(p.Reliefs))
	for i, c := range p.Reliefs {
		at[i] = fmt.Sprintf("X %s Y %s", u.number(c.X), u.number(c.Y))
	}
	where := "on the diagonal"
	if p.Tool.Relief == "long_side" {
		where = "along the longer side into the end"
	}
	square := "square steel goes in"
	if steel, found := s.steel(recess.ID); found {
		square += ", and " + steel.Label + " as it is drawn"
	}
	return fmt.Sprintf("relieved: the program makes %s of %s, as deep as the recess, one through each closed corner, %s, "+
		"with centres at %s; %s", finding.Counted(len(at), "bore"), s.both(p.Tool.Diameter, u), where, strings.Join(at, ", "), square)
}

func levelText(p *model.Program, u units) string {
	depths := make([]string, len(p.Levels))
	for i, l := range p.Levels {
		depths[i] = u.number(l)
	}
	text := fmt.Sprintf("%d: %s %s below the top", len(depths), strings.Join(depths, ", "), u.short)
	if p.Tool.Floor > 0 {
		text += fmt.Sprintf("; the last one takes %s %s off the floor", u.number(p.Tool.Floor), u.short)
	}
	if p.Tool.Finish > 0 {
		text += fmt.Sprintf("; then %s %s off the walls at full depth", u.number(p.Tool.Finish), u.short)
	}
	return text
}
