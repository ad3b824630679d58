package solve

import (
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
	for _, b := range s.src.Blocks {
		s.checkLikely(b)
		switch b.Spec.Kind {
		case "sheet":
			s.m.Stock.Sheets = append(s.m.Stock.Sheets, s.sheet(b))
		case "stick", "flat_bar":
			s.m.Stock.Sticks = append(s.m.Stock.Sticks, s.stick(b))
		case "slab":
			s.m.Stock.Slabs = append(s.m.Stock.Slabs, model.SlabStock{
				Name: b.Key(), Text: s.asked(b, s.show(s.length(b, "thickness"))+" thick"),
				Thickness: s.length(b, "thickness"), Density: s.number(b, "density"),
				Price: s.number(b, "price"), Priced: s.has(b, "price"), Why: why(b),
			})
		case "screw":
			s.m.Stock.Screws = append(s.m.Stock.Screws, model.Screw{
				Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s", s.show(s.length(b, "diameter")), s.show(s.length(b, "length")))),
				Diameter: s.length(b, "diameter"), Length: s.length(b, "length"), PerBox: s.count(b, "per_box"),
				Price: s.number(b, "price"), Priced: s.has(b, "price"), Why: why(b),
			})
		case "fitting":
			s.m.Stock.Fittings = append(s.m.Stock.Fittings, model.Fitting{
				Name: b.Key(), Text: s.labelled(b), PerPack: s.count(b, "per_pack"),
				Price: s.number(b, "price"), Priced: s.has(b, "price"), Why: why(b),
			})
		case "banding":
			s.m.Stock.Bandings = append(s.m.Stock.Bandings, model.Banding{
				Name: b.Key(), Text: s.asked(b, s.show(s.length(b, "thickness"))+" thick"),
				Thickness: s.length(b, "thickness"), Roll: s.length(b, "roll"), Spare: s.length(b, "spare"),
				Price: s.number(b, "price"), Priced: s.has(b, "price"), Why: why(b),
			})
		}
	}
}

// labelled is the label of what has no size that says what it is, or its name.
func (s *solver) labelled(b *lang.Block) string {
	if b.Attr("label") != nil {
		return s.text(b, "label")
	}
	return b.Name
}

// asked is what one asks for at the counter: the label where the text gives
// one, else the name and the size.
func (s *solver) asked(b *lang.Block, size string) string {
	if b.Attr("label") != nil {
		return s.text(b, "label")
	}
	return b.Name + ", " + size
}

func (s *solver) sheet(b *lang.Block) model.Sheet {
	size := s.lengths(b, "size")
	t := s.length(b, "thickness")
	return model.Sheet{
		Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s x %s", s.show(t), s.show(size[1]), s.show(size[0]))),
		Length: size[0], Width: size[1], Thickness: t, Grain: s.text(b, "grain") == "length",
		Density: s.number(b, "density"), Price: s.number(b, "price"), Priced: s.has(b, "price"), Why: why(b),
	}
}

func (s *solver) stick(b *lang.Block) model.Stick {
	prices := s.numbers(b, "prices")
	out := model.Stick{
		Name: b.Key(), Text: s.asked(b, fmt.Sprintf("%s x %s", s.show(s.length(b, "thickness")), s.show(s.length(b, "width")))),
		Steel: b.Spec.Kind == "flat_bar", Thickness: s.length(b, "thickness"), Width: s.length(b, "width"),
		Density: s.number(b, "density"), Why: why(b),
	}
	lengths := s.lengths(b, "lengths")
	for i, l := range lengths {
		on := model.StickLength{Length: l}
		if i < len(prices) {
			on.Price, on.Priced = prices[i], true
		}
		out.Lengths = append(out.Lengths, on)
	}
	if len(prices) > 0 && len(prices) != len(lengths) {
		s.findings.Errorf("prices-unmatched", b.Attr("prices").Expr.At, "one price for each length",
			"%s has %s, but %s.", finding.Capital(b.Describe()), finding.Counted(len(lengths), "length"), finding.Counted(len(prices), "price"))
	}
	return out
}

// table reads how the shop wants its files, or the defaults of the schema where
// no table is described.
func (s *solver) table() {
	s.m.Table = model.Table{Notes: true, Stated: true}
	for _, b := range s.src.Top("table") {
		name := func(kind string) string { return s.field(b, "layers", kind).Text }
		s.m.Table = model.Table{
			R2000: s.text(b, "format") == "r2000", Notes: s.flag(b, "notes"), Stated: s.flag(b, "unit_stated"),
			Layers: model.LayerNames{
				Edge: name("edge"), Opening: name("opening"), Recess: name("recess"),
				Bore: name("bore"), Mark: name("mark"), Note: name("note"),
			},
		}
	}
}

// likely is what can be bought, widely taken (common practice): a size outside
// is usually in another unit than was meant.
var likely = map[string]geom.Span{ // lookup only
	"sheet":    {Lo: length.Millimetre, Hi: 100 * length.Millimetre},
	"stick":    {Lo: 5 * length.Millimetre, Hi: 300 * length.Millimetre},
	"flat_bar": {Lo: length.Millimetre, Hi: 100 * length.Millimetre},
	"slab":     {Lo: 5 * length.Millimetre, Hi: 200 * length.Millimetre},
}

// checkLikely warns of a thickness that nobody sells.
func (s *solver) checkLikely(b *lang.Block) {
	usual, ok := likely[b.Spec.Kind]
	if !ok {
		return
	}
	t := s.length(b, "thickness")
	if usual.Contains(geom.Span{Lo: t, Hi: t}) {
		return
	}
	s.findings.Warnf("unlikely-size", b.Attr("thickness").Expr.At, "write the unit, as in \"18mm\" or \"23/32in\"; or unit = … at the top of the file",
		"%s is %s thick; usual are %s to %s. Was another unit meant?", finding.Capital(b.Describe()), s.show(t), s.show(s.marked(usual.Lo)), s.show(s.marked(usual.Hi)))
}
