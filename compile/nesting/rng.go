package nesting

// rng draws numbers, the same ones everywhere: SplitMix64 of Steele, Lea and Flood, "Fast
// splittable pseudorandom number generators", OOPSLA 2014.
type rng uint64

func (r *rng) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

func (r *rng) below(n int) int { return int((r.next() >> 32) * uint64(n) >> 32) }
func (r *rng) unit() float64   { return float64(r.next()>>11) / (1 << 53) }
