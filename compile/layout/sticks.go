package layout

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// stick is one stick as bought and the pieces that it gives, from one end on.
type stick struct {
	sold   model.StickLength
	pieces []rod
	used   Length // by the pieces and the cuts after them
}

type rod struct {
	part   *model.Part
	length Length
	turned bool
}

// layoutSticks tries purchases of one length, and of a few sticks of one and
// the rest of another, and keeps what costs least; then what has the fewest
// sticks; then what wastes least; then the first. Where a length has no price,
// cost is left out. A piece narrower or thinner than the stick is ripped from
// it and counts for its length.
func layoutSticks(parts []*model.Part, s model.Stick, kerf Length) (model.Layout, []Misfit) {
	var rods []rod
	var misfits []Misfit
	longest := Length(0)
	for _, l := range s.Lengths {
		longest = max(longest, l.Length)
	}
	for _, p := range parts {
		long, wide, turned := along(p)
		over := Misfit{p.ID, s.Name, max(0, long-longest), tooThick(wide, p.Thickness, s)}
		if over.OverLength > 0 || over.OverWidth > 0 {
			misfits = append(misfits, over)
			continue
		}
		rods = append(rods, rod{p, long, turned})
	}
	// Equal lengths stay in the order of the parts.
	slices.SortStableFunc(rods, func(a, b rod) int { return cmp.Compare(b.length, a.length) })

	var best []stick
	for _, first := range s.Lengths {
		for _, rest := range s.Lengths {
			for few := range len(rods) {
				sticks, ok := firstFit(rods, first, few, rest, kerf)
				if !ok {
					continue
				}
				shorten(sticks, s.Lengths, kerf)
				if best == nil || compareSticks(sticks, best, s.Lengths) < 0 {
					best = sticks
				}
				if len(sticks) <= few || first == rest { // more of the first change nothing
					break
				}
			}
		}
	}
	slices.SortStableFunc(best, func(a, b stick) int { return cmp.Compare(b.sold.Length, a.sold.Length) })
	return stickLayout(s, rods, best, longest, kerf), misfits
}

// tooThick returns by how much a piece's section passes the stick's, laid as
// it fits best.
func tooThick(a, b Length, s model.Stick) Length {
	return max(0, max(a, b)-max(s.Width, s.Thickness), min(a, b)-min(s.Width, s.Thickness))
}

// firstFit puts each rod, the longest first, into the first stick that has room
// for it. It opens a few sticks of one length, and then those of the rest; ok is
// false where a rod is too long for these. The last cut may run out of a
// stick's end.
func firstFit(rods []rod, first model.StickLength, few int, rest model.StickLength, kerf Length) (sticks []stick, ok bool) {
	for _, r := range rods {
		i := slices.IndexFunc(sticks, func(s stick) bool { return s.used+r.length <= s.sold.Length })
		if i < 0 {
			i = len(sticks)
			open := stick{sold: rest}
			if i < few {
				open.sold = first
			}
			if r.length > open.sold.Length {
				return nil, false
			}
			sticks = append(sticks, open)
		}
		sticks[i].pieces = append(sticks[i].pieces, r)
		sticks[i].used += r.length + kerf
	}
	return sticks, true
}

// shorten takes for each stick the best length that its pieces fit.
func shorten(sticks []stick, sold []model.StickLength, kerf Length) {
	for i := range sticks {
		for _, l := range sold {
			if sticks[i].used-kerf <= l.Length && compareSticks([]stick{{sold: l}}, sticks[i:i+1], sold) < 0 {
				sticks[i].sold = l
			}
		}
	}
}

// compareSticks tells which of two purchases of the same pieces is better.
func compareSticks(a, b []stick, sold []model.StickLength) int {
	unpriced := func(l model.StickLength) bool { return !l.Priced }
	byCost := 0
	if !slices.ContainsFunc(sold, unpriced) {
		byCost = cmp.Compare(cost(a), cost(b))
	}
	return cmp.Or(byCost, cmp.Compare(len(a), len(b)), cmp.Compare(total(a), total(b)))
}

func cost(sticks []stick) (sum float64) {
	for _, s := range sticks {
		sum += s.sold.Price
	}
	return sum
}

func total(sticks []stick) (sum Length) {
	for _, s := range sticks {
		sum += s.sold.Length
	}
	return sum
}

func stickLayout(s model.Stick, rods []rod, sticks []stick, longest, kerf Length) model.Layout {
	kind := model.Lumber
	if s.Steel {
		kind = model.Steel
	}
	l := model.Layout{Stock: s.Name, Kind: kind, Pieces: len(rods), Bought: len(sticks)}
	var withKerf []Length
	var used Length
	for _, r := range rods {
		withKerf = append(withKerf, r.length+kerf)
		used += r.length
	}
	l.AtLeast = fewestBins(withKerf, longest+kerf)
	for _, st := range sticks {
		blank := model.Blank{Length: st.sold.Length}
		at := Length(0)
		for _, r := range st.pieces {
			where := geom.Rect{X: geom.Span{Lo: at, Hi: at + r.length}}
			blank.Placed = append(blank.Placed, model.Placed{Part: r.part.ID, At: where, Turned: r.turned})
			at += r.length + kerf
		}
		l.Blanks = append(l.Blanks, blank)
		l.Length = max(l.Length, blank.Length)
	}
	if bought := total(sticks); bought > 0 {
		l.Waste = float64(bought-used) / float64(bought)
	}
	return l
}
