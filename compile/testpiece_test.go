package compile

import (
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router/routertest"
	"barwright/lang/filename"
	"barwright/lang/length"
)

// A test piece lies against a stop where its recess is cut from one and the machine
// reaches so far: 50 mm of wood and the recess, 51.59 mm wide.
func TestTestPieceZero(t *testing.T) {
	const mm = length.Millimetre
	for _, c := range []struct {
		datum  string
		travel model.Length
		atStop bool
	}{{"mark", 0, false}, {"end", 0, true}, {"last", 0, true}, {"end", 102 * mm, true}, {"end", 101 * mm, false}} {
		r := routertest.Support()
		r.Tool.Datum, r.Tool.Travel.X = c.datum, c.travel
		p := model.Program{Tool: r.Tool, Shape: geom.RectContour(r.Shape), Stock: r.Stock, Open: r.Open, Depth: r.Depth, Thick: r.Thick}
		m := &model.Model{Build: model.Build{Unit: length.Millimetres}, Programs: []model.Program{p}}
		tests := testPieces(m, &filename.Names{})
		if len(tests) != 1 {
			t.Fatalf("%s, %d: %d test pieces", c.datum, c.travel/mm, len(tests))
		}
		test := &tests[0]
		left := test.Shape.Bounds().X.Lo - test.Stock.X.Lo
		if left != 50*mm || test.Mark != -test.Stock.X.Lo {
			t.Errorf("%s: %d mm of wood beside it, zero %d mm from the left end of wood from %d", c.datum, left/mm, test.Mark/mm, test.Stock.X.Lo/mm)
		}
		if stop := strings.Contains(test.Zero, "at a stop at the left end of the scrap"); stop != c.atStop || stop != (test.Mark == 0) {
			t.Errorf("%s, %d: zero %q, %d mm from the left end", c.datum, c.travel/mm, test.Zero, test.Mark/mm)
		}
	}
}
