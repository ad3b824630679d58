package pattern

// Part is a piece, or two parts that are cut from each other, side by side along x or one above
// the other. It is no larger than what is in it, which lies in its lower left corner.
type Part struct {
	W, H   Length
	Kind   int // of a piece; -1 for two parts
	Turned bool
	AlongX bool
	Of     [2]*Part
}

// Count adds what a part gives to the numbers of kinds.
func (p *Part) Count(n []int) {
	if p.Kind >= 0 {
		n[p.Kind]++
		return
	}
	p.Of[0].Count(n)
	p.Of[1].Count(n)
}

// Join makes a part of two.
func Join(a, b *Part, alongX bool) *Part {
	p := &Part{Kind: -1, AlongX: alongX, Of: [2]*Part{a, b}}
	if alongX {
		p.W, p.H = a.W+b.W, max(a.H, b.H)
	} else {
		p.W, p.H = max(a.W, b.W), a.H+b.H
	}
	return p
}

// Row are the parts of a part that are cut one after the other in one direction.
func (p *Part) Row() (out []*Part) {
	for _, of := range p.Of {
		if of.Kind < 0 && of.AlongX == p.AlongX {
			out = append(out, of.Row()...)
		} else {
			out = append(out, of)
		}
	}
	return out
}
