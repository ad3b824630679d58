package bill

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
)

// banding adds a line for each banding that some edge is covered with. Every
// strip is as long as its edge and what is spared to be trimmed (common
// practice); strips come off the rolls whole, as sticks come out of lengths.
func (b *builder) banding() {
	for _, stock := range b.Stock.Bandings {
		var strips []model.Length
		var owners list
		sum := model.Length(0)
		for i := range b.Parts {
			p := &b.Parts[i]
			for _, band := range p.Bands {
				if band.Stock != stock.Name {
					continue
				}
				for _, l := range straights(p.Outline, band.Edge) {
					strips, sum = append(strips, l+stock.Spare), sum+l+stock.Spare
					owners.add(p.Owner)
				}
			}
		}
		if len(strips) == 0 {
			continue
		}
		needed := finding.Counted(len(strips), "edge") + ", " + b.long(sum) + " in all"
		if stock.Spare > 0 {
			needed += " with " + b.Build.Plain(stock.Spare) + " to trim on each"
		}
		b.add(model.BillLine{
			Section: "banding", Item: stock.Name, Text: stock.Text, Use: owners.String(),
			Quantity: float64(rolls(strips, stock.Roll)), Unit: "roll of " + b.long(stock.Roll),
			Needed: needed, Price: stock.Price, Priced: stock.Priced,
		})
	}
}

// straights are the lengths of wood along an edge of an outline: one, unless a
// notch parts it.
func straights(outline geom.Contour, edge model.Edge) []model.Length {
	box := outline.Bounds()
	at := [...]geom.Rect{
		model.Bottom:    {X: box.X, Y: geom.Span{Lo: box.Y.Lo, Hi: box.Y.Lo}},
		model.RightEdge: {X: geom.Span{Lo: box.X.Hi, Hi: box.X.Hi}, Y: box.Y},
		model.Top:       {X: box.X, Y: geom.Span{Lo: box.Y.Hi, Hi: box.Y.Hi}},
		model.LeftEdge:  {X: geom.Span{Lo: box.X.Lo, Hi: box.X.Lo}, Y: box.Y},
	}[edge]
	var out []model.Length
	for i, v := range outline {
		w := outline[(i+1)%len(outline)]
		side := geom.R(min(v.X, w.X), min(v.Y, w.Y), max(v.X, w.X), max(v.Y, w.Y))
		if v.Bulge == 0 && at.Contains(side) {
			out = append(out, max(side.X.Size(), side.Y.Size()))
		}
	}
	return out
}

// rolls is how many rolls give the strips: the longest first, each from the
// first roll that has enough left. A strip longer than a roll is pieced from
// rolls of its own.
func rolls(strips []model.Length, roll model.Length) int {
	strips = slices.Clone(strips)
	slices.SortFunc(strips, func(a, b model.Length) int { return cmp.Compare(b, a) })
	pieced := 0
	var left []model.Length // of each roll
	for _, strip := range strips {
		if strip > roll {
			pieced += int((strip + roll - 1) / roll)
			continue
		}
		if i := slices.IndexFunc(left, func(l model.Length) bool { return l >= strip }); i >= 0 {
			left[i] -= strip
		} else {
			left = append(left, roll-strip)
		}
	}
	return pieced + len(left)
}
