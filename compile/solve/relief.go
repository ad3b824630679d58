package solve

import (
	"fmt"

	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/lang/finding"
	"barwright/lang/length"
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
	if first, others := s.uncleared(t.Bit); first != nil {
		s.noRoomForRelief(at, first, &relief.Check(first, t.Relief, t.Bit)[0], others)
	}
}

// uncleared returns the first part that has a corner which a bit cannot clear, and how
// many others have.
func (s *solver) uncleared(bit length.Length) (first *model.Part, others int) {
	for i := range s.m.Parts {
		p := &s.m.Parts[i]
		switch {
		case len(relief.Check(p, s.m.Table.Relief, bit)) == 0:
		case first == nil:
			first = p
		default:
			others++
		}
	}
	return first, others
}

func (s *solver) noRoomForRelief(at source.Range, p *model.Part, t *relief.Trouble, others int) {
	what := t.In
	if t.Notch {
		what = "a notch"
	}
	zero := p.Outline.Bounds()
	s.Findings.Errorf("no-room-for-relief", at, s.withoutTrouble(),
		"The bit of %s cannot clear the corner of %s in %s of %s, %s from its left and %s from its lower edge as drawn: %s.%s",
		s.Show(s.m.Table.Bit), what, p.Named(), p.Owner, s.Show(t.Corner.X-zero.X.Lo), s.Show(t.Corner.Y-zero.Y.Lo), t.Because,
		finding.Others(others, " Another part has the same trouble.", " %d other parts have the same trouble.")).
		Also(p.Why.At, "the part")
}

// withoutTrouble is the edit that passes: the widest bit of those in common use that can
// clear all corners, or none cleared.
func (s *solver) withoutTrouble() string {
	const none = `relief = "none"`
	for sixteenths := length.Length(8); sixteenths > 0; sixteenths-- {
		bit := s.practice(sixteenths*length.Inch/16, sixteenths*2*length.Millimetre)
		if bit >= s.m.Table.Bit {
			continue
		}
		if first, _ := s.uncleared(bit); first == nil {
			return fmt.Sprintf("bit = %s, or %s", s.bitSize(bit), none)
		}
	}
	return none
}

// bitSize is the size of a bit as one writes it, rounded down to what a caliper shows.
func (s *solver) bitSize(l length.Length) string {
	if s.Source.Unit.Imperial() {
		return fmt.Sprintf(`"%sin"`, length.Down(l, length.Inch/10_000).Decimal(length.Inches, 4))
	}
	return fmt.Sprintf(`"%smm"`, length.Down(l, length.Millimetre/100).Decimal(length.Millimetres, 2))
}
