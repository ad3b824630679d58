package solve_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Every screw through a support plate passes through steel, and no other does.
func TestScrewsThroughSteel(t *testing.T) {
	m, _ := example(t, "servery")
	steel := 0
	for _, f := range m.Fastening {
		if want := strings.Contains(f.Use, "through the support plates"); f.Steel != want {
			t.Errorf("%d screws %s: through steel %v", f.Count, f.Use, f.Steel)
		}
		if f.Steel {
			steel += f.Count
		}
	}
	if steel != 5*4+5*4 { // five plates, four screws down and four up in each
		t.Errorf("%d screws through steel", steel)
	}
}

// In the boat shed cups and mugs have no fronts: what holds them, cups to the studs at
// 57 1/2, 73 1/2 and 89 1/2 in of the wall and mugs to the knee wall, is the screw that
// is named for where screws are seen.
func TestScrewsThatAreSeen(t *testing.T) {
	m, _ := example(t, "boatshed")
	seen := map[string]int{}
	for _, f := range m.Fastening {
		if f.Screw == "screw.seen" {
			seen[f.Use] += f.Count
		}
	}
	lines := 0
	for _, l := range m.KneeWalls[0].Lines {
		if l.Box == "mugs" {
			lines++
		}
	}
	want := map[string]int{"to hold cabinet cups to the wall": 3 * 2, "from the boxes of run front into knee wall bar": 2 * lines}
	if diff := cmp.Diff(want, seen); diff != "" || lines == 0 {
		t.Errorf("trim screws (-want +got):\n%s", diff)
	}
}
