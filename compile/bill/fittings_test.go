package bill

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// Packs are opened whole; pins are spared as screws are, one in ten begun; what
// nobody named stands last, without a price.
func TestFittings(t *testing.T) {
	m := &model.Model{Build: inches,
		Stock: model.Stock{Fittings: []model.Fitting{
			{Name: "fitting.pin", Text: "pin 5 mm", PerPack: 25, Price: 3, Priced: true},
			{Name: "fitting.unused", Text: "leg", PerPack: 1},
			{Name: "fitting.hinge", Text: "hinge 110", PerPack: 2, Price: 7.5, Priced: true},
			{Name: "fitting.slide", Text: "slides 18 in", PerPack: 1, Price: 21, Priced: true},
			{Name: "fitting.knob", Text: "knob", PerPack: 1},
		}},
		Fitted: []model.Fitted{
			{Fitting: "fitting.hinge", Kind: "hinge", Count: 4, Use: "doors of cabinet cups"},
			{Kind: "leg", Count: 4, Use: "cabinet cups"},
			{Fitting: "fitting.knob", Kind: "handle", Count: 1, Use: "cabinet cups"},
			{Fitting: "fitting.hinge", Kind: "hinge", Count: 3, Use: "door of cabinet kegs"},
			{Fitting: "fitting.pin", Kind: "shelf pin", Count: 16, Use: "shelves of cabinet cups"},
			{Fitting: "fitting.pin", Kind: "shelf pin", Count: 8, Use: "shelves of cabinet kegs"},
			{Fitting: "fitting.slide", Kind: "slides", Count: 3, Use: "drawers of cabinet tea"},
			{Kind: "leg", Count: 2, Use: "cabinet kegs"},
			{Kind: "slides", Count: 1, Use: "drawer of cabinet kegs"},
			{Fitting: "fitting.unused", Kind: "leg"},
		},
	}
	same(t, []model.BillLine{
		// 24 and 2.4, 3 begun, are 27: two packs of 25.
		{Section: "fittings", Item: "fitting.pin", Text: "pin 5 mm", Use: "shelves of cabinet cups 16, shelves of cabinet kegs 8",
			Quantity: 2, Unit: "pack of 25", Needed: "24 shelf pins and 3 to spare", Price: 3, Priced: true},
		// 7 hinges are four packs of two.
		{Section: "fittings", Item: "fitting.hinge", Text: "hinge 110", Use: "doors of cabinet cups 4, door of cabinet kegs 3",
			Quantity: 4, Unit: "pack of 2", Needed: "7 hinges", Price: 7.5, Priced: true},
		{Section: "fittings", Item: "fitting.slide", Text: "slides 18 in", Use: "drawers of cabinet tea 3",
			Quantity: 3, Unit: "pair", Needed: "3 pairs of slides", Price: 21, Priced: true},
		{Section: "fittings", Item: "fitting.knob", Text: "knob", Use: "cabinet cups 1", Quantity: 1, Unit: "piece", Needed: "1 handle"},
		{Section: "fittings", Item: "leg", Text: "leg, to be chosen", Use: "cabinet cups 4, cabinet kegs 2", Quantity: 6, Unit: "piece", Needed: "6 legs"},
		{Section: "fittings", Item: "slides", Text: "slides, to be chosen", Use: "drawer of cabinet kegs 1", Quantity: 1, Unit: "pair", Needed: "1 pair of slides"},
	}, lines(t, m))
}

// banded is a board with bands on some edges.
func banded(id string, x, y model.Length, stock string, edges ...model.Edge) model.Part {
	p := part(id, "sheet.ply", model.Panel, x, y, 18*mm)
	for _, e := range edges {
		p.Bands = append(p.Bands, model.Band{Edge: e, Stock: stock, Thickness: mm})
	}
	return p
}

// A door is banded all round, a side on its front edge above the recess for the
// feet alone.
func TestBanding(t *testing.T) {
	side := banded("cabinet a/left", 580*mm, 860*mm, "banding.birch", model.LeftEdge)
	side.Outline = geom.Cut(geom.R(0, 0, 580*mm, 860*mm), []geom.Rect{geom.R(0, 0, 60*mm, 110*mm)})[0]
	m := &model.Model{Build: model.Build{Unit: length.Millimetres},
		Stock: model.Stock{
			Sheets: []model.Sheet{{Name: "sheet.ply", Length: 2440 * mm, Width: 1220 * mm}},
			Bandings: []model.Banding{
				{Name: "banding.unused", Roll: length.Metre},
				{Name: "banding.birch", Text: "birch, 1 mm", Thickness: mm, Roll: 2 * length.Metre, Spare: 25 * mm, Price: 4, Priced: true},
				{Name: "banding.oak", Text: "oak, 1 mm", Thickness: mm, Roll: 50 * length.Metre},
			},
		},
		Parts: []model.Part{
			side,
			banded("cabinet a/door", 398*mm, 748*mm, "banding.birch", model.Bottom, model.RightEdge, model.Top, model.LeftEdge),
			banded("cabinet b/shelf", 764*mm, 500*mm, "banding.oak", model.Bottom),
		},
	}
	var got []model.BillLine
	for _, l := range lines(t, m) {
		if l.Section == "banding" {
			got = append(got, l)
		}
	}
	same(t, []model.BillLine{
		// 860 - 110 = 750, 398 and 748 twice: with 25 on each 775, 423, 773, 423, 773,
		// 3167 in all. From rolls of 2000: 775 + 773 + 423 = 1971; 773 + 423.
		{Section: "banding", Item: "banding.birch", Text: "birch, 1 mm", Use: "cabinet a", Quantity: 2, Unit: "roll of 2000 mm",
			Needed: "5 edges, 3167 mm in all with 25 mm to trim on each", Price: 4, Priced: true},
		{Section: "banding", Item: "banding.oak", Text: "oak, 1 mm", Use: "cabinet b", Quantity: 1, Unit: "roll of 50000 mm",
			Needed: "1 edge, 764 mm in all"},
	}, got)
}

// Never fewer rolls than the strips are long together, and never more than one
// for each strip and begun roll of it; two rolls that are half empty are never
// bought.
func TestRolls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		roll := model.Length(rapid.IntRange(1, 50).Draw(t, "roll"))
		var strips []model.Length
		sum, most := model.Length(0), 0
		for range rapid.IntRange(0, 12).Draw(t, "strips") {
			l := model.Length(rapid.IntRange(1, 120).Draw(t, "strip"))
			strips = append(strips, l)
			sum, most = sum+l, most+int((l+roll-1)/roll)
		}
		got := rolls(strips, roll)
		least := int((sum + roll - 1) / roll)
		if got < least || got > most || got > 2*least {
			t.Fatalf("%d rolls of %d for %v: %d at least, %d at most", got, roll, strips, least, most)
		}
	})
}
