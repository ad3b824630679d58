package layout

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/nesting"
)

// size is an extent along a sheet (x) and across it (y).
type size struct{ x, y Length }

func (s size) fitsIn(o size) bool { return s.x <= o.x && s.y <= o.y }

// piece is what is cut from a sheet as one rectangle: a part, or several whose grain goes on
// from one to the next. Places and cuts are within it, as it lies unturned.
type piece struct {
	size
	turns   bool // only of one part
	lying   []lying
	cuts    []model.SawCut
	notches []geom.Rect // of one part, in a free layout
}

type lying struct {
	part   *model.Part
	at     geom.Rect
	turned bool // the part's own x runs across the sheet
}

// source is a size of sheet to cut from: one on sale, or an offcut.
type source struct {
	size
	edge  Length // kept from each of its edges
	price int64  // as nesting.Sheet has it
	most  int    // 0: any number
	own   bool
}

func (s source) room() size { return size{s.x - 2*s.edge, s.y - 2*s.edge} }

// sheets is the layout of one board.
type sheets struct {
	Shop
	stock   *model.Sheet
	sources []source // first those on sale
	onSale  int
}

// layoutSheets buys what costs least, and then leaves the largest offcut: by prices where all
// sizes have one, and otherwise by area. What is there already costs nothing. A part that only
// offcuts are large enough for is a misfit where these are too few.
func layoutSheets(parts []*model.Part, stock *model.Sheet, shop Shop) (model.Layout, []Misfit) {
	s := newSheets(stock, shop)
	l := model.Layout{Stock: stock.Name, Kind: model.Panel, Length: stock.Length, Width: stock.Width, Free: shop.Table.Free}
	fit, misfits := s.fitting(parts)
	pieces := s.pieces(fit)
	found := s.job(pieces).Solve()
	for _, n := range found.Out {
		misfits = append(misfits, s.over(pieces[n]))
	}
	if l.Pieces = len(fit) - len(found.Out); l.Pieces == 0 {
		return l, misfits
	}
	rank := func(u nesting.Used) int { return (u.Sheet - s.onSale + len(s.sources)) % len(s.sources) }
	slices.SortStableFunc(found.Used, func(a, b nesting.Used) int { return cmp.Compare(rank(a), rank(b)) })
	for i := range found.Used {
		l.Blanks = append(l.Blanks, s.blank(&found.Used[i], pieces))
		if !s.sources[found.Used[i].Sheet].own {
			l.Bought++
		}
	}
	if len(found.Out) == 0 {
		l.AtLeast, l.Least = found.Fewest, found.Price <= found.AtLeast
	}
	l.Waste = s.waste(found.Used, pieces)
	return l, misfits
}

func newSheets(stock *model.Sheet, shop Shop) *sheets {
	s := &sheets{Shop: shop, stock: stock}
	s.list()
	return s
}

// fitting tells parts that some sheet can give from those that none can.
func (s *sheets) fitting(parts []*model.Part) (fit []*model.Part, misfits []Misfit) {
	for _, p := range parts {
		if one := s.single(p); fits(one, s.sources) {
			fit = append(fit, p)
		} else {
			misfits = append(misfits, s.over(one))
		}
	}
	return fit, misfits
}

// list fills in the sources.
func (s *sheets) list() {
	edge, own := s.Table.Edge(s.Saw), s.Table.Edge(model.Saw{}) // offcuts are not trimmed
	sizes := s.stock.Sizes()
	byPrice := !slices.ContainsFunc(sizes, func(z model.SheetSize) bool { return !z.Priced || z.Price <= 0 })
	for _, z := range sizes {
		price := int64(z.Length/1000) * int64(z.Width/1000)
		if byPrice {
			price = max(1, int64(math.Round(z.Price*10_000)))
		}
		s.sources = append(s.sources, source{size: size{z.Length, z.Width}, edge: edge, price: price})
	}
	s.onSale = len(s.sources)
	for _, o := range s.stock.Offcuts {
		s.sources = append(s.sources, source{size: size{o.Length, o.Width}, edge: own, most: o.Count, own: true})
	}
}

// single is a part as it may lie on a sheet. Grain runs along the sheet, where both have one.
func (s *sheets) single(p *model.Part) piece {
	x, y := p.Size()
	bound := s.stock.Grain && p.Grain != model.GrainNone
	turned := bound && p.Grain == model.GrainY
	if turned {
		x, y = y, x
	}
	one := piece{size: size{x, y}, lying: []lying{{p, geom.R(0, 0, x, y), turned}}}
	if s.Table.Free {
		one.notches = notches((&model.Placed{Turned: turned}).Outline(p))
	}
	one.turns = !bound && (x != y || reached(one.notches, s.gap()) != nil)
	return one
}

// sold reports whether a size on sale gives a piece. Of offcuts there may be too few.
func (s *sheets) sold(p piece) bool { return fits(p, s.sources[:s.onSale]) }

func fits(p piece, from []source) bool {
	return slices.ContainsFunc(from, func(o source) bool {
		return p.fitsIn(o.room()) || p.turns && (size{p.y, p.x}).fitsIn(o.room())
	})
}

// over tells by how much a part passes the size on sale that it misses by the least.
func (s *sheets) over(p piece) (least Misfit) {
	for i, o := range s.sources[:s.onSale] {
		long, wide, room := p.x, p.y, o.room()
		if !s.stock.Grain || p.lying[0].part.Grain == model.GrainNone {
			long, wide = max(long, wide), min(long, wide)
			room = size{max(room.x, room.y), min(room.x, room.y)}
		}
		m := Misfit{p.lying[0].part.ID, s.stock.Name, max(0, long-room.x), max(0, wide-room.y)}
		if i == 0 || max(m.OverLength, m.OverWidth) < max(least.OverLength, least.OverWidth) {
			least = m
		}
	}
	return least
}

func (s *sheets) job(pieces []piece) *nesting.Job {
	j := &nesting.Job{Kerf: s.gap(), Free: s.Table.Free, Stages: s.Saw.Stages, Work: cmp.Or(s.Work, nesting.Quick)}
	for _, p := range pieces {
		j.Pieces = append(j.Pieces, nesting.Piece{Size: nesting.Size{X: p.x, Y: p.y}, Turns: p.turns, Notches: reached(p.notches, s.gap())})
	}
	for _, o := range s.sources {
		room := o.room()
		j.Sheets = append(j.Sheets, nesting.Sheet{Size: nesting.Size{X: room.x, Y: room.y}, Price: o.price, Most: o.most})
	}
	return j
}

// gap is how far apart pieces lie at least.
func (s *sheets) gap() Length {
	if s.Table.Free {
		return s.Table.Spacing
	}
	return s.Saw.Kerf
}

// blank is a sheet with its parts where they lie on it.
func (s *sheets) blank(u *nesting.Used, pieces []piece) model.Blank {
	from := s.sources[u.Sheet]
	corner := geom.Point{X: from.edge, Y: from.edge}
	b := model.Blank{Length: from.x, Width: from.y, Own: from.own}
	if u.Offcut.X.Size() > 0 && u.Offcut.Y.Size() > 0 {
		b.Offcut = u.Offcut.Shift(corner)
	}
	for _, c := range u.Cuts {
		b.Cuts = append(b.Cuts, model.SawCut{Along: c.Along == geom.U, At: c.At + from.edge, Of: c.Of.Shift(corner)})
	}
	for _, placed := range u.Placed {
		p, at := &pieces[placed.Piece], geom.Point{X: placed.At.X + from.edge, Y: placed.At.Y + from.edge}
		for _, l := range p.lying {
			if placed.Turned {
				l.at, l.turned = geom.Rect{X: l.at.Y, Y: l.at.X}, !l.turned
			}
			b.Placed = append(b.Placed, model.Placed{Part: l.part.ID, At: l.at.Shift(at), Turned: l.turned})
		}
		if s.Table.Free {
			continue
		}
		for _, c := range p.cuts {
			b.Cuts = append(b.Cuts, shifted(c, at))
		}
	}
	slices.SortStableFunc(b.Placed, func(a, b model.Placed) int {
		return cmp.Or(cmp.Compare(a.At.X.Lo, b.At.X.Lo), cmp.Compare(a.At.Y.Lo, b.At.Y.Lo))
	})
	return b
}

// waste is the share of sheets that no piece takes; a piece counts as the rectangle that it is
// cut from, in a free layout without its notches.
func (s *sheets) waste(used []nesting.Used, pieces []piece) float64 {
	taken, all := new(big.Int), new(big.Int)
	area := func(x, y Length) *big.Int { return new(big.Int).Mul(big.NewInt(int64(x)), big.NewInt(int64(y))) }
	for _, u := range used {
		all.Add(all, area(s.sources[u.Sheet].x, s.sources[u.Sheet].y))
		for _, placed := range u.Placed {
			for _, l := range pieces[placed.Piece].lying {
				taken.Add(taken, area(l.at.X.Size(), l.at.Y.Size()))
			}
			for _, n := range pieces[placed.Piece].notches {
				taken.Sub(taken, area(n.X.Size(), n.Y.Size()))
			}
		}
	}
	waste, _ := new(big.Rat).SetFrac(taken.Sub(all, taken), all).Float64()
	return waste
}
