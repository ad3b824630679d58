package model

import (
	"math"
	"strings"
)

// Small reports whether the part is cut from a sheet and, its openings not taken out,
// smaller than a square of a side.
func (p *Part) Small(side Length) bool {
	return strings.HasPrefix(p.Stock, "sheet.") && math.Abs(p.Outline.Area()) < side.MM()*side.MM()
}

// SmallParts are the labels of parts that the table wants flagged as small. For lookup.
func (m *Model) SmallParts() map[string]bool {
	small := map[string]bool{}
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Small(m.Table.Small) {
			small[p.Label] = true
		}
	}
	return small
}
