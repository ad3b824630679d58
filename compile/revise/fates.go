package revise

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang/length"
)

// item is a piece of the old build, or a part of the new one.
type item struct {
	at    int         // its index in its build
	part  *model.Part // a piece as it was cut
	class int         // one number for all that can serve for each other as they are
	drawn int         // one number for all that are drawn and named alike
	known bool        // both numbers are
	own   *item       // what the other build has of its ID; nil where that has none
	extent
	pair *item // the piece that serves as the part, or the part that it serves as
}

// board is all that is cut from one board.
type board struct{ pieces, parts []*item }

// fates gives the pieces to the parts. The notes tell what it did not look at.
func fates(p *reuse.Pair, o Options) (all []model.Fate, notes []string) {
	pieces, parts := items(there(p.Old, o.Cut)), items(everyPart(p.New))
	byID(pieces, parts)
	boards := boards(p, pieces, parts)
	m := newMatcher(p, o.Within)
	for i := range boards {
		boards[i].pairAlike()
		m.serve(&boards[i])
	}
	again := map[string]bool{} // IDs of parts to make again, whose pieces are told with them; lookup only
	for _, part := range parts {
		f := m.fate(part)
		again[part.part.ID] = f.Kind == model.MakeAgain
		all = append(all, f)
	}
	for _, piece := range pieces {
		if piece.pair == nil {
			all = append(all, model.Fate{Kind: model.Dropped, Old: piece.at, New: -1, Offcut: -1})
		}
	}
	offcuts(p, boards, all)
	return slices.DeleteFunc(all, func(f model.Fate) bool {
		return f.Kind == model.Dropped && f.Serves == nil && again[p.Old.Parts[f.Old].ID]
	}), m.notes
}

// there lists the pieces that are there, as they were cut, by their index in the build.
func there(old *model.Model, cut []Made) []*model.Part {
	if cut == nil {
		return everyPart(old)
	}
	made := make(map[string]Made, len(cut)) // lookup only
	for _, m := range cut {
		made[m.Label] = m
	}
	out := make([]*model.Part, len(old.Parts))
	for i := range old.Parts {
		if m, ok := made[old.Parts[i].Label]; ok {
			out[i], _ = m.of(&old.Parts[i])
		}
	}
	return out
}

func everyPart(m *model.Model) []*model.Part {
	out := make([]*model.Part, len(m.Parts))
	for i := range m.Parts {
		out[i] = &m.Parts[i]
	}
	return out
}

// items makes items of parts; nil is one that is not there.
func items(parts []*model.Part) []*item {
	var out []*item
	for at, part := range parts {
		if part == nil {
			continue
		}
		out = append(out, &item{at: at, part: part, extent: extentOf(part, part.Outline.Bounds())})
	}
	return out
}

// extent is how large something is over all, whichever way it lies.
type extent struct{ long, short model.Length }

// extentOf is that of a rectangle of a part. Sticks are drawn on either face and differ
// in length only.
func extentOf(part *model.Part, r geom.Rect) extent {
	x, y := r.X.Size(), r.Y.Size()
	if part.Kind == model.Lumber {
		return extent{max(x, y), length.Millimetre}
	}
	return extent{max(x, y), min(x, y)}
}

// size is in um2.
func (e extent) size() int64 { return int64(e.long/1000) * int64(e.short/1000) }

// holds reports whether there is room for another, up to a margin.
func (e extent) holds(o extent, margin model.Length) bool {
	return e.long >= o.long-margin && e.short >= o.short-margin
}

// byID notes which pieces and parts have one ID.
func byID(pieces, parts []*item) {
	own := make(map[string]*item, len(pieces)) // lookup only
	for _, piece := range pieces {
		own[piece.part.ID] = piece
	}
	for _, part := range parts {
		if piece := own[part.part.ID]; piece != nil {
			piece.own, part.own = part, piece
		}
	}
}

// boards sorts pieces and parts by what they are cut from, in the order of the pieces,
// and numbers those that are alike.
func boards(p *reuse.Pair, pieces, parts []*item) []board {
	var out []board
	numbers := map[int]int{} // lookup only
	alike := numbering{pair: p, classes: map[string]int{}}
	of := func(i *item) *board {
		alike.number(i)
		number := p.Board(i.part)
		at, ok := numbers[number]
		if !ok {
			at = len(out)
			numbers[number] = at
			out = append(out, board{})
		}
		return &out[at]
	}
	for _, piece := range pieces {
		b := of(piece)
		b.pieces = append(b.pieces, piece)
	}
	for _, part := range parts {
		b := of(part)
		b.parts = append(b.parts, part)
	}
	return out
}

// fate tells what becomes of a part, whose piece is known.
func (m *matcher) fate(part *item) model.Fate {
	f := model.Fate{Kind: model.NewPart, Old: -1, New: part.at, Offcut: -1}
	switch {
	case part.pair != nil:
		piece := part.pair
		fit := m.fit(piece, part)
		f.Kind, f.Old, f.Lay, f.Steps = fit.Kind, piece.at, fit.Lay, fit.Steps
		f.Missing, f.Spare, f.Off = fit.Missing, fit.Spare, fit.Off
		if was := &m.pair.Old.Parts[piece.at]; was.ID == part.part.ID {
			f.Stands = m.stance.differs(was, part.part)
		}
		if fit.Kind == model.Unchanged && (f.Stands != "" || !sameName(piece.part, part.part)) {
			f.Kind = model.Relabel
		}
	case part.own != nil:
		f.Kind = model.MakeAgain
	}
	return f
}

// sameName reports whether a piece keeps its label, and what it belongs to.
func sameName(a, b *model.Part) bool {
	return a.ID == b.ID && a.Label == b.Label && a.Owner == b.Owner && a.Name == b.Name
}
