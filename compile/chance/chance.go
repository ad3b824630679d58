// Package chance draws numbers, the same ones on every machine.
package chance

// Source is a row of numbers that only look drawn: SplitMix64 of Steele, Lea and Flood, "Fast
// splittable pseudorandom number generators", OOPSLA 2014. Its value at first is the seed.
type Source uint64

// Next is any number.
func (s *Source) Next() uint64 {
	*s += 0x9e3779b97f4a7c15
	z := uint64(*s)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Unit is a number from 0 up to 1.
func (s *Source) Unit() float64 { return float64(s.Next()>>11) / (1 << 53) }
