package reuse

import (
	"barwright/compile/model"
	"barwright/lang/length"
)

// finish is what becomes of one edge of a piece.
type finish struct {
	short Length // a strip as wide as this is missing
	trim  Length // cut off, with the banding that is there
	peel  bool   // banding is taken off
	tape  bool   // banding is put on
	spare bool   // banding stays that is not asked for
	proud Length // how far the edge, banding and all, lies beyond the part's then; negative where it lies behind
}

func (f *finish) steps() (n int) {
	for _, step := range [...]bool{f.short > 0, f.trim > 0, f.peel, f.tape} {
		if step {
			n++
		}
	}
	return n
}

// edges finds what is to be done to the edges, so that the sizes over all, banding
// included, agree; ok is false where a piece cannot be laid so.
func (t *trial) edges() (ok bool) {
	for _, lo := range [...]model.Edge{model.Bottom, model.LeftEdge} {
		if !t.across(lo, lo.Opposite()) {
			return false
		}
	}
	return true
}

// across chooses for two edges that lie opposite: no strip, then the fewest steps. Where
// both stay, one lies where the part's does, and the other is off by no more than counts as
// equal; what is trimmed or made up is so exactly, and its opposite lies where the part's does.
// Banding that is not asked for stays only where none is put on the edge opposite.
func (t *trial) across(a, b model.Edge) (found bool) {
	var forA, forB [3]finish
	var best [2]finish
	those := t.finishes(b, forB[:0])
	for _, f := range t.finishes(a, forA[:0]) {
		for _, g := range those {
			if f.spare && g.tape || g.spare && f.tape {
				continue
			}
			exact := f.proud == 0 && g.proud == 0
			stay := f.short+f.trim+g.short+g.trim == 0 && (f.proud == 0 || g.proud == 0) && length.Apart(f.proud, g.proud) <= t.within
			if !exact && !stay {
				continue
			}
			wide, least := f.short+g.short, best[0].short+best[1].short
			if !found || wide < least || wide == least && f.steps()+g.steps() < best[0].steps()+best[1].steps() {
				best, found = [2]finish{f, g}, true
			}
		}
	}
	t.edge[a], t.edge[b] = best[0], best[1]
	t.off = max(t.off, length.Apart(best[0].proud, best[1].proud))
	return found
}

// finishes lists what could be done to an edge.
func (t *trial) finishes(e model.Edge, to []finish) []finish {
	has, wants, gap := t.old.bands[e], t.new.bands[e], t.gap(e)
	all := gap + thickness(wants) - thickness(has)
	alike := has != nil && wants != nil && has.Stock == wants.Stock && length.Apart(has.Thickness, wants.Thickness) <= t.within
	anew := finish{peel: has != nil, tape: wants != nil, proud: -gap}
	if alike || wants == nil {
		to = append(to, finish{proud: -all, spare: has != nil && wants == nil})
	}
	if has != nil && wants == nil || wants != nil && !alike {
		to = append(to, anew)
	}
	switch over := thickness(has) - gap; {
	case gap > 0 && (wants != nil || over < 0):
		anew.short, anew.proud = gap, 0
		to = append(to, anew)
	case gap < 0, gap > 0 && over > 0:
		to = append(to, finish{trim: over, tape: wants != nil, spare: gap > 0})
	}
	return to
}

func thickness(b *model.Band) Length {
	if b == nil {
		return 0
	}
	return b.Thickness
}

// cutOff is how wide a strip of the piece itself is trimmed off.
func (t *trial) cutOff(e int) Length { return max(t.edge[e].trim-thickness(t.old.bands[e]), 0) }
