package layout

import (
	"testing"

	"barwright/compile/model"
)

// A board of 3000 x 700 mm is longer than the sheets on sale, and comes out of an offcut only.
// Others may lie there too, but not before it.
func TestPartsThatOnlyOffcutsGive(t *testing.T) {
	stock := model.Stock{Sheets: []model.Sheet{{
		Name: "sheet", Length: 2440 * mm, Width: 1220 * mm, Grain: true, Offcuts: []model.Offcut{{Length: 3100 * mm, Width: 720 * mm, Count: 2}},
	}}}
	for _, free := range []bool{false, true} {
		shop := Shop{Saw: model.Saw{Kerf: 3 * mm}, Table: model.Table{Free: free, Spacing: 3 * mm, Margin: 5 * mm}}
		for n := range 4 {
			parts := append(boards(6, "sheet", 1100*mm, 650*mm, model.GrainX), boards(n, "sheet", 3000*mm, 700*mm, model.GrainX)...)
			layouts, misfits := Layouts(parts, stock, shop)
			if err := check(parts, stock, shop, layouts, misfits); err != nil {
				t.Fatal(err)
			}
			over := 560 * mm
			if free {
				over += 10 * mm
			}
			if len(misfits) != max(0, n-2) || n > 2 && (misfits[0].OverLength != over || misfits[0].OverWidth != 0) {
				t.Errorf("free %v, %d that are long: misfits %v", free, n, misfits)
			}
			// Two lie on an offcut, one before another, and two on a sheet: 650 and 650 is more than 1220.
			if l := layouts[0]; l.Pieces != 6+min(n, 2) || l.Bought != 1+min(n, 2) || n < 3 && l.AtLeast != l.Bought {
				t.Errorf("free %v, %d that are long: %d pieces, %d bought, at least %d", free, n, l.Pieces, l.Bought, l.AtLeast)
			}
		}
	}
}
