package solve

import "barwright/lang/length"

// Straight pieces for arcs: cut files hold no edge shorter than the finest, and where
// pieces leave an arc by more than the coarsest one sees corners.
const (
	finest   = length.Micrometre
	coarsest = length.Millimetre / 2
)

// checkFlatten refuses straight pieces so short that files of them are huge and no table
// cuts any better by them, and such as are no arc any more.
func (s *solver) checkFlatten() {
	flat := s.m.Table.Flatten
	if flat == 0 || finest <= flat && flat <= coarsest {
		return
	}
	miss := finest - flat
	if flat > coarsest {
		miss = flat - coarsest
	}
	mm := func(l length.Length) string { return l.Decimal(length.Millimetres, 6) + " mm" }
	s.Findings.Errorf("flatten-out-of-range", s.Source.Top("table")[0].Attr("flatten").Expr.At,
		`flatten = "0.01mm", or what the shop asks for`,
		"Straight pieces would leave an arc by up to %s; files are written with %s to %s. It misses that by %s.",
		mm(flat), mm(finest), mm(coarsest), mm(miss))
}
