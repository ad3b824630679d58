package bill

import (
	"math"

	"barwright/compile/model"
	"barwright/lang/finding"
)

func (b *builder) sheets() {
	for _, s := range b.Stock.Sheets {
		for _, l := range b.Layouts {
			if l.Stock != s.Name || l.Bought == 0 {
				continue
			}
			c := b.cutFrom(l.Blanks, s.Density)
			least := finding.Counted(l.AtLeast, "sheet") + " at least"
			b.add(model.BillLine{
				Section: "sheets", Item: s.Name, Text: s.Text, Use: c.owners.String(),
				Quantity: float64(l.Bought), Unit: "sheet", Needed: finding.Counted(c.pieces, "piece") + "; " + least,
				WeightKg: c.kg, Price: s.Price, Priced: s.Priced,
			})
		}
	}
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
		least := b.leastSticks(s, unit)
		for _, sold := range s.Lengths {
			blanks := b.blanks(s.Name, sold.Length)
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

func (b *builder) leastSticks(s model.Stick, unit string) string {
	for _, l := range b.Layouts {
		if l.Stock == s.Name && l.Bought > 0 {
			longest := s.Lengths[len(s.Lengths)-1].Length
			return "; at least " + finding.Counted(l.AtLeast, unit) + " of " + b.long(longest) + " for all pieces"
		}
	}
	return ""
}

// blanks returns what is bought of a stock in a length.
func (b *builder) blanks(stock string, long model.Length) (out []model.Blank) {
	for _, l := range b.Layouts {
		for _, blank := range l.Blanks {
			if l.Stock == stock && blank.Length == long {
				out = append(out, blank)
			}
		}
	}
	return out
}

// cutting sums up the pieces that come out of blanks.
type cutting struct {
	pieces int
	along  model.Length // of the pieces, along the blanks
	kg     float64
	owners list
}

func (b *builder) cutFrom(blanks []model.Blank, density float64) cutting {
	var c cutting
	for _, blank := range blanks {
		for _, placed := range blank.Placed {
			p := b.parts[placed.Part]
			c.pieces++
			c.along += placed.At.X.Size()
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
