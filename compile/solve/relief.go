package solve

import (
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/lang/finding"
	"barwright/lang/source"
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
	var first *model.Part
	var trouble []relief.Trouble
	others := 0
	for i := range s.m.Parts {
		p := &s.m.Parts[i]
		switch all := relief.Check(p, t.Relief, t.Bit); {
		case len(all) == 0:
		case first == nil:
			first, trouble = p, all
		default:
			others++
		}
	}
	if first != nil {
		s.noRoomForRelief(at, first, &trouble[0], others)
	}
}

func (s *solver) noRoomForRelief(at source.Range, p *model.Part, t *relief.Trouble, others int) {
	what := "the opening or recess for " + t.In
	if t.Notch {
		what = "a notch"
	}
	zero := p.Outline.Bounds()
	s.Findings.Errorf("no-room-for-relief", at, "",
		"The bit of %s cannot clear the corner of %s in %s of %s, %s from its left and %s from its lower edge as drawn: %s.%s",
		s.Show(s.m.Table.Bit), what, p.Named(), p.Owner, s.Show(t.Corner.X-zero.X.Lo), s.Show(t.Corner.Y-zero.Y.Lo), t.Because,
		finding.Others(others, " Nor can it one in another part.", " Nor can it some in %d other parts.")).
		Also(p.Why.At, "the part")
}
