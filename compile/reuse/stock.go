package reuse

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// remeasured is how far thicknesses of one board may lie apart: what PS 1 allows
// unsanded plywood up to 13/16 in, from memory.
const remeasured = length.Inch / 32

// stock is what a part is cut from. Lumber has no thickness here: that of a part is the
// one below its drawn face.
type stock struct {
	kind      model.PartKind
	name      string // "sheet.birch"
	asked     string // the label, or the name and the size
	thickness Length
}

func stockOf(part *model.Part) stock {
	s := stock{part.Kind, part.Stock, part.Material, part.Thickness}
	if s.kind == model.Lumber {
		s.thickness = 0
	}
	return s
}

// labelled reports whether the stock has a label of its own; without one it is asked
// for by its name and size.
func (s stock) labelled() bool {
	_, name, _ := strings.Cut(s.name, ".")
	return s.asked != "" && !strings.HasPrefix(s.asked, name+", ")
}

// same reports whether two stocks are one but for their thickness.
func (s stock) same(o stock) bool {
	if s.kind != o.kind {
		return false
	}
	if s.labelled() && o.labelled() {
		return s.asked == o.asked
	}
	return s.name == o.name
}

// pairStocks numbers the stocks of the old build, then gives each of the new one the
// number of the old one that is nearest in thickness, or one of its own.
func (p *Pair) pairStocks() {
	olds := stocksOf(p.Old)
	for _, s := range olds {
		p.number(s, olds, 0)
	}
	for _, s := range stocksOf(p.New) {
		if _, known := p.boards[s]; known {
			continue
		}
		if from, measured := p.number(s, olds, remeasured); measured {
			p.notes = append(p.notes, fmt.Sprintf("%s, %s thick, is taken for the %s of the old build, measured anew: %s.",
				s.name, p.New.Build.Plain(s.thickness), from.name, p.Old.Build.Plain(from.thickness)))
		}
	}
}

// number gives a stock the number of the nearest of others that have one, and that
// differ in thickness by no more than apart, or else a new one.
func (p *Pair) number(s stock, others []stock, apart Length) (nearest stock, measured bool) {
	best := apart + 1
	for _, o := range others {
		off := length.Apart(s.thickness, o.thickness)
		if _, numbered := p.boards[o]; numbered && s.same(o) && off < best {
			nearest, best = o, off
		}
	}
	if best > apart {
		p.boards[s] = len(p.boards)
		return stock{}, false
	}
	p.boards[s] = p.boards[nearest]
	return nearest, best > 0
}

// stocksOf lists the stocks that a build's parts are cut from, in their order.
func stocksOf(m *model.Model) []stock {
	seen := make(map[stock]bool) // lookup only
	var out []stock
	for i := range m.Parts {
		if s := stockOf(&m.Parts[i]); !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}
