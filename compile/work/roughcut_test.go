package work

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	mm   = length.Millimetre
	kerf = 3 * mm
)

func rect(x0, y0, x1, y1 length.Length) geom.Rect { return geom.R(x0*mm, y0*mm, x1*mm, y1*mm) }

// TestRoughCutsByHand has sheets of 2440 by 1220 with parts where the cuts can be told.
func TestRoughCutsByHand(t *testing.T) {
	sheet := rect(0, 0, 2440, 1220)
	for _, c := range []struct {
		name  string
		way   model.Carry
		parts []geom.Rect
		want  []model.RoughCut
	}{
		{
			// Two halves and a strip of the saw's width between them: 1203 lies in a car of 1300.
			"one cut between two parts", model.Carry{CarLength: 1300 * mm, CarWidth: 1250 * mm},
			[]geom.Rect{rect(5, 5, 1203, 1215), rect(1206, 5, 2404, 1215)},
			[]model.RoughCut{{At: 1203 * mm, Free: 3 * mm, Of: sheet}},
		},
		{
			// Across, 1500 goes through no part's edge: the long one below lies in the way. Along first,
			// in the middle of 23 that are free: 610 - 1.5, near side 610. Of the upper half one cut.
			"along first", model.Carry{CarLength: 2440 * mm, CarWidth: 700 * mm},
			[]geom.Rect{rect(5, 5, 2300, 600), rect(5, 623, 1100, 1200), rect(1103, 623, 2300, 1200)},
			[]model.RoughCut{{Along: true, At: 610 * mm, Free: 23 * mm, Of: sheet}},
		},
		{
			// A doorway of 700: the lower piece is 610 on edge, the upper 607.
			"a low doorway", model.Carry{Doorway: 700 * mm},
			[]geom.Rect{rect(5, 5, 2300, 600), rect(5, 623, 2300, 1200)},
			[]model.RoughCut{{Along: true, At: 610 * mm, Free: 23 * mm, Of: sheet}},
		},
		{
			// The part is as long as the stair lets round: both ends are cut off.
			"to the part itself", model.Carry{StairLength: 2400 * mm, StairWidth: 1250 * mm},
			[]geom.Rect{rect(20, 5, 2420, 1200)},
			[]model.RoughCut{{At: 17 * mm, Free: 20 * mm, Of: sheet}, {At: 2420 * mm, Free: 20 * mm, Of: rect(20, 0, 2440, 1220)}},
		},
		{"nothing to do", model.Carry{CarLength: 2440 * mm, CarWidth: 1220 * mm, Doorway: 1220 * mm}, []geom.Rect{rect(5, 5, 2300, 600)}, nil},
	} {
		l := model.Layout{Stock: "sheet.ply", Blanks: []model.Blank{{Length: 2440 * mm, Width: 1220 * mm}}}
		for _, p := range c.parts {
			l.Blanks[0].Placed = append(l.Blanks[0].Placed, model.Placed{At: p})
		}
		carrier := carrier{way: c.way, kerf: kerf}
		var have []model.RoughCut
		for _, r := range carrier.layout(&l, nil) {
			have = append(have, r.Cuts...)
		}
		if diff := cmp.Diff(c.want, have); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

// TestRoughCuts cuts random layouts for random ways in, and follows the cuts: each parts a
// piece that is there, from edge to edge and through no part; what is left passes, and has
// every part whole.
func TestRoughCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts []model.Part
		for i := range rapid.IntRange(1, 25).Draw(t, "parts") {
			x, y := rapid.Int64Range(30, 1400).Draw(t, "x"), rapid.Int64Range(30, 1100).Draw(t, "y")
			w, h := length.Length(x)*mm, length.Length(y)*mm
			parts = append(parts, model.Part{ID: string(rune('a' + i)), Stock: "sheet.ply",
				Outline: geom.Contour{{}, {Point: geom.Point{X: w}}, {Point: geom.Point{X: w, Y: h}}, {Point: geom.Point{Y: h}}}})
		}
		stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet.ply", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm}}}
		trim := rapid.SampledFrom([]length.Length{0, 1 * mm, 5 * mm}).Draw(t, "trim")
		layouts, _ := layout.Layouts(parts, stock, layout.Shop{Saw: model.Saw{Kerf: kerf, Trim: trim}})
		c := carrier{kerf: kerf, way: model.Carry{
			CarLength: length.Length(rapid.Int64Range(1400, 2600).Draw(t, "car")) * mm, CarWidth: length.Length(rapid.Int64Range(1100, 1300).Draw(t, "wide")) * mm,
			Doorway: length.Length(rapid.Int64Range(1100, 1300).Draw(t, "doorway")) * mm,
		}}
		for i := range layouts {
			for _, r := range c.layout(&layouts[i], nil) {
				follow(t, &c, &r, layouts[i].Blanks[r.Blank-1])
			}
		}
	})
}

func follow(t *rapid.T, c *carrier, r *model.Rough, blank model.Blank) {
	pieces := []geom.Rect{geom.R(0, 0, blank.Length, blank.Width)}
	for _, cut := range r.Cuts {
		at := -1
		for i, p := range pieces {
			if p == cut.Of {
				at = i
			}
		}
		if at < 0 {
			t.Fatalf("%v is no piece that is there", cut.Of)
		}
		gone, near, far := cut.Of, cut.Of, cut.Of
		if cut.Along {
			gone.Y, near.Y.Hi, far.Y.Lo = geom.Span{Lo: cut.At, Hi: cut.At + kerf}, cut.At, cut.At+kerf
		} else {
			gone.X, near.X.Hi, far.X.Lo = geom.Span{Lo: cut.At, Hi: cut.At + kerf}, cut.At, cut.At+kerf
		}
		for _, p := range blank.Placed {
			if gone.Overlaps(p.At) {
				t.Fatalf("a cut at %v goes through the part at %v", gone, p.At)
			}
		}
		pieces[at] = near
		pieces = append(pieces, far)
	}
	for _, p := range r.Pieces {
		if !c.passes(p) {
			t.Fatalf("%v does not pass", p)
		}
		found := false
		for _, q := range pieces {
			found = found || p == q
		}
		if !found {
			t.Fatalf("%v is not what the cuts leave", p)
		}
	}
	for _, p := range blank.Placed {
		whole := 0
		for _, q := range r.Pieces {
			if q.Contains(p.At) {
				whole++
			}
		}
		if whole != 1 {
			t.Fatalf("the part at %v is whole in %d pieces", p.At, whole)
		}
	}
}
