package rule

// Weight is what all parts of a build weigh, in newtons.
func Weight(b *Build) (sum float64) {
	for _, w := range b.weights() {
		sum += w.newtons
	}
	return sum
}
