package revise

import (
	"cmp"
	"slices"
	"sort"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
)

// rest is a rectangle that is left of a piece.
type rest struct {
	rect  geom.Rect // on the piece's drawn face
	piece *item
	extent
}

func restOf(piece *item, r geom.Rect) rest { return rest{r, piece, extentOf(piece.part, r)} }

// offcuts tells which parts that no piece serves for can be cut out of what is left of
// one: the largest part first, each out of the smallest rest that holds it. What is
// used is used once.
func offcuts(p *reuse.Pair, boards []board, all []model.Fate) {
	of := map[int]*model.Fate{} // of dropped pieces, by index; lookup only
	for i := range all {
		if all[i].Kind == model.Dropped {
			of[all[i].Old] = &all[i]
		}
	}
	byPart := all[:len(p.New.Parts)] // the new parts come first
	for i := range boards {
		parts := single(boards[i].parts)
		if len(parts) == 0 {
			continue
		}
		slices.SortStableFunc(parts, func(a, b *item) int { return cmp.Compare(b.size(), a.size()) })
		s := rests{pair: p}
		s.gather(boards[i].pieces, byPart)
		for _, part := range parts {
			piece := s.take(part)
			if piece == nil {
				continue
			}
			byPart[part.at].Offcut = piece.at
			if f := of[piece.at]; f != nil {
				f.Serves = append(f.Serves, part.at)
				slices.Sort(f.Serves)
			}
		}
	}
}

// rests are what is left of the pieces of a board, the smallest first.
type rests struct {
	pair *reuse.Pair
	all  []rest
}

// gather adds what is left of pieces: of those that serve for nothing all.
func (s *rests) gather(pieces []*item, fates []model.Fate) {
	kerf := s.pair.New.Saw.Kerf
	for _, piece := range pieces {
		var rects []geom.Rect
		if piece.pair == nil {
			rects = s.pair.Rest(piece.part, nil, model.Lay{}, kerf)
		} else if f := fates[piece.pair.at]; f.Kind > model.Relabel {
			rects = s.pair.Rest(piece.part, piece.pair.part, f.Lay, kerf)
		}
		for _, r := range rects {
			s.all = append(s.all, restOf(piece, r))
		}
	}
	slices.SortStableFunc(s.all, func(a, b rest) int { return cmp.Compare(a.size(), b.size()) })
}

// take takes a part out of the smallest rest that holds it, and returns whose that is.
// It looks at no more than a window of them.
func (s *rests) take(part *item) *item {
	from := s.from(part.size())
	for n := from; n < len(s.all) && n < from+window; n++ {
		r := s.all[n]
		if !r.holds(part.extent, 0) {
			continue
		}
		left, ok := s.pair.Holds(r.rect, r.piece.part, part.part, s.pair.New.Saw.Kerf)
		if !ok {
			continue
		}
		s.all = slices.Delete(s.all, n, n+1)
		for _, rect := range left {
			next := restOf(r.piece, rect)
			s.all = slices.Insert(s.all, s.from(next.size()), next)
		}
		return r.piece
	}
	return nil
}

// from is where rests of a size and up begin.
func (s *rests) from(size int64) int {
	return sort.Search(len(s.all), func(n int) bool { return s.all[n].size() >= size })
}
