package layout

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"

	"pgregory.net/rapid"
)

// standing fronts are seen from inside, as doors are drawn: u runs from right to left.
func stood(name string, u, z geom.Span, grain model.Grain) model.Part {
	at := geom.Place(geom.Frame{}, geom.Box{U: u, V: geom.Span{Hi: 18 * mm}, Z: z}, geom.Dir{Axis: geom.V, Neg: true})
	return model.Part{ID: name, Label: name, Stock: "sheet", Thickness: 18 * mm, Outline: geom.RectContour(at.Blank()), Grain: grain, Placement: at, Match: "cabinet.a"}
}

func span(lo, hi Length) geom.Span { return geom.Span{Lo: lo * mm, Hi: hi * mm} }

// A drawer of 800 x 200 mm over two doors of 398 x 600 mm, 3 mm apart, the grain up: on the
// sheet the drawer is 200 mm long and 800 wide; the doors follow it beside one another, and with
// the cut of 4 mm between them they are 800 wide too. Seen from inside the right door comes first.
func TestMatchedFrontsLieAsTheyStand(t *testing.T) {
	parts := []model.Part{
		stood("drawer", span(0, 800), span(603, 803), model.GrainY),
		stood("left", span(0, 398), span(0, 600), model.GrainY),
		stood("right", span(402, 800), span(0, 600), model.GrainY),
	}
	stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 2440 * mm, Width: 1220 * mm, Grain: true}}}
	shop := Shop{Saw: model.Saw{Kerf: 4 * mm, Trim: 10 * mm}}
	layouts, misfits := Layouts(parts, stock, shop)
	if err := check(parts, stock, shop, layouts, misfits); err != nil {
		t.Fatal(err)
	}
	at := map[string]geom.Rect{}
	for _, p := range layouts[0].Blanks[0].Placed {
		at[p.Part] = p.At
	}
	corner := at["drawer"]
	for name, want := range map[string]geom.Rect{
		"drawer": geom.R(0, 0, 200*mm, 800*mm),
		"right":  geom.R(204*mm, 0, 804*mm, 398*mm),
		"left":   geom.R(204*mm, 402*mm, 804*mm, 800*mm),
	} {
		if got := at[name].Shift(geom.Point{X: -corner.X.Lo, Y: -corner.Y.Lo}); got != want {
			t.Errorf("%s lies at %v, want %v", name, got, want)
		}
	}
}

// Where a sheet is too narrow for all, as many as it gives lie together.
func TestMatchedFrontsOnSeveralSheets(t *testing.T) {
	var parts []model.Part
	for i := range Length(5) { // three are 1 208 mm wide with two cuts, four are not
		parts = append(parts, stood(fmt.Sprint(i), span(403*i, 403*i+400), span(0, 700), model.GrainY))
	}
	stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 2440 * mm, Width: 1220 * mm, Grain: true}}}
	shop := Shop{Saw: model.Saw{Kerf: 4 * mm}}
	layouts, misfits := Layouts(parts, stock, shop)
	if err := check(parts, stock, shop, layouts, misfits); err != nil {
		t.Fatal(err)
	}
	together := map[Length]int{} // by their lower ends
	for _, p := range layouts[0].Blanks[0].Placed {
		together[p.At.X.Lo]++
	}
	if layouts[0].Bought != 1 || len(together) != 2 {
		t.Errorf("%d sheets, strips at %v", layouts[0].Bought, together)
	}
}

// However fronts divide a face, they can be cut, and none lies nearer to another than it stands.
func TestAnyMatchedFrontsCanBeCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grain := rapid.SampledFrom([]model.Grain{model.GrainX, model.GrainY}).Draw(t, "grain")
		var parts []model.Part
		var divide func(u, z geom.Span, deep int)
		divide = func(u, z geom.Span, deep int) {
			cut := func(s geom.Span) (geom.Span, geom.Span) {
				at := s.Lo + s.Size()*Length(rapid.IntRange(30, 70).Draw(t, "at"))/100
				return geom.Span{Lo: s.Lo, Hi: at}, geom.Span{Lo: at + 3*mm, Hi: s.Hi}
			}
			switch way := rapid.IntRange(0, 2).Draw(t, "way"); {
			case deep == 0 || way == 0:
				parts = append(parts, stood(fmt.Sprint("front", len(parts)), u, z, grain))
			case way == 1:
				a, b := cut(u)
				divide(a, z, deep-1)
				divide(b, z, deep-1)
			default:
				a, b := cut(z)
				divide(u, a, deep-1)
				divide(u, b, deep-1)
			}
		}
		divide(span(0, 2000), span(0, 800), 4)
		stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 2440 * mm, Width: 1220 * mm, Grain: true}}}
		shop := Shop{Saw: model.Saw{Kerf: 3 * mm, Trim: 5 * mm}, Work: quick, Table: model.Table{Free: rapid.Bool().Draw(t, "free"), Spacing: 8 * mm}}
		layouts, misfits := Layouts(parts, stock, shop)
		if err := check(parts, stock, shop, layouts, misfits); err != nil {
			t.Fatal(err)
		}
	})
}
