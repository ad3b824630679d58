// Package layout tells how pieces come out of what is sold: which sheets and
// sticks to buy, and where each piece lies on them. It takes the parts of a
// build and the stock, and returns layouts, cut list lines, and the pieces for
// which nothing on sale is large enough.
//
// Sheets are searched by compile/nesting, sticks by compile/sticks. Each layout carries a lower
// bound, which tells how much a better search could save, and whether nothing can be saved.
// Equal input gives equal layouts.
package layout

import (
	"barwright/compile/atonce"
	"barwright/compile/model"
)

// Shop is how boards are cut, and how long is searched for each of them: nesting.Quick where
// Work is 0.
type Shop struct {
	Saw   model.Saw
	Table model.Table
	Work  int
}

// Length is the measure of every layout.
type Length = model.Length

// Misfit is a piece that nothing on sale can give. Over tells by how much it
// is too long and too wide for the largest there is, trim taken off; 0 where
// it is not. Both are 0 where no stock has the name that the part asks for.
type Misfit struct {
	Part       string // ID
	Stock      string
	OverLength Length
	OverWidth  Length
}

// Layouts lays out all parts, one layout for each stock that is used: sheets
// first, then sticks and flat bars, in the order of the stock. Misfits are in
// the order of the parts and in no layout. Pieces of slabs are not laid out:
// they are ordered to size.
func Layouts(parts []model.Part, stock model.Stock, shop Shop) ([]model.Layout, []Misfit) {
	var jobs []func() (model.Layout, []Misfit)
	for i := range stock.Sheets {
		s := &stock.Sheets[i]
		jobs = append(jobs, func() (model.Layout, []Misfit) { return layoutSheets(cutFrom(parts, s.Name), s, shop) })
	}
	for _, s := range stock.Sticks {
		jobs = append(jobs, func() (model.Layout, []Misfit) { return layoutSticks(cutFrom(parts, s.Name), s, shop.Saw.Kerf) })
	}
	layouts, misfits := laid(jobs)
	return layouts, inOrder(parts, stock, misfits)
}

// Misfits are those that Layouts finds of stock without offcuts, and nothing is laid out for that.
func Misfits(parts []model.Part, stock model.Stock, shop Shop) []Misfit {
	misfits := map[string]Misfit{} // by part, lookup only
	add := func(some []Misfit) {
		for _, m := range some {
			misfits[m.Part] = m
		}
	}
	for i := range stock.Sheets {
		s := newSheets(&stock.Sheets[i], shop)
		_, over := s.fitting(cutFrom(parts, s.stock.Name))
		add(over)
	}
	for _, s := range stock.Sticks {
		_, over := fittingRods(cutFrom(parts, s.Name), s)
		add(over)
	}
	return inOrder(parts, stock, misfits)
}

// inOrder lists misfits in the order of the parts, and with them those of which there is no stock.
func inOrder(parts []model.Part, stock model.Stock, misfits map[string]Misfit) (out []Misfit) {
	known := map[string]bool{} // lookup only
	for i := range stock.Sheets {
		known[stock.Sheets[i].Name] = true
	}
	for i := range stock.Sticks {
		known[stock.Sticks[i].Name] = true
	}
	for i := range parts {
		p := &parts[i]
		if m, ok := misfits[p.ID]; ok {
			out = append(out, m)
		} else if !known[p.Stock] && p.Kind != model.SlabPiece {
			out = append(out, Misfit{Part: p.ID, Stock: p.Stock})
		}
	}
	return out
}

// laid lays stocks out at the same time, and gives the layouts in the order of the stocks
// and the misfits by part.
func laid(jobs []func() (model.Layout, []Misfit)) (layouts []model.Layout, misfits map[string]Misfit) {
	type done struct {
		layout model.Layout
		over   []Misfit
	}
	all := make([]done, len(jobs))
	atonce.Each(len(jobs), func(i int) { all[i].layout, all[i].over = jobs[i]() })
	misfits = map[string]Misfit{} // lookup only
	for _, d := range all {
		if d.layout.Pieces > 0 {
			layouts = append(layouts, d.layout)
		}
		for _, m := range d.over {
			misfits[m.Part] = m
		}
	}
	return layouts, misfits
}

func cutFrom(parts []model.Part, stock string) []*model.Part {
	var out []*model.Part
	for i := range parts {
		if parts[i].Stock == stock {
			out = append(out, &parts[i])
		}
	}
	return out
}

// along returns a part's size along its grain and across it, and whether its
// own y is the one along. A part without grain runs along its longer side.
func along(p *model.Part) (length, width Length, turned bool) {
	x, y := p.Size()
	if p.Grain == model.GrainY || p.Grain == model.GrainNone && y > x {
		return y, x, true
	}
	return x, y, false
}
