package solve

import (
	"barwright/compile/relief"
	"barwright/lang/finding"
)

// checkRelief refuses inside corners that the table's bit cannot clear.
func (s *solver) checkRelief() {
	t := &s.m.Table
	if t.Relief == "none" {
		return
	}
	at := s.Source.Top("table")[0].Attr("relief").Expr.At
	if t.Bit == 0 {
		s.Findings.Errorf("relief-without-bit", at, "bit = the diameter of the table's bit",
			"Inside corners are to be cleared for the bit, but bit does not say how wide that is.")
		return
	}
	for i := range s.m.Parts {
		p := &s.m.Parts[i]
		all := relief.Check(p, t.Relief, t.Bit)
		if len(all) == 0 {
			continue
		}
		worst, corner := all[0], p.Outline.Bounds()
		x, y := s.Show(worst.Corner.X-corner.X.Lo), s.Show(worst.Corner.Y-corner.Y.Lo)
		what := "the opening or recess for " + worst.In
		if worst.Notch {
			what = "a notch"
		}
		s.Findings.Errorf("no-room-for-relief", at, "",
			"The bit of %s cannot clear the corner of %s in %s of %s, %s from its left and %s from its lower edge as drawn: %s.%s",
			s.Show(t.Bit), what, p.Named(), p.Owner, x, y, worst.Because,
			finding.Others(len(all)-1, " Nor can it another corner of the part.", " Nor can it %d other corners of the part.")).
			Also(p.Why.At, "the part")
	}
}
