package bill

import (
	"math"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
	foot = length.Foot
)

var inches = model.Build{Unit: length.Inches, Marks: inch / 16}

func part(id, stock string, kind model.PartKind, x, y, thick length.Length) model.Part {
	owner, _, _ := strings.Cut(id, "/")
	return model.Part{ID: id, Owner: owner, Stock: stock, Kind: kind, Thickness: thick, Grain: model.GrainX,
		Outline: geom.RectContour(geom.R(0, 0, x, y))}
}

// lines lays out and bills a model.
func lines(t *testing.T, m *model.Model) []model.BillLine {
	t.Helper()
	layouts, misfits := layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: model.Saw{Kerf: inch / 8}})
	if len(misfits) > 0 {
		t.Fatal(misfits)
	}
	m.Layouts = layouts
	return Lines(m)
}

// same wants lines to agree, weights to a millionth.
func same(t *testing.T, want, got []model.BillLine) {
	t.Helper()
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Max(1, math.Abs(a)) })
	if diff := cmp.Diff(want, got, near); diff != "" {
		t.Error(diff)
	}
}

func TestBoards(t *testing.T) {
	m := &model.Model{Build: inches,
		Stock: model.Stock{
			Sheets: []model.Sheet{
				{Name: "sheet.unused"},
				{Name: "sheet.birch", Text: "birch plywood 3/4 in", Length: 96 * inch, Width: 48 * inch, Thickness: 3 * inch / 4,
					Density: 680, Price: 80, Priced: true},
			},
			Sticks: []model.Stick{
				{Name: "flat_bar.arm", Text: "flat bar 2 x 1/4 in", Steel: true, Width: 2 * inch, Thickness: inch / 4, Density: 7850,
					Lengths: []model.StickLength{{Length: 4 * foot}}},
				{Name: "stick.two_by_four", Text: "2x4", Width: 7 * inch / 2, Thickness: 3 * inch / 2,
					Lengths: []model.StickLength{{Length: 8 * foot, Price: 4, Priced: true}, {Length: 12 * foot, Price: 6.5, Priced: true}}},
			},
		},
		Parts: []model.Part{
			part("cabinet a/left", "sheet.birch", model.Panel, 30*inch, 24*inch, 3*inch/4),
			part("cabinet b/left", "sheet.birch", model.Panel, 30*inch, 24*inch, 3*inch/4),
			part("cabinet a/bottom", "sheet.birch", model.Panel, 30*inch, 24*inch, 3*inch/4),
			part("knee wall/top", "stick.two_by_four", model.Lumber, 100*inch, 7*inch/2, 3*inch/2),
			part("knee wall/stud 1", "stick.two_by_four", model.Lumber, 36*inch, 7*inch/2, 3*inch/2),
			part("knee wall/stud 2", "stick.two_by_four", model.Lumber, 36*inch, 7*inch/2, 3*inch/2),
			part("knee wall/arm 1", "flat_bar.arm", model.Steel, 12*inch, 2*inch, inch/4),
			part("knee wall/arm 2", "flat_bar.arm", model.Steel, 12*inch, 2*inch, inch/4),
		},
	}
	// An outlet of 2 x 3 in through the first side; a notch that the outline
	// would lack already; a groove of 1/4 x 24 in, 3/8 in deep, in the second.
	m.Parts[0].Openings = []model.Opening{
		{Shape: geom.RectContour(geom.R(5*inch, 5*inch, 7*inch, 8*inch)).Reversed()},
		{Notch: true, Shape: geom.RectContour(geom.R(0, 0, 3*inch, 4*inch))},
	}
	m.Parts[1].Recesses = []model.Recess{{Shape: geom.RectContour(geom.R(0, 0, inch/4, 24*inch)), Depth: 3 * inch / 8}}

	// 1 cu in is 16.387064 cm3 (NIST SP 811, appendix B).
	const cubicInch = 16.387064e-6
	want := []model.BillLine{
		// 3 sides of 30 x 24 x 3/4 = 1620 cu in, less 2·3·3/4 = 4.5 and 1/4·24·3/8 = 2.25;
		// birch of 680 kg/m3 has 0.024 567 lb/cu in.
		{Section: "sheets", Item: "sheet.birch", Text: "birch plywood 3/4 in", Use: "cabinet a, cabinet b", Quantity: 1, Unit: "sheet",
			Needed: "3 pieces; the least possible; 39.6 lb", WeightKg: 1613.25 * cubicInch * 680, Price: 80, Priced: true},
		// 100 in comes from 12 ft, with a stud (136 1/8 in); the other from 8 ft.
		{Section: "sticks", Item: "stick.two_by_four", Text: "2x4, 8 ft 0 in", Use: "knee wall", Quantity: 1, Unit: "stick",
			Needed: "1 piece, 3 ft 0 in in all; the least possible for all pieces", Price: 4, Priced: true},
		{Section: "sticks", Item: "stick.two_by_four", Text: "2x4, 12 ft 0 in", Use: "knee wall", Quantity: 1, Unit: "stick",
			Needed: "2 pieces, 11 ft 4 in in all", Price: 6.5, Priced: true},
		// 2 arms of 12 x 2 x 1/4 = 12 cu in, of 0.2836 lb (steel, from memory).
		{Section: "steel", Item: "flat_bar.arm", Text: "flat bar 2 x 1/4 in, 4 ft 0 in", Use: "knee wall", Quantity: 1, Unit: "bar",
			Needed: "2 pieces, 2 ft 0 in in all; the least possible; 3.4 lb", WeightKg: 12 * cubicInch * 7850},
	}
	same(t, want, lines(t, m))

	// 80 + 4 + 6.50; the steel has no price.
	if cost, unpriced := model.Total(m.Bill); cost != 0 || unpriced != 0 {
		t.Error("a bill without lines costs", cost, unpriced)
	}
	if cost, unpriced := model.Total(Lines(m)); cost != 90.5 || unpriced != 1 {
		t.Errorf("%v, %d unpriced: want 90.50 and 1", cost, unpriced)
	}
}

// Weights against published worked examples: a data sheet gives 36.7 kg for 18
// mm birch plywood of 1220 x 2440 mm at 685 kg/m3; the rest follows from MDF
// at 750 kg/m3 (Wood Handbook, FPL-GTR-190, table 12-1) and steel at 7850.
func TestPublishedWeights(t *testing.T) {
	cases := []struct {
		name    string
		part    model.Part
		density float64
		kg      float64 // to four digits
	}{
		{"birch plywood", part("p", "s", model.Panel, 2440*mm, 1220*mm, 18*mm), 685, 36.70},
		{"MDF", part("p", "s", model.Panel, 96*inch, 48*inch, 3*inch/4), 750, 42.48},
		{"a metre of flat bar 60 x 10", part("p", "s", model.Steel, 1000*mm, 60*mm, 10*mm), 7850, 4.710},
	}
	for _, c := range cases {
		if got := cubicMetres(&c.part) * c.density; math.Abs(got-c.kg) > 0.5e-3*c.kg {
			t.Errorf("%s: %f kg, want %f", c.name, got, c.kg)
		}
	}
	m := &model.Model{Build: inches,
		Stock: model.Stock{Slabs: []model.SlabStock{{Name: "slab.granite", Text: "granite 3 cm", Density: 2700}}},
		Slabs: []model.Slab{{Kind: "bar_top", Name: "long", Stock: "slab.granite",
			Box: geom.Box{U: geom.Span{Hi: 96 * inch}, V: geom.Span{Hi: 18 * inch}, Z: geom.Span{Hi: 30 * mm}}}},
	}
	if got := lines(t, m)[0].WeightKg; math.Abs(got-90.30) > 0.005 { // granite bar top 96 x 18 in, 3 cm
		t.Errorf("granite: %f kg, want 90.30", got)
	}
}

// In millimetres slabs are sold by the square metre, in inches by the square
// foot: 0.092 903 04 m2 exactly (NIST SP 811, appendix B).
func TestSlabs(t *testing.T) {
	box := func(u, v, z length.Length) geom.Box {
		return geom.Box{U: geom.Span{Lo: 5, Hi: 5 + u}, V: geom.Span{Hi: v}, Z: geom.Span{Hi: z}}
	}
	m := &model.Model{Build: inches,
		Stock: model.Stock{Slabs: []model.SlabStock{{Name: "slab.maple", Text: "maple block", Density: 700, Price: 200, Priced: true}}},
		Slabs: []model.Slab{
			{Kind: "counter", Name: "work", Stock: "slab.maple", Box: box(96*inch, 25*inch+inch/2, 3*inch/2)},
			{Kind: "counter", Name: "back", Stock: "slab.maple", Box: box(96*inch+1, 25*inch+inch/2, 3*inch/2), WeightKg: 10},
			{Kind: "bar_top", Name: "oak", Box: box(1000*mm, 500*mm, 30*mm), WeightKg: 11},
		},
	}
	// 96 x 25 1/2 in = 2448 sq in = 17 sq ft = 1.579 351 68 m2, 1.58 begun; 3672 cu
	// in at 700 kg/m3 are 42.12 kg. 200 a square metre are 18.580608 a square foot.
	const kg, feet = 3672 * 16.387064e-6 * 700, "96 in x 25 1/2 in x 1 1/2 in; priced at 200.00 a square metre"
	same(t, []model.BillLine{
		{Section: "slabs", Item: "slab.maple", Text: "maple block", Use: "counter work", Quantity: 17, Unit: "sq ft",
			Needed: feet + "; 92.9 lb", WeightKg: kg, Price: 18.580608, Priced: true},
		// A nanometre more begins the next tenth.
		{Section: "slabs", Item: "slab.maple", Text: "maple block", Use: "counter back", Quantity: 17.1, Unit: "sq ft",
			Needed: feet + "; 22.0 lb", WeightKg: 10, Price: 18.580608, Priced: true},
		// 500 000 mm2 are 5.38 sq ft.
		{Section: "slabs", Item: "bar_top.oak", Text: "slab, 1.181 in thick", Use: "bar top oak", Quantity: 5.4, Unit: "sq ft",
			Needed: "39.37 in x 19.685 in x 1.181 in; 24.3 lb", WeightKg: 11},
	}, lines(t, m))

	m.Build = model.Build{Unit: length.Millimetres}
	same(t, []model.BillLine{
		{Section: "slabs", Item: "slab.maple", Text: "maple block", Use: "counter work", Quantity: 1.58, Unit: "m2",
			Needed: "2438.4 mm x 647.7 mm x 38.1 mm", WeightKg: kg, Price: 200, Priced: true},
		{Section: "slabs", Item: "slab.maple", Text: "maple block", Use: "counter back", Quantity: 1.58, Unit: "m2",
			Needed: "2438.4 mm x 647.7 mm x 38.1 mm", WeightKg: 10, Price: 200, Priced: true},
		// Half a square metre exactly: no hundredth is begun.
		{Section: "slabs", Item: "bar_top.oak", Text: "slab, 30 mm thick", Use: "bar top oak", Quantity: 0.5, Unit: "m2",
			Needed: "1000 mm x 500 mm x 30 mm", WeightKg: 11},
	}, lines(t, m))
}

func TestScrews(t *testing.T) {
	m := &model.Model{Build: inches,
		Stock: model.Stock{Screws: []model.Screw{
			{Name: "screw.wall", Text: "#10 x 2 1/2 in", PerBox: 50, Price: 9, Priced: true},
			{Name: "screw.unused", PerBox: 100},
			{Name: "screw.plate", Text: "#8 x 1 in"},
		}},
		Fastening: []model.Fastening{
			{Screw: "screw.plate", Count: 10, Use: "steel to the top plate"},
			{Screw: "screw.wall", Count: 30, Use: "backs to studs"},
			{Screw: "screw.wall", Count: 1, Use: "fillers"},
			{Screw: "screw.odd", Count: 3, Use: "something"},
			{Screw: "screw.wall", Count: 15, Use: "backs to studs"},
			{Screw: "screw.plate", Use: "nothing"},
		},
	}
	want := []model.BillLine{
		// 46 and 4.6, 5 begun, are 51: two boxes of 50.
		{Section: "screws", Item: "screw.wall", Text: "#10 x 2 1/2 in", Use: "backs to studs 45, fillers 1", Quantity: 2, Unit: "box of 50",
			Needed: "46 screws and 5 to spare", Price: 9, Priced: true},
		{Section: "screws", Item: "screw.plate", Text: "#8 x 1 in", Use: "steel to the top plate 10", Quantity: 11, Unit: "piece",
			Needed: "10 screws and 1 to spare"},
		{Section: "screws", Item: "screw.odd", Text: "screw.odd", Use: "something 3", Quantity: 4, Unit: "piece",
			Needed: "3 screws and 1 to spare"},
	}
	same(t, want, lines(t, m))
}

func TestSpareFillsABoxExactly(t *testing.T) {
	m := &model.Model{Build: inches,
		Stock:     model.Stock{Screws: []model.Screw{{Name: "s", PerBox: 110}}},
		Fastening: []model.Fastening{{Screw: "s", Count: 100}},
	}
	if got := lines(t, m)[0].Quantity; got != 1 { // 100 and 10 are 110
		t.Errorf("%v boxes, want 1", got)
	}
}
