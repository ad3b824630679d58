package solve

import "barwright/lang/length"

// finest is how close straight pieces can keep to an arc: cut files hold no edge that is
// shorter.
const finest = length.Micrometre

// checkFlatten refuses straight pieces so short that files of them are huge and no table
// cuts any better by them.
func (s *solver) checkFlatten() {
	t := &s.m.Table
	if t.Flatten == 0 || t.Flatten >= finest {
		return
	}
	s.Findings.Errorf("flatten-too-fine", s.Source.Top("table")[0].Attr("flatten").Expr.At,
		`flatten = "0.01mm", or what the shop asks for`,
		"Straight pieces would leave an arc by at most %s mm. Cut files hold no edge under %s mm, and pieces are to keep "+
			"that close at best: it is %s mm too little.", t.Flatten.Decimal(length.Millimetres, 6),
		finest.Decimal(length.Millimetres, 3), (finest-t.Flatten).Decimal(length.Millimetres, 6))
}
