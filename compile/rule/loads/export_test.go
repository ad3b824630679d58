package loads

import "barwright/compile/rule"

// Weight is what all parts of a build weigh, in newtons.
func Weight(b *rule.Build) (sum float64) {
	for _, w := range weightsOf(b) {
		sum += w.newtons
	}
	return sum
}
