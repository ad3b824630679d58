package layout

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/sticks"
)

// stick is one stick as bought and the pieces that it gives, from one end on.
type stick struct {
	sold   model.StickLength
	pieces []rod
}

type rod struct {
	part   *model.Part
	length Length
	turned bool
}

// layoutSticks buys what costs least; of that, what has the fewest sticks; of that, what leaves the
// longest offcut. Where a length has no price it buys the fewest sticks, and of those the shortest. A piece
// narrower or thinner than the stick is ripped from it and counts for its length.
func layoutSticks(parts []*model.Part, s model.Stick, kerf Length) (model.Layout, []Misfit) {
	rods, misfits := fittingRods(parts, s)
	// Equal lengths stay in the order of the parts.
	slices.SortStableFunc(rods, func(a, b rod) int { return cmp.Compare(b.length, a.length) })
	return stickLayout(s, rods, buy(rods, s, kerf), longest(s), kerf), misfits
}

// longest is the most that a piece from a stick may have.
func longest(s model.Stick) (long Length) {
	for _, l := range s.Lengths {
		long = max(long, s.Usable(l.Length))
	}
	return long
}

// fittingRods tells parts that some stick can give from those that none can.
func fittingRods(parts []*model.Part, s model.Stick) (rods []rod, misfits []Misfit) {
	most := longest(s)
	for _, p := range parts {
		long, wide, turned := along(p)
		over := Misfit{p.ID, s.Name, max(0, long-most), tooThick(wide, p.Thickness, s)}
		if over.OverLength > 0 || over.OverWidth > 0 {
			misfits = append(misfits, over)
			continue
		}
		rods = append(rods, rod{p, long, turned})
	}
	return rods, misfits
}

// tooThick returns by how much a piece's section passes the stick's, laid as
// it fits best.
func tooThick(a, b Length, s model.Stick) Length {
	return max(0, max(a, b)-max(s.Width, s.Thickness), min(a, b)-min(s.Width, s.Thickness))
}

// effort is that for one stick's layout: some tens of milliseconds at most.
const effort = 10_000_000

// purchase is what is bought, from long to short. No purchase has fewer sticks than atLeast; least
// tells that it is proved to cost the least.
type purchase struct {
	sticks  []stick
	atLeast int
	least   bool
}

// buy tells what to buy for rods, the longest first.
func buy(rods []rod, s model.Stick, kerf Length) (p purchase) {
	dealt := deal(rods)
	for _, some := range dealt {
		p.add(some, s, kerf)
	}
	if len(dealt) > 1 { // together they may need less
		p.atLeast, p.least = 0, false
	}
	slices.SortStableFunc(p.sticks, func(a, b stick) int { return cmp.Compare(b.sold.Length, a.sold.Length) })
	return p
}

// deal parts rods, each part of long and short ones, into as few as are searched at once.
func deal(rods []rod) [][]rod {
	lengths := 0
	for i, r := range rods {
		if i == 0 || r.length != rods[i-1].length {
			lengths++
		}
	}
	out := make([][]rod, max((lengths+sticks.MostKinds-1)/sticks.MostKinds, (len(rods)+sticks.MostPieces-1)/sticks.MostPieces))
	for i, r := range rods {
		out[i%len(out)] = append(out[i%len(out)], r)
	}
	return out
}

// add buys for rods of which there are not too many.
func (p *purchase) add(rods []rod, s model.Stick, kerf Length) {
	job := sticks.Job{Kerf: int64(kerf), Ends: int64(s.Ends), Stocks: onSale(s.Lengths, len(rods))}
	var of [][]rod // by piece of the job
	for _, r := range rods {
		last := len(of) - 1
		if last < 0 || of[last][0].length != r.length {
			job.Pieces = append(job.Pieces, sticks.Piece{Length: int64(r.length)})
			of = append(of, nil)
			last++
		}
		job.Pieces[last].Count++
		of[last] = append(of[last], r)
	}
	exact := true
	result, err := sticks.Solve(&job, effort)
	for ; errors.Is(err, sticks.ErrLarge) && coarsen(job.Stocks); exact = false {
		result, err = sticks.Solve(&job, effort)
	}
	if err != nil {
		panic(err) // lengths and counts are within the limits of a description
	}
	for _, c := range result.Cuts {
		for range c.Times {
			cut := stick{sold: s.Lengths[c.Stock]}
			for _, t := range c.Takes {
				cut.pieces = append(cut.pieces, of[t.Piece][:t.Count]...)
				of[t.Piece] = of[t.Piece][t.Count:]
			}
			p.sticks = append(p.sticks, cut)
		}
	}
	p.least = exact && result.Least()
	p.atLeast = fewest(result.LeastPrice, job.Stocks)
}

// fewest is how many sticks it takes at least to cost so much.
func fewest(price int64, stocks []sticks.Stock) int {
	dearest := int64(1)
	for _, s := range stocks {
		dearest = max(dearest, s.Price)
	}
	return int((price + dearest - 1) / dearest)
}

// onSale prices lengths in ten-thousandths of a unit of money; or, where some have no price, so that the fewest
// sticks cost least, and of as many the shortest, to a tenth of a millimetre.
func onSale(sold []model.StickLength, pieces int) (out []sticks.Stock) {
	const money, tenth = 10_000, 100_000
	var all int64
	for _, l := range sold {
		all = max(all, int64(l.Length)/tenth*int64(pieces))
	}
	for _, l := range sold {
		price := int64(math.Round(l.Price * money))
		if !priced(sold) {
			price = all + int64(l.Length)/tenth
		}
		out = append(out, sticks.Stock{Length: int64(l.Length), Price: price})
	}
	return out
}

// coarsen drops the last digits of prices, and tells whether any are left.
func coarsen(stocks []sticks.Stock) (left bool) {
	for i := range stocks {
		stocks[i].Price /= 10
		left = left || stocks[i].Price > 0
	}
	return left
}

func priced(sold []model.StickLength) bool {
	return !slices.ContainsFunc(sold, func(l model.StickLength) bool { return !l.Priced })
}

func stickLayout(s model.Stick, rods []rod, bought purchase, longest, kerf Length) model.Layout {
	kind := model.Lumber
	if s.Steel {
		kind = model.Steel
	}
	l := model.Layout{Stock: s.Name, Kind: kind, Pieces: len(rods), Bought: len(bought.sticks), Least: bought.least}
	var withKerf []Length
	var used, all Length
	for _, r := range rods {
		withKerf = append(withKerf, r.length+kerf)
		used += r.length
	}
	l.AtLeast = max(bought.atLeast, fewestBins(withKerf, longest+kerf))
	for _, st := range bought.sticks {
		blank := model.Blank{Length: st.sold.Length}
		at := s.Ends
		for _, r := range st.pieces {
			where := geom.Rect{X: geom.Span{Lo: at, Hi: at + r.length}}
			blank.Placed = append(blank.Placed, model.Placed{Part: r.part.ID, At: where, Turned: r.turned})
			at += r.length + kerf
		}
		l.Blanks = append(l.Blanks, blank)
		l.Length = max(l.Length, blank.Length)
		all += blank.Length
	}
	if all > 0 {
		l.Waste = float64(all-used) / float64(all)
	}
	return l
}
