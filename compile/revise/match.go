package revise

import (
	"cmp"
	"fmt"
	"slices"
	"sort"

	"barwright/compile/assign"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang/finding"
)

// Every piece that is left is tried for every part that is, while that makes no more than
// mostPairs and everyWork. Beyond, each part is tried with its own piece, and those
// nearest to it in size while nearWork lasts.
const (
	mostPairs = 40_000
	everyWork = 1_000_000 // of effort; a million is about half a second
	nearWork  = 100_000
	window    = 1000 // how many piles are looked at, up or down in size
	mostTried = 4    // of those that are large enough
	enough    = 2    // of those that serve
)

// pairAlike gives parts what serves for them as it is: the piece of their ID, else of
// their label, else of their name in their block, in any, else any. Nothing is lost by
// giving it first: if the best way gave the piece to another part, and another piece to
// its part, the two can be exchanged, for what holds all of the part holds all of the
// piece, and so all that the other part needs. Only of patches two do not add up to one
// that may be; but what serves as it is is not to be patched (SPEC.md 12.4). Of those that
// are alike, pieces that are no part's own go first, and parts that have no own piece.
func (b *board) pairAlike() {
	pieces, parts := loneFirst(b.pieces), loneFirst(b.parts)
	for _, tag := range []func(p *model.Part) string{
		func(p *model.Part) string { return p.ID },
		func(p *model.Part) string { return p.Label },
		func(p *model.Part) string { return p.Owner + "/" + p.Name },
		func(p *model.Part) string { return p.Name },
		func(p *model.Part) string { return "" },
	} {
		type like struct {
			class int
			tag   string
		}
		free := map[like][]*item{} // lookup only
		for _, piece := range pieces {
			if piece.pair == nil {
				l := like{piece.class, tag(piece.part)}
				free[l] = append(free[l], piece)
			}
		}
		for _, part := range parts {
			l := like{part.class, tag(part.part)}
			if part.pair == nil && len(free[l]) > 0 {
				pair(free[l][0], part)
				free[l] = free[l][1:]
			}
		}
	}
}

func pair(piece, part *item) { piece.pair, part.pair = part, piece }

// loneFirst lists items of whose ID the other build has none, then those of whose it has.
func loneFirst(items []*item) []*item {
	out := slices.Clone(items)
	slices.SortStableFunc(out, func(a, b *item) int {
		switch {
		case (a.own == nil) == (b.own == nil):
			return 0
		case a.own == nil:
			return -1
		}
		return 1
	})
	return out
}

// single lists items that have no pair.
func single(items []*item) []*item {
	var out []*item
	for _, i := range items {
		if i.pair == nil {
			out = append(out, i)
		}
	}
	return out
}

// matcher gives pieces to the parts that none serves for as it is. Its verdicts are by the
// numbers of a piece and a part as drawn, for lookup only.
type matcher struct {
	pair     *reuse.Pair
	within   model.Length
	verdicts map[[2]int]verdict
	work     int
	notes    []string
	stance   *stance
}

func newMatcher(p *reuse.Pair, within model.Length) *matcher {
	return &matcher{pair: p, within: within, verdicts: map[[2]int]verdict{}, stance: newStance(p, within)}
}

// verdict is whether a piece can serve, how, and what that costs, names apart.
type verdict struct {
	fit  reuse.Fit
	cost assign.Cost
	ok   bool
}

// fit is how a piece serves as its part: as it lies, where both are drawn alike.
func (m *matcher) fit(piece, part *item) reuse.Fit {
	if piece.drawn == part.drawn {
		return reuse.Fit{Kind: model.Unchanged}
	}
	return m.verdict(piece, part).fit
}

// serve gives the pieces of a board that are left to the parts that are. Where not every
// pair is tried, what remains is tried again.
func (m *matcher) serve(b *board) {
	for first := true; ; first = false {
		pieces, parts := single(b.pieces), single(b.parts)
		every := m.few(pieces, parts)
		var edges []assign.Edge
		if every {
			edges = m.all(pieces, parts)
		} else {
			edges = m.near(pieces, parts)
		}
		if first && !every {
			m.notes = append(m.notes, fmt.Sprintf("Not every piece was tried for %s of %s, but their own and those of the nearest sizes: "+
				"others may serve better.", finding.Counted(len(parts), "part"), parts[0].part.Material))
		}
		found := false
		for row, col := range assign.Least(len(parts), len(pieces), edges) {
			if col >= 0 {
				pair(pieces[col], parts[row])
				found = true
			}
		}
		if every || !found {
			return
		}
	}
}

// few reports whether every piece can be tried for every part.
func (m *matcher) few(pieces, parts []*item) bool {
	if len(pieces)*len(parts) > mostPairs {
		return false
	}
	work := m.work
	a, b := piles(pieces), piles(parts)
	for i := range a {
		for j := range b {
			if m.large(a[i].item, b[j].item) {
				work += effort(a[i].item, b[j].item)
			}
		}
	}
	return work <= everyWork
}

// effort estimates how much there is to compare: all that is cut in one with all that is
// in the other, in more places the larger the piece is.
func effort(piece, part *item) int {
	places := func(piece, part model.Length) int { return 1 + int(min(5, 10*max(0, piece-part)/max(1, part))) }
	return (1 + cuts(piece.part)) * (1 + cuts(part.part)) * places(piece.long, part.long) * places(piece.short, part.short)
}

func cuts(p *model.Part) int { return len(p.Openings) + len(p.Recesses) + len(p.Bores) }

// all tries every piece for every part.
func (m *matcher) all(pieces, parts []*item) (edges []assign.Edge) {
	for row, part := range parts {
		for col, piece := range pieces {
			if m.large(piece, part) {
				m.try(&edges, row, col, piece, part)
			}
		}
	}
	return edges
}

// pile is items that are drawn and named alike.
type pile struct {
	*item       // one of them
	cols  []int // their places among all
}

// piles sorts items by size.
func piles(items []*item) []pile {
	var out []pile
	at := map[int]int{} // by the number of what is drawn alike; lookup only
	for col, i := range items {
		n, ok := at[i.drawn]
		if !ok {
			n = len(out)
			at[i.drawn] = n
			out = append(out, pile{item: i})
		}
		out[n].cols = append(out[n].cols, col)
	}
	slices.SortStableFunc(out, func(a, b pile) int { return cmp.Compare(a.size(), b.size()) })
	return out
}

// near tries the part's own piece, then those that are larger, the nearest in size first;
// where none serves, those that are a strip too small. Parts that are alike are led to
// different pieces of a pile.
func (m *matcher) near(pieces, parts []*item) []assign.Edge {
	own := make(map[string]int, len(pieces)) // lookup only
	for col, piece := range pieces {
		own[piece.part.ID] = col
	}
	s := nearby{matcher: m, pieces: pieces, piles: piles(pieces)}
	alike := map[int]int{} // how many parts so drawn came before; lookup only
	for row, part := range parts {
		s.row, s.part, s.rank, s.served, s.tried = row, part, alike[part.drawn], 0, 0
		alike[part.drawn]++
		if col, ok := own[part.part.ID]; ok && m.large(pieces[col], part) {
			s.try(col)
		}
		from := sort.Search(len(s.piles), func(n int) bool { return s.piles[n].size() >= part.size() })
		for n := from; n < len(s.piles) && n < from+window && s.goesOn(); n++ {
			if s.piles[n].holds(part.extent, m.within) {
				s.tryPile(s.piles[n])
			}
		}
		for n := from - 1; n >= 0 && n >= from-window && s.served == 0 && s.goesOn(); n-- {
			if s.piles[n].holds(m.least(part), m.within) {
				s.tryPile(s.piles[n])
			}
		}
	}
	return s.edges
}

// nearby is for the nearest pieces that serve as a part.
type nearby struct {
	*matcher
	pieces []*item
	piles  []pile
	edges  []assign.Edge

	row           int
	part          *item
	rank          int // among the parts that are drawn alike
	served, tried int
}

func (s *nearby) goesOn() bool { return s.served < enough && s.tried < mostTried && s.work <= nearWork }

func (s *nearby) try(col int) {
	s.tried++
	if s.matcher.try(&s.edges, s.row, col, s.pieces[col], s.part) {
		s.served++
	}
}

// tryPile tries a piece of the pile, and leaves another one as a choice.
func (s *nearby) tryPile(p pile) {
	s.try(p.cols[s.rank%len(p.cols)])
	next := p.cols[(s.rank+1)%len(p.cols)]
	s.matcher.try(&s.edges, s.row, next, s.pieces[next], s.part)
}

// large reports whether a piece may be large enough.
func (m *matcher) large(piece, part *item) bool { return piece.holds(m.least(part), m.within) }

// least is what a piece must have of a part: what a strip can make up for in a panel is at
// most a quarter.
func (m *matcher) least(part *item) extent {
	if part.part.Kind != model.Panel {
		return part.extent
	}
	return extent{part.long - part.long/4, part.short - part.short/4}
}

// try adds an edge if the piece can serve.
func (m *matcher) try(edges *[]assign.Edge, row, col int, piece, part *item) bool {
	if m.spared(piece, part) {
		return false
	}
	v := m.verdict(piece, part)
	if v.ok {
		if piece.part.ID != part.part.ID {
			v.cost[1] = 1
		}
		*edges = append(*edges, assign.Edge{Row: row, Col: col, Cost: v.cost})
	}
	return v.ok
}

// spared reports whether a piece is not to be cut down to a part that is less than half as
// large: it can serve as its own part, and that gets none as it is.
func (m *matcher) spared(piece, part *item) bool {
	own := piece.own
	return own != nil && own != part && 2*part.size() < piece.size() &&
		(own.pair == nil || own.pair.class != own.class) && m.large(piece, own) && m.verdict(piece, own).ok
}

func (m *matcher) verdict(piece, part *item) verdict {
	drawn := [2]int{piece.drawn, part.drawn}
	v, known := m.verdicts[drawn]
	if !known {
		m.work += effort(piece, part)
		if fit, ok := m.pair.Serve(piece.part, part.part); ok {
			v = verdict{fit, costOf(fit), true}
		}
		m.verdicts[drawn] = v
	}
	return v
}

// costOf is the cost of a fit: a patch, a name that is not kept (which the fit does not
// know), minutes of work, and mm2 that are cut away (SPEC.md 12.4).
func costOf(fit reuse.Fit) (c assign.Cost) {
	if fit.Kind == model.Patch {
		c[0] = 1
	}
	for _, s := range fit.Steps {
		c[2] += minutes(&s)
	}
	c[3] = int64(fit.Waste)
	return c
}

// minutes is what a step takes at the bench: our own estimate, which only has to tell more
// from less.
func minutes(s *model.Step) int64 {
	t := timings[s.Kind]
	return t.first + t.further*int64(s.Count-1)
}

// timings are minutes for a step, the tool set up for it, and for each further thing that is
// alike. Constant.
var timings = [...]struct{ first, further int64 }{
	model.Peel: {5, 0}, model.Trim: {5, 0}, model.Extend: {20, 0}, model.Fill: {20, 0}, model.Plug: {5, 3}, model.CutOut: {10, 0},
	model.Enlarge: {10, 0}, model.Rout: {10, 0}, model.Deepen: {10, 0}, model.Drill: {2, 1}, model.Tape: {5, 0}, model.Draw: {1, 0},
	model.Look: {1, 0},
}
