package solve

import (
	"cmp"
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// stock lists what can be bought, in the order of the text.
func (s *solver) stock() {
	s.saw()
	s.table()
	for _, b := range s.Source.Blocks {
		s.checkLikely(b)
		switch b.Spec.Kind {
		case "sheet":
			s.m.Stock.Sheets = append(s.m.Stock.Sheets, s.sheet(b))
		case "stick", "flat_bar":
			s.m.Stock.Sticks = append(s.m.Stock.Sticks, s.stick(b))
		case "slab":
			s.m.Stock.Slabs = append(s.m.Stock.Slabs, s.slabStock(b))
		case "screw":
			s.m.Stock.Screws = append(s.m.Stock.Screws, model.Screw{
				Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s", s.Show(s.Length(b, "diameter")), s.Show(s.Length(b, "length")))),
				Diameter: s.Length(b, "diameter"), Length: s.Length(b, "length"), PerBox: s.Count(b, "per_box"),
				Price: s.Number(b, "price"), Priced: s.Has(b, "price"), Why: why(b),
			})
		case "fitting":
			s.m.Stock.Fittings = append(s.m.Stock.Fittings, model.Fitting{
				Name: b.Key(), Text: cmp.Or(s.Text(b, "label"), b.Name), PerPack: s.Count(b, "per_pack"),
				Price: s.Number(b, "price"), Priced: s.Has(b, "price"), Why: why(b),
			})
		case "banding":
			s.m.Stock.Bandings = append(s.m.Stock.Bandings, s.banding(b))
		}
	}
}

// slabStock has the zero size where any piece can be had.
func (s *solver) slabStock(b *lang.Block) model.SlabStock {
	out := model.SlabStock{
		Name: b.Key(), Text: s.asked(b, s.Show(s.Length(b, "thickness"))+" thick"),
		Thickness: s.Length(b, "thickness"), Solid: s.Flag(b, "solid"), Density: s.Number(b, "density"),
		Price: s.Number(b, "price"), Priced: s.Has(b, "price"), Why: why(b),
	}
	if size := s.Lengths(b, "size"); len(size) == 2 {
		out.Length, out.Width = size[0], size[1]
	}
	return out
}

func (s *solver) banding(b *lang.Block) model.Banding {
	size := s.Show(s.Length(b, "thickness"))
	if s.Has(b, "width") {
		size += " x " + s.Show(s.Length(b, "width"))
	}
	return model.Banding{
		Name: b.Key(), Text: s.asked(b, size), Thickness: s.Length(b, "thickness"),
		Roll: s.Length(b, "roll"), Spare: s.Length(b, "spare"),
		Price: s.Number(b, "price"), Priced: s.Has(b, "price"), Why: why(b),
	}
}

// asked is what one asks for at the counter: the label where the text gives
// one, else the name and the size.
func (s *solver) asked(b *lang.Block, size string) string {
	if b.Attr("label") != nil {
		return s.Text(b, "label")
	}
	return b.Name + ", " + size
}

func (s *solver) sheet(b *lang.Block) model.Sheet {
	size := s.Lengths(b, "size")
	t := s.Length(b, "thickness")
	out := model.Sheet{
		Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s x %s", s.Show(t), s.Show(size[1]), s.Show(size[0]))),
		Length: size[0], Width: size[1], Thickness: t, Batch: s.Text(b, "batch"), Grain: s.Text(b, "grain") == "length",
		Density: s.Number(b, "density"), Price: s.Number(b, "price"), Priced: s.Has(b, "price"), Why: why(b),
	}
	for _, also := range b.Inner("also") {
		size := s.Lengths(also, "size")
		out.Also = append(out.Also, model.SheetSize{Length: size[0], Width: size[1], Price: s.Number(also, "price"), Priced: s.Has(also, "price")})
	}
	for _, o := range b.Inner("offcut") {
		size := s.Lengths(o, "size")
		out.Offcuts = append(out.Offcuts, model.Offcut{Length: size[0], Width: size[1], Count: s.Count(o, "count")})
	}
	return out
}

// mostLengths is how many lengths of a stick can be on sale: purchases of any two of
// them are weighed against one another.
const mostLengths = 20

func (s *solver) stick(b *lang.Block) model.Stick {
	prices := s.Numbers(b, "prices")
	out := model.Stick{
		Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s", s.Show(s.Length(b, "thickness")), s.Show(s.Length(b, "width")))),
		Steel: b.Spec.Kind == "flat_bar", Thickness: s.Length(b, "thickness"), Width: s.Length(b, "width"),
		Density: s.Number(b, "density"), Why: why(b),
	}
	if !out.Steel {
		out.Ends = s.Length(b, "ends")
	}
	lengths := s.Lengths(b, "lengths")
	if len(lengths) > mostLengths {
		s.Findings.Errorf("too-many", b.Attr("lengths").Expr.At, "the lengths that the yard has in stock",
			"%s has %d lengths; the most is %d.", finding.Capital(b.Describe()), len(lengths), mostLengths)
	}
	for i, l := range lengths {
		on := model.StickLength{Length: l}
		if i < len(prices) {
			on.Price, on.Priced = prices[i], true
		}
		out.Lengths = append(out.Lengths, on)
	}
	if len(prices) > 0 && len(prices) != len(lengths) {
		s.Findings.Errorf("prices-unmatched", b.Attr("prices").Expr.At, "one price for each length",
			"%s has %s, but %s.", finding.Capital(b.Describe()), finding.Counted(len(lengths), "length"), finding.Counted(len(prices), "price"))
	}
	return out
}

// likely is what can be bought, widely taken (common practice): a size outside
// is usually in another unit than was meant. Banding may be as thin as paper.
var likely = map[string]geom.Span{ // lookup only
	"sheet":    {Lo: length.Millimetre, Hi: 100 * length.Millimetre},
	"stick":    {Lo: 5 * length.Millimetre, Hi: 300 * length.Millimetre},
	"flat_bar": {Lo: length.Millimetre, Hi: 100 * length.Millimetre},
	"slab":     {Lo: 5 * length.Millimetre, Hi: 200 * length.Millimetre},
	"banding":  {Hi: 5 * length.Millimetre},
}

// checkLikely warns of a thickness that nobody sells.
func (s *solver) checkLikely(b *lang.Block) {
	usual, ok := likely[b.Spec.Kind]
	if !ok {
		return
	}
	t := s.Length(b, "thickness")
	if usual.Holds(t) {
		return
	}
	from := s.Show(s.marked(usual.Lo)) + " to"
	if usual.Lo == 0 {
		from = "up to"
	}
	s.Findings.Warnf("unlikely-size", b.Attr("thickness").Expr.At, "write the unit, as in \"18mm\" or \"23/32in\"; or unit = … at the top of the file",
		"%s is %s thick; usual are %s %s. Was another unit meant?", finding.Capital(b.Describe()), s.Show(t), from, s.Show(s.marked(usual.Hi)))
}
