package finish

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/rule/ruletest"
	"barwright/lang/length"
)

// A shelf 23/32 in thick meets the hinge at 7 in unless its upper face is at 6 in
// or lower or its lower one at 8 in or higher (an inch either way, common practice,
// from memory).
func TestShelvesAtHinges(t *testing.T) {
	for eighths := 5.5 * 8; eighths <= 11*8; eighths++ {
		top := eighths / 8
		found := ruletest.Judged(t, []rule.Rule{{Look: hingeMeetsShelf}}, ruletest.Example(t, "boatshed",
			"doors   = 2\n    shelves = 1", fmt.Sprintf("doors = 2\n    fixed_shelves = [%v]", top)))
		if want := top > 6 && top-23.0/32 < 8; want != (len(found) > 0) {
			t.Errorf("upper face at %v in: %v", top, found)
		}
	}
}

// The front corner of the counter, 24 1/4 in from the wall, against the line of the
// next wall as a protractor would draw it. The run stops where its carcass, 23 1/4
// in deep, clears that line.
func TestCounterInCorner(t *testing.T) {
	for corner := 84.0; corner <= 95; corner += 0.5 {
		found := ruletest.Judged(t, []rule.Rule{{Look: slabInCorner}}, ruletest.Example(t, "boatshed", "corner  = 90.4", fmt.Sprintf("corner  = %v", corner)))
		into := 0.0
		if corner < 90 {
			into = 1 / math.Tan(corner*math.Pi/180)
		}
		if want := into > 1.0/32; want != (len(found) > 0) {
			t.Errorf("a corner of %v degrees, %v in in the wall: %v", corner, into, found)
		}
	}
}

// openFront against a count of square millimetres.
func TestOpenFront(t *testing.T) {
	const mm = length.Millimetre
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
		board, wide, high := draw("board", 1, 9), draw("wide", 30, 90), draw("high", 30, 90)
		box := model.Box{
			Hull:   geom.Box{U: geom.Span{Hi: geom.Length(wide) * mm}, Z: geom.Span{Hi: geom.Length(high) * mm}},
			Inside: geom.Box{U: geom.Span{Lo: geom.Length(board) * mm, Hi: geom.Length(wide-board) * mm}, Z: geom.Span{Lo: geom.Length(board+5) * mm, Hi: geom.Length(high) * mm}},
		}
		covered := make([][]bool, wide)
		for x := range covered {
			covered[x] = make([]bool, high)
		}
		for z := high; z > 0; { // fronts one under another, with gaps
			top := z - draw("gap", 0, 4)
			z = top - draw("front", 5, 40)
			left, right := draw("left", 0, 12), wide-draw("right", 0, 12)
			if z < 0 {
				break
			}
			box.Fronts = append(box.Fronts, model.Front{Place: geom.Box{
				U: geom.Span{Lo: geom.Length(left) * mm, Hi: geom.Length(right) * mm}, Z: geom.Span{Lo: geom.Length(z) * mm, Hi: geom.Length(top) * mm},
			}})
			for x := left; x < right; x++ {
				for y := z; y < top; y++ {
					covered[x][y] = true
				}
			}
		}
		want := 0
		for x := board; x < wide-board; x++ {
			for y := board + 5; y < high-board; y++ {
				if !covered[x][y] {
					want++
				}
			}
		}
		if got := openFront(&box); math.Abs(got-float64(want)) > 1e-6 {
			t.Fatalf("%v mm2, by counting %d", got, want)
		}
	})
}

// nearTo against a look at every place within reach.
func TestNearTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var spans []geom.Span
		for range rapid.IntRange(1, 6).Draw(t, "spans") {
			lo := geom.Length(rapid.IntRange(0, 90).Draw(t, "lo"))
			spans = append(spans, geom.Span{Lo: lo, Hi: lo + geom.Length(rapid.IntRange(0, 20).Draw(t, "size"))})
		}
		x := geom.Length(rapid.IntRange(-20, 130).Draw(t, "x"))
		want := geom.Length(0)
		for carried := false; !carried; want++ {
			for _, s := range spans {
				for at := s.Lo; at <= s.Hi; at++ {
					carried = carried || at == x-want || at == x+want
				}
			}
		}
		if _, off := nearTo(x, spans); off != want-1 {
			t.Fatalf("%d, by looking %d", off, want-1)
		}
	})
}
