package bill

import (
	"math"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// sheets adds a line for each size that is bought of a board. The first one tells whether less
// can do, and what offcuts give that are there already.
func (b *builder) sheets() {
	for _, s := range b.Stock.Sheets {
		l := b.layout(s.Name)
		if l == nil {
			continue
		}
		told := ""
		if l.Least {
			told += least(l)
		} else if l.AtLeast > 0 {
			told += "; " + finding.Counted(l.AtLeast, "sheet") + " at least"
		}
		if own := b.cutFrom(blanksOf(l, func(k *model.Blank) bool { return k.Own }), s.Density); own.pieces > 0 {
			told += "; " + finding.Counted(own.pieces, "piece") + " more from offcuts"
		}
		for _, sold := range s.Sizes() {
			blanks := blanksOf(l, func(k *model.Blank) bool { return !k.Own && k.Length == sold.Length && k.Width == sold.Width })
			if len(blanks) == 0 {
				continue
			}
			text := s.Text
			if len(s.Also) > 0 {
				text += ", " + b.long(sold.Length) + " x " + b.long(sold.Width)
			}
			c := b.cutFrom(blanks, s.Density)
			b.add(model.BillLine{
				Section: "sheets", Item: s.Name, Text: text, Use: c.owners.String(),
				Quantity: float64(len(blanks)), Unit: "sheet", Needed: finding.Counted(c.pieces, "piece") + told,
				WeightKg: c.kg, Price: sold.Price, Priced: sold.Priced,
			})
			told = ""
		}
	}
}

// layout is that of a stock; nil where nothing is cut from it.
func (b *builder) layout(stock string) *model.Layout {
	for i := range b.Layouts {
		if b.Layouts[i].Stock == stock {
			return &b.Layouts[i]
		}
	}
	return nil
}

func blanksOf(l *model.Layout, of func(*model.Blank) bool) (out []model.Blank) {
	for i := range l.Blanks {
		if of(&l.Blanks[i]) {
			out = append(out, l.Blanks[i])
		}
	}
	return out
}

// sticks adds a line for each length that is bought of a stick or a flat bar. The
// first one tells how few of the longest would be the least for all pieces.
func (b *builder) sticks(section string, steel bool) {
	unit := "stick"
	if steel {
		unit = "bar"
	}
	for _, s := range b.Stock.Sticks {
		if s.Steel != steel {
			continue
		}
		l := b.layout(s.Name)
		if l == nil {
			continue
		}
		least := b.leastSticks(l, s, unit)
		for _, sold := range s.Lengths {
			blanks := blanksOf(l, func(k *model.Blank) bool { return k.Length == sold.Length })
			if len(blanks) == 0 {
				continue
			}
			c := b.cutFrom(blanks, s.Density)
			needed := finding.Counted(c.pieces, "piece") + ", " + b.long(c.along) + " in all" + least
			least = ""
			b.add(model.BillLine{
				Section: section, Item: s.Name, Text: s.Text + ", " + b.long(sold.Length), Use: c.owners.String(),
				Quantity: float64(len(blanks)), Unit: unit, Needed: needed,
				WeightKg: c.kg, Price: sold.Price, Priced: sold.Priced,
			})
		}
	}
}

func (b *builder) leastSticks(l *model.Layout, s model.Stick, unit string) string {
	if l.Least {
		return least(l)
	}
	longest := s.Lengths[len(s.Lengths)-1].Length
	return "; at least " + finding.Counted(l.AtLeast, unit) + " of " + b.long(longest) + " for all pieces"
}

// least says of the first of the lines of a layout that nothing costs less: of all of them, where
// there are more.
func least(l *model.Layout) string {
	first := -1
	for i, b := range l.Blanks {
		switch {
		case b.Own:
		case first < 0:
			first = i
		case b.Length != l.Blanks[first].Length || b.Width != l.Blanks[first].Width:
			return "; the least possible for all pieces"
		}
	}
	return "; the least possible"
}

// cutting sums up the pieces that come out of blanks.
type cutting struct {
	pieces int
	along  model.Length // of the pieces, along the blanks
	kg     float64
	owners list
}

// cutFrom sums up in the order of the parts.
func (b *builder) cutFrom(blanks []model.Blank, density float64) cutting {
	var c cutting
	from := map[string]bool{} // by ID; lookup only
	for _, blank := range blanks {
		for _, placed := range blank.Placed {
			from[placed.Part] = true
			c.along += placed.At.X.Size()
		}
	}
	for i := range b.Parts {
		if p := &b.Parts[i]; from[p.ID] {
			c.pieces++
			c.kg += float64(cubicMetres(p) * density)
			c.owners.add(p.Owner)
		}
	}
	return c
}

// cubicMetres returns the volume of a part, its openings and recesses taken
// out. The outline already lacks its notches.
func cubicMetres(p *model.Part) float64 {
	area := math.Abs(p.Outline.Area())
	for _, o := range p.Openings {
		if !o.Notch {
			area -= math.Abs(o.Shape.Area())
		}
	}
	volume := float64(area * p.Thickness.MM())
	for _, r := range p.Recesses {
		volume -= float64(math.Abs(r.Shape.Area()) * r.Depth.MM())
	}
	return volume / 1e9
}
