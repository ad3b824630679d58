package layout

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// pieces are the parts as they are cut from sheets: those whose grain goes on from one to the
// next joined, where the first of them was.
func (s *sheets) pieces(parts []*model.Part) (out []piece) {
	matched := map[string][]standing{} // lookup only
	for _, p := range parts {
		if s.matches(p) {
			first := p
			if of := matched[p.Match]; len(of) > 0 {
				first = of[0].part
			}
			matched[p.Match] = append(matched[p.Match], stands(p, first))
		}
	}
	for _, p := range parts {
		switch of := matched[p.Match]; {
		case !s.matches(p):
			out = append(out, s.single(p))
		case of[0].part == p:
			out = append(out, s.strips(of)...)
		}
	}
	return out
}

func (s *sheets) matches(p *model.Part) bool {
	return p.Match != "" && s.stock.Grain && p.Grain != model.GrainNone
}

// standing is a part with where it stands, seen as a sheet is: grain along x.
type standing struct {
	part *model.Part
	at   geom.Rect
}

// stands looks from the side that the first of its kind is drawn from. A part whose grain runs
// along its y lies turned by a quarter.
func stands(p, first *model.Part) standing {
	at, _ := first.Placement.Local(p.Placement.Box)
	if p.Grain == model.GrainY {
		at = geom.Rect{X: geom.Span{Lo: -at.Y.Hi, Hi: -at.Y.Lo}, Y: at.X}
	}
	return standing{p, at}
}

// strips joins parts as they stand. Where no sheet on sale gives them all, as many of them as it
// gives, from one side on.
func (s *sheets) strips(parts []standing) (out []piece) {
	whole := s.joined(parts)
	if len(parts) == 1 || s.sold(whole) {
		return []piece{whole}
	}
	groups, _ := parted(parts)
	var row []standing
	for _, g := range groups {
		if more := slices.Concat(row, g); len(row) > 0 && !s.sold(s.joined(more)) {
			out, row = append(out, s.strips(row)...), nil
		}
		row = append(row, g...)
	}
	return append(out, s.strips(row)...)
}

// joined lays parts as they stand, with nothing but the cut between them.
func (s *sheets) joined(parts []standing) piece {
	if len(parts) == 1 {
		return s.single(parts[0].part)
	}
	groups, across := parted(parts)
	out := piece{size: size{-s.gap(), 0}} // there is no cut before the first
	if across {
		out.size = size{0, -s.gap()}
	}
	var of []piece
	for _, g := range groups {
		p := s.joined(g)
		if of = append(of, p); across {
			out.size = size{max(out.x, p.x), out.y + s.gap() + p.y}
		} else {
			out.size = size{out.x + s.gap() + p.x, max(out.y, p.y)}
		}
	}
	s.fill(&out, of, across)
	return out
}

// fill puts pieces into one, side by side across the sheet or one after the other along it, and
// cuts them apart: first each with all beside it, then what is left beside each.
func (s *sheets) fill(out *piece, of []piece, across bool) {
	left := geom.R(0, 0, out.x, out.y)
	for i, p := range of {
		own := left
		if across {
			own.Y.Hi = own.Y.Lo + p.y
		} else {
			own.X.Hi = own.X.Lo + p.x
		}
		if i+1 < len(of) {
			out.cuts = append(out.cuts, cutBeyond(left, own, across))
		}
		if is := geom.R(own.X.Lo, own.Y.Lo, own.X.Lo+p.x, own.Y.Lo+p.y); is != own {
			out.cuts = append(out.cuts, cutBeyond(own, is, !across))
		}
		at := geom.Point{X: own.X.Lo, Y: own.Y.Lo}
		for _, l := range p.lying {
			l.at = l.at.Shift(at)
			out.lying = append(out.lying, l)
		}
		for _, c := range p.cuts {
			out.cuts = append(out.cuts, shifted(c, at))
		}
		if across {
			left.Y.Lo = own.Y.Hi + s.gap()
		} else {
			left.X.Lo = own.X.Hi + s.gap()
		}
	}
}

// cutBeyond parts what is kept from the rest of a rectangle.
func cutBeyond(of, kept geom.Rect, along bool) model.SawCut {
	if along {
		return model.SawCut{Along: true, At: kept.Y.Hi, Of: of}
	}
	return model.SawCut{At: kept.X.Hi, Of: of}
}

// shifted is a cut with what it cuts, moved.
func shifted(c model.SawCut, by geom.Point) model.SawCut {
	c.Of = c.Of.Shift(by)
	if c.Along {
		c.At += by.Y
	} else {
		c.At += by.X
	}
	return c
}

// parted divides parts where a straight line passes between them: into those side by side across
// the sheet, or else into those one after the other along it. Where no line does, each is alone.
func parted(parts []standing) (groups [][]standing, across bool) {
	for _, across := range []bool{true, false} {
		if groups := divided(parts, across); len(groups) > 1 {
			return groups, across
		}
	}
	for _, p := range parts {
		groups = append(groups, []standing{p})
	}
	return groups, true
}

func divided(parts []standing, across bool) (groups [][]standing) {
	span := func(p standing) geom.Span {
		if across {
			return p.at.Y
		}
		return p.at.X
	}
	parts = slices.Clone(parts)
	slices.SortStableFunc(parts, func(a, b standing) int { return cmp.Compare(span(a).Lo, span(b).Lo) })
	var reach Length
	for i, p := range parts {
		if i == 0 || span(p).Lo >= reach {
			groups = append(groups, nil)
			reach = span(p).Hi
		}
		last := &groups[len(groups)-1]
		*last = append(*last, p)
		reach = max(reach, span(p).Hi)
	}
	return groups
}
