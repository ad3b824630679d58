package layout

import (
	"cmp"
	"math/big"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// size is an extent along a sheet (x) and across it (y).
type size struct{ x, y Length }

// area returns the area in square micrometres: exact enough to choose by, and
// within 63 bits for any sheet.
func (s size) area() int64 { return int64(s.x/1000) * int64(s.y/1000) }

func (s size) fitsIn(o size) bool { return s.x <= o.x && s.y <= o.y }

// piece is a part and the one or two ways that it may lie on a sheet.
type piece struct {
	part *model.Part
	ways []way
}

type way struct {
	size
	turned bool // the part's own x runs across the sheet
}

// mostLooks is how many free rectangles are gone through before no further method is
// tried: all are for some thousand pieces, a few for some ten thousand.
const mostLooks = 10_000_000

// layoutSheets fills sheets by every method, as far as mostLooks goes, and keeps the
// layout with the fewest sheets; then the one with the largest offcut; then the first.
func layoutSheets(parts []*model.Part, s model.Sheet, saw model.Saw) (model.Layout, []Misfit) {
	room := size{s.Length - 2*saw.Trim, s.Width - 2*saw.Trim}
	var pieces []piece
	var misfits []Misfit
	for _, p := range parts {
		ways, over := waysToLie(p, s, room)
		if len(ways) == 0 {
			misfits = append(misfits, over)
			continue
		}
		pieces = append(pieces, piece{p, ways})
	}
	l := model.Layout{Stock: s.Name, Kind: model.Panel, Pieces: len(pieces), Length: s.Length, Width: s.Width}
	if len(pieces) == 0 {
		return l, misfits
	}
	var best []board
	looks := 0
	for _, m := range methods() {
		if looks > mostLooks {
			break
		}
		boards, more := m.pack(pieces, room, saw.Kerf)
		looks += more
		if best == nil || cmp.Or(cmp.Compare(len(boards), len(best)), cmp.Compare(offcut(best), offcut(boards))) < 0 {
			best = boards
		}
	}
	l.AtLeast = fewestSheets(pieces, room, saw.Kerf)
	l.Bought = len(best)
	l.Waste = sheetWaste(pieces, s, l.Bought)
	for _, b := range best {
		l.Blanks = append(l.Blanks, model.Blank{Length: s.Length, Width: s.Width, Placed: b.pieces(saw.Trim)})
	}
	return l, misfits
}

// waysToLie returns how a part may lie in the room of a sheet, or by how much
// it passes the room. Grain runs along the sheet, where both have one.
func waysToLie(p *model.Part, s model.Sheet, room size) (ways []way, over Misfit) {
	x, y := p.Size()
	bound := s.Grain && p.Grain != model.GrainNone
	if as := (size{x, y}); as.fitsIn(room) && !(bound && p.Grain == model.GrainY) {
		ways = append(ways, way{as, false})
	}
	if turned := (size{y, x}); turned.fitsIn(room) && (bound && p.Grain == model.GrainY || !bound && x != y) {
		ways = append(ways, way{turned, true})
	}
	long, wide, _ := along(p)
	if !bound {
		long, wide = max(x, y), min(x, y)
		room = size{max(room.x, room.y), min(room.x, room.y)}
	}
	return ways, Misfit{p.ID, s.Name, max(0, long-room.x), max(0, wide-room.y)}
}

// sheetWaste returns the share of the sheets that no piece takes; a piece
// counts as the rectangle that it is cut from.
func sheetWaste(pieces []piece, s model.Sheet, bought int) float64 {
	used, term := new(big.Int), new(big.Int)
	for _, p := range pieces {
		used.Add(used, term.Mul(big.NewInt(int64(p.ways[0].x)), big.NewInt(int64(p.ways[0].y))))
	}
	all := new(big.Int).Mul(big.NewInt(int64(s.Length)), big.NewInt(int64(s.Width)))
	all.Mul(all, big.NewInt(int64(bought)))
	waste, _ := new(big.Rat).SetFrac(used.Sub(all, used), all).Float64()
	return waste
}

// pieces returns where the pieces of a board lie on the sheet.
func (b board) pieces(trim Length) []model.Placed {
	var out []model.Placed
	for _, p := range b.placed {
		at := p.at.Shift(geom.Point{X: trim, Y: trim})
		out = append(out, model.Placed{Part: p.part.ID, At: at, Turned: p.way.turned})
	}
	return out
}
