package layout

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// outlined is a part with an outline of straight edges, corners in mm.
func outlined(id string, grain model.Grain, corners ...[2]Length) model.Part {
	p := model.Part{ID: id, Label: id, Stock: "sheet", Grain: grain}
	for _, c := range corners {
		p.Outline = append(p.Outline, geom.Vertex{Point: geom.Point{X: c[0] * mm, Y: c[1] * mm}})
	}
	return p
}

func TestNotchesOfOutlines(t *testing.T) {
	r := func(x0, y0, x1, y1 Length) geom.Rect { return geom.R(x0*mm, y0*mm, x1*mm, y1*mm) }
	round := outlined("", 0, [2]Length{0, 0}, [2]Length{100, 0}, [2]Length{100, 40}, [2]Length{60, 80}, [2]Length{0, 80})
	round.Outline[2].Bulge = -geom.QuarterBulge // about 100, 80
	for name, c := range map[string]struct {
		outline geom.Contour
		gap     Length
		want    []geom.Rect
	}{
		"none":              {geom.RectContour(r(0, 0, 80, 40)), 4, nil},
		"for the feet":      {outlined("", 0, [2]Length{75, 0}, [2]Length{600, 0}, [2]Length{600, 720}, [2]Length{0, 720}, [2]Length{0, 100}, [2]Length{75, 100}).Outline, 4, []geom.Rect{r(0, 0, 75, 100)}},
		"no larger than it": {outlined("", 0, [2]Length{75, 0}, [2]Length{600, 0}, [2]Length{600, 720}, [2]Length{0, 720}, [2]Length{0, 100}, [2]Length{75, 100}).Outline, 75, nil},
		"away from 0, 0":    {outlined("", 0, [2]Length{-5, 10}, [2]Length{95, 10}, [2]Length{95, 30}, [2]Length{35, 30}, [2]Length{35, 60}, [2]Length{-5, 60}).Outline, 4, []geom.Rect{r(40, 20, 100, 50)}},
		"in an edge":        {outlined("", 0, [2]Length{0, 0}, [2]Length{90, 0}, [2]Length{90, 60}, [2]Length{60, 60}, [2]Length{60, 20}, [2]Length{30, 20}, [2]Length{30, 60}, [2]Length{0, 60}).Outline, 4, []geom.Rect{r(30, 20, 60, 60)}},
		// The slope takes all of the rectangle round it.
		"a slope": {outlined("", 0, [2]Length{0, 0}, [2]Length{100, 0}, [2]Length{100, 20}, [2]Length{60, 20}, [2]Length{40, 50}, [2]Length{0, 50}).Outline, 4, []geom.Rect{r(60, 20, 100, 50)}},
		"an arc":  {round.Outline, 4, nil},
	} {
		if diff := cmp.Diff(c.want, reached(notches(c.outline), c.gap*mm)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// Two L of 1000 x 600 mm without 600 x 300 are 2008 x 600 side by side. In each other, 8 mm apart,
// they are 1408 x 608, and on a sheet of 1416 x 616 4 mm are left all round.
func TestPartsLieInNotches(t *testing.T) {
	corners := [][2]Length{{0, 0}, {1000, 0}, {1000, 300}, {400, 300}, {400, 600}, {0, 600}}
	other := [][2]Length{{0, 300}, {600, 300}, {600, 0}, {1000, 0}, {1000, 600}, {0, 600}}
	parts := []model.Part{outlined("one", model.GrainX, corners...), outlined("other", model.GrainX, other...)}
	stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 1416 * mm, Width: 616 * mm, Grain: true}}}
	for _, c := range []struct {
		table  model.Table
		bought int
	}{
		{model.Table{Free: true, Spacing: 8 * mm, Margin: 4 * mm}, 1},
		{model.Table{Free: true, Spacing: 8*mm + 1, Margin: 4 * mm}, 2},
		{model.Table{}, 2},
	} {
		shop := Shop{Table: c.table, Saw: model.Saw{Kerf: 3 * mm}}
		layouts, misfits := Layouts(parts, stock, shop)
		if err := check(parts, stock, shop, layouts, misfits); err != nil {
			t.Fatal(err)
		}
		if l := layouts[0]; l.Bought != c.bought {
			t.Errorf("%+v: %d sheets, want %d", c.table, l.Bought, c.bought)
		}
	}
}

// Whatever is cut out of the edges of parts, their outlines lie apart.
func TestAnyNotchesAreKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long := func(least, most int, name string) Length {
			return Length(rapid.IntRange(least, most).Draw(t, name)) * mm
		}
		var parts []model.Part
		for i := range rapid.IntRange(1, 14).Draw(t, "parts") {
			box := geom.R(0, 0, long(60, 700, "x"), long(60, 500, "y"))
			var cuts []geom.Rect
			for range rapid.IntRange(0, 3).Draw(t, "notches") {
				w, h := long(5, 400, "w"), long(5, 400, "h")
				x, y := rapid.SampledFrom([]Length{-w / 2, box.X.Hi / 2, box.X.Hi - w/2}).Draw(t, "at x"), rapid.SampledFrom([]Length{-h / 2, box.Y.Hi - h/2}).Draw(t, "at y")
				cuts = append(cuts, geom.R(x, y, x+w, y+h))
			}
			p := model.Part{ID: string(rune('a' + i)), Stock: "sheet", Outline: geom.RectContour(box),
				Grain: rapid.SampledFrom([]model.Grain{model.GrainNone, model.GrainX, model.GrainY}).Draw(t, "grain")}
			if left := geom.Cut(box, cuts); len(left) == 1 {
				p.Outline = left[0]
			}
			parts = append(parts, p)
		}
		stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: 1200 * mm, Width: 800 * mm, Grain: rapid.Bool().Draw(t, "grained")}}}
		shop := Shop{Work: 10 * quick, Table: model.Table{Free: true, Spacing: long(0, 20, "spacing"), Margin: long(0, 10, "margin")}}
		layouts, misfits := Layouts(parts, stock, shop)
		if err := check(parts, stock, shop, layouts, misfits); err != nil {
			t.Fatal(err)
		}
	})
}

// What notches are said to be holds nothing of the part, and nothing of one another.
func TestNotchesAreFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box := geom.R(0, 0, 60, 40)
		var cuts []geom.Rect
		for range rapid.IntRange(1, 4).Draw(t, "cuts") {
			x, y := 2*Length(rapid.IntRange(-5, 30).Draw(t, "x")), 2*Length(rapid.IntRange(-5, 20).Draw(t, "y"))
			cuts = append(cuts, geom.R(x, y, x+2*Length(rapid.IntRange(1, 20).Draw(t, "w")), y+2*Length(rapid.IntRange(1, 20).Draw(t, "h"))))
		}
		left := geom.Cut(box, cuts)
		if len(left) != 1 {
			return
		}
		bounds := left[0].Bounds()
		found := notches(left[0])
		for i := range 30 {
			for k := range 20 {
				cell := geom.R(2*Length(i), 2*Length(k), 2*Length(i+1), 2*Length(k+1))
				gone := slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Contains(cell) })
				at := cell.Shift(geom.Point{X: -bounds.X.Lo, Y: -bounds.Y.Lo})
				n := 0
				for _, f := range found {
					if f.Contains(at) {
						n++
					}
				}
				if bounds.Contains(cell) && (n > 1 || gone != (n == 1)) {
					t.Fatalf("%v is %d times in notches %v of %v", cell, n, found, left[0])
				}
			}
		}
	})
}
