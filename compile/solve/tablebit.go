package solve

import (
	"slices"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// narrow are recesses of one name that a bit does not fit into.
type narrow struct {
	part  *model.Part // where the narrowest is
	name  string
	width length.Length
	count int
}

// checkTableBit warns of grooves that are narrower than the table's bit, once for all of
// one name.
func (s *solver) checkTableBit() {
	bit := s.m.Table.Bit
	if bit == 0 {
		return
	}
	var all []narrow
	for i := range s.m.Parts {
		p := &s.m.Parts[i]
		for k := range p.Recesses {
			r := &p.Recesses[k]
			width, closed := between(r)
			if r.Routed || !closed || width >= bit {
				continue
			}
			at := slices.IndexFunc(all, func(n narrow) bool { return n.name == r.Name })
			if at < 0 {
				at, all = len(all), append(all, narrow{part: p, name: r.Name, width: width})
			}
			if n := &all[at]; width < n.width {
				n.part, n.width = p, width
			}
			all[at].count++
		}
	}
	least := bit
	for _, n := range all {
		least = min(least, n.width)
	}
	for _, n := range all {
		s.Findings.Warnf("bit-too-wide-for-groove", s.Source.Top("table")[0].Attr("bit").Expr.At, "bit = "+s.bitSize(least),
			"The table's bit is %s wide. The %s in %s of %s is %s wide, %s less: the bit does not go in.%s",
			s.Show(bit), n.name, n.part.Named(), n.part.Owner, s.Show(n.width), s.Show(bit-n.width),
			finding.Others(n.count-1, " The same holds for one more.", " The same holds for %d more.")).
			Also(n.part.Why.At, "the part")
	}
}

// between is how far apart two opposite sides of a recess are that are both closed, the
// nearer ones where all are; closed is false where there are none.
func between(r *model.Recess) (width length.Length, closed bool) {
	open := func(e model.Edge) bool { return slices.Contains(r.Open, e) }
	b := r.Shape.Bounds()
	across, up := !open(model.LeftEdge) && !open(model.RightEdge), !open(model.Bottom) && !open(model.Top)
	switch {
	case across && up:
		return min(b.X.Size(), b.Y.Size()), true
	case across:
		return b.X.Size(), true
	case up:
		return b.Y.Size(), true
	}
	return 0, false
}
