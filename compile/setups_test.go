package compile

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang/length"
)

// TestSetups lays a stick of 1200 mm with four recesses 50 mm wide, at 200, 500, 900 and 1500
// (the last one out of all reach of the one before), and then another stick.
func TestSetups(t *testing.T) {
	const mm = length.Millimetre
	type laid struct {
		zero   model.Length
		number int
		on     model.Length
	}
	for name, c := range map[string]struct {
		datum  string
		travel model.Length
		want   [5]laid
	}{
		"a mark for each":         {"mark", 0, [5]laid{{225, 1, 0}, {525, 2, 300}, {925, 3, 400}, {1525, 4, 600}, {125, 1, 0}}},
		"the end, a long machine": {"end", 0, [5]laid{{0, 1, 0}, {0, 1, 0}, {0, 1, 0}, {0, 1, 0}, {0, 1, 0}}},
		"the end, 600 mm":         {"end", 600, [5]laid{{0, 1, 0}, {0, 1, 0}, {500, 2, 500}, {1500, 3, 1000}, {0, 1, 0}}},
		"the recess before":       {"last", 0, [5]laid{{0, 1, 0}, {200, 2, 200}, {500, 3, 300}, {900, 4, 400}, {0, 1, 0}}},
		"the end, 100 mm":         {"end", 100, [5]laid{{200, 1, 0}, {500, 2, 300}, {900, 3, 400}, {1500, 4, 600}, {100, 1, 0}}},
	} {
		t.Run(name, func(t *testing.T) {
			var s setups
			for i, left := range [5]model.Length{200, 500, 900, 1500, 100} {
				r := solve.Recess{Part: i / 4, Centre: (left + 25) * mm, Zero: "Y0 in front", Tool: model.Tool{Datum: c.datum}}
				r.Tool.Travel.X = c.travel * mm
				zero, words, number, on := s.lay(r, geom.R(left*mm, 0, (left+50)*mm, 80*mm), "support")
				if got := (laid{zero / mm, number, on / mm}); got != c.want[i] {
					t.Errorf("recess %d: %+v, want %+v (%s)", i+1, got, c.want[i], words)
				}
			}
		})
	}
}
