package layout

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/sticks"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
	foot = length.Foot

	quick = 20_000 // work: enough to search at all
)

// boards returns n parts of a size.
func boards(n int, stock string, x, y length.Length, grain model.Grain) []model.Part {
	var out []model.Part
	for i := range n {
		out = append(out, model.Part{
			ID: fmt.Sprintf("%s/%d-%d/%d", stock, x, y, i), Label: fmt.Sprintf("P%d", i), Kind: model.Panel,
			Stock: stock, Outline: geom.RectContour(geom.R(0, 0, x, y)), Grain: grain,
		})
	}
	return out
}

func studs(n int, long length.Length) []model.Part {
	out := boards(n, "stick", long, 3*inch+inch/2, model.GrainX)
	for i := range out {
		out[i].Kind, out[i].Thickness = model.Lumber, inch+inch/2
	}
	return out
}

func twoByFour(lengths ...model.StickLength) model.Stock {
	return model.Stock{Sticks: []model.Stick{{Name: "stick", Width: 3*inch + inch/2, Thickness: inch + inch/2, Lengths: lengths}}}
}

func sheet4x8(grain bool) model.Stock {
	return model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 96 * inch, Width: 48 * inch, Grain: grain}}}
}

// lay lays out and checks.
func lay(t *testing.T, parts []model.Part, stock model.Stock, saw model.Saw) []model.Layout {
	t.Helper()
	layouts, misfits := Layouts(parts, stock, Shop{Saw: saw, Work: quick})
	if len(misfits) > 0 {
		t.Fatalf("misfits: %v", misfits)
	}
	if err := check(parts, stock, Shop{Saw: saw}, layouts, misfits); err != nil {
		t.Fatal(err)
	}
	return layouts
}

func TestSheets(t *testing.T) {
	eighth := inch / 8
	cases := []struct {
		name            string
		parts           []model.Part
		grain           bool
		saw             model.Saw
		atLeast, bought int
	}{
		// Four strips of 11 7/8 in and three cuts of 1/8 in are 47 7/8 in, so
		// 1/8 in is left of 48 in; a fifth does not fit (worked example:
		// floor((48 + 1/8) / (11 7/8 + 1/8)) = 4).
		{"four strips", boards(4, "sheet", 96*inch, 11*inch+7*eighth, model.GrainX), true, model.Saw{Kerf: eighth}, 1, 1},
		{"a fifth strip", boards(5, "sheet", 96*inch, 11*inch+7*eighth, model.GrainX), true, model.Saw{Kerf: eighth}, 2, 2},
		// 4 x 12 in fill 48 in, but not with the cuts between.
		{"no room for the cut", boards(4, "sheet", 96*inch, 12*inch, model.GrainX), true, model.Saw{Kerf: eighth}, 2, 2},
		{"a blade without width", boards(4, "sheet", 96*inch, 12*inch, model.GrainX), true, model.Saw{}, 1, 1},
		// 48 in along the sheet and 30 in across: two to a sheet. Turned, three.
		{"grain may not turn", boards(3, "sheet", 48*inch, 30*inch, model.GrainX), true, model.Saw{}, 2, 2},
		{"without grain it may", boards(3, "sheet", 48*inch, 30*inch, model.GrainNone), true, model.Saw{}, 1, 1},
		{"on a sheet without grain too", boards(3, "sheet", 48*inch, 30*inch, model.GrainX), false, model.Saw{}, 1, 1},
		{"grain along the part's y", boards(3, "sheet", 48*inch, 30*inch, model.GrainY), true, model.Saw{}, 1, 1},
		// 1/2 in off each edge leaves 47 in: three strips of 15 5/8 in and two
		// cuts are 47 1/8 in.
		{"trimmed", boards(3, "sheet", 95*inch, 15*inch+5*eighth, model.GrainX), true, model.Saw{Kerf: eighth, Trim: 4 * eighth}, 2, 2},
		{"trimmed, just", boards(3, "sheet", 95*inch, 15*inch+4*eighth, model.GrainX), true, model.Saw{Kerf: eighth, Trim: 4 * eighth}, 1, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			l := lay(t, c.parts, sheet4x8(c.grain), c.saw)[0]
			if l.AtLeast != c.atLeast || l.Bought != c.bought {
				t.Errorf("bought %d, at least %d; want %d, %d", l.Bought, l.AtLeast, c.bought, c.atLeast)
			}
		})
	}
}

func TestSticks(t *testing.T) {
	eight, twelve, sixteen := model.StickLength{Length: 8 * foot}, model.StickLength{Length: 12 * foot}, model.StickLength{Length: 16 * foot}
	priced := func(l model.StickLength, price float64) model.StickLength {
		return model.StickLength{Length: l.Length, Price: price, Priced: true}
	}
	kerf := inch / 8
	cases := []struct {
		name    string
		parts   []model.Part
		sold    []model.StickLength
		want    []length.Length
		atLeast int
	}{
		{"as long as the stick", studs(2, 8*foot), []model.StickLength{eight}, []length.Length{8 * foot, 8 * foot}, 2},
		// 2 x 48 in and a cut are 96 1/8 in.
		{"one cut too many", studs(2, 4*foot), []model.StickLength{eight}, []length.Length{8 * foot, 8 * foot}, 2},
		{"one cut just", studs(2, 4*foot-kerf/2), []model.StickLength{eight}, []length.Length{8 * foot}, 1},
		// Three of 5 ft: 15 ft and two cuts. One of 16 ft is fewer than two.
		{"few, without prices", studs(3, 5*foot), []model.StickLength{eight, twelve, sixteen}, []length.Length{16 * foot}, 1},
		// 16 ft costs 20; 12 ft + 8 ft cost 9 + 6 = 15; but three of 8 ft cost 18.
		{"cheap, with prices", studs(3, 5*foot), []model.StickLength{priced(eight, 6), priced(twelve, 9), priced(sixteen, 20)},
			[]length.Length{12 * foot, 8 * foot}, 1},
		// Two plates of 2000 and six studs of 984 mm: a plate and a stud fill
		// 3 m, two studs each 2.4 m: 2 x 6.60 + 2 x 5.20 = 23.60. Filling 3 m
		// sticks greedily ends with 3 x 6.60 + 5.20 = 25.00.
		{"some of one length, some of another", append(studs(2, 2000*mm), studs(6, 984*mm)...),
			[]model.StickLength{priced(model.StickLength{Length: 2400 * mm}, 5.2), priced(model.StickLength{Length: 3000 * mm}, 6.6)},
			[]length.Length{3000 * mm, 3000 * mm, 2400 * mm, 2400 * mm}, 4},
		{"a price for some only counts for nothing", studs(3, 5*foot), []model.StickLength{priced(eight, 1), twelve, sixteen},
			[]length.Length{16 * foot}, 1},
		// Seven of 5 ft are 35 ft, and so three of 12 ft; but each gives two. 3 x 9 + 6 is
		// the least price, which three of 9 do not come to.
		{"as many as their price takes", studs(7, 5*foot), []model.StickLength{priced(eight, 6), priced(twelve, 9)},
			[]length.Length{12 * foot, 12 * foot, 12 * foot, 8 * foot}, 4},
		// Five of 47 in: 12 ft gives three (141 1/4 in), 8 ft the other two.
		{"the last one short", studs(5, 47*inch), []model.StickLength{eight, twelve}, []length.Length{12 * foot, 8 * foot}, 2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			l := lay(t, c.parts, twoByFour(c.sold...), model.Saw{Kerf: kerf})[0]
			var got []length.Length
			for _, b := range l.Blanks {
				got = append(got, b.Length)
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
			if l.AtLeast != c.atLeast {
				t.Errorf("at least %d, want %d", l.AtLeast, c.atLeast)
			}
		})
	}
}

// TestEnds cuts two studs from 8 ft of which 1/2 in goes off each end: 2 x 47 7/16 and a cut of 1/8
// are the 95 in that are left.
func TestEnds(t *testing.T) {
	for _, c := range []struct {
		long   length.Length
		bought int
	}{{47*inch + 7*inch/16, 1}, {47*inch + 15*inch/32, 2}} {
		stock := twoByFour(model.StickLength{Length: 8 * foot})
		stock.Sticks[0].Ends = inch / 2
		l := lay(t, studs(2, c.long), stock, model.Saw{Kerf: inch / 8})[0]
		if at := l.Blanks[0].Placed[0].At.X; l.Bought != c.bought || l.AtLeast != c.bought || at.Lo != inch/2 {
			t.Errorf("two of %v: %d sticks, at least %d, the first cut from %v on", c.long, l.Bought, l.AtLeast, at)
		}
	}
}

// More lengths than are searched at once come out all the same, of two pieces to a stick each.
func TestManyLengths(t *testing.T) {
	const n = 2*sticks.MostKinds + 2
	var parts []model.Part
	for i := range length.Length(n / 2) {
		parts = append(parts, studs(1, 4*foot-i-1)...)
		parts = append(parts, studs(1, 4*foot+i)...)
	}
	l := lay(t, parts, twoByFour(model.StickLength{Length: 8 * foot}), model.Saw{})[0]
	if l.Pieces != n || l.Bought > n/2+2 || l.AtLeast != n/2 {
		t.Errorf("%d pieces from %d sticks, at least %d; want %d from %d", l.Pieces, l.Bought, l.AtLeast, n, n/2)
	}
}

// 40 in of a 48 in wide, 96 in long sheet: (96·48 - 40·48) / (96·48) = 7/12.
func TestWaste(t *testing.T) {
	l := lay(t, boards(1, "sheet", 40*inch, 48*inch, model.GrainX), sheet4x8(true), model.Saw{})[0]
	if want := 7.0 / 12; l.Waste != want {
		t.Errorf("waste %v, want %v", l.Waste, want)
	}
	l = lay(t, studs(2, 3*foot), twoByFour(model.StickLength{Length: 8 * foot}), model.Saw{Kerf: inch})[0]
	if want := 0.25; l.Waste != want {
		t.Errorf("waste %v, want %v", l.Waste, want)
	}
}

func TestMisfits(t *testing.T) {
	stock := sheet4x8(true)
	stock.Sticks = twoByFour(model.StickLength{Length: 8 * foot}).Sticks
	wide := studs(1, 6*foot)
	wide[0].ID, wide[0].Outline = "wide", geom.RectContour(geom.R(0, 0, 6*foot, 4*inch))
	thick := studs(1, 5*foot)
	thick[0].ID, thick[0].Thickness = "thick", 2*inch
	onEdge := studs(1, 4*foot)
	onEdge[0].Thickness, onEdge[0].Outline = 3*inch+inch/2, geom.RectContour(geom.R(0, 0, 4*foot, inch+inch/2))
	parts := []model.Part{
		boards(1, "sheet", 96*inch, 48*inch, model.GrainX)[0],
		boards(1, "sheet", 50*inch, 60*inch, model.GrainX)[0],
		boards(1, "sheet", 97*inch, 60*inch, model.GrainX)[0],
		boards(1, "sheet", 50*inch, 97*inch, model.GrainNone)[0],
		boards(1, "sheet", 40*inch, 98*inch, model.GrainY)[0],
		boards(1, "sheet.unknown", 1*inch, 1*inch, model.GrainX)[0],
		studs(1, 8*foot+inch/2)[0], wide[0], thick[0], onEdge[0],
	}
	saw := model.Saw{Kerf: inch / 8}
	layouts, misfits := Layouts(parts, stock, Shop{Saw: saw, Work: quick})
	want := []Misfit{
		{parts[1].ID, "sheet", 0, 12 * inch},
		{parts[2].ID, "sheet", 1 * inch, 12 * inch},
		{parts[3].ID, "sheet", 1 * inch, 2 * inch},
		{parts[4].ID, "sheet", 2 * inch, 0},
		{parts[5].ID, "sheet.unknown", 0, 0},
		{parts[6].ID, "stick", inch / 2, 0},
		{"wide", "stick", 0, inch / 2},
		{"thick", "stick", 0, inch / 2},
	}
	if diff := cmp.Diff(want, misfits); diff != "" {
		t.Error(diff)
	}
	if err := check(parts, stock, Shop{Saw: saw}, layouts, misfits); err != nil {
		t.Error(err)
	}
}

func TestNothing(t *testing.T) {
	layouts, misfits := Layouts(nil, sheet4x8(true), Shop{})
	if layouts != nil || misfits != nil {
		t.Errorf("%v, %v", layouts, misfits)
	}
}

// Whatever is asked, the layouts can be cut, nothing is missing, and the same
// comes out again.
func TestAnyLayoutCanBeCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Map(rapid.Int64Range(1, 1300), func(n int64) length.Length { return length.Length(n) * mm })
		price := rapid.SampledFrom([]float64{0, 3.5, 8, 20})
		var stock model.Stock
		for i := range rapid.IntRange(1, 2).Draw(t, "sheets") {
			sheet := model.Sheet{
				Name: fmt.Sprint("sheet", i), Length: size.Draw(t, "length"), Width: size.Draw(t, "width"), Grain: rapid.Bool().Draw(t, "grain"),
				Price: price.Draw(t, "price"), Priced: rapid.Bool().Draw(t, "priced"),
			}
			for range rapid.IntRange(0, 2).Draw(t, "further sizes") {
				sheet.Also = append(sheet.Also, model.SheetSize{Length: size.Draw(t, "length"), Width: size.Draw(t, "width"),
					Price: price.Draw(t, "price"), Priced: rapid.Bool().Draw(t, "priced")})
			}
			for range rapid.IntRange(0, 2).Draw(t, "offcuts") {
				sheet.Offcuts = append(sheet.Offcuts, model.Offcut{Length: size.Draw(t, "length"), Width: size.Draw(t, "width"), Count: rapid.IntRange(1, 3).Draw(t, "count")})
			}
			stock.Sheets = append(stock.Sheets, sheet)
		}
		stick := model.Stick{Name: "stick", Width: size.Draw(t, "width"), Thickness: size.Draw(t, "thickness"), Steel: rapid.Bool().Draw(t, "steel"),
			Ends: rapid.SampledFrom([]length.Length{0, 10 * mm}).Draw(t, "ends")}
		priced := rapid.Bool().Draw(t, "priced")
		for range rapid.IntRange(1, 4).Draw(t, "lengths") {
			stick.Lengths = append(stick.Lengths, model.StickLength{Length: size.Draw(t, "sold"), Price: price.Draw(t, "price"), Priced: priced})
		}
		stock.Sticks = append(stock.Sticks, stick)
		shop := Shop{Work: quick, Table: model.Table{Free: rapid.Bool().Draw(t, "free"), Spacing: 4 * mm, Margin: 7 * mm}}
		shop.Saw = model.Saw{
			Kerf: rapid.Map(rapid.Int64Range(0, 5_000_000), func(n int64) length.Length { return length.Length(n) }).Draw(t, "kerf"),
			Trim: rapid.SampledFrom([]length.Length{0, 6 * mm, 13 * mm}).Draw(t, "trim"),
		}
		var parts []model.Part
		most := rapid.SampledFrom([]int64{20, 300, 1300}).Draw(t, "most")
		for i := range rapid.IntRange(0, 40).Draw(t, "parts") {
			side := rapid.Map(rapid.Int64Range(1, most), func(n int64) length.Length { return length.Length(n) * mm })
			parts = append(parts, model.Part{
				ID:        fmt.Sprint("part", i),
				Stock:     rapid.SampledFrom([]string{"sheet0", "sheet1", "stick"}).Draw(t, "stock"),
				Outline:   geom.RectContour(geom.R(0, 0, side.Draw(t, "x"), side.Draw(t, "y"))),
				Thickness: rapid.SampledFrom([]length.Length{5 * mm, 400 * mm}).Draw(t, "thick"),
				Grain:     rapid.SampledFrom([]model.Grain{model.GrainNone, model.GrainX, model.GrainY}).Draw(t, "grain"),
			})
		}
		layouts, misfits := Layouts(parts, stock, shop)
		if err := check(parts, stock, shop, layouts, misfits); err != nil {
			t.Fatal(err)
		}
		again, misfitsAgain := Layouts(parts, stock, shop)
		if diff := cmp.Diff(layouts, again) + cmp.Diff(misfits, misfitsAgain); diff != "" {
			t.Fatal(diff)
		}
	})
}

// fewestBins is never above what an exhaustive search finds.
func TestFewestBinsIsABound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const bin = 12
		sizes := rapid.SliceOfN(rapid.Map(rapid.Int64Range(0, bin), func(n int64) length.Length { return length.Length(n) }), 0, 7).Draw(t, "sizes")
		if bound, best := fewestBins(sizes, bin), exhaust(sizes, nil, bin); bound > best {
			t.Fatalf("%d, but %d do", bound, best)
		}
	})
}

// exhaust tries every way to put the sizes into bins.
func exhaust(sizes, bins []length.Length, bin length.Length) int {
	if len(sizes) == 0 {
		return len(bins)
	}
	best := exhaust(sizes[1:], append(bins[:len(bins):len(bins)], sizes[0]), bin)
	for i := range bins {
		if bins[i]+sizes[0] <= bin {
			bins[i] += sizes[0]
			best = min(best, exhaust(sizes[1:], bins, bin))
			bins[i] -= sizes[0]
		}
	}
	return best
}

// A piece of a slab is ordered to size: it is in the cut list, but on no sheet,
// and not missed there.
func TestSlabsAreNotLaidOut(t *testing.T) {
	parts := boards(3, "slab.oak", 96*inch, 25*inch, model.GrainNone)
	for i := range parts {
		parts[i].Kind = model.SlabPiece
	}
	parts = append(parts, boards(1, "sheet", 30*inch, 20*inch, model.GrainX)...)
	if layouts, misfits := Layouts(parts, sheet4x8(true), Shop{}); len(layouts) != 1 || layouts[0].Pieces != 1 || len(misfits) > 0 {
		t.Errorf("%d layouts, misfits %v", len(layouts), misfits)
	}
	cuts := Cuts(parts)
	if last := cuts[len(cuts)-1]; len(cuts) != 2 || last.Kind != model.SlabPiece || last.Count != 3 || last.Length != 96*inch || last.Width != 25*inch {
		t.Errorf("cut list %+v", cuts)
	}
}
