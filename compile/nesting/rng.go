package nesting

import "barwright/compile/chance"

// rng draws numbers, the same ones everywhere.
type rng struct{ chance.Source }

func (r *rng) below(n int) int { return int((r.Next() >> 32) * uint64(n) >> 32) }
